#pragma once
/// Everything about one installation that does not change by itself: heater, gas, flue, water, cylinder.
/// Defaults are the healthy natural-gas house. A cause (sim/faults) is a map from these to changed ones.
/// SI throughout; temperatures in kelvin. The comment on a line gives meaning and, where it is not a
/// free choice, the source of the number. docs/physics explains the equations that use them.

#include <array>
#include <cstddef>

#include "sim/plant/electrical_parameters.hpp"

namespace emberpath::plant {

inline constexpr std::size_t bank_count = 3;

/// Real is double for one heater or Pack<8> for eight at once: same members, same order.
template <class Real>
struct Parameters {
    // Water network: pressure drop = resistance * flow^2 [Pa s2/m6]; a conductance is flow per square
    // root of pressure [m3/s per sqrt(Pa)], 1 L/min per sqrt(kPa) = 5.270463e-7 of them.
    Real water_inlet_resistance{0.07 * 3.6e12};   // isolating valve, strainer, flow sensor
    Real water_outlet_resistance{0.05 * 3.6e12};  // outlet connection and delivery pipe
    Real water_supply_resistance{0.10 * 3.6e12};  // street to heater, shared with cold draws
    Real exchanger_conductance{3.16 * 5.270463e-7};
    Real water_valve_gain{4.08 * 5.270463e-7};
    Real bypass_gain{2.2 * 5.270463e-7};
    Real water_valve_stuck{0.0};  // 1: held at water_valve_position
    Real water_valve_position{1.0};
    Real bypass_stuck{0.0};
    Real bypass_position{0.0};

    // Heat exchanger.
    Real scale_k_per_w{0.0};       // scale resistance, whole exchanger
    Real gas_side_ua_factor{1.0};  // 1 clean, less when sooted
    Real soot{0.0};                // 0 clean to 1; CO correlation only

    // Gas and its supply. Volume flows at 15 degC and 101.325 kPa.
    Real gross_j_per_m3{37.78e6};
    Real net_to_gross{0.9007};
    Real gas_kg_per_m3{0.680};
    Real stoichiometric_air{9.52};      // m3 air per m3 gas
    Real carbon_per_mole{1.0};          // carbon atoms per molecule
    Real co2_max{0.117};                // dry volume share at zero excess air
    Real gas_no_load_pa{2050.0};        // regulator outlet extrapolated to no flow
    Real gas_lock_up_pa{2350.0};        // static pressure with no flow
    Real regulator_droop{1.0e5};        // Pa s/m3
    Real gas_pipe_resistance{1.0e8};    // Pa s2/m6, regulator outlet to heater inlet
    Real gas_valve_resistance{2.07e8};  // Pa s2/m6, wide open proportional valve
    Real gas_upstream_pa{7500.0};       // mains; replaced by vapour pressure for cylinders
    Real gas_capacity_m3_per_s{2.8e-3};
    std::array<Real, bank_count> injector_m2{
        Real(0.25 * 2.078e-5), Real(0.30 * 2.078e-5),
        Real(0.45 * 2.078e-5)};  // discharge coefficient x area
    Real full_manifold_pa{950.0};
    Real gas_valve_stuck{0.0};  // 1: held at gas_valve_held_pa
    Real gas_valve_held_pa{0.0};

    // Cylinder (cylinder_fed = 1): vapour pressure drives the supply.
    Real cylinder_fed{0.0};
    Real cylinder_full_kg{45.0};
    Real cylinder_start_kg{30.0};  // liquid when the simulated history begins
    Real cylinder_steel_j_per_k{12000.0};
    Real cylinder_empty{0.0};  // 1: no vapour whatever the state says

    // Fan, air path, flue (docs/physics/plant.md), in Pa, m3/s and rev/s.
    Real fan_head{1.128e-5 * 3600.0};      // Pa s2 (a N^2 with N in rev/s)
    Real fan_internal_resistance{4.46e5};  // Pa s2/m6
    Real air_cold_resistance{2.6e5};
    Real air_exchanger_resistance{1.85e5};
    Real flue_resistance{1.75e5};
    Real fan_drive{1.0};        // share of motor voltage that becomes speed
    Real fan_bearing_a{0.0};    // extra current from friction
    Real tachometer_gain{1.0};  // shown speed / true speed
    Real gust_amplitude{0.0};   // x the common gust shape (surroundings)

    // Ignition and flame sensing.
    Real igniter_works{1.0};
    Real ionisation_gain{1.0};

    ElectricalParameters<Real> electrical{};  // from the street to the last lead

    // Sensors, in the ohm domain: R' = 1 / (1 / (R gain + series) + parallel).
    struct Thermistor {
        Real gain{1.0};
        Real series_ohm{0.0};
        Real parallel_s{0.0};
    };
    Thermistor inlet_sensor{}, outlet_sensor{}, exchanger_sensor{}, ambient_sensor{};
    Real flow_sensor_gain{1.0};
    Real limiter_bad{0.0};  // 1: reads open whatever its temperature
};

using PlantParameters = Parameters<double>;

/// The invented heater on natural gas, and on propane from cylinders (docs/physics/plant.md).
[[nodiscard]] PlantParameters natural_gas_parameters();
[[nodiscard]] PlantParameters propane_parameters();

/// Every member as one flat list of doubles, in declaration order: lanes, hashes and tests use it.
inline constexpr std::size_t parameter_count = sizeof(PlantParameters) / sizeof(double);

template <class Real>
[[nodiscard]] Real* flat(Parameters<Real>& p) {
    static_assert(sizeof(Parameters<Real>) == parameter_count * sizeof(Real));
    return reinterpret_cast<Real*>(&p);
}
template <class Real>
[[nodiscard]] const Real* flat(const Parameters<Real>& p) {
    static_assert(sizeof(Parameters<Real>) == parameter_count * sizeof(Real));
    return reinterpret_cast<const Real*>(&p);
}

}  // namespace emberpath::plant
