// The instruments themselves: labels, checks, the spare in the van, and what a battery refuses.

#include <array>

#include "sim/units/units.hpp"
#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

using Q = Quantity;
using I = Instrument;

I instrument_in(const Act& act) {
    return static_cast<I>(act.object);
}

const Piece& in_hand(const Workplace& w, I instrument) {
    static const Piece sound;
    return w.bench.uses_spare(instrument) ? sound : w.job.kit.of(instrument);
}

std::string name_of(I instrument) {
    return std::string(info(instrument).word);
}

std::string stays_dark(I instrument) {
    return "The " + name_of(instrument) + " stays dark: its battery is flat.";
}

constexpr std::string_view fuse_is_open =
    "The fuse of its current range has gone: there it shows nothing, whatever flows.";

void look_at_tool(Workplace& w, const Act& act) {
    const I instrument = instrument_in(act);
    w.bench.label_seen[act.object] = true;
    for (auto& line : label_of(instrument, in_hand(w, instrument), w.job.kit.visited_on))
        w.say(std::move(line));
    if (instrument == I::multimeter && w.bench.meter_fuse_gone) w.say(std::string(fuse_is_open));
}

/// A known value, what the instrument makes of it, and how that is said.
struct Known {
    Q quantity;
    double value;
    std::string_view where;
};
// clang-format off
constexpr std::array<std::array<Known, 2>, instrument_count> known_values{{
    {Known{Q::gas_inlet_pressure, 2000.0, "On one line"}, Known{}},
    {Known{Q::ohms_between, 10.0e3, "On one resistor"}, Known{Q::volts_between, 230.0, "On one proving unit"}},
    {Known{Q::clamp_current, 1.0, "Around one conductor"}, Known{}},
    {},
    {Known{Q::insulation_ohms, 1.0e6, "On one check resistor"}, Known{}},
    {Known{Q::safety_switch_current, 0.030, "On one check load"}, Known{}},
    {Known{Q::flue_o2, 0.08, "On one bag of test gas"}, Known{Q::flue_co, 200.0e-6, "On one bag of test gas"}},
    {Known{Q::tap_temperature, 313.15, "In one cup of warm water"}, Known{}},
    {Known{Q::tap_flow, 1.0e-4, "At one tap"}, Known{}},
    {Known{Q::cylinder_mass, 10.0, "Under one test weight"}, Known{}},
    {Known{Q::gas_in_air, 0.5, "On one puff of test gas"}, Known{}},
    {},
    {},
    {Known{Q::water_pressure, 400.0e3, "At one tap"}, Known{}},
}};
// clang-format on

void check_manometer(Workplace& w) {
    const bool spare = w.bench.uses_spare(I::manometer);
    const double shown =
        w.shown_of(Q::gas_inlet_pressure, 0.0 + w.bench.manometer_offset_pa, spare);
    w.say("With its hose open it shows " + units::format_pressure(shown) + ".");
}

void check_multimeter(Workplace& w) {
    constexpr double good_leads_ohm = 0.1, proving_unit_v = 240.0;
    const bool spare = w.bench.uses_spare(I::multimeter);
    w.say("With its leads together it shows " +
          text_of(Q::ohms_between, w.shown_of(Q::ohms_between, good_leads_ohm, spare)) + ".");
    w.say("On the proving unit of 240 V it shows " +
          text_of(Q::volts_between, w.shown_of(Q::volts_between, proving_unit_v, spare)) + ".");
    if (w.bench.meter_fuse_gone) w.say(std::string(fuse_is_open));
}

/// Clean air holds 20.95 % oxygen whatever the cells took for it when they were switched on.
void check_analyser(Workplace& w) {
    constexpr double clean_air_o2 = 0.2095;
    const bool spare = w.bench.uses_spare(I::analyser);
    const double oxygen = w.shown_of(Q::flue_o2, clean_air_o2 + w.bench.analyser_zero[0], spare);
    const double co = w.shown_of(Q::flue_co, w.bench.analyser_zero[2], spare);
    w.say("In clean air it shows " + text_of(Q::flue_o2, oxygen) + " oxygen and " +
          text_of(Q::flue_co, co) + " carbon monoxide.");
}

