#include "sim/properties/combustion.hpp"

#include "sim/properties/water.hpp"

namespace emberpath::properties {

namespace {

constexpr double liquid_water_j_per_mol = -285830.0;  // [codata1989]

/// Fuel and the air that goes with it, as one mixture.
Mixture air_mixture(const Atoms& fuel, double excess_air_ratio, const CombustionAir& air) {
    const double dry = excess_air_ratio * stoichiometric_air(fuel, air);
    Mixture mixture;
    mixture[Species::oxygen] = dry * air.oxygen_share;
    mixture[Species::nitrogen] = dry * (1.0 - air.oxygen_share);
    mixture[Species::water] = dry * air.water_per_mole;
    return mixture;
}

}  // namespace

double stoichiometric_oxygen(const Atoms& fuel) {
    return fuel.carbon + fuel.hydrogen / 4.0 - fuel.oxygen / 2.0;
}

double stoichiometric_air(const Atoms& fuel, const CombustionAir& air) {
    return stoichiometric_oxygen(fuel) / air.oxygen_share;
}

Mixture Products::mixture() const {
    Mixture out;
    out[Species::carbon_dioxide] = carbon_dioxide;
    out[Species::water] = water;
    out[Species::oxygen] = oxygen;
    out[Species::nitrogen] = nitrogen;
    return out;
}

Products complete_combustion(const Atoms& fuel, double excess_air_ratio, const CombustionAir& air) {
    const double dry_air = excess_air_ratio * stoichiometric_air(fuel, air);
    Products out;
    out.carbon_dioxide = fuel.carbon;
    out.water = fuel.hydrogen / 2.0 + dry_air * air.water_per_mole;
    out.oxygen = (excess_air_ratio - 1.0) * stoichiometric_oxygen(fuel);
    out.nitrogen = fuel.nitrogen / 2.0 + dry_air * (1.0 - air.oxygen_share);
    return out;
}

double maximum_carbon_dioxide(const Atoms& fuel, const CombustionAir& air) {
    return complete_combustion(fuel, 1.0, air).dry_carbon_dioxide_share();
}

double excess_air_ratio_from_oxygen(const Atoms& fuel, double dry_oxygen_share,
                                    const CombustionAir& air) {
    const double dry = complete_combustion(fuel, 1.0, air).dry();
    const double excess_air = dry_oxygen_share * dry / (air.oxygen_share - dry_oxygen_share);
    return 1.0 + excess_air / stoichiometric_air(fuel, air);
}

double dew_point_k(const Products& products, double pressure_pa) {
    return water_saturation_temperature_k(pressure_pa * products.water / products.wet());
}

double air_per_mole_of_fuel(const Atoms& fuel, const DryAnalysis& analysis,
                            double nitrogen_per_oxygen) {
    const double fuel_moles = (analysis.carbon_dioxide + analysis.carbon_monoxide) / fuel.carbon;
    const double air_nitrogen = analysis.nitrogen - 0.5 * fuel.nitrogen * fuel_moles;
    return air_nitrogen / nitrogen_per_oxygen * (1.0 + nitrogen_per_oxygen) / fuel_moles;
}

double net_j_per_mol(Species fuel) {
    const Atoms a = atoms(fuel);
    return formation_enthalpy_j_per_mol(fuel) -
           a.carbon * formation_enthalpy_j_per_mol(Species::carbon_dioxide) -
           0.5 * a.hydrogen * formation_enthalpy_j_per_mol(Species::water);
}

double gross_j_per_mol(Species fuel) {
    const double vaporisation =
        formation_enthalpy_j_per_mol(Species::water) - liquid_water_j_per_mol;
    return net_j_per_mol(fuel) + 0.5 * atoms(fuel).hydrogen * vaporisation;
}

double complete_flame_temperature_k(Species fuel, double excess_air_ratio, double fuel_k,
                                    double air_k, const CombustionAir& air) {
    const Atoms a = atoms(fuel);
    const double supplied =
        enthalpy_j_per_mol(fuel, fuel_k) + enthalpy_j(air_mixture(a, excess_air_ratio, air), air_k);
    const Mixture products = complete_combustion(a, excess_air_ratio, air).mixture();
    double low = 200.0, high = 4000.0;
    for (int i = 0; i < 45; ++i) {
        const double middle = 0.5 * (low + high);
        (enthalpy_j(products, middle) < supplied ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

FlueLoss flue_loss(Species fuel, double excess_air_ratio, double air_k, double flue_k,
                   const CombustionAir& air) {
    const Atoms a = atoms(fuel);
    const Mixture products = complete_combustion(a, excess_air_ratio, air).mixture();
    const double leaving = enthalpy_j(products, flue_k);
    const double supplied =
        enthalpy_j_per_mol(fuel, air_k) + enthalpy_j(air_mixture(a, excess_air_ratio, air), air_k);
    return {(leaving - enthalpy_j(products, air_k)) / net_j_per_mol(fuel),
            1.0 - (supplied - leaving) / gross_j_per_mol(fuel)};
}

}  // namespace emberpath::properties
