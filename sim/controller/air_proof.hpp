#pragma once
/// Current against speed is the controller's only knowledge of air flow, unless it has a tube: a restricted
/// path lets the fan run fast on little current. A worn fan's friction looks the same as air
/// (docs/physics/controller.md).

#include "sim/controller/controller.hpp"
#include "sim/math/pack.hpp"

namespace emberpath::controller {

namespace air {
inline constexpr double resting_a = 0.08;
inline constexpr double full_a = 0.5;
inline constexpr double no_load_part = 0.35;
inline constexpr double trim_lag_s = 4.0;
inline constexpr double most_trim = 1.2;
inline constexpr double at_limit_trim = 1.18;  // within a tenth of the limit
inline constexpr double least_loading = 0.75;  // below: restricted beyond what the trim makes good
inline constexpr double least_rev_per_s = 20.0;
inline constexpr double settles_s = 10.0;  // of a restart's purge, before its air is judged
}  // namespace air

/// Estimated air per revolution over its nominal value [-]. Thin air loads the fan less at the same speed.
template <class Real>
[[nodiscard]] Real estimated_loading(const Real& current_a, const Real& rev_per_s,
                                     const Real& air_density_share) {
    const Real n = math::maximum(rev_per_s, Real(1.0)) * (1.0 / 80.0);
    const Real relative = (current_a - air::resting_a) / (air::full_a * n * n * air_density_share);
    return (relative - air::no_load_part) * (1.0 / (1.0 - air::no_load_part));
}

/// The same from the pressure in the air tube, of a heater that has one.
///
/// Equation  (q / q_full) / (N / N_full), q / q_full = sqrt(p / (p_full s)); s: density share
template <class Real>
[[nodiscard]] Real loading_by_tube(const Real& tube_pa, const Real& rev_per_s,
                                   const Real& air_density_share) {
    const Real n = math::maximum(rev_per_s, Real(1.0)) * (1.0 / 80.0);
    const Real full_pa = signals::air_tube_full_pa * air_density_share;
    return math::square_root(math::maximum(tube_pa, Real(0.0)) / full_pa) / n;
}

/// Trim the fan for the estimated air and time a shortage while running; while a restart is proved the trim
/// waits, and a shortage counts once the fan has settled.
template <class Real>
void follow_air(WorkingState<Real>& s, const math::Mask<Real>& running,
                const math::Mask<Real>& proving_restart, const Real& air_density_share,
                const Real& by_tube) {
    using math::both;
    const Real loading = math::select(
        by_tube > Real(0.5), loading_by_tube(s.air_tube_pa, s.fan_rev_per_s, air_density_share),
        estimated_loading(s.fan_current_a, s.fan_rev_per_s, air_density_share));
    const auto turning = s.fan_rev_per_s > Real(air::least_rev_per_s);
    const auto known = both(running, turning);
    const Real wanted =
        math::clamp(1.0 / math::maximum(loading, Real(0.2)), Real(1.0), Real(air::most_trim));
    const Real moved = s.air_trim + (wanted - s.air_trim) * (signals::tick_s / air::trim_lag_s);
    s.air_trim = math::select(known, moved, math::select(running, s.air_trim, 1.0));
    const auto too_little = loading < Real(air::least_loading);
    const auto beyond_trim = both(known, s.air_trim > Real(air::at_limit_trim));
    const auto settled = both(both(proving_restart, turning), s.phase_s > Real(air::settles_s));
    const auto is_short = both(math::either(beyond_trim, settled), too_little);
    s.air_short_s = math::select(is_short, s.air_short_s + signals::tick_s, 0.0);
}

/// Fan duty for a target speed: feed-forward of the unloaded motor, proportional and integral action.
template <class Real>
[[nodiscard]] Real fan_duty(WorkingState<Real>& s) {
    const auto turning = s.fan_target_rev_per_s > Real(0.5);
    const Real error = s.fan_target_rev_per_s - s.fan_rev_per_s;
    s.fan_correction = math::select(
        turning,
        math::clamp(s.fan_correction + 0.004 * error * signals::tick_s, Real(-0.3), Real(0.3)),
        0.0);
    const Real duty = s.fan_target_rev_per_s * (1.0 / 120.0) + 0.02 * error + s.fan_correction;
    return math::select(turning, math::clamp(duty, Real(0.0), Real(1.0)), 0.0);
}

}  // namespace emberpath::controller
