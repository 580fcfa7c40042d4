#pragma once
/// The gauges as templates; included by instantiate.hpp alone, and by observe.cpp for what they share.

#include "sim/plant/algebra.hpp"
#include "sim/plant/flue_composition.hpp"
#include "sim/plant/gauges.hpp"

namespace emberpath::plant {

/// Pressures at the test points [Pa gauge]. A shut valve upstream leaves nothing to read once a point is opened.
template <class Real>
struct TestPoints {
    Real regulator_outlet_pa, before_gas_isolator_pa, gas_inlet_pa;
};

template <class Real>
TestPoints<Real> test_points(const Plant<Real>& plant, const Surroundings& at,
                             const GasFlows<Real>& gas) {
    const auto at_least_none = [](const Real& pa) {
        return math::select(Real(0.0) < pa, pa, Real(0.0));
    };
    const auto lesser = [](const Real& a, const Real& b) { return math::select(b < a, b, a); };
    const Parameters<Real>& p = plant.parameters;
    const Real q = gas.pipe_m3_per_s;
    const Real from_upstream =
        gas.upstream_pa * (1.0 - q * q / (gas.capacity_m3_per_s * gas.capacity_m3_per_s));
    const Real crept = plant.state[regulator_creep];
    const Real no_flow = lesser(p.gas_lock_up_pa + crept, gas.upstream_pa);
    const Real flowing = lesser(gas.set_pa - p.regulator_droop * q, from_upstream);
    const Real outlet = at_least_none(math::select(q < Real(1e-7), no_flow, flowing));
    const Real supply = Real(at.gas_meter_valve > 1e-3 ? 1.0 : 0.0);
    const Real to_heater = gas.total_m3_per_s;
    const Real branch = gas.branch_resistance * to_heater * to_heater;
    const Real open = at.gas_isolator > 1e-3 ? supply : Real(0.0);
    const Real at_the_end = outlet - gas.pipe_resistance * q * q;
    return {outlet * supply, at_least_none(at_the_end) * supply,
            at_least_none(at_the_end - branch) * open};
}

/// From algebra that is known already, and the pressures at the test points.
template <class Real>
Gauges<Real> gauges_of(const Plant<Real>& plant, const Algebra<Real>& a,
                       const TestPoints<Real>& points) {
    const State<Real>& x = plant.state;
    const FlueComposition<Real> flue = flue_composition(plant.parameters, x, a);
    Real lit = Real(0.0);
    for (std::size_t b = 0; b < bank_count; ++b) lit += bank_area_share[b] * plant.flame.lit[b];
    return {points.gas_inlet_pa,
            points.regulator_outlet_pa,
            a.gas.manifold_pa,
            flue.o2_share,
            flue.co2_share,
            flue.co_share,
            x[flue_gas],
            flue.excess_air_ratio,
            lit,
            plant.commands.spark * plant.parameters.igniter_works,
            x[fan_speed],
            x[ionisation] * plant.electrics.flame_signal};
}

template <class Real>
Gauges<Real> gauges(const Plant<Real>& plant, const Surroundings& at) {
    Algebra<Real> a{};
    // Only a companion's gas asks for the water.
    if (!math::all(plant.parameters.companion_fitted == Real(0.0)))
        a.water = water_flows(plant.parameters, plant.state, at);
    burner_algebra(plant, plant.state, at, false, a);
    return gauges_of(plant, a, test_points(plant, at, a.gas));
}

template <class Real>
void take_lane(const Gauges<Real>& gauges, std::size_t lane, Observables& out) {
    out.gas_inlet_pa = math::lane(gauges.gas_inlet_pa, lane);
    out.regulator_outlet_pa = math::lane(gauges.regulator_outlet_pa, lane);
    out.manifold_pa = math::lane(gauges.manifold_pa, lane);
    out.o2_share = math::lane(gauges.o2_share, lane);
    out.co2_share = math::lane(gauges.co2_share, lane);
    out.co_share = math::lane(gauges.co_share, lane);
    out.flue_k = math::lane(gauges.flue_k, lane);
    out.excess_air_ratio = math::lane(gauges.excess_air_ratio, lane);
    out.flame_lit = math::lane(gauges.flame_lit, lane);
    out.spark_heard = math::lane(gauges.spark_heard, lane);
    out.fan_rev_per_s = math::lane(gauges.fan_rev_per_s, lane);
    out.ionisation_a = math::lane(gauges.ionisation_a, lane);
}

}  // namespace emberpath::plant
