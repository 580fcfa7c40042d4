// Thermometer, cup and watch, scale.

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/worksite/doings.hpp"
#include "sim/worksite/vocabulary.hpp"

namespace emberpath::worksite {

namespace {

constexpr double splash_s = 1.0;  // a full cup runs over the hand that holds it: chosen

std::string tap_runs(const Workplace& w, const Act& act) {
    return w.services.tap_opening[act.object] > 0.0
               ? ""
               : "The " + w.job.site.taps[act.object].name + " is closed.";
}

/// After work on the tempering valve only a tap that it serves tells of the work.
bool tells_of_the_work(const Workplace& w, const Tap& tap) {
    const auto latest = std::find_if(w.log.rbegin(), w.log.rend(), [](const LogEntry& entry) {
        return entry.remedy >= 0 && works_at_once(static_cast<faults::Remedy>(entry.remedy));
    });
    const auto valve = static_cast<int>(faults::Remedy::replace_tempering_valve);
    return tap.tempered || latest == w.log.rend() || latest->remedy != valve;
}

void measure_temperature(Workplace& w, const Act& act) {
    w.measure_share(act.object);
    const double shown = w.read({Quantity::tap_temperature});
    const Tap& tap = w.job.site.taps[act.object];
    if (is_due(w, tap, shown) && w.burner_runs() && tells_of_the_work(w, tap))
        w.deeds.hot_water = w.tick();
}

void measure_flow(Workplace& w, const Act& act) {
    w.measure_share(act.object);
    w.touch_water(
        value_of(Quantity::tap_temperature, Hold::now, w.look(), w.senses, w.inputs(), w.setup),
        splash_s);
    w.read({Quantity::tap_flow});
}

void measure_pipe(Workplace& w, const Act& act) {
    constexpr std::array pipes{Quantity::outlet_pipe_temperature, Quantity::inlet_pipe_temperature,
                               Quantity::exchanger_pipe_temperature};
    w.read({pipes[act.object]});
}

std::string pipe_within_reach(const Workplace& w, const Act& act) {
    return act.object == 2 ? needs_cover_off(w, act) : std::string();
}

std::string cylinder_here(const Workplace& w, const Act&) {
    return w.job.site.gas == GasKind::propane_cylinder ? "" : "There is no cylinder here.";
}

void weigh(Workplace& w, const Act&) {
    w.read({Quantity::cylinder_mass});
}

constexpr std::array table{
    Doing{Verb::measure_tap_temperature, tap_runs, measure_temperature},
    Doing{Verb::measure_flow, tap_runs, measure_flow},
    Doing{Verb::measure_pipe, pipe_within_reach, measure_pipe},
    Doing{Verb::weigh_cylinder, cylinder_here, weigh},
};

}  // namespace

/// Behind a sound tempering valve no more than that lets through.
bool is_due(const Workplace& w, const Tap& tap, double water_k) {
    constexpr double near_k = 2.5;
    const double set_k = w.services.lowest_set_k();
    const double due_k = tap.tempered ? std::min(set_k, w.job.healthy.tempering_set_k) : set_k;
    return std::abs(water_k - due_k) <= near_k;
}

std::span<const Doing> water_doings() {
    return table;
}

}  // namespace emberpath::worksite
