// Proves what stands before the burner: regulators that creep, isolating valve, pair of cylinders with its
// changeover, valve coils, and what a delayed ignition does.

#include <gtest/gtest.h>

#include <cmath>

#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

TEST(RegulatorCreep, RaisesTheLockUpPressureAtRestAndGoesWithTheDraw) {
    House house;
    house.run(600.0);
    EXPECT_EQ(house.look().plant.regulator_outlet_pa, 2350.0);
    house.heater.plant.parameters.regulator_creep_pa_per_s = 2.0;
    house.run(600.0);
    const double after_the_wait = house.look().plant.regulator_outlet_pa;
    EXPECT_NEAR(after_the_wait, 2350.0 + 5000.0 * (1.0 - std::exp(-1200.0 / 5000.0)), 5.0);
    house.open_taps(10.0);
    house.run(120.0);
    House sound = warmed_up({"sound", 50.0, 10.0});
    EXPECT_NEAR(house.look().plant.gas_inlet_pa, sound.look().plant.gas_inlet_pa, 5.0);
}

TEST(RegulatorCreep, OverGassesTheLightUpAfterALongRest) {
    const auto first_manifold = [](double rate) {
        House house(true);
        house.heater.plant.parameters.regulator_creep_pa_per_s = rate;
        house.run(3600.0);
        house.open_taps(10.0);
        double greatest = 0.0;
        for (int tick = 0; tick < 60 && house.look().plant.flame_lit < 0.1; ++tick) {
            house.run(signals::tick_s);
            greatest = std::max(greatest, house.look().plant.manifold_pa);
        }
        return greatest;
    };
    EXPECT_GT(first_manifold(5.0), 1.2 * first_manifold(0.0));
}

TEST(SecondStage, HighWorkingPressureOverGassesTheBurner) {
    House sound = warmed_up({"sound", 50.0, 16.0, true});
    House house(true);
    house.heater.plant.parameters.gas_no_load_pa = 8500.0;
    house.heater.plant.parameters.gas_lock_up_pa = 9000.0;
    house.run(2.0);
    house.open_taps(16.0);
    house.run(300.0);
    const plant::Observables o = house.look().plant;
    EXPECT_GT(o.gas_inlet_pa, 7000.0);
    EXPECT_GT(o.manifold_pa, 1.3 * house.heater.plant.commands.manifold_pressure_pa);
    EXPECT_LT(o.o2_share, sound.look().plant.o2_share - 0.01);
}

TEST(GasIsolator, PartClosedDropsPressureBetweenItsTwoSides) {
    House house = warmed_up({"shower", 50.0, 16.0});
    EXPECT_NEAR(house.look().plant.before_gas_isolator_pa, house.look().plant.gas_inlet_pa, 1e-6);
    house.heater.plant.parameters.gas_isolator_resistance = 1.0e9;
    house.run(60.0);
    const plant::Observables o = house.look().plant;
    const double drop = 1.0e9 * o.gas_m3_per_s * o.gas_m3_per_s;
    EXPECT_NEAR(o.before_gas_isolator_pa - o.gas_inlet_pa, drop, 1e-6);
    EXPECT_GT(drop, 500.0);
}

/// Two cylinders, the first nearly empty, after ten minutes of draw.
House pair(double stuck) {
    House house(true, 50.0);
    auto& p = house.heater.plant.parameters;
    p = plant::with_cylinder_pair(p);
    p.changeover_stuck = stuck;
    p.cylinder_start_kg = 0.5;
    plant::settle_cold(house.heater.plant, house.inputs.surroundings);
    house.run(2.0);
    house.open_taps(16.0);
    house.run(900.0);
    return house;
}

TEST(Changeover, TakesTheReserveWhenTheFirstCylinderFades) {
    const plant::Observables o = pair(0.0).look().plant;
    EXPECT_GT(o.reserve_in_use, 0.5);
    EXPECT_LT(o.reserve_kg, 44.9);
    EXPECT_GT(o.heat_input_w, 35.0e3);
}

TEST(Changeover, StuckStaysOnTheEmptySideThoughTheReserveIsFull) {
    const plant::Observables o = pair(1.0).look().plant;
    EXPECT_EQ(o.reserve_in_use, 0.0);
    EXPECT_EQ(o.reserve_kg, 45.0);
    EXPECT_GT(o.reserve_pa, 600.0e3);
    EXPECT_LT(o.cylinder_pa, 150.0e3);
    EXPECT_LT(o.heat_input_w, 20.0e3);
}

