// Proves the thermistor formulas against published resistance tables and Ohm's law.

#include <gtest/gtest.h>

#include <map>

#include "sim/properties/thermistor.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::properties {
namespace {

using reference::after;
using reference::before;
using reference::Check;
using reference::mentions;
using reference::quantity;
using reference::Row;
using reference::rows;
using reference::Skip;

/// The two published tables, as the rows name them.
constexpr std::string_view b3435 = "B 3435 table";
constexpr std::string_view resistance_text = "resistance, NTC";

/// The published table of one type, from the rows of this file themselves, by temperature in degC.
std::map<double, double> table_ohm(std::string_view type) {
    const std::string beta = type == b3435 ? "B25/85 3435" : "B25/50 3950";
    std::map<double, double> table;
    for (const Row& row : reference::read_rows("09_thermistors"))
        if (row.quantity.starts_with(resistance_text) &&
            row.quantity.find(beta) != std::string::npos)
            table[after(row, "t=")] = reference::number_after("=" + row.value, "=") * 1e3;
    return table;
}

std::string_view type_of(const Row& row) {
    return mentions(row, b3435) ? b3435 : "B 3950 table";
}

BetaThermistor single_beta(const Row& row) {
    const bool generic = row.quantity.find("3950") != std::string::npos;
    return {reference::number_after(row.quantity, "NTC ") * 1e3, generic ? 3950.0 : 3435.0};
}

double single_beta_kohm(const Row& row) {
    return beta_resistance_ohm(single_beta(row), after(row, "t=") + 273.15) / 1e3;
}

/// The formula is the inverse of itself, so the same row also proves what the controller reads.
double controller_reading_kohm(const Row& row) {
    const BetaThermistor thermistor = single_beta(row);
    const double read_k = beta_temperature_k(thermistor, single_beta_kohm(row) * 1e3);
    return beta_resistance_ohm(thermistor, read_k) / 1e3;
}

double fitted_beta(const Row& row) {
    const auto table = table_ohm(type_of(row));
    const double cold = after(row, ", "), hot = after(row, "25/");
    return beta_from_two_points(table.at(cold), cold + 273.15, table.at(hot), hot + 273.15);
}

/// The published value at 85 degC, or the one that the published beta between 25 and 85 degC implies.
double at_85_degrees(std::string_view type, const std::map<double, double>& table) {
    if (table.contains(85.0)) return table.at(85.0);
    for (const Row& row : reference::read_rows("09_thermistors"))
        if (row.quantity.starts_with("beta from") && type_of(row) == type && mentions(row, "25/85"))
            return beta_resistance_ohm(
                BetaThermistor{table.at(25.0), reference::number_after("=" + row.value, "=")},
                358.15);
    throw std::runtime_error("no value at 85 degC");
}

SteinhartHart fitted(std::string_view type) {
    const auto table = table_ohm(type);
    return SteinhartHart::through({table.at(5.0), table.at(45.0), at_85_degrees(type, table)},
                                  {278.15, 318.15, 358.15});
}

double steinhart_temperature(const Row& row) {
    return fitted(type_of(row)).temperature_k(after(row, "R=") * 1e3) - 273.15;
}

/// The resistance that the three-constant formula gives at the row's temperature: bisection of its reading.
double steinhart_kohm(const Row& row) {
    const SteinhartHart formula = fitted(b3435);
    const double wanted_k = after(row, "t=") + 273.15;
    double low_ohm = 10.0, high_ohm = 1.0e6;
    for (int i = 0; i < 100; ++i) {
        const double middle_ohm = 0.5 * (low_ohm + high_ohm);
        (formula.temperature_k(middle_ohm) > wanted_k ? low_ohm : high_ohm) = middle_ohm;
    }
    return 0.5 * (low_ohm + high_ohm) / 1e3;
}

/// Rows of the first table, the sensor of the heater.
bool of_the_heaters_sensor(const Row& row) {
    return row.quantity.starts_with(resistance_text) &&
           row.quantity.find("3435") != std::string::npos;
}

double divider(const Row& row) {
    const double ohm = table_ohm(type_of(row)).at(before(row, " degC"));
    return divider_share(ohm, before(row, " kohm pull-up") * 1e3);
}

double coefficient_percent(const Row& row) {
    const BetaThermistor thermistor{10000.0, after(row, "beta ")};
    return 100.0 * temperature_coefficient_per_k(thermistor, before(row, " degC") + 273.15);
}

/// Outside what a heater's sensors meet, one beta no longer follows the table.
bool one_beta_holds(const Row& row) {
    if (!row.quantity.starts_with(resistance_text)) return false;
    const double t = after(row, "t=");
    return t >= 5.0 && (t <= 105.0 || of_the_heaters_sensor(row));
}

std::vector<Check> thermistor_checks() {
    return {
        // The second tolerance of these rows is for a single-beta model, as the heater's is; the first
        // is for a formula with more constants.
        {"beta_resistance_ohm", one_beta_holds, single_beta_kohm, 1},
        {"beta_temperature_k", one_beta_holds, controller_reading_kohm, 1},
        {"beta_resistance_ohm", rows("T001 T025 T026 T048"), single_beta_kohm, 1},  // known misses
        {"SteinhartHart::temperature_k, solved", of_the_heaters_sensor, steinhart_kohm, 0},
        {"beta_from_two_points", quantity("beta from the table"), fitted_beta},
        {"SteinhartHart::through", quantity("Steinhart-Hart A"),
         [](const Row& row) { return fitted(type_of(row)).a; }},
        {"SteinhartHart::through", quantity("Steinhart-Hart B"),
         [](const Row& row) { return fitted(type_of(row)).b; }},
        {"SteinhartHart::through", quantity("Steinhart-Hart C"),
         [](const Row& row) { return fitted(type_of(row)).c; }},
        {"SteinhartHart::temperature_k", quantity("Steinhart-Hart temperature"),
         steinhart_temperature},
        {"divider_share", quantity("divider voltage ratio"), divider},
        {"temperature_coefficient_per_k", quantity("temperature coefficient"), coefficient_percent},
        {"divider_share", quantity("divider ratio signature, short"),
         [](const Row&) { return divider_share(0.0, 10000.0); }},
    };
}

TEST(ThermistorReference, MatchesEveryPublishedRow) {
    const std::vector<Skip> skips{
        {rows("T001"),
         "at -20 degC one beta reads 14 % high (5 % allowed) and the three-constant formula 0.27 % "
         "(0.2 % allowed); sensors in a heater stay above 5 degC",
         true},
        {rows("T025 T026 T048"),
         "one beta misses this table by more than its tolerance below 5 degC and above 105; the "
         "heater has the other thermistor",
         true},
        {quantity("resistance outside the usable range"),
         "a table value far below the range of the beta formula"},
        {rows("T049"),
         "the table's value at 85 degC is not among the rows; this beta stands in for it"},
        {rows("T079"), "the name of a standard"},
    };
    reference::check_file("09_thermistors", thermistor_checks(), skips);
}

}  // namespace
}  // namespace emberpath::properties
