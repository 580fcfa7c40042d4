#pragma once
/// The instruments as things: what each is made for, its battery, its label, and how a worn one reads.
/// A job says which pieces of the kit are not as they should be; the spare in the van always is.
///
/// Source    classes, ranges and settling are chosen as usual for service instruments (common practice)
/// Checked   tests/unit/worksite/kit_test.cpp; docs/instruments.md is made from this table

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace emberpath::worksite {

enum class Quantity;

enum class Instrument : std::size_t {
    manometer,
    multimeter,
    clamp_meter,
    voltage_tester,
    insulation_tester,
    safety_switch_tester,
    analyser,
    thermometer,
    flow_cup,
    scale,
    gas_detector,
    co_alarm,
    leak_fluid,
    water_gauge
};
inline constexpr std::size_t instrument_count = 14;

enum class Battery { good, low, flat };

/// One piece of the kit as it was packed this morning.
struct Piece {
    std::string calibrated_on;        // "2026-03-02"; empty: it is in date and nobody asks
    Battery battery = Battery::good;  // without meaning where there is none
    double reads = 1.0;               // what it shows of a true value, beyond its class [-]
    double off_by = 0.0;              // and adds to it: SI, of the quantity find_wear() names
    bool operator==(const Piece&) const = default;
};

struct Kit {
    std::string visited_on;  // date of the visit; empty: no label is overdue
    std::array<Piece, instrument_count> pieces{};
    [[nodiscard]] const Piece& of(Instrument one) const {
        return pieces[static_cast<std::size_t>(one)];
    }
    [[nodiscard]] Piece& of(Instrument one) { return pieces[static_cast<std::size_t>(one)]; }
};

struct InstrumentInfo {
    Instrument instrument;
    std::string_view word;      // as acts and files spell it
    std::string_view measures;  // and how: what docs/instruments.md says of it
    std::string_view range;     // in words, with what happens beyond
    std::string_view settles;   // time until the figure can be trusted
    std::string_view check;     // how a worn one is found
    double check_s;             // time of that check
    bool has_battery;
    int months;  // between calibrations; 0: it carries no date
};
[[nodiscard]] const InstrumentInfo& info(Instrument instrument);
[[nodiscard]] std::optional<Instrument> find_instrument(std::string_view word);
/// Which instrument shows a quantity; nothing for the readout, for eyes and for ears.
[[nodiscard]] std::optional<Instrument> instrument_of(Quantity quantity);

/// What a worn piece, or one with a low battery, shows in place of a true value [SI]; no error of its class.
/// Equation  shown = reads x low x value + off_by, low = 1.08 for volts and ohms of a multimeter whose
///           battery is low (its reference sags; chosen), else 1
[[nodiscard]] double worn_value(Quantity quantity, double value, const Piece& piece);
/// How far that is from the truth [SI]: what scoring adds to the class of an instrument nobody could know
/// was worn.
[[nodiscard]] double instrument_scale(Quantity quantity, double value, const Piece& piece);
/// Does an offset of this instrument add to that quantity?
[[nodiscard]] bool takes_offset(Quantity quantity);

/// Days since 1 March of the year 0, proleptic Gregorian calendar; nothing when it is no date "2026-03-02".
[[nodiscard]] std::optional<std::int64_t> days_of(std::string_view date);
/// "2 March 2026"; what is no date stays as it is.
[[nodiscard]] std::string date_in_words(std::string_view date);
[[nodiscard]] bool overdue(Instrument instrument, const Piece& piece, std::string_view visited_on);
/// What its label and its face say: class, range, battery, calibration.
[[nodiscard]] std::vector<std::string> label_of(Instrument instrument, const Piece& piece,
                                                std::string_view visited_on);

/// docs/instruments.md as it must stand; a test compares.
[[nodiscard]] std::string instruments_page();

}  // namespace emberpath::worksite
