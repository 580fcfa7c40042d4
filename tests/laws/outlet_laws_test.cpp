// Proves outlets on several floors, tempering valve, mixer cross-flow, limiting valve, relief valve and leaks:
// the network balances at any mix of heights, and each does what it does in a house.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/math/random.hpp"
#include "sim/plant/water_network.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

using plant::Outlet;
using plant::PlantParameters;
using plant::State;
using plant::Surroundings;

constexpr double one_tap = 1.2 * 5.270463e-7;  // fully open [m3/s per sqrt(Pa)]
constexpr double pa_per_m = 999.0 * 9.80665;   // of water
constexpr double no_flow_m3_per_s = 1e-9;

State<double> at_rest() {
    State<double> x{};
    x.fill(300.0);
    x[plant::companion_share] = 0.0;
    x[plant::water_valve] = 1.0;
    x[plant::bypass_valve] = 0.2;
    return x;
}

Surroundings open(std::initializer_list<Outlet> outlets) {
    Surroundings at;
    for (const Outlet& outlet : outlets) at.outlets[at.outlet_count++] = outlet;
    return at;
}

/// What the outlets take less what arrives where the hot pipe divides [m3/s]: zero when solved.
double imbalance(const PlantParameters& p, const Surroundings& at) {
    const auto flows = plant::water_flows(p, at_rest(), at);
    double taken = 0.0;
    for (std::size_t i = 0; i < at.outlet_count; ++i)
        taken += at.outlets[i].conductance *
                 std::sqrt(std::max(0.0, flows.dividing_pa - at.outlets[i].head_pa));
    return taken - flows.heater_m3_per_s - flows.cross_m3_per_s;
}

TEST(Outlets, BalanceAtAnyHeightsOpeningsAndMainsPressure) {
    math::Random random(7, "outlets");
    std::vector<double> left_over;
    for (int i = 0; i < 20000; ++i) {
        PlantParameters p = plant::natural_gas_parameters();
        p.cross_flow_gain = random.uniform() < 0.5 ? 0.0 : 0.5 * one_tap * random.uniform();
        Surroundings at;
        at.mains_water_pa = 200.0e3 + 500.0e3 * random.uniform();
        at.cold_draw_m3_per_s = 2e-4 * random.uniform();
        at.outlet_count = 1 + static_cast<std::size_t>(3.999 * random.uniform());
        for (std::size_t k = 0; k < at.outlet_count; ++k)
            at.outlets[k] = {k, one_tap * (0.05 + 0.95 * random.uniform()),
                             9.0 * pa_per_m * random.uniform(), 0.0};
        left_over.push_back(std::abs(imbalance(p, at)));
    }
    std::sort(left_over.begin(), left_over.end());
    EXPECT_LT(left_over[19800], 3e-4 * litre_per_minute);
    EXPECT_LT(left_over[19980], 0.07 * litre_per_minute);
    EXPECT_LT(left_over.back(), 0.6 * litre_per_minute);  // an upper outlet that just dribbles
}

TEST(Outlets, OneHeightIsTheClosedForm) {
    const PlantParameters p = plant::natural_gas_parameters();
    Surroundings plain;
    plain.hot_tap_conductance = 1.5 * one_tap;
    const double listed =
        plant::water_flows(p, at_rest(), open({{0, one_tap}, {1, 0.5 * one_tap}})).heater_m3_per_s;
    EXPECT_NEAR(listed, plant::water_flows(p, at_rest(), plain).heater_m3_per_s, 1e-15);
}

TEST(Outlets, OneHeightIsSolvedAtOnceAsWellAsInFourSteps) {
    math::Random random(8, "one height");
    double worst = 0.0;
    for (int i = 0; i < 2000; ++i) {
        PlantParameters p = plant::natural_gas_parameters();
        Surroundings at =
            open({{0, one_tap * random.uniform(), 9.0 * pa_per_m * random.uniform()}});
        at.mains_water_pa = 100.0e3 + 500.0e3 * random.uniform();
        at.cold_draw_m3_per_s = 4e-4 * random.uniform();
        const double at_once = plant::water_flows(p, at_rest(), at).heater_m3_per_s;
        p.cross_flow_gain = 1e-30;  // far too little to feel, but it asks for all steps
        const double in_steps = plant::water_flows(p, at_rest(), at).heater_m3_per_s;
        worst = std::max(worst, std::abs(at_once - in_steps) / (in_steps + no_flow_m3_per_s));
    }
    EXPECT_LT(worst, 1e-9);
}

