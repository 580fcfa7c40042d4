#pragma once
/// Fuel gases from their composition: calorific value, density, Wobbe index, air demand.
/// Volumes are of real dry gas at 15 degC and 101.325 kPa, heat of combustion at 15 degC.
/// Checked   tests/reference/fuel_gas_reference_test.cpp

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

#include "sim/properties/ideal_gas.hpp"

namespace emberpath::properties {

enum class GasComponent {
    methane,
    ethane,
    propane,
    n_butane,
    isobutane,
    n_pentane,
    nitrogen,
    carbon_dioxide,
    hydrogen
};
inline constexpr std::size_t gas_component_count = 9;

// Constants of the method [iso6976], at 15 degC.
inline constexpr double iso6976_gas_constant = 8.3144621;  // J/(mol K)
inline constexpr double iso6976_air_kg_per_mol = 28.96546e-3;
inline constexpr double iso6976_air_compression_factor = 0.999595;
inline constexpr double iso6976_water_j_per_mol = 44431.0;  // heat of vaporisation

/// Constants of a pure component [iso6976]: molar mass, summation factor and gross molar calorific value
/// at 15 degC.
struct GasComponentData {
    std::string_view formula;
    double molar_mass_kg_per_mol;
    double summation_factor;  // sqrt(b); negative for hydrogen
    double gross_j_per_mol;
    Atoms atoms;
};
[[nodiscard]] const GasComponentData& gas_component(GasComponent component);

/// Amounts of each component. Mole fractions unless a function says otherwise; they need not add up to
/// one, every function divides by their sum.
struct GasComposition {
    std::array<double, gas_component_count> amount{};
    [[nodiscard]] double operator[](GasComponent c) const {
        return amount[static_cast<std::size_t>(c)];
    }
    [[nodiscard]] double& operator[](GasComponent c) { return amount[static_cast<std::size_t>(c)]; }
};

[[nodiscard]] GasComposition pure_gas(GasComponent component);

/// Mole fractions from fractions by real-gas volume (as EN 437 states its test gases).
/// Equation  x_i proportional to v_i / Z_i     Source [iso6976] clause 5 applied to pure components
[[nodiscard]] GasComposition from_volume_fractions(const GasComposition& by_volume);

/// What follows from a composition.
///
/// Equation  Z = 1 - (sum x_i s_i)^2;  V = Z R T / p per mole;  H = sum x_i H_i / V;
///           net = gross less 44.431 kJ per mole of water;  Wobbe = H / sqrt(relative density)
/// Source    [iso6976] eqs. (1) to (16), 15/15 degC tables
/// Range     natural gases and LPG vapours; methane to butane and pentane, N2, CO2, H2
/// Errors    none: at least one amount must be positive
struct GasProperties {
    double molar_mass_kg_per_mol;
    double compression_factor;
    double density_kg_per_m3;
    double relative_density;  // dry air = 1
    double gross_j_per_m3, net_j_per_m3;
    double gross_j_per_kg, net_j_per_kg;
    double gross_wobbe_j_per_m3, net_wobbe_j_per_m3;
    Atoms atoms;  // per mole of gas
};
[[nodiscard]] GasProperties gas_properties(const GasComposition& mole_fractions);

/// Composition of a test gas by its name in [en437] ("G20", "G25", "G30", "G31", ...), in mole fractions;
/// empty for names not known.
[[nodiscard]] std::optional<GasComposition> test_gas(std::string_view name);

/// Shares of fuel in air between which a flame can spread, by volume, near 20 degC.
/// Source    [nfpa497]; [iec60079-20-1] differs by up to half a percent of volume
struct Flammability {
    double lower_share, upper_share;
    double autoignition_k;  // 0 where the source gives none
};
[[nodiscard]] std::optional<Flammability> flammability(Species species);

}  // namespace emberpath::properties
