#pragma once
/// Air of the space around the heater (or its terminal), the open flue, and what the burner breathes.
///
/// Equation  V dC/dt = S - (n V + Q) C: one well-mixed volume, clean air outside; C is carbon monoxide, carbon
///           dioxide or missing oxygen [-], S what spills of it [m3/s], Q extraction and air the flue takes
///           open flue: rho g H (1 - T_out/T_flue) - depression - wind = R q^2; what it cannot take spills
///           depression of the room: (extracted / gap gain)^2 / s; rho and flows of thin air as in with_altitude()
/// Source    single-zone mass balance; hydrostatics with air of 1.2 kg/m3 at 293 K and sea level; gap law with exponent 1/2:
///           [idelchik]. Height, resistance, cooling of the flue by dilution: chosen
/// Range     any; burner air is never less than a twentieth oxygen of outdoor air's share
/// Checked   tests/laws/room_laws_test.cpp; also the room equation against its closed solution

#include "sim/math/pack.hpp"
#include "sim/plant/air_path.hpp"
#include "sim/plant/carbon_monoxide.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"
#include "sim/plant/surroundings.hpp"

namespace emberpath::plant {

inline constexpr double oxygen_of_air = 0.2095;

/// Oxygen of the burner's air over that of outdoor air [-].
///
/// Equation  intake = outdoor - room share - r/(1-r) x oxygen used per air, the steady state of products of
///           which a share r returns
template <class Real>
[[nodiscard]] Real intake_oxygen(const Parameters<Real>& p, const State<Real>& x,
                                 const GasFlows<Real>& gas, const Real& air_m3_per_s) {
    Real burning = Real(0.0);
    for (std::size_t b = 0; b < bank_count; ++b) burning += gas.bank_m3_per_s[b] * x[flame_0 + b];
    const Real used =
        math::minimum(burning * p.stoichiometric_air / (air_m3_per_s + 1e-9), Real(1.0));
    const Real back = p.recirculated_share / (1.0 - p.recirculated_share);
    return math::maximum(
        1.0 - p.intake_from_room * x[room_oxygen_used] * (1.0 / oxygen_of_air) - back * used,
        Real(0.05));
}

/// Pressure of the room below outdoors [Pa].
template <class Real>
[[nodiscard]] Real room_depression(const Parameters<Real>& p, const Surroundings& at,
                                   const Real& air_m3_per_s) {
    const Real out = p.open_flued * air_m3_per_s + at.extraction_m3_per_s;
    const Real root = out / (p.room_leak_gain + at.room_opening);
    return root * root / p.air_density_share;
}

/// Share [-] of the products that enters the room: what an open flue cannot take, what a roof holds back, what a
/// leaking seam lets into the case of a heater that breathes the room's air, what a case without its cover lets out.
template <class Real>
[[nodiscard]] Real spilled_share(const Parameters<Real>& p, const State<Real>& x,
                                 const Surroundings& at, const Real& air_m3_per_s) {
    const Real besides =
        p.spill_into_room + p.intake_from_room * p.seam_leak_share + at.cover_spill;
    if (math::all(p.open_flued == Real(0.0))) return math::clamp(besides, Real(0.0), Real(1.0));
    constexpr double pa_k_per_m = 353.0 * 9.80665;  // density of air times its temperature, times g
    constexpr double keeps = 0.6;  // of the excess temperature, after dilution in the diverter
    constexpr double through_cowl = 0.1;  // of the wind that a plain terminal would feel
    const Real flue_k = (x[flue_gas] - at.outdoor_k) * keeps + at.outdoor_k;
    const Real draught = p.open_flue_height_m * p.air_density_share *
                         (pa_k_per_m / at.outdoor_k - pa_k_per_m / flue_k);
    const Real drive =
        draught - room_depression(p, at, air_m3_per_s) - through_cowl * wind_pressure(p, at);
    const Real takes = math::square_root(math::maximum(drive, Real(0.0)) / p.open_flue_resistance);
    const Real left = 1.0 - takes / (air_m3_per_s + 1e-9);
    return math::clamp(p.open_flued * left + besides, Real(0.0), Real(1.0));
}

/// Rate [1/s] at which the room's air is renewed.
template <class Real>
[[nodiscard]] Real room_renewal_per_s(const Parameters<Real>& p, const Surroundings& at,
                                      const Real& flue_takes_m3_per_s) {
    constexpr double still_air =
        0.5;  // root of Pa: breeze and warmth across an open window, chosen
    return (p.room_ventilation_m3_per_s + at.extraction_m3_per_s + still_air * at.room_opening +
            p.intake_from_room * flue_takes_m3_per_s) /
           p.room_m3;
}

/// What the burner sends up the flue, or into the room.
template <class Real>
struct RoomSource {
    Real air_m3_per_s, burnt_m3_per_s, co_m3_per_s;
};

/// Oxygen used, carbon dioxide and carbon monoxide in the room [1/s]. The burner's carbon monoxide is held over
/// the tick; it changes more slowly than that.
template <class Real>
void room_derivative(const Parameters<Real>& p, const State<Real>& x, const Surroundings& at,
                     const RoomSource<Real>& from, State<Real>& d) {
    const Real spills = spilled_share(p, x, at, from.air_m3_per_s);
    const Real renewal = room_renewal_per_s(p, at, from.air_m3_per_s * (1.0 - spills));
    const Real per_m3 = spills / p.room_m3;
    const Real used = from.burnt_m3_per_s * p.stoichiometric_air * oxygen_of_air;
    d[room_oxygen_used] = per_m3 * used - renewal * x[room_oxygen_used];
    d[room_co2] = per_m3 * from.burnt_m3_per_s * p.carbon_per_mole - renewal * x[room_co2];
    d[room_co] = per_m3 * from.co_m3_per_s - renewal * x[room_co];
}

}  // namespace emberpath::plant
