#pragma once
/// A propane cylinder: vapour pressure at the liquid temperature, and what boiling takes out of it.
///
/// Equation  log10(p/bar) = 3.98292 - 819.296 / (T - 24.417)
/// Source    Antoine set for propane, 230 to 320 K, NIST Chemistry WebBook (from memory)
/// Range     liquid_k 200 to 330
/// Checked   tests/laws/cylinder_laws_test.cpp; against the equation of state in tests/reference

#include "sim/math/functions.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"
#include "sim/plant/surroundings.hpp"

namespace emberpath::plant {

inline constexpr double atmosphere_pa = 101325.0;
inline constexpr double propane_latent_j_per_kg = 355.0e3;
inline constexpr double propane_liquid_j_per_kg_k = 2520.0;

/// Absolute vapour pressure [Pa].
template <class Real>
[[nodiscard]] Real propane_vapour_pressure(const Real& liquid_k) {
    constexpr double ln10 = 2.302585092994046;
    const Real t = math::maximum(liquid_k, Real(150.0));
    return 1.0e5 * math::exp(ln10 * (3.98292 - 819.296 / (t - 24.417)));
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
