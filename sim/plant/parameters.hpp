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
inline constexpr std::size_t tap_count = 6;  // hot outlets of a house that can be told apart

/// Real is double for one heater or Pack<8> for eight at once: same members, same order.
template <class Real>
struct Parameters {
    // Water network: pressure drop = resistance * flow^2 [Pa s2/m6]; a conductance is flow per square
    // root of pressure [m3/s per sqrt(Pa)], 1 L/min per sqrt(kPa) = 5.270463e-7 of them.
    Real isolating_valve_resistance{0.02 * 3.6e12};  // cold valve at the heater, wide open
    Real strainer_resistance{0.02 * 3.6e12};         // screen at the heater's inlet
    Real flow_sensor_resistance{0.03 * 3.6e12};
    Real water_outlet_resistance{0.05 * 3.6e12};  // outlet connection and delivery pipe
    Real water_supply_resistance{0.10 * 3.6e12};  // street to heater, shared with cold draws
    Real exchanger_conductance{3.16 * 5.270463e-7};
    Real water_valve_gain{4.08 * 5.270463e-7};
    Real bypass_gain{2.2 * 5.270463e-7};
    Real water_valve_stuck{0.0};  // 1: held at water_valve_position
    Real water_valve_position{1.0};
    Real bypass_stuck{0.0};
    Real bypass_position{0.0};
    Real mains_rise_at_night_pa{0.0};  // street pressure above its day value
    Real mains_limit_pa{1.6e6};        // pressure limiting valve at the meter; 1.6 MPa: none
    Real relief_opens_pa{700.0e3};     // relief valve at the heater
    Real relief_gain{2.0e-12};         // its weep above that [m3/s per Pa], chosen
    Real casing_leak_gain{0.0};        // pinhole inside the casing [m3/s per sqrt(Pa)]
    Real cross_flow_gain{0.0};         // cold into hot through a mixer [m3/s per sqrt(Pa)]
    Real tempering_set_k{323.15};      // tempering valve, at the outlets that have one
    Real tempering_cold_share{0.0};    // least share of cold it lets in; 0 when sound
    std::array<Real, tap_count> tap_opening{
        // free share of each outlet (screen, shower head)
        Real(1.0), Real(1.0), Real(1.0), Real(1.0), Real(1.0), Real(1.0)};

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
    Real gas_isolator_resistance{0.0};      // heater's isolating valve, above its wide-open value
    Real regulator_creep_pa_per_s{0.0};     // rise of the outlet pressure while nothing flows
    Real regulator_creep_limit_pa{5000.0};  // where that rise ends (relief of the regulator)
    Real gas_valve_rated_inlet_pa{5000.0};  // above it the proportional valve passes too much
    Real main_valve_works{1.0};             // 0: coil open, the main valve stays shut
    std::array<Real, bank_count> bank_valve_works{Real(1.0), Real(1.0), Real(1.0)};
    std::array<Real, bank_count> injector_m2{
        Real(0.25 * 2.078e-5), Real(0.30 * 2.078e-5),
        Real(0.45 * 2.078e-5)};  // discharge coefficient x area
    Real full_manifold_pa{950.0};
    Real gas_valve_stuck{0.0};  // 1: held at gas_valve_held_pa
    Real gas_valve_held_pa{0.0};
    Real gas_valve_overset_per_pa{0.0};  // surplus it gives, as a share per Pa of what is asked
    Real gas_union_leak_m3_per_s{0.0};   // weep of the inlet union at 2 kPa

    // Cylinder (cylinder_fed = 1): vapour pressure drives the supply.
    Real cylinder_fed{0.0};
    Real cylinder_full_kg{45.0};
    Real cylinder_start_kg{30.0};  // liquid when the simulated history begins
    Real cylinder_steel_j_per_k{12000.0};
    Real cylinder_empty{0.0};          // 1: no vapour whatever the state says
    Real cylinder_wall_w_per_k{14.0};  // heat through the wetted wall of a full one, chosen
    Real first_stage_pa{0.0};          // outlet of a first-stage regulator; 0: single stage
    Real reserve_fitted{0.0};          // 1: second cylinder behind an automatic changeover
    Real reserve_start_kg{45.0};
    Real changeover_pa{150.0e3};  // the reserve takes over below this gauge pressure, chosen
    Real changeover_stuck{0.0};   // 1: stays on the first cylinder

    // Fan, air path, flue (docs/physics/plant.md), in Pa, m3/s and rev/s.
    Real fan_head{1.128e-5 * 3600.0};      // Pa s2 (a N^2 with N in rev/s)
    Real fan_internal_resistance{4.46e5};  // Pa s2/m6
    Real air_cold_resistance{2.6e5};
    Real air_exchanger_resistance{1.85e5};
    Real flue_resistance{1.75e5};
    Real intake_resistance{0.0};   // lint or leaves before the fan
    Real wind_exposure{1.0};       // share of the wind at the terminal that acts against the fan
    Real recirculated_share{0.0};  // of the intake air: products drawn straight back in
    Real seam_leak_share{0.0};     // of the flame's gas, through a chamber seam into the casing

