// The heater's panel and its list, wall controllers and their link cable, service readout, event history and
// installer settings.

#include <algorithm>
#include <array>

#include "sim/units/counted.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/vocabulary.hpp"

namespace emberpath::worksite {

namespace {

using Listed = Bench::Listed;

constexpr std::int64_t sure_ticks = 300;  // half a minute to confirm a restart

std::string panel_is_lit(const Workplace& w, const Act&) {
    return w.powered() ? "" : "The panel is dark.";
}

// --- the list of words ---

std::string_view word_of(Listed listed) {
    constexpr std::array<std::string_view, 6> words{"", "READ", "PAST", "WAKE", "SURE", "BACK"};
    return words.at(static_cast<std::size_t>(listed));
}

Listed after(Listed listed, bool locked_out) {
    switch (listed) {
        case Listed::nothing:
        case Listed::back:
            return Listed::read;
        case Listed::read:
            return Listed::past;
        case Listed::past:
            return locked_out ? Listed::wake : Listed::back;
        default:
            return Listed::back;
    }
}

bool locked_out(const Workplace& w) {
    return w.look().readout.phase == controller::Phase::lockout;
}

void press_list(Workplace& w, const Act&) {
    w.bench.listed = after(w.bench.listed, locked_out(w));
    w.say("The display shows " + std::string(word_of(w.bench.listed)) + ".");
}

void open_readout(Workplace& w, const Act&) {
    w.bench.readout_open = true;
    w.say("The panel lists the heater's own measurements.");
}

void read_history(Workplace& w, const Act&);

void confirm_restart(Workplace& w) {
    const bool in_time = w.tick() - w.bench.sure_tick <= sure_ticks;
    w.bench.listed = Listed::nothing;
    if (!in_time || !locked_out(w)) return w.say("The display has gone back to its word.");
    w.services.restart_asked = true;
    w.changed();
    w.say("The display goes blank for a moment.");
}

void press_take(Workplace& w, const Act& act) {
    switch (w.bench.listed) {
        case Listed::read:
            w.bench.listed = Listed::nothing;
            return open_readout(w, act);
        case Listed::past:
            w.bench.listed = Listed::nothing;
            w.bench.readout_open = true;
            return read_history(w, act);
        case Listed::wake:
            w.bench.listed = Listed::sure;
            w.bench.sure_tick = w.tick();
            return w.say("The display shows SURE.");
        case Listed::sure:
            return confirm_restart(w);
        default:
            w.bench.listed = Listed::nothing;
            w.say("The display shows its usual word.");
    }
}

void press_reset(Workplace& w, const Act&) {
    constexpr double minute_ticks = 600;
    constexpr int tries_in_a_row = 3;
    auto& p = w.person;
    const bool hasty = p.last_reset_tick != never &&
                       static_cast<double>(w.tick() - p.last_reset_tick) < minute_ticks;
    p.hasty_resets = hasty ? p.hasty_resets + 1 : 0;
    p.last_reset_tick = w.tick();
    if (p.hasty_resets + 1 >= tries_in_a_row)
        w.breach("hasty_reset", "Reset pressed " + std::to_string(p.hasty_resets + 1) +
                                    " times with less than a minute between.");
    if (w.look().readout.restart_needed > 0.5)
        w.say("The word stays; the display blinks WAKE once: this lockout wants a restart.");
    w.services.reset_pressed = true;
    w.changed();
}

// --- service readout, history, settings ---

std::string readout_is_open(const Workplace& w, const Act& act) {
    if (auto dark = panel_is_lit(w, act); !dark.empty()) return dark;
    return w.bench.readout_open ? "" : "The service readout is not open.";
}

}  // namespace

std::string settings_are_free(const Workplace& w, const Act& act) {
    if (auto shut = readout_is_open(w, act); !shut.empty()) return shut;
    return needs_cover_off(w, act);
}

namespace {

void read_readout(Workplace& w, const Act& act) {
    const auto items = readout_items();
    for (std::size_t i = 0; i < items.size(); ++i)
        if (act.object == 0 || act.object == i + 1) w.read({items[i]});
}

std::string age_words(double seconds) {
    if (seconds < 90.0) return units::fixed(seconds, 0) + " s ago";
    return units::fixed(seconds / 60.0, 0) + " min ago";
}

void read_history(Workplace& w, const Act&) {
    const controller::Readout now = w.look().readout;
    for (const controller::HistoryLine& line : now.history) {
        if (line.event == controller::Event::none) break;
        const auto times =
            line.count > 1.5 ? ", " + units::fixed(line.count, 0) + " times in a row" : "";
        w.say(std::string(controller::event_name(line.event)) + times + ", " +
              age_words(line.age_s));
    }
    if (now.history[0].event == controller::Event::none) w.say("The history is empty.");
    w.say("The mains came back " + units::counted(units::fixed(now.power_ups, 0), "time") + ".");
    w.read({Quantity::history_event});
    w.read({Quantity::history_count});
}

std::string number_words(double number) {
    return units::fixed(number, 0);
}

void read_settings(Workplace& w, const Act&) {
    using controller::Setting;
    const controller::Settings now = w.look().settings;
    const auto title = [](Setting setting) {
        return std::string(controller::setting_title(setting)) + ": ";
    };
    w.say(title(Setting::frost_protection) + (now.frost_protection > 0.5 ? "on" : "off"));
    w.say(title(Setting::wall_controllers) + number_words(now.wall_controllers));
    for (const Quantity quantity : {Quantity::setting_gas, Quantity::setting_altitude,
                                    Quantity::setting_highest, Quantity::setting_priority})
        w.read({quantity});
}

void read_plate(Workplace& w, const Act&) {
    const controller::Settings& plate = w.job.settings;
    w.say(std::string("For ") + (plate.plate_gas > 0.5 ? "propane" : "natural gas") + ", " +
          units::fixed(plate.full_heat_input_w * 3.6e-3, 0) + " MJ/h, " +
          units::fixed(plate.full_manifold_pa / 1000.0, 2) + " kPa at the burner.");
    w.say("Set values from " + units::format_temperature(plate.minimum_set_k) + " to " +
          units::format_temperature(plate.maximum_set_k) + ".");
    const double height_m = w.job.site.altitude_m;
    const double step_m = controller::nearest_altitude_step_m(height_m);
    w.say(
        "The house lies at " + units::fixed(height_m, 0) + " m" +
        (step_m == height_m ? "." : ", the nearest setting is " + units::fixed(step_m, 0) + " m."));
}

void store(Workplace& w, controller::Setting setting, double value) {
    const controller::Settings before = w.look().settings;
    Alterations next = w.fabric.alterations;
    next.stored[static_cast<std::size_t>(setting)] = value;
    w.set_alterations(next);
    w.say("Stored.");
    if (moves_the_flame(before, w.look().settings)) w.deeds.flame_work = w.tick();
    // Setting by setting or all in one act: what was stored wrongly is put right.
    const auto wrong = [](const faults::Fault& fault) {
        return faults::info(fault.cause).remedy == faults::Remedy::correct_settings;
    };
    const auto left = w.faults_left();
    if (!std::any_of(left.begin(), left.end(), wrong) || w.look().settings != w.job.settings)
        return;
    w.entry.remedy = static_cast<int>(faults::Remedy::correct_settings);
    w.carry_out(faults::Remedy::correct_settings);
}

/// From the least set value up to what the board can be told at all; a value outside is not taken.
std::string highest_is_offered(const Workplace& w, const Act& act) {
    if (auto shut = settings_are_free(w, act); !shut.empty()) return shut;
    const double least_k = w.job.settings.minimum_set_k;
    const double most_k = controller::greatest_highest_k;
    if (act.number >= least_k - 0.01 && act.number <= most_k + 0.01) return {};
    return "The readout takes " + units::format_temperature(least_k) + " to " +
           units::format_temperature(most_k) + " here; nothing is stored.";
}

void change_setting(Workplace& w, const Act& act) {
    using controller::Setting;
    const auto chosen = static_cast<double>(act.object);
    switch (act.verb) {
        case Verb::change_gas:
            return store(w, Setting::gas, chosen);
        case Verb::change_altitude:
            return store(w, Setting::altitude, controller::altitude_step_m * chosen);
        case Verb::change_highest:
            return store(w, Setting::highest_set_point, act.number);
        case Verb::change_frost:
            return store(w, Setting::frost_protection, chosen);
        case Verb::change_wall_count:
            return store(w, Setting::wall_controllers, chosen);
        default:
            return store(w, Setting::priority, chosen);
    }
}

// --- wall controllers ---

std::string wall_is_lit(const Workplace& w, const Act& act) {
    const bool lit = w.look().readout.link_wall_v[act.object] >= controller::link_least_v;
    return lit ? "" : "Its screen is dark.";
}

std::string wall_can_show(const Workplace& w, const Act& act) {
    if (auto dark = wall_is_lit(w, act); !dark.empty()) return dark;
    if (w.services.wall[act.object].shows_service < 0.5)
        return "This wall controller sets the temperature and shows no readout.";
    return w.look().readout.heard[act.object] > 0.5 ? "" : "It shows no answer from the heater.";
}

void open_readout_at_wall(Workplace& w, const Act&) {
    w.bench.readout_open = true;
    w.say("The wall controller lists the heater's own measurements.");
}

std::string wall_offers(const Workplace& w, const Act& act) {
    if (auto dark = wall_is_lit(w, act); !dark.empty()) return dark;
    const controller::Settings s = w.look().settings;  // as stored now
    if (act.number >= s.minimum_set_k - 0.01 && act.number <= s.maximum_set_k + 0.01) return {};
    return "It offers " + units::format_temperature(s.minimum_set_k) + " to " +
           units::format_temperature(s.maximum_set_k) + ".";
}

void set_wall(Workplace& w, const Act& act) {
    w.services.wall[act.object].set_point_k = act.number;
    w.changed();
}

void switch_wall(Workplace& w, const Act& act) {
    w.services.wall[act.object].switched_on = act.verb == Verb::wall_on ? 1.0 : 0.0;
    w.changed();
}

void look_at_wall(Workplace& w, const Act& act) {
    constexpr std::array screens{Quantity::wall_screen_1, Quantity::wall_screen_2,
                                 Quantity::wall_screen_3};
    Workplace::ReadingOf what{screens.at(act.object)};
    what.note = w.job.site.wall_controllers.at(act.object);
    w.read(what);
    if (!wall_is_lit(w, act).empty()) return;
    const auto& wall = w.services.wall[act.object];
    w.say("It is set to " + units::format_temperature(wall.set_point_k) + " and switched " +
          (wall.switched_on > 0.5 ? "on." : "off."));
}

std::string link_within_reach(const Workplace& w, const Act& act) {
    return act.object == 0 ? needs_cover_off(w, act) : std::string();
}

void measure_link(Workplace& w, const Act& act) {
    constexpr std::array ends{Quantity::link_heater_volts, Quantity::link_wall_1_volts,
                              Quantity::link_wall_2_volts, Quantity::link_wall_3_volts};
    w.read({ends.at(act.object)});
}

using When = Doing::When;
constexpr std::array table{
    Doing{Verb::press_reset, no_obstacle, press_reset, When::before},
    Doing{Verb::press_list, panel_is_lit, press_list},
    Doing{Verb::press_take, panel_is_lit, press_take},
    Doing{Verb::open_readout, panel_is_lit, open_readout},
    Doing{Verb::open_readout_at_wall, wall_can_show, open_readout_at_wall},
    Doing{Verb::read_readout, readout_is_open, read_readout},
    Doing{Verb::read_history, readout_is_open, read_history},
    Doing{Verb::read_settings, settings_are_free, read_settings},
    Doing{Verb::read_plate, no_obstacle, read_plate},
    Doing{Verb::change_gas, settings_are_free, change_setting},
    Doing{Verb::change_altitude, settings_are_free, change_setting},
    Doing{Verb::change_highest, highest_is_offered, change_setting},
    Doing{Verb::change_frost, settings_are_free, change_setting},
    Doing{Verb::change_wall_count, settings_are_free, change_setting},
    Doing{Verb::change_priority, settings_are_free, change_setting},
    Doing{Verb::set_wall, wall_offers, set_wall, When::before},
    Doing{Verb::wall_on, wall_is_lit, switch_wall, When::before},
    Doing{Verb::wall_off, wall_is_lit, switch_wall, When::before},
    Doing{Verb::look_at_wall, no_obstacle, look_at_wall},
    Doing{Verb::measure_link, link_within_reach, measure_link},
};

}  // namespace

std::span<const Doing> panel_doings() {
    return table;
}

}  // namespace emberpath::worksite
