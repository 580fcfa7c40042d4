#pragma once
/// The burner control: sequence, temperature loop, protections. It sees signals only.
/// Branch-free, so that one source runs one heater or a pack of them.

#include <array>
#include <cstddef>
#include <string_view>

#include "sim/controller/settings.hpp"
#include "sim/signals/signals.hpp"

namespace emberpath::controller {

/// Phases of the burner sequence; the numbers are what ControllerState::phase holds.
enum class Phase { standby, pre_purge, light_up, prove, run, post_purge, lockout, restart };
inline constexpr std::size_t phase_count = 8;

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

/// A wall temperature controller as people have fitted and left it.
struct WallController {
    double fitted = 0.0;
    double shows_service = 0.0;  // 1: of the kind that shows the service readout too
    double set_point_k = 318.15;
    double switched_on = 1.0;
};

/// What a person does at the heater's panel and at the wall controllers during one tick.
struct Panel {
    double set_point_k = 323.15;
    double switched_on = 1.0;
    double reset_pressed = 0.0;  // 1 for the tick in which reset is pressed
    double powered = 1.0;        // mains present; without it everything is off
    double restart_asked = 0.0;  // 1 for the tick in which a deliberate restart is confirmed
    std::array<WallController, most_wall_controllers> wall{};
};

inline constexpr std::size_t history_lines = 12;

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
                                                      const Panel& panel,
                                                      const SettingsOf<Real>& settings);

/// One line of the event history.
struct HistoryLine {
    Event event = Event::none;
    double count = 0.0;  // how often in a row
    double age_s = 0.0;  // since the latest of them, as far as the mains was on
};

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
    double feed_forward_w;     // what flow and rise alone call for, gross
    double proportional_k;     // what the present error adds
    double air_trim;           // fan trim, 1.0 to 1.2
    double water_valve, bypass;
    double set_point_k;
    double powered = 1.0;       // 1 while the board is alive; without it the display is dark
    double household_on = 1.0;  // 0: switched off at the panel or by every wall controller
    double set_by = 0.0;        // 0 the heater's panel, n wall controller n
    double water_valve_position = 1.0;  // fed back by its motor
    double fan_duty = 0.0;              // drive of the fan, 0 to 1
    double valve_driven = 0.0;          // 1 while the main gas valve's coil has its voltage
    double trace_heating = 0.0;
    double restart_needed = 0.0;  // 1: a lockout that reset no longer clears
    double power_ups = 0.0;       // how often the mains came back
    double link_unit_v = 0.0;     // link cable, at the heater's terminals
    std::array<double, most_wall_controllers> link_wall_v{};  // at each wall controller
    std::array<double, most_wall_controllers> heard{};        // 1: alive and listened to
    std::array<HistoryLine, history_lines> history{};         // newest first; kept without power
};
template <class Real>
[[nodiscard]] Readout readout(const ControllerState<Real>& state, std::size_t lane);

/// The four-character word on the heater's display (docs/display.md); four blanks without power.
[[nodiscard]] std::string_view display_word(const Readout& readout, const Panel& panel);
/// All words the display can show, in a fixed order; display_word returns one of these.
inline constexpr std::size_t display_word_count = 18;
[[nodiscard]] std::string_view display_word_at(std::size_t index);
[[nodiscard]] std::size_t display_index(std::string_view word);

/// Plain words for an event, as the service readout shows them.
[[nodiscard]] std::string_view event_name(Event event);
[[nodiscard]] std::string_view phase_name(Phase phase);

}  // namespace emberpath::controller
