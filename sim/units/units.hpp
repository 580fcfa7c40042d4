#pragma once
/// SI inside, trade units at the edges: the one table of units that input and output may use, how to
/// read a value with its unit, and how to print one.
///
/// SI values: Pa (gauge or absolute as the quantity says), K (thermodynamic; differences also K), m3/s,
/// W, J, s, kg, m, m2, m3, share 0 to 1, ohm, A, V, m/s, rev/s, J/m3.
/// No locale: digits and the decimal point are always the same.
/// Checked   tests/unit/units/units_test.cpp

#include <span>
#include <string>
#include <string_view>

namespace emberpath::units {

enum class Dimension {
    pressure,
    temperature,
    temperature_difference,
    volume_flow,
    power,
    energy,
    time,
    mass,
    length,
    area,
    volume,
    share,
    resistance,
    current,
    voltage,
    speed,
    rotation,
    calorific_value
};

/// One unit of the table. SI value = number * factor / divisor + offset.
struct Unit {
    Dimension dimension;
    std::string_view symbol;
    double factor;
    double divisor = 1.0;
    double offset = 0.0;
};

/// Every accepted unit of a dimension; the first is the one the trade (and this program) prints.
[[nodiscard]] std::span<const Unit> units_of(Dimension dimension);

/// "pressure", "temperature difference", "flow" ...: for sentences.
[[nodiscard]] std::string_view name_of(Dimension dimension);

/// What came of reading a text. Errors are values: what was found and what was expected instead, in the
/// words diagnostics::Diagnostic wants them; `suggestion` is the nearest valid spelling of the unit.
struct Parsed {
    double si = 0.0;
    std::string found;
    std::string expected;
    std::string suggestion;
    [[nodiscard]] bool good() const { return found.empty(); }
};

/// Reads "2.75 kPa", "50 °C", "50 C", "10L/min", "-5 degC", "30 %". The space is optional, the unit is
/// not: a bare number is an error. Spelling of units is exact, as "mW" and "MW" are different things.
[[nodiscard]] Parsed parse(Dimension dimension, std::string_view text);

/// The same, and the value must lie from `low_si` to `high_si` (both included).
[[nodiscard]] Parsed parse(Dimension dimension, std::string_view text, double low_si,
                           double high_si);

/// What to say where a value of this dimension is expected:
/// `a pressure, such as "2.75 kPa" or "27.5 mbar"`, or with limits
/// `a pressure from 0 to 7 kPa, such as ...`. Limits that are not finite are left out.
[[nodiscard]] std::string expectation(Dimension dimension);
[[nodiscard]] std::string expectation(Dimension dimension, double low_si, double high_si);

/// In the trade's usual unit with sensible decimals: "1.82 kPa", "50.0 °C", "13.8 L/min", "149 MJ/h",
/// "4.10 kΩ", "8.6 µA", "7.5 %", "4750 rev/min". A value that is not finite reads "no value".
[[nodiscard]] std::string format(Dimension dimension, double si);

/// In the unit named, with the decimals that suit it: format(share, 15e-6, "ppm") is "15 ppm". The unit
/// must be one of units_of(dimension); an unknown one gives the usual unit.
[[nodiscard]] std::string format(Dimension dimension, double si, std::string_view unit);

/// In the unit named with exactly `decimals` decimals.
[[nodiscard]] std::string format(Dimension dimension, double si, std::string_view unit,
                                 int decimals);

/// The shortest text that parse() reads back to the same number in that unit: for files and records.
[[nodiscard]] std::string write(Dimension dimension, double si, std::string_view unit);

/// The number alone, `decimals` after the point, never "-0".
[[nodiscard]] std::string fixed(double value, int decimals);

// Shorthands for what screens and reports print most.
[[nodiscard]] inline std::string format_pressure(double pa) {
    return format(Dimension::pressure, pa);
}
[[nodiscard]] inline std::string format_temperature(double kelvin) {
    return format(Dimension::temperature, kelvin);
}
[[nodiscard]] inline std::string format_flow(double m3_per_s) {
    return format(Dimension::volume_flow, m3_per_s);
}
[[nodiscard]] inline std::string format_power(double w) {
    return format(Dimension::power, w);
}
[[nodiscard]] inline std::string format_resistance(double ohm) {
    return format(Dimension::resistance, ohm);
}
[[nodiscard]] inline std::string format_current(double a) {
    return format(Dimension::current, a);
}
[[nodiscard]] inline std::string format_share(double share) {
    return format(Dimension::share, share);
}
[[nodiscard]] inline std::string format_ppm(double share) {
    return format(Dimension::share, share, "ppm");
}
[[nodiscard]] inline std::string format_rotation(double rev_per_s) {
    return format(Dimension::rotation, rev_per_s);
}
[[nodiscard]] inline std::string format_time(double s) {
    return format(Dimension::time, s);
}

}  // namespace emberpath::units