/// A litre by the cup's own mark: a cup that reads high holds less than it says.
void check_flow_cup(Workplace& w) {
    constexpr double litre_per_min = 1.0 / 60000.0;
    const double shown =
        w.shown_of(Q::tap_flow, 10.0 * litre_per_min, w.bench.uses_spare(I::flow_cup));
    const double kilograms = 10.0 * litre_per_min / shown;
    w.say("Filled to its mark of one litre it weighs " + units::fixed(kilograms, 2) +
          " kg more than empty.");
}

void check_known(Workplace& w, I instrument, const Known& known, std::string_view words) {
    w.say(std::string(words) + " it shows " +
          text_of(known.quantity,
                  w.shown_of(known.quantity, known.value, w.bench.uses_spare(instrument))) +
          ".");
}

void check_tool(Workplace& w, const Act& act) {
    const I instrument = instrument_in(act);
    switch (instrument) {
        case I::manometer:
            return check_manometer(w);
        case I::multimeter:
            return check_multimeter(w);
        case I::analyser:
            return check_analyser(w);
        case I::flow_cup:
            return check_flow_cup(w);
        case I::clamp_meter:
            return check_known(w, instrument, {Q::clamp_current, 0.0, {}}, "Around nothing");
        case I::insulation_tester:
            return check_known(w, instrument, known_values[act.object][0],
                               "On its check resistor of 1 megohm");
        case I::safety_switch_tester:
            return check_known(w, instrument, known_values[act.object][0],
                               "On its check load of 30 mA");
        case I::thermometer:
            return check_known(w, instrument, {Q::tap_temperature, 273.15, {}}, "In melting ice");
        case I::water_gauge:
            return check_known(w, instrument, {Q::water_pressure, 0.0, {}}, "Open to air");
        case I::scale:
            return check_known(w, instrument, known_values[act.object][0],
                               "Under the test weight of 10 kg");
        case I::gas_detector:
            return check_known(w, instrument, known_values[act.object][0],
                               "On test gas of half the limit");
        case I::co_alarm:
            return w.say(in_hand(w, instrument).battery == Battery::low ? "It sounds, faintly."
                                                                        : "It sounds.");
        case I::leak_fluid:
            return w.say(leak_fluid_foams(w) ? "It foams." : "It runs off like water.");
        case I::voltage_tester:
            break;
    }
    doing_of(Verb::prove_tester).effect(w, act);
}

std::string can_be_checked(const Workplace& w, const Act& act) {
    const I instrument = instrument_in(act);
    if (instrument == I::voltage_tester) return {};
    if (info(instrument).has_battery && in_hand(w, instrument).battery == Battery::flat)
        return stays_dark(instrument);
    if (instrument == I::manometer && w.bench.manometer_at)
        return "Its hose is on a test point; take it off first.";
    if (instrument == I::multimeter && w.bench.multimeter_at)
        return "Its leads are attached; take them off first.";
    if (instrument == I::analyser && !analyser_ready(w))
        return "The analyser has to be on and warm.";
    if (instrument == I::analyser && w.bench.probe_in_flue)
        return "The probe is in the flue; take it out first.";
    return {};
}

bool has_figure(I instrument) {
    return known_values[static_cast<std::size_t>(instrument)][0].value > 0.0;
}

void compare_tool(Workplace& w, const Act& act) {
    for (const Known& known : known_values[act.object]) {
        if (known.value <= 0.0) continue;
        w.say(std::string(known.where) + " the one from the bag shows " +
              text_of(known.quantity, w.shown_of(known.quantity, known.value, false)) +
              ", the spare " +
              text_of(known.quantity, w.shown_of(known.quantity, known.value, true)) + ".");
    }
}

std::string can_be_compared(const Workplace& w, const Act& act) {
    const I instrument = instrument_in(act);
    if (!has_figure(instrument)) return "It shows no figure that could be compared.";
    if (info(instrument).has_battery && w.job.kit.of(instrument).battery == Battery::flat)
        return stays_dark(instrument);
    return {};
}

std::string can_be_changed(const Workplace& w, const Act& act) {
    const I instrument = instrument_in(act);
    if (w.bench.uses_spare(instrument)) return "You have the spare already.";
    if (instrument == I::manometer && w.bench.manometer_at)
        return "The manometer is attached; take it off first.";
    if (instrument == I::multimeter && w.bench.multimeter_at)
        return "The multimeter is attached; take it off first.";
    if (instrument == I::analyser && w.bench.probe_in_flue)
        return "The probe is in the flue; take it out first.";
    return {};
}

