#include "sim/units/units.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <vector>

#include "sim/diagnostics/diagnostic.hpp"

namespace emberpath::units {

namespace {

using enum Dimension;

// clang-format off
/// Grouped by dimension; the first of a group is the trade's usual unit. Horsepower, pounds and inches
/// are not here on purpose: the trade this program trains for does not use them.
constexpr std::array table{
    Unit{pressure, "kPa", 1e3}, Unit{pressure, "Pa", 1.0}, Unit{pressure, "mbar", 100.0},
    Unit{pressure, "bar", 1e5}, Unit{pressure, "hPa", 100.0}, Unit{pressure, "MPa", 1e6},
    Unit{temperature, "°C", 1.0, 1.0, 273.15}, Unit{temperature, "C", 1.0, 1.0, 273.15},
    Unit{temperature, "degC", 1.0, 1.0, 273.15}, Unit{temperature, "K", 1.0},
    Unit{temperature_difference, "K", 1.0},
    Unit{volume_flow, "L/min", 1.0, 6e4}, Unit{volume_flow, "l/min", 1.0, 6e4},
    Unit{volume_flow, "L/s", 1.0, 1e3}, Unit{volume_flow, "L/h", 1.0, 3.6e6},
    Unit{volume_flow, "m3/h", 1.0, 3600.0}, Unit{volume_flow, "m³/h", 1.0, 3600.0},
    Unit{volume_flow, "m3/s", 1.0},
    Unit{power, "MJ/h", 1e6, 3600.0}, Unit{power, "kW", 1e3}, Unit{power, "W", 1.0},
    Unit{power, "MW", 1e6},
    Unit{energy, "MJ", 1e6}, Unit{energy, "kJ", 1e3}, Unit{energy, "J", 1.0},
    Unit{energy, "kWh", 3.6e6},
    Unit{time, "s", 1.0}, Unit{time, "min", 60.0}, Unit{time, "h", 3600.0}, Unit{time, "ms", 1.0, 1e3},
    Unit{time, "d", 86400.0},
    Unit{mass, "kg", 1.0}, Unit{mass, "g", 1.0, 1e3}, Unit{mass, "t", 1e3},
    Unit{length, "mm", 1.0, 1e3}, Unit{length, "m", 1.0}, Unit{length, "cm", 1.0, 100.0},
    Unit{area, "m2", 1.0}, Unit{area, "m²", 1.0}, Unit{area, "cm2", 1.0, 1e4}, Unit{area, "cm²", 1.0, 1e4},
    Unit{volume, "L", 1.0, 1e3}, Unit{volume, "l", 1.0, 1e3}, Unit{volume, "m3", 1.0},
    Unit{volume, "m³", 1.0}, Unit{volume, "mL", 1.0, 1e6},
    Unit{share, "%", 1.0, 100.0}, Unit{share, "ppm", 1.0, 1e6},
    Unit{resistance, "kΩ", 1e3}, Unit{resistance, "Ω", 1.0}, Unit{resistance, "MΩ", 1e6},
    Unit{resistance, "kohm", 1e3}, Unit{resistance, "ohm", 1.0}, Unit{resistance, "Mohm", 1e6},
    Unit{current, "µA", 1.0, 1e6}, Unit{current, "uA", 1.0, 1e6}, Unit{current, "mA", 1.0, 1e3},
    Unit{current, "A", 1.0},
    Unit{voltage, "V", 1.0}, Unit{voltage, "mV", 1.0, 1e3},
    Unit{speed, "m/s", 1.0}, Unit{speed, "km/h", 1.0, 3.6},
    Unit{rotation, "rev/min", 1.0, 60.0}, Unit{rotation, "rpm", 1.0, 60.0}, Unit{rotation, "rev/s", 1.0},
    Unit{calorific_value, "MJ/m3", 1e6}, Unit{calorific_value, "MJ/m³", 1e6},
};

struct About {
    Dimension dimension;
    std::string_view with_article;
    std::string_view examples;
};
constexpr std::array about{
    About{pressure, "a pressure", R"("2.75 kPa" or "27.5 mbar")"},
    About{temperature, "a temperature", R"("50 °C" or "50 C")"},
    About{temperature_difference, "a temperature difference", R"("20 K")"},
    About{volume_flow, "a flow", R"("10 L/min" or "0.3 m3/h")"},
    About{power, "a heat rate", R"("40 MJ/h" or "11.1 kW")"},
    About{energy, "an energy", R"("250 MJ" or "69 kWh")"},
    About{time, "a time", R"("8 s" or "30 min")"},
    About{mass, "a mass", R"("45 kg")"},
    About{length, "a length", R"("15 mm" or "20 m")"},
    About{area, "an area", R"("0.4 m2" or "300 cm2")"},
    About{volume, "a volume", R"("0.5 L" or "0.02 m3")"},
    About{share, "a share", R"("30 %")"},
    About{resistance, "a resistance", R"("10 kohm" or "470 ohm")"},
    About{current, "a current", R"("8.6 uA" or "0.5 A")"},
    About{voltage, "a voltage", R"("230 V")"},
    About{speed, "a speed", R"("6 m/s" or "20 km/h")"},
    About{rotation, "a rotational speed", R"("4750 rev/min")"},
    About{calorific_value, "a calorific value", R"("37.78 MJ/m3")"},
};
// clang-format on

/// Exact powers of ten and of sixty stay exact; the only rounding is that of one product or quotient.
double to_si(const Unit& unit, double number) {
    return number * unit.factor / unit.divisor + unit.offset;
}

double from_si(const Unit& unit, double si) {
    return (si - unit.offset) * unit.divisor / unit.factor;
}

const About& about_of(Dimension dimension) {
    return about[static_cast<std::size_t>(dimension)];
}

const Unit& unit_named(Dimension dimension, std::string_view symbol) {
    const auto units = units_of(dimension);
    const auto at = std::find_if(units.begin(), units.end(),
                                 [&](const Unit& unit) { return unit.symbol == symbol; });
    return at == units.end() ? units.front() : *at;
}

std::string shortest(double value) {
    std::array<char, 64> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value).ptr;
    return {buffer.data(), end};
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
    return text;
}

std::string quoted(std::string_view text) {
    return "\"" + std::string(text) + "\"";
}

/// Three figures for readings that span decades, as a person would copy them down.
int three_figures(double number) {
    const double size = std::abs(number);
    if (size >= 99.95) return 0;
    return size >= 9.995 ? 1 : 2;
}

int decimals_for(const Unit& unit, double number) {
    const std::string_view symbol = unit.symbol;
    if (symbol == "Pa" || symbol == "ppm" || symbol == "ms" || symbol == "W" || symbol == "rpm" ||
        symbol == "rev/min" || symbol == "L/h" || symbol == "mm" || symbol == "mL" ||
        symbol == "J" || symbol == "g" || symbol == "V" || symbol == "mV")
        return 0;
    switch (unit.dimension) {
        case temperature:
        case temperature_difference:
        case time:
        case mass:
        case speed:
        case share:
            return 1;
        case volume_flow:
            return symbol == "m3/s" ? 6 : (symbol.starts_with("m") ? 3 : 1);
        case current:
            return symbol == "A" ? 2 : 1;
        case length:
        case area:
            return 2;
        case pressure:
        case power:
        case energy:
        case volume:
        case resistance:
        case voltage:
        case rotation:
        case calorific_value:
            break;
    }
    return three_figures(number);
}

/// The usual unit, except where a reading spans decades and a tester would switch range.
const Unit& usual_unit(Dimension dimension, double si) {
    const double size = std::abs(si);
    if (dimension == resistance)
        return unit_named(resistance, size < 999.5 ? "Ω" : (size < 999.5e3 ? "kΩ" : "MΩ"));
    if (dimension == current)
        return unit_named(current, size < 0.999e-3 ? "µA" : (size < 0.05 ? "mA" : "A"));
    if (dimension == time)
        return unit_named(time, size < 119.95 ? "s" : (size < 7197 ? "min" : "h"));
    if (dimension == length) return unit_named(length, size < 0.9995 ? "mm" : "m");
    return units_of(dimension).front();
}

std::string with_unit(const Unit& unit, double si, int decimals) {
    if (!std::isfinite(si)) return "no value";
    return fixed(from_si(unit, si), decimals) + " " + std::string(unit.symbol);
}

std::string limit(const Unit& unit, double si) {
    // Twelve figures hide the last bits of the conversion: "7 kPa", never "7.000000000000001 kPa".
    std::array<char, 64> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), from_si(unit, si),
                                   std::chars_format::general, 12)
                         .ptr;
    return {buffer.data(), end};
}

