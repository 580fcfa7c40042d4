// The plant for one heater and for packs in baseline instructions.
#include "sim/plant/plant.hpp"

#include "sim/plant/instantiate.hpp"

EMBERPATH_INSTANTIATE_PLANT(double)
using BaselinePack = emberpath::math::Pack<8, emberpath::math::Baseline>;
EMBERPATH_INSTANTIATE_PLANT(BaselinePack)

namespace emberpath::plant {

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
    constexpr double injectors_m2 = 9.45e-6;
    p.injector_m2 = {0.25 * injectors_m2, 0.30 * injectors_m2, 0.45 * injectors_m2};
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
