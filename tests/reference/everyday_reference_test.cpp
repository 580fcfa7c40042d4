// Proves the sums a technician does on a job: heat to water, units, gas rates, mixing, waiting, condensate.

#include <gtest/gtest.h>

#include "sim/properties/combustion.hpp"
#include "sim/properties/fuel_gas.hpp"
#include "sim/properties/hydraulics.hpp"
#include "sim/properties/water.hpp"
#include "sim/units/units.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::properties {
namespace {

using reference::after;
using reference::before;
using reference::Check;
using reference::quantity;
using reference::Row;

constexpr double litre_per_minute = 1.0 / 60000.0;
constexpr double mains_pa = 0.3e6;

LiquidWater water(double celsius) {
    return liquid_water(celsius + 273.15, mains_pa);
}

/// Heat [J] that warms a cubic metre, measured cold.
double heat_per_m3(double cold, double hot) {
    return water(cold).density_kg_per_m3 *
           (water(hot).enthalpy_j_per_kg - water(cold).enthalpy_j_per_kg);
}

double heat_to_water(const Row& row) {
    return before(row, " L/min") * litre_per_minute *
           heat_per_m3(before(row, " ->"), after(row, "-> ")) / 1e3;
}

double supported_flow(const Row& row) {
    return after(row, "useful ") * 1e3 / heat_per_m3(before(row, " ->"), after(row, "-> ")) /
           litre_per_minute;
}

double kilowatts(const Row& row) {
    const units::Parsed power = units::parse(units::Dimension::power, row.conditions);
    if (!power.good()) throw std::runtime_error(power.found);
    return power.si / 1e3;
}

GasProperties gas_of(const Row& row) {
    return gas_properties(*test_gas(row.quantity.starts_with("propane") ? "G31" : "G20"));
}

double gas_flow(const Row& row) {
    return before(row, " MJ/h") * 1e6 / gas_of(row).gross_j_per_m3;
}

double delivered_flow(const Row& row) {
    const double inlet = after(row, "inlet ");
    const double rise = reference::number_after(row.quantity, "at ");
    return after(row, "gross input ") * 1e6 / 3600.0 * after(row, "efficiency ") /
           heat_per_m3(inlet, inlet + rise) / litre_per_minute;
}

double hot_share(const Row& row) {
    const double hot = water(after(row, "hot ")).enthalpy_j_per_kg;
    const double cold = water(after(row, "cold ")).enthalpy_j_per_kg;
    return (water(after(row, "mixed ")).enthalpy_j_per_kg - cold) / (hot - cold);
}

double meter_rate(const Row& row) {
    return before(row, " m3 in") / after(row, "m3 in ") * 3600.0 * before(row, " MJ/m3");
}

double corrected_meter_rate(const Row& row) {
    const double pressure = before(row, " kPa,") * 1e3;
    const double factor = (pressure + after(row, "at ") * 1e3) / pressure *
                          (before(row, " degC 101") + 273.15) / (after(row, "and ") + 273.15);
    return meter_rate(row) * factor;
}

double waiting_time(const Row& row) {
    return transport_delay_s(after(row, "bore ") * 1e-3, before(row, " m,"),
                             before(row, " L/min") * litre_per_minute);
}

double stagnant_rate(const Row& row) {
    return before(row, " kW") * 1e3 / (after(row, "into ") * after(row, "cp ") * 1e3);
}

double methane_moles(const Row& row) {
    return before(row, " MJ") * 1e6 / gas_component(GasComponent::methane).gross_j_per_mol;
}

TEST(EverydayReference, MatchesEveryPublishedRow) {
    const std::vector<Check> checks{
        {"liquid_water.enthalpy", quantity("heat to water"), heat_to_water},
        {"liquid_water.enthalpy", quantity("flow that a heat rate supports"), supported_flow},
        {"units::parse", quantity("MJ/h to kW"), kilowatts},
        {"gas_properties.gross", quantity("natural gas volume flow"), gas_flow},
        {"gas_properties.gross", quantity("propane volume flow"), gas_flow},
        {"liquid_water.enthalpy", quantity("delivered flow"), delivered_flow},
        {"liquid_water.enthalpy", quantity("hot share in a mixing valve"), hot_share},
        {"gas rating", [](const Row& row) { return row.quantity == "gas rate from meter"; },
         meter_rate},
        {"gas rating", quantity("gas rate from meter with"), corrected_meter_rate},
        {"transport_delay_s", quantity("hot water waiting time"), waiting_time},
        {"lumped balance", quantity("temperature rise rate of a stagnant"), stagnant_rate},
        {"complete_combustion.water", quantity("water condensed"),
         [](const Row& row) {
             const Products p = complete_combustion(atoms(Species::methane), 1.0);
             return methane_moles(row) * p.water * molar_mass_kg_per_mol(Species::water);
         }},
        {"complete_combustion.carbon_dioxide", quantity("mass of CO2"),
         [](const Row& row) {
             const Products p = complete_combustion(atoms(Species::methane), 1.0);
             return methane_moles(row) * p.carbon_dioxide *
                    molar_mass_kg_per_mol(Species::carbon_dioxide);
         }},
    };
    reference::check_file("13_everyday_checks", checks, {});
}

}  // namespace
}  // namespace emberpath::properties