struct Number {
    double value = 0.0;
    std::string_view rest;
    bool good = false;
};

Number leading_number(std::string_view text) {
    Number number;
    if (text.starts_with('+') && !text.starts_with("+-")) text.remove_prefix(1);
    const auto end = std::from_chars(text.data(), text.data() + text.size(), number.value);
    number.good = end.ec == std::errc{} && std::isfinite(number.value);
    number.rest = text.substr(static_cast<std::size_t>(end.ptr - text.data()));
    return number;
}

std::string nearest_unit(Dimension dimension, std::string_view symbol) {
    std::vector<std::string> symbols;
    for (const Unit& unit : units_of(dimension)) symbols.emplace_back(unit.symbol);
    return diagnostics::nearest_word(symbol, symbols);
}

}  // namespace

std::span<const Unit> units_of(Dimension dimension) {
    const auto first = std::find_if(table.begin(), table.end(),
                                    [&](const Unit& unit) { return unit.dimension == dimension; });
    const auto last = std::find_if(first, table.end(),
                                   [&](const Unit& unit) { return unit.dimension != dimension; });
    return {first, last};
}

std::string_view name_of(Dimension dimension) {
    const std::string_view text = about_of(dimension).with_article;
    return text.substr(text.find(' ') + 1);
}

Parsed parse(Dimension dimension, std::string_view text) {
    constexpr double unlimited = std::numeric_limits<double>::infinity();
    return parse(dimension, text, -unlimited, unlimited);
}

