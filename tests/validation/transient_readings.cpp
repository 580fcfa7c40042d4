#include <array>

#include "tests/validation/transient_stories.hpp"

namespace emberpath::validation {

const ReadingInfo& info(Reading reading) {
    // clang-format off
    static constexpr std::array<ReadingInfo, reading_count> table{{
        {"working pressure",  "kPa",     1e-3,    0.0,    0.03, 2},
        {"manifold pressure", "kPa",     1e-3,    0.0,    0.01, 2},
        {"gas rate",          "kW",      1e-3,    0.0,    0.3,  1},
        {"water flow",        "L/min",   60000.0, 0.0,    0.1,  1},
        {"outlet",            "degC",    1.0,     273.15, 0.7,  1},
        {"exchanger outlet",  "degC",    1.0,     273.15, 0.7,  1},
        {"hottest metal",     "degC",    1.0,     273.15, 1.5,  1},
        {"flue",              "degC",    1.0,     273.15, 2.0,  0},
        {"air",               "m3/h",    3600.0,  0.0,    0.7,  1},
        {"fan speed",         "rev/min", 60.0,    0.0,    60.0, 0},
        {"oxygen",            "%",       100.0,   0.0,    0.2,  1},
        {"carbon dioxide",    "%",       100.0,   0.0,    0.15, 1},
        {"carbon monoxide",   "ppm",     1e6,     0.0,    4.0,  0},
        {"flame current",     "uA",      1e6,     0.0,    0.3,  1},
        {"loop correction",   "K",       1.0,     0.0,    0.4,  1},
    }};
    // clang-format on
    return table[static_cast<std::size_t>(reading)];
}

double value_of(Reading reading, const worksite::HeaterView& view) {
    const plant::Observables& p = view.plant;
    switch (reading) {
        case Reading::working_pressure:
            return p.gas_inlet_pa;
        case Reading::manifold_pressure:
            return p.manifold_pa;
        case Reading::gas_rate:
            return p.heat_input_w;
        case Reading::water_flow:
            return p.hot_water_m3_per_s;
        case Reading::outlet:
            return p.outlet_water_k;
        case Reading::exchanger_outlet:
            return p.exchanger_outlet_k;
        case Reading::hottest_metal:
            return p.hottest_metal_k;
        case Reading::flue:
            return p.flue_k;
        case Reading::air:
            return p.air_m3_per_s;
        case Reading::fan_speed:
            return p.fan_rev_per_s;
        case Reading::oxygen:
            return p.o2_share;
        case Reading::carbon_dioxide:
            return p.co2_share;
        case Reading::carbon_monoxide:
            return p.co_share;
        case Reading::flame_current:
            return p.ionisation_a;
        case Reading::correction:
            return view.readout.loop_correction_k;
    }
    return 0.0;
}

}  // namespace emberpath::validation
