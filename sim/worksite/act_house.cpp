// Windows, fans, the changeover of a cylinder pair, cold water pressure, air at the heater: what a house offers
// beside its heater.

#include <algorithm>
#include <array>

#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

std::string window_can_move(const Workplace& w, const Act& act) {
    const bool open = act.verb == Verb::open_window;
    if ((w.services.window_open[act.object] != 0) != open) return {};
    return "The " + w.job.site.windows[act.object].name + " is " + (open ? "open" : "shut") +
           " already.";
}

void move_window(Workplace& w, const Act& act) {
    w.services.window_open[act.object] = act.verb == Verb::open_window ? 1 : 0;
    w.changed();
}

std::string fan_can_turn(const Workplace& w, const Act& act) {
    const bool run = act.verb == Verb::run_fan;
    if ((w.services.fan_on[act.object] != 0) != run) return {};
    return "The " + w.job.site.fans[act.object].name + (run ? " runs" : " is off") + " already.";
}

void turn_fan(Workplace& w, const Act& act) {
    w.services.fan_on[act.object] = act.verb == Verb::run_fan ? 1 : 0;
    w.changed();
}

std::string pair_here(const Workplace& w, const Act&) {
    return w.job.healthy.reserve_fitted > 0.5 ? "" : "There is no pair of cylinders here.";
}

void turn_changeover(Workplace& w, const Act& act) {
    w.services.reserve_first = act.object == 1;
    w.changed();
}

void weigh_second(Workplace& w, const Act&) {
    w.read({Quantity::reserve_mass});
}

void measure_water_pressure(Workplace& w, const Act&) {
    w.read({Quantity::water_pressure});
}

/// The night is not played: what its street presses is a property of the house.
void read_overnight(Workplace& w, const Act&) {
    w.say("The logger stays on the cold garden tap; you read it on the next morning.");
    w.read({Quantity::night_water_pressure});
}

std::string analyser_is_on(const Workplace& w, const Act&) {
    return w.bench.analyser_on_tick == never ? "The analyser is off." : "";
}

/// Air that is drawn where people and burner breathe, or out of the case: cells err as they do in the flue.
void read_air(Workplace& w, const Act& act) {
    const bool intake = act.verb == Verb::read_intake_air;
    Workplace::ReadingOf what{intake ? Quantity::intake_o2 : Quantity::case_co};
    what.trusted = analyser_sound(w);
    if (!what.trusted) {
        const auto seen = w.look().plant;
        const double model = intake ? seen.intake_o2_share : seen.casing_co_share;
        what.instead = std::max(0.0, model + cell_shift(w, intake ? 0 : 2));
    }
    w.read(what);
}

std::string has_diverter(const Workplace& w, const Act&) {
    if (w.job.healthy.open_flued < 0.5)
        return "The flue of this heater is not open to the room: there is no diverter.";
    return {};
}

void test_draught(Workplace& w, const Act&) {
    const bool drawn_in = w.read({Quantity::diverter_smoke}) < 0.5;
    const auto& s = w.services;
    const bool worst =
        std::all_of(s.window_open.begin(), s.window_open.end(), [](auto on) { return on == 0; }) &&
        std::all_of(s.fan_on.begin(), s.fan_on.end(), [](auto on) { return on != 0; });
    if (!w.burner_runs() || !worst)
        w.precautions.draught_kindly = true;
    else
        w.precautions.draught_tested = drawn_in ? w.tick() : never;
}

std::string tube_within_reach(const Workplace& w, const Act& act) {
    if (w.job.settings.air_by_tube < 0.5) return "This heater proves its air without a tube.";
    return needs_cover_off(w, act);
}

/// Teed in and watched for a while: what it shows, and whether it stands still.
void measure_air_tube(Workplace& w, const Act&) {
    Workplace::ReadingOf what{Quantity::air_tube_pressure};
    what.shift = w.bench.manometer_offset_pa;
    what.trusted = !w.bench.zeroed_under_pressure;
    if (!what.trusted) what.instead = w.look().plant.air_tube_pa;
    w.read(what);
    w.read({Quantity::air_tube_needle});
}

std::string companion_here(const Workplace& w, const Act&) {
    return w.job.settings.companion > 0.5 ? "" : "There is no companion heater here.";
}

void measure_companion(Workplace& w, const Act& act) {
    w.read({act.verb == Verb::measure_companion_pipe ? Quantity::companion_pipe_temperature
                                                     : Quantity::companion_link_ohms});
}

constexpr std::array table{
    Doing{Verb::open_window, window_can_move, move_window},
    Doing{Verb::close_window, window_can_move, move_window},
    Doing{Verb::run_fan, fan_can_turn, turn_fan},
    Doing{Verb::stop_fan, fan_can_turn, turn_fan},
    Doing{Verb::turn_changeover, pair_here, turn_changeover},
    Doing{Verb::weigh_second_cylinder, pair_here, weigh_second},
    Doing{Verb::measure_water_pressure, no_obstacle, measure_water_pressure},
    Doing{Verb::log_water_pressure, no_obstacle, read_overnight},
    Doing{Verb::read_intake_air, analyser_is_on, read_air},
    Doing{Verb::read_case_air, analyser_is_on, read_air},
    Doing{Verb::test_draught, has_diverter, test_draught},
    Doing{Verb::measure_air_tube, tube_within_reach, measure_air_tube},
    Doing{Verb::measure_companion_pipe, companion_here, measure_companion},
    Doing{Verb::measure_companion_link, companion_here, measure_companion},
};

}  // namespace

std::span<const Doing> house_doings() {
    return table;
}

}  // namespace emberpath::worksite
