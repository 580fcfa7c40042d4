// Proves that energy closes: in steady state to rounding, over a whole transient to the error of the integral,
// and that combustion heat cannot exceed what gas and air allow.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/plant/algebra.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

using plant::Observables;

double imbalance_w(const Observables& o) {
    return o.heat_input_w + o.trace_heating_w - o.heat_to_water_w - o.flue_loss_w -
           o.casing_loss_w - o.storage_w;
}

class EnergyBalance : public testing::TestWithParam<OperatingPoint> {};

TEST_P(EnergyBalance, HeatInputLeavesAsHotWaterFlueAndCasingLoss) {
    const Observables o = warmed_up(GetParam()).look().plant;
    ASSERT_GT(o.heat_input_w, 1000.0);
    EXPECT_LT(std::abs(imbalance_w(o)) / o.heat_input_w, 1e-10);
    EXPECT_LT(std::abs(o.storage_w), 100.0) << "five minutes on, only the casing still warms";
    const double efficiency = o.heat_to_water_w / o.heat_input_w;
    EXPECT_GT(efficiency, 0.75);
    // Nothing condenses: no more than the net share of the gross heat can reach the water.
    EXPECT_LT(efficiency, GetParam().propane ? 0.920 : 0.9007);
}

/// Heat held by water, metal, pocket and casing, from the states alone [J].
double held_j(const plant::State<double>& x) {
    namespace hc = plant::heat_capacity;
    double sum = hc::pocket_kg * plant::water_j_per_kg_k * x[plant::mixing_pocket] +
                 hc::casing_j_per_k * x[plant::casing_air];
    for (std::size_t i = 0; i < plant::cell_count; ++i)
        sum += hc::water_cell_j_per_k * x[plant::water_0 + i] +
               hc::metal_cell_j_per_k * x[plant::metal_0 + i];
    return sum;
}

TEST_P(EnergyBalance, HeldHeatChangesByWhatTheFlowsLeaveOverAWholeDraw) {
    House house(GetParam().propane, GetParam().set_c);
    house.run(2.0);
    house.open_taps(GetParam().asked_lpm);
    const double before = held_j(house.heater.plant.state);
    double in_j = 0.0, out_j = 0.0;
    const auto net_flows = [&house] {
        const Observables o = house.look().plant;
        return std::pair(o.heat_input_w, o.heat_to_water_w + o.flue_loss_w + o.casing_loss_w);
    };
    // Trapezium rule between ticks; commands jump there, so a tick's error is a fraction of its jump.
    auto last = net_flows();
    for (int tick = 0; tick < 1200; ++tick) {
        house.run(signals::tick_s);
        const auto now = net_flows();
        in_j += 0.5 * (last.first + now.first) * signals::tick_s;
        out_j += 0.5 * (last.second + now.second) * signals::tick_s;
        last = now;
    }
    const double gained = held_j(house.heater.plant.state) - before;
    ASSERT_GT(in_j, 1e5);
    EXPECT_NEAR(gained, in_j - out_j, 1e-3 * in_j);
}

INSTANTIATE_TEST_SUITE_P(At, EnergyBalance, testing::ValuesIn(operating_points),
                         [](const auto& point) { return point.param.name; });

TEST(EnergyBalance, AStandingHeaterLosesWhatItHeld) {
    House house = warmed_up({"shower", 50.0, 10.0});
    house.open_taps(0.0);
    house.run(30.0);
    const double before = held_j(house.heater.plant.state);
    house.run(600.0);
    const Observables o = house.look().plant;
    EXPECT_LT(held_j(house.heater.plant.state), before);
    EXPECT_EQ(o.heat_input_w, 0.0);
    EXPECT_NEAR(imbalance_w(o), 0.0, 1e-9);
}

TEST(HeatOfCombustion, IsLimitedByAirBelowStoichiometric) {
    const plant::PlantParameters p = plant::natural_gas_parameters();
    plant::State<double> x{};
    for (std::size_t b = 0; b < plant::bank_count; ++b) x[plant::flame_0 + b] = 1.0;
    plant::GasFlows<double> gas{};
    gas.bank_m3_per_s = {1e-4, 2e-4, 3e-4};
    const double all = 6e-4 * p.gross_j_per_m3 * p.net_to_gross;
    EXPECT_NEAR(plant::net_heat_w(p, x, gas, {1.5, 1.5, 1.5}), all, 1e-9 * all);
    EXPECT_NEAR(plant::net_heat_w(p, x, gas, {0.5, 0.5, 0.5}), 0.5 * all, 1e-9 * all);
    EXPECT_NEAR(plant::net_heat_w(p, x, gas, {0.5, 2.0, 2.0}), all * 5.5 / 6.0, 1e-9 * all);
}

TEST(EnthalpyScale, InvertsItselfFromFrostToFlame) {
    for (int halves = 500; halves < 4000; halves += 25) {
        const double t = 0.5 * halves;
        EXPECT_NEAR(plant::temperature_of_enthalpy(plant::enthalpy_temperature(t)), t, 1e-9);
    }
}

}  // namespace
}  // namespace emberpath::laws
