// Cover, proving dead, sensors and multimeter.

#include <algorithm>
#include <array>

#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

constexpr double divider_ohm = 10.0e3;  // of the controller, in parallel with a plugged sensor

std::string cover_is_on(const Workplace& w, const Act&) {
    return w.fabric.cover_on ? "" : "The cover is off already.";
}

void take_cover_off(Workplace& w, const Act&) {
    w.fabric.cover_on = false;
    if (w.terminals_live())
        w.breach("cover_off_live", "The cover came off with the heater still plugged in and on.");
}

void refit_cover(Workplace& w, const Act&) {
    w.fabric.cover_on = true;
}

void prove_tester(Workplace& w, const Act&) {
    using Proof = Person::Proof;
    auto& proof = w.person.proof;
    if (tester_is_dark(w)) {
        proof = Proof::none;
        return w.say("The tester stays dark on its proving unit.");
    }
    proof = proof == Proof::found_dead ? Proof::proved_dead : Proof::tester_proved;
    w.say("The tester shows the voltage of its proving unit.");
}

/// The two-pole tester on one pair of supply terminals [V].
double tester_v(const Workplace& w, plant::Terminal a, plant::Terminal b) {
    const HeaterView view = w.look();
    const auto wiring = plant::wiring_of(view.parameters, view.plant, w.inputs().surroundings);
    return plant::volts_between(wiring, a, b, plant::tester_input_ohm);
}

/// Somebody who has isolated and still finds a voltage has found something out.
void note_live_though_isolated(Workplace& w) {
    const auto& s = w.services;
    const bool isolated = !s.live() || !s.main_switch_on || !s.breaker_on;
    if (!isolated) return;
    w.read({Quantity::active_earth_volts});
    w.read({Quantity::neutral_earth_volts});
}

void test_for_dead(Workplace& w, const Act&) {
    using Proof = Person::Proof;
    using plant::Terminal;
    constexpr double dead_below_v = 12.0;
    auto& proof = w.person.proof;
    const std::array volts{tester_v(w, Terminal::heater_active, Terminal::heater_neutral),
                           tester_v(w, Terminal::heater_active, Terminal::heater_earth),
                           tester_v(w, Terminal::heater_neutral, Terminal::heater_earth)};
    if (tester_is_dark(w) || *std::max_element(volts.begin(), volts.end()) < dead_below_v) {
        w.say("The tester shows no voltage on any pair of terminals.");
        if (!tester_is_dark(w) && w.stored_v() >= w.job.practice.limits.stored_charge_v)
            return w.say("Across the board's capacitor it shows " + units::fixed(w.stored_v(), 0) +
                         " V, falling.");
        if (proof == Proof::tester_proved) proof = Proof::found_dead;
        return;
    }
    proof = Proof::none;
    w.say("The tester shows " + units::fixed(volts[0], 0) + " V from active to neutral, " +
          units::fixed(volts[1], 0) + " V from active to earth, " + units::fixed(volts[2], 0) +
          " V from neutral to earth.");
    note_live_though_isolated(w);
}

void move_sensor(Workplace& w, const Act& act) {
    w.hands_inside("A hand on the connectors");
    auto next = w.fabric.alterations;
    next.sensor_unplugged[act.object] = act.verb == Verb::unplug_sensor;
    if (!w.over()) w.set_alterations(next);
}

std::string multimeter_can_go_there(const Workplace& w, const Act& act) {
    if (w.fabric.cover_on) return needs_cover_off(w, act);
    return w.bench.multimeter_at == act.object ? "The multimeter is attached there already." : "";
}

void attach_multimeter(Workplace& w, const Act& act) {
    leave_attached_place(w);
    if (w.over()) return;
    if (act.object != static_cast<std::size_t>(Probe::supply_terminals))
        w.hands_inside("Leads were attached inside");
    else if (w.terminals_live() && !w.person.gloves)
        w.breach("live_test", "Leads went to live terminals without insulating gloves.");
    if (w.over()) return;
    w.bench.multimeter_at = act.object;
    w.set_tools();
}

std::string multimeter_is_on(const Workplace& w, const Act&) {
    return w.bench.multimeter_at ? "" : "The multimeter is not attached.";
}

void multimeter_off(Workplace& w, const Act&) {
    if (*w.bench.multimeter_at != static_cast<std::size_t>(Probe::supply_terminals))
        w.hands_inside("Leads were taken off inside");
    w.bench.multimeter_at.reset();
    w.set_tools();
}

/// A plugged sensor has the controller's divider beside it; with the power on the meter fights its voltage.
double wrong_ohms(const Workplace& w, Quantity quantity) {
    const auto view = w.look_plugged();
    const double alone = value_of(quantity, Hold::now, view, w.senses, w.inputs(), w.setup);
    const double beside = alone * divider_ohm / (alone + divider_ohm);
    return w.terminals_live() ? 0.4 * beside : beside;
}

bool at_a_plugged_sensor(const Workplace& w) {
    const auto sensor = *w.bench.multimeter_at;
    return sensor < w.fabric.alterations.sensor_unplugged.size() &&
           !w.fabric.alterations.sensor_unplugged[sensor];
}

void read_multimeter(Workplace& w, const Act&) {
    const bool at_terminals =
        w.bench.multimeter_at == static_cast<std::size_t>(Probe::supply_terminals);
    if (at_terminals && w.terminals_live() && !w.person.gloves)
        w.breach("live_test", "Leads were held at live terminals without insulating gloves.");
    if (at_a_plugged_sensor(w) && w.terminals_live()) w.say("The figure jumps about.");
    w.read(multimeter_reading(w));
}

constexpr std::array table{
    Doing{Verb::cover_off, cover_is_on, take_cover_off},
    Doing{Verb::cover_on, no_obstacle, refit_cover},
    Doing{Verb::prove_tester, no_obstacle, prove_tester},
    Doing{Verb::test_for_dead, needs_cover_off, test_for_dead},
    Doing{Verb::unplug_sensor, needs_cover_off, move_sensor},
    Doing{Verb::plug_in_sensor, needs_cover_off, move_sensor},
    Doing{Verb::attach_multimeter, multimeter_can_go_there, attach_multimeter},
    Doing{Verb::multimeter_off, multimeter_is_on, multimeter_off},
    Doing{Verb::read_multimeter, multimeter_is_on, read_multimeter},
};

}  // namespace

Workplace::ReadingOf multimeter_reading(const Workplace& w) {
    constexpr std::array at{Quantity::outlet_ohms, Quantity::inlet_ohms, Quantity::exchanger_ohms,
                            Quantity::flame_current, Quantity::terminal_volts};
    Workplace::ReadingOf what{at[*w.bench.multimeter_at]};
    if (what.quantity == Quantity::flame_current && w.bench.meter_fuse_gone) {
        what.trusted = false;  // of the meter, not of the flame
        return what;
    }
    what.trusted = !at_a_plugged_sensor(w);
    if (!what.trusted) what.instead = wrong_ohms(w, what.quantity);
    return what;
}

void leave_attached_place(Workplace& w) {
    if (!w.bench.multimeter_at) return;
    w.say("The multimeter's leads come off where they hung.");
    multimeter_off(w, {});  // within the time of what they are wanted for
}

std::span<const Doing> electrical_doings() {
    return table;
}

}  // namespace emberpath::worksite
