// Taps, appliances, panel, power, gas and water.

#include <array>

#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/outlets.hpp"

namespace emberpath::worksite {

namespace {

// "a little" and "halfway" give about 3.5 and 10 L/min where fully open gives 16.
double opening_of(std::size_t option) {
    if (option == 1) return 0.22;
    return option == 2 ? 0.6 : 1.0;
}

void open_tap(Workplace& w, const Act& act) {
    w.services.tap_opening[act.object] = opening_of(act.option);
    w.changed();
    w.pass(seconds_of(act));
    if (!w.over()) w.touch_pipes(false);
    const auto& name = w.job.site.taps[act.object].name;
    w.say(water_comes(w.look().plant, act.object) ? "Water runs at the " + name + "."
                                                  : "No water comes at the " + name + ".");
}

/// Water that runs is felt with the tap. A hand in it for a second takes its share of a burn.
void touch_tap(Workplace& w, const Act& act) {
    constexpr double in_it_s = 1.0;       // chosen
    constexpr double too_hot_k = 316.15;  // 43 °C, from where touch_water() counts
    const auto seen = w.look().plant;
    const bool runs = w.services.tap_opening[act.object] > 0.0 && water_comes(seen, act.object);
    if (runs && !w.person.gloves && seen.tap_k[act.object] >= too_hot_k) {
        w.say("The water feels hot.");
        w.touch_water(seen.tap_k[act.object], in_it_s);
    }
    w.touch_pipes(true);
}

void close_tap(Workplace& w, const Act& act) {
    w.services.tap_opening[act.object] = 0.0;
    w.changed();
}

void turn(Workplace& w, const Act& act) {
    const bool on = act.verb == Verb::turn_on;
    if (act.object == 0)
        w.services.heater_on = on;
    else
        w.services.appliance_on[act.object - 1] = on ? 1 : 0;
    w.changed();
}

std::string panel_offers(const Workplace& w, const Act& act) {
    if (!w.powered()) return "The panel is dark.";
    const controller::Settings s = w.look().settings;  // as stored now
    if (act.number >= s.minimum_set_k - 0.01 && act.number <= s.maximum_set_k + 0.01) return {};
    return "The panel offers " + units::format_temperature(s.minimum_set_k) + " to " +
           units::format_temperature(s.maximum_set_k) + ".";
}

void set_temperature(Workplace& w, const Act& act) {
    w.services.set_point_k = act.number;
    w.changed();
}

/// `live`: with this contact closed the heater has its supply. What wiring that comes back untested does shows
/// before the act is over.
void move_contact(Workplace& w, const Act& act, bool& contact, bool closed, bool live) {
    const double after_s = live ? power_back_s(w) : 0.0;
    w.pass(seconds_of(act) - after_s);
    if (w.over()) return;
    contact = closed;
    judge_power_back(w);
    w.person.proof = Person::Proof::none;
    w.changed();
}

std::string plug_is_out(const Workplace& w, const Act&) {
    return w.services.plugged_in ? "" : "The plug is out already.";
}
std::string plug_can_go_in(const Workplace& w, const Act&) {
    if (w.services.plugged_in) return "The plug is in already.";
    return w.services.plug_locked ? "The plug is locked off; unlock it first." : "";
}
std::string plug_can_be_locked(const Workplace& w, const Act&) {
    return w.services.plugged_in ? "The plug is in; pull it first." : "";
}

void switch_power(Workplace& w, const Act& act) {
    const bool on = act.verb == Verb::power_on;
    move_contact(w, act, w.services.point_switch_on, on, on && w.services.plugged_in);
}
void move_plug(Workplace& w, const Act& act) {
    const bool in = act.verb == Verb::plug_in;
    move_contact(w, act, w.services.plugged_in, in, in && w.services.point_switch_on);
}
void lock(Workplace& w, const Act& act) {
    w.services.plug_locked = act.verb == Verb::lock_plug;
}

void gas(Workplace& w, const Act& act) {
    auto& valve = act.object == 0 ? w.services.gas_at_heater : w.services.gas_at_supply;
    const bool open = act.verb == Verb::open_gas;
    if (!open && act.object == 1 && w.services.gas_at_heater && w.services.gas_at_supply)
        w.held_line_pa = w.look().plant.gas_inlet_pa;
    if (open) w.held_line_pa = 0.0;
    valve = open;
    w.changed();
}
void water(Workplace& w, const Act& act) {
    w.services.water_at_heater = act.verb == Verb::open_water;
    w.precautions.drained = false;
    w.changed();
    if (w.services.water_at_heater && w.services.water_union_open) run_out_until_shut(w);
}

void wear(Workplace& w, const Act& act) {
    (act.object == 0 ? w.person.gloves : w.person.glasses) = act.verb == Verb::put_on;
}

using When = Doing::When;
constexpr std::array table{
    Doing{Verb::open_tap, no_obstacle, open_tap, When::own},
    Doing{Verb::touch_tap, no_obstacle, touch_tap},
    Doing{Verb::close_tap, no_obstacle, close_tap, When::before},
    Doing{Verb::turn_on, no_obstacle, turn, When::before},
    Doing{Verb::turn_off, no_obstacle, turn, When::before},
    Doing{Verb::set_temperature, panel_offers, set_temperature, When::before},
    Doing{Verb::power_off, no_obstacle, switch_power, When::own},
    Doing{Verb::power_on, no_obstacle, switch_power, When::own},
    Doing{Verb::unplug, plug_is_out, move_plug, When::own},
    Doing{Verb::plug_in, plug_can_go_in, move_plug, When::own},
    Doing{Verb::lock_plug, plug_can_be_locked, lock},
    Doing{Verb::unlock_plug, no_obstacle, lock},
    Doing{Verb::shut_gas, no_obstacle, gas},
    Doing{Verb::open_gas, no_obstacle, gas},
    Doing{Verb::shut_water, no_obstacle, water},
    Doing{Verb::open_water, no_obstacle, water},
    Doing{Verb::put_on, no_obstacle, wear},
    Doing{Verb::take_off, no_obstacle, wear},
};

}  // namespace

std::span<const Doing> service_doings() {
    return table;
}

}  // namespace emberpath::worksite
