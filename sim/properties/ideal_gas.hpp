#pragma once
/// Ideal-gas heat capacity and enthalpy of fuels, air and combustion products.
///
/// Equation  cp/R = a1 T^-2 + a2 T^-1 + a3 + a4 T + a5 T^2 + a6 T^3 + a7 T^4, and its integral for H
/// Source    [nasa2002] nine-coefficient data; R = 8.314510 J/(mol K) as the coefficients require
/// Range     200 to 6000 K; hydrocarbons above methane from 300 K (a short extension down to 273 K is
///           smooth: cp changes by under 0.1 %)
/// Errors    none
/// Checked   tests/reference/combustion_gas_reference_test.cpp

#include <array>
#include <cstddef>

namespace emberpath::properties {

enum class Species {
    methane,
    ethane,
    propane,
    n_butane,
    isobutane,
    carbon_dioxide,
    carbon_monoxide,
    water,
    oxygen,
    nitrogen,
    hydrogen,
    argon,
    hydroxyl,
    nitric_oxide,
    hydrogen_atom,
    oxygen_atom
};
inline constexpr std::size_t species_count = 16;

/// Atoms in one molecule, or per mole of a mixture.
struct Atoms {
    double carbon = 0.0;
    double hydrogen = 0.0;
    double oxygen = 0.0;
    double nitrogen = 0.0;
};

/// Moles of each species; a mole fraction when they add up to one.
struct Mixture {
    std::array<double, species_count> moles{};
    [[nodiscard]] double operator[](Species s) const { return moles[static_cast<std::size_t>(s)]; }
    [[nodiscard]] double& operator[](Species s) { return moles[static_cast<std::size_t>(s)]; }
    [[nodiscard]] double total() const;
};

[[nodiscard]] Atoms atoms(Species species);
[[nodiscard]] double molar_mass_kg_per_mol(Species species);

/// Enthalpy of formation at 298.15 K and 1 bar [J/mol].
[[nodiscard]] double formation_enthalpy_j_per_mol(Species species);

[[nodiscard]] double heat_capacity_j_per_mol_k(Species species, double temperature_k);

/// Enthalpy [J/mol] including that of formation: differences across a reaction are heats of reaction.
[[nodiscard]] double enthalpy_j_per_mol(Species species, double temperature_k);

/// Entropy [J/(mol K)] at 1 bar.
[[nodiscard]] double entropy_j_per_mol_k(Species species, double temperature_k);

[[nodiscard]] double heat_capacity_j_per_k(const Mixture& mixture, double temperature_k);
[[nodiscard]] double enthalpy_j(const Mixture& mixture, double temperature_k);
[[nodiscard]] double mass_kg(const Mixture& mixture);

}  // namespace emberpath::properties
