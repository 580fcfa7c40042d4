#pragma once
/// The burner control: sequence, temperature loop, protections. It sees signals only.
/// Branch-free, so that one source runs one heater or a pack of them.

#include <cstddef>
#include <string_view>

#include "sim/signals/signals.hpp"

namespace emberpath::controller {

/// Phases of the burner sequence; the numbers are what ControllerState::phase holds.
enum class Phase { standby, pre_purge, light_up, prove, run, post_purge, lockout };

/// What the controller can notice. Silent dangers are not here: it cannot see them.
enum class Event {
    none,
    fan_speed_not_reached,
    flame_seen_before_gas,
    no_flame_at_light_up,
    flame_lost,
    inlet_sensor_out_of_range,
    outlet_sensor_out_of_range,
    exchanger_sensor_out_of_range,
    overheat_limiter_open,
    outlet_too_hot,
    air_path_restricted,
};
inline constexpr std::size_t event_count = 11;

/// How the installation's controller is set. One value for all lanes.
struct Settings {
    double minimum_set_k = 310.15;
    double maximum_set_k = 333.15;
    double full_heat_input_w = 41.5e3;  // gross, at full manifold pressure
    double full_manifold_pa = 950.0;
    double fan_full_rev_per_s = 80.0;
};

/// What a person does at the front panel during one tick.
struct Panel {
    double set_point_k = 323.15;
    double switched_on = 1.0;
    double reset_pressed = 0.0;  // 1 for the tick in which reset is pressed
    double powered = 1.0;  // mains present; without it everything is off and forgotten but lockout
};

/// Discrete values are held as small whole numbers so that lanes can differ.
template <class Real>
struct ControllerState;

}  // namespace emberpath::controller

#include "sim/controller/controller_state.hpp"

namespace emberpath::controller {

/// One tick: signals and panel in, commands out.
template <class Real>
[[nodiscard]] signals::ActuatorCommands<Real> control(ControllerState<Real>& state,
                                                      const signals::SensorSignals<Real>& sensors,
                                                      const Panel& panel, const Settings& settings);

/// What the service readout can show: the controller's own beliefs, in SI. One lane.
struct Readout {
    Phase phase;
    Event event;              // latest event still standing (lockout cause, or none)
    Event latest_event;       // latest event since power-up, standing or not
    double failed_light_ups;  // since the last good run
    double flow_m3_per_s, inlet_k, outlet_k, exchanger_k, ambient_k;  // as decoded from the sensors
    double fan_rev_per_s, fan_target_rev_per_s, fan_current_a;
    double ionisation_a;
    double manifold_command_pa;
    double heat_demand_w;      // gross firing rate asked for
    double banks_open;         // 0 to 3
    double loop_correction_k;  // the integral: what feed-forward alone gets wrong
    double air_trim;           // fan trim, 1.0 to 1.2
    double water_valve, bypass;
    double set_point_k;
    double powered = 1.0;  // 1 while the board is alive; without it the display is dark
};
template <class Real>
[[nodiscard]] Readout readout(const ControllerState<Real>& state, std::size_t lane);

/// The four-character word on the heater's display (docs/display.md); four blanks without power.
[[nodiscard]] std::string_view display_word(const Readout& readout, const Panel& panel);
/// All words the display can show, in a fixed order; display_word returns one of these.
inline constexpr std::size_t display_word_count = 17;
[[nodiscard]] std::string_view display_word_at(std::size_t index);
[[nodiscard]] std::size_t display_index(std::string_view word);

/// Plain words for an event, as the service readout shows them.
[[nodiscard]] std::string_view event_name(Event event);
[[nodiscard]] std::string_view phase_name(Phase phase);

}  // namespace emberpath::controller