Parsed parse(Dimension dimension, std::string_view text, double low_si, double high_si) {
    Parsed parsed;
    parsed.expected = expectation(dimension, low_si, high_si);
    const Number number = leading_number(trimmed(text));
    const std::string_view symbol = trimmed(number.rest);
    if (!number.good) {
        parsed.found = quoted(text) + ", not a number with a unit";
        return parsed;
    }
    if (symbol.empty()) {
        parsed.found = quoted(text) + ", a number without a unit";
        return parsed;
    }
    const Unit& unit = unit_named(dimension, symbol);
    if (unit.symbol != symbol) {
        const bool comma =
            symbol.size() > 1 && symbol[0] == ',' && symbol[1] >= '0' && symbol[1] <= '9';
        parsed.found = quoted(text) + (comma ? ", with a comma where a decimal point belongs"
                                             : ", with a unit that is not one of " +
                                                   std::string(name_of(dimension)));
        if (!comma) parsed.suggestion = nearest_unit(dimension, symbol);
        return parsed;
    }
    const double si = to_si(unit, number.value);
    if (si < low_si || si > high_si) {
        parsed.found = quoted(text) + (si < low_si ? ", too low" : ", too high");
        return parsed;
    }
    parsed.expected.clear();
    parsed.si = si;
    return parsed;
}

std::string expectation(Dimension dimension) {
    constexpr double unlimited = std::numeric_limits<double>::infinity();
    return expectation(dimension, -unlimited, unlimited);
}

std::string expectation(Dimension dimension, double low_si, double high_si) {
    const About& words = about_of(dimension);
    const Unit& unit = units_of(dimension).front();
    std::string text(words.with_article);
    if (std::isfinite(low_si) && std::isfinite(high_si)) {
        text += " from " + limit(unit, low_si) + " to " + limit(unit, high_si);
        text += " " + std::string(unit.symbol);
    } else if (std::isfinite(low_si)) {
        text += " of at least " + limit(unit, low_si) + " " + std::string(unit.symbol);
    } else if (std::isfinite(high_si)) {
        text += " of at most " + limit(unit, high_si) + " " + std::string(unit.symbol);
    }
    return text + ", such as " + std::string(words.examples);
}

std::string format(Dimension dimension, double si) {
    const Unit& unit = usual_unit(dimension, si);
    return with_unit(unit, si, decimals_for(unit, from_si(unit, si)));
}

std::string format(Dimension dimension, double si, std::string_view symbol) {
    const Unit& unit = unit_named(dimension, symbol);
    return with_unit(unit, si, decimals_for(unit, from_si(unit, si)));
}

std::string format(Dimension dimension, double si, std::string_view symbol, int decimals) {
    return with_unit(unit_named(dimension, symbol), si, decimals);
}

std::string write(Dimension dimension, double si, std::string_view symbol) {
    const Unit& unit = unit_named(dimension, symbol);
    if (!std::isfinite(si)) return "no value";
    return shortest(from_si(unit, si)) + " " + std::string(unit.symbol);
}

std::string fixed(double value, int decimals) {
    if (!std::isfinite(value)) return "no value";
    std::array<char, 400> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                   std::chars_format::fixed, std::clamp(decimals, 0, 20))
                         .ptr;
    std::string text(buffer.data(), end);
    if (text.starts_with('-') && text.find_first_of("123456789") == std::string::npos)
        text.erase(0, 1);
    return text;
}

}  // namespace emberpath::units
