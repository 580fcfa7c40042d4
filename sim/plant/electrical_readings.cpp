#include "sim/plant/electrical_readings.hpp"

#include <algorithm>
#include <cmath>

#include "sim/signals/signals.hpp"

namespace emberpath::plant {
namespace {

using T = Terminal;

void take_live(const NetworkSolution& s, ElectricalReadings& r) {
    r.terminal_v = std::abs(s.ac_between(T::heater_active, T::heater_neutral));
    r.active_earth_v = std::abs(s.ac_between(T::heater_active, T::heater_earth));
    r.neutral_earth_v = std::abs(s.ac_between(T::heater_neutral, T::heater_earth));
    r.worst_terminal_v = std::max(std::abs(s.ac_between(T::heater_active, T::true_earth)),
                                  std::abs(s.ac_between(T::heater_neutral, T::true_earth)));
    r.casing_v = std::abs(s.ac_between(T::casing, T::true_earth));
    r.pipe_v = std::abs(s.ac_between(T::water_pipe, T::true_earth));
    r.rail_v = s.dc_between(T::low_voltage_rail, T::low_voltage_common);
    r.valve_drive_v = s.dc_between(T::valve_output, T::low_voltage_common);
    r.link_unit_v = s.dc_between(T::link_heater_end, T::low_voltage_common);
    r.link_wall_v = {s.dc_between(T::link_wall_end, T::link_wall_return),
                     s.dc_between(T::link_wall_2_end, T::link_wall_2_return),
                     s.dc_between(T::link_wall_3_end, T::link_wall_3_return)};
    r.leakage_a = std::abs(s.ac_a[static_cast<std::size_t>(Conductor::lead_active_and_neutral)]);
}

void take_isolated(const Wiring& wiring, ElectricalReadings& r) {
    const auto& p = wiring.parameters;
    r.earth_ohm = ohms_between(wiring, T::casing, T::earth_bar);
    Wiring apart = wiring;
    apart.situation.plugged = 0.0;
    r.insulation_ohm = ohms_between(apart, T::heater_active, T::casing);
    r.valve_coil_ohm = p.valve_coil_ohm;
    r.valve_lead_ohm = 1.0 / (p.valve_lead_short_s + 1.0e-9);
    r.igniter_lead_ohm = ohms_between(apart, T::igniter_lead, T::casing);
    r.flame_lead_ohm = p.flame_lead_ohm;
}

}  // namespace

ElectricalReadings take_readings(Wiring& wiring) {
    wiring.drives = {1.0, 1.0, 0.0};
    const Settled settled = settle_protection(wiring);
    wiring.latches = settled.latches;
    ElectricalReadings r;
    take_live(settled.solution, r);
    r.valve_a = std::abs(settled.solution.dc_between(T::valve_lead, T::low_voltage_common)) /
                wiring.parameters.valve_coil_ohm;
    // A tester's ramp adds to what leaks already.
    r.safety_switch_a = std::max(0.0, wiring.parameters.safety_switch_trips_a - r.leakage_a);
    r.spark_arrives = spark_at_burner(wiring);
    take_isolated(wiring, r);
    return r;
}

double flame_signal_share(const ElectricalReadings& readings) {
    constexpr double unheeded_v = 2.0, half_v = 10.0, lead_half_ohm = 1.0e6;
    const double hum = std::max(0.0, readings.neutral_earth_v - unheeded_v) / half_v;
    const double squared = hum * hum;
    const double lead = std::max(0.0, readings.flame_lead_ohm - 100.0) / lead_half_ohm;
    return 1.0 / ((1.0 + squared * squared) * (1.0 + lead));
}

double spark_at_burner(const Wiring& wiring) {
    constexpr double jumps_from = 0.5;
    const double readiness = wiring.parameters.igniter_lead_crack * (0.5 + wiring.situation.damp);
    return readiness > jumps_from ? 0.0 : 1.0;
}

double valve_pulls_in(const Wiring& wiring, const ElectricalReadings& readings) {
    constexpr double pull_in_share = 0.6, rated_a = 24.0 / 96.0;
    const bool pulls = readings.valve_a > pull_in_share * rated_a;
    return pulls && wiring.latches.fuse_blown < 0.5 ? 1.0 : 0.0;
}

double dried(double wetness, double casing_above_air_k, double damp) {
    constexpr double cold_per_s = 1.0 / (8.0 * 3600.0);
    constexpr double warm_per_s = 1.0 / 2400.0;
    const double warmth = std::clamp(casing_above_air_k / 30.0, 0.0, 2.0);
    const double drying = damp > 0.9 ? 0.0 : cold_per_s + warm_per_s * warmth;
    const double wetting = damp > 0.9 ? (1.0 - wetness) * warm_per_s : 0.0;
    return wetness + signals::tick_s * (wetting - drying * wetness);
}

}  // namespace emberpath::plant
