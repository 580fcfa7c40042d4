// Proves the enthalpies of gases, flame temperatures, heats of combustion and air properties against tables,
// textbook examples and an equilibrium program.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/properties/air.hpp"
#include "sim/properties/combustion.hpp"
#include "sim/properties/equilibrium.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::properties {
namespace {

using reference::after;
using reference::before;
using reference::Check;
using reference::mentions;
using reference::quantity;
using reference::Row;
using reference::rows;

constexpr double nitrogen_per_oxygen = 3.76;
constexpr CombustionAir textbook_air{1.0 / (1.0 + nitrogen_per_oxygen), 0.0};

/// The species a quantity is about: the longest name it mentions.
Species species_of(const Row& row) {
    struct Name {
        std::string_view text;
        Species species;
    };
    static constexpr std::array names{
        Name{"n-C4H10", Species::n_butane},  Name{"i-C4H10", Species::isobutane},
        Name{"n-butane", Species::n_butane}, Name{"CH4", Species::methane},
        Name{"methane", Species::methane},   Name{"C2H6", Species::ethane},
        Name{"ethane", Species::ethane},     Name{"C3H8", Species::propane},
        Name{"propane", Species::propane},   Name{"CO2", Species::carbon_dioxide},
        Name{"H2O", Species::water},         Name{" CO", Species::carbon_monoxide},
        Name{" O2", Species::oxygen},        Name{" N2", Species::nitrogen},
        Name{" H2", Species::hydrogen},      Name{" Ar", Species::argon}};
    for (const Name& name : names)
        if (row.quantity.find(name.text) != std::string::npos) return name.species;
    throw std::runtime_error("no species in \"" + row.quantity + "\"");
}

double heat_capacity(const Row& row) {
    return heat_capacity_j_per_mol_k(species_of(row), after(row, "T="));
}

double rise(const Row& row, double temperature_k) {
    const Species s = species_of(row);
    return (enthalpy_j_per_mol(s, temperature_k) - enthalpy_j_per_mol(s, 298.15)) / 1e3;
}

TEST(CombustionGasReference, PolynomialReproducesTheStoredFormationEnthalpy) {
    for (std::size_t i = 0; i < species_count; ++i) {
        const auto s = static_cast<Species>(i);
        EXPECT_NEAR(enthalpy_j_per_mol(s, 298.15), formation_enthalpy_j_per_mol(s), 10.0);
    }
}

double complete_flame(const Row& row) {
    return complete_flame_temperature_k(species_of(row), after(row, "lambda="), 298.15, 298.15,
                                        textbook_air);
}

/// Complete combustion stands in for equilibrium where dissociation is small.
double lean_flame(const Row& row) {
    return complete_flame_temperature_k(species_of(row), 1.0 / after(row, "phi="));
}

/// Rows of the textbook table are stoichiometric without saying so in figures.
EquilibriumFlame dissociated_flame(const Row& row) {
    const double phi = mentions(row, "phi=") ? after(row, "phi=") : 1.0;
    const double air_k = mentions(row, "air 400 K") ? after(row, "air ") : 298.15;
    return equilibrium_flame(species_of(row), 1.0 / phi, 298.15, air_k);
}

double dissociated_flame_k(const Row& row) {
    return dissociated_flame(row).temperature_k;
}

template <Species Which>
double share_in_the_flame(const Row& row) {
    const Mixture products = dissociated_flame(row).products;
    return products[Which] / products.total();
}

double stoichiometric_mass_ratio(const Row& row) {
    const Species fuel = species_of(row);
    const Mixture air = dry_air();
    const double moles = stoichiometric_oxygen(atoms(fuel)) / air[Species::oxygen];
    return moles * mass_kg(air) / molar_mass_kg_per_mol(fuel);
}

DryAnalysis analysis_of(const Row& row) {
    const std::size_t start = row.conditions.find("dry products");
    Row products = row;
    products.conditions = row.conditions.substr(start);
    return {before(products, "% CO2"), before(products, "% CO,"), before(products, "% O2"),
            before(products, "% N2")};
}

Atoms fuel_of_the_analysis(const Row& row) {
    if (row.conditions.starts_with("methane")) return atoms(Species::methane);
    const double c1 = before(row, "% CH4") / 100.0, c2 = before(row, "% C2H6") / 100.0;
    const double c3 = before(row, "% C3H8") / 100.0, c4 = before(row, "% C4H10") / 100.0;
    return {c1 + 2.0 * c2 + 3.0 * c3 + 4.0 * c4, 4.0 * c1 + 6.0 * c2 + 8.0 * c3 + 10.0 * c4, 0.0,
            2.0 * before(row, "% N2;") / 100.0};
}

double air_by_moles(const Row& row) {
    return air_per_mole_of_fuel(fuel_of_the_analysis(row), analysis_of(row), nitrogen_per_oxygen);
}

double theoretical_air_percent(const Row& row) {
    return 100.0 * air_by_moles(row) / stoichiometric_air(fuel_of_the_analysis(row), textbook_air);
}

double analysed_dew_point(const Row& row) {
    const Atoms fuel = fuel_of_the_analysis(row);
    const DryAnalysis dry = analysis_of(row);
    Products products;
    products.carbon_dioxide = dry.carbon_dioxide + dry.carbon_monoxide;
    products.oxygen = dry.oxygen;
    products.nitrogen = dry.nitrogen;
    products.water = products.carbon_dioxide / fuel.carbon * fuel.hydrogen / 2.0;
    return dew_point_k(products, standard_pressure_pa) - 273.15;
}

/// Moran & Shapiro example 13.5: the flue of example 13.2 leaves hot, the rest of the heat left before.
double chamber_heat(const Row& row) {
    Row analysed = row;
    analysed.conditions = "methane; dry products 9.7 % CO2, 0.5 % CO, 2.95 % O2, 86.85 % N2";
    const double air = air_by_moles(analysed);
    const DryAnalysis dry = analysis_of(analysed);
    const double per_fuel = 1.0 / (dry.carbon_dioxide + dry.carbon_monoxide);
    Mixture products, supplied;
    products[Species::carbon_dioxide] = dry.carbon_dioxide * per_fuel;
    products[Species::carbon_monoxide] = dry.carbon_monoxide * per_fuel;
    products[Species::oxygen] = dry.oxygen * per_fuel;
    products[Species::nitrogen] = dry.nitrogen * per_fuel;
    products[Species::water] = 2.0;
    supplied[Species::oxygen] = air * textbook_air.oxygen_share;
    supplied[Species::nitrogen] = air * (1.0 - textbook_air.oxygen_share);
    return enthalpy_j_per_mol(Species::methane, after(row, "methane enters at ")) +
           enthalpy_j(supplied, after(row, "air at ")) -
           enthalpy_j(products, after(row, "products leave at "));
}

double ethane_mass_ratio(const Row& row) {
    const double lambda = 1.0 + after(row, "ethane with ") / 100.0;
    const double air = lambda * stoichiometric_air(atoms(Species::ethane), textbook_air);
    return air * after(row, "(M_air ") * 1e-3 / molar_mass_kg_per_mol(Species::ethane);
}

double ethane_dew_point(const Row& row) {
    const double lambda = 1.0 + after(row, "ethane with ") / 100.0;
    return dew_point_k(complete_combustion(atoms(Species::ethane), lambda, textbook_air),
                       after(row, "products at ") * 1e3) -
           273.15;
}

double moist_air_dew_point(const Row& row) {
    const double methane = before(row, "% CH4"), hydrogen = before(row, "% H2");
    const double nitrogen = before(row, "% N2"), oxygen = before(row, "% O2");
    const double carbon_dioxide = before(row, "% CO2");
    const Atoms fuel{(methane + carbon_dioxide) / 100.0, (4.0 * methane + 2.0 * hydrogen) / 100.0,
                     2.0 * (oxygen + carbon_dioxide) / 100.0, 2.0 * nitrogen / 100.0};
    const double pressure = before(row, " kPa") * 1e3;
    CombustionAir air = textbook_air;
    air.water_per_mole = water_per_mole_of_dry_air(after(row, "moist air ") + 273.15, pressure,
                                                   after(row, "degC ") / 100.0);
    return dew_point_k(complete_combustion(fuel, 1.0, air), pressure) - 273.15;
}

/// Cengel & Boles example 15-6 asks how much air goes with the fuel; where the carbon ends does not matter.
double propane_air_flow(const Row& row) {
    const double lambda = 1.0 + before(row, "% excess air") / 100.0;
    const double moles = lambda * stoichiometric_air(atoms(Species::propane), textbook_air);
    constexpr double textbook_air_kg_per_mol = 29e-3;
    return before(row, " kg/min") * moles * textbook_air_kg_per_mol /
           molar_mass_kg_per_mol(Species::propane);
}

std::vector<Check> gas_checks() {
    return {
        {"heat_capacity_j_per_mol_k", quantity("ideal-gas cp"), heat_capacity},
        {"enthalpy_j_per_mol", quantity("enthalpy rise"),
         [](const Row& row) { return rise(row, after(row, "T=")); }},
        {"enthalpy_j_per_mol", quantity("enthalpy of formation"),
         [](const Row& row) { return enthalpy_j_per_mol(species_of(row), 298.15) / 1e3; }},
        {"heat_capacity_j_per_mol_k", quantity("JANAF cp"), heat_capacity},
        {"enthalpy_j_per_mol", quantity("JANAF enthalpy rise"),
         [](const Row& row) { return rise(row, 1000.0); }},
        {"formation_enthalpy_j_per_mol", quantity("JANAF enthalpy of formation"),
         [](const Row& row) { return formation_enthalpy_j_per_mol(species_of(row)) / 1e3; }},
        {"net_j_per_mol", quantity("net (lower) molar heat"),
         [](const Row& row) { return net_j_per_mol(species_of(row)) / 1e3; }},
        {"gross_j_per_mol", quantity("gross (higher) molar heat"),
         [](const Row& row) { return gross_j_per_mol(species_of(row)) / 1e3; }},
        {"gross_j_per_mol", quantity("gross specific heat of combustion"),
         [](const Row& row) {
             return gross_j_per_mol(species_of(row)) / molar_mass_kg_per_mol(species_of(row)) / 1e3;
         }},
        {"dry_air_density_kg_per_m3", quantity("air density"),
         [](const Row& row) {
             return dry_air_density_kg_per_m3(after(row, "T="), after(row, "p=") * 1e3);
         }},
        {"dry_air_heat_capacity_j_per_kg_k", quantity("air cp"),
         [](const Row& row) { return dry_air_heat_capacity_j_per_kg_k(after(row, "T=")) / 1e3; }},
        {"air_viscosity_pa_s", quantity("air dynamic viscosity"),
         [](const Row& row) { return 1e6 * air_viscosity_pa_s(after(row, "T=")); }},
        {"air_conductivity_w_per_m_k", quantity("air thermal conductivity"),
         [](const Row& row) { return 1e3 * air_conductivity_w_per_m_k(after(row, "T=")); }},
    };
}

/// Lean enough for dissociation not to matter.
bool burns_lean(const Row& row) {
    return row.quantity.starts_with("adiabatic flame temperature, equilibrium") &&
           after(row, "phi=") <= 0.85;
}

std::vector<Check> flame_checks() {
    return {
        {"complete_flame_temperature_k", quantity("adiabatic flame temperature, complete"),
         complete_flame},
        {"equilibrium_flame", quantity("adiabatic flame temperature, equilibrium"),
         dissociated_flame_k},
        {"equilibrium_flame", quantity("adiabatic flame temperature (textbook table)"),
         dissociated_flame_k},
        {"equilibrium_flame", quantity("equilibrium CO mole"),
         share_in_the_flame<Species::carbon_monoxide>},
        {"equilibrium_flame", quantity("equilibrium NO mole"),
         share_in_the_flame<Species::nitric_oxide>},
        // The second tolerance of these rows is for a model with fewer species, as this one is.
        {"complete_flame_temperature_k", burns_lean, lean_flame, 1},
        {"stoichiometric_oxygen", quantity("stoichiometric air-fuel mass ratio"),
         stoichiometric_mass_ratio},
        {"air_per_mole_of_fuel", quantity("air-fuel ratio, molar"), air_by_moles},
        {"air_per_mole_of_fuel", quantity("percent theoretical air"), theoretical_air_percent},
        {"dew_point_k", rows("C204"), analysed_dew_point},
        {"enthalpy_j", quantity("heat released per kmol"), chamber_heat},
        {"stoichiometric_air", quantity("air-fuel mass ratio"), ethane_mass_ratio},
        {"dew_point_k", rows("C211"), ethane_dew_point},
        {"dew_point_k", rows("C212"), moist_air_dew_point},
        {"stoichiometric_air", quantity("air mass flow"), propane_air_flow},
    };
}

TEST(CombustionGasReference, MatchesEveryPublishedRow) {
    std::vector<Check> checks = gas_checks();
    for (Check& check : flame_checks()) checks.push_back(std::move(check));
    reference::check_file("02_air_combustion_gases", checks, {});
}

}  // namespace
}  // namespace emberpath::properties
