#pragma once
/// LPG in a cylinder: saturation pressure, densities, heat of vaporisation.
/// Checked   tests/reference/lpg_reference_test.cpp

#include "sim/math/functions.hpp"

namespace emberpath::properties {

/// Saturation pressure of propane [Pa, absolute]: the form for every tick.
///
/// Equation  ln p = 20.957254 - 2031.8066 / (T - 15.55)
/// Source    Antoine's form, constants fitted to [lemmon2009] at 201 points
/// Range     230 to 325 K: within 0.27 % of [lemmon2009]
/// Errors    none: T must stay above 16 K
template <class Real>
[[nodiscard]] Real propane_saturation_pressure_pa(const Real& temperature_k) {
    return math::exp(20.957254 - 2031.8066 / (temperature_k - 15.55));
}

/// The same with the constants of a public table, for comparison: 1.7 to 3 % high.
///
/// Equation  log10(p/bar) = 3.98292 - 819.296 / (T - 24.417)
/// Source    [nist-webbook], Antoine set for 230.6 to 320.7 K
/// Range     230 to 320 K
/// Errors    none: T must stay above 25 K
template <class Real>
[[nodiscard]] Real propane_antoine_pressure_pa(const Real& temperature_k) {
    constexpr double ln10 = 2.302585092994045684;
    return 1e5 * math::exp(ln10 * (3.98292 - 819.296 / (temperature_k - 24.417)));
}

/// Heat capacity of liquid propane [J/(kg K)], chosen; handbooks print 2.5 to 2.6 near 15 degC.
inline constexpr double liquid_propane_heat_capacity_j_per_kg_k = 2520.0;

enum class Liquefied { propane, n_butane, isobutane };

/// The saturated fluid at one temperature.
///
/// Equation  ln(p/pc) = (Tc/T) sum n_i theta^t_i, theta = 1 - T/Tc; likewise the two densities
/// Source    propane [lemmon2009] ancillary equations; butanes [buecker2006] ancillary equations
/// Range     150 K to 0.99 Tc
/// Errors    none
struct SaturatedLpg {
    double pressure_pa;  // absolute
    double liquid_kg_per_m3;
    double vapour_kg_per_m3;
    double latent_heat_j_per_kg;  // T (dp/dT) (1/vapour - 1/liquid), Clapeyron
};
[[nodiscard]] SaturatedLpg saturated_lpg(Liquefied fluid, double temperature_k);

/// Temperature [K] at which the fluid boils at that absolute pressure, by bisection.
/// Range     1 kPa to 3 MPa
[[nodiscard]] double boiling_temperature_k(Liquefied fluid, double pressure_pa);

/// Pressure [Pa] over a liquid mixture of propane and n-butane.
/// Equation  x p1 + (1 - x) p2, Raoult: an ideal solution, good to a few percent
[[nodiscard]] double propane_butane_pressure_pa(double propane_mole_fraction, double temperature_k);

}  // namespace emberpath::properties
