#pragma once
/// Feed-forward from flow and rise, corrected by proportional and integral action; banks, manifold
/// pressure and fan speed that follow from the firing rate; water valve and bypass.
///
/// Equation  P = m cp (T_set - T_in + 0.4 e + I) / 0.84, e = T_set - T_out, dI/dt = 0.10 e (F / 10 L/min)
/// Source    feed-forward plus PI with conditional integration: [astrom2006] chapters 3 and 5;
///           manifold law P ~ sqrt(p); gains chosen
/// Checked   tests/unit/controller, tests/laws/closed_loop_test.cpp

#include "sim/controller/controller.hpp"
#include "sim/math/pack.hpp"

namespace emberpath::controller {

namespace loop {
inline constexpr double efficiency = 0.84;
inline constexpr double water_j_per_m3_k = 4.144e6;  // at delivery temperature
inline constexpr double proportional = 0.4;
inline constexpr double integral_per_s = 0.10;
inline constexpr double integral_limit_k = 10.0;
inline constexpr double ten_litres_per_minute = 10.0 / 60000.0;
inline constexpr double settling_s = 15.0;       // after light-up: integrate in a narrow band
inline constexpr double saturated_share = 1.08;  // wanting more than this holds the integral
inline constexpr std::array<double, 3> stage_share{0.25, 0.55, 1.0};
inline constexpr std::array<double, 3> fan_factor{2.40, 1.41, 1.0};
inline constexpr std::array<double, 2> bank_up{9.9 / 41.5, 21.8 / 41.5};  // of full heat input
inline constexpr std::array<double, 2> bank_down{8.2 / 41.5, 15.5 / 41.5};
inline constexpr double bank_hold_s = 1.5;
inline constexpr double least_manifold_share = 100.0 / 950.0;
inline constexpr double air_proven_margin = 1.12;    // gas follows proven air
inline constexpr double companion_called_at = 0.95;  // of full heat input, by feed-forward
inline constexpr double companion_kept_to = 0.35;    // half of the draw is its own by then
}  // namespace loop

/// The value belonging to 1, 2 or 3 open banks.
template <class Real>
[[nodiscard]] Real by_stage(const Real& banks, const std::array<double, 3>& values) {
    return math::select(banks > Real(2.5), values[2],
                        math::select(banks > Real(1.5), Real(values[1]), values[0]));
}

/// What flow and rise alone call for [W gross]: no feedback in it.
template <class Real>
[[nodiscard]] Real feed_forward_w(const WorkingState<Real>& s) {
    return math::maximum(
        s.flow_m3_per_s * (loop::water_j_per_m3_k / loop::efficiency) * (s.set_point_k - s.inlet_k),
        Real(0.0));
}

/// The firing rate asked for before limits [W gross].
template <class Real>
[[nodiscard]] Real wanted_heat_w(const WorkingState<Real>& s) {
    const Real error = s.set_point_k - s.outlet_k;
    const Real rise = s.set_point_k - s.inlet_k + loop::proportional * error + s.loop_correction_k;
    return math::maximum(s.flow_m3_per_s * (loop::water_j_per_m3_k / loop::efficiency) * rise,
                         Real(0.0));
}

/// Integral action, held at saturation and outside a band just after light-up.
template <class Real>
void integrate(WorkingState<Real>& s, const Real& wanted_w, const Ratings<Real>& rated) {
    using math::both;
    const Real error = s.set_point_k - s.outlet_k;
    const Real scale =
        math::clamp(s.flow_m3_per_s * (1.0 / loop::ten_litres_per_minute), Real(0.3), Real(1.5));
    const auto high =
        both(wanted_w > Real(loop::saturated_share * rated.full_heat_input_w), error > Real(0.0));
    const Real least_w = loop::stage_share[0] * rated.full_heat_input_w *
                         math::square_root(Real(loop::least_manifold_share));
    const auto low = both(wanted_w < least_w, error < Real(0.0));
    const auto early = both(s.run_s < Real(loop::settling_s),
                            math::negate(both(error > Real(-6.0), error < Real(4.0))));
    const auto held = math::either(high, math::either(low, early));
    const Real step =
        math::select(held, 0.0, error * scale * (loop::integral_per_s * signals::tick_s));
    s.loop_correction_k = math::clamp(s.loop_correction_k + step, Real(-loop::integral_limit_k),
                                      Real(loop::integral_limit_k));
}

/// How many banks: up after a hold, down at once, with hysteresis.
template <class Real>
void choose_banks(WorkingState<Real>& s, const Real& wanted_w, const Ratings<Real>& rated) {
    using math::both;
    const Real share = wanted_w * rated.per_full_input;
    const Real up =
        math::select(s.banks_open > Real(1.5), loop::bank_up[1], Real(loop::bank_up[0]));
    const Real down =
        math::select(s.banks_open > Real(2.5), loop::bank_down[1], Real(loop::bank_down[0]));
    s.bank_hold_s = s.bank_hold_s + signals::tick_s;
    const auto rise = both(both(share > up, s.banks_open < Real(2.5)),
                           s.bank_hold_s > Real(loop::bank_hold_s - 0.05));
    const auto fall = both(share<down, s.banks_open> Real(1.5));
    s.banks_open = s.banks_open + math::select(rise, 1.0, math::select(fall, Real(-1.0), 0.0));
    s.bank_hold_s = math::select(math::either(rise, fall), 0.0, s.bank_hold_s);
}

/// Where the bypass stands without overshoot: wider for a lower set point, shut from 60 degC up.
template <class Real>
[[nodiscard]] Real resting_bypass(const Real& set_point_k) {
    return math::clamp(0.02 * (333.15 - set_point_k), Real(0.0), Real(1.0));
}

/// Throttle the water when the demand passes what the burner can give; open again slowly.
template <class Real>
void throttle(WorkingState<Real>& s, const Ratings<Real>& rated) {
    const Real excess = 0.985 - feed_forward_w(s) * rated.per_full_input;
    const Real rate = math::clamp(0.6 * excess, Real(-0.12), Real(0.04));
    s.water_valve = math::clamp(s.water_valve + rate * signals::tick_s, Real(0.10), Real(1.0));
    const Real overshoot = s.outlet_k - s.set_point_k;
    s.bypass = math::clamp(
        resting_bypass(s.set_point_k) + 0.10 * math::maximum(overshoot - 0.3, Real(0.0)), Real(0.0),
        Real(1.0));
}

/// A companion is called as the demand comes near what this burner can give, and let go once both together have
/// hardly more to do than one alone could.
template <class Real>
void call_companion(WorkingState<Real>& s, const Ratings<Real>& rated, const Real& companion) {
    using math::both;
    const Real share = feed_forward_w(s) * rated.per_full_input;
    const auto asked = both(companion > Real(0.5), share > Real(loop::companion_called_at));
    const auto kept = both(s.companion_called > Real(0.5), share > Real(loop::companion_kept_to));
    s.companion_called = math::select(math::either(asked, kept), Real(1.0), Real(0.0));
}

/// Firing rate, manifold pressure and fan target while running.
template <class Real>
void modulate(WorkingState<Real>& s, const Ratings<Real>& rated) {
    const Real wanted = wanted_heat_w(s);
    integrate(s, wanted, rated);
    choose_banks(s, wanted, rated);
    throttle(s, rated);
    const Real stage_w = by_stage(s.banks_open, loop::stage_share) * rated.full_heat_input_w;
    const Real least_w = stage_w * math::square_root(Real(loop::least_manifold_share));
    const Real rate = math::clamp(wanted, least_w, stage_w);
    const Real factor = by_stage(s.banks_open, loop::fan_factor);
    const Real per_watt =
        factor * s.air_trim * (rated.fan_full_rev_per_s / rated.full_heat_input_w);
    s.fan_target_rev_per_s = rate * per_watt;
    const Real proven_w = loop::air_proven_margin * s.fan_rev_per_s / per_watt;
    s.heat_demand_w = math::maximum(math::minimum(rate, proven_w), least_w);
    const Real relative = s.heat_demand_w / stage_w;
    s.manifold_command_pa = rated.full_manifold_pa * relative * relative;
}

}  // namespace emberpath::controller
