#pragma once
/// Figures that one instrument shows at one glance share what is wrong with it: they are weighed together.
///
/// Several figures of the readout or the analyser: the one that tells most counts in full, the next .7 of
/// itself, then .49 and so on, so that any number of them weighs at most as much as 1 / .3 independent ones.
/// (With observations equally correlated by r, n of them are worth n / (1 + (n-1) r), at most 1 / r: the
/// design effect of Kish 1965, Survey Sampling, from memory. The order keeps a figure that tells nothing
/// from thinning one that does.) Display word and latest event: one report of the controller's, which
/// excludes once what either of them excludes.
/// Checked   tests/unit/scoring/glance_test.cpp

#include <cstddef>
#include <span>
#include <vector>

#include "sim/scoring/reading.hpp"

namespace emberpath::scoring {

inline constexpr double shared_error = 0.3;  // r; chosen

/// The controller's own word: display, latest event, newest line of the history.
[[nodiscard]] bool tells_controller_state(worksite::Quantity quantity);
/// Do two readings belong to one glance: figures of one instrument under one condition within a minute, or
/// the controller's word in one state?
[[nodiscard]] bool of_one_glance(const Reading& a, const Reading& b);

/// Logarithms of the weights that the readings of one glance have together, one per shadow. `prior` says
/// how much each shadow counts in telling which figure tells most.
[[nodiscard]] std::vector<double> weighed_together(std::span<const std::vector<double>* const> logs,
                                                   std::span<const double> prior);
/// What each of them counts: 1, .7, .49 ... in the order of what they tell.
[[nodiscard]] std::vector<double> shares_together(std::span<const std::vector<double>* const> logs,
                                                  std::span<const double> prior);
[[nodiscard]] std::vector<double> as_one_report(std::span<const std::vector<double>* const> logs);

}  // namespace emberpath::scoring
