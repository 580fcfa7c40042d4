#pragma once
/// Fan, air path and flue: how much air goes through, and what the motor draws.
///
/// Equation  a N^2 + 0.03 s (T_flue - T_amb) - p_wind = (R + c) q^2, R = R_cold + (R_hx + R_flue) T/398 K
///           s: air density over that at sea level; a and the resistances carry it (with_altitude)
/// Source    affinity laws [eck], [iso5801]; 0.03 Pa/K is the draught of about 0.7 m of hot column
/// Range     fan speed >= 0. Wind stronger than fan and draught together stops the air and the flame with it;
///           it does not drive the air backwards (the driving pressure has a floor): docs/physics/plant.md says so
/// Checked   tests/laws/fan_laws_test.cpp

#include "sim/math/pack.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"
#include "sim/plant/surroundings.hpp"

namespace emberpath::plant {

inline constexpr double nominal_air_per_rev_m3 = 0.0156 / 80.0;  // at full rate: 56 m3/h, 80 rev/s

/// Pressure of the wind at the terminal [Pa], against the flow.
template <class Real>
[[nodiscard]] Real wind_pressure(const Parameters<Real>& p, const Surroundings& at) {
    return at.steady_wind_pa + p.gust_amplitude * (25.0 + 110.0 * at.gust_shape);
}

template <class Real>
[[nodiscard]] Real air_flow(const Parameters<Real>& p, const State<Real>& x,
                            const Surroundings& at) {
    const Real n = x[fan_speed];
    const Real drive = p.fan_head * n * n +
                       0.03 * p.air_density_share * (x[flue_gas] - at.ambient_k) -
                       wind_pressure(p, at) * p.wind_exposure;
    const Real resistance =
        p.air_cold_resistance +
        (p.air_exchanger_resistance + p.flue_resistance) * (x[flue_gas] * (1.0 / 398.0)) +
        p.fan_internal_resistance + p.intake_resistance;
    return math::square_root(math::maximum(drive, Real(1e-3)) / resistance);
}

/// Air per revolution over its nominal value: how loaded the impeller is [-].
/// Range     0 to 2; the limit acts below about 5 rev/s only: draught through a fan at rest does no
///           work on it, and an unlimited ratio there would be stiff and turn the fan backwards
template <class Real>
[[nodiscard]] Real fan_loading(const Real& air_m3_per_s, const Real& fan_rev_per_s) {
    const Real relative_speed = math::maximum(fan_rev_per_s, Real(1e-9)) * nominal_air_per_rev_m3;
    return math::minimum(air_m3_per_s / relative_speed, Real(2.0));
}

/// The same as the blades feel it: thin air comes in larger volumes.
template <class Real>
[[nodiscard]] Real fan_loading_of(const Parameters<Real>& p, const Real& air_m3_per_s,
                                  const Real& fan_rev_per_s) {
    return fan_loading(air_m3_per_s, fan_rev_per_s * p.air_density_share);
}

/// Pressure [Pa] that reaches the sensor of the air tube: that of the air through a known opening, less the
/// column of water in a sag of the tube, which rocks while the fan blows.
///
/// Equation  p = K q^2 - h (1 + 0.4 w(t)), w a triangle of 0.9 s between -1 and 1
/// Source    square law of an opening [idelchik]; a plug of water 0.4 m long in a sagging tube rocks with
///           2 pi sqrt(L / 2 g) = 0.9 s; how far, and the triangle, are chosen
template <class Real>
[[nodiscard]] Real air_tube_pressure(const Parameters<Real>& p, const Real& air_m3_per_s,
                                     const Real& fan_rev_per_s, const Surroundings& at) {
    constexpr double period_s = 0.9, rocks = 0.4;
    const double turns = at.time_s * (1.0 / period_s);
    const double phase = turns - static_cast<double>(static_cast<long long>(turns));
    const double wave = phase < 0.5 ? 4.0 * phase - 1.0 : 3.0 - 4.0 * phase;
    const Real blows = math::minimum(fan_rev_per_s * (1.0 / 20.0), Real(1.0));
    const Real heard = p.air_tube_gain * air_m3_per_s * air_m3_per_s -
                       p.air_tube_water_pa * (1.0 + rocks * wave * blows);
    const Real wanted_m3_per_s = nominal_air_per_rev_m3 * fan_rev_per_s;
    const Real wanted = p.air_tube_gain * wanted_m3_per_s * wanted_m3_per_s;
    return heard + p.air_tube_bridged * (wanted - heard);
}

/// Acceleration [rev/s2] of the motor at a duty.
template <class Real>
[[nodiscard]] Real fan_acceleration(const Parameters<Real>& p, const Real& n, const Real& loading,
                                    const Real& duty) {
    constexpr double rev_per_s_at_full_duty = 120.0;
    constexpr double time_constant_s = 0.7;
    return (rev_per_s_at_full_duty * p.fan_drive * duty - n * (0.82 + 0.18 * loading)) *
           (1.0 / time_constant_s);
}

/// Motor current [A]; what moves air goes with its density.
template <class Real>
[[nodiscard]] Real fan_current(const Parameters<Real>& p, const Real& n, const Real& loading) {
    const Real relative = n * (1.0 / 80.0);
    const Real running = math::minimum(n * 0.2, Real(1.0));  // no current at rest
    return running * (0.08 + p.fan_bearing_a) +
           0.5 * p.air_density_share * relative * relative * (0.35 + 0.65 * loading);
}

}  // namespace emberpath::plant
