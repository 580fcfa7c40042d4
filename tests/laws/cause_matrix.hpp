#pragma once
/// What every instrument shows of a house with a fault, on the occasions that a visit offers, and how far two
/// such houses are apart. docs/cause_matrix.md is made from it.

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "sim/faults/faults.hpp"
#include "sim/worksite/observation.hpp"

namespace emberpath::laws {

/// When something is read. The light-up attempt is read two seconds after it begins, pressures and flame
/// current at their peak; the draws after five minutes; the long draw, of a cylinder, after half an hour.
enum class Occasion { standby, light_up, small_draw, middle_draw, full_draw, long_draw };
inline constexpr std::size_t occasion_count = 6;
[[nodiscard]] std::string_view title(Occasion occasion);

using Readings = std::array<double, worksite::quantity_count>;

struct Findings {
    bool cylinder = false;  // then there is a long draw
    std::array<Readings, occasion_count> on{};
};

/// One cause at one severity on natural gas, or on a cylinder on a cold morning.
[[nodiscard]] Findings find(faults::Cause cause, double severity, bool cylinder);
/// The same on one occasion alone.
[[nodiscard]] Readings find_on(Occasion occasion, faults::Cause cause, double severity,
                               bool cylinder);

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

/// `count` severities over the symptomatic range, least to greatest; one for what is there or not.
[[nodiscard]] std::vector<double> severities(const faults::CauseInfo& row, int count, double sign);
/// +1, and -1 where severity has a sign.
[[nodiscard]] std::vector<double> signs(const faults::CauseInfo& row);

/// The whole page.
[[nodiscard]] std::string cause_matrix_page();

}  // namespace emberpath::laws
