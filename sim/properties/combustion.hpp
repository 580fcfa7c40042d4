#pragma once
/// Complete combustion: air demand, products, dew point, flame temperature, flue loss.
/// All per mole of fuel; one mole of any gas counts as one volume.
/// Checked   tests/reference/combustion_gas_reference_test.cpp, flue_analysis_reference_test.cpp

#include "sim/properties/air.hpp"
#include "sim/properties/ideal_gas.hpp"

namespace emberpath::properties {

/// Combustion air. Everything that is not oxygen or water counts as nitrogen.
struct CombustionAir {
    double oxygen_share = oxygen_in_air;  // of dry air
    double water_per_mole = 0.0;          // moles of vapour per mole of dry air
};

/// Oxygen that burns one mole of fuel completely [mol/mol].
/// Equation  C + H/4 - O/2     Source reaction stoichiometry     Range fuels that need oxygen
[[nodiscard]] double stoichiometric_oxygen(const Atoms& fuel);

/// Dry air that burns one mole of fuel completely [mol/mol = m3/m3].
[[nodiscard]] double stoichiometric_air(const Atoms& fuel, const CombustionAir& air = {});

/// What leaves the flame per mole of fuel [mol].
struct Products {
    double carbon_dioxide = 0.0;
    double water = 0.0;
    double oxygen = 0.0;
    double nitrogen = 0.0;
    [[nodiscard]] double dry() const { return carbon_dioxide + oxygen + nitrogen; }
    [[nodiscard]] double wet() const { return dry() + water; }
    [[nodiscard]] double dry_oxygen_share() const { return oxygen / dry(); }
    [[nodiscard]] double dry_carbon_dioxide_share() const { return carbon_dioxide / dry(); }
    [[nodiscard]] Mixture mixture() const;
};

/// Products of complete combustion. Range: excess_air_ratio (air used / air needed) of at least 1.
/// Errors    none: below 1 the oxygen comes out negative, which says so
[[nodiscard]] Products complete_combustion(const Atoms& fuel, double excess_air_ratio,
                                           const CombustionAir& air = {});

/// Carbon dioxide in dry flue gas without excess air [share]: the most a complete flame can show.
[[nodiscard]] double maximum_carbon_dioxide(const Atoms& fuel, const CombustionAir& air = {});

/// Excess-air ratio from the oxygen in dry flue gas, by the exact mole balance.
/// Equation  1 + y D / ((x - y) A): y oxygen measured, x in air, A air needed, D dry products without excess
/// Range     0 <= dry_oxygen_share < oxygen in air
[[nodiscard]] double excess_air_ratio_from_oxygen(const Atoms& fuel, double dry_oxygen_share,
                                                  const CombustionAir& air = {});

/// Temperature [K] at which water begins to condense from the products at that absolute pressure.
/// Source    vapour share x pressure, [iapws-if97] eq. (31)
[[nodiscard]] double dew_point_k(const Products& products, double pressure_pa);

/// Air per mole of fuel from a dry flue analysis that may hold carbon monoxide.
/// Equation  carbon balance for the fuel, nitrogen balance for the air
/// Source    [moran2006] section 13.1
struct DryAnalysis {
    double carbon_dioxide, carbon_monoxide, oxygen, nitrogen;  // shares or any common unit
};
[[nodiscard]] double air_per_mole_of_fuel(const Atoms& fuel, const DryAnalysis& analysis,
                                          double nitrogen_per_oxygen = 3.76);

/// Heat of combustion at 298.15 K [J/mol]: net with the water as vapour, gross with it as liquid.
/// Source    formation enthalpies of [nasa2002]; liquid water -285.830 kJ/mol [codata1989]
[[nodiscard]] double net_j_per_mol(Species fuel);
[[nodiscard]] double gross_j_per_mol(Species fuel);

/// Flame temperature [K] without heat loss, products CO2, H2O, O2 and N2 only (no dissociation: above about
/// 1900 K the real flame is cooler, by 100 K at excess_air_ratio 1).
/// Equation  enthalpy of products = enthalpy of fuel and air, by bisection to 1e-9 of the range
/// Range     excess_air_ratio of at least 1
[[nodiscard]] double complete_flame_temperature_k(Species fuel, double excess_air_ratio,
                                                  double fuel_k = 298.15, double air_k = 298.15,
                                                  const CombustionAir& air = {});

/// Heat carried off by the flue gas, by the exact enthalpy balance, nothing condensed.
/// Equation  net: (H(products, flue) - H(products, air)) / net;
///           gross: 1 - (H(fuel and air) - H(products, flue)) / gross
struct FlueLoss {
    double net_share;    // sensible heat, share of the net heat input
    double gross_share;  // sensible and latent heat, share of the gross heat input
};
[[nodiscard]] FlueLoss flue_loss(Species fuel, double excess_air_ratio, double air_k, double flue_k,
                                 const CombustionAir& air = {});

}  // namespace emberpath::properties
