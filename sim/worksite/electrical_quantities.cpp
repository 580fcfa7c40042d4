#include "sim/worksite/electrical_quantities.hpp"

#include <algorithm>
#include <array>

#include "sim/exposure/shock.hpp"

namespace emberpath::worksite {

namespace {

using Q = Quantity;
using T = plant::Terminal;
using plant::Pair;

struct Named {
    Pair pair;
    Quantity quantity;
};
constexpr std::array pairs_of_volts{
    Named{{T::heater_active, T::heater_neutral}, Q::terminal_volts},
    Named{{T::heater_active, T::heater_earth}, Q::active_earth_volts},
    Named{{T::heater_neutral, T::heater_earth}, Q::neutral_earth_volts},
    Named{{T::water_pipe, T::true_earth}, Q::pipe_volts},
    Named{{T::low_voltage_rail, T::low_voltage_common}, Q::rail_volts},
    Named{{T::valve_output, T::low_voltage_common}, Q::valve_volts},
    Named{{T::valve_lead, T::low_voltage_common}, Q::valve_volts},
    Named{{T::link_wall_end, T::link_wall_return}, Q::link_volts},
};
constexpr std::array named_ohms{
    Named{{T::casing, T::earth_bar}, Q::earth_ohms},
    Named{{T::heater_earth, T::earth_bar}, Q::earth_ohms},
    Named{{T::valve_lead, T::low_voltage_common}, Q::valve_coil_ohms},
    Named{{T::valve_lead, T::casing}, Q::valve_lead_ohms},
    Named{{T::flame_input, T::flame_lead}, Q::flame_lead_ohms},
};
constexpr std::array named_insulation{
    Named{{T::heater_active, T::casing}, Q::insulation_ohms},
    Named{{T::heater_active, T::heater_earth}, Q::insulation_ohms},
    Named{{T::heater_neutral, T::casing}, Q::insulation_ohms},
    Named{{T::heater_neutral, T::heater_earth}, Q::insulation_ohms},
    Named{{T::igniter_lead, T::casing}, Q::igniter_lead_ohms},
};

bool same_pair(const Pair& one, const Pair& other) {
    return (one.a == other.a && one.b == other.b) || (one.a == other.b && one.b == other.a);
}

template <std::size_t N>
Quantity pick(const std::array<Named, N>& list, const Pair& pair, Quantity otherwise) {
    for (const Named& row : list)
        if (same_pair(row.pair, pair)) return row.quantity;
    return otherwise;
}

constexpr std::array<std::string_view, plant::reachable_terminal_count> terminal_names{
    "true earth",
    "incoming active",
    "neutral bar",
    "earth bar",
    "circuit active",
    "circuit neutral",
    "socket active",
    "socket neutral",
    "socket earth",
    "heater active",
    "heater neutral",
    "heater earth",
    "casing",
    "low-voltage supply",
    "low-voltage rail",
    "low-voltage common",
    "valve output",
    "valve lead",
    "fan lead",
    "igniter lead",
    "flame input",
    "flame lead",
    "link at heater",
    "link at wall",
    "link return at wall",
    "trace heating lead",
    "water pipe",
    "water main",
    "gas pipe",
};
constexpr std::array<std::string_view, plant::conductor_count> conductor_names{
    "street active", "street neutral", "earth link", "stake wire", "lead active",
    "lead neutral",  "lead earth",     "water pipe", "whole lead",
};

double named_volts_of(Quantity quantity, const plant::Observables& p) {
    const plant::ElectricalReadings& r = p.electrical;
    switch (quantity) {
        case Q::terminal_volts:
            return r.terminal_v;
        case Q::active_earth_volts:
            return r.active_earth_v;
        case Q::neutral_earth_volts:
            return r.neutral_earth_v;
        case Q::pipe_volts:
            return r.pipe_v;
        case Q::rail_volts:
            return r.rail_v;
        case Q::valve_volts:
            return r.valve_drive_v * p.valve_asked;
        default:
            return r.link_wall_v[0];
    }
}

double named_ohms_of(Quantity quantity, const plant::ElectricalReadings& r) {
    switch (quantity) {
        case Q::earth_ohms:
            return r.earth_ohm;
        case Q::insulation_ohms:
            return r.insulation_ohm;
        case Q::valve_coil_ohms:
            return r.valve_coil_ohm;
        case Q::valve_lead_ohms:
            return r.valve_lead_ohm;
        case Q::igniter_lead_ohms:
            return r.igniter_lead_ohm;
        default:
            return r.flame_lead_ohm;
    }
}

bool is_named_ohms(Quantity quantity) {
    return quantity >= Q::earth_ohms && quantity <= Q::flame_lead_ohms;
}

/// Leads that lie nowhere read nothing: what is not being measured costs no solution of the network.
double anywhere(Quantity quantity, const HeaterView& heater, const TickInputs& inputs,
                const ToolSetup& tools) {
    const bool clamps = quantity == Q::clamp_current;
    if (clamps ? tools.clamp >= plant::conductor_count : tools.lead_a == tools.lead_b) return 0.0;
    const auto wiring = plant::wiring_of(heater.parameters, heater.plant, inputs.surroundings);
    if (clamps) return plant::clamp_a(wiring, static_cast<plant::Conductor>(tools.clamp));
    const Pair pair{static_cast<T>(tools.lead_a), static_cast<T>(tools.lead_b)};
    if (quantity == Q::volts_between)
        return plant::volts_between(wiring, pair.a, pair.b, plant::multimeter_input_ohm);
    return std::min(plant::ohms_between(wiring, pair.a, pair.b), greatest_ohm(quantity));
}

std::size_t board_look(const plant::Latches& latches, const plant::ElectricalSituation& s) {
    if (latches.safety_switch_tripped > 0.5) return board_safety_switch_open;
    if (latches.breaker_tripped > 0.5) return board_breaker_open;
    return s.main_switch < 0.5 || s.breaker < 0.5 ? board_switched_off : board_all_on;
}

}  // namespace

bool is_electrical(Quantity quantity) {
    return quantity == Q::terminal_volts ||
           (quantity >= Q::active_earth_volts && quantity <= Q::clamp_current) ||
           (quantity >= Q::switchboard && quantity <= Q::tingle);
}

double electrical_value(Quantity quantity, const HeaterView& heater, const TickInputs& inputs,
                        const ToolSetup& tools) {
    const plant::ElectricalReadings& r = heater.plant.electrical;
    if (quantity == Q::leakage_current) return r.leakage_a;
    if (quantity == Q::safety_switch_current) return r.safety_switch_a;
    if (quantity >= Q::volts_between && quantity <= Q::clamp_current)
        return anywhere(quantity, heater, inputs, tools);
    if (is_named_ohms(quantity))
        return std::min(named_ohms_of(quantity, r), greatest_ohm(quantity));
    return named_volts_of(quantity, heater.plant);
}

std::size_t electrical_category(Quantity quantity, const HeaterView& heater, const Senses& senses,
                                const TickInputs& inputs) {
    const plant::Observables& p = heater.plant;
    switch (quantity) {
        case Q::switchboard:
            return board_look(p.electrical_latches, inputs.surroundings.electrical);
        case Q::board_fuse:
            return p.electrical_latches.fuse_blown > 0.5 ? fuse_blown : fuse_whole;
        case Q::spark_path:
            if (!senses.spark_seen && p.spark_heard < 0.5) return path_no_spark;
            return p.electrical.spark_arrives > 0.5 ? path_at_burner : path_to_frame;
        default:
            return exposure::effect_of(hand_to_floor_a(p.electrical.pipe_v)) ==
                           exposure::Effect::nothing_felt
                       ? tingle_none
                       : tingle_felt;
    }
}

double named_volts(Quantity quantity, const HeaterView& heater) {
    return named_volts_of(quantity, heater.plant);
}

Quantity volts_of(const Pair& pair) {
    return pick(pairs_of_volts, pair, Q::volts_between);
}
Quantity ohms_of(const Pair& pair) {
    return pick(named_ohms, pair, Q::ohms_between);
}
Quantity insulation_of(const Pair& pair) {
    return pick(named_insulation, pair, Q::ohms_between);
}

double hand_to_floor_a(double touch_v) {
    return exposure::touch_current_a(touch_v, exposure::body_impedance_ohm(touch_v, 0.5),
                                     floor_path_ohm);
}
double hand_to_hand_a(double touch_v) {
    return exposure::touch_current_a(touch_v, exposure::body_impedance_ohm(touch_v, 0.5), 0.0);
}

std::string_view terminal_name(std::size_t terminal) {
    return terminal_names.at(terminal);
}
std::string_view conductor_name(std::size_t conductor) {
    return conductor_names.at(conductor);
}

}  // namespace emberpath::worksite