TEST(Outlets, AnUpperFloorTakesItsHeadFromThePressure) {
    const PlantParameters p = plant::natural_gas_parameters();
    const double head = 6.0 * pa_per_m;
    Surroundings weak;
    weak.outlets[0] = {0, one_tap, head, 0.0};
    weak.outlet_count = 1;
    Surroundings level;
    level.hot_tap_conductance = one_tap;
    level.mains_water_pa = weak.mains_water_pa - head;
    EXPECT_NEAR(plant::water_flows(p, at_rest(), weak).heater_m3_per_s,
                plant::water_flows(p, at_rest(), level).heater_m3_per_s, 1e-12);
    weak.mains_water_pa = 0.9 * head;
    EXPECT_LT(plant::water_flows(p, at_rest(), weak).heater_m3_per_s, no_flow_m3_per_s);
}

TEST(Outlets, ATapBelowStarvesTheShowerAbove) {
    House house = warmed_up({"plain", 50.0, 0.0});
    auto& at = house.inputs.surroundings;
    at.mains_water_pa = 150.0e3;
    at.outlets[0] = {0, one_tap, 6.0 * pa_per_m, 0.0};
    at.outlet_count = 1;
    house.run(5.0);
    const double alone = house.look().plant.tap_m3_per_s[0];
    at.outlets[1] = {1, 2.0 * one_tap, 0.0, 0.0};
    at.outlet_count = 2;
    house.run(5.0);
    EXPECT_GT(alone, 3.0 * litre_per_minute);
    EXPECT_LT(house.look().plant.tap_m3_per_s[0], 0.7 * alone);
}

TEST(Outlets, ACloggedShowerHeadSlowsOnlyItsOwnOutlet) {
    House house;
    auto& at = house.inputs.surroundings;
    at.outlets[0] = {2, one_tap};
    at.outlet_count = 1;
    house.heater.plant.parameters.tap_opening[2] = 0.10;
    house.run(3.0);
    EXPECT_LT(house.look().plant.tap_m3_per_s[2], 2.5 * litre_per_minute);
    EXPECT_GT(house.look().plant.tap_m3_per_s[2], 1.0 * litre_per_minute);
    at.outlets[0].tap = 1;
    house.run(3.0);
    EXPECT_GT(house.look().plant.tap_m3_per_s[1], 15.0 * litre_per_minute);
}

/// A shower behind a tempering valve, heater at 60 degC, after five minutes.
plant::Observables tempered_shower(double worn_cold_share) {
    House house(false, 60.0);
    house.heater.plant.parameters.tempering_cold_share = worn_cold_share;
    auto& at = house.inputs.surroundings;
    at.outlets[0] = {0, 0.6 * one_tap, 0.0, 1.0};
    at.outlet_count = 1;
    house.run(300.0);
    return house.look().plant;
}

TEST(TemperingValve, HoldsItsTemperatureAndWornLetsTooMuchColdIn) {
    const plant::Observables sound = tempered_shower(0.0);
    EXPECT_NEAR(sound.outlet_water_k, 60.0 + celsius, 1.0);
    EXPECT_NEAR(sound.tap_k[0], 50.0 + celsius, 0.1);
    const double total = sound.tap_m3_per_s[0];
    EXPECT_NEAR(sound.hot_water_m3_per_s / total, (50.0 - 14.0) / (sound.tap_water_k - 287.15),
                0.01);
    const plant::Observables worn = tempered_shower(0.55);
    EXPECT_NEAR(worn.outlet_water_k, 60.0 + celsius, 1.0);
    EXPECT_LT(worn.tap_k[0], 37.0 + celsius);
}

