#pragma once
/// How far the scores depend on what was chosen: the same attempt weighed again with other priors, widths
/// and houses, from stored predictions. Nothing is simulated anew.

#include "sim/scoring/judgement.hpp"

namespace emberpath::scoring {

inline constexpr int band_banks = 5;
inline constexpr double prior_factor = 3.0;  // up to three times either way
inline constexpr double narrowest_width = 0.8, widest_width = 1.6;

/// A bank as somebody else might have chosen it; number 0, 1, ... The same number gives the same bank.
struct OtherBank {
    Shadows shadows;  // other priors, and predictions of houses that differ a little
    double width_factor = 1.0;
};
[[nodiscard]] OtherBank other_bank(const Shadows& shadows, const Tape& tape, int number);

/// The overall score as it had been with that change, from the stored predictions.
[[nodiscard]] double overall_with(const Change& change, const PlayedAttempt& played,
                                  const Shadows& shadows, const std::vector<Snapshot>& truth,
                                  const Outcome& outcome, Until until);

/// Sets low and high of each scored area and of the overall score: the least and most over the assessment
/// itself and five other banks, worked out on up to `threads` threads.
void set_bands(const PlayedAttempt& played, const Shadows& shadows,
               const std::vector<Snapshot>& truth, const Outcome& outcome, int threads,
               Assessment& out);

}  // namespace emberpath::scoring
