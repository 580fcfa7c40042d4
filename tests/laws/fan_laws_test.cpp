// Proves the fan and air path: affinity laws, what wind, draught and resistance do, and that the fan never
// turns backwards.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/plant/air_path.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

using plant::PlantParameters;
using plant::State;
using plant::Surroundings;

/// A cold flue: no draught, so that the fan alone drives.
State<double> fan_at(double rev_per_s) {
    State<double> x{};
    x[plant::fan_speed] = rev_per_s;
    x[plant::flue_gas] = Surroundings{}.ambient_k;
    return x;
}

double air(const PlantParameters& p, double rev_per_s, const Surroundings& at = {}) {
    return plant::air_flow(p, fan_at(rev_per_s), at);
}

TEST(AffinityLaws, FlowFollowsSpeedAndPressureItsSquare) {
    const PlantParameters p = plant::natural_gas_parameters();
    for (const double ratio : {0.4, 1.5, 1.6, 2.0}) {
        const double flow = air(p, 40.0 * ratio) / air(p, 40.0);
        EXPECT_NEAR(flow, ratio, 1e-12);
        // In one duct the pressure lost is R q^2, and the fan supplies just that.
        EXPECT_NEAR(flow * flow, ratio * ratio, 1e-11);
    }
}

TEST(AffinityLaws, LoadingStaysWhileTheDuctStays) {
    const PlantParameters p = plant::natural_gas_parameters();
    const double at_slow = plant::fan_loading(air(p, 30.0), 30.0);
    for (const double n : {40.0, 60.0, 80.0, 100.0})
        EXPECT_NEAR(plant::fan_loading(air(p, n), n), at_slow, 1e-12);
}

TEST(AffinityLaws, CurrentAboveRestFollowsTheSquareOfSpeed) {
    // Torque goes with N^2, so current does; power, torque times speed, goes with N^3.
    const PlantParameters p = plant::natural_gas_parameters();
    const double rest = 0.08;
    const double slow = plant::fan_current(p, 30.0, 1.0) - rest;
    for (const double ratio : {1.5, 2.0, 3.0}) {
        const double fast = plant::fan_current(p, 30.0 * ratio, 1.0) - rest;
        EXPECT_NEAR(fast / slow, ratio * ratio, 1e-12);
        EXPECT_NEAR(fast * ratio / slow, ratio * ratio * ratio, 1e-11);
    }
}

TEST(AirPath, DesignPointIsFiftySixCubicMetresAnHourAgainstHundredAndFiftyPascal) {
    const PlantParameters p = plant::natural_gas_parameters();
    State<double> x = fan_at(80.0);
    x[plant::flue_gas] = 398.0;
    EXPECT_NEAR(plant::air_flow(p, x, {}) * 3600.0, 56.0, 1.0);
    const double design = 56.0 / 3600.0;
    const double duct = p.air_cold_resistance + p.air_exchanger_resistance + p.flue_resistance;
    EXPECT_NEAR(duct * design * design, 150.0, 1.0);
    const double fan = p.fan_head * 80.0 * 80.0 - p.fan_internal_resistance * design * design;
    EXPECT_NEAR(fan, 150.0, 3.0);
}

TEST(AirPath, WindAndResistanceTakeAirAwayAndSpeedAndDraughtGiveIt) {
    const PlantParameters p = plant::natural_gas_parameters();
    for (const double n : {25.0, 50.0, 80.0}) {
        Surroundings windy;
        windy.steady_wind_pa = 10.0;
        EXPECT_LT(air(p, n, windy), air(p, n));
        windy.steady_wind_pa = -10.0;
        EXPECT_GT(air(p, n, windy), air(p, n));
        PlantParameters blocked = p;
        blocked.flue_resistance *= 4.0;
        EXPECT_LT(air(blocked, n), air(p, n));
        EXPECT_GT(air(p, n + 1.0), air(p, n));
    }
    State<double> warm = fan_at(0.0);
    warm[plant::flue_gas] += 60.0;
    EXPECT_GT(plant::air_flow(p, warm, {}), 10.0 * air(p, 0.0));
}

TEST(AirPath, GustOfOneIsTwentyFivePascalSteadyAndHundredAndTenMoreAtItsHeight) {
    PlantParameters p = plant::natural_gas_parameters();
    Surroundings at;
    at.gust_shape = 1.0;
    at.steady_wind_pa = 5.0;
    EXPECT_EQ(plant::wind_pressure(p, at), 5.0);
    p.gust_amplitude = 1.0;
    EXPECT_EQ(plant::wind_pressure(p, at), 140.0);
    at.gust_shape = 0.0;
    EXPECT_EQ(plant::wind_pressure(p, at), 30.0);
    p.gust_amplitude = 0.4;
    at.gust_shape = 1.0;
    EXPECT_NEAR(plant::wind_pressure(p, at), 5.0 + 0.4 * 135.0, 1e-12);
}

TEST(AirPath, AirNeverReverses) {
    Surroundings storm;
    storm.steady_wind_pa = 500.0;
    for (const double n : {0.0, 1.0, 40.0, 100.0}) {
        const double q = air(plant::natural_gas_parameters(), n, storm);
        EXPECT_GT(q, 0.0);
        EXPECT_LT(q, 1e-4);
    }
}

TEST(Fan, RunsDownToRestAndNeverTurnsBackwards) {
    // A hot flue draws air through a fan that is off: an unlimited loading would drive it backwards.
    House house = warmed_up({"full", 60.0, 16.0});
    house.inputs.surroundings.power_on = 0.0;
    house.open_taps(0.0);
    double least = 1.0;
    for (int tick = 0; tick < 3000; ++tick) {
        house.run(signals::tick_s);
        least = std::min(least, house.heater.plant.state[plant::fan_speed]);
    }
    EXPECT_GE(least, 0.0);
    EXPECT_LT(house.heater.plant.state[plant::fan_speed], 1e-6);
}

TEST(Fan, BlockedFlueRaisesSpeedAndLowersCurrentPerSquareOfSpeed) {
    House sound(false, 50.0), blocked(false, 50.0);
    blocked.heater.plant.parameters.flue_resistance *= 6.0;
    for (House* house : {&sound, &blocked}) {
        house->run(2.0);
        house->open_taps(10.0);
        house->run(120.0);
    }
    const plant::Observables s = sound.look().plant, b = blocked.look().plant;
    EXPECT_GT(b.fan_rev_per_s, s.fan_rev_per_s);
    EXPECT_LT(b.fan_current_a / (b.fan_rev_per_s * b.fan_rev_per_s),
              s.fan_current_a / (s.fan_rev_per_s * s.fan_rev_per_s));
}

}  // namespace
}  // namespace emberpath::laws
