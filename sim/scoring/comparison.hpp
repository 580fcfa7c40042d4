#pragma once
/// "The same readings under the other causes": what each class would have shown where something was read.

#include "sim/scoring/posterior.hpp"
#include "sim/scoring/scoring.hpp"
#include "sim/scoring/shadow_bank.hpp"

namespace emberpath::scoring {

/// One row per numbered reading that is evidence; one cell per class that can occur at the site. A class
/// is shown by its severities that remain most likely (at least a tenth of its likeliest one).
/// `posterior`: as it stood before the cure.
[[nodiscard]] std::vector<Comparison> compare(const Tape& tape, const Shadows& shadows,
                                              const Posterior& posterior);

}  // namespace emberpath::scoring
