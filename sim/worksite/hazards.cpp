#include "sim/worksite/hazards.hpp"

#include <algorithm>
#include <array>

#include "sim/worksite/attempt.hpp"

namespace emberpath::worksite {

namespace {

// Weights are chosen: critical where a person was exposed or left exposed.
// clang-format off
constexpr std::array rules_table{
    Rule{"live_work", "shock", "switch off, unplug and lock before a hand goes inside", "a bare hand meets 230 V and the job ends; insulating gloves prevent the shock, not the breach", true, 0.35},
    Rule{"not_proved_dead", "shock", "prove the tester, test for dead, prove the tester again before working inside", "none if it happens to be dead", false, 0.20},
    Rule{"not_locked", "shock", "lock off the plug while working inside", "somebody could have plugged it in", false, 0.08},
    Rule{"cover_off_live", "shock", "unplug before the cover comes off", "live terminals lie open", false, 0.15},
    Rule{"live_test", "shock", "insulating gloves for a measurement that needs the supply on", "without them the leads are held beside live terminals", false, 0.15},
    Rule{"stored_charge", "shock", "wait after the supply is off, and prove at the point of work", "what the board's capacitor still holds goes through the hand, a jolt", false, 0.10},
    Rule{"beyond_scope", "shock", "leave the switchboard to an electrician; measure at the socket and at the heater", "a bare hand meets the incoming bar and the job ends; with gloves, circuits stay that no electrician has proved", true, 0.40},
    Rule{"tested_live", "shock", "prove dead before an insulation test", "500 V meets 230 V; the board is harmed", false, 0.25},
    Rule{"board_harmed", "the heater", "keep the insulation tester off electronics, and water off an open board", "the board is lost: no hot water until it is replaced", false, 0.20},
    Rule{"amps_across_supply", "arc", "current is measured in series, by clamp, never across a supply", "the meter's fuse goes with a flash", false, 0.20},
    Rule{"live_pipe", "shock", "keep off pipes that tingle, keep people off, report it", "a current from hand to floor; above 10 mA the hand does not let go and the job ends", true, 0.35},
    Rule{"no_bridge", "shock", "fit a bridging conductor before a metal pipe is opened, water or gas", "what the pipe carried goes through whoever holds both halves; none if it carried nothing", false, 0.15},
    Rule{"fuse_oversized", "fire", "fit a fuse of the same rating and find what blew it", "the next short heats the lead", true, 0.40},
    Rule{"left_live", "shock", "take the heater out of use and report what stands live to whom it belongs", "casing or pipes stay at a dangerous voltage", true, 0.45},
    Rule{"leakage_left", "shock", "find and cure what leaks to earth, or take the heater out of use", "current goes to earth, and to whoever touches it should the earth be lost", false, 0.20},
    Rule{"not_reported", "whoever comes next", "tell those whose it is to mend or to know: docs/guide.md", "nobody comes who could mend it", false, 0.15},
    Rule{"not_proved", "misplaced trust", "prove a repair by the reading that belongs to it", "none if it happens to be right", false, 0.10},
    Rule{"cover_off_running", "burns and carbon monoxide", "refit the cover before the heater runs, except for a reading that needs it off", "products of combustion leak into the room", false, 0.15},
    Rule{"gas_open", "fire", "shut the gas before a test point or joint is opened", "gas escapes; three litres and a flame or spark nearby make a flash", true, 0.35},
    Rule{"flash", "fire", "shut the gas before a test point or joint is opened", "a flash burns hands and face; the job ends", true, 0.50},
    Rule{"gas_left_open", "fire", "close every test point and make every joint tight", "gas escapes after you have left", true, 0.40},
    Rule{"no_leak_test", "fire", "prove every joint that was opened under pressure", "one joint in eight weeps when it is made; only the test finds it", false, 0.25},
    Rule{"leak_left", "fire", "prove every joint that was opened, remake what leaks, test again", "a weeping joint stays behind", true, 0.40},
    Rule{"no_combustion_test", "carbon monoxide", "prove combustion at a small and at a full draw after work on burner, igniter or flue", "none if it happens to burn well", false, 0.20},
    Rule{"hasty_reset", "delayed ignition", "wait a minute between tries; stop after three", "unburnt gas gathers in the chamber", false, 0.15},
    Rule{"hard_light_up", "burns", "wait a minute between tries; stop after three", "the gathered gas lights with a thump and a flame shoots out", true, 0.30},
    Rule{"hot_parts", "burns", "let it cool or wear gloves", "bare hands on hot metal", false, 0.10},
    Rule{"no_gloves", "cuts", "gloves for work on parts inside", "sharp edges", false, 0.05},
    Rule{"no_glasses", "eyes", "glasses for brushing, clearing and descaling", "soot, debris and acid", false, 0.05},
    Rule{"bridged", "no protection", "never bridge, bypass or mislead what guards: limiter, air proving, start flow, outlet sensor, tempering valve", "the next fault has no guard", true, 0.40},
    Rule{"bridge_left", "no protection", "take off every bridge you find and prove what it was on, or take the heater out of use", "nothing opens when it overheats or gets no air", true, 0.40},
    Rule{"strainer_out", "the heater", "put the rinsed screen back", "what the water carries gets into the flow turbine", false, 0.10},
    Rule{"regulator_raised", "over-pressure", "leave the supply regulator to its owner", "every appliance in the house gets more gas", true, 0.40},
    Rule{"pressure_left", "over-pressure", "where a gas regulator gives too much, shut it where it comes from, tag, tell, report", "every flame behind it gets more gas than it is made for", true, 0.40},
    Rule{"cylinder_warmed", "over-pressure", "never heat a cylinder", "its pressure rises without control", true, 0.40},
    Rule{"out_of_scope", "everybody", "hand on what your licence does not cover: isolate, tag, tell, give notice, call", "none in physics; the work has no authority", true, 0.40},
    Rule{"unsupervised", "everybody", "ask the licensed colleague before you begin", "nobody answers for the work", true, 0.30},
    Rule{"room_co", "carbon monoxide", "leave and air the room before what you breathe adds up to the limits of the rules", "carbon monoxide over time where you breathe", false, 0.20},
    Rule{"co_ceiling", "carbon monoxide", "leave at once; the ceiling of the rules holds for any time", "a tenth of the blood can be taken within the hour", true, 0.40},
    Rule{"co_poisoning", "carbon monoxide", "wear the alarm, leave and air the room", "a fifth of the blood carries carbon monoxide; the job ends", true, 0.50},
    Rule{"burnt", "burns", "gloves, or let it cool", "the touches add up to a burn that blisters", false, 0.25},
    Rule{"no_consent", "the customer", "ask before you shut services or open the heater", "the household stands without, unasked", false, 0.05},
    Rule{"delivery_limit", "scald", "measure at the fixtures people wash at; lower the set point or hand it on", "water hotter than the rules allow at a fixture for washing", false, 0.20},
    Rule{"left_unsafe", "carbon monoxide", "repair, or shut the gas, tag and tell", "flue gas above the limit once you have left and somebody draws water", true, 0.45},
    Rule{"spillage_left", "carbon monoxide", "stop the spillage, or shut the gas, tag and tell", "a twentieth or more of the products enters the room with windows as the household keeps them and every fan on", true, 0.45},
    Rule{"scald_left", "scald", "measure delivery and set it right, or make safe", "water that scalds leaves the tap for ten seconds, hotter than it was set; or it burns a hand in five seconds at a fixture people wash at", true, 0.40},
    Rule{"set_hot", "scald", "lower a set point that scalds", "water as hot as it was set to", false, 0.10},
    Rule{"cover_left_off", "shock and burns", "refit the cover", "live terminals and hot parts lie open", true, 0.30},
    Rule{"tools_left", "fire", "take manometer, multimeter and probe away", "a hose or lead stays on the heater", false, 0.10},
    Rule{"sensor_left_out", "no hot water", "plug every connector back", "the heater stops with a sensor out of range", false, 0.10},
    Rule{"services_off", "no hot water", "turn power, gas and water on again, or tag what stays off", "the household stands without and does not know why", false, 0.10},
    Rule{"not_told", "misuse", "tell the customer what was found and done", "the customer does not know", false, 0.10},
    Rule{"no_record", "no trace", "write cause, reasons, work done and what was told", "the next visit starts from nothing", false, 0.05},
    Rule{"spark_in_gas", "fire", "where it smells of gas, touch no switch and no flame; people out, air the place, shut the gas outside, telephone from there", "a switch sparks in what has gathered; at the lower flammability limit it flashes", true, 0.40},
    Rule{"stayed_in_gas", "fire", "leave air above the limit of the rules, or air the place", "a minute in air with a tenth or more of what can burn; leading people out is not counted", false, 0.20},
    Rule{"people_in_gas", "the people of the house", "move everybody out where it smells of gas on arrival", "they stay in what you came into", false, 0.10},
    Rule{"no_leak_test_before", "a wrong blame", "test for leaks before a gas joint is worked on", "a leak that was there before stays, or is laid to you", false, 0.05},
    Rule{"not_purged", "delayed ignition", "purge the pipe to the open air after it was open", "its air comes before the gas: the light-up fails or is late", false, 0.10},
    Rule{"low_unchecked", "fire", "propane is heavier than air: hold the detector down drains and pits", "what lies there stays unknown", false, 0.15},
    Rule{"low_gas_left", "fire", "stop the leak and air the place until the low places are clear", "a pocket lights when a flame comes near", true, 0.40},
    Rule{"cylinder_left", "over-pressure", "move a cylinder that gets hot, or report it to the gas supplier and tell", "its pressure follows its vapour: more than twice as much in the flue's outlet", true, 0.40},
    Rule{"scorch_left", "fire", "take a heater out of use whose flue browns what is near", "timber keeps getting hot", true, 0.40},
    Rule{"draught_untested", "carbon monoxide", "test the draught of an open flue after work on it: burner on, windows shut, every fan on", "none if it happens to draw", false, 0.10},
    Rule{"off_plate", "carbon monoxide", "set the heater to the gas of its data plate and to the height of the house", "the burner gets the pressure of another gas, or the air of another height", true, 0.40},
    Rule{"water_not_shut", "water damage", "shut the water before its side is opened", "water at mains pressure until somebody shuts it; over an open board, the board is lost", false, 0.20},
    Rule{"not_drained", "water damage", "let the pressure off and drain before the water side is opened", "what stands in it runs out, over an open board too", false, 0.05},
    Rule{"acid_to_taps", "drinking water", "flush by a hose after descaling, before a tap is opened", "acid comes out of the tap and thins as water runs", true, 0.40},
    Rule{"ladder_unchecked", "a fall", "look at ground, wind and ties before going up", "none if it happens to stand", false, 0.15},
    Rule{"fall", "a fall", "tie the ladder on soft ground; stay down in strong wind and hand it on", "you fall by the height of the terminal; the job ends", true, 0.50},
    Rule{"fibres", "dust", "leave old grey sheet alone; call an assessor, tag and tell", "its dust gets into air and clothes", true, 0.40},
    Rule{"roof_space", "heat and shock", "say where you go, main switch off, before the roof space; ten minutes in it, then ten out of it", "live cables, nobody who would look for you; who stays twice as long faints in the heat", false, 0.10},
    Rule{"bystander", "children", "keep people away from an open heater", "after five minutes a child reaches in and touches what is there", false, 0.15},
    Rule{"no_safety_switch", "shock", "keep the heater behind its safety switch; find what opens it", "a leak to earth is not cut off any more", true, 0.40},
    Rule{"not_tested_before_power", "shock", "measure earth path and insulation after work on mains wiring, before power, within the limits of the rules", "what was left loose is energised: a protection opens, or metal stands at a voltage and the hand on it feels it", false, 0.10},
    Rule{"tool_unchecked", "wrong readings", "look at the label before you use an instrument; take the spare when it is past its date", "what it shows may be off; it is when the job says so", false, 0.05},
    Rule{"walked_off", "an unsafe heater", "tag what must not be used and give notice in writing; where the customer refuses, tell who has power over it as well: docs/guide.md", "it was shut, but nothing that is heeded says so", false, 0.15},
};
// clang-format on

}  // namespace

std::span<const Rule> rules() {
    return rules_table;
}

const Rule& rule(std::string_view word) {
    const auto found = std::find_if(rules_table.begin(), rules_table.end(),
                                    [&](const Rule& row) { return row.word == word; });
    return found == rules_table.end() ? rules_table.front() : *found;
}

std::string better_than(const Breach& breach) {
    return breach.better.empty() ? std::string(rule(breach.rule).precaution) : breach.better;
}

}  // namespace emberpath::worksite
