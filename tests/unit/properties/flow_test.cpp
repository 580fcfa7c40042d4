// Proves the laws of gas and water flow: square roots, inverses, continuity, agreement of formulas.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/properties/gas_flow.hpp"
#include "sim/properties/hydraulics.hpp"

namespace emberpath::properties {
namespace {

TEST(GasFlow, InjectorFlowFollowsTheRootOfPressureAndDensity) {
    const double one = injector_flow_m3_per_s(2e-5, 500.0, 0.68);
    EXPECT_DOUBLE_EQ(injector_flow_m3_per_s(2e-5, 2000.0, 0.68), 2.0 * one);
    EXPECT_DOUBLE_EQ(injector_flow_m3_per_s(2e-5, 500.0, 4.0 * 0.68), 0.5 * one);
    EXPECT_DOUBLE_EQ(injector_flow_m3_per_s(4e-5, 500.0, 0.68), 2.0 * one);
    EXPECT_EQ(injector_flow_m3_per_s(2e-5, 0.0, 0.68), 0.0);
}

TEST(GasFlow, InjectorLanesHaveTheBitsOfTheScalar) {
    math::Pack<8> area(2e-5), pressure, density(0.68);
    for (std::size_t i = 0; i < 8; ++i) math::set_lane(pressure, i, 111.0 * static_cast<double>(i));
    const math::Pack<8> flow = injector_flow_m3_per_s(area, pressure, density);
    for (std::size_t i = 0; i < 8; ++i)
        EXPECT_EQ(math::lane(flow, i), injector_flow_m3_per_s(2e-5, math::lane(pressure, i), 0.68));
}

TEST(GasFlow, PolesResistanceGivesThePressureDropBack) {
    const GasPipe pipe{0.0202, 12.0, 0.6};
    const double flow = pole_flow_m3_per_s(pipe, 80.0);
    EXPECT_NEAR(pole_resistance(pipe) * flow * flow, 80.0, 1e-9);
}

// The metric constant 0.0071 is printed with two figures, so the forms differ by 0.8 %.
TEST(GasFlow, BothFormsOfPolesFormulaAgreeWithinTheFiguresPrinted) {
    for (const double bore : {0.013, 0.020, 0.026})
        for (const double drop : {30.0, 75.0, 250.0}) {
            const GasPipe pipe{bore, 15.0, 0.6};
            EXPECT_NEAR(pole_imperial_flow_m3_per_s(pipe, drop) / pole_flow_m3_per_s(pipe, drop),
                        1.0, 0.5 / 71.0 + 2e-3);
        }
}

TEST(GasFlow, TheFormulasScatterAsTheTradeKnows) {
    const GasPipe pipe{0.0158, 15.0, 0.6};
    const double code = code_natural_gas_flow_m3_per_s(pipe.bore_m, pipe.length_m, 747.0);
    EXPECT_GT(pole_flow_m3_per_s(pipe, 747.0), code);
    EXPECT_LT(pole_flow_m3_per_s(pipe, 747.0), 1.25 * code);
    EXPECT_LT(spitzglass_flow_m3_per_s(pipe, 747.0), 0.9 * code);
}

TEST(Hydraulics, ColebrookSolvesItsOwnEquation) {
    for (const double re : {3000.0, 1e4, 1e5, 1e6, 1e8})
        for (const double roughness : {0.0, 1e-5, 1e-3, 0.05}) {
            const double root = std::sqrt(colebrook_friction(re, roughness));
            EXPECT_NEAR(1.0 / root, -2.0 * std::log10(roughness / 3.7 + 2.51 / (re * root)), 1e-9);
            if (re >= 5000.0 && roughness > 0.0) {
                EXPECT_NEAR(swamee_jain_friction(re, roughness), root * root, 0.03 * root * root);
            }
        }
}

TEST(Hydraulics, FrictionHasNoJump) {
    double last = darcy_friction(1000.0, 1e-4);
    for (double re = 1010.0; re < 10000.0; re += 10.0) {
        const double now = darcy_friction(re, 1e-4);
        EXPECT_LT(std::abs(now - last), 0.02 * last) << re;
        last = now;
    }
}

TEST(Hydraulics, FlowAndDropInvertEachOther) {
    const Fluid water{999.0, 1.1e-3};
    const Pipe pipe{0.0136, 10.0, 1.5e-6};
    for (const double flow : {1e-6, 2e-5, 1e-4, 4e-4}) {
        const double drop = darcy_pressure_drop_pa(water, pipe, flow);
        EXPECT_NEAR(darcy_flow_m3_per_s(water, pipe, drop), flow, 1e-9 * flow);
    }
    EXPECT_EQ(darcy_pressure_drop_pa(water, pipe, 0.0), 0.0);
}

TEST(Hydraulics, ExplicitBoreCarriesItsFlow) {
    const double nu = 1.1e-6;
    const double bore = swamee_jain_bore_m({5e-4, 20.0, 4.0, 1.5e-6}, nu);
    const double drop = darcy_pressure_drop_pa({1000.0, nu * 1000.0}, {bore, 20.0, 1.5e-6}, 5e-4);
    EXPECT_NEAR(drop / (1000.0 * standard_gravity_m_per_s2), 4.0, 0.3);
}

TEST(Hydraulics, ValveFlowAndDropInvertEachOther) {
    const double flow = valve_flow_m3_per_s(1.5, 40e3);
    EXPECT_NEAR(valve_pressure_drop_pa(1.5, flow), 40e3, 1e-6);
}

TEST(Hydraulics, AnOrificeInAPipePassesMoreThanOneInATank) {
    const double tank = orifice_flow_m3_per_s({0.005, 0.61, 0.0}, 998.0, 1e4);
    const double pipe = orifice_flow_m3_per_s({0.005, 0.61, 0.6}, 998.0, 1e4);
    EXPECT_NEAR(pipe / tank, 1.0 / std::sqrt(1.0 - 0.6 * 0.6 * 0.6 * 0.6), 1e-12);
}

}  // namespace
}  // namespace emberpath::properties
