#pragma once
/// What changes from tick to tick under an instrument that is attached, or before somebody's eyes and ears.

#include "sim/plant/plant.hpp"

namespace emberpath::plant {

/// One lane as a heater of its own but for its wiring, of which only what reaches the flame's circuit comes along:
/// enough for observe_gauges().
template <class Real>
[[nodiscard]] Plant<double> lane_without_wiring(const Plant<Real>& plant, std::size_t lane);

/// Of the instrument quantities only what a gauge at the gas test points, a probe in the flue, a meter in the
/// flame lead and somebody at the sight glass meet; each as observe_one() gives it, the others are 0. Several
/// times cheaper: no water, no heat balance, no room air, no wiring.
[[nodiscard]] Observables observe_gauges(const Plant<double>& plant, const Surroundings& at);

}  // namespace emberpath::plant
