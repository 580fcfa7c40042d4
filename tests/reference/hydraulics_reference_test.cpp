// Proves pressure drops, valves, surges and delays against exact roots, textbook examples and definitions.

#include <gtest/gtest.h>

#include "sim/properties/hydraulics.hpp"
#include "sim/properties/water.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::properties {
namespace {

using reference::after;
using reference::before;
using reference::Check;
using reference::from;
using reference::number_after;
using reference::quantity;
using reference::Row;
using reference::rows;
using reference::Skip;

constexpr double litre_per_minute = 1.0 / 60000.0;

double reynolds(const Row& row) {
    return after(row, "Re=");
}
double roughness(const Row& row) {
    return after(row, "roughness=");
}

double laminar_drop_pa(const Row& row) {
    const double bore = after(row, "D ") * 1e-3;
    return darcy_pressure_drop_pa({after(row, "rho "), after(row, "mu ")},
                                  {bore, after(row, "L "), 0.0},
                                  after(row, "V ") * bore_area_m2(bore));
}

double steel_drop_pa(const Row& row) {
    return darcy_pressure_drop_pa(
        {after(row, "rho "), after(row, "mu ")},
        {after(row, "D ") * 1e-3, after(row, "L "), after(row, "roughness ") * 1e-3},
        before(row, " L/s") * 1e-3);
}

/// The duct of Cengel & Cimbala examples 8-4 and 8-5.
double duct_drop_m(const Row& row, double bore_m, double length_m, double flow_m3_per_s) {
    const double density = 1.0;  // head of the flowing fluid: its density cancels
    return darcy_pressure_drop_pa({density, after(row, "nu ") * density}, {bore_m, length_m, 0.0},
                                  flow_m3_per_s) /
           (density * standard_gravity_m_per_s2);
}

double duct_bore(const Row& row) {
    return swamee_jain_bore_m({after(row, "air "), after(row, "L "), after(row, "head loss "), 0.0},
                              after(row, "nu "));
}

double flow_drop(const Row& row) {
    const double length = number_after(row.conditions, "; L ");
    double low = 0.0, high = 1.0;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (duct_drop_m(row, after(row, "D "), length, middle) < after(row, "head loss ") ? low
                                                                                       : high) =
            middle;
    }
    return after(row, "compared with ") - low;
}

double expansion_loss_m(const Row& row) {
    return minor_loss_pa(after(row, "K_L "), 1.0, after(row, "V1 ")) / standard_gravity_m_per_s2;
}

double reservoir_m(const Row& row) {
    const double bore = after(row, "D ") * 1e-3;
    const double velocity = before(row, " L/s") * 1e-3 / bore_area_m2(bore);
    const double k = after(row, "(f ") * after(row, "L ") / (bore) + after(row, "entrance ") +
                     2.0 * after(row, "elbows ") + after(row, "gate valve ") + after(row, "exit ");
    return after(row, "static head ") + minor_loss_pa(k, 1.0, velocity) / standard_gravity_m_per_s2;
}

double metered_flow(const Row& row) {
    constexpr double mercury_kg_per_m3 = 13600.0;
    const double bore = after(row, "d ") * 1e-3, pipe = after(row, "D ") * 1e-3;
    const double density = after(row, "rho ");
    const double drop =
        (mercury_kg_per_m3 - density) * standard_gravity_m_per_s2 * after(row, "manometer ");
    return orifice_flow_m3_per_s({bore, after(row, "Cd "), bore / pipe}, density, drop);
}

double required_kv(const Row& row) {
    const double density = after(row, "rho ");
    const double drop = (after(row, "P1 ") - after(row, "P2 ")) * 1e3;
    return before(row, " m3/h") / 3600.0 / valve_flow_m3_per_s(1.0, drop, density);
}

double fitting(const Row& row) {
    for (const FittingLoss& loss : fitting_losses()) {
        // "minor loss coefficient K, exit (turbulent, alpha 1.06)" names the fitting after the comma.
        if (row.quantity.find(std::string("K, ") + std::string(loss.fitting)) != std::string::npos)
            return loss.k;
    }
    throw std::runtime_error("no such fitting");
}

double copper_drop_kpa(const Row& row) {
    const double kelvin = after(row, "at ") + 273.15;
    const double density = liquid_water(kelvin, before(row, " MPa") * 1e6).density_kg_per_m3;
    return darcy_pressure_drop_pa(
               {density, water_viscosity_pa_s(kelvin, density)},
               {after(row, "bore ") * 1e-3, after(row, "length "), after(row, "roughness ") * 1e-3},
               before(row, " L/min") * litre_per_minute) /
           1e3;
}

