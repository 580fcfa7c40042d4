#include <algorithm>
#include <cmath>
#include <cstdio>
#include <span>

#include "sim/worksite/observation.hpp"

namespace emberpath::worksite {

namespace {

constexpr double litre_per_min = 1.0 / 60000.0;  // [m3/s]
constexpr double rpm = 1.0 / 60.0;               // [rev/s]
constexpr double zero_celsius_k = 273.15;

using Q = Quantity;

// Instrument classes are chosen as usual for service instruments of the trade; docs/scoring.md lists
// them. Numbers are SI; shares, not per cent. Columns: see QuantityInfo.
// clang-format off
constexpr std::array<QuantityInfo, figure_count> table{{
    // quantity, word, title, tool, categorical, log, absolute, relative, resolution, floor, minutes, set-up, words
    {Q::gas_inlet_pressure, "gas_inlet_pressure", "gas pressure at the heater inlet", Tool::manometer, false, false, 10.0, 0.01, 10.0, 60.0, 0.5, 3.0, 0},
    {Q::regulator_pressure, "regulator_pressure", "gas pressure at the regulator outlet", Tool::manometer, false, false, 10.0, 0.01, 10.0, 60.0, 0.5, 4.0, 0},
    {Q::manifold_pressure, "manifold_pressure", "manifold pressure", Tool::manometer, false, false, 10.0, 0.01, 10.0, 25.0, 0.5, 3.0, 0},
    {Q::tap_temperature, "tap_temperature", "water temperature at the tap", Tool::thermometer, false, false, 0.5, 0.0, 0.1, 0.7, 0.5, 0.5, 0},
    {Q::tap_flow, "tap_flow", "flow at the tap", Tool::flow_cup, false, false, 0.1 * litre_per_min, 0.03, 0.1 * litre_per_min, 0.3 * litre_per_min, 1.0, 0.5, 0},
    {Q::outlet_pipe_temperature, "outlet_pipe_temperature", "temperature of the outlet pipe", Tool::thermometer, false, false, 1.0, 0.0, 0.1, 1.0, 0.5, 1.0, 0},
    {Q::inlet_pipe_temperature, "inlet_pipe_temperature", "temperature of the inlet pipe", Tool::thermometer, false, false, 1.0, 0.0, 0.1, 1.0, 0.5, 1.0, 0},
    {Q::exchanger_pipe_temperature, "exchanger_pipe_temperature", "temperature of the pipe leaving the exchanger", Tool::thermometer, false, false, 1.0, 0.0, 0.1, 1.0, 0.5, 2.0, 0},
    {Q::flue_o2, "flue_o2", "oxygen in the flue gas", Tool::analyser, false, false, 0.002, 0.0, 0.001, 0.003, 0.5, 4.0, 0},
    {Q::flue_co2, "flue_co2", "carbon dioxide in the flue gas", Tool::analyser, false, false, 0.003, 0.0, 0.001, 0.003, 0.5, 4.0, 0},
    {Q::flue_co, "flue_co", "carbon monoxide in the flue gas", Tool::analyser, false, true, 5.0e-6, 0.05, 1.0e-6, 0.25, 0.5, 4.0, 0},
    {Q::flue_temperature, "flue_temperature", "flue gas temperature", Tool::analyser, false, false, 2.0, 0.0, 1.0, 4.0, 0.5, 4.0, 0},
    {Q::room_co, "room_co", "carbon monoxide in the room", Tool::analyser, false, true, 1.0e-6, 0.05, 1.0e-6, 0.25, 0.5, 1.0, 0},
    {Q::gas_in_air, "gas_in_air", "fuel gas in the air at the heater", Tool::gas_detector, false, false, 0.003, 0.05, 0.01, 0.01, 0.25, 0.25, 0},
    {Q::outlet_ohms, "outlet_ohms", "resistance of the outlet sensor", Tool::multimeter, false, true, 1.0, 0.01, 1.0, 0.02, 1.0, 3.0, 0},
    {Q::inlet_ohms, "inlet_ohms", "resistance of the inlet sensor", Tool::multimeter, false, true, 1.0, 0.01, 1.0, 0.02, 1.0, 3.0, 0},
    {Q::exchanger_ohms, "exchanger_ohms", "resistance of the exchanger sensor", Tool::multimeter, false, true, 1.0, 0.01, 1.0, 0.02, 1.0, 3.0, 0},
    {Q::flame_current, "flame_current", "flame current", Tool::multimeter, false, false, 0.1e-6, 0.02, 0.1e-6, 0.4e-6, 1.0, 4.0, 0},
    {Q::terminal_volts, "terminal_volts", "voltage at the supply terminals", Tool::multimeter, false, false, 1.0, 0.01, 1.0, 2.0, 1.0, 2.0, 0},
    {Q::cylinder_mass, "cylinder_mass", "gas left in the cylinder by weight", Tool::scale, false, false, 0.1, 0.002, 0.1, 0.5, 3.0, 2.0, 0},
    {Q::readout_flow, "readout_flow", "flow on the service readout", Tool::readout, false, false, 0.05 * litre_per_min, 0.0, 0.1 * litre_per_min, 0.2 * litre_per_min, 0.25, 0.5, 0},
    {Q::readout_inlet, "readout_inlet", "inlet temperature on the service readout", Tool::readout, false, false, 0.05, 0.0, 0.1, 0.7, 0.25, 0.5, 0},
    {Q::readout_outlet, "readout_outlet", "outlet temperature on the service readout", Tool::readout, false, false, 0.05, 0.0, 0.1, 0.7, 0.25, 0.5, 0},
    {Q::readout_exchanger, "readout_exchanger", "exchanger temperature on the service readout", Tool::readout, false, false, 0.05, 0.0, 0.1, 0.7, 0.25, 0.5, 0},
    {Q::readout_fan, "readout_fan", "fan speed on the service readout", Tool::readout, false, false, 5.0 * rpm, 0.0, 10.0 * rpm, 80.0 * rpm, 0.25, 0.5, 0},
    {Q::readout_fan_current, "readout_fan_current", "fan current on the service readout", Tool::readout, false, false, 0.005, 0.0, 0.01, 0.02, 0.25, 0.5, 0},
    {Q::readout_flame, "readout_flame", "flame current on the service readout", Tool::readout, false, false, 0.05e-6, 0.0, 0.1e-6, 0.4e-6, 0.25, 0.5, 0},
    {Q::readout_firing_rate, "readout_firing_rate", "firing rate asked for, on the service readout", Tool::readout, false, false, 50.0, 0.0, 100.0, 500.0, 0.25, 0.5, 0},
    {Q::readout_manifold_command, "readout_manifold_command", "manifold pressure asked for, on the service readout", Tool::readout, false, false, 5.0, 0.0, 10.0, 25.0, 0.25, 0.5, 0},
    {Q::readout_correction, "readout_correction", "temperature correction on the service readout", Tool::readout, false, false, 0.05, 0.0, 0.1, 0.7, 0.25, 0.5, 0},
    {Q::readout_air_trim, "readout_air_trim", "air trim on the service readout", Tool::readout, false, false, 0.005, 0.0, 0.01, 0.02, 0.25, 0.5, 0},
    {Q::readout_ambient, "readout_ambient", "ambient temperature on the service readout", Tool::readout, false, false, 0.05, 0.0, 0.1, 0.7, 0.25, 0.5, 0},
    {Q::active_earth_volts, "active_earth_volts", "voltage from active to earth at the heater", Tool::multimeter, false, false, 1.0, 0.01, 1.0, 2.0, 0.5, 2.0, 0},
    {Q::neutral_earth_volts, "neutral_earth_volts", "voltage from neutral to earth at the heater", Tool::multimeter, false, false, 1.0, 0.01, 1.0, 2.0, 0.5, 2.0, 0},
    {Q::pipe_volts, "pipe_volts", "voltage from the water pipe to true earth", Tool::multimeter, false, false, 1.0, 0.01, 1.0, 2.0, 0.5, 3.0, 0},
    {Q::rail_volts, "rail_volts", "extra-low voltage on the board", Tool::multimeter, false, false, 0.2, 0.01, 0.1, 0.5, 0.5, 2.0, 0},
    {Q::valve_volts, "valve_volts", "drive voltage at the gas valve", Tool::multimeter, false, false, 0.2, 0.01, 0.1, 0.5, 0.5, 2.0, 0},
    {Q::link_volts, "link_volts", "voltage at the wall end of the link cable", Tool::multimeter, false, false, 0.2, 0.01, 0.1, 0.5, 0.5, 2.0, 0},
    {Q::leakage_current, "leakage_current", "leakage current of the heater's lead", Tool::clamp, false, false, 0.1e-3, 0.03, 0.1e-3, 0.3e-3, 0.5, 1.0, 0},
    {Q::earth_ohms, "earth_ohms", "resistance of the earth path", Tool::multimeter, false, true, 0.1, 0.02, 0.1, 0.1, 1.0, 2.0, 0},
    {Q::insulation_ohms, "insulation_ohms", "insulation of the heater's mains wiring", Tool::multimeter, false, true, 1.0e3, 0.05, 1.0e3, 0.2, 1.0, 2.0, 0},
    {Q::valve_coil_ohms, "valve_coil_ohms", "resistance of the gas valve's coil", Tool::multimeter, false, true, 0.5, 0.01, 0.1, 0.05, 0.5, 2.0, 0},
    {Q::valve_lead_ohms, "valve_lead_ohms", "resistance from the valve lead to the casing, moved by hand", Tool::multimeter, false, true, 0.5, 0.01, 0.1, 0.2, 1.0, 2.0, 0},
    {Q::igniter_lead_ohms, "igniter_lead_ohms", "insulation of the igniter's lead", Tool::multimeter, false, true, 1.0e3, 0.05, 1.0e3, 0.3, 1.0, 2.0, 0},
    {Q::flame_lead_ohms, "flame_lead_ohms", "resistance of the flame lead, end to end", Tool::multimeter, false, true, 0.5, 0.01, 0.1, 0.2, 0.5, 2.0, 0},
    {Q::safety_switch_current, "safety_switch_current", "current at which the safety switch opens", Tool::safety_switch_tester, false, false, 0.5e-3, 0.03, 0.1e-3, 0.5e-3, 1.0, 2.0, 0},
    {Q::volts_between, "volts_between", "voltage between two terminals", Tool::multimeter, false, false, 1.0, 0.01, 0.1, 2.0, 0.5, 2.0, 0},
    {Q::ohms_between, "ohms_between", "resistance between two terminals", Tool::multimeter, false, true, 0.5, 0.01, 0.1, 0.1, 0.5, 2.0, 0},
    {Q::clamp_current, "clamp_current", "current in a conductor", Tool::clamp, false, false, 0.01, 0.03, 0.01, 0.03, 0.5, 1.0, 0},
    {Q::complaint_heard, "complaint_heard", "what the customer says", Tool::none, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 0.0, 6},
    {Q::display_word, "display_word", "word on the display", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.1, 0.0, static_cast<int>(controller::display_word_count)},
    {Q::readout_phase, "readout_phase", "phase on the service readout", Tool::readout, true, false, 0.0, 0.0, 1.0, 0.0, 0.1, 0.5, static_cast<int>(controller::phase_count)},
    {Q::readout_event, "readout_event", "latest event on the service readout", Tool::readout, true, false, 0.0, 0.0, 1.0, 0.0, 0.25, 0.5, static_cast<int>(controller::event_count)},
    {Q::spark, "spark", "spark at the igniter", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 0.2, 2},
    {Q::flame, "flame", "flame at the burner window", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 0.2, 5},
    {Q::fan_sound, "fan_sound", "sound of the fan", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.1, 0.0, 3},
    {Q::flue_terminal, "flue_terminal", "flue terminal", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 2.0, 0.0, 3},
    {Q::exchanger_fins, "exchanger_fins", "exchanger fins", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 5.0, 3.0, 3},
    {Q::electrode_tip, "electrode_tip", "tip of the flame electrode", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 3.0, 3.0, 3},
    {Q::cylinder_frost, "cylinder_frost", "frost on the cylinder", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 0.0, 4},
    {Q::switchboard, "switchboard", "switches at the switchboard", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 0.0, 4},
    {Q::board_fuse, "board_fuse", "fuse of the heater's board", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 2.0, 2},
    {Q::spark_path, "spark_path", "way of the spark", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 2.0, 3},
    {Q::tingle, "tingle", "a hand on the tap", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.1, 0.0, 2},
    {Q::readout_water_valve, "readout_water_valve", "water valve position on the service readout", Tool::readout, false, false, 0.005, 0.0, 0.01, 0.02, 0.25, 0.5, 0},
    {Q::readout_fan_drive, "readout_fan_drive", "fan drive on the service readout", Tool::readout, false, false, 0.005, 0.0, 0.01, 0.02, 0.25, 0.5, 0},
    {Q::link_heater_volts, "link_heater_volts", "link cable voltage at the heater", Tool::multimeter, false, false, 0.05, 0.01, 0.1, 0.3, 1.0, 2.0, 0},
    {Q::link_wall_1_volts, "link_wall_1_volts", "link cable voltage at the first wall controller", Tool::multimeter, false, false, 0.05, 0.01, 0.1, 0.3, 1.0, 2.0, 0},
    {Q::link_wall_2_volts, "link_wall_2_volts", "link cable voltage at the second wall controller", Tool::multimeter, false, false, 0.05, 0.01, 0.1, 0.3, 1.0, 2.0, 0},
    {Q::link_wall_3_volts, "link_wall_3_volts", "link cable voltage at the third wall controller", Tool::multimeter, false, false, 0.05, 0.01, 0.1, 0.3, 1.0, 2.0, 0},
    {Q::setting_altitude, "setting_altitude", "altitude setting", Tool::readout, false, false, 1.0, 0.0, 1.0, 10.0, 0.5, 0.5, 0},
    {Q::history_count, "history_count", "count beside the newest event of the history", Tool::readout, false, false, 0.1, 0.0, 1.0, 0.5, 0.25, 0.5, 0},
    {Q::setting_gas, "setting_gas", "gas setting", Tool::readout, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 0.5, 2},
    {Q::history_event, "history_event", "newest event of the history", Tool::readout, true, false, 0.0, 0.0, 1.0, 0.0, 0.25, 0.5, static_cast<int>(controller::event_count)},
    {Q::wall_screen_1, "wall_screen_1", "screen of the first wall controller", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 0.0, 4},
    {Q::wall_screen_2, "wall_screen_2", "screen of the second wall controller", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 0.0, 4},
    {Q::wall_screen_3, "wall_screen_3", "screen of the third wall controller", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 0.0, 4},
    {Q::water_pressure, "water_pressure", "pressure of the cold water", Tool::water_gauge, false, false, 5.0e3, 0.01, 5.0e3, 5.0e3, 1.0, 1.0, 0},
    {Q::night_water_pressure, "night_water_pressure", "highest pressure of the cold water overnight", Tool::water_gauge, false, false, 5.0e3, 0.01, 5.0e3, 5.0e3, 5.0, 5.0, 0},
    {Q::reserve_mass, "reserve_mass", "gas left in the second cylinder by weight", Tool::scale, false, false, 0.1, 0.002, 0.1, 0.5, 3.0, 2.0, 0},
    {Q::intake_o2, "intake_o2", "oxygen in the air at the heater's intake", Tool::analyser, false, false, 0.002, 0.0, 0.001, 0.003, 0.5, 1.0, 0},
    {Q::case_co, "case_co", "carbon monoxide inside the case", Tool::analyser, false, true, 5.0e-6, 0.05, 1.0e-6, 0.25, 0.5, 1.0, 0},
    {Q::changeover_indicator, "changeover_indicator", "cylinder in use at the changeover", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 0.0, 3},
    {Q::relief_drain, "relief_drain", "drain of the relief valve", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 0.0, 2},
    {Q::casing_wet, "casing_wet", "floor of the case", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 0.0, 2},
    {Q::diverter_smoke, "diverter_smoke", "smoke at the draught diverter", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 1.0, 1.0, 3},
    {Q::setting_highest, "setting_highest", "highest set temperature stored", Tool::readout, false, false, 0.05, 0.0, 0.1, 0.2, 0.5, 0.5, 0},
    {Q::setting_priority, "setting_priority", "priority of the wall controllers", Tool::readout, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 0.5, 4},
    {Q::gas_valve_handle, "gas_valve_handle", "handle of the heater's gas valve", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 0.0, 3},
    {Q::air_intake, "air_intake", "air intake", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 0.0, 3},
    {Q::chamber_outside, "chamber_outside", "outside of the combustion chamber", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 3.0, 2},
    {Q::limiter_leads, "limiter_leads", "leads of the overheat limiter", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 3.0, 2},
    {Q::union_bubbles, "union_bubbles", "leak fluid at the inlet union", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 1.0, 0.0, 2},
    {Q::light_up_sound, "light_up_sound", "sound of the latest light-up", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 0.0, 2},
    {Q::air_tube_pressure, "air_tube_pressure", "pressure in the air tube", Tool::manometer, false, false, 2.0, 0.01, 1.0, 4.0, 0.5, 3.0, 0},
    {Q::air_tube_needle, "air_tube_needle", "manometer at the air tube", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.5, 3.0, 2},
    {Q::companion_front, "companion_front", "front of the companion heater", Tool::senses, true, false, 0.0, 0.0, 1.0, 0.0, 0.2, 0.0, 3},
    {Q::companion_pipe_temperature, "companion_pipe_temperature", "outlet pipe of the companion heater", Tool::thermometer, false, false, 0.5, 0.005, 0.1, 1.0, 0.5, 1.0, 0},
    {Q::companion_link_ohms, "companion_link_ohms", "resistance of the link between the heaters, end to end", Tool::multimeter, false, true, 0.5, 0.01, 0.1, 0.2, 1.0, 2.0, 0},
    {Q::meter_current, "meter_current", "current through the multimeter", Tool::multimeter, false, false, 0.03e-3, 0.01, 0.1e-3, 0.1e-3, 0.5, 2.0, 0},
    {Q::break_time, "break_time", "time in which the safety switch opens", Tool::safety_switch_tester, false, false, 1.0e-3, 0.02, 1.0e-3, 2.0e-3, 0.5, 2.0, 0},
}};
// clang-format on

constexpr bool in_enum_order() {
    for (std::size_t i = 0; i < figure_count; ++i)
        if (table[i].quantity != static_cast<Quantity>(i)) return false;
    return true;
}
static_assert(in_enum_order(), "the table follows the order of Quantity");

constexpr std::array<std::string_view, 6> complaint_words{
    "no complaint",          "no hot water", "not hot enough", "too hot", "goes cold after a while",
    "drops out now and then"};
constexpr std::array<std::string_view, 2> spark_words{"no spark", "spark"};
constexpr std::array<std::string_view, 5> flame_words{"none", "lit, then out", "steady", "restless",
                                                      "yellow-tipped"};
constexpr std::array<std::string_view, 3> fan_words{"silent", "normal", "louder than usual"};
constexpr std::array<std::string_view, 3> terminal_words{"clear", "partly covered", "covered"};
constexpr std::array<std::string_view, 3> fins_words{"clean", "lightly sooted", "heavily sooted"};
constexpr std::array<std::string_view, 3> tip_words{"clean", "coated", "heavily coated"};
constexpr std::array<std::string_view, 3> changeover_words{"first cylinder", "both cylinders",
                                                           "second cylinder"};
constexpr std::array<std::string_view, 2> relief_words{"dry", "dripping"};
constexpr std::array<std::string_view, 2> wet_words{"dry", "wet"};
constexpr std::array<std::string_view, 3> smoke_words{"drawn in", "hangs about", "blown out"};
constexpr std::array<std::string_view, 4> frost_words{"no cylinder", "no frost", "frost, line high",
                                                      "frost, line low"};

constexpr std::array<std::string_view, 4> board_words{"all on", "safety switch open",
                                                      "breaker open", "switched off"};
constexpr std::array<std::string_view, 2> fuse_words{"whole", "blown"};
constexpr std::array<std::string_view, 3> path_words{"no spark", "across at the burner",
                                                     "from the lead to the frame"};
constexpr std::array<std::string_view, 2> tingle_words{"nothing felt", "a tingle"};
constexpr std::array<std::string_view, 2> gas_words{"natural gas", "propane"};
constexpr std::array<std::string_view, 4> screen_words{"not fitted", "dark",
                                                       "lit, no answer from the heater", "lit"};

constexpr std::array<std::string_view, 4> priority_words{"lowest set value", "first", "second",
                                                         "third"};
constexpr std::array<std::string_view, 3> handle_words{"in line with the pipe", "part way",
                                                       "across the pipe"};
constexpr std::array<std::string_view, 3> intake_words{"clear", "partly felted", "felted"};
constexpr std::array<std::string_view, 2> chamber_words{"clean", "scorched beside a seam"};
constexpr std::array<std::string_view, 2> needle_words{"steady", "jumpy"};
constexpr std::array<std::string_view, 3> companion_words{"no companion heater", "waiting",
                                                          "firing"};
constexpr std::array<std::string_view, 2> limiter_words{"as made", "bridged by a wire"};
constexpr std::array<std::string_view, 2> bubble_words{"no bubbles", "bubbles"};
constexpr std::array<std::string_view, 2> light_up_words{"soft or none", "a thump"};

// clang-format off
/// Words of the quantities that are words.
struct Words {
    Quantity quantity;
    std::span<const std::string_view> words;
};
constexpr std::array word_lists{
    Words{Q::complaint_heard, complaint_words},
    Words{Q::spark, spark_words},
    Words{Q::flame, flame_words},
    Words{Q::fan_sound, fan_words},
    Words{Q::flue_terminal, terminal_words},
    Words{Q::exchanger_fins, fins_words},
    Words{Q::electrode_tip, tip_words},
    Words{Q::cylinder_frost, frost_words},
    Words{Q::switchboard, board_words},
    Words{Q::board_fuse, fuse_words},
    Words{Q::spark_path, path_words},
    Words{Q::tingle, tingle_words},
    Words{Q::changeover_indicator, changeover_words},
    Words{Q::relief_drain, relief_words},
    Words{Q::casing_wet, wet_words},
    Words{Q::diverter_smoke, smoke_words},
    Words{Q::setting_gas, gas_words},
    Words{Q::setting_priority, priority_words},
    Words{Q::gas_valve_handle, handle_words},
    Words{Q::air_intake, intake_words},
    Words{Q::chamber_outside, chamber_words},
    Words{Q::air_tube_needle, needle_words},
    Words{Q::companion_front, companion_words},
    Words{Q::limiter_leads, limiter_words},
    Words{Q::union_bubbles, bubble_words},
    Words{Q::light_up_sound, light_up_words},
    Words{Q::wall_screen_1, screen_words},
    Words{Q::wall_screen_2, screen_words},
    Words{Q::wall_screen_3, screen_words},
};

/// How a number is shown: (value x times - zero) / over, so many places, the unit.
struct Shown {
    Quantity quantity;
    double times, zero, over;
    int places;
    const char* unit;
};
constexpr std::array shown_as{
    Shown{Q::gas_inlet_pressure, 1.0, 0.0, 1000.0, 2, " kPa"},
    Shown{Q::regulator_pressure, 1.0, 0.0, 1000.0, 2, " kPa"},
    Shown{Q::manifold_pressure, 1.0, 0.0, 1000.0, 2, " kPa"},
    Shown{Q::readout_manifold_command, 1.0, 0.0, 1000.0, 2, " kPa"},
    Shown{Q::air_tube_pressure, 1.0, 0.0, 1.0, 0, " Pa"},
    Shown{Q::tap_flow, 1.0, 0.0, litre_per_min, 1, " L/min"},
    Shown{Q::readout_flow, 1.0, 0.0, litre_per_min, 1, " L/min"},
    Shown{Q::water_pressure, 1.0, 0.0, 1000.0, 0, " kPa"},
    Shown{Q::night_water_pressure, 1.0, 0.0, 1000.0, 0, " kPa"},
    Shown{Q::flue_o2, 100.0, 0.0, 1.0, 1, " %"},
    Shown{Q::intake_o2, 100.0, 0.0, 1.0, 1, " %"},
    Shown{Q::flue_co2, 100.0, 0.0, 1.0, 1, " %"},
    Shown{Q::gas_in_air, 100.0, 0.0, 1.0, 0, " % of the lower flammability limit"},
    Shown{Q::flue_temperature, 1.0, zero_celsius_k, 1.0, 0, " °C"},
    Shown{Q::flame_current, 1.0e6, 0.0, 1.0, 1, " µA"},
    Shown{Q::readout_flame, 1.0e6, 0.0, 1.0, 1, " µA"},
    Shown{Q::terminal_volts, 1.0, 0.0, 1.0, 0, " V"},
    Shown{Q::active_earth_volts, 1.0, 0.0, 1.0, 0, " V"},
    Shown{Q::neutral_earth_volts, 1.0, 0.0, 1.0, 0, " V"},
    Shown{Q::pipe_volts, 1.0, 0.0, 1.0, 0, " V"},
    Shown{Q::rail_volts, 1.0, 0.0, 1.0, 1, " V"},
    Shown{Q::valve_volts, 1.0, 0.0, 1.0, 1, " V"},
    Shown{Q::link_volts, 1.0, 0.0, 1.0, 1, " V"},
    Shown{Q::volts_between, 1.0, 0.0, 1.0, 1, " V"},
    Shown{Q::leakage_current, 1.0e3, 0.0, 1.0, 1, " mA"},
    Shown{Q::safety_switch_current, 1.0e3, 0.0, 1.0, 1, " mA"},
    Shown{Q::clamp_current, 1.0, 0.0, 1.0, 2, " A"},
    Shown{Q::meter_current, 1.0e3, 0.0, 1.0, 1, " mA"},
    Shown{Q::break_time, 1.0e3, 0.0, 1.0, 0, " ms"},
    Shown{Q::cylinder_mass, 1.0, 0.0, 1.0, 1, " kg"},
    Shown{Q::reserve_mass, 1.0, 0.0, 1.0, 1, " kg"},
    Shown{Q::readout_fan, 1.0, 0.0, rpm, 0, " rpm"},
    Shown{Q::readout_fan_current, 1.0, 0.0, 1.0, 2, " A"},
    Shown{Q::readout_firing_rate, 3.6e-3, 0.0, 1.0, 0, " MJ/h"},
    Shown{Q::readout_correction, 1.0, 0.0, 1.0, 1, " K"},
    Shown{Q::readout_air_trim, 1.0, 0.0, 1.0, 2, ""},
    Shown{Q::readout_water_valve, 100.0, 0.0, 1.0, 0, " %"},
    Shown{Q::readout_fan_drive, 100.0, 0.0, 1.0, 0, " %"},
    Shown{Q::link_heater_volts, 1.0, 0.0, 1.0, 1, " V"},
    Shown{Q::link_wall_1_volts, 1.0, 0.0, 1.0, 1, " V"},
    Shown{Q::link_wall_2_volts, 1.0, 0.0, 1.0, 1, " V"},
    Shown{Q::link_wall_3_volts, 1.0, 0.0, 1.0, 1, " V"},
    Shown{Q::setting_altitude, 1.0, 0.0, 1.0, 0, " m"},
    Shown{Q::history_count, 1.0, 0.0, 1.0, 0, ""},
};

// clang-format on

std::string decimals(double value, int places, const char* unit) {
    char buffer[48];
    const double zeroed = std::abs(value) < 0.5e-9 ? 0.0 : value;
    std::snprintf(buffer, sizeof buffer, "%.*f%s", places, zeroed, unit);
    return buffer;
}

std::string ohms_text(double value) {
    if (value < 1000.0) return decimals(value, 1, " ohm");
    return value < 1.0e6 ? decimals(value / 1.0e3, 1, " kohm")
                         : decimals(value / 1.0e6, 1, " Mohm");
}

}  // namespace

const QuantityInfo& info(Quantity quantity) {
    return table[static_cast<std::size_t>(quantity)];
}

const QuantityInfo* find_quantity(std::string_view word) {
    const auto* found = std::find_if(table.begin(), table.end(),
                                     [&](const QuantityInfo& row) { return row.word == word; });
    return found == table.end() ? nullptr : found;
}

std::string_view category_word(Quantity quantity, std::size_t category) {
    constexpr std::string_view unknown = "unknown";
    if (quantity == Q::display_word)
        return category < controller::display_word_count ? controller::display_word_at(category)
                                                         : unknown;
    if (quantity == Q::readout_phase)
        return category < controller::phase_count
                   ? controller::phase_name(static_cast<controller::Phase>(category))
                   : unknown;
    if (quantity == Q::history_event || quantity == Q::readout_event)
        return category < controller::event_count
                   ? controller::event_name(static_cast<controller::Event>(category))
                   : unknown;
    const auto* const list = std::find_if(word_lists.begin(), word_lists.end(),
                                          [&](const Words& w) { return w.quantity == quantity; });
    return list != word_lists.end() && category < list->words.size() ? list->words[category]
                                                                     : unknown;
}

std::string text_of(Quantity quantity, double value) {
    if (quantity == Q::display_word && value < 0.5) return "dark";  // its word is blanks
    if (info(quantity).categorical)
        return std::string(category_word(quantity, static_cast<std::size_t>(std::max(0.0, value))));
    if (over_range(quantity, value)) return "over range";
    switch (quantity) {
        case Q::flue_co:
        case Q::room_co:
        case Q::case_co:
            return decimals(value * 1.0e6, 0, " ppm");
        case Q::outlet_ohms:
        case Q::inlet_ohms:
        case Q::exchanger_ohms:
            return value < 1.0e6 ? decimals(value, 0, " ohm") : decimals(value / 1.0e6, 2, " Mohm");
        case Q::earth_ohms:
        case Q::insulation_ohms:
        case Q::valve_coil_ohms:
        case Q::valve_lead_ohms:
        case Q::igniter_lead_ohms:
        case Q::flame_lead_ohms:
        case Q::companion_link_ohms:
        case Q::ohms_between:
            return ohms_text(value);
        default:
            break;
    }
    const auto* const row = std::find_if(shown_as.begin(), shown_as.end(),
                                         [&](const Shown& s) { return s.quantity == quantity; });
    if (row == shown_as.end()) return decimals(value - zero_celsius_k, 1, " °C");
    return decimals((value * row->times - row->zero) / row->over, row->places, row->unit);
}

}  // namespace emberpath::worksite
