#pragma once
/// A propane cylinder: vapour pressure at the liquid temperature, and what boiling takes out of it.
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

inline constexpr double atmosphere_pa = 101325.0;
inline constexpr double propane_latent_j_per_kg = 355.0e3;  // at 13 degC by [lemmon2009]
inline constexpr double propane_liquid_j_per_kg_k =
    properties::liquid_propane_heat_capacity_j_per_kg_k;

/// Absolute vapour pressure [Pa].
template <class Real>
[[nodiscard]] Real propane_vapour_pressure(const Real& liquid_k) {
    return properties::propane_saturation_pressure_pa(math::maximum(liquid_k, Real(150.0)));
}

/// Share of vapour the cylinder can still give: 1 until the last 0.3 kg.
template <class Real>
[[nodiscard]] Real vapour_share(const Parameters<Real>& p, const Real& liquid_kg) {
    return math::clamp(liquid_kg / 0.3, Real(0.0), Real(1.0)) * (1.0 - p.cylinder_empty);
}

/// Heat from air through the wetted wall [W]: UA = 1 + 14 x level W/K (chosen for a bare steel shell).
template <class Real>
[[nodiscard]] Real cylinder_heat_w(const Parameters<Real>& p, const State<Real>& x,
                                   const Surroundings& at) {
    const Real level = x[cylinder_liquid_kg] / p.cylinder_full_kg;
    return (1.0 + 14.0 * level) * (at.cylinder_ambient_k - x[cylinder_liquid_k]);
}

}  // namespace emberpath::plant
