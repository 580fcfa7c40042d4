// Proves what five seconds in running water take of a burn, wherever in a draw they lie.

#include "sim/worksite/hand_in_water.hpp"

#include <gtest/gtest.h>

namespace emberpath::worksite {
namespace {

constexpr double hot_k = 333.15, warm_k = 313.15;
constexpr int five_seconds = 50;  // in ticks

double held(HandInWater& hand, double water_k, int ticks) {
    double share = 0.0;
    for (int i = 0; i < ticks; ++i) share = hand.hold(water_k);
    return share;
}

TEST(HandInWater, TakesInFiveSecondsWhatTheTableOfBurnsSays) {
    HandInWater hand;
    const double due = exposure::burn_share(exposure::Burn::second_degree, hot_k, 5.0);
    EXPECT_GT(due, 1.0) << "60 °C burns sooner";
    EXPECT_NEAR(held(hand, hot_k, five_seconds), due, 1.0e-12);
    EXPECT_NEAR(held(hand, hot_k, 7 * five_seconds), due, 1.0e-12) << "and no more when it stays";
}

/// The temperature that docs/safety.md names.
TEST(HandInWater, IsBurntFrom58Point6DegreesOn) {
    HandInWater warm, hot;
    EXPECT_LT(held(warm, 273.15 + 58.5, five_seconds), 1.0);
    EXPECT_GE(held(hot, 273.15 + 58.6, five_seconds), 1.0);
}

TEST(HandInWater, TakesLessInLessTime) {
    HandInWater hand;
    EXPECT_NEAR(held(hand, hot_k, 20),
                exposure::burn_share(exposure::Burn::second_degree, hot_k, 2.0), 1.0e-12);
}

TEST(HandInWater, ForgetsWhatLiesMoreThanFiveSecondsBack) {
    HandInWater hand;
    held(hand, hot_k, five_seconds);
    EXPECT_GT(held(hand, warm_k, five_seconds - 1), 0.0);
    EXPECT_EQ(hand.hold(warm_k), 0.0);
}

}  // namespace
}  // namespace emberpath::worksite
