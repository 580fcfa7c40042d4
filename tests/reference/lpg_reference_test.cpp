// Proves the saturation data of propane and the butanes, and what follows from them for a cylinder.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "sim/plant/cylinder.hpp"
#include "sim/properties/fuel_gas.hpp"
#include "sim/properties/lpg.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::properties {
namespace {

using reference::after;
using reference::before;
using reference::Check;
using reference::quantity;
using reference::Row;
using reference::rows;

Liquefied fluid_of(const Row& row) {
    if (row.quantity.find("n-butane") != std::string::npos) return Liquefied::n_butane;
    if (row.quantity.find("isobutane") != std::string::npos) return Liquefied::isobutane;
    return Liquefied::propane;
}

SaturatedLpg saturated(const Row& row) {
    return saturated_lpg(fluid_of(row), after(row, "t=") + 273.15);
}

double saturation_kpa(const Row& row) {
    return saturated(row).pressure_pa / 1e3;
}

GasProperties propane() {
    return gas_properties(pure_gas(GasComponent::propane));
}

double mass_flow_kg_per_s(double mj_per_h) {
    return mj_per_h * 1e6 / 3600.0 / propane().gross_j_per_kg;
}

double evaporation_heat_w(double mj_per_h, double temperature_k) {
    return mass_flow_kg_per_s(mj_per_h) *
           saturated_lpg(Liquefied::propane, temperature_k).latent_heat_j_per_kg;
}

double cooling_rate(const Row& row) {
    const double heat = evaporation_heat_w(before(row, " MJ/h"), after(row, "at ") + 273.15);
    return heat / (after(row, "propane ") * after(row, "cp ") * 1e3) * 3600.0;
}

bool butane_below_its_fluid(const Row& row) {
    return !row.quantity.starts_with("propane/");
}

std::vector<Check> saturation_checks() {
    const auto of = [](std::string property) {
        return [property](const Row& row) {
            return row.quantity.find(property) != std::string::npos && butane_below_its_fluid(row);
        };
    };
    return {
        {"saturated_lpg.pressure", of(" saturation pressure"), saturation_kpa},
        {"propane_saturation_pressure_pa", quantity("propane saturation pressure"),
         [](const Row& row) {
             return propane_saturation_pressure_pa(after(row, "t=") + 273.15) / 1e3;
         }},
        {"saturated_lpg.latent_heat", of(" latent heat"),
         [](const Row& row) { return saturated(row).latent_heat_j_per_kg / 1e3; }},
        {"saturated_lpg.liquid", of(" saturated liquid density"),
         [](const Row& row) { return saturated(row).liquid_kg_per_m3; }},
        {"saturated_lpg.vapour", of(" saturated vapour density"),
         [](const Row& row) { return saturated(row).vapour_kg_per_m3; }},
        {"boiling_temperature_k", quantity("normal boiling point"),
         [](const Row& row) {
             return boiling_temperature_k(fluid_of(row), before(row, " kPa") * 1e3) - 273.15;
         }},
        {"saturated_lpg.pressure", quantity("vapour pressure of propane"),
         [](const Row& row) {
             return saturated_lpg(Liquefied::propane, before(row, " degC") + 273.15).pressure_pa /
                    1e3;
         }},
        {"propane_butane_pressure_pa", quantity("propane/n-butane mixture"),
         [](const Row& row) {
             return propane_butane_pressure_pa(after(row, "propane "), after(row, "t=") + 273.15) /
                    1e3;
         }},
    };
}

std::vector<Check> cylinder_checks() {
    return {
        {"gas_properties.gross_by_mass", quantity("energy in a full"),
         [](const Row& row) {
             return reference::number_after(row.quantity, "full ") * propane().gross_j_per_kg / 1e6;
         }},
        {"gas_properties.gross_by_mass", quantity("propane mass flow"),
         [](const Row& row) { return mass_flow_kg_per_s(before(row, " MJ/h")) * 3600.0; }},
        {"saturated_lpg.latent_heat", quantity("evaporation heat demand"),
         [](const Row& row) {
             return evaporation_heat_w(before(row, " MJ/h"), after(row, "liquid at ") + 273.15);
         }},
        {"saturated_lpg.latent_heat", quantity("initial liquid cooling rate"), cooling_rate},
        {"liquid_propane_heat_capacity_j_per_kg_k", quantity("specific heat of liquid propane"),
         [](const Row&) { return liquid_propane_heat_capacity_j_per_kg_k / 1e3; }},
        {"saturated_lpg.liquid", quantity("liquid to gas volume ratio"),
         [](const Row& row) {
             return saturated_lpg(Liquefied::propane, before(row, " degC sat") + 273.15)
                        .liquid_kg_per_m3 /
                    propane().density_kg_per_m3;
         }},
        {"gas_properties.density", quantity("gas volume from 1 kg"),
         [](const Row&) { return 1.0 / propane().density_kg_per_m3; }},
    };
}

/// What a half-full cylinder boils off for good [kg/h]: the heat that comes through its wall while the liquid
/// stays at 0 degC, so that no frost grows on it and insulates it.
double lasting_boil_off_kg_per_h(const Row& row) {
    const plant::PlantParameters house = plant::propane_parameters();
    plant::Surroundings at;
    at.cylinder_ambient_k = after(row, "ambient ") + 273.15;
    const double latent = saturated_lpg(Liquefied::propane, 273.15).latent_heat_j_per_kg;
    return plant::cylinder_heat_w(house, 273.15, 0.5 * house.cylinder_full_kg, at) / latent *
           3600.0;
}

TEST(LpgReference, MatchesEveryPublishedRow) {
    std::vector<Check> checks = saturation_checks();
    for (Check& check : cylinder_checks()) checks.push_back(std::move(check));
    checks.push_back(
        {"cylinder_heat_w", quantity("natural vaporisation"), lasting_boil_off_kg_per_h});
    reference::check_file("05_lpg", checks, {});
}

/// Largest relative distance of a short form from the equation of state over its range.
double worst_distance(double (*form)(const double&), double from_k, double to_k) {
    double worst = 0.0;
    for (double t = from_k; t <= to_k; t += 0.5) {
        const double exact = saturated_lpg(Liquefied::propane, t).pressure_pa;
        worst = std::max(worst, std::abs(form(t) / exact - 1.0));
    }
    return worst;
}

TEST(LpgReference, ShortFormFollowsTheEquationOfStateOverItsRange) {
    EXPECT_LT(worst_distance(&propane_saturation_pressure_pa<double>, 230.0, 325.0), 0.0027);
}

/// Which is why the plant uses the short form; no published row rests on them.
TEST(LpgReference, PublicAntoineConstantsReadUpToThreePercentHigh) {
    EXPECT_NEAR(worst_distance(&propane_antoine_pressure_pa<double>, 231.0, 320.0), 0.030, 0.002);
    EXPECT_GT(propane_antoine_pressure_pa(288.15),
              1.01 * saturated_lpg(Liquefied::propane, 288.15).pressure_pa);
}

}  // namespace
}  // namespace emberpath::properties
