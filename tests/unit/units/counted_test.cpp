// Proves that counted things take their plural from the figure that stands beside them.

#include "sim/units/counted.hpp"

#include <gtest/gtest.h>

namespace emberpath::units {
namespace {

TEST(CountedThing, IsSingularBesideAnOneAndBesideNothingElse) {
    EXPECT_EQ(counted(1, "minute"), "1 minute");
    EXPECT_EQ(counted(0, "minute"), "0 minutes");
    EXPECT_EQ(counted(2, "minute"), "2 minutes");
    EXPECT_EQ(counted(21, "time"), "21 times");
    EXPECT_EQ(counted("1", "minute"), "1 minute");
    EXPECT_EQ(counted("1.0", "minute"), "1.0 minutes");
    EXPECT_EQ(counted("0.4", "minute"), "0.4 minutes");
}

}  // namespace
}  // namespace emberpath::units
