// Proves the sensors: thermistor values, faults in the ohm domain, lags, tachometer, limiter.

#include "sim/plant/sensors.hpp"

#include <gtest/gtest.h>

#include "tests/unit/plant/open_loop.hpp"

namespace emberpath::plant {
namespace {

TEST(Thermistor, ReadsTheReferencePoints) {
    EXPECT_NEAR(thermistor_ohm(298.15), 10000.0, 1e-6);
    EXPECT_NEAR(thermistor_ohm(287.15), 15548.0, 1.0);
    EXPECT_NEAR(thermistor_ohm(323.15), 4100.0, 5.0);
    EXPECT_NEAR(thermistor_ohm(333.15), 2980.0, 10.0);
}

TEST(Thermistor, FaultsActInOhms) {
    Parameters<double>::Thermistor sensor;
    EXPECT_NEAR(seen_ohm(298.15, sensor), 10000.0, 1e-6);
    sensor.gain = 1.2;
    EXPECT_NEAR(seen_ohm(298.15, sensor), 12000.0, 1e-6);
    sensor.series_ohm = 5.0e6;
    EXPECT_NEAR(seen_ohm(298.15, sensor), 5.012e6, 1.0);
    sensor = {};
    sensor.parallel_s = 1.0;
    EXPECT_NEAR(seen_ohm(298.15, sensor), 1.0, 1e-3);
}

TEST(Thermistor, FollowsTheWaterWithOneSecondLag) {
    OpenLoop heater;
    heater.plant.state[outlet_bead] = heater.plant.state[mixing_pocket] + 10.0;
    heater.at.ambient_k = heater.plant.state[mixing_pocket];
    heater.run(1.0);
    const double left = heater.plant.state[outlet_bead] - heater.plant.state[mixing_pocket];
    EXPECT_NEAR(left, 10.0 * 0.36788, 0.01);
}

TEST(FlowSensor, ReadsItsGainTimesTheFlowAfterATenth) {
    PlantParameters dragging = natural_gas_parameters();
    dragging.flow_sensor_gain = 0.7;
    OpenLoop heater(dragging);
    heater.at.hot_tap_conductance = 5.0e-7;
    heater.run(0.1);
    EXPECT_LT(sense(heater.plant, heater.at).flow_m3_per_s, 0.5 * heater.look().hot_water_m3_per_s);
    heater.run(2.0);
    EXPECT_NEAR(sense(heater.plant, heater.at).flow_m3_per_s,
                0.7 * heater.look().hot_water_m3_per_s, 1e-9);
}

TEST(Tachometer, ShowsItsGainTimesTheSpeed) {
    PlantParameters slipping = natural_gas_parameters();
    slipping.tachometer_gain = 0.6;
    OpenLoop heater(slipping);
    heater.commands.fan_duty = 0.4;
    heater.run(5.0);
    EXPECT_GT(heater.look().fan_rev_per_s, 40.0);
    EXPECT_NEAR(sense(heater.plant, heater.at).fan_rev_per_s, 0.6 * heater.look().fan_rev_per_s,
                1e-12);
}

TEST(Limiter, OpensHotAndClosesOnlyWhenWellCooled) {
    OpenLoop heater;
    const auto closed_at = [&heater](double kelvin) {
        heater.plant.state[limiter_element] = kelvin;
        advance(heater.plant, heater.at, heater.commands);
        return sense(heater.plant, heater.at).limiter_closed;
    };
    EXPECT_EQ(closed_at(367.0), 1.0);
    EXPECT_EQ(closed_at(369.0), 0.0);
    EXPECT_EQ(closed_at(345.0), 0.0) << "still warm: stays open";
    EXPECT_EQ(closed_at(337.0), 1.0);
    heater.plant.parameters.limiter_bad = 1.0;
    EXPECT_EQ(closed_at(300.0), 0.0);
}

}  // namespace
}  // namespace emberpath::plant
