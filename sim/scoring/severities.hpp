#pragma once
/// At which severities a cause has shadows: close together where what can be read changes fast.
///
/// The readings of two neighbours should lie within two combined widths (neighbours.hpp), so that a house between
/// them looks like one of them. Where even nine shadows cannot do it, they share the distance evenly. Where readings
/// jump, nothing lies between.
/// Checked   tests/unit/scoring/severities_test.cpp

#include <vector>

#include "sim/faults/faults.hpp"

namespace emberpath::scoring {

/// Where they are placed, of one cause in one direction.
inline constexpr int most_severities = 9;

/// Are its severities placed by how far readings stand apart (tests/severities), if it acts in a plain house? Else
/// they are few or follow from what the cause is. What acts only in houses of its own kind has seven evenly.
[[nodiscard]] bool is_placed(faults::Cause cause);
/// Sizes without sign, rising, from the least to the greatest severity that shows; one for an on/off cause.
/// `opposite`: of the direction below zero.
[[nodiscard]] std::vector<double> severities_of(const faults::CauseInfo& cause, bool opposite);
/// `count` of them evenly, for the first cause of a chosen pair; one stands for the greatest.
[[nodiscard]] std::vector<double> even_severities(const faults::CauseInfo& cause, int count);
/// What each has of its cause's prior, sum 1: the part of the range that is nearest to it, all parts being equally
/// likely. A cylinder stands at each equally often: it is the time until it fails that is dealt out there.
[[nodiscard]] std::vector<double> shares_of(const faults::CauseInfo& cause,
                                            const std::vector<double>& severities);

}  // namespace emberpath::scoring