double tap_discharge(const Row& row) {
    return orifice_flow_m3_per_s({after(row, "bore ") * 1e-3, after(row, "Cd ")},
                                 before(row, " kg/m3"), after(row, "dp ") * 1e3) /
           litre_per_minute;
}

std::vector<Check> pipe_checks() {
    return {
        {"colebrook_friction", quantity("Darcy friction factor, Colebrook"),
         [](const Row& row) { return colebrook_friction(reynolds(row), roughness(row)); }},
        {"swamee_jain_friction", quantity("Darcy friction factor, Swamee"),
         [](const Row& row) { return swamee_jain_friction(reynolds(row), roughness(row)); }},
        {"laminar_friction", quantity("Darcy friction factor, laminar"),
         [](const Row& row) { return laminar_friction(reynolds(row)); }},
        {"darcy_pressure_drop_pa", rows("Y036"),
         [](const Row& row) {
             return laminar_drop_pa(row) / (after(row, "rho ") * standard_gravity_m_per_s2);
         }},
        {"darcy_pressure_drop_pa", rows("Y037"),
         [](const Row& row) { return laminar_drop_pa(row) / 1e3; }},
        {"darcy_pressure_drop_pa", rows("Y039"),
         [](const Row& row) { return steel_drop_pa(row) / 1e3; }},
        {"darcy_pressure_drop_pa", rows("Y040"),
         [](const Row& row) {
             return steel_drop_pa(row) / (after(row, "rho ") * standard_gravity_m_per_s2);
         }},
        {"darcy_pressure_drop_pa", rows("Y041"),
         [](const Row& row) { return steel_drop_pa(row) * before(row, " L/s") * 1e-3; }},
        {"swamee_jain_bore_m", rows("Y043"), duct_bore},
        {"darcy_pressure_drop_pa", rows("Y044"), flow_drop},
        {"darcy_pressure_drop_pa", quantity("Darcy pressure drop"), copper_drop_kpa},
        {"transport_delay_s", quantity("plug-flow transport delay"),
         [](const Row& row) {
             return transport_delay_s(after(row, "bore ") * 1e-3, after(row, "length "),
                                      before(row, " L/min") * litre_per_minute);
         }},
    };
}

std::vector<Check> fitting_checks() {
    return {
        {"minor_loss_pa", rows("Y045"), expansion_loss_m},
        {"minor_loss_pa", rows("Y047"), reservoir_m},
        {"orifice_flow_m3_per_s", rows("Y048"), metered_flow},
        {"orifice_flow_m3_per_s", rows("Y049"),
         [](const Row& row) { return metered_flow(row) / bore_area_m2(after(row, "D ") * 1e-3); }},
        {"surge_pressure_pa", quantity("Joukowsky"),
         [](const Row& row) {
             return surge_pressure_pa(after(row, "water "), after(row, "speed "),
                                      after(row, "change ")) /
                    1e5;
         }},
        {"valve_flow_m3_per_s", quantity("flow coefficient Kv"),
         [](const Row&) { return 3600.0 * valve_flow_m3_per_s(1.0, 1e5); }},
        {"cv_from_kv", quantity("ratio Cv/Kv"), [](const Row&) { return cv_from_kv(1.0); }},
        {"valve_flow_m3_per_s", quantity("required Kv"), required_kv},
        {"valve_flow_m3_per_s", quantity("valve flow"),
         [](const Row& row) {
             return valve_flow_m3_per_s(after(row, "Kv="), after(row, "dp=") * 1e3) /
                    litre_per_minute;
         }},
        {"valve_pressure_drop_pa", quantity("valve pressure drop"),
         [](const Row& row) {
             return valve_pressure_drop_pa(after(row, "Kv "),
                                           before(row, " L/min") * litre_per_minute) /
                    1e3;
         }},
        {"fitting_losses", quantity("minor loss coefficient"), fitting},
        {"orifice_flow_m3_per_s", quantity("orifice/tap discharge"), tap_discharge},
    };
}

TEST(HydraulicsReference, MatchesEveryPublishedRow) {
    std::vector<Check> checks = pipe_checks();
    for (Check& check : fitting_checks()) checks.push_back(std::move(check));
    reference::check_file("07_hydraulics", checks, {});
}

}  // namespace
}  // namespace emberpath::properties
