// Proves that a missing display is explained before the graphics library is touched.

#include "ui/window/display.hpp"

#include <gtest/gtest.h>

namespace emberpath::window {
namespace {

TEST(Display, NotSetIsSaidSo) {
    EXPECT_EQ(why_no_display(nullptr), "There is no display: DISPLAY is not set.");
    EXPECT_EQ(why_no_display(""), "There is no display: DISPLAY is not set.");
}

TEST(Display, ThatNobodyServesIsSaidSo) {
    EXPECT_EQ(why_no_display(":64999"), "There is no display: nothing answers at DISPLAY :64999.");
}

TEST(Display, OfAnotherMachineIsTakenOnTrust) {
    EXPECT_EQ(why_no_display("far.example:0"), "");
}

}  // namespace
}  // namespace emberpath::window
