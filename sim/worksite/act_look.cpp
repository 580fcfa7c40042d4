// Asking, looking, watching, listening and waiting.

#include <algorithm>
#include <array>

#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/outlets.hpp"
#include "sim/worksite/vocabulary.hpp"

namespace emberpath::worksite {

namespace {

constexpr std::int64_t stands_ticks = 10;  // a word seen for a second has been read
constexpr std::int64_t run_for_proof_ticks = 600;

std::size_t display_now(const Workplace& w) {
    return static_cast<std::size_t>(
        value_of(Quantity::display_word, Hold::now, w.look(), w.senses, w.inputs(), w.setup));
}
std::size_t fan_now(const Workplace& w) {
    return static_cast<std::size_t>(
        value_of(Quantity::fan_sound, Hold::now, w.look(), w.senses, w.inputs(), w.setup));
}

/// Somebody who sees the display clear after the heater has run for a minute has proved it.
void note_clear_display(Workplace& w) {
    if (w.deeds.running_ticks < run_for_proof_ticks || !w.powered()) return;
    if (controller::readout(w.heater.controller, 0).event == controller::Event::none)
        w.deeds.clear_display = w.tick();
}

void read_display(Workplace& w, double watched_s, std::string note) {
    Workplace::ReadingOf what{Quantity::display_word};
    what.watched_s = watched_s;
    what.note = std::move(note);
    w.read(what);
    note_clear_display(w);
}

void ask(Workplace& w, const Act& act) {
    const auto topic = words_of("topic", w.job)[act.object];
    if (act.object == 0) {
        w.say("\"" + w.job.customer.words + "\"");
        Workplace::ReadingOf what{Quantity::complaint_heard};
        what.numbered = false;
        what.given = true;
        what.instead = static_cast<double>(w.job.customer.complaint);
        w.read(what);
        return;
    }
    const auto answer = w.job.customer.answers.find(topic);
    w.say(answer == w.job.customer.answers.end() ? "\"I could not tell you.\""
                                                 : "\"" + answer->second + "\"");
}

void look_into_window(Workplace& w, double seconds) {
    w.begin_watching(true);
    w.pass(seconds);
    for (const auto quantity : {Quantity::spark, Quantity::flame}) {
        Workplace::ReadingOf what{quantity};
        what.watched_s = seconds;
        w.read(what);
    }
    w.stop_watching();
}

/// The spark's way, in the dark behind the cover, from arm's length.
void look_at_igniter_lead(Workplace& w, double seconds) {
    w.begin_watching(true);
    w.pass(seconds);
    Workplace::ReadingOf what{Quantity::spark_path};
    what.watched_s = seconds;
    w.read(what);
    w.stop_watching();
}

void look_at_room(Workplace& w) {
    const std::string smells = "It smells of gas.";
    const auto& shown = w.entry.shown;  // at the door, or meanwhile
    const bool said = std::find(shown.begin(), shown.end(), smells) != shown.end();
    if (w.escaped_gas_m3 <= 0.3e-3)
        w.say("No smell of gas.");
    else if (!said)
        w.say(smells);
    for (std::size_t i = 0; i < w.services.appliance_on.size(); ++i)
        w.say("The " + w.job.site.appliances[i].name +
              (w.services.appliance_on[i] != 0 ? " is on." : " is off."));
    for (std::size_t i = 0; i < w.services.window_open.size(); ++i)
        w.say("The " + w.job.site.windows[i].name +
              (w.services.window_open[i] != 0 ? " is open." : " is shut."));
    for (std::size_t i = 0; i < w.services.fan_on.size(); ++i)
        w.say("The " + w.job.site.fans[i].name +
              (w.services.fan_on[i] != 0 ? " runs." : " is off."));
    if (w.services.raining) w.say("It rains outside.");
}

void look_at_power_point(Workplace& w) {
    const auto& s = w.services;
    w.say(std::string("The plug is ") +
          (s.plugged_in    ? "in"
           : s.plug_locked ? "locked off"
                           : "out") +
          ", the switch is " + (s.point_switch_on ? "on." : "off."));
}

void look_at_pipe(Workplace& w) {
    std::string text = w.job.site.gas == GasKind::natural_gas
                           ? "It runs from the meter to the heater"
                           : "It runs from the cylinder to the heater";
    for (const auto& appliance : w.job.site.appliances) text += ", past the " + appliance.name;
    w.say(text + ".");
    w.say(std::string("The gas is ") + (w.services.gas_at_supply ? "open" : "shut") +
          (w.job.site.gas == GasKind::natural_gas ? " at the meter" : " at the cylinder") +
          " and " + (w.services.gas_at_heater ? "open" : "shut") + " at the heater.");
}

void look_at_heater(Workplace& w) {
    w.say(std::string("The cover is ") + (w.fabric.cover_on ? "on." : "off."));
    constexpr std::array points{"inlet", "manifold", "regulator"};
    for (std::size_t i = 0; i < points.size(); ++i)
        if (w.fabric.point_open[i]) w.say("The " + std::string(points[i]) + " test point is open.");
    if (w.bench.manometer_at)
        w.say("The manometer hangs at the " + std::string(points[*w.bench.manometer_at]) +
              " test point.");
    if (w.bench.multimeter_at) w.say("The multimeter is attached.");
    if (w.bench.probe_in_flue) w.say("The probe is in the flue.");
    if (w.fabric.tagged) w.say("A tag says: do not use.");
}

void look_at_tap(Workplace& w, std::size_t tap) {
    const double opening = w.services.tap_opening[tap];
    const auto& name = w.job.site.taps[tap].name;
    if (opening <= 0.0) return w.say("The " + name + " is closed.");
    w.say("The " + name + " is open" +
          (opening > 0.9   ? " fully"
           : opening > 0.4 ? " halfway"
                           : " a little") +
          (water_comes(w.look().plant, tap) ? "; water runs." : "; no water runs."));
}

std::string can_be_seen(const Workplace& w, const Act& act) {
    const auto thing = static_cast<Thing>(act.object);
    if (thing == Thing::cylinder && w.job.site.gas != GasKind::propane_cylinder)
        return "There is no cylinder here.";
    if (thing == Thing::changeover && w.job.healthy.reserve_fitted < 0.5)
        return "There is no pair of cylinders here.";
    if (thing == Thing::companion && w.job.settings.companion < 0.5)
        return "There is no companion heater here.";
    if (thing == Thing::fins || thing == Thing::electrode || thing == Thing::board_fuse ||
        thing == Thing::igniter_lead || thing == Thing::casing_floor || thing == Thing::chamber ||
        thing == Thing::limiter_leads)
        return needs_cover_off(w, act);
    return {};
}

void look(Workplace& w, const Act& act) {
    const double seconds = seconds_of(act);
    if (act.object == static_cast<std::size_t>(Thing::burner_window))
        return look_into_window(w, seconds);
    if (act.object == static_cast<std::size_t>(Thing::igniter_lead))
        return look_at_igniter_lead(w, seconds);
    w.pass(seconds);
    if (w.over()) return;
    if (act.object >= static_cast<std::size_t>(Thing::first_tap))
        return look_at_tap(w, act.object - static_cast<std::size_t>(Thing::first_tap));
    switch (static_cast<Thing>(act.object)) {
        case Thing::display:
            return read_display(w, 0.0, {});
        case Thing::flue_terminal:
            return void(w.read({Quantity::flue_terminal}));
        case Thing::cylinder:
            return void(w.read({Quantity::cylinder_frost}));
        case Thing::fins:
            return void(w.read({Quantity::exchanger_fins}));
        case Thing::electrode:
            return void(w.read({Quantity::electrode_tip}));
        case Thing::switchboard:
            return void(w.read({Quantity::switchboard}));
        case Thing::board_fuse:
            return void(w.read({Quantity::board_fuse}));
        case Thing::changeover:
            w.say(std::string("The lever points at the ") +
                  (w.services.reserve_first ? "second" : "first") + " cylinder.");
            return void(w.read({Quantity::changeover_indicator}));
        case Thing::relief_drain:
            return void(w.read({Quantity::relief_drain}));
        case Thing::casing_floor:
            return void(w.read({Quantity::casing_wet}));
        case Thing::gas_valve:
            return void(w.read({Quantity::gas_valve_handle}));
        case Thing::air_intake:
            return void(w.read({Quantity::air_intake}));
        case Thing::chamber:
            return void(w.read({Quantity::chamber_outside}));
        case Thing::limiter_leads:
            return void(w.read({Quantity::limiter_leads}));
        case Thing::companion:
            return void(w.read({Quantity::companion_front}));
        case Thing::room:
            return look_at_room(w);
        case Thing::power_point:
            return look_at_power_point(w);
        case Thing::gas_pipe_run:
            return look_at_pipe(w);
        default:
            return look_at_heater(w);
    }
}

/// Eyes on the display for a while: every word that stands for a second is a reading.
void watch_display(Workplace& w, double seconds) {
    constexpr int most_words = 12;
    const auto begin = w.tick();
    std::size_t word = display_now(w), last_read = controller::display_word_count;
    std::int64_t since = begin;
    int words = 0;
    while (w.tick() < begin + ticks_in(seconds) && !w.over()) {
        w.step();
        const auto now = display_now(w);
        if (now != word) since = w.tick();
        word = now;
        if (word == last_read || w.tick() - since < stands_ticks || words >= most_words) continue;
        last_read = word;
        ++words;
        const double after = static_cast<double>(w.tick() - begin) * tick_s;
        read_display(w, after, "after " + units::fixed(after, 0) + " s");
    }
}

void watch(Workplace& w, const Act& act) {
    if (act.object == 1) return look_into_window(w, act.number);
    if (act.object == 2) return look_at_igniter_lead(w, act.number);
    if (act.object == 3) return watch_analyser(w, act.number);
    w.begin_watching(true);
    watch_display(w, act.number);
    w.stop_watching();
}

std::string can_be_watched(const Workplace& w, const Act& act) {
    if (act.object == 3) return w.bench.analyser_on_tick == never ? "The analyser is off." : "";
    return act.object == 2 ? needs_cover_off(w, act) : std::string();
}

void listen(Workplace& w, const Act& act) {
    const double seconds = seconds_of(act);
    w.begin_watching(false);
    w.pass(seconds);
    Workplace::ReadingOf fan{Quantity::fan_sound, Hold::highest, seconds};
    w.read(fan);
    w.read({Quantity::spark, Hold::now, seconds});
    w.stop_watching();
}

/// The burner lights within the time, or nothing is heard.
void listen_to_light_up(Workplace& w, const Act& act) {
    w.begin_watching(false);
    w.pass(seconds_of(act));
    w.read({Quantity::light_up_sound, Hold::now, seconds_of(act)});
    w.stop_watching();
}

void wait(Workplace& w, const Act& act) {
    w.pass(act.number);
}

void wait_for_change(Workplace& w, const Act& act) {
    const double most_s = seconds_of(act);
    const auto begin = w.tick();
    const auto display = display_now(w), fan = fan_now(w);
    const auto lines = w.entry.shown.size();
    while (w.tick() < begin + ticks_in(most_s) && !w.over()) {
        w.step();
        const bool seen = display_now(w) != display, heard = fan_now(w) != fan;
        if (!seen && !heard && w.entry.shown.size() == lines) continue;
        w.pass(1.0);
        const double after = static_cast<double>(w.tick() - begin) * tick_s;
        const auto note = "after " + units::fixed(after, 0) + " s";
        if (seen) read_display(w, after, note);
        if (heard)
            w.read({Quantity::fan_sound, Hold::now, after, true, 0.0, 0.0, true, false, note});
        return;
    }
    w.say("Nothing changed.");
}

using When = Doing::When;
constexpr std::array table{
    Doing{Verb::ask, no_obstacle, ask},
    Doing{Verb::look, can_be_seen, look, When::own},
    Doing{Verb::watch, can_be_watched, watch, When::own},
    Doing{Verb::listen, no_obstacle, listen, When::own},
    Doing{Verb::listen_for, no_obstacle, listen, When::own},
    Doing{Verb::listen_to_light_up, no_obstacle, listen_to_light_up, When::own},
    Doing{Verb::wait, no_obstacle, wait, When::own},
    Doing{Verb::wait_for_change, no_obstacle, wait_for_change, When::own},
    Doing{Verb::wait_for_change_at_most, no_obstacle, wait_for_change, When::own},
};

}  // namespace

std::span<const Doing> look_doings() {
    return table;
}

}  // namespace emberpath::worksite
