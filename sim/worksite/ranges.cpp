// Where the range of each instrument ends, and a figure with it.

#include <limits>

#include "sim/worksite/observation.hpp"

namespace emberpath::worksite {

namespace {

using Q = Quantity;

constexpr double litre_per_min = 1.0 / 60000.0;  // [m3/s]
constexpr double zero_celsius_k = 273.15;
constexpr double co_range = 0.01;                        // analyser: 10 000 ppm
constexpr double flue_range_k = 600.0 + zero_celsius_k;  // analyser's probe: chosen
constexpr double ohm_range = 1.0e7;                      // multimeter: 10 megohm
constexpr double insulation_range = 2.0e8;               // insulation tester: 200 megohm
constexpr double endless = std::numeric_limits<double>::infinity();

bool measures_ohms(Quantity quantity) {
    switch (quantity) {
        case Q::outlet_ohms:
        case Q::inlet_ohms:
        case Q::exchanger_ohms:
        case Q::earth_ohms:
        case Q::insulation_ohms:
        case Q::valve_coil_ohms:
        case Q::valve_lead_ohms:
        case Q::igniter_lead_ohms:
        case Q::flame_lead_ohms:
        case Q::companion_link_ohms:
        case Q::ohms_between:
            return true;
        default:
            return false;
    }
}

double most_of_multimeter(Quantity quantity) {
    if (measures_ohms(quantity)) return greatest_ohm(quantity);
    constexpr double volts = 600.0, ampere = 0.4;
    return quantity == Q::meter_current || quantity == Q::flame_current ? ampere : volts;
}

}  // namespace

double greatest_ohm(Quantity quantity) {
    return quantity == Q::insulation_ohms || quantity == Q::igniter_lead_ohms ? insulation_range
                                                                              : ohm_range;
}

double most_shown(Quantity quantity) {
    const QuantityInfo& row = info(quantity);
    if (row.categorical) return endless;
    switch (row.tool) {
        case Tool::manometer:
            return 10.0e3;
        case Tool::multimeter:
            return most_of_multimeter(quantity);
        case Tool::analyser:
            if (quantity == Q::flue_temperature) return flue_range_k;
            return quantity == Q::flue_co || quantity == Q::room_co || quantity == Q::case_co
                       ? co_range
                       : endless;
        case Tool::thermometer:
            return 200.0 + zero_celsius_k;
        case Tool::flow_cup:
            return 30.0 * litre_per_min;
        case Tool::scale:
            return 150.0;
        case Tool::clamp:
            return 100.0;
        case Tool::safety_switch_tester:
            return quantity == Q::break_time ? 0.5 : 0.1;
        case Tool::gas_detector:
            return 1.0;
        case Tool::water_gauge:
            return 1.6e6;
        default:
            return endless;
    }
}

bool over_range(Quantity quantity, double value) {
    constexpr double open_circuit = 0.9;  // of an ohmmeter's range: nothing at a house lies between
    return value >= (measures_ohms(quantity) ? open_circuit : 1.0) * most_shown(quantity);
}

}  // namespace emberpath::worksite
