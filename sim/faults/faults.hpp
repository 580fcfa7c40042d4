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
};
inline constexpr std::size_t cause_count = 44;

/// A cause as injected.
struct Fault {
    Cause cause = Cause::no_fault;
    double severity =
        1.0;               // 0 (none) to CauseInfo::greatest_severity; negative only where has_sign
    double onset_s = 0.0;  // site time at which it begins
    double ramp_s = 0.0;   // time from onset to full severity; 0 is a step
    double period_s = 0.0;   // intermittent: repeats with this period; 0 is steady
    double present_s = 0.0;  // intermittent: seconds of each period in which it is present
};

/// When a household, or an analyser in a steady flue, notices something in an ordinary draw.
enum class Noticed {
    from_least_severity,  // graded: a little below the least, nobody does
    at_any_severity,      // a part held where it should move
    by_measuring_first,   // an instrument shows it before anybody notices, if anybody ever does
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
};

[[nodiscard]] std::span<const CauseInfo> catalogue();
[[nodiscard]] const CauseInfo& info(Cause cause);
/// nullptr when no cause is spelt so.
[[nodiscard]] const CauseInfo* find_cause(std::string_view word);

/// A class of causes that share a remedy, as people read it: its cause where there is one alone, else what
/// its causes have in common ("outlet sensor").
[[nodiscard]] std::string class_title(Remedy remedy);

/// Severity in force at a site time: onset, ramp, intermittency.
[[nodiscard]] double severity_at(const Fault& fault, double time_s);

/// The changed parameters. Pure. Severity 0 gives back the healthy ones bit for bit.
[[nodiscard]] plant::PlantParameters with_fault(plant::PlantParameters healthy, const Fault& fault,
                                                double time_s);
[[nodiscard]] plant::PlantParameters with_faults(plant::PlantParameters healthy,
                                                 std::span<const Fault> faults, double time_s);

/// The same for what is stored in the controller and for its link cable.
[[nodiscard]] controller::Settings with_fault(controller::Settings healthy, const Fault& fault,
                                              double time_s);
[[nodiscard]] controller::Settings with_faults(controller::Settings healthy,
                                               std::span<const Fault> faults, double time_s);

/// Does the list change with time at all (ramp, onset or intermittency still to come)?
[[nodiscard]] bool changes_after(std::span<const Fault> faults, double time_s);

}  // namespace emberpath::faults
