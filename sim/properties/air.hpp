#pragma once
/// Dry and moist air as an ideal gas: combustion air, flue draught, room air.
/// Checked   tests/reference/combustion_gas_reference_test.cpp, tests/unit/properties/fluid_test.cpp

#include "sim/properties/ideal_gas.hpp"

namespace emberpath::properties {

inline constexpr double standard_pressure_pa = 101325.0;
inline constexpr double standard_temperature_k =
    288.15;  // 15 degC: gas and air volumes are stated here
inline constexpr double molar_gas_constant = 8.314462618;  // J/(mol K), exact since 2019

/// Share of oxygen in dry air by volume, as combustion practice takes it; the rest counts as nitrogen.
inline constexpr double oxygen_in_air = 0.2095;

/// Composition of dry air per mole: N2, O2, Ar, CO2.
/// Source    [iso6976], composition of dry air rounded to four components (recalled)
[[nodiscard]] Mixture dry_air();

/// Density [kg/m3], ideal gas. Range: 250 to 2000 K near atmospheric pressure (error below 0.1 %).
[[nodiscard]] double dry_air_density_kg_per_m3(double temperature_k, double pressure_pa);

/// Heat capacity [J/(kg K)] of the ideal mixture [nasa2002]; the real gas is 0.2 % higher at 300 K.
[[nodiscard]] double dry_air_heat_capacity_j_per_kg_k(double temperature_k);

/// Dynamic viscosity [Pa s].
/// Equation  1.458e-6 T^1.5 / (T + 110.4)     Source [usstd1976] eq. (51)     Range 200 to 1000 K
[[nodiscard]] double air_viscosity_pa_s(double temperature_k);

/// Thermal conductivity [W/(m K)].
/// Equation  2.64638e-3 T^1.5 / (T + 245.4 10^(-12/T))   Source [usstd1976] eq. (53)   Range 200 to 1000 K
[[nodiscard]] double air_conductivity_w_per_m_k(double temperature_k);

/// Water vapour per mole of dry air [mol/mol] at that relative humidity (0 to 1).
/// Equation  phi ps / (p - phi ps), ideal mixture     Range ps well below p
[[nodiscard]] double water_per_mole_of_dry_air(double temperature_k, double pressure_pa,
                                               double relative_humidity);

/// Density [kg/m3] of moist air: lighter than dry air of the same state.
[[nodiscard]] double moist_air_density_kg_per_m3(double temperature_k, double pressure_pa,
                                                 double relative_humidity);

}  // namespace emberpath::properties
