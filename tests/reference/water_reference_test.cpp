// Proves that the properties of water agree with the international formulations they are taken from.

#include <gtest/gtest.h>

#include "sim/properties/water.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::properties {
namespace {

using reference::after;
using reference::Check;
using reference::mentions;
using reference::quantity;
using reference::Row;

/// Rows state kelvin as "T=" or degrees Celsius as "t=".
double temperature_k(const Row& row) {
    return mentions(row, "T=") ? after(row, "T=") : after(row, "t=") + 273.15;
}

double pressure_pa(const Row& row) {
    return after(row, "p=") * (mentions(row, "MPa") ? 1e6 : 1e5);
}

LiquidWater state(const Row& row) {
    return liquid_water(temperature_k(row), pressure_pa(row));
}

double density(const Row& row) {
    return state(row).density_kg_per_m3;
}

TEST(WaterReference, MatchesEveryPublishedRow) {
    const std::vector<Check> checks{
        {"liquid_water.density", quantity("IF97 region 1 specific volume"),
         [](const Row& row) { return 1.0 / density(row); }},
        {"liquid_water.enthalpy", quantity("IF97 region 1 specific enthalpy"),
         [](const Row& row) { return state(row).enthalpy_j_per_kg / 1e3; }},
        {"liquid_water.entropy", quantity("IF97 region 1 specific entropy"),
         [](const Row& row) { return state(row).entropy_j_per_kg_k / 1e3; }},
        {"liquid_water.heat_capacity", quantity("IF97 region 1 isobaric heat capacity"),
         [](const Row& row) { return state(row).heat_capacity_j_per_kg_k / 1e3; }},
        {"liquid_water.speed_of_sound", quantity("IF97 region 1 speed of sound"),
         [](const Row& row) { return state(row).speed_of_sound_m_per_s; }},
        {"liquid_water.density", quantity("liquid water density"), density},
        {"liquid_water.heat_capacity", quantity("liquid water cp"),
         [](const Row& row) { return state(row).heat_capacity_j_per_kg_k / 1e3; }},
        {"liquid_water.enthalpy", quantity("liquid water specific enthalpy"),
         [](const Row& row) { return state(row).enthalpy_j_per_kg / 1e3; }},
        {"water_viscosity_pa_s", quantity("liquid water dynamic viscosity"),
         [](const Row& row) {
             return 1e6 * water_viscosity_pa_s(temperature_k(row), density(row));
         }},
        {"water_conductivity_w_per_m_k", quantity("liquid water thermal conductivity"),
         [](const Row& row) {
             return water_conductivity_w_per_m_k(temperature_k(row), density(row));
         }},
        {"water_saturation_pressure_pa", quantity("IF97 saturation pressure"),
         [](const Row& row) { return water_saturation_pressure_pa(temperature_k(row)) / 1e6; }},
        {"water_saturation_temperature_k", quantity("IF97 saturation temperature"),
         [](const Row& row) { return water_saturation_temperature_k(pressure_pa(row)); }},
        {"water_saturation_temperature_k", quantity("water saturation temperature"),
         [](const Row& row) { return water_saturation_temperature_k(pressure_pa(row)) - 273.15; }},
        {"water_latent_heat_j_per_kg", quantity("latent heat of vaporisation of water"),
         [](const Row& row) { return water_latent_heat_j_per_kg(temperature_k(row)) / 1e3; }},
        {"water_saturation_pressure_pa", quantity("water vapour saturation pressure"),
         [](const Row& row) { return water_saturation_pressure_pa(temperature_k(row)) / 1e3; }},
    };
    reference::check_file("01_water", checks, {});
}

}  // namespace
}  // namespace emberpath::properties
