// Proves injector and pipe flows of gas against published capacity tables and the formulas' own examples.

#include <gtest/gtest.h>

#include "sim/properties/fuel_gas.hpp"
#include "sim/properties/gas_flow.hpp"
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
using reference::Skip;

constexpr double cubic_feet_per_hour = 0.3048 * 0.3048 * 0.3048 / 3600.0;
constexpr double inch_m = 0.0254;
constexpr double inch_of_water_pa = 249.08891;
constexpr double air_kg_per_m3 = 1.2255;  // 15 degC, 101.325 kPa

/// Tables of drilled injectors: bore, pressure, relative density, orifice factor.
double drilled_injector(const Row& row) {
    const double area =
        injector_area_m2(before(row, " in,") * inch_m, after(row, "orifice factor "));
    const double density = after(row, "Sg ") * air_kg_per_m3;
    return injector_flow_m3_per_s(area, before(row, " inH2O") * inch_of_water_pa, density) /
           cubic_feet_per_hour;
}

/// The short table gives the drill's number; its bore and factor stand in the longer one.
double utility_injector(const Row& row) {
    if (!mentions(row, "drill 76")) throw std::runtime_error("bore of this drill not known");
    const double area = injector_area_m2(0.0200 * inch_m, 0.90);
    return injector_flow_m3_per_s(area, before(row, " inH2O") * inch_of_water_pa,
                                  after(row, "Sg ") * air_kg_per_m3) /
           cubic_feet_per_hour;
}

double injector_input(const Row& row) {
    const std::string name = row.quantity.substr(row.quantity.rfind(' ') + 1);
    const GasProperties gas = gas_properties(*test_gas(name));
    const double area = injector_area_m2(after(row, "bore ") * 1e-3, after(row, "Cd "));
    return gas.gross_j_per_m3 *
           injector_flow_m3_per_s(area, after(row, "pressure "), gas.density_kg_per_m3) / 1e3;
}

double input_ratio(const Row& row) {
    const double area = 1e-6, density = 0.68;
    return injector_flow_m3_per_s(area, after(row, "-> "), density) /
           injector_flow_m3_per_s(area, before(row, " ->"), density);
}

GasPipe code_pipe(const Row& row) {
    return {before(row, " in (") * inch_m, before(row, " ft (") * 0.3048, after(row, "Sg ")};
}

double code_formula(const Row& row) {
    const GasPipe pipe = code_pipe(row);
    return code_natural_gas_flow_m3_per_s(pipe.bore_m, pipe.length_m,
                                          after(row, "drop ") * inch_of_water_pa) /
           cubic_feet_per_hour;
}

double darcy_capacity(const Row& row) {
    const GasPipe pipe = code_pipe(row);
    const double roughness = reference::number_after(row.tolerance, "roughness ") * 1e-3;
    const Fluid gas{pipe.relative_density * air_kg_per_m3, 10.9e-6};
    return darcy_flow_m3_per_s(gas, {pipe.bore_m, pipe.length_m, roughness},
                               after(row, "drop ") * inch_of_water_pa) /
           cubic_feet_per_hour;
}

GasPipe metric_pipe(const Row& row) {
    return {after(row, "d ") * 1e-3, after(row, "L "), after(row, "relative density ")};
}

double spitzglass(const Row& row) {
    const GasPipe pipe{after(row, "ID ") * inch_m, before(row, " ft of") * 0.3048, 0.6};
    return spitzglass_flow_m3_per_s(pipe, after(row, "drop ") * inch_of_water_pa) /
           cubic_feet_per_hour;
}

double copper_drop(const Row& row) {
    const Fluid gas{after(row, "density "), after(row, "viscosity ") * 1e-6};
    const Pipe pipe{after(row, "bore ") * 1e-3, before(row, " m, density"),
                    after(row, "roughness ") * 1e-3};
    return darcy_pressure_drop_pa(gas, pipe, before(row, " m3/h") / 3600.0);
}

TEST(GasFlowReference, MatchesEveryPublishedRow) {
    const std::vector<Check> checks{
        {"injector_flow_m3_per_s", quantity("injector flow, natural gas"), drilled_injector},
        {"injector_flow_m3_per_s", quantity("injector flow, propane"), drilled_injector},
        {"injector_flow_m3_per_s", quantity("injector flow, utility gas"), utility_injector},
        {"injector_flow_m3_per_s", quantity("injector heat input"), injector_input},
        {"injector_flow_m3_per_s", quantity("heat input ratio"), input_ratio},
        // These rows state a tolerance for the code's own formula and one for Darcy: both are checked.
        {"code_natural_gas_flow_m3_per_s", quantity("low-pressure natural gas pipe"), code_formula},
        {"darcy_flow_m3_per_s", quantity("low-pressure natural gas pipe"), darcy_capacity, 1},
        {"pole_flow_m3_per_s", quantity("Pole formula flow"),
         [](const Row& row) {
             return pole_flow_m3_per_s(metric_pipe(row), after(row, "drop ") * 100.0) * 3600.0;
         }},
        {"spitzglass_flow_m3_per_s", quantity("Spitzglass capacity"), spitzglass},
        {"darcy_pressure_drop_pa", quantity("Darcy pressure drop"), copper_drop},
    };
    const std::vector<Skip> skips{
        {rows("G058 G059 G060"), "a formula, not a value; its worked rows are checked"},
    };
    reference::check_file("04_gas_flow", checks, skips);
}

}  // namespace
}  // namespace emberpath::properties
