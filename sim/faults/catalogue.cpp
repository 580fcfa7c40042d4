// The catalogue of causes. Frequencies are coarse trade weights, invented; see docs/scoring.md.
// The least severity of each was found by running the closed loop (tests/laws/cause_range_test.cpp).
#include <algorithm>
#include <array>

#include "sim/faults/faults.hpp"

namespace emberpath::faults {
namespace {

// clang-format off
constexpr std::array<CauseInfo, cause_count> causes{{
    {Cause::no_fault, "no_fault", "nothing wrong with the heater",
     "The installation is sound; the demand or the expectation is not.",
     Remedy::explain_to_customer, 0.0, 0.0, false, true, false, false, 2.0},
    {Cause::flue_blocked, "flue_blocked", "flue terminal blocked",
     "The free area of the flue shrinks: less air for the same fan speed.",
     Remedy::clear_flue_terminal, 0.69, 1.0, false, false, false, false, 2.0},
    {Cause::wind_gust, "wind_gust", "gusts at the flue terminal",
     "Gusts push against the flue flow; the flame lifts at low fire.",
     Remedy::fit_wind_guard, 0.3, 1.5, false, false, false, false, 1.0},
    {Cause::cylinder_low, "cylinder_low", "gas cylinder nearly empty",
     "Little liquid is left: boiling cools it and the vapour pressure falls during a draw.",
     Remedy::change_cylinder, 0.55, 1.0, false, false, true, false, 3.0},
    {Cause::gas_pipe_restriction, "gas_pipe_restriction", "gas pipe carries too little",
     "The pipe to the heater drops too much pressure: loss with the square of the flow.",
     Remedy::quote_larger_gas_pipe, 0.43, 1.0, false, false, false, false, 2.0},
    {Cause::regulator_droop, "regulator_droop", "gas regulator droops",
     "The regulator's outlet sinks with flow: loss in proportion to the flow.",
     Remedy::escalate_regulator, 0.57, 1.0, false, false, false, false, 1.0},
    {Cause::outlet_sensor_open, "outlet_sensor_open", "outlet sensor open circuit",
     "The outlet thermistor's circuit is broken.",
     Remedy::replace_outlet_sensor, 1.0, 1.0, false, true, false, false, 2.0},
    {Cause::outlet_sensor_drift, "outlet_sensor_drift", "outlet sensor drifted",
     "The outlet thermistor's resistance is off: high reads cold, low reads hot.",
     Remedy::replace_outlet_sensor, 0.15, 1.0, true, false, false, false, 1.5},
    {Cause::electrode_fouled, "electrode_fouled", "flame electrode fouled",
     "A coating cuts the flame current; the flame itself is sound.",
     Remedy::clean_flame_electrode, 0.88, 1.0, false, false, false, false, 3.0},
    {Cause::igniter_failed, "igniter_failed", "igniter failed",
     "No spark at light-up.",
     Remedy::replace_igniter, 1.0, 1.0, false, true, false, false, 2.0},
    {Cause::exchanger_sooted, "exchanger_sooted", "heat exchanger sooted",
     "Soot between the fins: hotter flue, more air resistance, carbon monoxide.",
     Remedy::clean_exchanger, 0.3, 1.0, false, false, false, false, 1.5},
    // electrical
    {Cause::earth_missing, "earth_missing", "no earth at the power point",
     "The earth wire of the heater's circuit is not connected: the casing floats and hum swamps the flame signal.",
     Remedy::escalate_wiring, 1.0, 1.0, false, true, false, false, 0.5},
    {Cause::supply_swapped, "supply_swapped", "active and neutral swapped at the power point",
     "The switch breaks the neutral, and the flame amplifier finds its zero at 230 V.",
     Remedy::escalate_wiring, 1.0, 1.0, false, true, false, false, 0.3},
    {Cause::neutral_broken, "neutral_broken", "supply neutral broken",
     "The current of the house returns through earth: pipes and casings rise, the supply falls.",
     Remedy::escalate_electricity_supply, 1.0, 1.0, false, true, false, false, 0.3},
    {Cause::supply_sags, "supply_sags", "electricity supply sags under load",
     "A weak line cannot carry a pump that runs on it: the board lets go whenever it does.",
     Remedy::escalate_electricity_supply, 0.6, 1.0, false, false, false, false, 0.5},
    {Cause::moisture_in_heater, "moisture_in_heater", "moisture in the heater's wiring",
     "Damp leaks current from the active to the casing until the safety switch opens; it dries in time.",
     Remedy::dry_and_reseal, 0.45, 1.0, false, false, false, false, 1.0},
    {Cause::valve_lead_chafed, "valve_lead_chafed", "gas valve lead chafed",
     "Once the casing is hot the bare lead touches metal and blows the board's fuse.",
     Remedy::replace_valve_lead, 0.43, 1.0, false, false, false, false, 0.7},
    {Cause::valve_coil_open, "valve_coil_open", "gas valve coil open circuit",
     "The main gas valve gets its voltage and does not move.",
     Remedy::replace_gas_valve, 1.0, 1.0, false, true, false, false, 1.0},
    {Cause::igniter_lead_cracked, "igniter_lead_cracked", "igniter lead cracked",
     "In damp air the spark jumps from the lead to the frame instead of crossing at the burner.",
     Remedy::replace_igniter_lead, 0.52, 1.0, false, false, false, false, 1.0},
    {Cause::flame_lead_broken, "flame_lead_broken", "flame lead broken",
     "The lead of the flame probe is interrupted: a flame burns and is not seen.",
     Remedy::replace_flame_lead, 1.0, 1.0, false, true, false, false, 0.7},
}};
// clang-format on

}  // namespace

std::span<const CauseInfo> catalogue() {
    return causes;
}

const CauseInfo& info(Cause cause) {
    return causes.at(static_cast<std::size_t>(cause));
}

const CauseInfo* find_cause(std::string_view word) {
    const auto* const found = std::find_if(causes.begin(), causes.end(),
                                           [word](const CauseInfo& c) { return c.word == word; });
    return found == causes.end() ? nullptr : found;
}

}  // namespace emberpath::faults
