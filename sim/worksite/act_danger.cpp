// What a person does about the dangers of a house: gas in the air, air in the pipe, water, acid, ladders, roofs,
// children, outlets without a safety switch. Each can be left out; what follows then is in dangers.cpp.

#include <algorithm>
#include <array>

#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/hazards.hpp"

namespace emberpath::worksite {

namespace {

bool on_cylinder(const Workplace& w) {
    return w.job.site.gas == GasKind::propane_cylinder;
}

void look_around(Workplace& w, const Act&) {
    const Dangers& d = w.job.site.dangers;
    w.precautions.looked_around = true;
    const auto before = w.entry.shown.size();
    if (d.scorched) w.say("The timber beside the flue is browned, a finger's width from it.");
    if (d.old_sheet)
        w.say("The flue goes through old grey sheet, brittle at the edge: it may hold asbestos.");
    if (d.terminal_height_m >= w.job.practice.limits.ladder_height_m)
        w.say("The flue terminal is " + units::fixed(d.terminal_height_m, 1) +
              " m up: a ladder's work.");
    if (d.low_place) w.say("There is a drain in the floor beside the gas.");
    if (d.cylinder_close && !w.precautions.cylinder_moved)
        w.say("The cylinder stands where the flue blows.");
    if (d.pipe_in_roof) w.say("The gas pipe goes up into the roof space.");
    if (d.children) w.say("Children play an arm's length away.");
    if (w.entry.shown.size() == before) w.say("Nothing stands too close to the heater.");
}

void air_place(Workplace& w, const Act&) {
    w.precautions.aired = true;
    std::fill(w.services.window_open.begin(), w.services.window_open.end(), std::uint8_t{1});
    w.changed();
    w.say("Doors and windows stand wide open.");
}

/// Leading people out is leaving, the first time.
void people_out(Workplace& w, const Act& act) {
    if (w.precautions.people_out)
        w.pass(seconds_of(act));
    else
        leave_meanwhile(w, seconds_of(act));
    w.precautions.people_out = true;
    w.say("Everybody waits outside.");
}

std::string stands_inside(const Workplace& w, const Act& act) {
    if (act.verb == Verb::go_outside) return w.person.outside ? "You stand outside already." : "";
    return w.person.outside ? "" : "You are not outside.";
}

void go_outside(Workplace& w, const Act& act) {
    leave_meanwhile(w, seconds_of(act));
    if (w.over()) return;
    w.step_outside();
    w.say("You stand in the open air, away from the heater.");
}

void go_in(Workplace& w, const Act& act) {
    w.come_in();
    w.pass(seconds_of(act));
    if (!w.over()) w.say("You stand at the heater again.");
}

void keep_away(Workplace& w, const Act&) {
    w.precautions.kept_away = true;
    w.say("A barrier stands, tools are off the floor, and somebody minds the children.");
}

std::string gas_stands_open(const Workplace& w, const Act&) {
    return w.services.gas_at_supply && w.services.gas_at_heater ? "" : "Open the gas first.";
}

void purge_pipe(Workplace& w, const Act&) {
    const bool air = w.precautions.air_in_pipe_m3 > 0.0;
    w.precautions.air_in_pipe_m3 = 0.0;
    w.say(air ? "Air comes from the hose outdoors, then gas." : "Gas comes from the hose at once.");
}

void check_low_places(Workplace& w, const Act&) {
    w.precautions.low_checked = true;
    if (!w.job.site.dangers.low_place) return w.say("There is no drain, pit or cupboard below it.");
    const double share = w.shown_of(Quantity::gas_in_air, low_gas_share(w),
                                    w.bench.uses_spare(Instrument::gas_detector));
    w.say("In the drain the detector shows " +
          (over_range(Quantity::gas_in_air, share) ? std::string("over range")
                                                   : burnable_words(share)) +
          ".");
}

std::string cylinder_can_move(const Workplace& w, const Act&) {
    if (!on_cylinder(w)) return "There is no cylinder here.";
    return w.precautions.cylinder_moved ? "It stands well where it is." : "";
}

void move_cylinder(Workplace& w, const Act& act) {
    work_on_joint(w, Joint::cylinder, !w.services.gas_at_supply, seconds_of(act));
    if (w.over()) return;
    w.precautions.cylinder_moved = true;
    w.precautions.air_in_pipe_m3 += air_let_in_m3(faults::Remedy::change_cylinder);
    w.say("It stands in the open, away from flue, drain and window.");
}

std::string water_is_open(const Workplace& w, const Act&) {
    return w.services.water_at_heater ? "" : "Open the water at the heater first.";
}

void drain_heater(Workplace& w, const Act& act) {
    if (w.services.water_at_heater) return drain_under_pressure(w, seconds_of(act));
    w.precautions.drained = true;
    w.say("The pressure is let off and the water runs into a bucket.");
}

void flush_heater(Workplace& w, const Act&) {
    w.precautions.acid_share = 0.0;
    w.say("It runs clear into the drain by a hose; no tap was opened.");
}

void check_ladder(Workplace& w, const Act&) {
    const Dangers& d = w.job.site.dangers;
    w.precautions.ladder_checked = true;
    if (d.terminal_height_m < w.job.practice.limits.ladder_height_m)
        return w.say("Nothing here needs a ladder.");
    w.say(d.soft_ground ? "The ground gives way under its feet." : "The ground is firm.");
    w.say(too_windy_for_ladders(w) ? "The wind pulls at it." : "There is hardly any wind.");
}

void tie_ladder(Workplace& w, const Act&) {
    w.precautions.ladder_tied = true;
    w.say("It stands on a board and is tied at the top.");
}

void decline_climb(Workplace& w, const Act&) {
    w.precautions.declined = true;
    w.say("You stay on the ground and note why.");
}

void say_where(Workplace& w, const Act&) {
    w.precautions.place_told = true;
    w.say("Somebody knows where you are and when to come and look.");
}

void move_outlet(Workplace& w, const Act& act) {
    auto next = w.fabric.alterations;
    next.without_safety_switch = act.verb == Verb::bypass_safety_switch;
    w.set_alterations(next);
    w.person.proof = Person::Proof::none;
    if (next.without_safety_switch)
        w.breach("no_safety_switch",
                 "The heater was fed by a lead from an outlet that has no safety switch.");
}

std::string outlet_can_change(const Workplace& w, const Act& act) {
    const bool there = w.fabric.alterations.without_safety_switch;
    if (act.verb == Verb::restore_safety_switch) return there ? "" : "It is on its own outlet.";
    return there ? "It is on that lead already." : "";
}

using When = Doing::When;
constexpr std::array table{
    Doing{Verb::look_around, no_obstacle, look_around},
    Doing{Verb::air_place, no_obstacle, air_place},
    Doing{Verb::people_out, no_obstacle, people_out, When::own},
    Doing{Verb::go_outside, stands_inside, go_outside, When::own},
    Doing{Verb::go_in, stands_inside, go_in, When::own},
    Doing{Verb::keep_away, no_obstacle, keep_away},
    Doing{Verb::purge_pipe, gas_stands_open, purge_pipe},
    Doing{Verb::check_low_places, no_obstacle, check_low_places},
    Doing{Verb::move_cylinder, cylinder_can_move, move_cylinder, When::own},
    Doing{Verb::drain_heater, no_obstacle, drain_heater},
    Doing{Verb::flush_heater, water_is_open, flush_heater},
    Doing{Verb::check_ladder, no_obstacle, check_ladder},
    Doing{Verb::tie_ladder, no_obstacle, tie_ladder},
    Doing{Verb::decline_climb, no_obstacle, decline_climb},
    Doing{Verb::say_where, no_obstacle, say_where},
    Doing{Verb::bypass_safety_switch, outlet_can_change, move_outlet},
    Doing{Verb::restore_safety_switch, outlet_can_change, move_outlet},
};

}  // namespace

std::span<const Doing> danger_doings() {
    return table;
}

}  // namespace emberpath::worksite
