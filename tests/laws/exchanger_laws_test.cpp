// Proves the exchanger: exponents and limits of its conductances, and at named operating points which way scale,
// soot, set point and inlet temperature move the readings.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/plant/exchanger.hpp"
#include "sim/properties/combustion.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

using plant::Observables;
using plant::PlantParameters;

const PlantParameters p = plant::natural_gas_parameters();

TEST(WaterSide, ConductanceFollowsTheFlowToTheFourFifths) {
    const double one = plant::water_side_conductance(p, 0.33) * 8.0;
    EXPECT_NEAR(one, 2600.0, 1e-9);
    EXPECT_NEAR(plant::water_side_conductance(p, 0.165) * 8.0 / one, std::pow(0.5, 0.8), 1e-12);
    EXPECT_NEAR(plant::water_side_conductance(p, 0.0) * 8.0, 60.0, 1e-9) << "still water conducts";
}

TEST(WaterSide, ScaleAddsInSeries) {
    PlantParameters scaled = p;
    scaled.scale_k_per_w = 0.0022;
    const double clean_k_per_w = 1.0 / (8.0 * plant::water_side_conductance(p, 0.2));
    const double total_k_per_w = 1.0 / (8.0 * plant::water_side_conductance(scaled, 0.2));
    EXPECT_NEAR(total_k_per_w - clean_k_per_w, 0.0022, 1e-12);
}

TEST(GasSide, ConductanceFollowsTheGasAndTheLitShare) {
    EXPECT_NEAR(plant::gas_side_conductance(p, 0.020, 1.0), 67.0, 1e-12);
    EXPECT_NEAR(plant::gas_side_conductance(p, 0.010, 1.0), 67.0 * std::pow(0.5, 0.65), 1e-12);
    EXPECT_NEAR(plant::gas_side_conductance(p, 0.020, 0.25), 67.0 * 0.5875, 1e-12);
}

TEST(GasSide, EffectivenessStaysBetweenNothingAndAll) {
    double last = 0.0;
    for (int ua = 0; ua < 400; ua += 10) {
        const double now = plant::gas_side_effectiveness(static_cast<double>(ua), 0.01);
        EXPECT_GE(now, last);
        EXPECT_LE(now, 1.0);
        last = now;
    }
}

TEST(GasSide, GivesUpNoMoreThanItBrings) {
    plant::State<double> x{};
    for (std::size_t i = 0; i < plant::cell_count; ++i) x[plant::metal_0 + i] = 330.0;
    for (const double net_w : {0.0, 3e3, 36e3})
        for (const double flow : {2e-4, 5e-3, 0.02}) {
            const auto gas = plant::gas_side(p, x, plant::Firing<double>{net_w, flow, 1.0}, 288.15);
            double given = 0.0;
            for (const double w : gas.to_metal_w) given += w;
            const double lost = flow * plant::flue_gas_j_per_kg_k *
                                (gas.leaving_theta - plant::enthalpy_temperature(288.15));
            EXPECT_NEAR(given + lost, net_w, 1e-9 * (net_w + 1.0));
            EXPECT_GE(plant::temperature_of_enthalpy(gas.leaving_theta), 288.0);
        }
}

/// What the plant makes of a lean adiabatic flame [K].
double flame_k(const PlantParameters& gas, double excess_air_ratio) {
    const double flue_gas =
        gas.stoichiometric_air * excess_air_ratio * plant::air_kg_per_m3 + gas.gas_kg_per_m3;
    const double heat = gas.gross_j_per_m3 * gas.net_to_gross;
    return plant::temperature_of_enthalpy(plant::enthalpy_temperature(288.15) +
                                          heat / (flue_gas * plant::flue_gas_j_per_kg_k));
}

TEST(GasSide, EnthalpyLiesWithinTwoAndAHalfPercentOfTheProductsOfLeanFlames) {
    // In enthalpy: the exact flame's temperature, put into the plant's scale, against the plant's flame.
    for (int quarters = 6; quarters <= 14; ++quarters) {
        const double ratio = 0.25 * quarters;
        const double methane_k = properties::complete_flame_temperature_k(
            properties::Species::methane, ratio, 288.15, 288.15);
        EXPECT_NEAR(
            plant::enthalpy_temperature(methane_k) / plant::enthalpy_temperature(flame_k(p, ratio)),
            1.0, 0.025)
            << ratio;
        const double propane_k = properties::complete_flame_temperature_k(
            properties::Species::propane, ratio, 288.15, 288.15);
        EXPECT_NEAR(plant::enthalpy_temperature(propane_k) /
                        plant::enthalpy_temperature(flame_k(plant::propane_parameters(), ratio)),
                    1.0, 0.025)
            << ratio;
    }
}

class Exchanger : public testing::TestWithParam<OperatingPoint> {
  protected:
    /// The point with one thing changed before the taps open, as it stands after two minutes.
    template <class Change>
    static Observables with(Change change) {
        const OperatingPoint& point = GetParam();
        House house(point.propane, point.set_c);
        house.run(2.0);
        house.open_taps(point.asked_lpm);
        change(house);
        house.run(120.0);
        return house.look().plant;
    }
    static Observables sound() {
        return with([](House&) {});
    }
};

TEST_P(Exchanger, ScaleRaisesMetalAndFlueTemperature) {
    const Observables scaled =
        with([](House& h) { h.heater.plant.parameters.scale_k_per_w = 0.0004; });
    EXPECT_GT(scaled.hottest_metal_k, sound().hottest_metal_k + 0.5);
    EXPECT_GT(scaled.flue_k, sound().flue_k);
}

TEST_P(Exchanger, SootRaisesFlueTemperatureAndCarbonMonoxide) {
    const Observables sooted = with([](House& h) {
        h.heater.plant.parameters.gas_side_ua_factor = 0.9;
        h.heater.plant.parameters.air_exchanger_resistance *= 2.0;
        h.heater.plant.parameters.soot = 0.3;
    });
    EXPECT_GT(sooted.flue_k, sound().flue_k + 1.0);
    EXPECT_GT(sooted.co_share, 2.0 * sound().co_share);
}

TEST_P(Exchanger, WarmerInletNeedsLessGas) {
    const Observables warmer = with([](House& h) { h.inputs.surroundings.inlet_water_k += 6.0; });
    // At full fire the same heat warms more water instead.
    EXPECT_LE(warmer.heat_input_w, sound().heat_input_w * 1.005);
    EXPECT_GE(warmer.outlet_water_k, sound().outlet_water_k - 0.5);
}

TEST_P(Exchanger, OutletLiesBetweenInletAndExchanger) {
    const Observables now = sound();
    EXPECT_GT(now.outlet_water_k, now.inlet_water_k + 5.0);
    EXPECT_LE(now.outlet_water_k, now.exchanger_outlet_k);
    EXPECT_LE(now.tap_water_k, now.outlet_water_k + 0.5);
    EXPECT_GT(now.hottest_metal_k, now.exchanger_outlet_k);
}

INSTANTIATE_TEST_SUITE_P(At, Exchanger, testing::ValuesIn(operating_points),
                         [](const auto& point) { return point.param.name; });

}  // namespace
}  // namespace emberpath::laws
