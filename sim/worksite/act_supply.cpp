// The switchboard, bridging a pipe, the board's fuse: what people do to the electrical supply.

#include <array>

#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/electrical_quantities.hpp"

namespace emberpath::worksite {

namespace {

using T = plant::Terminal;

constexpr double dangerous_v = 50.0;

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

double across_union_v(const Workplace& w) {
    const HeaterView view = w.look();
    auto wiring = plant::wiring_of(view.parameters, view.plant, w.inputs().surroundings);
    wiring.situation.water_pipe_open = 1.0;
    return plant::volts_between(wiring, T::water_pipe, T::water_main, plant::multimeter_input_ohm);
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
    if (!open && !w.services.water_union_open) return "The union is made.";
    return open && w.services.water_at_heater ? "Shut the water at the heater first." : "";
}

/// Two halves of a pipe in two hands: the current that the pipe carried now has the body to go through.
void move_union(Workplace& w, const Act& act) {
    const bool open = act.verb == Verb::undo_union;
    const double volts = w.services.bridge_fitted ? 0.0 : across_union_v(w);
    if (open && !w.services.bridge_fitted)
        w.breach("no_bridge", "A metal water pipe was opened without a bridging conductor; " +
                                  units::fixed(volts, 0) + " V stood across the gap.");
    const double body_a = hand_to_hand_a(volts);
    if (volts > dangerous_v && !w.person.gloves)
        return w.end_badly("no_bridge", "The pipe parts and " + units::fixed(body_a * 1000.0, 0) +
                                            " mA go through you from hand to hand.");
    w.services.water_union_open = open;
    w.changed();
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

std::span<const Doing> supply_doings() {
    return table;
}

}  // namespace emberpath::worksite