/// Out of its case: no zero of the other one, nothing held, off.
void take_spare(Workplace& w, const Act& act) {
    const I instrument = instrument_in(act);
    w.bench.spare[act.object] = true;
    w.bench.label_seen[act.object] = false;
    if (instrument == I::manometer) {
        w.bench.manometer_offset_pa = 0.0;
        w.bench.zeroed_under_pressure = false;
    }
    if (instrument == I::analyser) {
        w.bench.analyser_on_tick = never;
        w.bench.zeroed_in_products = false;
        w.bench.analyser_zero = {};
    }
    if (instrument == I::multimeter) w.bench.meter_fuse_gone = false;
    if (instrument == I::voltage_tester) w.person.proof = Person::Proof::none;
    if (instrument == I::co_alarm) w.doses.co_alarm_on = false;
    w.set_tools(true);
    w.say("You come back with the spare " + name_of(instrument) + ".");
}

using When = Doing::When;
constexpr std::array table{
    Doing{Verb::look_at_tool, no_obstacle, look_at_tool},
    Doing{Verb::check_tool, can_be_checked, check_tool},
    Doing{Verb::compare_tool, can_be_compared, compare_tool},
    Doing{Verb::take_spare, can_be_changed, take_spare},
};

/// What an act holds in its hand, where a battery matters.
std::optional<I> held_by(Verb verb) {
    switch (verb) {
        case Verb::read_manometer:
        case Verb::zero_manometer:
        case Verb::leak_test_hold:
        case Verb::measure_air_tube:
            return I::manometer;
        case Verb::read_multimeter:
        case Verb::measure_volts:
        case Verb::log_volts:
        case Verb::measure_ohms:
        case Verb::measure_amps:
        case Verb::measure_link:
        case Verb::measure_companion_link:
            return I::multimeter;
        case Verb::read_case_air:
        case Verb::read_intake_air:
            return I::analyser;
        case Verb::insulation_test:
            return I::insulation_tester;
        case Verb::clamp:
            return I::clamp_meter;
        case Verb::analyser_on:
        case Verb::read_analyser:
        case Verb::read_room_air:
            return I::analyser;
        case Verb::measure_tap_temperature:
        case Verb::measure_pipe:
        case Verb::measure_companion_pipe:
            return I::thermometer;
        case Verb::weigh_cylinder:
        case Verb::weigh_second_cylinder:
            return I::scale;
        case Verb::read_gas_detector:
        case Verb::check_low_places:
            return I::gas_detector;
        default:
            return std::nullopt;
    }
}

}  // namespace

std::string battery_refuses(const Workplace& w, const Act& act) {
    const auto instrument = held_by(act.verb);
    if (!instrument) return {};
    const Battery battery = in_hand(w, *instrument).battery;
    if (battery == Battery::flat) return stays_dark(*instrument);
    const bool will_not_start = *instrument == I::analyser || *instrument == I::gas_detector;
    if (battery == Battery::low && will_not_start)
        return "The " + name_of(*instrument) +
               " shows that its battery is low and switches itself off.";
    return {};
}

void judge_label_in_hand(Workplace& w, const Act& act) {
    switch (act.verb) {
        case Verb::leak_test_fluid:
            return w.judge_label(I::leak_fluid);
        case Verb::prove_tester:
        case Verb::test_for_dead:
            return w.judge_label(I::voltage_tester);
        case Verb::co_alarm_on:
            return w.judge_label(I::co_alarm);
        case Verb::check_low_places:
            return w.judge_label(I::gas_detector);
        default:
            return;
    }
}

bool tester_is_dark(const Workplace& w) {
    return in_hand(w, I::voltage_tester).battery == Battery::flat;
}

bool alarm_can_sound(const Workplace& w) {
    return in_hand(w, I::co_alarm).battery != Battery::flat;
}

bool leak_fluid_foams(const Workplace& w) {
    constexpr double stale_below = 0.5;
    return in_hand(w, I::leak_fluid).reads >= stale_below;
}

std::span<const Doing> kit_doings() {
    return table;
}

}  // namespace emberpath::worksite
