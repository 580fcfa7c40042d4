// The switchboard, bridging a pipe, the board's fuse: what people do to the electrical supply.

#include <algorithm>
#include <array>

#include "sim/exposure/shock.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/electrical_quantities.hpp"

namespace emberpath::worksite {

namespace {

using T = plant::Terminal;

/// Across the gap, and through a body that is all there is between the halves.
struct Gap {
    double volts;
    plant::Touch body;
};

/// The water pipe parts from its main, the heater from the gas pipe.
Gap across(const Workplace& w, Parted pipe) {
    const bool water = pipe == Parted::water;
    const HeaterView view = w.look();
    auto wiring = plant::wiring_of(view.parameters, view.plant, w.inputs().surroundings);
    if (water) wiring.situation.water_pipe_open = 1.0;
    const T house = water ? T::water_pipe : T::casing, other = water ? T::water_main : T::gas_pipe;
    const double volts = plant::volts_between(wiring, house, other, plant::multimeter_input_ohm);
    const double body_ohm = exposure::body_impedance_ohm(std::max(volts, 1.0), 0.5);
    return {volts, plant::touch(wiring, house, other, body_ohm)};
}

bool& board_switch(Services& s, std::size_t which) {
    if (which == 0) return s.main_switch_on;
    return which == 1 ? s.breaker_on : s.second_source_on;
}

std::string board_can_be_switched(const Workplace& w, const Act& act) {
    const bool second = act.object == 2;
    if (second && w.job.healthy.electrical.second_source < 0.5)
        return "There is no second supply here.";
    const bool on = act.verb == Verb::board_on;
    return on && w.services.board_locked ? "The switchboard is locked off; unlock it first." : "";
}

void switch_board(Workplace& w, const Act& act) {
    board_switch(w.services, act.object) = act.verb == Verb::board_on;
    w.person.proof = Person::Proof::none;
    w.changed();
}

std::string board_is_unlocked(const Workplace& w, const Act&) {
    return w.services.board_locked ? "The switchboard is locked off; unlock it first." : "";
}

/// Somebody walks to the switchboard and sees what there is to push back.
void close_safety_switch(Workplace& w, const Act& act) {
    const auto opened = [&w] {
        const auto& latches = w.look().plant.electrical_latches;
        return latches.safety_switch_tripped > 0.5 || latches.breaker_tripped > 0.5;
    };
    const bool was_open = opened();
    if (was_open) {
        ++w.services.safety_switch_closings;
        w.person.proof = Person::Proof::none;
        w.changed();
    }
    w.pass(seconds_of(act));
    w.say(!was_open ? "Nothing has opened." : opened() ? "It opens again at once." : "It holds.");
}

std::string board_is_off(const Workplace& w, const Act&) {
    const bool off = !w.services.main_switch_on || !w.services.breaker_on;
    return off ? "" : "Nothing at the switchboard is off.";
}

void lock_board(Workplace& w, const Act& act) {
    w.services.board_locked = act.verb == Verb::lock_board;
}

std::string bridge_can_move(const Workplace& w, const Act& act) {
    const bool fit = act.verb == Verb::fit_bridge;
    if (fit && w.services.bridge_fitted) return "The bridging conductor is on already.";
    return !fit && !w.services.bridge_fitted ? "There is no bridging conductor." : "";
}

void move_bridge(Workplace& w, const Act& act) {
    w.services.bridge_fitted = act.verb == Verb::fit_bridge;
    if (!w.services.bridge_fitted && w.services.water_union_open)
        w.breach("no_bridge", "The bridging conductor came off while the pipe was open.");
    w.changed();
}

std::string union_can_move(const Workplace& w, const Act& act) {
    const bool open = act.verb == Verb::undo_union;
    if (open && w.services.water_union_open) return "The union is undone already.";
    return !open && !w.services.water_union_open ? "The union is made." : "";
}

void move_union(Workplace& w, const Act& act) {
    const bool open = act.verb == Verb::undo_union;
    if (open) part_pipe(w, Parted::water);
    if (w.over()) return;
    w.services.water_union_open = open;
    w.changed();
    if (open && w.services.water_at_heater) run_out_until_shut(w);
}

void fit_fuse(Workplace& w, const Act& act) {
    w.hands_inside("A fuse was changed");
    if (w.over()) return;
    ++w.services.fuses_fitted;
    auto next = w.fabric.alterations;
    next.fuse_oversized = act.verb == Verb::fit_larger_fuse;
    w.set_alterations(next);
    if (next.fuse_oversized)
        w.breach("fuse_oversized", "A larger fuse was put in than the board is made for.");
}

using When = Doing::When;
constexpr std::array table{
    Doing{Verb::board_off, board_can_be_switched, switch_board},
    Doing{Verb::board_on, board_can_be_switched, switch_board},
    Doing{Verb::close_safety_switch, board_is_unlocked, close_safety_switch, When::own},
    Doing{Verb::lock_board, board_is_off, lock_board},
    Doing{Verb::unlock_board, no_obstacle, lock_board},
    Doing{Verb::fit_bridge, bridge_can_move, move_bridge},
    Doing{Verb::take_bridge_off, bridge_can_move, move_bridge},
    Doing{Verb::undo_union, union_can_move, move_union},
    Doing{Verb::make_union, union_can_move, move_union},
    Doing{Verb::fit_fuse, needs_cover_off, fit_fuse},
    Doing{Verb::fit_larger_fuse, needs_cover_off, fit_fuse},
};

}  // namespace

Parted parted_by(faults::Remedy remedy) {
    using faults::Remedy;
    switch (remedy) {
        case Remedy::remake_inlet_union:
        case Remedy::replace_gas_valve:
        case Remedy::clean_gas_screen:
            return Parted::gas;
        case Remedy::fit_pressure_limiter:
        case Remedy::replace_tempering_valve:
            return Parted::water;
        default:
            return Parted::nothing;
    }
}

void part_pipe(Workplace& w, Parted pipe) {
    if (pipe == Parted::nothing || w.services.bridge_fitted) return;
    const Gap gap = across(w, pipe);
    w.breach("no_bridge", std::string("A metal ") + (pipe == Parted::water ? "water" : "gas") +
                              " pipe was opened without a bridging conductor; " +
                              units::fixed(gap.volts, 0) + " V stood across the gap.");
    if (meet_shock(w, gap.body, ShockPath::hand_to_hand, "no_bridge",
                   "The pipe parts and " + units::fixed(gap.body.current_a * 1000.0, 0) +
                       " mA go through you from hand to hand."))
        return;
    const bool felt = exposure::effect_of(gap.body.current_a) != exposure::Effect::nothing_felt;
    if (felt && !w.person.gloves)
        w.say("It tingles from hand to hand: " + milliamperes(gap.body.current_a) + ".");
}

std::span<const Doing> supply_doings() {
    return table;
}

}  // namespace emberpath::worksite
