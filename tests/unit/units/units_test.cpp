// Proves that every accepted unit is read and written back without loss, and the texts people see.

#include "sim/units/units.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace emberpath::units {
namespace {

using enum Dimension;

/// Uniform in [0, 1); the engine has the same bits everywhere, the standard distributions have not.
double uniform(std::mt19937_64& engine) {
    return static_cast<double>(engine() >> 11) * 0x1.0p-53;
}

constexpr int dimension_count = static_cast<int>(calorific_value) + 1;

double read(Dimension dimension, std::string_view text) {
    const Parsed parsed = parse(dimension, text);
    EXPECT_TRUE(parsed.good()) << text << ": " << parsed.found << "; " << parsed.expected;
    return parsed.si;
}

TEST(Units, ReadTheTradesValuesIntoSi) {
    EXPECT_DOUBLE_EQ(read(pressure, "2.75 kPa"), 2750.0);
    EXPECT_DOUBLE_EQ(read(pressure, "23.5 mbar"), 2350.0);
    EXPECT_DOUBLE_EQ(read(pressure, "25 Pa"), 25.0);
    EXPECT_DOUBLE_EQ(read(volume_flow, "10 L/min"), 10.0 / 60000.0);
    EXPECT_DOUBLE_EQ(read(volume_flow, "0.3 L/s"), 0.3e-3);
    EXPECT_DOUBLE_EQ(read(volume_flow, "0.3 m3/h"), 0.3 / 3600.0);
    EXPECT_DOUBLE_EQ(read(temperature, "50 °C"), 323.15);
    EXPECT_DOUBLE_EQ(read(temperature, "50 C"), 323.15);
    EXPECT_DOUBLE_EQ(read(temperature, "50 degC"), 323.15);
    EXPECT_DOUBLE_EQ(read(temperature, "-5°C"), 268.15);
    EXPECT_DOUBLE_EQ(read(temperature_difference, "20 K"), 20.0);
    EXPECT_DOUBLE_EQ(read(power, "40 MJ/h"), 40e6 / 3600.0);
    EXPECT_DOUBLE_EQ(read(power, "41 kW"), 41e3);
    EXPECT_DOUBLE_EQ(read(time, "30 min"), 1800.0);
    EXPECT_DOUBLE_EQ(read(time, "8 s"), 8.0);
    EXPECT_DOUBLE_EQ(read(mass, "45 kg"), 45.0);
    EXPECT_DOUBLE_EQ(read(length, "15 mm"), 0.015);
    EXPECT_DOUBLE_EQ(read(share, "30 %"), 0.3);
    EXPECT_DOUBLE_EQ(read(resistance, "10 kohm"), 1e4);
    EXPECT_DOUBLE_EQ(read(current, "8.6 µA"), 8.6e-6);
    EXPECT_DOUBLE_EQ(read(calorific_value, "37.78 MJ/m3"), 37.78e6);
    EXPECT_DOUBLE_EQ(read(rotation, "4800 rpm"), 80.0);
}

TEST(Units, AllowSpacesAndSignsAroundTheNumberOnly) {
    EXPECT_DOUBLE_EQ(read(pressure, "  +1e2   Pa "), 100.0);
    EXPECT_DOUBLE_EQ(read(pressure, "100Pa"), 100.0);
    for (const char* bad : {"", " ", "kPa", "2.75", "2 75 kPa", "2.75 kpa", "2.75 k Pa", "nan kPa",
                            "inf kPa", "-inf Pa", "1e999 Pa", "0x10 Pa", "1..2 Pa", "--1 Pa",
                            "+-1 Pa", "2.75 kPa kPa", "2.75 L/min", "2,75 kPa"})
        EXPECT_FALSE(parse(pressure, bad).good()) << bad;
}

TEST(Units, SayWhatWasFoundAndWhatWasExpected) {
    const Parsed bare = parse(pressure, "2.35", 0.0, 7000.0);
    EXPECT_EQ(bare.found, "\"2.35\", a number without a unit");
    EXPECT_EQ(bare.expected, "a pressure from 0 to 7 kPa, such as \"2.75 kPa\" or \"27.5 mbar\"");
    EXPECT_EQ(bare.suggestion, "");

    const Parsed spelling = parse(pressure, "2.35 kpa");
    EXPECT_EQ(spelling.found, "\"2.35 kpa\", with a unit that is not one of pressure");
    EXPECT_EQ(spelling.expected, "a pressure, such as \"2.75 kPa\" or \"27.5 mbar\"");
    EXPECT_EQ(spelling.suggestion, "kPa");

    EXPECT_EQ(parse(time, "soon").found, "\"soon\", not a number with a unit");
    EXPECT_EQ(parse(pressure, "2,35 kPa").found,
              "\"2,35 kPa\", with a comma where a decimal point belongs");
    EXPECT_EQ(parse(pressure, "9 kPa", 0.0, 7000.0).found, "\"9 kPa\", too high");
    EXPECT_EQ(parse(temperature, "-90 C", 200.0, 400.0).found, "\"-90 C\", too low");
    EXPECT_EQ(parse(temperature, "-90 C", 273.15, 368.15).expected,
              "a temperature from 0 to 95 °C, such as \"50 °C\" or \"50 C\"");
    EXPECT_EQ(expectation(mass, 0.0, std::numeric_limits<double>::infinity()),
              "a mass of at least 0 kg, such as \"45 kg\"");
    EXPECT_EQ(expectation(volume_flow, -std::numeric_limits<double>::infinity(), 0.001),
              "a flow of at most 60 L/min, such as \"10 L/min\" or \"0.3 m3/h\"");
}

TEST(Units, IncludeTheEndsOfARange) {
    EXPECT_TRUE(parse(pressure, "7 kPa", 0.0, 7000.0).good());
    EXPECT_TRUE(parse(pressure, "0 Pa", 0.0, 7000.0).good());
}

TEST(Units, EveryExampleInAnExpectationIsItselfAccepted) {
    for (int i = 0; i < dimension_count; ++i) {
        const auto dimension = static_cast<Dimension>(i);
        const std::string text = expectation(dimension);
        int examples = 0;
        for (std::size_t open = text.find('"'); open != std::string::npos;
             open = text.find('"', open + 1)) {
            const std::size_t close = text.find('"', open + 1);
            EXPECT_TRUE(parse(dimension, text.substr(open + 1, close - open - 1)).good()) << text;
            open = close;
            ++examples;
        }
        EXPECT_GE(examples, 1) << text;
    }
}

TEST(Units, WriteAndReadBackTheSameValueInEveryUnit) {
    std::mt19937_64 engine(20240601);
    int units_seen = 0;
    for (int i = 0; i < dimension_count; ++i) {
        const auto dimension = static_cast<Dimension>(i);
        ASSERT_FALSE(units_of(dimension).empty()) << name_of(dimension);
        for (const Unit& unit : units_of(dimension)) {
            ASSERT_EQ(unit.dimension, dimension);
            ++units_seen;
            for (int n = 0; n < 500; ++n) {
                const double number = (uniform(engine) - 0.3) * std::pow(10.0, n % 9 - 3);
                const double si = number * unit.factor / unit.divisor + unit.offset;
                const std::string text = write(dimension, si, unit.symbol);
                const double back = read(dimension, text);
                EXPECT_NEAR(back, si, 4e-16 * (std::abs(si) + unit.offset)) << text;
                // What is once written in a unit stays as it is written.
                EXPECT_NEAR(read(dimension, write(dimension, back, unit.symbol)), back,
                            4e-16 * (std::abs(si) + unit.offset));
            }
        }
    }
    EXPECT_GE(units_seen, 50);
}

TEST(Units, PrintedValuesReadBackWithinTheirLastDigit) {
    std::mt19937_64 engine(7);
    for (int i = 0; i < dimension_count; ++i) {
        const auto dimension = static_cast<Dimension>(i);
        for (const Unit& unit : units_of(dimension)) {
            for (int n = 0; n < 100; ++n) {
                const double number = uniform(engine) * std::pow(10.0, n % 5 - 1);
                const double si = number * unit.factor / unit.divisor + unit.offset;
                const double back = read(dimension, format(dimension, si, unit.symbol));
                EXPECT_NEAR(back, si, 0.51 * unit.factor / unit.divisor)
                    << format(dimension, si, unit.symbol);
                const double usual = read(dimension, format(dimension, si));
                EXPECT_TRUE(std::isfinite(usual));
            }
        }
    }
}

TEST(Units, PrintWithSensibleDecimals) {
    EXPECT_EQ(format_pressure(1820.0), "1.82 kPa");
    EXPECT_EQ(format_pressure(80.0), "0.08 kPa");
    EXPECT_EQ(format_pressure(400e3), "400 kPa");
    EXPECT_EQ(format(pressure, 12.4, "Pa"), "12 Pa");
    EXPECT_EQ(format(pressure, 1820.0, "mbar"), "18.2 mbar");
    EXPECT_EQ(format_temperature(323.15), "50.0 °C");
    EXPECT_EQ(format_temperature(272.65), "-0.5 °C");
    EXPECT_EQ(format(temperature_difference, 20.04), "20.0 K");
    EXPECT_EQ(format_flow(13.8 / 60000.0), "13.8 L/min");
    EXPECT_EQ(format_flow(2.64 / 3600.0), "44.0 L/min");
    EXPECT_EQ(format(volume_flow, 2.64 / 3600.0, "m3/h"), "2.640 m3/h");
    EXPECT_EQ(format_power(149e6 / 3600.0), "149 MJ/h");
    EXPECT_EQ(format_power(8.84e3), "31.8 MJ/h");
    EXPECT_EQ(format(power, 41.4e3, "kW"), "41.4 kW");
    EXPECT_EQ(format_resistance(4100.0), "4.10 kΩ");
    EXPECT_EQ(format_resistance(15548.0), "15.5 kΩ");
    EXPECT_EQ(format_resistance(470.0), "470 Ω");
    EXPECT_EQ(format_resistance(2.2e6), "2.20 MΩ");
    EXPECT_EQ(format_current(8.6e-6), "8.6 µA");
    EXPECT_EQ(format_current(0.46), "0.46 A");
    EXPECT_EQ(format_share(0.075), "7.5 %");
    EXPECT_EQ(format_ppm(15e-6), "15 ppm");
    EXPECT_EQ(format_rotation(4750.0 / 60.0), "4750 rev/min");
    EXPECT_EQ(format_time(8.0), "8.0 s");
    EXPECT_EQ(format_time(1800.0), "30.0 min");
    EXPECT_EQ(format(mass, 45.0), "45.0 kg");
    EXPECT_EQ(format(length, 0.015), "15 mm");
    EXPECT_EQ(format(length, 20.0), "20.00 m");
    EXPECT_EQ(format(calorific_value, 37.78e6), "37.8 MJ/m3");
    EXPECT_EQ(format(calorific_value, 37.78e6, "MJ/m3", 2), "37.78 MJ/m3");
}

TEST(Units, NeverPrintMinusZeroOrNonsense) {
    EXPECT_EQ(fixed(-0.04, 1), "0.0");
    EXPECT_EQ(fixed(-0.05001, 1), "-0.1");
    EXPECT_EQ(fixed(-0.0, 0), "0");
    EXPECT_EQ(format_pressure(-1.0), "0.00 kPa");
    EXPECT_EQ(format_pressure(std::nan("")), "no value");
    EXPECT_EQ(write(pressure, std::numeric_limits<double>::infinity(), "Pa"), "no value");
    EXPECT_EQ(fixed(1e300, 2).size(), 304U);
    EXPECT_EQ(format(pressure, 1820.0, "furlong"), "1.82 kPa");
}

}  // namespace
}  // namespace emberpath::units
