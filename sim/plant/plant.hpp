#pragma once
/// The physics of one heater (Real = double) or of a pack of heaters (Real = Pack<8>): quasi-steady
/// networks in closed form, flame logic once a tick, states stepped by RK4 in two 50 ms substeps.
/// No branches on values, no libm: same bits for every compiler and pack width.

#include <array>
#include <cstddef>
#include <cstdint>

#include "sim/plant/electrics.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"
#include "sim/plant/surroundings.hpp"
#include "sim/signals/signals.hpp"

namespace emberpath::plant {

/// Discrete per tick: which banks burn, and how long the spark has been on.
template <class Real>
struct Flame {
    std::array<Real, bank_count> lit{Real(0.0), Real(0.0), Real(0.0)};  // 0 or 1
    Real spark_s{0.0};                                                  // spark time so far
    Real rough_light_up_m3{0.0};  // unburnt gas in the chamber at the latest ignition
    Real co_m3_per_s{0.0};        // carbon monoxide the flames make, held over the tick
    Real limiter_tripped{0.0};    // overheat limiter: opens hot, closes again when cool
};
inline constexpr double limiter_opens_k = 368.15;
inline constexpr double limiter_closes_k = 338.15;

template <class Real>
struct Plant {
    Parameters<Real> parameters{};
    State<Real> state{};
    Flame<Real> flame{};
    signals::ActuatorCommands<Real> commands{};  // as held over the last tick
    Electrics<Real> electrics{};
};

/// All that instruments and senses can meet, computed on demand at the present state.
struct Observables {
    double gas_inlet_pa, regulator_outlet_pa, manifold_pa;  // gauge
    double gas_m3_per_s, heat_input_w;                      // gross
    double hot_water_m3_per_s, heat_to_water_w;             // through the heater
    double inlet_water_k, exchanger_outlet_k, outlet_water_k, tap_water_k;
    double hottest_metal_k, casing_k, flue_k;
    double air_m3_per_s, excess_air_ratio;  // overall; 0 when nothing burns
    double o2_share, co2_share, co_share;   // dry flue gas [-]
    double fan_rev_per_s, fan_current_a;    // true speed
    double flame_lit;                       // share of bank area burning
    double spark, spark_heard;              // command, and whether it sparks
    double ionisation_a;
    double inlet_ohm, outlet_ohm, exchanger_ohm, ambient_ohm;  // at unplugged leads
    double limiter_closed;
    double air_tube_pa;                          // gauge, at the sensor of the air tube
    double companion_share, companion_outlet_k;  // of a second heater on the same pipe
    double unburnt_gas_m3, rough_light_up_m3;
    double cylinder_kg, cylinder_liquid_k, vapour_pressure_pa;  // absolute vapour pressure
    double reserve_kg, reserve_liquid_k;
    double reserve_in_use;                 // changeover indicator: share of the draw, 0 to 1
    double cylinder_pa, reserve_pa;        // gauge, each before the changeover
    double before_regulator_pa;            // gauge: mains, first stage or vapour
    double before_gas_isolator_pa;         // end of the gas pipe, before the heater's valve
    double cold_water_pa, water_inlet_pa;  // at the house; at the heater behind its cold valve
    double strainer_drop_pa;               // across the inlet screen
    double relief_weep_m3_per_s, casing_leak_m3_per_s, casing_water_kg;
    double room_o2_share, room_co2_share, room_co_share;  // around the heater (or its terminal)
    double intake_o2_share;                               // of the air the burner gets
    double spilled_share, room_depression_pa;             // of the products, into the room
    double casing_co_share, casing_co2_share;             // inside the case
    double cross_flow_m3_per_s;                           // cold let into the hot pipe by a mixer
    std::array<double, tap_count> tap_m3_per_s,
        tap_k;  // of listed outlets, as they run; 0 when shut
    // The energy balance: heat input and trace heating are what the other four add up to.
    double flue_loss_w, casing_loss_w, storage_w, trace_heating_w;
    ElectricalReadings electrical;
    Latches electrical_latches;
    Drives electrical_drives;
    double valve_asked;  // 1 while the board drives the main valve, whether it moves or not
};

/// A cold heater at rest in these surroundings, with its parameters' cylinder_start_kg of liquid.
template <class Real>
void settle_cold(Plant<Real>& plant, const Surroundings& at);

/// A full cylinder at air temperature, in every lane.
template <class Real>
void change_cylinder(Plant<Real>& plant, const Surroundings& at);

/// The same with the reserve cylinder.
template <class Real>
void change_reserve(Plant<Real>& plant, const Surroundings& at);

/// Water mopped out of the casing, in every lane; what still leaks goes on wetting it.
template <class Real>
void dry_casing(Plant<Real>& plant) {
    plant.state[casing_water] = Real(0.0);
}

/// Sensor signals at the present state.
template <class Real>
[[nodiscard]] signals::SensorSignals<Real> sense(const Plant<Real>& plant, const Surroundings& at);

/// Brings the electrical side up to date with switches, parameters, drying and heat. Before every tick; it
/// costs nothing while nothing has changed.
template <class Real>
void update_electrics(Plant<Real>& plant, const Surroundings& at);

/// The wiring of a heater at this moment, for measuring between any two terminals.
[[nodiscard]] Wiring wiring_of(const PlantParameters& parameters, const Observables& seen,
                               const Surroundings& at);

/// One tick: flame logic, then the states over tick_s with commands and flame held.
template <class Real>
void advance(Plant<Real>& plant, const Surroundings& at,
             const signals::ActuatorCommands<Real>& commands);

/// d(state)/dt, for order tests and for other solvers (benchmarks).
template <class Real>
[[nodiscard]] State<Real> derivative(const Plant<Real>& plant, const State<Real>& state,
                                     const Surroundings& at);

/// One lane as a heater of its own.
template <class Real>
[[nodiscard]] Plant<double> one_lane(const Plant<Real>& plant, std::size_t lane);

/// Instrument quantities.
[[nodiscard]] Observables observe_one(const Plant<double>& plant, const Surroundings& at);
/// Instrument quantities of one lane.
template <class Real>
[[nodiscard]] Observables observe(const Plant<Real>& plant, std::size_t lane,
                                  const Surroundings& at);

/// Give one lane its own parameters.
template <class Real>
void set_parameters(Plant<Real>& plant, std::size_t lane, const PlantParameters& parameters);

/// FNV-1a over the state, flame and commands of one lane.
template <class Real>
[[nodiscard]] std::uint64_t state_hash(const Plant<Real>& plant, std::size_t lane);

}  // namespace emberpath::plant
