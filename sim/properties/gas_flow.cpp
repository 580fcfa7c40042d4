#include "sim/properties/gas_flow.hpp"

namespace emberpath::properties {

namespace {

constexpr double inch_m = 0.0254;
constexpr double foot_m = 0.3048;
constexpr double inch_of_water_pa = 249.08891;  // at 4 degC
constexpr double cubic_foot_m3 = foot_m * foot_m * foot_m;
constexpr double hour_s = 3600.0;

double fifth_power(double x) {
    return x * x * x * x * x;
}

}  // namespace

double pole_resistance(const GasPipe& pipe) {
    // h = s L (Q/0.0071)^2 / d^5 in the formula's units, turned into Pa and m3/s.
    const double per_hour = hour_s / 0.0071;
    return 100.0 * pipe.relative_density * pipe.length_m * per_hour * per_hour /
           fifth_power(1e3 * pipe.bore_m);
}

double pole_flow_m3_per_s(const GasPipe& pipe, double pressure_drop_pa) {
    return math::square_root(pressure_drop_pa / pole_resistance(pipe));
}

double pole_imperial_flow_m3_per_s(const GasPipe& pipe, double pressure_drop_pa) {
    const double ratio = fifth_power(pipe.bore_m / inch_m) * (pressure_drop_pa / inch_of_water_pa) /
                         (0.33 * pipe.length_m / foot_m * pipe.relative_density);
    return 1350.0 * math::square_root(ratio) * cubic_foot_m3 / hour_s;
}

double spitzglass_flow_m3_per_s(const GasPipe& pipe, double pressure_drop_pa) {
    const double d = pipe.bore_m / inch_m;
    const double ratio = fifth_power(d) / (1.0 + 3.6 / d + 0.03 * d) *
                         (pressure_drop_pa / inch_of_water_pa) /
                         (pipe.length_m / foot_m * pipe.relative_density);
    return 3550.0 * math::square_root(ratio) * cubic_foot_m3 / hour_s;
}

double code_natural_gas_flow_m3_per_s(double bore_m, double length_m, double pressure_drop_pa) {
    constexpr double natural_gas_factor = 0.6094;
    const double gradient =
        pressure_drop_pa / inch_of_water_pa / (natural_gas_factor * length_m / foot_m);
    const double base = 19.17 * (bore_m / inch_m) * math::power(gradient, 0.206);
    return math::power(base, 1.0 / 0.381) * cubic_foot_m3 / hour_s;
}

}  // namespace emberpath::properties
