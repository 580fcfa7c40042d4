// Proves that counted things take their plural from the figure that stands beside them, and shares their per cents.

#include "sim/units/counted.hpp"

#include <gtest/gtest.h>

#include "sim/units/per_cent.hpp"

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

TEST(PerCent, IsWholeUnlessMoreIsAsked) {
    EXPECT_EQ(per_cent(0.954), "95 %");
    EXPECT_EQ(per_cent(0.0), "0 %");
    EXPECT_EQ(per_cent(1.0), "100 %");
    EXPECT_EQ(per_cent(0.0084, 1), "0.8 %");
}

}  // namespace
}  // namespace emberpath::units
