#pragma once
/// What every instrument shows of a house with a fault, on the occasions that a visit offers, and how far two
/// such houses are apart. docs/cause_matrix.md is made from it.

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "sim/faults/faults.hpp"
#include "sim/worksite/observation.hpp"
#include "tests/laws/premises.hpp"

namespace emberpath::laws {

/// When something is read. The light-up attempt is read two seconds after it begins, pressures and flame
/// current at their peak; the draws after five minutes; the long draw, of a cylinder, after half an hour.
/// Standby is read after five minutes of rest; then with the main switch off; and with the heater's cold
/// valve shut and a hot tap open.
enum class Occasion {
    standby,
    light_up,
    small_draw,
    middle_draw,
    full_draw,
    long_draw,
    main_off,
    cold_shut
};
inline constexpr std::size_t occasion_count = 8;
[[nodiscard]] std::string_view title(Occasion occasion);

using Readings = std::array<double, worksite::quantity_count>;

struct Findings {
    bool cylinder = false;  // then there is a long draw
    [[nodiscard]] bool has(std::size_t occasion) const {
        return cylinder || occasion != static_cast<std::size_t>(Occasion::long_draw);
    }
    std::array<Readings, occasion_count> on{};
};

/// One cause at one severity in a house that has what it needs.
[[nodiscard]] Findings find(faults::Cause cause, double severity, const Premises& premises);

/// Can it be read at a house, and is it physics of the instant?
[[nodiscard]] bool counts(worksite::Quantity quantity);

/// Distance of two readings in instrument scales: scale^2 = instrument error^2 + model floor^2, on the
/// logarithm for ohms and carbon monoxide. Two different words are `other_word` apart.
[[nodiscard]] double apart(worksite::Quantity quantity, double a, double b);
inline constexpr double other_word = 1000.0;
/// Separable: three scales.
inline constexpr double separable = 3.0;

/// Instruments in the order in which a visit takes them out; each set holds those before it.
inline constexpr std::array<std::string_view, 6> instrument_sets{
    "display and readout", "+ manometer",  "+ thermometer, cup, ohms, scale",
    "+ analyser",          "+ electrical", "+ looking and listening"};
[[nodiscard]] std::size_t first_set_with(worksite::Quantity quantity);

/// The greatest distance that a set of instruments finds on any occasion.
[[nodiscard]] double apart(const Findings& a, const Findings& b, std::size_t instrument_set);

/// Five severities over the symptomatic range, least to greatest; one for what is there or not.
[[nodiscard]] std::vector<double> severities(const faults::CauseInfo& row, double sign);
/// +1, and -1 where severity has a sign.
[[nodiscard]] std::vector<double> signs(const faults::CauseInfo& row);

/// Findings at those severities in a house; each is worked out once and kept.
[[nodiscard]] const std::vector<Findings>& found(faults::Cause cause, double sign,
                                                 const Premises& premises);
/// The sound house of the same kind.
[[nodiscard]] const Findings& sound(const Premises& premises);

/// The whole page.
[[nodiscard]] std::string cause_matrix_page();

}  // namespace emberpath::laws
