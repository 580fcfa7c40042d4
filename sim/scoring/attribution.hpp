#pragma once
/// Where the points of an area went: each lost point is tied to an act or to what is missing.
///
/// Equation  loss_i = score without charge i - score;  points_i = loss_i (100 - score) / sum of all loss
///           One charge is taken away at a time. Charges that act together (a product, a share) take away more or
///           less than their sum; rescaled they sum to what is missing. Where no single one would help, they share
///           alike.
/// Checked   tests/unit/scoring/attribution_test.cpp, tests/jobs/paths_test.cpp

#include <span>
#include <vector>

#include "sim/scoring/findings.hpp"

namespace emberpath::scoring {

/// The act that carries what was left undone: the hand-in, or the last act where harm ended the job with it; no act
/// where it was merely broken off.
[[nodiscard]] std::size_t hand_in_of(const PlayedAttempt& played, const Outcome& outcome);

/// Points [0 to 100] for each charge; `without`: the score with that charge alone taken away. Sums to 100 - score;
/// empty for none.
[[nodiscard]] std::vector<double> points_of(double score, std::span<const double> without);

/// What the attempt comes to, and all that its charges rest on.
struct Charged {
    const PlayedAttempt& played;
    const Ledger& ledger;
    const Findings& findings;
    const Outcome& outcome;
    const PathCharges& path;
};
/// One list for each area (S E P R V), most first.
[[nodiscard]] std::vector<std::vector<Lost>> lost_points(const Charged& charged,
                                                         const AreaScores& scores);

}  // namespace emberpath::scoring
