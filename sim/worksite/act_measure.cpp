// Measuring between any two terminals: volts, ohms, insulation, amps; clamp meter and safety-switch tester.
// A wrong hook-up reads what physics makes of it, or harms what it would harm.

#include <array>
#include <cmath>

#include "sim/exposure/shock.hpp"
#include "sim/plant/safety_switch.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/electrical_quantities.hpp"

namespace emberpath::worksite {

namespace {

using plant::Pair;
using T = plant::Terminal;

constexpr double meter_fuse_a = 0.4;
constexpr double ammeter_ohm = 1.0;

Pair pair_of(const Act& act) {
    return {static_cast<T>(act.object), static_cast<T>(act.second)};
}

bool behind_cover(T terminal) {
    return terminal >= T::heater_active && terminal <= T::trace_heating_lead &&
           terminal != T::link_wall_end && terminal != T::link_wall_return;
}
/// Around these a clamp goes only with the switchboard open.
bool in_switchboard(plant::Conductor conductor) {
    using plant::Conductor;
    return conductor == Conductor::street_active || conductor == Conductor::street_neutral ||
           conductor == Conductor::earth_link;
}
bool in_switchboard(T terminal) {
    return terminal >= T::incoming_active && terminal <= T::circuit_neutral &&
           terminal != T::earth_bar;
}

std::string leads_can_go_there(const Workplace& w, const Act& act) {
    const Pair pair = pair_of(act);
    if (pair.a == pair.b) return "Both leads on one terminal show nothing; name two.";
    if (w.fabric.cover_on && (behind_cover(pair.a) || behind_cover(pair.b)))
        return needs_cover_off(w, act);
    return {};
}

plant::Wiring wiring_now(const Workplace& w) {
    const HeaterView view = w.look();
    return plant::wiring_of(view.parameters, view.plant, w.inputs().surroundings);
}

double volts_now(const Workplace& w, const Pair& pair) {
    return plant::volts_between(wiring_now(w), pair.a, pair.b, plant::multimeter_input_ohm);
}

/// Behind its cover the bars stand bare, the incoming one whatever is switched off: a bare hand meets it as it meets
/// the heater's terminals.
void open_switchboard(Workplace& w) {
    w.breach("beyond_scope", "The switchboard was opened; that is an electrician's work.");
    const double volts = volts_now(w, {T::incoming_active, T::earth_bar});
    if (w.person.gloves || volts < w.job.practice.limits.dangerous_v) return;
    const auto touched = plant::touch(wiring_now(w), T::incoming_active, T::earth_bar,
                                      exposure::body_impedance_ohm(volts, 0.5));
    (void)meet_shock(w, touched, ShockPath::hand_to_hand, "beyond_scope",
                     "Your hand meets the incoming bar: " + units::fixed(volts, 0) + " V, " +
                         milliamperes(touched.current_a) +
                         " from hand to hand. You are taken away.");
}

/// Leads go on: what they may meet, and whose the place is. The insulation tester has leads of its own. False: it
/// ended there.
[[nodiscard]] bool put_leads(Workplace& w, const Act& act) {
    const Pair pair = pair_of(act);
    if (act.verb != Verb::insulation_test) leave_attached_place(w);
    if (w.over()) return false;
    w.setup.lead_a = act.object;
    w.setup.lead_b = act.second;
    w.set_tools();
    if (in_switchboard(pair.a) || in_switchboard(pair.b)) open_switchboard(w);
    if (w.over()) return false;
    const bool live = volts_now(w, pair) > w.job.practice.limits.dangerous_v;
    if (live && !w.person.gloves)
        w.breach("live_test", "Leads were held at " + units::fixed(volts_now(w, pair), 0) +
                                  " V without insulating gloves.");
    return true;
}

void take_leads_off(Workplace& w) {
    w.setup.lead_a = w.setup.lead_b = 0;
    w.setup.meter = Quantity::display_word;
    w.set_tools();
}

std::string place_words(const Act& act) {
    return std::string(terminal_name(act.object)) + " to " + std::string(terminal_name(act.second));
}

void measure_volts(Workplace& w, const Act& act) {
    if (!put_leads(w, act)) return;
    Workplace::ReadingOf what{volts_of(pair_of(act))};
    if (what.quantity == Quantity::volts_between) what.note = place_words(act);
    w.read(what);
    take_leads_off(w);
}

/// The meter's log: highest and lowest over a while.
void log_volts(Workplace& w, const Act& act) {
    if (!put_leads(w, act)) return;
    const Quantity quantity = volts_of(pair_of(act));
    if (quantity != Quantity::volts_between) w.setup.meter = quantity;
    w.set_tools();
    w.pass(act.number);
    if (w.over()) return;
    if (quantity == Quantity::volts_between) {
        Workplace::ReadingOf now{quantity};
        now.note = place_words(act);
        w.read(now);
    } else {
        w.read({quantity, Hold::highest});
        w.read({quantity, Hold::lowest});
    }
    take_leads_off(w);
}

/// Ohms and insulation need a dead circuit; on a live one the meter fights its voltage.
void read_resistance(Workplace& w, const Act& act, Quantity quantity) {
    Workplace::ReadingOf what{quantity};
    if (quantity == Quantity::ohms_between) what.note = place_words(act);
    what.trusted = volts_now(w, pair_of(act)) < 1.0;
    if (!what.trusted) {
        w.say("The figure jumps about.");
        const auto wiring = wiring_now(w);
        what.instead = 0.4 * plant::ohms_between(wiring, pair_of(act).a, pair_of(act).b);
        if (what.instead > greatest_ohm(quantity)) what.instead = greatest_ohm(quantity);
    }
    w.read(what);
}

void measure_ohms(Workplace& w, const Act& act) {
    if (!put_leads(w, act)) return;
    const Quantity named = ohms_of(pair_of(act));
    const bool needs_plug = named == Quantity::earth_ohms;
    const bool as_named = !needs_plug || w.services.plugged_in;
    read_resistance(w, act, as_named ? named : Quantity::ohms_between);
    take_leads_off(w);
}

/// 500 V into electronics: between the lines, or into any extra-low-voltage part but its earthed common.
bool harms_board(const Pair& pair) {
    const auto electronic = [](T t) {
        return t >= T::low_voltage_supply && t <= T::link_wall_return &&
               t != T::low_voltage_common && t != T::igniter_lead && t != T::flame_lead;
    };
    const bool lines = (pair.a == T::heater_active && pair.b == T::heater_neutral) ||
                       (pair.b == T::heater_active && pair.a == T::heater_neutral);
    return lines || electronic(pair.a) || electronic(pair.b);
}

void insulation_test(Workplace& w, const Act& act) {
    if (!put_leads(w, act)) return;
    const Pair pair = pair_of(act);
    const bool live = volts_now(w, pair) > w.job.practice.limits.dangerous_v;
    if (live)
        w.breach("tested_live", "An insulation tester went to terminals at " +
                                    units::fixed(volts_now(w, pair), 0) + " V.");
    if (live || harms_board(pair)) {
        w.say("There is a crack from the board, and a smell of burnt resin.");
        lose_board(w,
                   live ? "An insulation tester met the mains, and the board is lost."
                        : "500 V went into electronics, and the board is lost.",
                   live ? "prove dead before an insulation test"
                        : "keep the insulation tester off electronics");
        return take_leads_off(w);
    }
    const bool apart = !w.services.plugged_in || insulation_of(pair) == Quantity::igniter_lead_ohms;
    read_resistance(w, act, apart ? insulation_of(pair) : Quantity::ohms_between);
    take_leads_off(w);
}

/// What an instrument makes of a value that no shadow foretells; the sentence about it names the figure.
std::string as_shown(Workplace& w, Quantity quantity, double value) {
    Workplace::ReadingOf what{quantity};
    what.trusted = false;
    what.instead = value;
    what.numbered = false;
    return text_of(quantity, w.read(what));
}

/// The ammeter is a wire: across a supply its fuse goes; what flows before that is the reading. Behind a fuse that has
/// gone nothing flows any more.
void measure_amps(Workplace& w, const Act& act) {
    if (!put_leads(w, act)) return;
    if (w.bench.meter_fuse_gone) {
        w.say("The meter shows " + as_shown(w, Quantity::meter_current, 0.0) + ".");
        return take_leads_off(w);
    }
    const Pair pair = pair_of(act);
    const plant::AddedBranch meter{pair.a, pair.b, 1.0 / ammeter_ohm};
    const auto solved = plant::solve(wiring_now(w), {&meter, 1});
    const double ac = solved.ac_between(pair.a, pair.b) / ammeter_ohm;
    const double dc = solved.dc_between(pair.a, pair.b) / ammeter_ohm;
    const double most = ac * ac > dc * dc ? ac : dc;
    if (most * most > meter_fuse_a * meter_fuse_a) {
        w.bench.meter_fuse_gone = true;
        w.say("A flash in the meter: its fuse has gone.");
        if (volts_now(w, pair) > w.job.practice.limits.dangerous_v)
            w.breach("amps_across_supply", "The current range was put across " +
                                               units::fixed(volts_now(w, pair), 0) + " V.");
    } else {
        w.say("The meter shows " + as_shown(w, Quantity::meter_current, std::abs(most)) + ".");
    }
    take_leads_off(w);
}

void clamp(Workplace& w, const Act& act) {
    if (in_switchboard(static_cast<plant::Conductor>(act.object))) open_switchboard(w);
    if (w.over()) return;
    w.setup.clamp = act.object;
    w.set_tools();
    const bool whole =
        act.object == static_cast<std::size_t>(plant::Conductor::lead_active_and_neutral);
    Workplace::ReadingOf what{whole ? Quantity::leakage_current : Quantity::clamp_current};
    if (!whole) what.note = std::string(conductor_name(act.object));
    w.read(what);
    w.setup.clamp = plant::conductor_count;
    w.set_tools();
}

std::string socket_is_free(const Workplace& w, const Act&) {
    return w.services.plugged_in ? "The tester needs the socket; pull the heater's plug first."
                                 : "";
}

constexpr double drawn_for_s = 1.0;  // of the time that the act takes, its last

/// The tester is put in; false, and all the time gone, where it finds no supply.
bool socket_lives(Workplace& w, const Act& act) {
    w.pass(seconds_of(act) - drawn_for_s);
    if (volts_now(w, {T::socket_active, T::socket_neutral}) >= w.job.practice.limits.dangerous_v)
        return true;
    w.pass(drawn_for_s);
    w.say("The socket is dead; the tester stays dark.");
    return false;
}

void test_safety_switch(Workplace& w, const Act& act) {
    if (!socket_lives(w, act)) return;
    w.services.safety_switch_tested = true;
    w.read({Quantity::safety_switch_current});
    w.pass(drawn_for_s);
    w.services.safety_switch_tested = false;
    const bool open = w.look().plant.electrical_latches.safety_switch_tripped > 0.5;
    w.say(open ? "The safety switch opens; it has to be closed again." : "It does not open.");
    w.changed();
}

/// One of the three currents that such a tester draws at once, and how soon the rules want it cut.
struct TestCurrent {
    double times_rated;
    double Limits::*within_s;
    std::string_view words;
};
constexpr std::array test_currents{
    TestCurrent{1.0, &Limits::rcd_within_s, "its rated current"},
    TestCurrent{2.0, &Limits::rcd_within_at_two_s, "twice its rated current"},
    TestCurrent{5.0, &Limits::rcd_within_at_five_s, "five times its rated current"},
};

/// How long the house's safety switch takes [s] once the tester draws this current to the socket's earth. The
/// network says what of it the switch sees: without an earth nothing flows.
double break_time_s(const Workplace& w, double test_a, double socket_v) {
    const plant::Wiring wiring = wiring_now(w);
    const plant::AddedBranch tester{T::socket_active, T::socket_earth, test_a / socket_v};
    return plant::safety_switch_break_s(plant::solve(wiring, {&tester, 1}).residual_a,
                                        wiring.parameters.safety_switch_trips_a);
}

void time_safety_switch(Workplace& w, const Act& act) {
    constexpr double lets_go_after_s = 0.5;
    if (!socket_lives(w, act)) return;
    const double volts = volts_now(w, {T::socket_active, T::socket_neutral});
    const Limits& limits = w.job.practice.limits;
    const TestCurrent& test = test_currents.at(act.object);
    const double test_a = test.times_rated * limits.rcd_trips_at_a;
    const double takes_s = break_time_s(w, test_a, volts);
    const bool opens = takes_s < lets_go_after_s;
    w.services.safety_switch_tested = opens;
    w.pass(drawn_for_s);
    w.services.safety_switch_tested = false;
    w.say((opens ? "It opens after " + as_shown(w, Quantity::break_time, takes_s) + " at "
                 : "It does not open within " + units::fixed(1000.0 * lets_go_after_s, 0) +
                       " ms at ") +
          std::string(test.words) + ", " + units::fixed(1000.0 * test_a, 0) + " mA; " +
          units::fixed(1000.0 * (limits.*test.within_s), 0) + " ms is the most.");
    w.changed();
}

constexpr std::array table{
    Doing{Verb::measure_volts, leads_can_go_there, measure_volts},
    Doing{Verb::log_volts, leads_can_go_there, log_volts, Doing::When::own},
    Doing{Verb::measure_ohms, leads_can_go_there, measure_ohms},
    Doing{Verb::insulation_test, leads_can_go_there, insulation_test},
    Doing{Verb::measure_amps, leads_can_go_there, measure_amps},
    Doing{Verb::clamp, no_obstacle, clamp},
    Doing{Verb::test_safety_switch, socket_is_free, test_safety_switch, Doing::When::own},
    Doing{Verb::time_safety_switch, socket_is_free, time_safety_switch, Doing::When::own},
};

}  // namespace

std::span<const Doing> measure_doings() {
    return table;
}

}  // namespace emberpath::worksite
