#pragma once
/// Cold main, heater and hot outlets as one quasi-steady network in closed form.
///
/// Equation  every element drops p = R Q^2 (turbulent Darcy-Weisbach); parallel paths add conductances
///           G = 1/sqrt(R); supply carries Q plus the cold water drawn elsewhere
/// Source    [idelchik] chapters 1 and 2; the quadratic is solved for the positive root
/// Range     any opening from 0 (flow below 1e-8 m3/s) upwards
/// Checked   tests/laws/water_laws_test.cpp

#include "sim/math/pack.hpp"
#include "sim/plant/opening.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"
#include "sim/plant/surroundings.hpp"

namespace emberpath::plant {

template <class Real>
struct WaterFlows {
    Real heater_m3_per_s;     // through the heater
    Real exchanger_m3_per_s;  // of that, through the exchanger
    Real bypass_m3_per_s;
};

template <class Real>
[[nodiscard]] WaterFlows<Real> water_flows(const Parameters<Real>& p, const State<Real>& x,
                                           const Surroundings& at) {
    constexpr double isolating_valve =
        0.02 * 3.6e12;  // Pa s2/m6, contained in the inlet resistance
    const Real y = x[water_valve];
    const Real b = x[bypass_valve];
    const Real valve = p.water_valve_gain * (0.03 + 0.97 * y * y);
    const Real parallel = p.exchanger_conductance + p.bypass_gain * b * b;
    const double taps = at.hot_tap_conductance + 1e-20;  // all shut: 1e-17 m3/s
    const Real isolator =
        valve_resistance(Real(isolating_valve), at.water_isolator) - isolating_valve;
    const Real a = p.water_supply_resistance + p.water_inlet_resistance +
                   p.water_outlet_resistance + isolator + 1.0 / (valve * valve) +
                   1.0 / (parallel * parallel) + 1.0 / (taps * taps);
    const double qc = at.cold_draw_m3_per_s;
    const Real half_b = p.water_supply_resistance * qc;
    const Real c =
        math::maximum(at.mains_water_pa - p.water_supply_resistance * (qc * qc), Real(0.0));
    const Real q = (math::square_root(half_b * half_b + a * c) - half_b) / a;
    const Real through = q * p.exchanger_conductance / parallel;
    return {q, through, q - through};
}

}  // namespace emberpath::plant
