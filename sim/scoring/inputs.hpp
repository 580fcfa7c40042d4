#pragma once
/// What every weighing rested on, reading by reading: for an assessor who wants to follow it by hand.

#include <vector>

#include "sim/scoring/ledger.hpp"
#include "sim/scoring/scoring.hpp"
#include "sim/scoring/shadow_bank.hpp"

namespace emberpath::scoring {

/// Weighs the readings before the cure once more, in their order, with the predictions as they are stored.
[[nodiscard]] std::vector<LikelihoodInput> likelihood_inputs(const PlayedAttempt& played,
                                                             const Ledger& ledger,
                                                             const Shadows& shadows);

}  // namespace emberpath::scoring
