#pragma once
/// What changes from tick to tick under an instrument that is attached, or before somebody's eyes and ears.

#include "sim/plant/plant.hpp"

namespace emberpath::plant {

/// Of the instrument quantities only what a gauge at the gas test points, a probe in the flue, a meter in the
/// flame lead and somebody at the sight glass meet; each with the bits and the unit of observe()'s.
template <class Real>
struct Gauges {
    Real gas_inlet_pa, regulator_outlet_pa, manifold_pa;
    Real o2_share, co2_share, co_share, flue_k;
    Real excess_air_ratio, flame_lit, spark_heard, fan_rev_per_s, ionisation_a;
};

/// Of all lanes at once, and several times cheaper than observe(): no water, no heat balance, no room air, no wiring.
template <class Real>
[[nodiscard]] Gauges<Real> gauges(const Plant<Real>& plant, const Surroundings& at);

/// One lane of them; the rest of `out` stays as it is.
template <class Real>
void take_lane(const Gauges<Real>& gauges, std::size_t lane, Observables& out);

}  // namespace emberpath::plant
