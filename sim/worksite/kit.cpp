#include "sim/worksite/kit.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/units/per_cent.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/observation.hpp"

namespace emberpath::worksite {

namespace {

using I = Instrument;

// clang-format off
constexpr std::array<InstrumentInfo, instrument_count> table{{
    {I::manometer, "manometer", "gas pressure at a test point, by hose", "0 to 10 kPa, over range beyond", "0.5 s", "hose open to air: its zero; against the spare", 15, true, 12},
    {I::multimeter, "multimeter", "volts, ohms, milliamperes, microamperes", "600 V; 10 megohm, over range beyond; 0.4 A, then its fuse goes", "at once; flame current 0.3 s", "leads together, and on the proving unit", 30, true, 12},
    {I::clamp_meter, "clamp meter", "current around one conductor, or what does not come back around two", "to 100 A, over range beyond; from 0.1 mA around both conductors, from 10 mA around one", "at once", "around nothing", 15, true, 12},
    {I::voltage_tester, "voltage tester", "whether a voltage stands between two terminals", "12 to 690 V; below 12 V it stays dark", "at once", "on its proving unit, before and after", 15, true, 12},
    {I::insulation_tester, "insulation tester", "insulation at 500 V", "1 kohm to 200 megohm, over range beyond", "at once", "on its check resistor of 1 megohm", 30, true, 12},
    {I::safety_switch_tester, "safety switch tester", "the current at which a safety switch opens and how soon it does, from the socket", "3 to 100 mA rising, over range beyond; up to 150 mA and 500 ms at once", "1 s", "on its check load of 30 mA", 30, false, 12},
    {I::analyser, "analyser", "oxygen, carbon dioxide, carbon monoxide and temperature of flue gas; carbon monoxide in a room", "0 to 25 % oxygen; 0 to 10 000 ppm and 0 to 600 °C, over range beyond", "1 min of warming up; then 63 % of a step in 8 s (oxygen), 10 s (carbon dioxide), 12 s (carbon monoxide)", "in clean air: 20.9 % and nothing", 60, true, 6},
    {I::thermometer, "thermometer", "water with its probe, pipes with its contact tip", "-40 to 200 °C, over range beyond", "within its act", "in melting ice: nothing", 180, true, 12},
    {I::flow_cup, "flow cup", "flow, with a watch", "up to 30 L/min; beyond, it runs over before anybody can time it: over range", "within its act", "its litre by weight", 90, false, 0},
    {I::scale, "scale", "cylinders", "0 to 150 kg, over range beyond", "within its act", "with the test weight of 10 kg", 60, true, 12},
    {I::gas_detector, "gas detector", "fuel gas in air, as a share of what can burn", "0 to 100 % of the lower flammability limit, over range beyond", "within its act", "on a puff of test gas at half the limit", 45, true, 6},
    {I::co_alarm, "co alarm", "carbon monoxide where it is worn: it sounds at the limit of the rules", "sounds; shows no figure", "at once", "with its button", 5, true, 12},
    {I::leak_fluid, "leak fluid", "whether a joint under pressure leaks: it foams", "any leak of a joint under pressure", "within its act", "shaken in its bottle: it foams", 10, false, 12},
    {I::water_gauge, "water gauge", "pressure of the cold water", "0 to 1600 kPa, over range beyond", "within its act", "open to air: nothing; against the spare", 15, false, 12},
}};
// clang-format on

constexpr bool in_enum_order() {
    for (std::size_t i = 0; i < instrument_count; ++i)
        if (table[i].instrument != static_cast<Instrument>(i)) return false;
    return true;
}
static_assert(in_enum_order(), "the table follows the order of Instrument");

constexpr double sagging_reference = 1.08;
constexpr double carbon_dioxide_per_oxygen = 0.57;  // of products: 11.9 % at 20.95 % used
constexpr std::int64_t days_a_month = 30;

bool is_ohms(Quantity quantity) {
    using Q = Quantity;
    return quantity == Q::outlet_ohms || quantity == Q::inlet_ohms ||
           quantity == Q::exchanger_ohms || quantity == Q::ohms_between ||
           quantity == Q::earth_ohms || quantity == Q::valve_coil_ohms ||
           quantity == Q::valve_lead_ohms || quantity == Q::flame_lead_ohms;
}

/// Everything a multimeter measures with its reference voltage but currents.
bool feels_battery(Quantity quantity) {
    return instrument_of(quantity) == I::multimeter && quantity != Quantity::flame_current &&
           quantity != Quantity::meter_current;
}

std::string_view month_name(int month) {
    constexpr std::array<std::string_view, 12> names{
        "January", "February", "March",     "April",   "May",      "June",
        "July",    "August",   "September", "October", "November", "December"};
    return names[static_cast<std::size_t>(month - 1)];
}

int number_of(std::string_view digits) {
    int value = 0;
    for (const char c : digits) value = value * 10 + (c - '0');
    return value;
}

struct Date {
    int year, month, day;
};

int days_in(const Date& date) {
    constexpr std::array lengths{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const bool leap = date.year % 4 == 0 && (date.year % 100 != 0 || date.year % 400 == 0);
    return lengths[static_cast<std::size_t>(date.month - 1)] + (date.month == 2 && leap ? 1 : 0);
}

std::optional<Date> date_of(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    for (const std::size_t at : {0U, 1U, 2U, 3U, 5U, 6U, 8U, 9U})
        if (text[at] < '0' || text[at] > '9') return std::nullopt;
    const Date date{number_of(text.substr(0, 4)), number_of(text.substr(5, 2)),
                    number_of(text.substr(8, 2))};
    if (date.month < 1 || date.month > 12 || date.day < 1) return std::nullopt;
    return date.day <= days_in(date) ? std::optional(date) : std::nullopt;
}

std::string_view battery_words(Battery battery) {
    if (battery == Battery::good) return "Its battery is good.";
    return battery == Battery::low ? "Its battery sign blinks: low." : "Its face stays dark.";
}

/// A difference, not a point on the scale: 0.5 K, not -272.7 °C.
std::string difference_of(Quantity quantity, double si) {
    if (quantity == Quantity::gas_in_air) return units::per_cent(si, 1) + " of the limit";
    if (info(quantity).error_absolute < 0.1 && info(quantity).title.starts_with("link cable"))
        return units::fixed(si, 2) + " V";
    // Its readings are shown to 0.1 mA, its class is finer.
    if (quantity == Quantity::meter_current && si < 0.05e-3)
        return units::fixed(1.0e6 * si, 0) + " µA";
    const bool temperature =
        instrument_of(quantity) == I::thermometer || quantity == Quantity::flue_temperature;
    return temperature ? units::fixed(si, 1) + " K" : text_of(quantity, si);
}

std::string class_of(const QuantityInfo& row) {
    std::string text;
    if (row.error_absolute > 0.0) text = difference_of(row.quantity, row.error_absolute);
    if (row.error_relative > 0.0)
        text += (text.empty() ? "" : " + ") +
                units::fixed(100.0 * row.error_relative, row.error_relative < 0.01 ? 1 : 0) +
                " % of the reading";
    return text;
}

std::vector<const QuantityInfo*> shown_by(Instrument instrument) {
    std::vector<const QuantityInfo*> rows;
    for (std::size_t i = 0; i < figure_count; ++i) {
        const auto quantity = static_cast<Quantity>(i);
        if (instrument_of(quantity) == instrument) rows.push_back(&info(quantity));
    }
    return rows;
}

/// One quantity for each range of the multimeter; docs/instruments.md has them all.
bool stands_for_a_range(Quantity quantity) {
    return quantity == Quantity::outlet_ohms || quantity == Quantity::ohms_between ||
           quantity == Quantity::terminal_volts || quantity == Quantity::link_heater_volts ||
           quantity == Quantity::flame_current || quantity == Quantity::meter_current;
}

}  // namespace

const InstrumentInfo& info(Instrument instrument) {
    return table[static_cast<std::size_t>(instrument)];
}

std::optional<Instrument> find_instrument(std::string_view word) {
    const auto found = std::find_if(table.begin(), table.end(),
                                    [word](const auto& row) { return row.word == word; });
    return found == table.end() ? std::nullopt : std::optional(found->instrument);
}

std::optional<Instrument> instrument_of(Quantity quantity) {
    switch (info(quantity).tool) {
        case Tool::manometer:
            return I::manometer;
        case Tool::multimeter: {
            const bool at_500_v =
                quantity == Quantity::insulation_ohms || quantity == Quantity::igniter_lead_ohms;
            return at_500_v ? I::insulation_tester : I::multimeter;
        }
        case Tool::analyser:
            return I::analyser;
        case Tool::thermometer:
            return I::thermometer;
        case Tool::flow_cup:
            return I::flow_cup;
        case Tool::scale:
            return I::scale;
        case Tool::clamp:
            return I::clamp_meter;
        case Tool::safety_switch_tester:
            return I::safety_switch_tester;
        case Tool::gas_detector:
            return I::gas_detector;
        case Tool::water_gauge:
            return I::water_gauge;
        case Tool::none:
        case Tool::readout:
        case Tool::senses:
            break;
    }
    return std::nullopt;
}

bool takes_offset(Quantity quantity) {
    const auto instrument = instrument_of(quantity);
    if (!instrument || *instrument == I::flow_cup || *instrument == I::manometer)
        return false;  // a cup has no zero; a manometer is zeroed before use
    if (*instrument == I::multimeter) return is_ohms(quantity);
    if (*instrument == I::insulation_tester || quantity == Quantity::break_time) return false;
    if (*instrument != I::analyser) return true;
    return quantity == Quantity::flue_o2 || quantity == Quantity::flue_co2 ||
           quantity == Quantity::intake_o2;
}

double worn_value(Quantity quantity, double value, const Piece& piece) {
    const bool sags = piece.battery == Battery::low && feels_battery(quantity);
    double shown = value * piece.reads * (sags ? sagging_reference : 1.0);
    if (!takes_offset(quantity)) return shown;
    // The analyser works out carbon dioxide from oxygen: an oxygen cell that reads high lowers it.
    shown +=
        quantity == Quantity::flue_co2 ? -carbon_dioxide_per_oxygen * piece.off_by : piece.off_by;
    return shown;
}

double instrument_scale(Quantity quantity, double value, const Piece& piece) {
    return std::abs(worn_value(quantity, value, piece) - value);
}

std::optional<std::int64_t> days_of(std::string_view text) {
    const auto date = date_of(text);
    if (!date) return std::nullopt;
    // The year begins in March, so that the leap day is its last: 153 days in each five months.
    const std::int64_t year = date->month > 2 ? date->year : date->year - 1;
    const std::int64_t month = date->month > 2 ? date->month - 3 : date->month + 9;
    return 365 * year + year / 4 - year / 100 + year / 400 + (153 * month + 2) / 5 + date->day - 1;
}

bool overdue(Instrument instrument, const Piece& piece, std::string_view visited_on) {
    const auto then = days_of(piece.calibrated_on);
    const auto today = days_of(visited_on);
    const int months = info(instrument).months;
    if (!then || !today || months == 0) return false;
    return *today - *then > months * days_a_month + months / 2;
}

std::string date_in_words(std::string_view text) {
    const auto date = date_of(text);
    if (!date) return std::string(text);
    return std::to_string(date->day) + " " + std::string(month_name(date->month)) + " " +
           std::to_string(date->year);
}

std::vector<std::string> label_of(Instrument instrument, const Piece& piece,
                                  std::string_view visited_on) {
    const InstrumentInfo& row = info(instrument);
    std::vector<std::string> lines{"Range: " + std::string(row.range) + "."};
    for (const QuantityInfo* shown : shown_by(instrument)) {
        if (instrument == I::multimeter && !stands_for_a_range(shown->quantity)) continue;
        lines.push_back("Class, " + std::string(shown->title) + ": " + class_of(*shown) +
                        "; steps of " + difference_of(shown->quantity, shown->resolution) + ".");
    }
    if (row.has_battery) lines.emplace_back(battery_words(piece.battery));
    if (row.months == 0) return lines;
    if (piece.calibrated_on.empty()) {
        lines.emplace_back(instrument == I::leak_fluid ? "Its use-by date has not passed."
                                                       : "Calibrated, and in date.");
        return lines;
    }
    const std::string since = instrument == I::leak_fluid ? "Filled on " : "Calibrated on ";
    lines.push_back(since + date_in_words(piece.calibrated_on) + ", good for " +
                    std::to_string(row.months) + " months" +
                    (overdue(instrument, piece, visited_on) ? ": overdue." : ": in date."));
    return lines;
}

std::string instruments_page() {
    std::string text = R"(# Instruments

<!-- Made from sim/worksite/kit.cpp and sim/worksite/quantity_table.cpp; a test compares. -->

What is in the bag. Classes, ranges and times are those of ordinary service instruments (source of every
row: common practice), of no maker. `look at multimeter` shows the label, `check multimeter` does the check
of the table, `compare multimeter with spare` measures the same thing with both, `take spare multimeter`
fetches the other one from the van, which is always sound.

A job may bring a piece that is overdue, worn, or has a low or flat battery. A flat one stays dark, and so
does an analyser or a gas detector whose battery is low; a multimeter with a low battery reads 8 % high
(chosen). A voltage tester with a flat battery shows no voltage whatever there is: only its proving unit
tells. Old leak fluid does not foam. Whoever uses an overdue piece without having looked at its label breaks
the rule `tool_unchecked`; nobody loses points because a worn piece misled them, for the debrief knows how
far it was off.

The analyser zeroes itself while it warms up, on whatever its probe draws: zeroed in products it takes them for
air. With the probe out it draws clean air and its cells run back. It holds its extremes (`read analyser
highest`, `read analyser lowest`, until `clear hold`), and `watch analyser for 2 min` notes its figures eight
times. Its cell for carbon monoxide answers the hydrogen of quenched products too: flue gas reads 7 % high
(0.7 of hydrogen for one of carbon monoxide, a tenth of it shown; chosen), in a room that is left out. The
limits are meant for readings, so nothing is taken off.

| instrument | measures | range | settles | how a worn one is found | check takes | calibrated every |
|---|---|---|---|---|---|---|
)";
    for (const auto& row : table)
        text += "| " + std::string(row.word) + " | " + std::string(row.measures) + " | " +
                std::string(row.range) + " | " + std::string(row.settles) + " | " +
                std::string(row.check) + " | " + units::fixed(row.check_s, 0) + " s | " +
                (row.months == 0 ? "never" : std::to_string(row.months) + " months") + " |\n";
    text += R"(
## What each shows

Class: one standard deviation, of which 0.8 stays the same for the whole visit and 0.6 is new with each
reading. Cost: minutes for a reading, and for the first one at a place.

| instrument | quantity | class | resolution | reading | first at a place |
|---|---|---|---|---|---|
)";
    for (const auto& row : table)
        for (const QuantityInfo* shown : shown_by(row.instrument))
            text += "| " + std::string(row.word) + " | " + std::string(shown->title) + " | " +
                    class_of(*shown) + " | " + difference_of(shown->quantity, shown->resolution) +
                    " | " + units::fixed(shown->minutes, 2) + " min | " +
                    units::fixed(shown->set_up_minutes, 1) + " min |\n";
    return text;
}

}  // namespace emberpath::worksite
