#pragma once
/// Water: the liquid that is heated, and the vapour pressure that decides boiling and condensation.
/// Uses sim/math throughout, so a value has the same bits on every machine. Checked throughout by
/// tests/reference/water_reference_test.cpp.

namespace emberpath::properties {

/// One state of liquid water.
///
/// Equation  specific Gibbs energy gamma(pi, tau) of region 1 and its derivatives
/// Source    [iapws-if97] eq. (7), tables 2 and 3
/// Range     273.15 to 623.15 K, from saturation pressure to 100 MPa (absolute)
/// Errors    none: outside the range the equation extrapolates, it does not fail
struct LiquidWater {
    double density_kg_per_m3;
    double enthalpy_j_per_kg;  // nearly 0 for the liquid at the triple point
    double entropy_j_per_kg_k;
    double heat_capacity_j_per_kg_k;
    double speed_of_sound_m_per_s;
};
[[nodiscard]] LiquidWater liquid_water(double temperature_k, double pressure_pa);

/// Dynamic viscosity [Pa s] of water of that density.
///
/// Equation  mu = mu0(T) mu1(T, rho); the enhancement near the critical point is left out
/// Source    [iapws-r12] eqs. (11) and (12), tables 1 and 2
/// Range     liquid, 273 to 450 K
/// Errors    none
[[nodiscard]] double water_viscosity_pa_s(double temperature_k, double density_kg_per_m3);

/// Thermal conductivity [W/(m K)] of water of that density.
///
/// Equation  lambda = lambda0(T) lambda1(T, rho); the enhancement near the critical point is left out
///           (below 0.5 % of the value for the liquid under 100 degC)
/// Source    [iapws-r15] eqs. (16) and (17), tables 1 and 2
/// Range     liquid, 273 to 400 K
/// Errors    none
[[nodiscard]] double water_conductivity_w_per_m_k(double temperature_k, double density_kg_per_m3);

/// Pressure [Pa, absolute] at which water boils at that temperature; also the highest partial pressure
/// water vapour can have in air or flue gas.
///
/// Equation  the quadratic of region 4, solved for the pressure
/// Source    [iapws-if97] eq. (30), table 34
/// Range     273.15 to 647.096 K
/// Errors    none
[[nodiscard]] double water_saturation_pressure_pa(double temperature_k);

/// Temperature [K] at which water boils at that absolute pressure; for a partial pressure of water vapour
/// the dew point.
///
/// Source    [iapws-if97] eq. (31)
/// Range     611.213 Pa to 22.064 MPa
/// Errors    none
[[nodiscard]] double water_saturation_temperature_k(double pressure_pa);

/// Heat of vaporisation [J/kg] at saturation.
///
/// Equation  T (dp/dT) (1/rho'' - 1/rho'), Clapeyron
/// Source    saturation pressure and densities of [wagner1993]
/// Range     273.16 to 640 K
/// Errors    none
[[nodiscard]] double water_latent_heat_j_per_kg(double temperature_k);

}  // namespace emberpath::properties
