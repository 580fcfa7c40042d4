#include "sim/worksite/sight.hpp"

#include <algorithm>
#include <cmath>

#include "sim/worksite/doings.hpp"
#include "sim/worksite/outlets.hpp"
#include "sim/worksite/vocabulary.hpp"

namespace emberpath::worksite {

namespace {

void add(std::vector<GlassFigure>& figures, const Workplace& w,
         const std::vector<Workplace::ReadingOf>& readings) {
    for (const auto& what : readings) figures.push_back({what.quantity, w.on_glass(what)});
}

void see_hands(Sight& s, const Workplace& w) {
    const auto& services = w.services;
    s.tap_opening = services.tap_opening;
    s.appliance_on = services.appliance_on;
    s.window_open = services.window_open;
    s.fan_on = services.fan_on;
    s.raining = services.raining;
    s.reserve_first = services.reserve_first;
    s.heater_on = services.heater_on;
    s.switch_on = services.point_switch_on;
    s.plugged_in = services.plugged_in;
    s.plug_locked = services.plug_locked;
    s.gas_at_heater = services.gas_at_heater;
    s.gas_at_supply = services.gas_at_supply;
    s.water_at_heater = services.water_at_heater;
    s.cover_on = w.fabric.cover_on;
    s.tagged = w.fabric.tagged;
    s.point_open = w.fabric.point_open;
    s.sensor_unplugged = w.fabric.alterations.sensor_unplugged;
    s.gloves = w.person.gloves;
    s.glasses = w.person.glasses;
}

void see_tools(Sight& s, const Workplace& w) {
    s.manometer_at = w.bench.manometer_at;
    s.multimeter_at = w.bench.multimeter_at;
    s.analyser_on = w.bench.analyser_on_tick != never;
    s.analyser_warm = analyser_ready(w);
    s.probe_in_flue = w.bench.probe_in_flue;
    s.readout_open = w.bench.readout_open && w.powered();
    s.figures = figures_of(w);
}

}  // namespace

std::vector<GlassFigure> figures_of(const Workplace& w) {
    std::vector<GlassFigure> figures;
    if (w.bench.manometer_at) add(figures, w, {manometer_reading(w, Hold::now)});
    if (w.bench.multimeter_at) add(figures, w, {multimeter_reading(w)});
    if (w.bench.analyser_on_tick != never) add(figures, w, analyser_readings(w));
    if (w.bench.readout_open && w.powered())
        for (const auto item : readout_items()) add(figures, w, {{item}});
    return figures;
}

namespace {

/// The house as it was left; what one wears and what stands outdoors is seen as it is.
Sight sight_from_outside(const Workplace& w) {
    Sight s = *w.seen_inside;
    s.outside = true;
    s.gas_at_supply = w.services.gas_at_supply;
    s.reserve_first = w.services.reserve_first;
    s.raining = w.services.raining;
    s.gloves = w.person.gloves;
    s.glasses = w.person.glasses;
    s.figures.clear();
    s.alarm = false;
    s.condition = "in the open air";
    s.noticed = w.entry.shown;
    return s;
}

}  // namespace

Sight sight_of(const Workplace& w) {
    if (w.person.outside) return sight_from_outside(w);
    Sight s;
    see_hands(s, w);
    see_tools(s, w);
    const HeaterView view = w.look();
    s.panel_lit = w.powered();
    s.display_word = static_cast<std::size_t>(
        value_of(Quantity::display_word, Hold::now, view, w.senses, w.inputs(), w.setup));
    s.set_point_k = w.services.set_point_k;
    s.phase = w.condition().phase;
    for (std::size_t tap = 0; tap < s.tap_opening.size(); ++tap)
        s.water_runs = s.water_runs || water_comes(view.plant, tap);
    s.fan_rev_per_s = std::round(view.plant.fan_rev_per_s * 10.0) / 10.0;  // no ear hears finer
    s.spark_heard = view.plant.spark_heard > 0.5;
    s.flame_share = view.plant.flame_lit;
    s.alarm = w.alarm_sounds();
    s.condition = w.condition_words();
    s.noticed = w.entry.shown;
    return s;
}

}  // namespace emberpath::worksite
