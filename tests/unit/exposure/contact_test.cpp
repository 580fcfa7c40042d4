// Proves that a touch of hot metal burns as the thresholds say and that a longer or hotter touch burns more.
#include "sim/exposure/contact.hpp"

#include <gtest/gtest.h>

namespace emberpath::exposure {
namespace {

constexpr double zero_celsius_k = 273.15;

TEST(HotMetal, BurnsInASecondAt65AndInAMinuteAt51Degrees) {
    EXPECT_NEAR(time_to_contact_burn_s(65.0 + zero_celsius_k), 1.0, 1e-9);
    EXPECT_NEAR(time_to_contact_burn_s(56.0 + zero_celsius_k), 10.0, 1e-8);
    EXPECT_NEAR(time_to_contact_burn_s(51.0 + zero_celsius_k), 60.0, 1e-7);
}

TEST(HotMetal, BurnsFasterTheHotterItIs) {
    double before = time_to_contact_burn_s(45.0 + zero_celsius_k);
    for (int celsius = 46; celsius <= 100; ++celsius) {
        const double now = time_to_contact_burn_s(static_cast<double>(celsius) + zero_celsius_k);
        EXPECT_LT(now, before) << celsius;
        before = now;
    }
}

TEST(HotMetal, AddsUpOverTouches) {
    const double one = contact_burn_share(335.0, drawn_back_after_s);
    EXPECT_DOUBLE_EQ(contact_burn_share(335.0, 3.0 * drawn_back_after_s), 3.0 * one);
    EXPECT_LT(one, 1.0);
    EXPECT_GT(contact_burn_share(80.0 + zero_celsius_k, drawn_back_after_s), 1.0);
}

}  // namespace
}  // namespace emberpath::exposure
