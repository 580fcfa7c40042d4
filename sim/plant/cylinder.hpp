#pragma once
/// Propane from one cylinder, or from two behind an automatic changeover: vapour pressure at the liquid
/// temperature, and what boiling takes out of it.
///
/// Equation  C dT/dt = UA (T_air - T) - m h_fg, dM/dt = -m, C = c M + C_steel
/// Source    energy balance of the liquid; vapour pressure: Antoine's form fitted to [lemmon2009],
///           within 0.27 % from 230 to 325 K (sim/properties/lpg.hpp)
/// Range     liquid_k 150 K and above (colder is held at 150 K)
/// Errors    none: runs in every RK4 stage
/// Checked   tests/laws/cylinder_laws_test.cpp; vapour pressure in tests/reference (LpgReference)

#include "sim/math/functions.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"
#include "sim/plant/surroundings.hpp"
#include "sim/properties/lpg.hpp"

namespace emberpath::plant {

inline constexpr double propane_latent_j_per_kg = 355.0e3;  // at 13 degC by [lemmon2009]
inline constexpr double propane_liquid_j_per_kg_k =
    properties::liquid_propane_heat_capacity_j_per_kg_k;

/// Absolute vapour pressure [Pa].
template <class Real>
[[nodiscard]] Real propane_vapour_pressure(const Real& liquid_k) {
    return properties::propane_saturation_pressure_pa(math::maximum(liquid_k, Real(150.0)));
}

/// What one cylinder offers.
template <class Real>
struct Vapour {
    Real gauge_pa;
    Real absolute_pa;  // times the share it can still give: 1 until the last 0.3 kg
};
template <class Real>
[[nodiscard]] Vapour<Real> vapour_of(const Real& liquid_k, const Real& liquid_kg,
                                     const Real& ambient_pa) {
    const Real pressure = propane_vapour_pressure(liquid_k);
    const Real share = math::clamp(liquid_kg / 0.3, Real(0.0), Real(1.0));
    return {math::maximum(pressure - ambient_pa, Real(0.0)) * share, pressure * share};
}

/// What stands before the last regulator, and which cylinder it comes from.
///
/// Equation  the standby cylinder takes over as the pressure of the one in service falls through the
///           changeover pressure, over a span of 20 kPa: both give there, as a worn-in valve does
/// Source    common practice; span chosen
template <class Real>
struct CylinderSupply {
    Real gauge_pa;
    Real absolute_pa;
    Real reserve_share;  // of the draw, from the reserve cylinder
};
template <class Real>
[[nodiscard]] CylinderSupply<Real> cylinder_supply(const Parameters<Real>& p, const State<Real>& x,
                                                   const Surroundings& at) {
    constexpr double span_pa = 20.0e3;
    if (math::all(p.cylinder_fed <= Real(0.5))) return {Real(0.0), Real(0.0), Real(0.0)};
    const Vapour<Real> first = vapour_of(x[cylinder_liquid_k], x[cylinder_liquid_kg], p.ambient_pa);
    const Vapour<Real> reserve =
        math::all(p.reserve_fitted == Real(0.0))
            ? first
            : vapour_of(x[reserve_liquid_k], x[reserve_liquid_kg], p.ambient_pa);
    const Real acts = p.reserve_fitted * (1.0 - p.changeover_stuck);
    const Real lever = acts * at.reserve_first;
    const Real in_service = first.gauge_pa + lever * (reserve.gauge_pa - first.gauge_pa);
    const Real over =
        acts * math::clamp((p.changeover_pa - in_service) * (1.0 / span_pa), Real(0.0), Real(1.0));
    CylinderSupply<Real> out;
    out.reserve_share = lever + over * (1.0 - 2.0 * lever);
    const Real gives = 1.0 - p.cylinder_empty;
    out.gauge_pa =
        gives * (first.gauge_pa + out.reserve_share * (reserve.gauge_pa - first.gauge_pa));
    out.absolute_pa =
        gives * (first.absolute_pa + out.reserve_share * (reserve.absolute_pa - first.absolute_pa));
    return out;
}

/// Heat from air through the wetted wall [W]: UA = 1 + 14 x level W/K (chosen for a bare steel shell of
/// 45 kg; a small cylinder has less wall).
template <class Real>
[[nodiscard]] Real cylinder_heat_w(const Parameters<Real>& p, const Real& liquid_k,
                                   const Real& liquid_kg, const Surroundings& at) {
    const Real level = liquid_kg / p.cylinder_full_kg;
    return (1.0 + p.cylinder_wall_w_per_k * level) * (at.cylinder_ambient_k - liquid_k);
}

/// Warming [K/s] of one cylinder's liquid and steel while it boils off vapour.
template <class Real>
[[nodiscard]] Real cylinder_warming(const Parameters<Real>& p, const Real& liquid_k,
                                    const Real& liquid_kg, const Real& boiled_kg_per_s,
                                    const Surroundings& at) {
    const Real capacity = liquid_kg * propane_liquid_j_per_kg_k + p.cylinder_steel_j_per_k;
    return (cylinder_heat_w(p, liquid_k, liquid_kg, at) -
            boiled_kg_per_s * propane_latent_j_per_kg) /
           capacity;
}

}  // namespace emberpath::plant
