// Proves the propane cylinder: what it loses is what burns, it cools while it gives, recovers at rest, and a
// mains-gas house is untouched by it.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/plant/algebra.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

House cold_propane_house(double liquid_kg, double ambient_k) {
    House house(true, 50.0);
    house.heater.plant.parameters.cylinder_start_kg = liquid_kg;
    house.inputs.surroundings.cylinder_ambient_k = ambient_k;
    plant::settle_cold(house.heater.plant, house.inputs.surroundings);
    house.run(2.0);
    return house;
}

TEST(Cylinder, LosesExactlyTheGasThatFlows) {
    House house = warmed_up({"propane", 50.0, 10.0, true});
    const double rho = house.heater.plant.parameters.gas_kg_per_m3;
    for (int i = 0; i < 100; ++i) {
        const auto& plant = house.heater.plant;
        const auto d = plant::derivative(plant, plant.state, house.inputs.surroundings);
        const double gas = house.look().plant.gas_m3_per_s;
        EXPECT_EQ(d[plant::cylinder_liquid_kg], -(gas * rho));
        house.run(signals::tick_s);
    }
}

TEST(Cylinder, MassFallsByTheGasBurntOverADraw) {
    House house = warmed_up({"propane", 50.0, 10.0, true});
    const double rho = house.heater.plant.parameters.gas_kg_per_m3;
    const double before = house.heater.plant.state[plant::cylinder_liquid_kg];
    double burnt = 0.0;
    double last = house.look().plant.gas_m3_per_s;
    for (int tick = 0; tick < 600; ++tick) {
        house.run(signals::tick_s);
        const double now = house.look().plant.gas_m3_per_s;
        burnt += 0.5 * (last + now) * rho * signals::tick_s;
        last = now;
    }
    const double lost = before - house.heater.plant.state[plant::cylinder_liquid_kg];
    ASSERT_GT(burnt, 0.02);
    EXPECT_NEAR(lost / burnt, 1.0, 1e-6);
}

TEST(Cylinder, EnergyOfBoilingComesFromLiquidSteelAndAir) {
    House house = warmed_up({"propane", 50.0, 16.0, true});
    const auto& plant = house.heater.plant;
    const auto& at = house.inputs.surroundings;
    const auto d = plant::derivative(plant, plant.state, at);
    const double capacity = plant.state[plant::cylinder_liquid_kg] * 2520.0 + 12000.0;
    const double boiling_w = -d[plant::cylinder_liquid_kg] * 355.0e3;
    const double from_air =
        plant::cylinder_heat_w(plant.parameters, plant.state[plant::cylinder_liquid_k],
                               plant.state[plant::cylinder_liquid_kg], at);
    EXPECT_NEAR(capacity * d[plant::cylinder_liquid_k], from_air - boiling_w, 1e-9 * boiling_w);
    EXPECT_GT(boiling_w, 200.0);
}

TEST(Cylinder, CoolsDuringALongDrawAndRecoversAtRest) {
    House house = cold_propane_house(9.0, 278.15);
    house.open_taps(16.0);
    house.run(1200.0);
    const plant::Observables drawn = house.look().plant;
    EXPECT_LT(drawn.cylinder_liquid_k, 273.15);
    house.open_taps(0.0);
    house.run(3600.0);
    const plant::Observables rested = house.look().plant;
    EXPECT_GT(rested.cylinder_liquid_k, drawn.cylinder_liquid_k + 3.0);
    EXPECT_GT(rested.vapour_pressure_pa, drawn.vapour_pressure_pa);
}

TEST(Cylinder, NearlyEmptyColdOneSagsOverMinutesAndStillLightsAtRest) {
    House house = cold_propane_house(2.3, 278.15);
    house.open_taps(16.0);
    house.run(30.0);
    const double early = house.look().plant.manifold_pa;
    house.run(1170.0);
    const double late = house.look().plant.manifold_pa;
    EXPECT_GT(early, 1800.0);
    EXPECT_LT(late, 0.75 * early);
    house.open_taps(0.0);
    house.run(1800.0);
    house.open_taps(6.0);
    house.run(60.0);
    EXPECT_NEAR(house.look().plant.outlet_water_k, 50.0 + celsius, 1.0);
}

TEST(Cylinder, RunsOutWithoutTurningNegative) {
    House house = cold_propane_house(0.05, 288.15);
    house.open_taps(16.0);
    for (int i = 0; i < 6000; ++i) {
        house.run(signals::tick_s);
        ASSERT_GE(house.heater.plant.state[plant::cylinder_liquid_kg], 0.0);
        ASSERT_GT(house.heater.plant.state[plant::cylinder_liquid_k], 200.0);
    }
    EXPECT_EQ(house.look().plant.flame_lit, 0.0);
}

TEST(Cylinder, VapourPressureFollowsTheLiquid) {
    EXPECT_NEAR(plant::propane_vapour_pressure(288.15), 7.32e5, 0.02e5);
    EXPECT_NEAR(plant::propane_vapour_pressure(231.04), 1.013e5, 0.01e5);  // normal boiling point
    double last = 0.0;
    for (int t = 100; t < 330; t += 5) {
        const double now = plant::propane_vapour_pressure(static_cast<double>(t));
        EXPECT_GE(now, last);
        last = now;
    }
}

TEST(Cylinder, GivesNothingToOtherAppliancesWhenShutOrEmpty) {
    constexpr double cooktop_m3_per_s = 8.7e-5;  // 30 MJ/h of propane
    House shut = cold_propane_house(20.0, 288.15);
    shut.inputs.surroundings.other_gas_m3_per_s = cooktop_m3_per_s;
    shut.inputs.surroundings.gas_meter_valve = 0.0;
    const double before_kg = shut.heater.plant.state[plant::cylinder_liquid_kg];
    const double before_k = shut.heater.plant.state[plant::cylinder_liquid_k];
    shut.run(600.0);
    EXPECT_EQ(shut.heater.plant.state[plant::cylinder_liquid_kg], before_kg);
    EXPECT_NEAR(shut.heater.plant.state[plant::cylinder_liquid_k], before_k, 0.01);
    House empty = cold_propane_house(0.02, 288.15);
    empty.inputs.surroundings.other_gas_m3_per_s = cooktop_m3_per_s;
    empty.run(3600.0);
    EXPECT_GE(empty.heater.plant.state[plant::cylinder_liquid_kg], 0.0);
    EXPECT_GT(empty.heater.plant.state[plant::cylinder_liquid_k], 273.15) << "nothing left to boil";
}

TEST(Cylinder, StandsStillInAMainsGasHouse) {
    House house = warmed_up({"shower", 50.0, 10.0});
    EXPECT_EQ(house.heater.plant.state[plant::cylinder_liquid_kg], 30.0);
    EXPECT_NEAR(house.heater.plant.state[plant::cylinder_liquid_k], 288.15, 1e-9);
}

}  // namespace
}  // namespace emberpath::laws