TEST(Changeover, LeverPutsTheReserveFirstUnlessStuck) {
    House house(true);
    house.heater.plant.parameters.reserve_fitted = 1.0;
    house.inputs.surroundings.reserve_first = 1.0;
    EXPECT_EQ(house.look().plant.reserve_in_use, 1.0);
    house.heater.plant.parameters.changeover_stuck = 1.0;
    EXPECT_EQ(house.look().plant.reserve_in_use, 0.0);
}

TEST(TwoStages, FirstStagePressureIsWhatTheSecondStageSees) {
    House house(true);
    house.heater.plant.parameters.first_stage_pa = 70.0e3;
    EXPECT_EQ(house.look().plant.before_regulator_pa, 70.0e3);
    house.run(2.0);
    house.open_taps(16.0);
    house.run(120.0);
    House single = warmed_up({"single", 50.0, 16.0, true});
    EXPECT_NEAR(house.look().plant.manifold_pa / single.look().plant.manifold_pa, 1.0, 0.02);
}

TEST(BoilOff, ASmallWallFreezesUnderTheDrawAndRecoversAtRest) {
    House house(true);
    auto& p = house.heater.plant.parameters;
    p.cylinder_full_kg = 9.0;
    p.cylinder_start_kg = 4.0;
    p.cylinder_wall_w_per_k = 5.0;
    p.cylinder_steel_j_per_k = 4000.0;
    house.inputs.surroundings.cylinder_ambient_k = 275.15;
    plant::settle_cold(house.heater.plant, house.inputs.surroundings);
    house.run(2.0);
    house.open_taps(16.0);
    house.run(600.0);
    const plant::Observables drawn = house.look().plant;
    EXPECT_LT(drawn.cylinder_liquid_k, 268.0);
    EXPECT_GT(drawn.cylinder_kg, 1.0);
    house.open_taps(0.0);
    house.run(3600.0);
    EXPECT_GT(house.look().plant.cylinder_pa, 1.2 * drawn.cylinder_pa);
}

TEST(ValveCoil, OpenPassesNoGasThoughItIsDriven) {
    House house;
    house.heater.plant.parameters.main_valve_works = 0.0;
    house.open_taps(10.0);
    bool driven = false;
    for (int tick = 0; tick < 80; ++tick) {
        house.run(signals::tick_s);
        driven = driven || house.heater.plant.commands.main_solenoid > 0.5;
        EXPECT_EQ(house.look().plant.gas_m3_per_s, 0.0);
        EXPECT_EQ(house.look().plant.manifold_pa, 0.0);
    }
    EXPECT_TRUE(driven);
}

TEST(ValveCoil, OpenBankCoilLeavesThatBankDark) {
    House house;
    house.heater.plant.parameters.bank_valve_works[2] = 0.0;
    house.run(2.0);
    house.open_taps(10.0);
    house.run(60.0);
    EXPECT_GT(house.heater.plant.flame.lit[1], 0.5);
    EXPECT_LT(house.heater.plant.flame.lit[2], 0.5);
}

TEST(IgnitionDelay, GathersGasUntilItLightsHard) {
    const auto gathered = [](double delay_s) {
        House house;
        house.heater.plant.parameters.ignition_delay_s = delay_s;
        house.open_taps(10.0);
        house.run(15.0);
        EXPECT_GT(house.look().plant.flame_lit, 0.2);
        return house.look().plant.rough_light_up_m3;
    };
    const double prompt = gathered(0.0);
    EXPECT_GT(gathered(2.0), 2.5 * prompt);
}

TEST(Thermistor, BreaksContactAboveItsTemperatureOnly) {
    House house = warmed_up({"shower", 50.0, 10.0});
    const double warm = house.look().plant.outlet_ohm;
    house.heater.plant.parameters.outlet_sensor.opens_above_k = 52.0 + celsius;
    EXPECT_EQ(house.look().plant.outlet_ohm, warm);
    house.heater.plant.parameters.outlet_sensor.opens_above_k = 48.0 + celsius;
    EXPECT_GT(house.look().plant.outlet_ohm, 4.0e6);
}

TEST(FlowTurbine, StandsStillBelowTheFlowItSticksAt) {
    House house;
    house.heater.plant.parameters.flow_sensor_sticks_m3_per_s = 5.0 * litre_per_minute;
    house.open_taps(4.0);
    house.run(5.0);
    EXPECT_LT(plant::sense(house.heater.plant, house.inputs.surroundings).flow_m3_per_s, 1e-12);
    house.open_taps(6.0);
    house.run(5.0);
    EXPECT_NEAR(plant::sense(house.heater.plant, house.inputs.surroundings).flow_m3_per_s,
                house.look().plant.hot_water_m3_per_s, 1e-6);
}

}  // namespace
}  // namespace emberpath::laws
