// What protects: the personal alarm, the gas detector and the customer's consent.

#include <algorithm>
#include <array>

#include "sim/worksite/doings.hpp"

namespace emberpath::worksite {

namespace {

std::string alarm_can_turn(const Workplace& w, const Act& act) {
    const bool on = act.verb == Verb::co_alarm_on;
    if (w.doses.co_alarm_on != on) return {};
    return on ? "The alarm is on already." : "The alarm is off.";
}

void turn_alarm(Workplace& w, const Act& act) {
    w.doses.co_alarm_on = act.verb == Verb::co_alarm_on;
    if (w.doses.co_alarm_on)
        w.say(alarm_can_sound(w) ? "It chirps once: ready." : "It stays silent and dark.");
}

/// Clean air reads the same under every cause; gas that escaped belongs to this visit alone.
void read_detector(Workplace& w, const Act&) {
    Workplace::ReadingOf what{Quantity::gas_in_air};
    what.trusted = w.escaped_gas_m3 <= 0.0;
    what.instead = flammable_share(w.job.site.gas, w.escaped_gas_m3);
    w.read(what);
}

void ask_consent(Workplace& w, const Act&) {
    const Consent agrees = w.job.customer.agrees;
    const bool told = w.deeds.told != never;
    if (agrees == Consent::never || (agrees == Consent::after_reasons && !told)) {
        w.say(agrees == Consent::never ? "\"No. I will not have it switched off, whatever it is.\""
                                       : "\"Not now, I need the water. What for, anyway?\"");
        return;
    }
    w.say("\"Yes, do what you have to.\"");
    w.deeds.consent = w.tick();
}

constexpr std::array table{
    Doing{Verb::co_alarm_on, alarm_can_turn, turn_alarm},
    Doing{Verb::co_alarm_off, alarm_can_turn, turn_alarm},
    Doing{Verb::read_gas_detector, no_obstacle, read_detector},
    Doing{Verb::ask_consent, no_obstacle, ask_consent},
};

bool shuts_something(const Workplace& w, const Act& act) {
    switch (act.verb) {
        case Verb::power_off:
            return w.services.point_switch_on;
        case Verb::board_off:
        case Verb::unplug:
        case Verb::shut_water:
        case Verb::cover_off:
            return true;
        case Verb::shut_gas:
            return act.object == 0 ? w.services.gas_at_heater : w.services.gas_at_supply;
        default:
            return false;
    }
}

/// Carbon monoxide and dioxide are read one after the other, as often as an act reads them.
bool shows_bad_flue_gas(const LogEntry& entry, double ratio_limit) {
    double co2 = 0.0;
    for (const auto& seen : entry.observations) {
        if (seen.quantity == Quantity::flue_co2) co2 = seen.value;
        if (seen.quantity == Quantity::flue_co && co2 > 0.005 && seen.value > ratio_limit * co2)
            return true;
    }
    return false;
}

/// Carbon monoxide where people breathe, or products blown out at the diverter.
bool shows_bad_room(const LogEntry& entry, const Limits& limits) {
    return std::any_of(entry.observations.begin(), entry.observations.end(), [&](const auto& seen) {
        if (seen.quantity == Quantity::room_co) return seen.value > limits.co_eight_hours;
        return seen.quantity == Quantity::diverter_smoke && seen.value > 0.5;  // not drawn in
    });
}

/// Metal that is touched, and neutrals: a few volts at most stand between any two of them.
bool ought_to_be_at_earth(plant::Terminal one) {
    using T = plant::Terminal;
    constexpr std::array at_earth{T::true_earth,      T::earth_bar,      T::socket_earth,
                                  T::heater_earth,    T::casing,         T::water_pipe,
                                  T::water_main,      T::gas_pipe,       T::neutral_bar,
                                  T::circuit_neutral, T::socket_neutral, T::heater_neutral};
    return std::find(at_earth.begin(), at_earth.end(), one) != at_earth.end();
}

/// Isolated, and still there (note_live_though_isolated).
bool shows_second_feed(const LogEntry& entry, const Limits& limits) {
    return entry.words == "test for dead" &&
           std::any_of(entry.observations.begin(), entry.observations.end(), [&](const auto& seen) {
               return seen.quantity == Quantity::active_earth_volts &&
                      seen.value > limits.dangerous_v;
           });
}

/// Metal that stands at a voltage, an earth that is missing, insulation that has gone, a leakage beyond the limit.
bool shows_bad_wiring(const Observation& seen, const Limits& limits) {
    switch (seen.quantity) {
        case Quantity::tingle:
            return seen.value > 0.5;
        case Quantity::pipe_volts:
            return seen.value > limits.dangerous_pipe_v;
        case Quantity::neutral_earth_volts:
            return seen.value > limits.dangerous_v;
        case Quantity::volts_between: {
            const plant::Pair leads = leads_of(seen.condition);
            return ought_to_be_at_earth(leads.a) && ought_to_be_at_earth(leads.b) &&
                   seen.value > limits.dangerous_v;
        }
        case Quantity::earth_ohms:
            return seen.value > limits.earth_continuity_ohm;
        case Quantity::insulation_ohms:
            return seen.value < limits.insulation_ohm;
        case Quantity::leakage_current:
            return seen.value > limits.earth_leakage_a;
        default:
            return false;
    }
}

}  // namespace

bool danger_is_known(const Workplace& w) {
    if (w.alarm_sounds() || w.smells_gas() || w.precautions.gas_on_arrival) return true;
    return std::any_of(w.log.begin(), w.log.end(), [&](const LogEntry& entry) {
        return shows_bad_flue_gas(entry, w.job.practice.limits.co_ratio) ||
               shows_bad_room(entry, w.job.practice.limits) ||
               shows_second_feed(entry, w.job.practice.limits) ||
               std::any_of(entry.observations.begin(), entry.observations.end(),
                           [&](const Observation& seen) {
                               return shows_bad_wiring(seen, w.job.practice.limits);
                           });
    });
}

void judge_consent(Workplace& w, const Act& act) {
    if (!shuts_something(w, act) || w.job.customer.agrees == Consent::given) return;
    if (w.deeds.consent != never || danger_is_known(w)) return;
    w.breach("no_consent", w.job.customer.agrees == Consent::when_asked
                               ? "Something was shut off or opened before the customer was asked."
                               : "Something was shut off or opened although the customer did not "
                                 "agree, and nothing you knew made it urgent.");
}

std::span<const Doing> protection_doings() {
    return table;
}

}  // namespace emberpath::worksite