    // The space around the heater or its terminal, and an open flue (sim/plant/room_air.hpp).
    Real intake_from_room{0.0};  // share of the burner's air taken from that space
    Real spill_into_room{
        0.0};  // share of the products that always enters it (roofed-over terminal)
    Real room_m3{30.0};
    Real room_ventilation_m3_per_s{0.5 * 30.0 / 3600.0};  // half an air change an hour
    Real room_leak_gain{0.06};  // gaps of the envelope [m3/s per sqrt(Pa)]
    Real open_flued{0.0};       // 1: draught diverter into an open flue
    Real open_flue_height_m{3.0};
    Real open_flue_resistance{1.2e4};  // Pa s2/m6
    Real fan_drive{1.0};               // share of motor voltage that becomes speed
    Real fan_bearing_a{0.0};           // extra current from friction
    Real tachometer_gain{1.0};         // shown speed / true speed
    Real gust_amplitude{0.0};          // x the common gust shape (surroundings)

    // Height of the site (with_altitude()) and the tube that tells the controller of the air.
    Real air_density_share{1.0};  // of air and gas, against sea level
    Real ambient_pa{101325.0};    // absolute
    Real air_tube_gain{0.0};  // Pa s2/m6, pressure in the tube over air flow squared; 0: no tube
    Real air_tube_water_pa{0.0};    // column standing in a sag of it
    Real companion_fitted{0.0};     // 1: a second heater on the same hot pipe, linked by a cable
    Real companion_link_ohm{3.0};   // both cores of that cable
    Real companion_full_w{41.5e3};  // gross, at the height of the site
    Real air_tube_bridged{0.0};     // 1: somebody's wire tells the controller what it wants to hear

    // Ignition and flame sensing.
    Real igniter_works{1.0};
    Real ignition_delay_s{0.0};  // spark time beyond the healthy 0.4 s (wide gap, dirty ports)
    Real ionisation_gain{1.0};

    ElectricalParameters<Real> electrical{};  // from the street to the last lead

    // Sensors, in the ohm domain: R' = 1 / (1 / (R gain + series) + parallel).
    struct Thermistor {
        Real gain{1.0};
        Real series_ohm{0.0};
        Real parallel_s{0.0};
        Real opens_above_k{1000.0};  // element breaks contact when hotter than this
    };
    Thermistor inlet_sensor{}, outlet_sensor{}, exchanger_sensor{}, ambient_sensor{};
    Real flow_sensor_gain{1.0};
    Real flow_sensor_sticks_m3_per_s{0.0};  // turbine stands still below this flow
    Real limiter_bad{0.0};                  // 1: reads open whatever its temperature
    Real limiter_opens_early_k{0.0};        // how far below its sound temperature it snaps
    Real limiter_bridged{0.0};              // 1: a wire across it, closed whatever it does
};

using PlantParameters = Parameters<double>;

/// Isolating valve (wide open), strainer and flow sensor in series [Pa s2/m6].
template <class Real>
[[nodiscard]] Real water_inlet_resistance(const Parameters<Real>& p) {
    return p.isolating_valve_resistance + p.strainer_resistance + p.flow_sensor_resistance;
}

/// The invented heater on natural gas, and on propane from cylinders (docs/physics/plant.md).
[[nodiscard]] PlantParameters natural_gas_parameters();
[[nodiscard]] PlantParameters propane_parameters();

/// The same house at a height above the sea [m], 0 to 3000. Flows stay volumes at 15 degC and 101.325 kPa, so a
/// path of thin air or gas resists them by the inverse of its density; the fan's head and the draught fall with
/// it. Sea level changes nothing, bit for bit.
///
/// Equation  rho / rho_0 = (1 - 2.25577e-5 h)^4.25588, p / p_0 = (1 - 2.25577e-5 h)^5.25588
/// Source    [usstd1976] (recalled)
/// Checked   tests/unit/plant/altitude_test.cpp
[[nodiscard]] PlantParameters with_altitude(PlantParameters parameters, double altitude_m);

/// A tube from the air path to a pressure sensor proves the air of this heater.
[[nodiscard]] PlantParameters with_air_tube(PlantParameters parameters);

/// A companion heater of such a full heat input [W gross, at sea level] on the same hot pipe, and a regulator and a
/// gas pipe sized for both, as whoever fits the second must see to: twice the capacity, and at twice the flow the
/// droop and the loss of one heater alone. After with_cylinder_pair() and with_altitude().
[[nodiscard]] PlantParameters with_companion(PlantParameters parameters, double full_heat_input_w);

/// How products leave and air arrives: outdoors at the heater; through a balanced terminal, where the wind acts
/// on both openings; or from the room into an open flue through a draught diverter.
enum class FlueKind { outdoor, room_sealed, open_flued };
[[nodiscard]] PlantParameters with_flue(PlantParameters parameters, FlueKind kind);

/// The same heater fed with natural gas that holds propane (share by volume, 0 to 1): calorific value, density
/// and air demand scale as the mixture's do by [iso6976]; 0 changes nothing, bit for bit.
[[nodiscard]] PlantParameters with_propane_in_gas(PlantParameters natural, double propane_share);

/// Injectors as drilled for one gas or the other, sound sizes [m2].
[[nodiscard]] std::array<double, bank_count> natural_gas_injectors();
[[nodiscard]] std::array<double, bank_count> propane_injectors();

/// Two full cylinders of 45 kg behind a changeover with the first-stage regulator in it (70 kPa), large enough
/// for the heater down to the changeover pressure: chosen.
[[nodiscard]] PlantParameters with_cylinder_pair(PlantParameters propane);

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
