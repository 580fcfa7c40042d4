// Proves the actuators, isolations and power: what moves, how fast, and what stays when the power is cut.

#include <gtest/gtest.h>

#include "tests/unit/plant/open_loop.hpp"

namespace emberpath::plant {
namespace {

TEST(ColdHeater, IsAtRestInItsSurroundings) {
    Surroundings at;
    at.ambient_k = 281.0;
    at.inlet_water_k = 283.0;
    at.cylinder_ambient_k = 275.0;
    Plant<double> heater;
    heater.parameters = natural_gas_parameters();
    settle_cold(heater, at);
    const Observables o = observe_one(heater, at);
    EXPECT_EQ(o.outlet_water_k, 281.0);
    EXPECT_EQ(o.hottest_metal_k, 281.0);
    EXPECT_EQ(o.cylinder_liquid_k, 275.0);
    EXPECT_EQ(o.fan_rev_per_s, 0.0);
    EXPECT_EQ(o.gas_m3_per_s, 0.0);
    EXPECT_EQ(o.fan_current_a, 0.0);
    EXPECT_EQ(o.o2_share, 0.2095);
    EXPECT_EQ(o.gas_inlet_pa, heater.parameters.gas_lock_up_pa);
    EXPECT_EQ(o.limiter_closed, 1.0);
}

TEST(ColdHeater, StaysAtRestForADay) {
    OpenLoop heater;
    heater.run(24.0 * 3600.0);
    const Observables o = heater.look();
    EXPECT_NEAR(o.outlet_water_k, heater.at.ambient_k, 0.05);
    EXPECT_NEAR(o.casing_k, heater.at.ambient_k, 0.05);
    EXPECT_LT(o.hot_water_m3_per_s, 1e-12);
}

TEST(ColdHeater, KeepsNoTraceOfWhatHasFaded) {
    OpenLoop heater;
    heater.light();
    heater.run(10.0);
    EXPECT_GT(heater.plant.state[flame_0], 0.9);
    heater.commands = {};
    heater.at.hot_tap_conductance = 0.0;
    heater.run(600.0);
    for (const std::size_t i : {fan_speed, valve_pressure, ionisation, flame_0})
        EXPECT_EQ(heater.plant.state[i], 0.0) << i;
    for (const double x : heater.plant.state) EXPECT_NE(std::fpclassify(x), FP_SUBNORMAL) << x;
}

TEST(WaterValve, MovesTwelveHundredthsOfItsStrokeASecond) {
    OpenLoop heater;
    heater.commands.water_valve = 0.0;
    heater.run(2.0);
    EXPECT_NEAR(heater.plant.state[water_valve], 0.76, 1e-9);
    heater.run(20.0);
    EXPECT_NEAR(heater.plant.state[water_valve], 0.0, 1e-6);
}

TEST(WaterValve, StuckOneIgnoresItsCommand) {
    PlantParameters stuck = natural_gas_parameters();
    stuck.water_valve_stuck = 1.0;
    stuck.water_valve_position = 0.5;
    stuck.bypass_stuck = 1.0;
    stuck.bypass_position = 0.8;
    OpenLoop heater(stuck);
    heater.commands.water_valve = 1.0;
    heater.commands.bypass = 0.0;
    heater.run(20.0);
    EXPECT_NEAR(heater.plant.state[water_valve], 0.5, 1e-6);
    EXPECT_NEAR(heater.plant.state[bypass_valve], 0.8, 1e-6);
}

TEST(GasValve, FollowsItsCommandAndAStuckOneDoesNot) {
    OpenLoop heater;
    heater.commands = firing(3, 600.0, 0.5);
    heater.run(2.0);
    EXPECT_NEAR(heater.look().manifold_pa, 600.0, 1e-3);
    heater.plant.parameters.gas_valve_stuck = 1.0;
    heater.plant.parameters.gas_valve_held_pa = 250.0;
    heater.run(2.0);
    EXPECT_NEAR(heater.look().manifold_pa, 250.0, 1e-3);
    heater.commands.main_solenoid = 0.0;
    heater.run(0.1);
    EXPECT_EQ(heater.look().manifold_pa, 0.0) << "the main solenoid shuts whatever the valve does";
    EXPECT_EQ(heater.look().gas_m3_per_s, 0.0);
}

TEST(Fan, ReachesTheSpeedOfItsDutyInAFewTimeConstants) {
    OpenLoop heater;
    heater.commands.fan_duty = 0.68;
    heater.run(0.7);
    const double after_one = heater.look().fan_rev_per_s;
    heater.run(6.0);
    const double settled = heater.look().fan_rev_per_s;
    EXPECT_NEAR(after_one / settled, 0.63, 0.02);
    EXPECT_NEAR(settled, 81.6, 2.0);
    EXPECT_NEAR(heater.look().fan_current_a, 0.60, 0.04);
}

TEST(Power, CutRestsEverythingElectricalAndLeavesMotorValvesWhereTheyAre) {
    OpenLoop heater;
    heater.light();
    heater.commands.water_valve = 0.6;
    heater.commands.bypass = 0.4;
    heater.run(6.0);
    const double valve = heater.plant.state[water_valve];
    const double bypass = heater.plant.state[bypass_valve];
    heater.at.power_on = 0.0;
    heater.commands.water_valve = 1.0;
    heater.commands.bypass = 0.0;
    heater.commands.spark = 1.0;
    heater.run(1.0);
    const Observables o = heater.look();
    EXPECT_EQ(o.flame_lit, 0.0);
    EXPECT_EQ(o.gas_m3_per_s, 0.0);
    EXPECT_EQ(o.spark, 0.0);
    EXPECT_EQ(o.fan_current_a, 0.0);
    EXPECT_NEAR(heater.plant.state[water_valve], valve, 1e-12);
    EXPECT_NEAR(heater.plant.state[bypass_valve], bypass, 1e-12);
    for (const double solenoid : heater.plant.commands.bank_solenoid) EXPECT_EQ(solenoid, 0.0);
    heater.run(60.0);
    EXPECT_LT(heater.look().fan_rev_per_s, 0.1);
}

TEST(Isolation, ShutMeterValveLeavesNothingAtAnyTestPoint) {
    OpenLoop heater;
    heater.at.gas_meter_valve = 0.0;
    heater.commands = firing(3, 600.0, 0.5);
    heater.run(2.0);
    EXPECT_EQ(heater.look().regulator_outlet_pa, 0.0);
    EXPECT_EQ(heater.look().gas_inlet_pa, 0.0);
    EXPECT_LT(heater.look().manifold_pa, 0.01);
}

TEST(Isolation, HalfOpenGasValveCostsWorkingPressureButNoStaticPressure) {
    OpenLoop open, throttled;
    throttled.at.gas_isolator = 0.12;
    EXPECT_EQ(throttled.look().gas_inlet_pa, open.look().gas_inlet_pa);
    for (OpenLoop* heater : {&open, &throttled}) {
        heater->commands = firing(3, 950.0, 0.6);
        heater->run(2.0);
    }
    EXPECT_LT(throttled.look().gas_inlet_pa, open.look().gas_inlet_pa - 50.0);
}

TEST(Isolation, ShutWaterIsolatorStopsTheFlowSensor) {
    OpenLoop heater;
    heater.at.hot_tap_conductance = 5.0e-7;
    heater.run(2.0);
    EXPECT_GT(heater.plant.state[flow_reading] * 60000.0, 10.0);
    heater.at.water_isolator = 0.0;
    heater.run(2.0);
    EXPECT_LT(heater.plant.state[flow_reading] * 60000.0, 0.2);
}

TEST(ChangedCylinder, IsFullAndAtAirTemperature) {
    PlantParameters low = propane_parameters();
    low.cylinder_start_kg = 0.2;
    OpenLoop heater(low);
    heater.plant.state[cylinder_liquid_k] = 250.0;
    heater.at.cylinder_ambient_k = 276.0;
    change_cylinder(heater.plant, heater.at);
    EXPECT_EQ(heater.look().cylinder_kg, low.cylinder_full_kg);
    EXPECT_EQ(heater.look().cylinder_liquid_k, 276.0);
}

}  // namespace
}  // namespace emberpath::plant
