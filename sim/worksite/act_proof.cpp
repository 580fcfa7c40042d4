// Leak tests and the combustion test.

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/hazards.hpp"

namespace emberpath::worksite {

namespace {

constexpr std::array<std::string_view, joint_count> joint_names{
    "inlet test point", "manifold test point", "regulator test point",
    "cylinder joint",   "burner joint",        "inlet union"};
constexpr double held_pipe_m3 = 3.0e-3;  // between meter or cylinder and the heater
constexpr double atmosphere_pa = 101325.0;
constexpr int test_length_s = 120;
constexpr double small_draw = 0.22;

double leak_at(const Workplace& w, std::size_t joint, double pressure_pa) {
    return w.weep_at(static_cast<Joint>(joint)) * std::sqrt(std::max(0.0, pressure_pa) / 2000.0);
}

bool leaks(const Workplace& w, std::size_t joint) {
    const bool open = joint < 3 && w.fabric.point_open[joint] && w.bench.manometer_at != joint;
    return open || w.weep_at(static_cast<Joint>(joint)) > 0.0;
}

std::string bubbles_at(std::size_t joint) {
    return "Bubbles at the " + std::string(joint_names[joint]) + ".";
}

/// Only what stands under pressure can show bubbles, and only that is proved; by fluid that foams.
void fluid_test(Workplace& w, const Act&) {
    const bool foams = leak_fluid_foams(w);
    bool sound = true, any = false;
    for (std::size_t i = 0; foams && i < joint_count; ++i) {
        if (!w.joint_under_pressure(static_cast<Joint>(i))) continue;
        any = true;
        if (leaks(w, i)) {
            sound = false;
            w.say(bubbles_at(i));
        } else {
            w.fabric.joint_unproved[i] = false;
        }
    }
    Workplace::ReadingOf at_union{Quantity::union_bubbles};
    at_union.numbered = false;
    at_union.trusted = foams && w.joint_under_pressure(Joint::inlet_union);
    w.read(at_union);
    if (sound) w.say("No bubbles.");
    w.precautions.tested_first = w.precautions.tested_first || any;
    const auto burner = static_cast<std::size_t>(Joint::manifold);
    if (w.fabric.joint_unproved[burner] && !w.joint_under_pressure(Joint::manifold))
        w.say("The burner joint is not under pressure: it was not tested.");
    if (sound && any) w.deeds.leak_test = w.tick();
}

std::string line_is_ready(const Workplace& w, const Act&) {
    if (w.setup.manometer != Quantity::gas_inlet_pressure)
        return "The manometer must stand at the open inlet test point.";
    if (w.services.gas_at_supply || !w.services.gas_at_heater)
        return "Shut the gas at the supply and leave it open at the heater.";
    return {};
}

/// What the manometer shows of gas held in the line [Pa]; the sentence about the test names it.
double held_as_shown(Workplace& w) {
    auto what = manometer_reading(w, Hold::now);
    what.trusted = false;  // the model has no pipe volume
    what.instead = w.held_line_pa;
    what.numbered = false;
    return w.read(what);
}

/// Pressure lost by a leak in a closed pipe: dp/dt = -p_atm Q / V. It proves what its manometer shows, where that
/// is so.
void hold_test(Workplace& w, const Act& act) {
    w.precautions.tested_first = true;
    const double before = w.held_line_pa;
    const double shown_before = held_as_shown(w);
    double held = before;
    for (int second = 0; second < test_length_s; ++second) {
        double flow = 0.0;
        for (std::size_t i = 0; i < joint_count; ++i)
            if (i != static_cast<std::size_t>(Joint::manifold)) flow += leak_at(w, i, held);
        if (w.fabric.point_open[static_cast<std::size_t>(Point::regulator)]) flow += 1.0e-5;
        held = std::max(0.0, held - atmosphere_pa * flow / held_pipe_m3);
    }
    w.pass(seconds_of(act));
    w.held_line_pa = held;
    const double shown_after = held_as_shown(w);
    w.say("At the start " + units::format_pressure(shown_before) + ", after two minutes " +
          units::format_pressure(shown_after) + ".");
    const Limits& limits = w.job.practice.limits;
    const auto holds = [&limits](double from_pa, double to_pa) {
        return from_pa >= limits.leak_test_from_pa && from_pa - to_pa <= limits.leak_test_drop_pa;
    };
    if (!holds(before, held) || !holds(shown_before, shown_after)) return;
    w.deeds.leak_test = w.tick();
    for (std::size_t i = 0; i < joint_count; ++i)
        if (i != static_cast<std::size_t>(Joint::manifold) &&
            i != static_cast<std::size_t>(Joint::burner) && !(i < 3 && w.fabric.point_open[i]))
            w.fabric.joint_unproved[i] = false;
}

std::string probe_is_in(const Workplace& w, const Act&) {
    if (w.bench.analyser_on_tick == never) return "The analyser is off.";
    if (!w.bench.probe_in_flue) return "The probe is not in the flue.";
    return w.job.site.taps.empty() ? "There is no hot tap." : "";
}

std::size_t largest_tap(const Workplace& w) {
    const auto& taps = w.job.site.taps;
    return static_cast<std::size_t>(
        std::max_element(taps.begin(), taps.end(),
                         [](const Tap& a, const Tap& b) { return a.conductance < b.conductance; }) -
        taps.begin());
}

/// One draw of the test; true when the burner ran and its flue gas is acceptable as read.
bool draw_and_read(Workplace& w, std::size_t tap, double opening, double seconds) {
    std::fill(w.services.tap_opening.begin(), w.services.tap_opening.end(), 0.0);
    w.services.tap_opening[tap] = opening;
    w.changed();
    w.pass(seconds);
    if (w.over()) return false;
    const auto first = w.entry.observations.size();
    read_analyser_now(w);
    const double co2 = w.entry.observations[first + 1].value;
    const double co = w.entry.observations[first + 2].value;
    return w.burner_runs() && co2 > 0.005 && co / co2 < w.job.practice.limits.co_ratio;
}

void combustion_test(Workplace& w, const Act& act) {
    const double each_s = 0.5 * seconds_of(act);
    const auto before = w.services.tap_opening;
    const auto tap = largest_tap(w);
    w.say("A small draw at the " + w.job.site.taps[tap].name + ":");
    const bool low = draw_and_read(w, tap, small_draw, each_s);
    if (!w.over()) w.say("A full draw:");
    const bool high = !w.over() && draw_and_read(w, tap, 1.0, each_s);
    w.services.tap_opening = before;
    w.changed();
    if (low && high && analyser_sound(w)) w.deeds.combustion_test = w.tick();
}

using When = Doing::When;
constexpr std::array table{
    Doing{Verb::leak_test_fluid, no_obstacle, fluid_test},
    Doing{Verb::leak_test_hold, line_is_ready, hold_test, When::own},
    Doing{Verb::combustion_test, probe_is_in, combustion_test, When::own},
};

}  // namespace

bool a_weep_foamed(const Workplace& w) {
    const auto seen = [&w](const std::string& bubbles) {
        return std::any_of(w.log.begin(), w.log.end(), [&](const LogEntry& entry) {
            return std::find(entry.shown.begin(), entry.shown.end(), bubbles) != entry.shown.end();
        });
    };
    for (std::size_t i = 0; i < joint_count; ++i)
        if (w.weep_at(static_cast<Joint>(i)) > 0.0 && seen(bubbles_at(i))) return true;
    return false;
}

std::span<const Doing> proof_doings() {
    return table;
}

}  // namespace emberpath::worksite
