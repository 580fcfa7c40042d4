#include "sim/properties/fuel_gas.hpp"

#include <algorithm>

#include "sim/math/functions.hpp"
#include "sim/properties/air.hpp"

namespace emberpath::properties {

namespace {

// clang-format off
/// [iso6976] tables 1 to 3, in the order of GasComponent.
constexpr std::array<GasComponentData, gas_component_count> components{{
    {"CH4",     16.04246e-3, 0.04452,  891510.0, {1, 4, 0, 0}},
    {"C2H6",    30.06904e-3, 0.0919,  1562140.0, {2, 6, 0, 0}},
    {"C3H8",    44.09562e-3, 0.1344,  2221100.0, {3, 8, 0, 0}},
    {"n-C4H10", 58.1222e-3,  0.1840,  2879760.0, {4, 10, 0, 0}},
    {"i-C4H10", 58.1222e-3,  0.1722,  2870580.0, {4, 10, 0, 0}},
    {"n-C5H12", 72.1488e-3,  0.2361,  3538600.0, {5, 12, 0, 0}},
    {"N2",      28.0134e-3,  0.0170,        0.0, {0, 0, 0, 2}},
    {"CO2",     44.0095e-3,  0.0752,        0.0, {1, 0, 2, 0}},
    {"H2",       2.0159e-3, -0.0100,   286150.0, {0, 2, 0, 0}},
}};

/// [en437] tables 2 and 3: volume fractions.
struct TestGas { std::string_view name; std::array<double, gas_component_count> by_volume; };
//                     CH4    C2H6  C3H8   nC4  iC4  nC5  N2     CO2  H2
constexpr std::array test_gases{
    TestGas{"G20",  {{1.000, 0.0, 0.000, 0.0, 0.0, 0.0, 0.000, 0.0, 0.000}}},
    TestGas{"G21",  {{0.870, 0.0, 0.130, 0.0, 0.0, 0.0, 0.000, 0.0, 0.000}}},
    TestGas{"G222", {{0.770, 0.0, 0.000, 0.0, 0.0, 0.0, 0.000, 0.0, 0.230}}},
    TestGas{"G23",  {{0.925, 0.0, 0.000, 0.0, 0.0, 0.0, 0.075, 0.0, 0.000}}},
    TestGas{"G231", {{0.850, 0.0, 0.000, 0.0, 0.0, 0.0, 0.150, 0.0, 0.000}}},
    TestGas{"G24",  {{0.680, 0.0, 0.120, 0.0, 0.0, 0.0, 0.000, 0.0, 0.200}}},
    TestGas{"G25",  {{0.860, 0.0, 0.000, 0.0, 0.0, 0.0, 0.140, 0.0, 0.000}}},
    TestGas{"G26",  {{0.800, 0.0, 0.070, 0.0, 0.0, 0.0, 0.130, 0.0, 0.000}}},
    TestGas{"G27",  {{0.820, 0.0, 0.000, 0.0, 0.0, 0.0, 0.180, 0.0, 0.000}}},
    TestGas{"G30",  {{0.000, 0.0, 0.000, 0.5, 0.5, 0.0, 0.000, 0.0, 0.000}}},
    TestGas{"G31",  {{0.000, 0.0, 1.000, 0.0, 0.0, 0.0, 0.000, 0.0, 0.000}}},
};

struct FlammabilityRow { Species species; Flammability limits; };
constexpr std::array flammability_table{
    FlammabilityRow{Species::methane,         {0.050, 0.150, 873.15}},
    FlammabilityRow{Species::ethane,          {0.030, 0.125, 745.15}},
    FlammabilityRow{Species::propane,         {0.021, 0.095, 723.15}},
    FlammabilityRow{Species::n_butane,        {0.019, 0.085, 561.15}},
    FlammabilityRow{Species::carbon_monoxide, {0.125, 0.740, 882.15}},
    FlammabilityRow{Species::hydrogen,        {0.040, 0.750, 773.15}},
};
// clang-format on

double compression_factor(double summation) {
    return 1.0 - summation * summation;
}

}  // namespace

const GasComponentData& gas_component(GasComponent component) {
    return components[static_cast<std::size_t>(component)];
}

GasComposition pure_gas(GasComponent component) {
    GasComposition composition;
    composition[component] = 1.0;
    return composition;
}

GasComposition from_volume_fractions(const GasComposition& by_volume) {
    GasComposition moles;
    for (std::size_t i = 0; i < gas_component_count; ++i)
        moles.amount[i] = by_volume.amount[i] / compression_factor(components[i].summation_factor);
    return moles;
}

GasProperties gas_properties(const GasComposition& mole_fractions) {
    double total = 0.0;
    for (const double amount : mole_fractions.amount) total += amount;
    double summation = 0.0, gross_j_per_mol = 0.0;
    GasProperties out{};
    for (std::size_t i = 0; i < gas_component_count; ++i) {
        const double x = mole_fractions.amount[i] / total;
        const GasComponentData& data = components[i];
        out.molar_mass_kg_per_mol += x * data.molar_mass_kg_per_mol;
        summation += x * data.summation_factor;
        gross_j_per_mol += x * data.gross_j_per_mol;
        out.atoms.carbon += x * data.atoms.carbon;
        out.atoms.hydrogen += x * data.atoms.hydrogen;
        out.atoms.oxygen += x * data.atoms.oxygen;
        out.atoms.nitrogen += x * data.atoms.nitrogen;
    }
    const double net_j_per_mol =
        gross_j_per_mol - 0.5 * out.atoms.hydrogen * iso6976_water_j_per_mol;
    out.compression_factor = compression_factor(summation);
    const double ideal_m3_per_mol =
        iso6976_gas_constant * standard_temperature_k / standard_pressure_pa;
    const double m3_per_mol = out.compression_factor * ideal_m3_per_mol;
    out.density_kg_per_m3 = out.molar_mass_kg_per_mol / m3_per_mol;
    out.relative_density = out.density_kg_per_m3 * iso6976_air_compression_factor *
                           ideal_m3_per_mol / iso6976_air_kg_per_mol;
    out.gross_j_per_m3 = gross_j_per_mol / m3_per_mol;
    out.net_j_per_m3 = net_j_per_mol / m3_per_mol;
    out.gross_j_per_kg = gross_j_per_mol / out.molar_mass_kg_per_mol;
    out.net_j_per_kg = net_j_per_mol / out.molar_mass_kg_per_mol;
    const double root = math::square_root(out.relative_density);
    out.gross_wobbe_j_per_m3 = out.gross_j_per_m3 / root;
    out.net_wobbe_j_per_m3 = out.net_j_per_m3 / root;
    return out;
}

std::optional<GasComposition> test_gas(std::string_view name) {
    const auto at = std::find_if(test_gases.begin(), test_gases.end(),
                                 [&](const TestGas& gas) { return gas.name == name; });
    if (at == test_gases.end()) return std::nullopt;
    return from_volume_fractions(GasComposition{at->by_volume});
}

std::optional<Flammability> flammability(Species species) {
    const auto at =
        std::find_if(flammability_table.begin(), flammability_table.end(),
                     [&](const FlammabilityRow& row) { return row.species == species; });
    if (at == flammability_table.end()) return std::nullopt;
    return at->limits;
}

}  // namespace emberpath::properties
