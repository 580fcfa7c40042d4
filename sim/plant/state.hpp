#pragma once
/// The states of one heater with its pipe, fan, flue and cylinders. SI; temperatures in kelvin.

#include <array>
#include <cstddef>

namespace emberpath::plant {

inline constexpr std::size_t cell_count = 8;
inline constexpr std::size_t state_count = 54;

template <class Real>
using State = std::array<Real, state_count>;

/// Index of each state; a name with _0 is the first of a run of cell_count (or bank_count).
enum StateIndex : std::size_t {
    water_0 = 0,          // exchanger water cells [K]
    metal_0 = 8,          // exchanger metal cells [K]
    mixing_pocket = 16,   // outlet mixing pocket [K]
    pipe_0 = 17,          // delivery pipe cells [K]
    fan_speed = 25,       // [rev/s]
    valve_pressure = 26,  // proportional valve, as manifold pressure target [Pa]
    water_valve = 27,     // position [-]
    bypass_valve = 28,    // position [-]
    flow_reading = 29,    // turbine [m3/s]
    inlet_bead = 30,      // thermistor beads [K]
    outlet_bead = 31,
    exchanger_bead = 32,
    ambient_bead = 33,
    ionisation = 34,         // [A]
    flue_gas = 35,           // flue body and probe [K]
    flame_0 = 36,            // flame strength of each bank [-]
    cylinder_liquid_k = 39,  // [K]
    cylinder_liquid_kg = 40,
    limiter_element = 41,  // [K]
    unburnt_gas = 42,      // in the chamber [m3]
    casing_air = 43,       // [K]
    regulator_creep = 44,  // outlet pressure above the lock-up value, while nothing flows [Pa]
    reserve_liquid_k = 45,
    reserve_liquid_kg = 46,
    water_pressure = 47,    // at the heater's inlet, behind its isolating valve [Pa]
    casing_water = 48,      // leaked into the casing [kg]
    room_oxygen_used = 49,  // volume share missing in the space around the heater [-]
    room_co2 = 50,          // added there [-]
    room_co = 51,
    companion_share = 52,   // of the hot water, through a companion heater [-]
    companion_outlet = 53,  // its outlet pipe [K]
};

}  // namespace emberpath::plant
