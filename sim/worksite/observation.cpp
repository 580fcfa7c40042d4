#include "sim/worksite/observation.hpp"

#include <algorithm>
#include <cmath>

#include "sim/signals/signals.hpp"
#include "sim/worksite/electrical_quantities.hpp"

namespace emberpath::worksite {

namespace {

constexpr double zero_celsius_k = 273.15;
constexpr double settles_s = 5.0;         // a flame just lit moves anyway
constexpr double restless_share = 0.015;  // mean stray of the air ratio over some eight seconds
// The cell for carbon monoxide answers hydrogen as well, which quenched products bring along: some 0.7 of it for
// one of carbon monoxide (water-gas balance near 1600 K; chosen), of which a compensated cell shows a tenth
// (common practice).
constexpr double hydrogen_per_co = 0.7;
constexpr double hydrogen_shown = 0.1;

using Q = Quantity;

// --- what the eye and the ear make of a lane; thresholds are chosen ---

std::size_t flame_look(const HeaterView& heater, const Senses& senses) {
    if (heater.plant.flame_lit <= 0.0) return senses.flame_seen ? flame_lit_then_out : flame_none;
    if (heater.plant.excess_air_ratio < 1.12) return flame_yellow_tipped;
    return senses.flame_unrest.shown > restless_share ? flame_restless : flame_steady;
}

std::size_t fan_sound(double rev_per_s) {
    if (rev_per_s < 5.0) return fan_silent;
    return rev_per_s < 88.0 ? fan_normal : fan_loud;  // full speed of a healthy heater is about 79
}

std::size_t terminal_look(const plant::PlantParameters& p) {
    const double times_clear = p.flue_resistance / plant::PlantParameters{}.flue_resistance;
    if (times_clear < 1.3) return terminal_clear;
    return times_clear < 6.0 ? terminal_partly_covered : terminal_covered;
}

std::size_t fins_look(const plant::PlantParameters& p) {
    if (p.soot < 0.08) return fins_clean;
    return p.soot < 0.5 ? fins_lightly_sooted : fins_heavily_sooted;
}

std::size_t tip_look(const plant::PlantParameters& p) {
    if (p.ionisation_gain > 0.85) return tip_clean;
    return p.ionisation_gain > 0.35 ? tip_coated : tip_heavily_coated;
}

std::size_t frost_look(const HeaterView& heater) {
    if (heater.parameters.cylinder_fed < 0.5) return frost_no_cylinder;
    if (heater.plant.cylinder_liquid_k > zero_celsius_k) return frost_none;
    const double fill = heater.plant.cylinder_kg / heater.parameters.cylinder_full_kg;
    return fill > 0.35 ? frost_line_high : frost_line_low;
}

double held(const Gauge& gauge, Hold hold) {
    if (hold == Hold::highest) return gauge.highest;
    return hold == Hold::lowest ? gauge.lowest : gauge.shown;
}

double pressure(Quantity quantity, Hold hold, const HeaterView& heater, const Senses& senses,
                const ToolSetup& tools) {
    if (tools.manometer == quantity && senses.manometer.primed) return held(senses.manometer, hold);
    if (quantity == Q::gas_inlet_pressure) return heater.plant.gas_inlet_pa;
    if (quantity == Q::regulator_pressure) return heater.plant.regulator_outlet_pa;
    return heater.plant.manifold_pa;
}

double analyser_value(Quantity quantity, Hold hold, const Senses& senses,
                      const TickInputs& inputs) {
    if (!senses.o2.primed) {  // never stepped: clean air
        if (quantity == Q::flue_o2) return 0.2095;
        return quantity == Q::flue_temperature ? inputs.surroundings.ambient_k : 0.0;
    }
    if (quantity == Q::flue_o2) return held(senses.o2, hold);
    if (quantity == Q::flue_co2) return held(senses.co2, hold);
    if (quantity == Q::flue_co) return held(senses.co, hold);
    return held(senses.flue_temperature, hold);
}

double meter_value(Quantity quantity, Hold hold, const HeaterView& heater, const Senses& senses) {
    switch (quantity) {
        case Q::outlet_ohms:
            return heater.plant.outlet_ohm;
        case Q::inlet_ohms:
            return heater.plant.inlet_ohm;
        case Q::exchanger_ohms:
            return heater.plant.exchanger_ohm;
        default:
            return senses.flame_current.primed ? held(senses.flame_current, hold)
                                               : heater.plant.ionisation_a;
    }
}

double water_value(Quantity quantity, const HeaterView& heater, const TickInputs& inputs,
                   const ToolSetup& tools) {
    const bool listed = tools.tap < no_tap && inputs.surroundings.outlet_count > 0;
    const bool listed_runs = listed && heater.plant.tap_m3_per_s[tools.tap] > 0.0;
    switch (quantity) {
        case Q::tap_temperature:
            return listed_runs ? heater.plant.tap_k[tools.tap] : heater.plant.tap_water_k;
        case Q::tap_flow:
            return listed ? heater.plant.tap_m3_per_s[tools.tap]
                          : heater.plant.hot_water_m3_per_s * tools.tap_opening_share;
        case Q::outlet_pipe_temperature:
            return heater.plant.outlet_water_k;
        case Q::inlet_pipe_temperature:
            return heater.plant.inlet_water_k;
        default:
            return heater.plant.exchanger_outlet_k;
    }
}

double readout_value(Quantity quantity, const controller::Readout& r) {
    switch (quantity) {
        case Q::readout_flow:
            return r.flow_m3_per_s;
        case Q::readout_inlet:
            return r.inlet_k;
        case Q::readout_outlet:
            return r.outlet_k;
        case Q::readout_exchanger:
            return r.exchanger_k;
        case Q::readout_fan:
            return r.fan_rev_per_s;
        case Q::readout_fan_current:
            return r.fan_current_a;
        case Q::readout_flame:
            return r.ionisation_a;
        case Q::readout_firing_rate:
            return r.heat_demand_w;
        case Q::readout_manifold_command:
            return r.manifold_command_pa;
        case Q::readout_ambient:
            return r.ambient_k;
        case Q::readout_correction:
            return r.loop_correction_k;
        case Q::readout_phase:
            return static_cast<double>(r.phase);
        case Q::readout_event:
            return static_cast<double>(r.latest_event);
        default:
            return r.air_trim;
    }
}

std::size_t category(Quantity quantity, Hold hold, const HeaterView& heater, const Senses& senses,
                     const controller::Panel& panel) {
    switch (quantity) {
        case Q::display_word:
            return controller::display_index(controller::display_word(heater.readout, panel));
        case Q::spark:
            return senses.spark_seen || heater.plant.spark_heard > 0.5 ? 1 : 0;
        case Q::flame:
            return flame_look(heater, senses);
        case Q::fan_sound:
            return fan_sound(hold == Hold::highest ? senses.loudest_fan_rev_per_s
                                                   : heater.plant.fan_rev_per_s);
        case Q::flue_terminal:
            return terminal_look(heater.parameters);
        case Q::exchanger_fins:
            return fins_look(heater.parameters);
        case Q::electrode_tip:
            return tip_look(heater.parameters);
        case Q::cylinder_frost:
            return frost_look(heater);
        default:
            return 0;
    }
}

}  // namespace

void Gauge::follow(double input, double lag_s) {
    if (!primed) {
        shown = highest = lowest = input;
        primed = true;
        return;
    }
    shown += (input - shown) * (signals::tick_s / (lag_s + signals::tick_s));
    highest = std::max(highest, shown);
    lowest = std::min(lowest, shown);
}

void Gauge::clear_hold() {
    highest = lowest = shown;
}

namespace {

void follow_manometer(Senses& senses, const HeaterView& heater, const ToolSetup& tools) {
    if (tools.manometer != senses.manometer_at) senses.manometer = Gauge{};
    senses.manometer_at = tools.manometer;
    const plant::Observables& p = heater.plant;
    if (tools.manometer == Q::gas_inlet_pressure) senses.manometer.follow(p.gas_inlet_pa, 0.5);
    if (tools.manometer == Q::regulator_pressure)
        senses.manometer.follow(p.regulator_outlet_pa, 0.5);
    if (tools.manometer == Q::manifold_pressure) senses.manometer.follow(p.manifold_pa, 0.5);
}

// The probe draws clean air until it is put into the flue; the cells answer in about ten seconds.
void follow_analyser(Senses& senses, const HeaterView& heater, const ToolSetup& tools) {
    if (!tools.analyser_sampling) {
        senses.o2 = senses.co2 = senses.co = senses.flue_temperature = Gauge{};
        return;
    }
    if (!senses.o2.primed) {
        senses.o2.follow(0.2095, 0.0);
        senses.co2.follow(0.0, 0.0);
        senses.co.follow(0.0, 0.0);
    }
    senses.o2.follow(heater.plant.o2_share, 8.0);
    senses.co2.follow(heater.plant.co2_share, 10.0);
    senses.co.follow((1.0 + hydrogen_shown * hydrogen_per_co) * heater.plant.co_share, 12.0);
    senses.flue_temperature.follow(heater.plant.flue_k, 2.0);
}

// Unrest: how far the air ratio strays from its own slow mean, smoothed as an eye does that watches a while.
void follow_flame(Senses& senses, const HeaterView& heater) {
    if (heater.plant.flame_lit <= 0.0 || heater.plant.excess_air_ratio <= 0.0) {
        senses.air_ratio = senses.flame_unrest = Gauge{};
        senses.burning_s = 0.0;
        return;
    }
    senses.burning_s += signals::tick_s;
    if (senses.burning_s < settles_s) return;
    senses.air_ratio.follow(heater.plant.excess_air_ratio, 4.0);
    const double stray = std::abs(heater.plant.excess_air_ratio / senses.air_ratio.shown - 1.0);
    senses.flame_unrest.follow(stray, 8.0);
}

}  // namespace

void Senses::step(const HeaterView& heater, const ToolSetup& tools) {
    if (tools.meter != Quantity::display_word)
        meter.follow(named_volts(tools.meter, heater), 0.0);
    else
        meter = Gauge{};
    follow_manometer(*this, heater, tools);
    follow_analyser(*this, heater, tools);
    if (tools.meter_in_flame_lead)
        flame_current.follow(heater.plant.ionisation_a, 0.3);
    else
        flame_current = Gauge{};
    if (tools.watching || tools.listening) {
        spark_seen = spark_seen || heater.plant.spark_heard > 0.5;
        loudest_fan_rev_per_s = std::max(loudest_fan_rev_per_s, heater.plant.fan_rev_per_s);
    }
    if (!tools.watching) {
        air_ratio = flame_unrest = Gauge{};
        burning_s = 0.0;
        return;
    }
    flame_seen = flame_seen || heater.plant.flame_lit > 0.0;
    follow_flame(*this, heater);
}

void Senses::start_watching() {
    spark_seen = flame_seen = false;
    loudest_fan_rev_per_s = 0.0;
    air_ratio = flame_unrest = Gauge{};
    burning_s = 0.0;
}

void Senses::clear_holds() {
    for (Gauge* gauge : {&manometer, &meter, &flame_current, &o2, &co2, &co, &flue_temperature})
        gauge->clear_hold();
}

bool at_rest(const ToolSetup& tools) {
    return tools.manometer == Quantity::display_word && !tools.analyser_sampling &&
           !tools.meter_in_flame_lead && tools.meter == Quantity::display_word && !tools.watching &&
           !tools.listening;
}

namespace {

/// A voltage whose log runs gives its extremes.
double logged_or(double now, Quantity quantity, Hold hold, const Senses& senses,
                 const ToolSetup& tools) {
    const bool logged = hold != Hold::now && tools.meter == quantity && senses.meter.primed;
    return logged ? held(senses.meter, hold) : now;
}

double any_value_of(Quantity quantity,
                    Hold hold,  // NOLINT(readability-function-size): what decides a reading
                    const HeaterView& heater, const Senses& senses, const TickInputs& inputs,
                    const ToolSetup& tools) {
    if (const auto of_house = house_value(quantity, heater, inputs)) return *of_house;
    if (const auto of_control = control_value(quantity, heater, inputs.panel)) return *of_control;
    if (const auto looked = look_value(quantity, heater, inputs)) return *looked;
    const QuantityInfo& row = info(quantity);
    if (is_electrical(quantity))
        return row.categorical
                   ? static_cast<double>(electrical_category(quantity, heater, senses, inputs))
                   : logged_or(electrical_value(quantity, heater, inputs, tools), quantity, hold,
                               senses, tools);
    if (row.categorical && row.tool != Tool::readout)
        return static_cast<double>(category(quantity, hold, heater, senses, inputs.panel));
    switch (row.tool) {
        case Tool::manometer:
            return pressure(quantity, hold, heater, senses, tools);
        case Tool::thermometer:
        case Tool::flow_cup:
            return water_value(quantity, heater, inputs, tools);
        case Tool::analyser:
            return analyser_value(quantity, hold, senses, inputs);
        case Tool::multimeter:
            return meter_value(quantity, hold, heater, senses);
        case Tool::scale:
            return heater.plant.cylinder_kg;
        case Tool::readout:
            return readout_value(quantity, heater.readout);
        default:
            return 0.0;
    }
}

}  // namespace

double value_of(Quantity quantity,
                Hold hold,  // NOLINT(readability-function-size): what decides a reading
                const HeaterView& heater, const Senses& senses, const TickInputs& inputs,
                const ToolSetup& tools) {
    return std::min(any_value_of(quantity, hold, heater, senses, inputs, tools),
                    most_shown(quantity));
}

}  // namespace emberpath::worksite
