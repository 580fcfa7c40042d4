#pragma once
/// Products of combustion at chemical equilibrium: how far a hot flame falls apart again.
///
/// Equation  partial pressures tied by CO2 = CO + 1/2 O2, H2O = H2 + 1/2 O2, 1/2 H2 + 1/2 O2 = OH, 1/2 H2 = H,
///           1/2 O2 = O, 1/2 N2 + 1/2 O2 = NO, with ln K = -(change of Gibbs energy) / (R T), and the balances
///           of carbon, hydrogen, oxygen, nitrogen
/// Source    [turns] chapter 2; Gibbs energies of [nasa2002]
/// Range     1000 to 4000 K, 0.1 to 100 bar; fuel-air mixtures that leave no solid carbon
/// Errors    none
/// Checked   tests/reference/combustion_gas_reference_test.cpp, tests/unit/properties/equilibrium_test.cpp

#include "sim/properties/combustion.hpp"

namespace emberpath::properties {

/// Moles of every species when these atoms (argon keeps to itself) are held at a temperature and pressure.
[[nodiscard]] Mixture equilibrium_products(const Atoms& atoms, double argon_moles,
                                           double temperature_k, double pressure_pa);

struct EquilibriumFlame {
    double temperature_k;
    Mixture products;  // per mole of fuel
};

/// The flame without heat loss at 101.325 kPa. It is cooler than complete_flame_temperature_k by up to 10 K at an
/// excess-air ratio of 1.5, 25 K at 1.25 and 100 (methane) to 125 K at 1.
[[nodiscard]] EquilibriumFlame equilibrium_flame(Species fuel, double excess_air_ratio,
                                                 double fuel_k = 298.15, double air_k = 298.15,
                                                 const CombustionAir& air = {});

}  // namespace emberpath::properties
