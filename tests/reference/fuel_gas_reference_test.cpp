// Proves calorific values, densities, Wobbe indices, air demand and limits of fuel gases against the standards.

#include <gtest/gtest.h>

#include "sim/plant/parameters.hpp"
#include "sim/properties/combustion.hpp"
#include "sim/properties/flue_analysis.hpp"
#include "sim/properties/fuel_gas.hpp"
#include "sim/properties/lpg.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::properties {
namespace {

using reference::after;
using reference::before;
using reference::Check;
using reference::Match;
using reference::quantity;
using reference::Row;
using reference::rows;
using reference::Skip;

struct Named {
    std::string_view text;
    GasComponent component;
    Species species;
};
constexpr std::array names{
    Named{"methane", GasComponent::methane, Species::methane},
    Named{"ethane", GasComponent::ethane, Species::ethane},
    Named{"propane", GasComponent::propane, Species::propane},
    Named{"n-butane", GasComponent::n_butane, Species::n_butane},
    Named{"isobutane", GasComponent::isobutane, Species::isobutane},
    Named{"nitrogen", GasComponent::nitrogen, Species::nitrogen},
    Named{"carbon dioxide", GasComponent::carbon_dioxide, Species::carbon_dioxide},
    Named{"hydrogen", GasComponent::hydrogen, Species::hydrogen}};

const Named& named(const Row& row) {
    for (const Named& name : names)
        if (row.quantity.find(name.text) != std::string::npos) return name;
    throw std::runtime_error("no gas in \"" + row.quantity + "\"");
}

/// A volume fraction in the conditions, 0 when the component is not mentioned.
double fraction(const Row& row, std::string_view formula) {
    return reference::mentions(row, formula) ? after(row, formula) / 100.0 : 0.0;
}

/// The composition that the row prints, so that the table of test gases is checked against it too.
GasComposition printed_composition(const Row& row, bool by_volume) {
    GasComposition gas;
    gas[GasComponent::methane] = fraction(row, "CH4 ");
    gas[GasComponent::ethane] = fraction(row, "C2H6 ");
    gas[GasComponent::propane] = fraction(row, "C3H8 ");
    gas[GasComponent::n_butane] = fraction(row, "n-C4H10 ");
    gas[GasComponent::isobutane] = fraction(row, "i-C4H10 ");
    gas[GasComponent::n_pentane] = fraction(row, "n-C5H12 ");
    gas[GasComponent::nitrogen] = fraction(row, "N2 ");
    gas[GasComponent::carbon_dioxide] = fraction(row, "CO2 ");
    gas[GasComponent::hydrogen] = by_volume ? fraction(row, "H2 ") : 0.0;
    return by_volume ? from_volume_fractions(gas) : gas;
}

std::string gas_name(const Row& row) {
    const std::size_t start = row.quantity.find(" G") + 1;
    return row.quantity.substr(start, row.quantity.find(' ', start) - start);
}

/// Properties of a row's gas: a test gas, the printed mixture or a pure component.
GasProperties gas_of(const Row& row) {
    if (row.quantity.starts_with("EN 437")) {
        const auto gas = test_gas(gas_name(row));
        if (!gas) throw std::runtime_error("no test gas of this name");
        const double printed = gas_properties(printed_composition(row, true)).gross_j_per_m3;
        if (std::abs(gas_properties(*gas).gross_j_per_m3 / printed - 1.0) > 1e-12)
            throw std::runtime_error("the test gas differs from the printed composition");
        return gas_properties(*gas);
    }
    if (row.quantity.find("eight-component") != std::string::npos)
        return gas_properties(printed_composition(row, false));
    return gas_properties(pure_gas(named(row).component));
}

/// Rows of one of the gases above whose quantity names this property.
Match of_a_gas(std::string property) {
    return [property](const Row& row) {
        const std::string& q = row.quantity;
        const bool gas = q.starts_with(property) || q.starts_with("EN 437 test gas") ||
                         q.starts_with("eight-component");
        return gas && q.find(property) != std::string::npos && row.unit != "kJ/mol" &&
               (row.conditions.find("15/15") != std::string::npos ||
                row.conditions.find("15 degC, 1013.25") != std::string::npos);
    };
}

Match of_a_gas_by_volume(const std::string& property) {
    return [match = of_a_gas(property)](const Row& row) {
        return match(row) && row.quantity.find("by mass") == std::string::npos;
    };
}

std::vector<Check> property_checks() {
    return {
        {"gas_component.molar_mass", quantity("ISO 6976:2016 molar mass"),
         [](const Row& row) {
             return 1e3 * gas_component(named(row).component).molar_mass_kg_per_mol;
         }},
        {"gas_component.summation_factor", quantity("ISO 6976:2016 summation factor"),
         [](const Row& row) { return gas_component(named(row).component).summation_factor; }},
        {"gas_component.gross", quantity("ISO 6976:2016 gross molar"),
         [](const Row& row) { return gas_component(named(row).component).gross_j_per_mol / 1e3; }},
        {"iso6976_gas_constant", rows("F022"), [](const Row&) { return iso6976_gas_constant; }},
        {"iso6976_air_kg_per_mol", rows("F023"),
         [](const Row&) { return 1e3 * iso6976_air_kg_per_mol; }},
        {"iso6976_air_compression_factor", rows("F024"),
         [](const Row&) { return iso6976_air_compression_factor; }},
        {"iso6976_water_j_per_mol", rows("F025"),
         [](const Row&) { return iso6976_water_j_per_mol / 1e3; }},
        {"gas_properties.gross", of_a_gas_by_volume("gross calorific value"),
         [](const Row& row) { return gas_of(row).gross_j_per_m3 / 1e6; }},
        {"gas_properties.net", of_a_gas_by_volume("net calorific value"),
         [](const Row& row) { return gas_of(row).net_j_per_m3 / 1e6; }},
        {"gas_properties.gross_by_mass", of_a_gas("gross calorific value by mass"),
         [](const Row& row) { return gas_of(row).gross_j_per_kg / 1e6; }},
        {"gas_properties.net_by_mass", of_a_gas("net calorific value by mass"),
         [](const Row& row) { return gas_of(row).net_j_per_kg / 1e6; }},
        {"gas_properties.gross_wobbe", of_a_gas("gross Wobbe index"),
         [](const Row& row) { return gas_of(row).gross_wobbe_j_per_m3 / 1e6; }},
        {"gas_properties.net_wobbe", of_a_gas("net Wobbe index"),
         [](const Row& row) { return gas_of(row).net_wobbe_j_per_m3 / 1e6; }},
        {"gas_properties.relative_density", of_a_gas("relative density"),
         [](const Row& row) { return gas_of(row).relative_density; }},
        {"gas_properties.density", quantity("density "),
         [](const Row& row) { return gas_of(row).density_kg_per_m3; }},
        {"gas_properties.compression_factor", quantity("compression factor ", "ane"),
         [](const Row& row) { return gas_of(row).compression_factor; }},
    };
}

/// Hydrocarbons of Bhatt & Thakore example 7.4; the inert rest has no heat of combustion.
double mixture_gross_by_mass(const Row& row) {
    const double sum = before(row, "% CH4") * gross_j_per_mol(Species::methane) +
                       before(row, "% C2H6") * gross_j_per_mol(Species::ethane) +
                       before(row, "% C3H8") * gross_j_per_mol(Species::propane) +
                       after(row, "C3H8, ") * gross_j_per_mol(Species::isobutane) +
                       before(row, "% C4H10") * gross_j_per_mol(Species::n_butane);
    return sum / 100.0 / after(row, "molar mass ");
}

double liquid_energy(const Row&) {
    const GasProperties gas = gas_properties(pure_gas(GasComponent::propane));
    const double density = saturated_lpg(Liquefied::propane, 288.15).liquid_kg_per_m3;
    return gas.gross_j_per_kg * density / 1e9;  // GJ/kL
}

double water_per_gross_heat(const Row& row) {
    const Species fuel = named(row).species;
    return 0.5 * atoms(fuel).hydrogen * molar_mass_kg_per_mol(Species::water) /
           gross_j_per_mol(fuel) * 1e6;  // g/kJ
}

Atoms atoms_of(const Row& row) {
    return row.quantity.find("natural gas") != std::string::npos
               ? (row.quantity.find("eight") != std::string::npos ? gas_of(row).atoms
                                                                  : atoms(Species::methane))
               : atoms(named(row).species);
}

Species burning(const Row& row) {
    return row.quantity.find("monoxide") != std::string::npos ? Species::carbon_monoxide
                                                              : named(row).species;
}

std::vector<Check> combustion_checks() {
    return {
        {"gross_j_per_mol", quantity("gross heating value of natural gas by mass"),
         mixture_gross_by_mass},
        {"net_j_per_mol", quantity("net molar heating value of propane"),
         [](const Row&) { return net_j_per_mol(Species::propane) / 1e3; }},
        {"saturated_lpg.liquid", quantity("typical Australian LPG energy"), liquid_energy},
        {"gas_properties.gross", quantity("typical LPG (propane) gross"),
         [](const Row&) {
             return gas_properties(pure_gas(GasComponent::propane)).gross_j_per_m3 / 1e6;
         }},
        {"stoichiometric_oxygen", quantity("stoichiometric oxygen demand"),
         [](const Row& row) { return stoichiometric_oxygen(atoms_of(row)); }},
        {"stoichiometric_air", quantity("stoichiometric dry air demand"),
         [](const Row& row) { return stoichiometric_air(atoms_of(row)); }},
        {"maximum_carbon_dioxide", quantity("maximum CO2 in dry flue gas"),
         [](const Row& row) { return 100.0 * maximum_carbon_dioxide(atoms_of(row)); }},
        {"complete_combustion.wet", quantity("wet flue gas volume"),
         [](const Row& row) { return complete_combustion(atoms_of(row), 1.0).wet(); }},
        {"atoms", quantity("water formed"), water_per_gross_heat},
        {"maximum_carbon_dioxide", quantity("CO2max natural gas"),
         [](const Row& row) { return 100.0 * maximum_carbon_dioxide(atoms_of(row)); }},
        {"maximum_carbon_dioxide", quantity("CO2max propane"),
         [](const Row& row) { return 100.0 * maximum_carbon_dioxide(atoms_of(row)); }},
        {"siegert_natural_gas", quantity("CO2max natural gas"),
         [](const Row&) { return 100.0 * siegert_natural_gas.maximum_carbon_dioxide; }},
        {"siegert_lpg", quantity("CO2max propane"),
         [](const Row&) { return 100.0 * siegert_lpg.maximum_carbon_dioxide; }},
        {"flammability.lower", quantity("lower flammability limit"),
         [](const Row& row) { return 100.0 * flammability(burning(row))->lower_share; }},
        {"flammability.upper", quantity("upper flammability limit"),
         [](const Row& row) { return 100.0 * flammability(burning(row))->upper_share; }},
        {"flammability.autoignition", quantity("autoignition temperature"),
         [](const Row& row) { return flammability(burning(row))->autoignition_k - 273.15; }},
        {"natural_gas_parameters.full_manifold_pa", quantity("burner pressure"),
         [](const Row&) { return plant::natural_gas_parameters().full_manifold_pa / 1e3; }},
        {"natural_gas_parameters.gross_j_per_m3", quantity("typical Australian pipeline"),
         [](const Row&) { return plant::natural_gas_parameters().gross_j_per_m3 / 1e6; }},
        {"propane_parameters.gas_lock_up_pa", quantity("customary LP Gas"),
         [](const Row&) { return plant::propane_parameters().gas_lock_up_pa / 1e3; }},
    };
}

TEST(FuelGasReference, MatchesEveryPublishedRow) {
    std::vector<Check> checks = property_checks();
    for (Check& check : combustion_checks()) checks.push_back(std::move(check));
    const std::vector<Skip> skips{
        {rows("F203 F207"),
         "two standards differ: [iec60079-20-1] is 0.6 points below [nfpa497], whose values are "
         "used; one "
         "between them would meet both rows and be neither's",
         true},
        {quantity("EN 437 test gas G32"), "propene is not one of the table's components"},
        {quantity("EN 437 test pressure"), "a test pressure, not a property"},
        {quantity("natural gas quality"), "a limit of a regulation, not a property"},
        {quantity("AS 4564"), "a limit of a standard, not a property"},
        {quantity("HD-5 propane"), "a limit of a specification, not a property"},
        {quantity("minimum gas pressure"), "a supply pressure, not a property"},
        {quantity("usual LP Gas"), "a supply pressure, not a property"},
        {quantity("cylinder/tank pressure"), "a supply pressure, not a property"},
        {quantity("lock-up test pressure"), "a supply pressure, not a property"},
    };
    reference::check_file("03_fuel_gases", checks, skips);
}

}  // namespace
}  // namespace emberpath::properties
