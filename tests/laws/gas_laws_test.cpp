// Proves the gas supply: manifold sqrt(p) law, limits of regulator, pipe and valve, isolators, other draws,
// and that no flow or pressure is ever negative.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/plant/gas_supply.hpp"
#include "sim/properties/gas_flow.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

using plant::GasFlows;
using plant::PlantParameters;
using plant::State;
using plant::Surroundings;

signals::ActuatorCommands<double> open_banks(int count) {
    signals::ActuatorCommands<double> c;
    c.main_solenoid = 1.0;
    for (int b = 0; b < count; ++b) c.bank_solenoid[static_cast<std::size_t>(b)] = 1.0;
    return c;
}

GasFlows<double> flows(const PlantParameters& p, double valve_pa, int banks = 3,
                       const Surroundings& at = {}) {
    State<double> x{};
    x[plant::valve_pressure] = valve_pa;
    x[plant::cylinder_liquid_k] = 288.15;
    x[plant::cylinder_liquid_kg] = 30.0;
    return plant::gas_flows(p, x, at, open_banks(banks), 0.0);
}

/// Pressure at the heater's inlet that the flow leaves [Pa]; the definition, not the solver.
double inlet_pa(const PlantParameters& p, double q, double other = 0.0) {
    const double through = q + other;
    return p.gas_no_load_pa - p.regulator_droop * through -
           p.gas_pipe_resistance * through * through;
}

const PlantParameters natural = plant::natural_gas_parameters();
const PlantParameters propane = plant::propane_parameters();

TEST(Manifold, FlowFollowsTheRootOfPressure) {
    for (const PlantParameters& p : {natural, propane}) {
        const double full = p.full_manifold_pa;
        const double at_full = flows(p, full).total_m3_per_s;
        for (const double share : {0.09, 0.25, 0.5, 0.81}) {
            const GasFlows<double> now = flows(p, full * share);
            EXPECT_NEAR(now.manifold_pa, full * share, 1e-9 * full);
            EXPECT_NEAR(now.total_m3_per_s / at_full, std::sqrt(share), 1e-12);
        }
    }
}

TEST(Manifold, TurndownOfNineAndAHalfInPressureIsThreeInRate) {
    const double rate = flows(natural, 950.0).total_m3_per_s / flows(natural, 100.0).total_m3_per_s;
    EXPECT_NEAR(rate, 3.08, 0.005);
    const double least_w = flows(natural, 100.0, 1).total_m3_per_s * natural.gross_j_per_m3;
    EXPECT_NEAR(least_w, 3.4e3, 0.05e3);
}

TEST(Manifold, FlowIsTheInjectorEquation) {
    for (const PlantParameters& p : {natural, propane}) {
        const double area = p.injector_m2[0] + p.injector_m2[1] + p.injector_m2[2];
        const double q = properties::injector_flow_m3_per_s(area, 500.0, p.gas_kg_per_m3);
        EXPECT_NEAR(flows(p, 500.0).total_m3_per_s, q, 1e-12 * q);
    }
}

TEST(Manifold, BanksShareTheFlowByInjectorArea) {
    const GasFlows<double> all = flows(natural, 600.0);
    EXPECT_NEAR(all.bank_m3_per_s[0] / all.total_m3_per_s, 0.25, 1e-12);
    EXPECT_NEAR(all.bank_m3_per_s[1] / all.total_m3_per_s, 0.30, 1e-12);
    const GasFlows<double> one = flows(natural, 600.0, 1);
    EXPECT_EQ(one.bank_m3_per_s[1], 0.0);
    EXPECT_EQ(one.bank_m3_per_s[2], 0.0);
}

TEST(GasSupply, SolutionSatisfiesItsOwnEquationsWhenThePipeIsTheLimit) {
    for (const double factor : {1.0, 5.0, 10.0, 19.0, 100.0}) {
        PlantParameters p = natural;
        p.gas_pipe_resistance *= factor;
        const GasFlows<double> now = flows(p, 5000.0);  // valve wide open
        const double q = now.total_m3_per_s;
        const double valve = p.gas_valve_resistance * q * q;
        EXPECT_NEAR(now.manifold_pa, inlet_pa(p, q) - valve, 1e-8) << factor;
    }
}

TEST(GasSupply, WorkingPressureNeverExceedsStaticPressure) {
    for (const OperatingPoint& point : operating_points) {
        House house(point.propane, point.set_c);
        house.run(2.0);
        const double standing = house.look().plant.gas_inlet_pa;
        EXPECT_EQ(standing, house.heater.plant.parameters.gas_lock_up_pa);
        house.open_taps(point.asked_lpm);
        for (int i = 0; i < 300; ++i) {
            house.run(signals::tick_s);
            const plant::Observables o = house.look().plant;
            EXPECT_LE(o.gas_inlet_pa, standing);
            EXPECT_LE(o.gas_inlet_pa, o.regulator_outlet_pa);
            EXPECT_LE(o.manifold_pa, o.gas_inlet_pa + 1e-9);
            EXPECT_GE(o.gas_m3_per_s, 0.0);
        }
    }
}

