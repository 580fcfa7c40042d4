#pragma once
/// How far neighbouring severities of a cause stand apart in what they show: a truth between two shadows that
/// are far apart is represented by neither.
///
/// Equation  |a - b| / sqrt(w_a^2 + w_b^2) on the quantity's scale, w^2 = instrument^2 + floor^2 + spread^2
///           (likelihood.hpp), without the part that stands for the gap itself
/// Checked   tests/unit/scoring/neighbours_test.cpp

#include <cstddef>
#include <span>
#include <vector>

#include "sim/scoring/shadow_bank.hpp"

namespace emberpath::scoring {

/// Above it a truth half-way between two shadows may look like neither: chosen.
inline constexpr double most_widths_apart = 2.0;

/// Combined widths between two predictions of a numeric quantity [-].
[[nodiscard]] double widths_apart(worksite::Quantity quantity, double a, double b);

/// Two neighbours, and the reading that tells them apart best.
struct Gap {
    faults::Fault lower, upper;
    bool in_pair = false;  // of a chosen pair, whose second cause is there beside them
    worksite::Quantity quantity = worksite::Quantity::display_word;
    std::size_t mode = 0;  // of modes()
    double widths = 0.0;   // 0: no numeric reading tells them apart in one regime
};
/// One for each pair of neighbours among the shadows of these faults, severities rising. Numbers are compared in
/// the operating states in which both stand in one regime (display word, latest event and phase are the same):
/// across a change of regime both stand with their own words, and nothing lies between.
[[nodiscard]] std::vector<Gap> gaps_between(const worksite::Job& job, const Shadows& shadows,
                                            std::span<const faults::Fault> faults);

}  // namespace emberpath::scoring
