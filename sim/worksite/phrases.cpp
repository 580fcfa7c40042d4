#include <algorithm>
#include <array>

#include "sim/worksite/acts.hpp"
#include "sim/worksite/kit.hpp"
#include "sim/worksite/skill.hpp"

namespace emberpath::worksite {

namespace {

using enum Verb;
using Kind = LogEntry::Kind;

// Times are chosen: what a practised person needs, tools at hand. Remedies come from their own table
// (sim/faults/remedies.hpp).
// So are the prices of what is used up beside remedies; no score counts them.
constexpr double fuse_minutes = 1.0;
constexpr double other_sensor_minutes = 10.0;  // second-hand
constexpr double small_thing_minutes = 1.0;    // a resistor, a length of tape

// What takes as long as the sentence says, or as its thing asks for, has no time here: seconds_of() knows it.
// A word in [..] may be left out; {..} stands for one of the things that words_of() lists.
// clang-format off
constexpr std::array rows_before_remedies{
    PhraseRow{ask, Kind::talk, {"ask about {topic}", "ask the customer; \"problem\" is what they called about", 30}},
    PhraseRow{look, Kind::look, {"look at {thing}", "5 s; 20 s for the switchboard, 30 s for a part inside, 1 min for pipe run and fins, 2 min for the flue terminal, 5 min for a pipe run in a roof space", 0}},
    PhraseRow{watch, Kind::look, {"watch {watched} for {duration}", "keep your eyes on it and note what changes; the analyser's figures eight times, and how they go", 0}},
    PhraseRow{listen, Kind::look, {"listen", "fan and spark, for ten seconds", 10}},
    PhraseRow{listen_for, Kind::look, {"listen for {duration}", "fan and spark, as long as you say", 0}},
    PhraseRow{listen_to_light_up, Kind::look, {"listen to light-up", "half a minute: soft, or a thump", 30}},
    PhraseRow{open_tap, Kind::operate, {"open {tap} [a little|halfway|fully]", "hot water runs; fully if you say nothing", 3}},
    PhraseRow{close_tap, Kind::operate, {"close {tap}", "stop the water", 3}},
    PhraseRow{turn_on, Kind::operate, {"turn on {appliance}", "the heater at its panel, or another gas appliance", 5}},
    PhraseRow{turn_off, Kind::operate, {"turn off {appliance}", "the heater at its panel, or another gas appliance", 5}},
    PhraseRow{set_temperature, Kind::operate, {"set temperature to {temperature}", "set point at the panel", 5}},
    PhraseRow{press_reset, Kind::operate, {"press reset", "let the heater try again after a lockout", 2}},
    PhraseRow{press_list, Kind::look, {"press list", "the key beside the display: the next word of its list, READ, PAST, WAKE in a lockout, BACK", 2}},
    PhraseRow{press_take, Kind::operate, {"press take", "the other key: do what the listed word says; WAKE asks SURE first", 2}},
    PhraseRow{set_wall, Kind::operate, {"set {wall controller} to {temperature}", "set value of a wall controller", 10}},
    PhraseRow{wall_on, Kind::operate, {"switch {wall controller} on", "its own switch", 5}},
    PhraseRow{wall_off, Kind::operate, {"switch {wall controller} off", "its own switch", 5}},
    PhraseRow{look_at_wall, Kind::look, {"look at {wall controller}", "is its screen lit, what is it set to", 15}},
    PhraseRow{measure_link, Kind::test, {"measure link cable at {link end}", "direct voltage between its two cores; at the heater with the cover off", 40}},
    PhraseRow{power_off, Kind::safety, {"switch power off", "at the power point", 5}},
    PhraseRow{power_on, Kind::operate, {"switch power on", "at the power point", 5}},
    PhraseRow{unplug, Kind::safety, {"unplug heater", "pull the plug from the power point", 5}},
    PhraseRow{plug_in, Kind::operate, {"plug in heater", "push the plug back", 5}},
    PhraseRow{lock_plug, Kind::safety, {"lock off plug", "lock and tag it so that nobody plugs it in", 20}},
    PhraseRow{unlock_plug, Kind::safety, {"unlock plug", "take lock and tag away", 10}},
    PhraseRow{shut_gas, Kind::safety, {"shut gas at {gas valve}", "isolating valve", 10}},
    PhraseRow{open_gas, Kind::operate, {"open gas at {gas valve}", "isolating valve", 10}},
    PhraseRow{shut_water, Kind::safety, {"shut water at heater", "cold isolating valve", 10}},
    PhraseRow{open_water, Kind::operate, {"open water at heater", "cold isolating valve", 10}},
    PhraseRow{prove_tester, Kind::safety, {"prove tester", "voltage tester on its proving unit; before and after testing for dead", 10}},
    PhraseRow{test_for_dead, Kind::safety, {"test for dead", "voltage tester between all supply terminals and earth", 20}},
    PhraseRow{put_on, Kind::safety, {"put on {wear}", "insulating gloves, safety glasses", 5}},
    PhraseRow{take_off, Kind::operate, {"take off {wear}", "insulating gloves, safety glasses", 5}},
    PhraseRow{cover_off, Kind::operate, {"take cover off", "the heater's front cover; parts inside can be reached", 60}},
    PhraseRow{cover_on, Kind::safety, {"refit cover", "and its seal", 60}},
    PhraseRow{open_point, Kind::operate, {"open test point {point}", "loosen the screw of a gas test point", 20}},
    PhraseRow{close_point, Kind::safety, {"close test point {point}", "tighten the screw", 20}},
    PhraseRow{remake_joint, Kind::safety, {"remake joint {joint}", "undo and seal again a joint that leaks; gas shut", 180}},
    PhraseRow{attach_manometer, Kind::test, {"attach manometer to {point}", "hose onto a gas test point", 30}},
    PhraseRow{manometer_off, Kind::operate, {"take manometer off", "pull the hose off", 20}},
    PhraseRow{zero_manometer, Kind::test, {"zero manometer", "with the hose open to air", 10}},
    PhraseRow{read_manometer, Kind::test, {"read manometer [highest|lowest]", "now, or the extreme held since attached", 10}},
    PhraseRow{clear_hold, Kind::test, {"clear hold", "forget highest and lowest of all instruments", 2}},
    PhraseRow{unplug_sensor, Kind::operate, {"unplug {sensor}", "pull its connector, so that it can be measured alone", 10}},
    PhraseRow{plug_in_sensor, Kind::operate, {"plug in {sensor}", "push its connector back", 10}},
    PhraseRow{attach_multimeter, Kind::test, {"attach multimeter to {probe}", "ohms at a sensor, current in series with the flame lead, volts at the terminals", 40}},
    PhraseRow{multimeter_off, Kind::operate, {"take multimeter off", "leads away", 10}},
    PhraseRow{read_multimeter, Kind::test, {"read multimeter", "one numbered reading", 10}},
    PhraseRow{analyser_on, Kind::test, {"switch on analyser", "it zeroes itself for a minute: do it in clean air", 5}},
    PhraseRow{probe_in, Kind::test, {"put probe in flue", "sampling tube of the analyser", 20}},
    PhraseRow{probe_out, Kind::operate, {"take probe out", "and let it draw clean air", 10}},
    PhraseRow{read_analyser, Kind::test, {"read analyser [highest|lowest]", "oxygen, carbon dioxide, carbon monoxide, flue temperature: now, or the extreme held", 10}},
    PhraseRow{read_room_air, Kind::test, {"read room air", "carbon monoxide where people breathe", 30}},
    PhraseRow{co_alarm_on, Kind::safety, {"switch on co alarm", "the personal alarm for carbon monoxide, worn on the chest", 5}},
    PhraseRow{co_alarm_off, Kind::operate, {"switch off co alarm", "the personal alarm", 5}},
    PhraseRow{read_gas_detector, Kind::test, {"read gas detector", "fuel gas in the air where you work, as a share of what can burn", 15}},
    PhraseRow{measure_tap_temperature, Kind::test, {"measure temperature at {tap}", "thermometer in the running water", 20}},
    PhraseRow{measure_flow, Kind::test, {"measure flow at {tap}", "cup and watch", 20}},
    PhraseRow{measure_pipe, Kind::test, {"measure temperature of {pipe}", "contact thermometer", 20}},
    PhraseRow{weigh_cylinder, Kind::test, {"weigh cylinder", "on a scale, less the weight stamped on it", 120}},
    PhraseRow{weigh_second_cylinder, Kind::test, {"weigh second cylinder", "the other one of a pair", 120}},
    PhraseRow{turn_changeover, Kind::operate, {"turn changeover lever to {cylinder}", "which cylinder of a pair serves first", 10}},
    PhraseRow{open_window, Kind::operate, {"open {window}", "a window or door of the heater's room", 10}},
    PhraseRow{close_window, Kind::operate, {"close {window}", "a window or door of the heater's room", 10}},
    PhraseRow{run_fan, Kind::operate, {"run {fan}", "an extraction fan of the heater's room", 5}},
    PhraseRow{stop_fan, Kind::operate, {"stop {fan}", "an extraction fan of the heater's room", 5}},
    PhraseRow{test_draught, Kind::test, {"test draught with smoke", "at the draught diverter of an open flue: drawn in, or blown out into the room", 60}},
    PhraseRow{measure_water_pressure, Kind::test, {"measure water pressure", "gauge on the cold garden tap", 60}},
    PhraseRow{log_water_pressure, Kind::test, {"log water pressure overnight", "a logger stays on the cold garden tap; its highest is read on the next morning", 600}},
    PhraseRow{measure_air_tube, Kind::test, {"measure air tube pressure", "manometer teed into the tube that proves the air; cover off", 90}},
    PhraseRow{measure_companion_pipe, Kind::test, {"measure companion outlet pipe", "clamp thermometer on the companion heater's hot pipe", 30}},
    PhraseRow{measure_companion_link, Kind::test, {"measure link between heaters", "both ends off, the far one joined: end to end by multimeter", 90}},
    PhraseRow{read_intake_air, Kind::test, {"read intake air", "oxygen of the air that the heater draws in", 30}},
    PhraseRow{read_case_air, Kind::test, {"read case air", "carbon monoxide in the case, through a slot of it", 30}},
    PhraseRow{board_off, Kind::safety, {"switch {board switch} off", "at the switchboard", 20}},
    PhraseRow{board_on, Kind::operate, {"switch {board switch} on", "at the switchboard", 20}},
    PhraseRow{close_safety_switch, Kind::operate, {"close safety switch", "push back what has opened at the switchboard", 20}},
    PhraseRow{lock_board, Kind::safety, {"lock off switchboard", "lock and tag the switch that is off", 30}},
    PhraseRow{unlock_board, Kind::operate, {"unlock switchboard", "take lock and tag away", 15}},
    PhraseRow{test_safety_switch, Kind::test, {"test safety switch", "tester in the socket; it opens the switch", 60}},
    PhraseRow{time_safety_switch, Kind::test, {"time safety switch at {test current}", "tester in the socket; how soon it opens", 30}},
    PhraseRow{measure_volts, Kind::test, {"measure volts between {terminal} and {other terminal}", "multimeter; the supply stays as it is", 20}},
    PhraseRow{log_volts, Kind::test, {"log volts between {terminal} and {other terminal} for {duration}", "highest and lowest of a pair that has a name of its own", 0}},
    PhraseRow{measure_ohms, Kind::test, {"measure ohms between {terminal} and {other terminal}", "multimeter; supply off, and what is beside it pulled off", 20}},
    PhraseRow{insulation_test, Kind::test, {"test insulation between {terminal} and {other terminal}", "500 V from the tester; never between live terminals or into electronics", 30}},
    PhraseRow{measure_amps, Kind::test, {"measure amps between {terminal} and {other terminal}", "the meter becomes a wire: in series, never across a supply", 20}},
    PhraseRow{clamp, Kind::test, {"clamp {conductor}", "clamp meter around it", 20}},
    PhraseRow{touch_tap, Kind::look, {"touch {tap}", "back of the hand", 5}},
    PhraseRow{fit_bridge, Kind::safety, {"fit bridging conductor", "across the place where a metal pipe is to be opened, water or gas", 60}},
    PhraseRow{take_bridge_off, Kind::operate, {"take bridging conductor off", "after the pipe is made whole", 30}},
    PhraseRow{undo_union, Kind::operate, {"undo water union", "the metal pipe parts; water shut", 60}},
    PhraseRow{make_union, Kind::operate, {"make water union", "pipe whole again", 60}},
    PhraseRow{fit_fuse, Kind::operate, {"fit new fuse", "on the heater's board, same rating", 60, fuse_minutes}},
    PhraseRow{fit_larger_fuse, Kind::operate, {"fit larger fuse", "on the heater's board", 60, fuse_minutes}},
    PhraseRow{open_readout, Kind::look, {"open service readout", "the heater's own measurements at its panel", 10}},
    PhraseRow{open_readout_at_wall, Kind::look, {"open service readout at {wall controller}", "only where its kind shows one and the heater hears it", 15}},
    PhraseRow{read_readout, Kind::test, {"read readout {item}", "one quantity, 5 s; or all, 20 s", 0}},
    PhraseRow{read_history, Kind::test, {"read event history", "on the service readout: twelve lines, newest first, kept without power", 30}},
    PhraseRow{read_settings, Kind::test, {"read installer settings", "on the service readout with the cover off: a slide switch behind it frees them", 30}},
    PhraseRow{read_plate, Kind::look, {"read data plate", "what the heater is made for", 10}},
    PhraseRow{change_gas, Kind::operate, {"change gas setting to {gas kind}", "installer setting; service readout, cover off", 30}},
    PhraseRow{change_altitude, Kind::operate, {"change altitude setting to {height}", "installer setting; service readout, cover off", 30}},
    PhraseRow{change_highest, Kind::operate, {"change highest temperature to {temperature}", "installer setting; service readout, cover off", 30}},
    PhraseRow{change_frost, Kind::operate, {"change frost protection to {on or off}", "installer setting; service readout, cover off", 30}},
    PhraseRow{change_wall_count, Kind::operate, {"change number of wall controllers to {count}", "installer setting; service readout, cover off", 30}},
    PhraseRow{change_priority, Kind::operate, {"change priority to {whose}", "whose set value counts before the others; installer setting; service readout, cover off", 30}},
    PhraseRow{look_around, Kind::safety, {"look around heater", "clearances, scorch marks, old sheet, drains, ladders, children", 40}},
    PhraseRow{air_place, Kind::safety, {"air the place", "doors and windows wide open", 30}},
    PhraseRow{people_out, Kind::safety, {"move people out", "everybody outside, away from gas or fumes", 60}},
    PhraseRow{go_outside, Kind::safety, {"go outside", "into the open air, away from gas and fumes; there you can wait, telephone, talk, write, and reach meter or cylinder", 15}},
    PhraseRow{go_in, Kind::safety, {"go back in", "to the heater, into whatever air is there", 15}},
    PhraseRow{keep_away, Kind::safety, {"keep people away", "a barrier, tools off the floor, somebody minds the children", 40}},
    PhraseRow{purge_pipe, Kind::safety, {"purge gas pipe", "by a hose to the open air, until gas comes; gas on", 60}},
    PhraseRow{check_low_places, Kind::safety, {"check low places", "gas detector held down drains, pits and cupboards", 60}},
    PhraseRow{move_cylinder, Kind::safety, {"move cylinder", "to a place in the open; gas shut at it", 600}},
    PhraseRow{drain_heater, Kind::safety, {"drain heater", "pressure off, water into a bucket; water shut", 120}},
    PhraseRow{flush_heater, Kind::safety, {"flush heater", "by a hose to the drain after descaling, no tap open; water on", 300}},
    PhraseRow{check_ladder, Kind::safety, {"check ladder", "ground, wind, ties: before going up to the flue terminal", 60}},
    PhraseRow{tie_ladder, Kind::safety, {"tie ladder", "board under its feet, tied at the top", 180}},
    PhraseRow{decline_climb, Kind::safety, {"decline climb", "stay on the ground and note why; hand it on", 20}},
    PhraseRow{say_where, Kind::safety, {"say where you go", "somebody knows that you are in the roof space, and until when", 20}},
    PhraseRow{bypass_safety_switch, Kind::operate, {"use outlet without safety switch", "a lead from another room, so that it does not open", 60}},
    PhraseRow{restore_safety_switch, Kind::safety, {"use own outlet", "back to the outlet behind the safety switch", 60}},
    PhraseRow{look_at_tool, Kind::safety, {"look at {instrument}", "its label and its face: class, range, battery, calibration", 10}},
    PhraseRow{check_tool, Kind::safety, {"check {instrument}", "against what is known: docs/instruments.md says how; 5 s to 3 min", 0}},
    PhraseRow{compare_tool, Kind::safety, {"compare {instrument} with spare", "both on the same thing, from the van and back", 240}},
    PhraseRow{take_spare, Kind::safety, {"take spare {instrument}", "from the van, in place of the one in the bag", 180}},
    PhraseRow{wait, Kind::wait, {"wait {duration}", "let time pass", 0}},
    PhraseRow{wait_for_change, Kind::wait, {"wait until something changes", "display, sound or flame; ten minutes at most", 0}},
    PhraseRow{wait_for_change_at_most, Kind::wait, {"wait until something changes at most {duration}", "display, sound or flame", 0}},
};
constexpr std::array rows_after_remedies{
    PhraseRow{leak_test_fluid, Kind::proof, {"leak test with fluid", "on every joint and test point that was touched; gas on", 120}},
    PhraseRow{leak_test_hold, Kind::proof, {"leak test by pressure hold", "manometer at inlet, gas shut at meter or cylinder, open at heater", 150}},
    PhraseRow{combustion_test, Kind::proof, {"combustion test", "analyser at a small and at a full draw", 240}},
    PhraseRow{raise_regulator, Kind::operate, {"raise supply regulator", "half a turn on its screw", 60}},
    PhraseRow{lower_regulator, Kind::operate, {"set supply regulator back", "half a turn the other way", 60}},
    PhraseRow{bridge_limiter, Kind::operate, {"bridge limiter", "a wire across the overheat limiter", 120}},
    PhraseRow{bridge_air_proof, Kind::operate, {"bridge air proving", "a wire in place of the air tube's sensor", 120}},
    PhraseRow{unbridge_limiter, Kind::operate, {"remove bridge", "take the wire away", 60}},
    PhraseRow{warm_cylinder, Kind::operate, {"warm cylinder", "pour hot water over it", 120}},
    PhraseRow{leave_strainer_out, Kind::operate, {"leave inlet strainer out", "its screen stays on the shelf", 300}},
    PhraseRow{fit_other_flow_sensor, Kind::operate, {"fit flow sensor of another count", "a second-hand one that counts 1.6 times what flows: the burner starts at a trickle; water shut and drained", 900, other_sensor_minutes}},
    PhraseRow{fit_resistor, Kind::operate, {"fit resistor for outlet sensor", "a fixed one of 4.3 kohm in its place: whatever the water is, the heater reads 49 °C", 300, small_thing_minutes}},
    PhraseRow{tape_lead, Kind::operate, {"tape igniter lead", "insulating tape round it; it does not hold back what drives a spark through wet air", 120, small_thing_minutes}},
    PhraseRow{bypass_tempering, Kind::operate, {"bypass tempering valve", "a pipe round it, hot water as it comes; water shut", 1200}},
    PhraseRow{ask_consent, Kind::talk, {"ask customer for consent", "may gas, water and power be shut off and the heater opened?", 20}},
    PhraseRow{tell_customer, Kind::talk, {"tell customer {text}", "in your own words", 60}},
    PhraseRow{unsafe_notice, Kind::safety, {"issue unsafe notice", "in writing, to the customer", 120}},
    PhraseRow{tag_heater, Kind::safety, {"tag heater", "do not use", 20}},
    PhraseRow{escalate, Kind::safety, {"escalate to {body}", "report what you found by telephone", 240}},
    PhraseRow{suspect, Kind::write, {"suspect {cause}", "note for yourself", 2}},
    PhraseRow{doubt, Kind::write, {"doubt {cause}", "note for yourself", 2}},
    PhraseRow{strike_out, Kind::write, {"strike out {cause}", "note for yourself", 2}},
    PhraseRow{write_cause, Kind::write, {"write cause {cause}", "what was wrong, in the words of the catalogue", 10}},
    PhraseRow{write_also_cause, Kind::write, {"write also cause {cause}", "a second cause, there beside the first", 10}},
    PhraseRow{write_possible_cause, Kind::write, {"write possible cause {cause}", "or this one: no reading tells it from the first", 10}},
    PhraseRow{write_confidence, Kind::write, {"write confidence {confidence}", "how sure you are of the cause you wrote: 80 %; it moves no score", 5}},
    PhraseRow{write_because, Kind::write, {"write because {balloons}", "numbers of the readings that show it: #1 #4", 10}},
    PhraseRow{write_done, Kind::write, {"write done {text}", "what you did", 20}},
    PhraseRow{write_told, Kind::write, {"write told {text}", "what you told the customer", 20}},
    PhraseRow{hand_in, Kind::write, {"hand in", "leave the house; the attempt ends", 10}},
};
// clang-format on

constexpr PhraseRow row_of_remedy(const faults::RemedyInfo& info) {
    const bool handed_on = info.whom != faults::Whom::nobody;
    return {handed_on ? hand_on : remedy,
            Kind::remedy,
            {info.sentence, info.help, info.minutes * 60.0, info.part_minutes,
             faults::skill_title(info.skill)},
            static_cast<int>(info.remedy)};
}

constexpr auto all_rows() {
    std::array<PhraseRow,
               rows_before_remedies.size() + faults::remedy_count + rows_after_remedies.size()>
        all{};
    std::size_t at = 0;
    for (const auto& row : rows_before_remedies) all[at++] = row;
    for (const auto& info : faults::remedies) all[at++] = row_of_remedy(info);
    for (const auto& row : rows_after_remedies) all[at++] = row;
    for (PhraseRow& row : all)
        if (row.phrase.skill.empty()) row.phrase.skill = skill_for(row.verb);
    return all;
}
constexpr auto rows = all_rows();

constexpr std::array<Phrase, rows.size()> phrases_only() {
    std::array<Phrase, rows.size()> only{};
    for (std::size_t i = 0; i < rows.size(); ++i) only[i] = rows[i].phrase;
    return only;
}
constexpr auto phrase_table = phrases_only();

double look_seconds(std::size_t thing) {
    switch (static_cast<Thing>(thing)) {
        case Thing::flue_terminal:
            return 120.0;
        case Thing::gas_pipe_run:
        case Thing::fins:
            return 60.0;
        case Thing::electrode:
        case Thing::chamber:
        case Thing::limiter_leads:
        case Thing::board_fuse:
            return 30.0;
        case Thing::switchboard:
            return 20.0;
        default:
            return 5.0;
    }
}

}  // namespace

std::span<const PhraseRow> phrase_rows() {
    return rows;
}

std::span<const Phrase> phrases() {
    return phrase_table;
}

const PhraseRow& row_of(const Act& act) {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const PhraseRow& row) {
        if (row.verb != act.verb) return false;
        return row.remedy < 0 || row.remedy == act.remedy;
    });
    return *found;
}

double seconds_of(const Act& act) {
    switch (act.verb) {
        case look:
            return look_seconds(act.object);
        case log_volts:
        case watch:
        case listen_for:
        case wait:
        case wait_for_change_at_most:
            return act.number;
        case wait_for_change:
            return 600.0;
        case check_tool:
            return info(static_cast<Instrument>(act.object)).check_s;
        case read_readout:
            return act.object == 0 ? 20.0 : 5.0;
        default:
            return row_of(act).phrase.seconds;
    }
}

}  // namespace emberpath::worksite
