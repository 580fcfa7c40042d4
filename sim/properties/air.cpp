#include "sim/properties/air.hpp"

#include "sim/math/functions.hpp"
#include "sim/properties/water.hpp"

namespace emberpath::properties {

Mixture dry_air() {
    Mixture air;
    air[Species::nitrogen] = 0.780848;
    air[Species::oxygen] = 0.209390;
    air[Species::argon] = 0.009332;
    air[Species::carbon_dioxide] = 0.000430;
    return air;
}

double dry_air_density_kg_per_m3(double temperature_k, double pressure_pa) {
    return pressure_pa * mass_kg(dry_air()) / (molar_gas_constant * temperature_k);
}

double dry_air_heat_capacity_j_per_kg_k(double temperature_k) {
    const Mixture air = dry_air();
    return heat_capacity_j_per_k(air, temperature_k) / mass_kg(air);
}

double air_viscosity_pa_s(double temperature_k) {
    return 1.458e-6 * temperature_k * math::square_root(temperature_k) / (temperature_k + 110.4);
}

double air_conductivity_w_per_m_k(double temperature_k) {
    return 2.64638e-3 * temperature_k * math::square_root(temperature_k) /
           (temperature_k + 245.4 * math::power(10.0, -12.0 / temperature_k));
}

double water_per_mole_of_dry_air(double temperature_k, double pressure_pa,
                                 double relative_humidity) {
    const double vapour_pa = relative_humidity * water_saturation_pressure_pa(temperature_k);
    return vapour_pa / (pressure_pa - vapour_pa);
}

double moist_air_density_kg_per_m3(double temperature_k, double pressure_pa,
                                   double relative_humidity) {
    const double water = water_per_mole_of_dry_air(temperature_k, pressure_pa, relative_humidity);
    const double mass = mass_kg(dry_air()) + water * molar_mass_kg_per_mol(Species::water);
    return pressure_pa * mass / ((1.0 + water) * molar_gas_constant * temperature_k);
}

}  // namespace emberpath::properties