TEST(MixerCrossFlow, CoolsTheTapAndKeepsItRunningWithTheHeaterShutOff) {
    House sound = warmed_up({"shower", 50.0, 8.0});
    EXPECT_EQ(sound.look().plant.cross_flow_m3_per_s, 0.0);
    House mixed = sound;
    mixed.heater.plant.parameters.cross_flow_gain = 0.5 * one_tap;
    mixed.run(120.0);
    const plant::Observables o = mixed.look().plant;
    EXPECT_NEAR(o.outlet_water_k, 50.0 + celsius, 1.0);
    EXPECT_LT(o.tap_water_k, 46.0 + celsius);
    EXPECT_LT(o.hot_water_m3_per_s, sound.look().plant.hot_water_m3_per_s);
    for (House* house : {&sound, &mixed}) {
        house->inputs.surroundings.water_isolator = 0.0;
        house->run(5.0);
    }
    EXPECT_LT(sound.look().plant.hot_water_m3_per_s, 0.1 * litre_per_minute);
    EXPECT_EQ(sound.look().plant.cross_flow_m3_per_s, 0.0);
    EXPECT_GT(mixed.look().plant.cross_flow_m3_per_s, 3.0 * litre_per_minute);
}

TEST(MainsPressure, RisesAtNightUntilTheLimitingValveHoldsIt) {
    House house;
    auto& p = house.heater.plant.parameters;
    p.mains_rise_at_night_pa = 450.0e3;
    house.run(5.0);
    EXPECT_NEAR(house.look().plant.water_inlet_pa, 400.0e3, 1.0);
    EXPECT_EQ(house.look().plant.relief_weep_m3_per_s, 0.0);
    house.inputs.surroundings.night = 1.0;
    house.run(5.0);
    EXPECT_NEAR(house.look().plant.water_inlet_pa, 850.0e3, 10.0);
    EXPECT_NEAR(house.look().plant.relief_weep_m3_per_s, 150.0e3 * 2.0e-12, 1e-11);
    p.mains_limit_pa = 500.0e3;
    house.run(5.0);
    EXPECT_NEAR(house.look().plant.water_inlet_pa, 500.0e3, 10.0);
    EXPECT_EQ(house.look().plant.relief_weep_m3_per_s, 0.0);
}

/// Pressure lost in two minutes behind the shut cold valve, all taps shut [Pa].
double pressure_lost(double leak_gain) {
    House house;
    house.heater.plant.parameters.casing_leak_gain = leak_gain;
    house.run(5.0);
    const double before = house.look().plant.water_inlet_pa;
    house.inputs.surroundings.water_isolator = 0.0;
    house.run(120.0);
    return before - house.look().plant.water_inlet_pa;
}

TEST(Pinhole, LosesShutInPressureAndWetsTheCasing) {
    constexpr double pinhole = 1.0e-10;  // 3.8 mL/min at mains pressure
    EXPECT_EQ(pressure_lost(0.0), 0.0);
    EXPECT_GT(pressure_lost(pinhole), 20.0e3);
    EXPECT_LT(pressure_lost(pinhole), 60.0e3);
    House house;
    house.heater.plant.parameters.casing_leak_gain = pinhole;
    house.run(1800.0);
    EXPECT_NEAR(house.look().plant.casing_leak_m3_per_s, pinhole * std::sqrt(400.0e3), 1e-12);
    EXPECT_GT(house.look().plant.casing_water_kg, 0.015);
    EXPECT_LT(house.look().plant.casing_water_kg, 0.025);
}

TEST(Strainer, TakesItsOwnPressureDrop) {
    House house = warmed_up({"shower", 50.0, 10.0});
    const auto& p = house.heater.plant.parameters;
    const plant::Observables o = house.look().plant;
    const double q = o.hot_water_m3_per_s;
    EXPECT_NEAR(o.strainer_drop_pa, p.strainer_resistance * q * q, 1e-9);
    house.heater.plant.parameters.strainer_resistance *= 200.0;
    house.run(60.0);
    EXPECT_GT(house.look().plant.strainer_drop_pa, 50.0 * o.strainer_drop_pa);
    EXPECT_LT(house.look().plant.hot_water_m3_per_s, 0.95 * q);
}

}  // namespace
}  // namespace emberpath::laws
