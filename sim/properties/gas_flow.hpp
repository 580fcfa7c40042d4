#pragma once
/// Gas through injectors and low-pressure pipes. Gas is taken as incompressible: drops of a few kPa against
/// 100 kPa change the density by a few percent at most.
/// Checked   tests/reference/gas_flow_reference_test.cpp

#include "sim/math/functions.hpp"
#include "sim/properties/hydraulics.hpp"

namespace emberpath::properties {

/// Flow [m3/s] out of an injector whose effective area is discharge coefficient x bore area.
/// Equation  CdA sqrt(2 p / rho), Bernoulli     Range p well below 100 kPa, p >= 0
template <class Real>
[[nodiscard]] Real injector_flow_m3_per_s(const Real& effective_area_m2, const Real& pressure_pa,
                                          const Real& density_kg_per_m3) {
    return effective_area_m2 * math::square_root(2.0 * pressure_pa / density_kg_per_m3);
}

/// Effective area [m2] of a drilled injector.
[[nodiscard]] inline double injector_area_m2(double bore_m, double discharge_coefficient) {
    return discharge_coefficient * bore_area_m2(bore_m);
}

/// A pipe for the trade's formulas: bore, length and the relative density of the gas (air = 1).
struct GasPipe {
    double bore_m;
    double length_m;
    double relative_density;
};

/// Flow [m3/s] by Pole's formula.
/// Equation  0.0071 sqrt(d^5 h / (s L)): m3/h, d in mm, h in mbar, L in m      Source [pole]
/// Range     low pressure; reads 0 to 20 % above the American tables for small pipes
[[nodiscard]] double pole_flow_m3_per_s(const GasPipe& pipe, double pressure_drop_pa);

/// Resistance [Pa s2/m6] of a pipe by Pole's formula, so that drop = resistance x flow^2.
[[nodiscard]] double pole_resistance(const GasPipe& pipe);

/// The form in inches and feet, for comparison.
/// Equation  1350 sqrt(d^5 p / (0.33 L s)): ft3/h, d in inches, p in inches of water, L in ft   Source [pole]
[[nodiscard]] double pole_imperial_flow_m3_per_s(const GasPipe& pipe, double pressure_drop_pa);

/// Flow [m3/s] by Spitzglass's formula: 20 to 35 % below Darcy for small pipes.
/// Equation  3550 sqrt(d^5 h / ((1 + 3.6/d + 0.03 d) L s)): ft3/h, d in inches, h inches of water, L ft
/// Source    [spitzglass]
[[nodiscard]] double spitzglass_flow_m3_per_s(const GasPipe& pipe, double pressure_drop_pa);

/// Flow [m3/s] of natural gas by the code's low-pressure equation (its own density inside).
/// Equation  D = Q^0.381 / (19.17 (dH/(Cr L))^0.206), Cr = 0.6094     Source [ifgc2018] appendix A.4
[[nodiscard]] double code_natural_gas_flow_m3_per_s(double bore_m, double length_m,
                                                    double pressure_drop_pa);

}  // namespace emberpath::properties
