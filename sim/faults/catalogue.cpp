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
    {Cause::injector_blocked, "injector_blocked", "injector of the first burner bank blocked",
     "Dirt in one injector: its flame gets too little gas for its air and is lean.",
     Remedy::clean_injectors, 0.32, 1.0, false, false, false, false, 1.0},
    {Cause::gas_valve_stuck_low, "gas_valve_stuck_low", "proportional gas valve stuck nearly shut",
     "The valve holds a low manifold pressure, whatever is asked of it.",
     Remedy::replace_gas_valve, 0.5, 1.0, false, false, false, false, 0.7, Noticed::at_any_severity},
    {Cause::gas_valve_stuck_high, "gas_valve_stuck_high", "proportional gas valve stuck open",
     "The valve holds a high manifold pressure, whatever is asked of it.",
     Remedy::replace_gas_valve, 0.5, 1.0, false, false, false, false, 0.4, Noticed::at_any_severity},
    {Cause::propane_in_gas, "propane_in_gas", "propane in the mains gas",
     "The mains brings a mixture richer than natural gas: more heat, more air needed.",
     Remedy::escalate_gas_quality, 0.29, 1.0, false, false, false, true, 0.1},
    {Cause::strainer_blocked, "strainer_blocked", "inlet strainer blocked",
     "Dirt in the screen of the cold inlet holds the water back.",
     Remedy::clean_strainer, 0.93, 1.07, false, false, false, false, 2.0},
    {Cause::water_valve_stuck_open, "water_valve_stuck_open", "water valve stuck open",
     "The valve no longer holds the water back to what the burner can heat.",
     Remedy::replace_water_valve, 1.0, 1.0, false, true, false, false, 0.5},
    {Cause::water_valve_stuck_shut, "water_valve_stuck_shut", "water valve stuck part shut",
     "The valve holds the water back at all times.",
     Remedy::replace_water_valve, 0.58, 1.0, false, false, false, false, 0.5},
    {Cause::bypass_stuck, "bypass_stuck", "bypass valve stuck",
     "Cold water passes the exchanger, which has to run hotter.",
     Remedy::replace_bypass_valve, 0.5, 1.0, false, false, false, false, 0.5, Noticed::by_measuring_first},
    {Cause::flow_sensor_dragging, "flow_sensor_dragging", "flow turbine drags",
     "The turbine turns too slowly: the heater fires for less water than there is.",
     Remedy::replace_flow_sensor, 0.08, 1.0, false, false, false, false, 1.5},
    {Cause::exchanger_scaled, "exchanger_scaled", "heat exchanger scaled",
     "Scale inside the tubes: metal too hot for its water, and less room for the water.",
     Remedy::descale_exchanger, 0.5, 1.0, false, false, false, false, 2.0},
    {Cause::outlet_sensor_short, "outlet_sensor_short", "outlet sensor short circuit",
     "The leads of the outlet thermistor touch.",
     Remedy::replace_outlet_sensor, 1.0, 1.0, false, true, false, false, 0.5},
    {Cause::inlet_sensor_open, "inlet_sensor_open", "inlet sensor open circuit",
     "The inlet thermistor's circuit is broken.",
     Remedy::replace_inlet_sensor, 1.0, 1.0, false, true, false, false, 0.8},
    {Cause::inlet_sensor_short, "inlet_sensor_short", "inlet sensor short circuit",
     "The leads of the inlet thermistor touch.",
     Remedy::replace_inlet_sensor, 1.0, 1.0, false, true, false, false, 0.3},
    {Cause::inlet_sensor_drift, "inlet_sensor_drift", "inlet sensor drifted",
     "The inlet thermistor's resistance is off: high reads cold, low reads hot.",
     Remedy::replace_inlet_sensor, 0.2, 1.0, true, false, false, false, 0.8, Noticed::by_measuring_first},
    {Cause::exchanger_sensor_open, "exchanger_sensor_open", "exchanger sensor open circuit",
     "The exchanger thermistor's circuit is broken.",
     Remedy::replace_exchanger_sensor, 1.0, 1.0, false, true, false, false, 0.6},
    {Cause::exchanger_sensor_short, "exchanger_sensor_short", "exchanger sensor short circuit",
     "The leads of the exchanger thermistor touch.",
     Remedy::replace_exchanger_sensor, 1.0, 1.0, false, true, false, false, 0.2},
    {Cause::exchanger_sensor_drift, "exchanger_sensor_drift", "exchanger sensor drifted",
     "The exchanger thermistor's resistance is off: high reads cold, low reads hot.",
     Remedy::replace_exchanger_sensor, 0.2, 1.0, true, false, false, false, 0.5, Noticed::by_measuring_first},
    {Cause::ambient_sensor_open, "ambient_sensor_open", "ambient sensor open circuit",
     "The ambient thermistor's circuit is broken.",
     Remedy::replace_ambient_sensor, 1.0, 1.0, false, true, false, false, 0.4, Noticed::by_measuring_first},
    {Cause::ambient_sensor_short, "ambient_sensor_short", "ambient sensor short circuit",
     "The leads of the ambient thermistor touch.",
     Remedy::replace_ambient_sensor, 1.0, 1.0, false, true, false, false, 0.1, Noticed::by_measuring_first},
    {Cause::ambient_sensor_drift, "ambient_sensor_drift", "ambient sensor drifted",
     "The ambient thermistor's resistance is off: high reads cold, low reads hot.",
     Remedy::replace_ambient_sensor, 0.2, 1.0, true, false, false, false, 0.3, Noticed::by_measuring_first},
    {Cause::fan_worn, "fan_worn", "fan worn",
     "Blades and bearing are worn: less air at a speed, and friction that looks like air.",
     Remedy::replace_fan, 0.5, 1.0, false, false, false, false, 1.0, Noticed::by_measuring_first},
    {Cause::tachometer_low, "tachometer_low", "fan speed sensor reads low",
     "The fan turns faster than the controller believes.",
     Remedy::replace_fan, 0.27, 1.0, false, false, false, false, 0.6},
    {Cause::limiter_open, "limiter_open", "overheat limiter open for good",
     "The limiter's contact stays open though nothing is hot.",
     Remedy::replace_limiter, 1.0, 1.0, false, true, false, false, 1.0},
    {Cause::gas_setting_wrong, "gas_setting_wrong", "gas setting does not match the plate",
     "The controller commands the manifold pressures of the other gas.",
     Remedy::correct_settings, 1.0, 1.0, false, true, false, true, 0.5},
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

std::string class_title(Remedy remedy) {
    std::string title;
    for (const CauseInfo& cause : causes) {
        if (cause.remedy != remedy) continue;
        if (!title.empty() && !info(remedy).about.empty()) return std::string(info(remedy).about);
        title += (title.empty() ? "" : " or ") + std::string(cause.title);
    }
    return title;
}

}  // namespace emberpath::faults
