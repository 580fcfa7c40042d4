#pragma once
/// What the sensors tell the controller and what the controller tells the actuators. Nothing else passes
/// between plant and controller: what is not in these two structs the controller cannot know.

#include <array>

namespace emberpath::signals {

inline constexpr double tick_s = 0.1;  // the controller runs once a tick; records depend on it

/// Below this mains voltage the board lets go: valves shut, fan stops, controller starts afresh. Chosen.
inline constexpr double board_drops_out_v = 160.0;

/// Pressure in a sound air tube at full rate and sea level [Pa]. Chosen.
inline constexpr double air_tube_full_pa = 150.0;

/// Of the link cable, without load [V]. Chosen.
inline constexpr double link_supply_v = 24.0;

/// Sensor side. Electrical faults act here (an open thermistor is an ohm value, not a flag).
template <class Real>
struct SensorSignals {
    Real flow_m3_per_s{0.0};  // from the turbine's pulse period
    Real inlet_ohm{0.0};      // thermistors
    Real outlet_ohm{0.0};
    Real exchanger_ohm{0.0};
    Real ambient_ohm{0.0};
    Real fan_rev_per_s{0.0};  // tachometer
    Real fan_current_a{0.0};
    Real air_tube_pa{0.0};  // of the air, through its tube; 0 where there is none
    Real ionisation_current_a{0.0};
    Real limiter_closed{1.0};  // 1 closed, 0 open
    Real supply_v{230.0};      // mains as the board finds it; 0 behind a blown fuse
    // The link cable, at the heater's terminals and at each wall controller.
    Real link_unit_v{link_supply_v};
    std::array<Real, 3> link_wall_v{Real(link_supply_v), Real(link_supply_v), Real(link_supply_v)};
    Real water_valve_position{1.0};  // fed back by the valve's motor, 0 shut to 1 open
};

/// Actuator side, held over the tick.
template <class Real>
struct ActuatorCommands {
    Real fan_duty{0.0};                                                  // [-] 0 to 1
    Real spark{0.0};                                                     // 0 or 1
    Real main_solenoid{0.0};                                             // 0 or 1
    std::array<Real, 3> bank_solenoid{Real(0.0), Real(0.0), Real(0.0)};  // 0 or 1
    Real manifold_pressure_pa{0.0};  // target of the proportional valve
    Real water_valve{1.0};           // [-] 0 shut, 1 open
    Real bypass{0.0};                // [-] 0 shut, 1 open
    Real trace_heating{0.0};         // 0 or 1: frost protection of the water way
    Real companion_call{0.0};        // 0 or 1: asks a companion heater to take its share
    Real companion_set_k{323.15};    // what that one is to heat to, sent with the call
};

}  // namespace emberpath::signals
