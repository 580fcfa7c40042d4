#pragma once
/// Heat exchangers by effectiveness and number of transfer units, and heat transfer inside tubes.
/// Effectiveness forms are templates on Real: the plant runs them in every RK4 stage.
/// Checked   tests/reference/heat_transfer_reference_test.cpp

#include "sim/math/functions.hpp"

namespace emberpath::properties {

// Effectiveness [-] from NTU = UA / Cmin and Cr = Cmin / Cmax.
// Source    [kays1984] chapter 2; [incropera2007] table 11.3
// Range     ntu >= 0; 0 < cr <= 1 (functions without cr are the limit cr = 0)
// Errors    none

/// One fluid stays at one temperature. Equation 1 - exp(-NTU).
template <class Real>
[[nodiscard]] Real constant_temperature_effectiveness(const Real& ntu) {
    return 1.0 - math::exp(-ntu);
}

/// Counterflow. Equation (1 - e) / (1 - Cr e), e = exp(-NTU (1 - Cr)); NTU / (1 + NTU) at Cr = 1.
template <class Real>
[[nodiscard]] Real counterflow_effectiveness(const Real& ntu, const Real& cr) {
    // Both forms are evaluated; the general one divides by a guarded value next to Cr = 1, where it would
    // lose its figures.
    const Real away = 1.0 - cr;
    const auto equal = math::magnitude(away) < Real(1e-7);
    const Real e = math::exp(-ntu * away);
    const Real below = math::select(equal, Real(1.0), 1.0 - cr * e);
    return math::select(equal, ntu / (1.0 + ntu), (1.0 - e) / below);
}

/// Parallel flow. Equation (1 - exp(-NTU (1 + Cr))) / (1 + Cr).
template <class Real>
[[nodiscard]] Real parallel_flow_effectiveness(const Real& ntu, const Real& cr) {
    return (1.0 - math::exp(-ntu * (1.0 + cr))) / (1.0 + cr);
}

/// Crossflow, both fluids unmixed: the usual approximation.
/// Equation  1 - exp(NTU^0.22 / Cr (exp(-Cr NTU^0.78) - 1))     Range ntu > 0
template <class Real>
[[nodiscard]] Real crossflow_unmixed_effectiveness(const Real& ntu, const Real& cr) {
    const Real inner = math::exp(-cr * math::power(ntu, 0.78)) - 1.0;
    return 1.0 - math::exp(math::power(ntu, 0.22) / cr * inner);
}

/// Crossflow, the stream of Cmin mixed. Equation 1 - exp(-(1 - exp(-Cr NTU)) / Cr).
template <class Real>
[[nodiscard]] Real crossflow_cmin_mixed_effectiveness(const Real& ntu, const Real& cr) {
    return 1.0 - math::exp(-(1.0 - math::exp(-cr * ntu)) / cr);
}

/// Crossflow, the stream of Cmax mixed. Equation (1 - exp(-Cr (1 - exp(-NTU)))) / Cr.
template <class Real>
[[nodiscard]] Real crossflow_cmax_mixed_effectiveness(const Real& ntu, const Real& cr) {
    return (1.0 - math::exp(-cr * (1.0 - math::exp(-ntu)))) / cr;
}

/// One shell pass, two tube passes (or a multiple).
/// Equation  2 / (1 + Cr + g (1 + e) / (1 - e)), g = sqrt(1 + Cr^2), e = exp(-NTU g)     Range ntu > 0
template <class Real>
[[nodiscard]] Real shell_and_tube_effectiveness(const Real& ntu, const Real& cr) {
    const Real g = math::square_root(1.0 + cr * cr);
    const Real e = math::exp(-ntu * g);
    return 2.0 / (1.0 + cr + g * (1.0 + e) / (1.0 - e));
}

/// Crossflow, both unmixed, exact: a double series, for checking the approximation.
/// Source    [mason1955]     Range 0 < ntu < 20
[[nodiscard]] double crossflow_unmixed_exact_effectiveness(double ntu, double cr);

/// NTU that gives an effectiveness in crossflow with both fluids unmixed (exact), by bisection.
[[nodiscard]] double crossflow_unmixed_exact_ntu(double effectiveness, double cr);

/// NTU of a counterflow exchanger. Equation ln((1 - eps Cr)/(1 - eps)) / (1 - Cr).     Range Cr < 1
[[nodiscard]] double counterflow_ntu(double effectiveness, double cr);

/// NTU of a shell-and-tube exchanger (one shell pass): the inverse of the form above.
[[nodiscard]] double shell_and_tube_ntu(double effectiveness, double cr);

/// Log-mean temperature difference [K]. Range: two positive differences.
[[nodiscard]] double log_mean_difference_k(double difference_1_k, double difference_2_k);

// Fully developed flow in tubes: Nusselt numbers on the bore.

/// Laminar flow. Source [incropera2007] section 8.4.
inline constexpr double laminar_nusselt_constant_wall = 3.66;
inline constexpr double laminar_nusselt_constant_flux = 4.364;

/// Turbulent flow. Equation 0.023 Re^0.8 Pr^n; n is 0.4 when the fluid is heated, 0.3 when cooled.
/// Source    [dittus1930] as in [incropera2007] eq. (8.60)     Range Re above 10000, Pr 0.7 to 160
template <class Real>
[[nodiscard]] Real dittus_boelter_nusselt(const Real& reynolds, const Real& prandtl,
                                          double exponent = 0.4) {
    return 0.023 * math::power(reynolds, 0.8) * math::power(prandtl, exponent);
}

/// Friction factor of smooth tubes (Darcy). Equation (0.790 ln Re - 1.64)^-2.
/// Source    [petukhov1970]     Range Re 3000 to 5e6
[[nodiscard]] double petukhov_friction(double reynolds);

/// Transition and turbulent flow.
/// Equation  (f/8)(Re - 1000) Pr / (1 + 12.7 sqrt(f/8) (Pr^(2/3) - 1))
/// Source    [gnielinski1976] as in [incropera2007] eq. (8.62)     Range Re 3000 to 5e6, Pr 0.5 to 2000
[[nodiscard]] double gnielinski_nusselt(double reynolds, double prandtl, double darcy_friction);
[[nodiscard]] double gnielinski_nusselt(double reynolds, double prandtl);

/// Turbulent flow with the wall's viscosity (heating).
/// Equation  (f/8) Re Pr / (1.07 + 12.7 sqrt(f/8) (Pr^(2/3) - 1)) (mu/mu_wall)^0.11
/// Source    [petukhov1970] as in [lienhard2008] eqs. (7.41), (7.43)     Range Re 1e4 to 5e6
[[nodiscard]] double petukhov_nusselt(double reynolds, double prandtl, double viscosity_ratio);

/// Rough tubes. Equation Haaland's f; (f/8) Re Pr / (1 + sqrt(f/8) (4.5 Re_e^0.2 Pr^0.5 - 8.48)).
/// Source    [lienhard2008] eqs. (7.49), (7.50)     Range fully rough, Pr 0.5 and up
[[nodiscard]] double rough_tube_nusselt(double reynolds, double prandtl, double relative_roughness);

/// Resistance [K/W] of a tube wall. Equation ln(Do/Di) / (2 pi k L).
[[nodiscard]] double tube_wall_resistance_k_per_w(double inner_m, double outer_m, double length_m,
                                                  double conductivity_w_per_m_k);

}  // namespace emberpath::properties
