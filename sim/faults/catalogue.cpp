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
     Remedy::change_cylinder, 0.55, 1.0, false, false, true, false, 3.0, Noticed::from_least_severity, Needs::nothing, true},
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
     Remedy::replace_gas_valve, 0.5, 1.0, false, false, false, false, 0.7, Noticed::at_any_severity, Needs::nothing, false, true},
    {Cause::gas_valve_stuck_high, "gas_valve_stuck_high", "proportional gas valve stuck open",
     "The valve holds a high manifold pressure, whatever is asked of it.",
     Remedy::replace_gas_valve, 0.5, 1.0, false, false, false, false, 0.4, Noticed::at_any_severity, Needs::nothing, false, true},
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
     Remedy::replace_water_valve, 0.58, 1.0, false, false, false, false, 0.5, Noticed::from_least_severity, Needs::nothing, false, true},
    {Cause::bypass_stuck, "bypass_stuck", "bypass valve stuck",
     "Cold water passes the exchanger, which has to run hotter.",
     Remedy::replace_bypass_valve, 0.5, 1.0, false, false, false, false, 0.5, Noticed::by_measuring_first, Needs::nothing, false, true},
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
    // gas and its supply, again
    {Cause::gas_isolator_part_shut, "gas_isolator_part_shut", "heater's gas valve part shut",
     "The isolating valve before the heater stands part shut: loss with the square of the flow, beyond the pipe.",
     Remedy::open_gas_valve, 0.97, 1.0, false, false, false, false, 0.3},
    {Cause::gas_screen_blocked, "gas_screen_blocked", "gas inlet screen blocked",
     "Debris in the screen behind the heater's gas inlet: the loss lies beyond the inlet test point.",
     Remedy::clean_gas_screen, 0.32, 1.0, false, false, false, false, 0.4},
    {Cause::regulator_creeps, "regulator_creeps", "gas regulator creeps",
     "Its seat leaks: the outlet pressure climbs while nothing is drawn, and falls back with the first draw.",
     Remedy::escalate_regulator, 0.4, 1.0, false, false, false, false, 0.1, Noticed::by_measuring_first},
    {Cause::gas_union_weeps, "gas_union_weeps", "inlet union weeps gas",
     "Gas seeps out at the union of the heater's inlet while the gas is on; the burner notices nothing.",
     Remedy::remake_inlet_union, 0.3, 1.0, false, false, false, false, 0.05, Noticed::by_measuring_first},
    {Cause::wrong_injectors, "wrong_injectors", "injectors of the other gas",
     "The injectors are drilled for the other gas: far too little natural gas, or far too much propane.",
     Remedy::fit_right_injectors, 1.0, 1.0, false, true, false, false, 0.05},
    {Cause::high_fire_overset, "high_fire_overset", "high fire set above the plate",
     "An old adjustment lets the gas valve give more than it is asked, the more the higher the fire.",
     Remedy::set_manifold_pressure, 0.51, 1.0, false, false, false, false, 0.3},
    {Cause::boil_off_small, "boil_off_small", "cylinder too small for the draw",
     "Too little liquid and wetted wall: boiling cools it in a long draw, full as it is.",
     Remedy::quote_more_cylinders, 0.47, 1.0, false, false, true, false, 1.0},
    {Cause::changeover_stuck, "changeover_stuck", "changeover stuck on the empty cylinder",
     "The first cylinder is empty and the changeover does not go over to the full one.",
     Remedy::escalate_changeover, 1.0, 1.0, false, true, true, false, 0.7, Noticed::from_least_severity, Needs::cylinder_pair, true},
    {Cause::second_stage_passes, "second_stage_passes", "second-stage regulator passes",
     "The last regulator passes first-stage pressure: too much at rest and while gas is drawn.",
     Remedy::escalate_regulator, 0.3, 1.0, false, false, true, false, 0.4, Noticed::by_measuring_first, Needs::cylinder_pair},
    // air and flue, again
    {Cause::intake_felted, "intake_felted", "air intake felted with lint",
     "Lint before the fan takes free area: less air for the same fan speed, the terminal clear.",
     Remedy::clean_air_intake, 0.75, 1.0, false, false, false, false, 0.5},
    {Cause::products_drawn_back, "products_drawn_back", "products drawn back into the intake",
     "Part of what leaves the flue is breathed in again: the air holds less oxygen.",
     Remedy::quote_other_place, 0.35, 1.0, false, false, false, false, 0.2},
    {Cause::chamber_seam_open, "chamber_seam_open", "seam of the combustion chamber open",
     "Flame gas leaks into the case: hot, and with whatever carbon monoxide the flame makes.",
     Remedy::condemn_heater, 0.3, 1.0, false, false, false, false, 0.03, Noticed::by_measuring_first},
    {Cause::open_flue_blocked, "open_flue_blocked", "open flue part blocked",
     "The flue above the draught diverter takes less than the burner sends: the rest enters the room.",
     Remedy::clear_open_flue, 0.65, 1.0, false, false, false, false, 1.0, Noticed::from_least_severity, Needs::open_flue},
    {Cause::room_too_tight, "room_too_tight", "too little air comes into the room",
     "Gaps and vents of the room are closed: extraction pulls products back down the open flue.",
     Remedy::quote_ventilation, 0.55, 1.0, false, false, false, false, 1.0, Noticed::from_least_severity, Needs::open_flue},
    // ignition, again
    {Cause::light_up_late, "light_up_late", "late light-up",
     "Wide spark gap and dirty ports: gas gathers before it lights.",
     Remedy::set_spark_gap, 0.75, 1.0, false, false, false, false, 0.4},
    // water of the house
    {Cause::outlet_clogged, "outlet_clogged", "one outlet clogged",
     "The screen of one outlet is nearly shut: there alone the flow is too small for the heater.",
     Remedy::clean_outlet, 0.16, 1.0, false, false, false, false, 1.5, Noticed::from_least_severity, Needs::listed_outlets},
    {Cause::flow_sensor_sticks, "flow_sensor_sticks", "flow turbine sticks",
     "The turbine stands still at a small flow and turns true above it.",
     Remedy::replace_flow_sensor, 0.36, 1.0, false, false, false, false, 0.5},
    {Cause::flow_sensor_wrong, "flow_sensor_wrong", "flow sensor of another count",
     "The sensor gives more pulses a litre than the heater counts on: it fires for more water than there is.",
     Remedy::replace_flow_sensor, 0.3, 1.0, false, false, false, false, 0.2},
    {Cause::pinhole_inside, "pinhole_inside", "pinhole above the electronics",
     "A fine jet wets the case and its wiring, firing or not.",
     Remedy::replace_leaking_tube, 0.43, 1.0, false, false, false, false, 0.3},
    {Cause::night_pressure_high, "night_pressure_high", "water pressure too high at night",
     "The street's pressure rises when nobody draws, and the relief valve weeps.",
     Remedy::fit_pressure_limiter, 0.7, 1.0, false, false, false, false, 0.7, Noticed::by_measuring_first, Needs::night},
    {Cause::mixer_cross_flow, "mixer_cross_flow", "mixer lets cold into the hot pipe",
     "Cold water crosses a mixer into the hot pipe whenever hot is drawn.",
     Remedy::repair_mixer, 0.1, 1.0, false, false, false, false, 0.5},
    {Cause::tempering_valve_worn, "tempering_valve_worn", "tempering valve worn",
     "It adds cold where none is wanted: the heater hot, the bathroom mild.",
     Remedy::replace_tempering_valve, 0.12, 1.0, false, false, false, false, 1.0, Noticed::from_least_severity, Needs::tempering_valve},
    // sensors that fail by degrees
    {Cause::outlet_sensor_opens_warm, "outlet_sensor_opens_warm", "outlet sensor opens when warm",
     "The element loses contact above a temperature and finds it again when it cools.",
     Remedy::replace_outlet_sensor, 0.42, 1.0, false, false, false, false, 0.3},
    {Cause::limiter_weak, "limiter_weak", "overheat limiter opens too early",
     "Its snap temperature has crept down: it opens though nothing is too hot.",
     Remedy::replace_limiter, 0.59, 1.0, false, false, false, false, 0.4},
    // more settings, and the link cable
    {Cause::priority_elsewhere, "priority_elsewhere", "another wall controller has priority",
     "The set value that counts is not the one people look at.",
     Remedy::correct_settings, 1.0, 1.0, false, true, false, false, 0.7, Noticed::from_least_severity, Needs::two_wall_controllers},
    {Cause::link_cable_corroded, "link_cable_corroded", "link cable corroded",
     "Green joints take the voltage of the first wall controller: its screen goes dark and the heater's own set value counts.",
     Remedy::remake_link_joint, 0.39, 1.0, false, false, false, false, 0.7, Noticed::from_least_severity, Needs::wall_controller},
    {Cause::altitude_setting_wrong, "altitude_setting_wrong", "altitude setting not that of the place",
     "The heater is told of air that is not there: too thin at a low site, less gas and a faster fan; too thick at a high one, it misses air that nobody can give and hurries its fan.",
     Remedy::correct_settings, 0.1, 1.0, false, false, false, false, 0.05, Noticed::by_measuring_first},
    {Cause::highest_setting_raised, "highest_setting_raised", "highest set value stored too high",
     "The heater takes set values that scald.",
     Remedy::correct_settings, 1.0, 1.0, false, true, false, false, 0.4, Noticed::from_least_severity, Needs::high_set_value},
    // more of the electrical side
    {Cause::second_supply, "second_supply", "second supply feeds the circuit",
     "A battery inverter feeds the heater's circuit when the main switch is off.",
     Remedy::escalate_wiring, 1.0, 1.0, false, true, false, false, 0.03, Noticed::by_measuring_first},
    {Cause::limiter_bridged, "limiter_bridged", "overheat limiter bridged",
     "Somebody put a wire across it: it cannot stop the heater any more.",
     Remedy::restore_limiter, 1.0, 1.0, false, true, false, false, 0.03, Noticed::by_measuring_first},
    // an air tube, and a companion heater
    {Cause::air_tube_water, "air_tube_water", "water in the air tube",
     "A column of water in a sag of the tube holds part of the pressure back, and rocks: the heater believes it gets too little air.",
     Remedy::drain_air_tube, 0.3, 1.0, false, false, false, false, 1.0, Noticed::from_least_severity, Needs::air_tube},
    {Cause::companion_link_open, "companion_link_open", "link between the paired heaters loose",
     "The companion heater is never called: the first one throttles the water when many draw at once.",
     Remedy::remake_companion_link, 1.0, 1.0, false, true, false, false, 1.0, Noticed::from_least_severity, Needs::companion},
}};
// clang-format on

}  // namespace

