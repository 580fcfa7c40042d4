// The plant for one heater and for packs in baseline instructions.
#include "sim/plant/plant.hpp"

#include <algorithm>

#include "sim/math/functions.hpp"
#include "sim/plant/instantiate.hpp"
#include "sim/properties/fuel_gas.hpp"

EMBERPATH_INSTANTIATE_PLANT(double)
using BaselinePack = emberpath::math::Pack<8, emberpath::math::Baseline>;
EMBERPATH_INSTANTIATE_PLANT(BaselinePack)

namespace emberpath::plant {

namespace {

std::array<double, bank_count> shared_out(double all_m2) {
    return {0.25 * all_m2, 0.30 * all_m2, 0.45 * all_m2};
}

/// Moles of oxygen for one mole of a gas, over those of another gas.
double oxygen_demand(const properties::GasProperties& gas) {
    return gas.atoms.carbon + 0.25 * gas.atoms.hydrogen - 0.5 * gas.atoms.oxygen;
}

}  // namespace

std::array<double, bank_count> natural_gas_injectors() {
    return shared_out(2.078e-5);
}

std::array<double, bank_count> propane_injectors() {
    return shared_out(9.45e-6);
}

PlantParameters with_flue(PlantParameters parameters, FlueKind kind) {
    if (kind == FlueKind::room_sealed) parameters.wind_exposure = 0.15;
    if (kind == FlueKind::open_flued) {
        parameters.open_flued = 1.0;
        parameters.intake_from_room = 1.0;
        parameters.wind_exposure = 0.0;  // the diverter parts the fan from the terminal
    }
    return parameters;
}

PlantParameters with_altitude(PlantParameters p, double altitude_m) {
    if (altitude_m <= 0.0) return p;
    const double cold = 1.0 - 2.25577e-5 * std::min(altitude_m, 3000.0);
    const double share = math::power(cold, 4.25588);
    p.air_density_share = share;
    p.ambient_pa *= math::power(cold, 5.25588);
    p.fan_head *= share;
    p.air_tube_gain /= share;
    for (double* resistance :
         {&p.fan_internal_resistance, &p.air_cold_resistance, &p.air_exchanger_resistance,
          &p.flue_resistance, &p.intake_resistance, &p.open_flue_resistance, &p.gas_pipe_resistance,
          &p.gas_valve_resistance})
        *resistance /= share;
    return p;
}

PlantParameters with_air_tube(PlantParameters p) {
    constexpr double full_m3_per_s = 80.0 * nominal_air_per_rev_m3;
    p.air_tube_gain =
        signals::air_tube_full_pa / (full_m3_per_s * full_m3_per_s) / p.air_density_share;
    return p;
}

PlantParameters with_companion(PlantParameters p, double full_heat_input_w) {
    p.companion_fitted = 1.0;
    p.companion_full_w = full_heat_input_w * math::square_root(p.air_density_share);
    p.gas_capacity_m3_per_s *= 2.0;
    p.regulator_droop *= 0.5;
    p.gas_pipe_resistance *= 0.25;
    return p;
}

PlantParameters with_propane_in_gas(PlantParameters natural, double propane_share) {
    using properties::GasComponent;
    const auto mixture = [](double share) {
        properties::GasComposition by_volume;
        by_volume[GasComponent::methane] = 1.0 - share;
        by_volume[GasComponent::propane] = share;
        return properties::gas_properties(properties::from_volume_fractions(by_volume));
    };
    const properties::GasProperties pure = mixture(0.0);
    const properties::GasProperties mixed = mixture(propane_share);
    const double moles = pure.compression_factor / mixed.compression_factor;  // in the same volume
    natural.gross_j_per_m3 *= mixed.gross_j_per_m3 / pure.gross_j_per_m3;
    natural.net_to_gross *=
        (mixed.net_j_per_m3 / mixed.gross_j_per_m3) / (pure.net_j_per_m3 / pure.gross_j_per_m3);
    natural.gas_kg_per_m3 *= mixed.density_kg_per_m3 / pure.density_kg_per_m3;
    const auto dry_share = [&natural] {
        return natural.carbon_per_mole /
               (natural.carbon_per_mole + 0.79 * natural.stoichiometric_air);
    };
    const double co2_before = dry_share();
    natural.stoichiometric_air *= moles * (oxygen_demand(mixed) / oxygen_demand(pure));
    natural.carbon_per_mole *= moles * (mixed.atoms.carbon / pure.atoms.carbon);
    natural.co2_max *= dry_share() / co2_before;
    return natural;
}

PlantParameters natural_gas_parameters() {
    return PlantParameters{};
}

PlantParameters propane_parameters() {
    PlantParameters p;
    p.gross_j_per_m3 = 95.65e6;
    p.net_to_gross = 0.920;
    p.gas_kg_per_m3 = 1.899;
    p.stoichiometric_air = 23.82;
    p.carbon_per_mole = 3.0;
    p.co2_max = 0.137;
    p.gas_no_load_pa = 3000.0;
    p.gas_lock_up_pa = 3400.0;
    p.regulator_droop = 2.5e5;
    p.gas_pipe_resistance = 6.0e8;
    p.gas_valve_resistance = 1.3e9;
    p.gas_capacity_m3_per_s = 7.0e-4;
    p.injector_m2 = propane_injectors();
    p.full_manifold_pa = 2000.0;
    p.cylinder_fed = 1.0;
    return p;
}

PlantParameters with_cylinder_pair(PlantParameters propane) {
    propane.reserve_fitted = 1.0;
    propane.cylinder_start_kg = propane.cylinder_full_kg;
    propane.reserve_start_kg = propane.cylinder_full_kg;
    propane.first_stage_pa = 70.0e3;
    propane.gas_capacity_m3_per_s = 1.8e-3;
    return propane;
}

}  // namespace emberpath::plant
