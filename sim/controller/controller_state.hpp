#pragma once
/// What the controller remembers from tick to tick. Discrete values are small whole numbers in Reals,
/// so that the lanes of a pack can be in different phases.

namespace emberpath::controller {

/// What one tick reads and changes: the sequence, the loop, the decoded sensors.
template <class Real>
struct WorkingState {
    // Sequence.
    Real phase{0.0};             // a Phase
    Real phase_s{0.0};           // time in it
    Real event{0.0};             // the Event that locked out; none otherwise
    Real latest_event{0.0};      // latest Event since power-up, standing or not
    Real failed_light_ups{0.0};  // since the last good run
    Real run_s{0.0};             // time in the present run
    Real plain_resets{0.0};      // of combustion lockouts, since the last good run
    Real probation{0.0};         // 1 from a deliberate restart until a good run: no retries
    Real restart_owed{
        0.0};  // 1 from a lockout that no reset clears until a restart has been proved
    // How long each protection's condition has lasted [s].
    Real flame_missing_s{0.0};
    Real flame_early_s{0.0};
    Real fan_short_s{0.0};
    Real too_hot_s{0.0};
    Real air_short_s{0.0};
    // Temperature loop.
    Real loop_correction_k{0.0};
    Real banks_open{1.0};
    Real bank_hold_s{0.0};
    Real heat_demand_w{0.0};  // gross, after all limits
    Real manifold_command_pa{0.0};
    Real water_valve{1.0};
    Real bypass{0.0};
    Real companion_called{0.0};  // 0 or 1
    // Air.
    Real air_trim{1.0};
    Real fan_target_rev_per_s{0.0};
    Real fan_correction{0.0};  // integral part of the duty
    // As decoded from the sensors at the latest tick, SI.
    Real flow_m3_per_s{0.0};
    Real inlet_k{288.15}, outlet_k{288.15}, exchanger_k{288.15}, ambient_k{288.15};
    Real fan_rev_per_s{0.0}, fan_current_a{0.0}, ionisation_a{0.0}, air_tube_pa{0.0};
    Real water_valve_position{1.0};
    Real set_point_k{323.15};
    Real powered{1.0};  // 0: the board is without supply
    // What the household wants, and the link cable it says it through.
    Real household_on{1.0};
    Real set_by{0.0};  // 0 the heater's panel, n wall controller n
    Real link_unit_v{0.0};
    std::array<Real, most_wall_controllers> link_wall_v{Real(0.0), Real(0.0), Real(0.0)};
    std::array<Real, most_wall_controllers> heard{Real(0.0), Real(0.0), Real(0.0)};
    // Driven in this tick, for the readout.
    Real fan_duty{0.0}, valve_driven{0.0}, trace_heating{0.0};
};

/// Events with their times and counts, newest first. Kept without power.
template <class Real>
struct EventHistory {
    std::array<Real, history_lines> event{};  // an Event
    std::array<Real, history_lines> count{};  // how often in a row
    std::array<Real, history_lines> at_s{};   // on the controller's own clock
    Real clock_s{0.0};                        // runs while the mains is on
    Real power_ups{0.0};                      // how often the mains came back
    Real was_powered{1.0};
};

template <class Real>
struct ControllerState : WorkingState<Real> {
    EventHistory<Real> history{};
};

}  // namespace emberpath::controller
