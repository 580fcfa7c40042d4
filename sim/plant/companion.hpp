#pragma once
/// A companion heater on the same hot pipe, reduced to how far it is in and how hot its outlet is.
///
/// Equation  share: 4 s lag towards half of the draw while it is called over a whole cable; water: Q s / (1 - s);
///           gas asked: its water from the cold to the value it was sent, over 0.84, at most its full rate;
///           outlet: 10 s lag towards that value, or to what the gas it gets can do, while it fires; cooling with
///           900 s while it waits
/// Source    chosen: the answer of a heater like this one, seen from the shared pipe
/// Range     share 0 to 1/2; a lane without a companion stands still
/// Checked   tests/laws/pair_and_tube_laws_test.cpp

#include "sim/math/pack.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"
#include "sim/plant/surroundings.hpp"
#include "sim/signals/signals.hpp"

namespace emberpath::plant {

namespace companion {
inline constexpr double half = 0.5;
inline constexpr double efficiency = 0.84;
inline constexpr double water_j_per_m3_k = 4.15e6;
inline constexpr double fires_above_share = 0.05;
inline constexpr double fires_above_m3_per_s = 3.0e-5;  // 1.8 L/min, chosen
inline constexpr double cable_is_open_ohm = 1.0e3;
}  // namespace companion

/// What its gas follows.
template <class Real>
struct CompanionAsks {
    Real heater_water_m3_per_s;  // through this heater
    Real set_k;                  // sent over the link
};

/// What passes both heaters.
template <class Real>
struct CompanionFlows {
    Real heater_water_m3_per_s;  // through this heater
    Real gas_m3_per_s;           // that the companion burns
};

/// Water through it [m3/s]: its share of every draw beside this heater's.
template <class Real>
[[nodiscard]] Real companion_water(const State<Real>& x, const Real& heater_water_m3_per_s) {
    return heater_water_m3_per_s * x[companion_share] / (1.0 - x[companion_share]);
}

template <class Real>
[[nodiscard]] math::Mask<Real> companion_fires(const State<Real>& x, const Real& water_m3_per_s) {
    return math::both(x[companion_share] > Real(companion::fires_above_share),
                      water_m3_per_s > Real(companion::fires_above_m3_per_s));
}

/// Gas [m3/s] that its water asks for.
template <class Real>
[[nodiscard]] Real companion_wants(const Parameters<Real>& p, const State<Real>& x,
                                   const Surroundings& at, const CompanionAsks<Real>& asks) {
    const Real water = companion_water(x, asks.heater_water_m3_per_s);
    const Real rise = math::maximum(asks.set_k - at.inlet_water_k, Real(0.0));
    const Real heat_w = water * rise * (companion::water_j_per_m3_k / companion::efficiency);
    const Real gas = math::minimum(heat_w, p.companion_full_w) / p.gross_j_per_m3;
    return math::select(companion_fires(x, water), p.companion_fitted * gas, Real(0.0));
}

template <class Real>
struct CompanionRates {
    Real share_per_s{0.0};
    Real outlet_k_per_s{0.0};
};

/// How its share and its outlet move, burning `flows.gas_m3_per_s`.
template <class Real>
[[nodiscard]] CompanionRates<Real> companion_rates(const Parameters<Real>& p, const State<Real>& x,
                                                   const Surroundings& at,
                                                   const signals::ActuatorCommands<Real>& commands,
                                                   const CompanionFlows<Real>& flows) {
    CompanionRates<Real> out;
    if (math::all(p.companion_fitted == Real(0.0))) return out;
    const auto heard = math::both(Real(companion::cable_is_open_ohm) > p.companion_link_ohm,
                                  commands.companion_call > Real(0.5));
    const Real asked = math::select(heard, companion::half * p.companion_fitted, Real(0.0));
    out.share_per_s = (asked - x[companion_share]) * (1.0 / 4.0);
    const Real water = companion_water(x, flows.heater_water_m3_per_s);
    const Real gives_k = flows.gas_m3_per_s * p.gross_j_per_m3 * companion::efficiency /
                         (companion::water_j_per_m3_k * water + 1e-9);
    const Real target = math::minimum(commands.companion_set_k, at.inlet_water_k + gives_k);
    const Real towards =
        math::select(companion_fires(x, water), (target - x[companion_outlet]) * (1.0 / 10.0),
                     (Real(at.ambient_k) - x[companion_outlet]) * (1.0 / 900.0));
    out.outlet_k_per_s = towards * p.companion_fitted;  // a lane without one stands still
    return out;
}

}  // namespace emberpath::plant
