// Proves the water network: the closed form satisfies its own pressure balance, parallel paths share one
// pressure drop, and every valve acts the right way.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/plant/water_network.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

using plant::PlantParameters;
using plant::State;
using plant::Surroundings;
using plant::WaterFlows;

State<double> valves(double water_valve, double bypass) {
    State<double> x{};
    x[plant::water_valve] = water_valve;
    x[plant::bypass_valve] = bypass;
    return x;
}

Surroundings taps(double conductance) {
    Surroundings at;
    at.hot_tap_conductance = conductance;
    return at;
}

const PlantParameters p = plant::natural_gas_parameters();
constexpr double one_tap = 1.2 * 5.270463e-7;  // fully open

double flow(double water_valve, double bypass, const Surroundings& at) {
    return plant::water_flows(p, valves(water_valve, bypass), at).heater_m3_per_s;
}

TEST(WaterNetwork, FlowUsesUpTheWholeMainsPressure) {
    for (const double opening : {0.2, 0.5, 1.0})
        for (const double drawn : {0.0, 1e-4, 3e-4}) {
            Surroundings at = taps(one_tap);
            at.cold_draw_m3_per_s = drawn;
            const WaterFlows<double> q = plant::water_flows(p, valves(opening, 0.3), at);
            const double valve = p.water_valve_gain * (0.03 + 0.97 * opening * opening);
            const double parallel = p.exchanger_conductance + p.bypass_gain * 0.09;
            const double h = q.heater_m3_per_s;
            const auto square = [](double x) { return x * x; };
            const double lost =
                p.water_supply_resistance * square(h + drawn) +
                (plant::water_inlet_resistance(p) + p.water_outlet_resistance) * square(h) +
                square(h / valve) + square(h / parallel) + square(h / one_tap);
            EXPECT_NEAR(lost, at.mains_water_pa, 1e-4);
        }
}

TEST(WaterNetwork, ExchangerAndBypassShareOnePressureDrop) {
    const WaterFlows<double> q = plant::water_flows(p, valves(1.0, 0.6), taps(one_tap));
    EXPECT_NEAR(q.exchanger_m3_per_s + q.bypass_m3_per_s, q.heater_m3_per_s, 1e-18);
    const double through = q.exchanger_m3_per_s / p.exchanger_conductance;
    const double around = q.bypass_m3_per_s / (p.bypass_gain * 0.36);
    EXPECT_NEAR(through * through, around * around, 1e-6);
}

TEST(WaterNetwork, OneTapGivesAboutTwentyAndThreeTapsAboutThirtyLitres) {
    EXPECT_NEAR(flow(1.0, 0.0, taps(one_tap)) / litre_per_minute, 19.8, 1.0);
    EXPECT_NEAR(flow(1.0, 0.0, taps(3.0 * one_tap)) / litre_per_minute, 30.0, 1.5);
}

TEST(WaterNetwork, EveryValveActsTheRightWay) {
    const Surroundings open = taps(one_tap);
    const double before = flow(0.6, 0.2, open);
    EXPECT_GT(flow(0.7, 0.2, open), before);
    EXPECT_GT(flow(0.6, 0.3, open), before);
    EXPECT_GT(flow(0.6, 0.2, taps(1.1 * one_tap)), before);
    Surroundings flushed = open, weak = open, half_shut = open;
    flushed.cold_draw_m3_per_s = 2e-4;
    weak.mains_water_pa = 200.0e3;
    half_shut.water_isolator = 0.3;
    for (const Surroundings& at : {flushed, weak, half_shut}) EXPECT_LT(flow(0.6, 0.2, at), before);
}

TEST(WaterNetwork, StandsStillWithTapsOrIsolatorShut) {
    EXPECT_LT(flow(1.0, 0.3, taps(0.0)), 1e-9);
    Surroundings shut = taps(one_tap);
    shut.water_isolator = 0.0;
    EXPECT_LT(flow(1.0, 0.3, shut), 2e-6);  // a drip, far below what starts the burner
    EXPECT_GE(flow(1.0, 0.3, shut), 0.0);
}

TEST(WaterNetwork, NeverRunsBackwardsWhenOthersDrawAllThePressure) {
    Surroundings at = taps(one_tap);
    for (const double drawn : {1e-3, 1.05e-3, 2e-3}) {
        at.cold_draw_m3_per_s = drawn;
        EXPECT_GE(flow(1.0, 0.0, at), 0.0);
    }
}

TEST(WaterNetwork, FlushingWhileSomebodyShowersLowersTheFlow) {
    House house = warmed_up({"shower", 50.0, 10.0});
    const double before = house.look().plant.hot_water_m3_per_s;
    house.inputs.surroundings.cold_draw_m3_per_s = 15.0 * litre_per_minute;
    house.run(1.0);
    EXPECT_LT(house.look().plant.hot_water_m3_per_s, 0.96 * before);
}

}  // namespace
}  // namespace emberpath::laws
