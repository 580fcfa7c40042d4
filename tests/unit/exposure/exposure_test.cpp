// Proves the laws of exposure: doses add up, grow with concentration, temperature and time, and fade in clean air.

#include <gtest/gtest.h>

#include "sim/exposure/carbon_monoxide.hpp"
#include "sim/exposure/scald.hpp"
#include "sim/exposure/shock.hpp"

namespace emberpath::exposure {
namespace {

TEST(CarbonMonoxide, TwoHalvesOfASpellMakeTheWhole) {
    const double whole = carboxyhaemoglobin_after(blood_on_arrival, 200e-6, 3600.0);
    const double half = carboxyhaemoglobin_after(blood_on_arrival, 200e-6, 1800.0);
    EXPECT_NEAR(carboxyhaemoglobin_after(half, 200e-6, 1800.0), whole, 1e-12);
}

TEST(CarbonMonoxide, TenthsOfASecondAddUpToTheSameDoseAsMinutes) {
    double share = blood_on_arrival;
    for (int tick = 0; tick < 6000; ++tick) share = carboxyhaemoglobin_after(share, 400e-6, 0.1);
    EXPECT_NEAR(share, carboxyhaemoglobin_after(blood_on_arrival, 400e-6, 600.0), 1e-9);
}

TEST(CarbonMonoxide, RisesWithConcentrationAndWork) {
    const double little = carboxyhaemoglobin_after(blood_on_arrival, 50e-6, 1800.0);
    EXPECT_GT(carboxyhaemoglobin_after(blood_on_arrival, 100e-6, 1800.0), little);
    EXPECT_GT(carboxyhaemoglobin_after(blood_on_arrival, 50e-6, 1800.0, light_work()), little);
}

TEST(CarbonMonoxide, LeavesInCleanAirWithTheHalfLife) {
    const double after = linear_carboxyhaemoglobin_after(0.2, 0.0, elimination_half_life_s());
    const double rest = carboxyhaemoglobin_at_last(0.0);
    EXPECT_NEAR(after, 0.5 * (0.2 + rest), 2e-4);
}

TEST(CarbonMonoxide, NeverFillsTheBloodBeyondItsCapacity) {
    const double share = carboxyhaemoglobin_after(blood_on_arrival, 0.05, 7200.0, light_work());
    EXPECT_GT(share, 0.9);
    EXPECT_LT(share, 1.0);
}

TEST(RoomAir, OnlyGathersWithoutVentilation) {
    EXPECT_DOUBLE_EQ(share_in_room_after(0.0, 1e-5, {20.0, 0.0}, 100.0), 5e-5);
    EXPECT_LT(share_in_room_after(0.0, 1e-5, {20.0, 1e-3}, 100.0), 5e-5);
    EXPECT_LT(share_in_room_after(1e-4, 0.0, {20.0, 1e-3}, 100.0), 1e-4);
}

TEST(Scald, EveryDegreeMoreBurnsSooner) {
    for (const Burn burn : {Burn::second_degree, Burn::third_degree})
        for (int celsius = 43; celsius < 80; ++celsius)
            EXPECT_LT(time_to_burn_s(burn, celsius + 274.15),
                      time_to_burn_s(burn, celsius + 273.15))
                << celsius;
}

TEST(Scald, BlistersComeBeforeTheSkinIsBurntThrough) {
    for (int celsius = 47; celsius <= 66; ++celsius)
        EXPECT_LT(time_to_burn_s(Burn::second_degree, celsius + 273.15),
                  time_to_burn_s(Burn::third_degree, celsius + 273.15))
            << celsius;
}

TEST(Scald, SharesOfABurnAddUp) {
    const double once = burn_share(Burn::second_degree, 328.15, 10.0);
    EXPECT_DOUBLE_EQ(2.0 * once, burn_share(Burn::second_degree, 328.15, 20.0));
}

TEST(Shock, GlovesAndShoesInThePathLowerTheCurrent) {
    const double bare = touch_current_a(230.0, body_impedance_ohm(230.0, 0.5), 0.0);
    const double shod = touch_current_a(230.0, body_impedance_ohm(230.0, 0.5), 100.0e3);
    EXPECT_EQ(effect_of(bare), Effect::heart_may_stop);
    EXPECT_EQ(effect_of(shod), Effect::felt);
}

TEST(Shock, ABodyResistsLessAtHigherVoltage) {
    for (const double share : {0.05, 0.5, 0.95}) {
        EXPECT_GT(body_impedance_ohm(100.0, share), body_impedance_ohm(225.0, share));
        EXPECT_DOUBLE_EQ(body_impedance_ohm(225.0, share), body_impedance_ohm(400.0, share));
    }
}

}  // namespace
}  // namespace emberpath::exposure