TEST(GasSupply, OtherAppliancesAndNarrowPipesLowerTheManifold) {
    Surroundings busy;
    double last = flows(natural, 5000.0).manifold_pa;
    for (const double other : {2e-4, 5e-4, 1e-3}) {
        busy.other_gas_m3_per_s = other;
        const GasFlows<double> now = flows(natural, 5000.0, 3, busy);
        EXPECT_LT(now.manifold_pa, last);
        const double q = now.total_m3_per_s;
        EXPECT_NEAR(now.manifold_pa, inlet_pa(natural, q, other) - 2.07e8 * q * q, 1e-6);
        last = now.manifold_pa;
    }
}

TEST(GasSupply, RegulatorCannotPassMoreThanItsCapacityAllows) {
    Surroundings busy;
    busy.other_gas_m3_per_s = 1.6e-3;
    const GasFlows<double> now = flows(natural, 5000.0, 3, busy);
    const double q = now.total_m3_per_s, through = q + 1.6e-3;
    const double used = through / natural.gas_capacity_m3_per_s;
    const double upstream = natural.gas_upstream_pa * (1.0 - used * used);
    const double pipe = natural.gas_pipe_resistance * through * through;
    EXPECT_NEAR(now.manifold_pa, upstream - pipe - natural.gas_valve_resistance * q * q, 1e-6);
    EXPECT_LT(through, natural.gas_capacity_m3_per_s);
    EXPECT_LT(now.manifold_pa, inlet_pa(natural, q, 1.6e-3));
}

TEST(GasSupply, AnEscapeAtATestPointDrawsLikeAnotherAppliance) {
    Surroundings leaking, busy;
    leaking.test_nipple_leak_m3_per_s = 3e-4;
    busy.other_gas_m3_per_s = 3e-4;
    EXPECT_EQ(flows(natural, 5000.0, 3, leaking).manifold_pa,
              flows(natural, 5000.0, 3, busy).manifold_pa);
    const GasFlows<double> now = flows(natural, 5000.0, 3, leaking);
    EXPECT_EQ(now.pipe_m3_per_s, now.total_m3_per_s + 3e-4);
}

TEST(GasSupply, ClosingEitherValveBringsTheFlowSmoothlyToNothing) {
    for (const bool at_meter : {false, true}) {
        double last = 1.0;
        for (int twentieths = 20; twentieths >= 0; --twentieths) {
            Surroundings at;
            (at_meter ? at.gas_meter_valve : at.gas_isolator) = 0.05 * twentieths;
            const double q = flows(natural, 900.0, 3, at).total_m3_per_s;
            EXPECT_LE(q, last);
            EXPECT_GE(q, 0.0);
            last = q;
        }
        EXPECT_LT(last, 1e-7) << "no bank burns below this";
    }
}

TEST(GasSupply, IsFiniteWithEverythingShutAndNothingUpstream) {
    State<double> x{};
    x[plant::cylinder_liquid_k] = 200.0;
    PlantParameters p = propane;
    p.cylinder_empty = 1.0;
    for (int banks = 0; banks <= 3; ++banks) {
        const GasFlows<double> now = plant::gas_flows(p, x, {}, open_banks(banks), 0.0);
        EXPECT_EQ(now.manifold_pa, 0.0);
        EXPECT_EQ(now.total_m3_per_s, 0.0);
    }
    EXPECT_EQ(plant::gas_flows(natural, x, {}, {}, 0.0).total_m3_per_s, 0.0);
}

TEST(GasSupply, PipeIsQuadraticAndRegulatorDroopIsLinear) {
    // The pair a fitter confuses: equal at full fire, apart at a small one.
    PlantParameters pipe = natural, regulator = natural;
    pipe.gas_pipe_resistance *= 19.0;
    regulator.regulator_droop *= 15.0;
    const double small = flows(natural, 196.0, 2).total_m3_per_s;
    EXPECT_NEAR(inlet_pa(pipe, small), 1880.0, 10.0);
    EXPECT_NEAR(inlet_pa(regulator, small), 1630.0, 10.0);
    EXPECT_NEAR(inlet_pa(pipe, flows(pipe, 950.0).total_m3_per_s), 680.0, 10.0);
    EXPECT_NEAR(inlet_pa(regulator, flows(regulator, 950.0).total_m3_per_s), 710.0, 10.0);
}

}  // namespace
}  // namespace emberpath::laws
