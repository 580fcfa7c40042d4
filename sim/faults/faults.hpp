#pragma once
/// The catalogue of causes. A cause is a pure map from healthy parameters to changed ones, so clearing
/// it is exact: map the healthy parameters again without it.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sim/controller/settings.hpp"
#include "sim/faults/remedies.hpp"
#include "sim/plant/parameters.hpp"

namespace emberpath::faults {

enum class Cause {
    no_fault,
    flue_blocked,
    wind_gust,
    cylinder_low,
    gas_pipe_restriction,
    regulator_droop,
    outlet_sensor_open,
    outlet_sensor_drift,
    electrode_fouled,
    igniter_failed,
    exchanger_sooted,
    // electrical
    earth_missing,
    supply_swapped,
    neutral_broken,
    supply_sags,
    moisture_in_heater,
    valve_lead_chafed,
    valve_coil_open,
    igniter_lead_cracked,
    flame_lead_broken,
    // what wears, sticks and drifts
    injector_blocked,
    gas_valve_stuck_low,
    gas_valve_stuck_high,
    propane_in_gas,
    strainer_blocked,
    water_valve_stuck_open,
    water_valve_stuck_shut,
    bypass_stuck,
    flow_sensor_dragging,
    exchanger_scaled,
    outlet_sensor_short,
    inlet_sensor_open,
    inlet_sensor_short,
    inlet_sensor_drift,
    exchanger_sensor_open,
    exchanger_sensor_short,
    exchanger_sensor_drift,
    ambient_sensor_open,
    ambient_sensor_short,
    ambient_sensor_drift,
    fan_worn,
    tachometer_low,
    limiter_open,
    // settings
    gas_setting_wrong,
    // gas and its supply, again
    gas_isolator_part_shut,
    gas_screen_blocked,
    regulator_creeps,
    gas_union_weeps,
    wrong_injectors,
    high_fire_overset,
    boil_off_small,
    changeover_stuck,
    second_stage_passes,
    // air and flue, again
    intake_felted,
    products_drawn_back,
    chamber_seam_open,
    open_flue_blocked,
    room_too_tight,
    // ignition, again
    light_up_late,
    // water of the house
    outlet_clogged,
    flow_sensor_sticks,
    flow_sensor_wrong,
    pinhole_inside,
    night_pressure_high,
    mixer_cross_flow,
    tempering_valve_worn,
    // sensors that fail by degrees
    outlet_sensor_opens_warm,
    limiter_weak,
    // more settings, and the link cable
    priority_elsewhere,
    link_cable_corroded,
    altitude_setting_wrong,
    highest_setting_raised,
    // more of the electrical side
    second_supply,
    limiter_bridged,
    // an air tube, and a companion heater
    air_tube_water,
    companion_link_open,
};
inline constexpr std::size_t cause_count = 76;

/// What, beside its times, a fault waits for. Nothing here is random.
enum class While {
    always,
    night,  // the street draws little water
    rain,
    hot,  // the air in the case is above `hot_case_k`
};
inline constexpr double hot_case_k = 296.15;  // some minutes of firing, chosen

/// One instant of a house, as far as faults look at it. A bare time is an instant of a dry, cold day.
struct Moment {
    double time_s = 0.0;
    double night = 0.0, rain = 0.0;  // 0 or 1
    double case_k = 288.15;
    int light_ups = 0;  // since the history began
    Moment() = default;
    Moment(double at_s) : time_s(at_s) {}  // NOLINT: a time stands for itself
};

/// A cause as injected.
struct Fault {
    Cause cause = Cause::no_fault;
    double severity =
        1.0;               // 0 (none) to CauseInfo::greatest_severity; negative only where has_sign
    double onset_s = 0.0;  // site time at which it begins
    double ramp_s = 0.0;   // time from onset to full severity; 0 is a step
    double period_s = 0.0;   // intermittent: repeats with this period; 0 is steady
    double present_s = 0.0;  // intermittent: seconds of each period in which it is present
    While present_while = While::always;
    int after_light_ups = 0;  // begins once the burner has lit so often
};

/// When a household, or an analyser in a steady flue, notices something in an ordinary draw.
enum class Noticed {
    from_least_severity,  // graded: a little below the least, nobody does
    at_any_severity,      // a part held where it should move
    by_measuring_first,   // an instrument shows it before anybody notices, if anybody ever does
};

/// What a site must have for a cause to do anything there, beside the right gas.
enum class Needs {
    nothing,
    cylinder_pair,    // two behind a changeover, the first stage in it
    open_flue,        // burner air from the room, draught diverter
    listed_outlets,   // two hot outlets at least
    tempering_valve,  // before at least one outlet
    night,            // a night in its history or during the visit
    wall_controller,
    two_wall_controllers,
    high_set_value,  // the household has asked for more than a sound heater gives
    air_tube,        // the heater proves its air by the pressure in a tube
    companion,       // a second heater on the same hot pipe
};

/// What can be seen of a site by anybody: it decides which causes can act there.
struct SiteTraits {
    bool cylinder = false;
    bool cylinder_pair = false;
    bool open_flue = false;
    bool tempering_valve = false;
    bool night = false;
    bool high_set_value = false;
    bool air_tube = false;
    bool companion = false;
    std::size_t outlets = 0;
    std::size_t wall_controllers = 0;
    bool operator==(const SiteTraits&) const = default;
};

struct CauseInfo {
    Cause cause;
    std::string_view word;    // as TOML and `emberpath causes` spell it
    std::string_view title;   // as people read it
    std::string_view effect;  // one sentence: what it does to the plant
    Remedy remedy;
    double least_severity;  // symptomatic range, for shadows and for `check`
    double greatest_severity;
    bool has_sign;       // severity may be negative
    bool on_off;         // severity has no meaning beyond present / absent
    bool cylinder_only;  // needs a cylinder-fed site
    bool mains_only;     // needs a mains-gas site
    double frequency;    // trade weight for the prior, coarse (invented; see docs/scoring)
    Noticed noticed = Noticed::from_least_severity;
    Needs needs = Needs::nothing;
    bool at_start_only =
        false;  // it is how the history begins: onset, ramp and period mean nothing
    bool begins_whole =
        false;  // a part held where it should move: held it is at any severity, so none can grow from nothing
};

/// Can the cause do anything at such a site?
[[nodiscard]] bool can_act(const CauseInfo& cause, const SiteTraits& site);
/// "two gas cylinders behind a changeover": what is missing where it cannot.
[[nodiscard]] std::string_view title(Needs needs);

[[nodiscard]] std::span<const CauseInfo> catalogue();
[[nodiscard]] const CauseInfo& info(Cause cause);
/// nullptr when no cause is spelt so.
[[nodiscard]] const CauseInfo* find_cause(std::string_view word);

/// A class of causes that share a remedy, as people read it: its cause where there is one alone, else what
/// its causes have in common ("outlet sensor").
[[nodiscard]] std::string class_title(Remedy remedy);

/// Severity in force: onset, ramp, intermittency, and what it waits for.
[[nodiscard]] double severity_at(const Fault& fault, const Moment& now);

/// The changed parameters. Pure. Severity 0 gives back the healthy ones bit for bit. Of two faults that move
/// one parameter the later in the list works on what the earlier left; of different parts the order is
/// without effect.
[[nodiscard]] plant::PlantParameters with_fault(plant::PlantParameters healthy, const Fault& fault,
                                                const Moment& now);
[[nodiscard]] plant::PlantParameters with_faults(plant::PlantParameters healthy,
                                                 std::span<const Fault> faults, const Moment& now);

/// The same for what is stored in the controller and for its link cable.
[[nodiscard]] controller::Settings with_fault(controller::Settings healthy, const Fault& fault,
                                              const Moment& now);
[[nodiscard]] controller::Settings with_faults(controller::Settings healthy,
                                               std::span<const Fault> faults, const Moment& now);

/// Does the list change with time at all (ramp, onset, intermittency or something it waits for)?
[[nodiscard]] bool changes_after(std::span<const Fault> faults, double time_s);

}  // namespace emberpath::faults