std::span<const CauseInfo> catalogue() {
    return causes;
}

const CauseInfo& info(Cause cause) {
    return causes.at(static_cast<std::size_t>(cause));
}

bool can_act(const CauseInfo& cause, const SiteTraits& site) {
    if (site.cylinder ? cause.mains_only : cause.cylinder_only) return false;
    switch (cause.needs) {
        case Needs::nothing:
            return true;
        case Needs::cylinder_pair:
            return site.cylinder_pair;
        case Needs::open_flue:
            return site.open_flue;
        case Needs::listed_outlets:
            return site.outlets >= 2;
        case Needs::tempering_valve:
            return site.tempering_valve;
        case Needs::night:
            return site.night;
        case Needs::wall_controller:
            return site.wall_controllers >= 1;
        case Needs::two_wall_controllers:
            return site.wall_controllers >= 2;
        case Needs::high_set_value:
            return site.high_set_value;
        case Needs::air_tube:
            return site.air_tube;
        case Needs::companion:
            return site.companion;
    }
    return false;
}

std::string_view title(Needs needs) {
    constexpr std::array<std::string_view, 11> titles{"nothing in particular",
                                                      "two gas cylinders behind a changeover",
                                                      "an open flue",
                                                      "two hot outlets",
                                                      "a tempering valve",
                                                      "a night",
                                                      "a wall controller",
                                                      "two wall controllers",
                                                      "a set value above what a sound heater gives",
                                                      "a heater that proves its air by a tube",
                                                      "a companion heater"};
    return titles.at(static_cast<std::size_t>(needs));
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
