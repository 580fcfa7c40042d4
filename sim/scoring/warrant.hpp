#pragma once
/// Was there enough evidence for a commitment (a remedy, the final diagnosis)?

#include "sim/faults/faults.hpp"

namespace emberpath::scoring {

inline constexpr double need_of_final_diagnosis = 0.90;
inline constexpr double warrant_span_bits = 2.5;

/// Log odds in bits, log2(p / (1 - p)); p is kept within [1e-6, 1 - 1e-6].
[[nodiscard]] double log_odds_bits(double probability);

/// x^2 (3 - 2x) on [0, 1], 0 below and 1 above.
[[nodiscard]] double smooth_step(double x);

/// Warrant 0 to 1 of committing to a class at probability p, when it had `on_arrival` from the complaint
/// alone and the commitment needs `need`:
///     w = smooth_step((L(p) - Llo) / (L(need) - Llo)),  Llo = min(L(on_arrival), L(need) - 2.5 bits)
[[nodiscard]] double warrant(double probability, double on_arrival, double need);

inline constexpr double isolating_minutes = 10.0;  // off, locked, proved dead, and back; chosen

/// What a remedy costs when done by the book: minutes of hands (sim/faults/remedies.hpp), isolating where
/// they reach inside, and the part in minutes of work.
struct RemedyCost {
    double minutes = 0.0;
    double part_minutes = 0.0;
    bool cheap_and_reversible = false;
    [[nodiscard]] double total() const { return minutes + part_minutes; }
};
[[nodiscard]] RemedyCost remedy_cost(faults::Remedy remedy);

/// Probability a remedy needs: .60 cheap and reversible; .80 up to 60 minutes in all; else .90.
[[nodiscard]] double need(faults::Remedy remedy);

/// Remedies that end outside this visit's competence, or in words: handing on is the cure.
[[nodiscard]] bool is_handed_on(faults::Remedy remedy);

}  // namespace emberpath::scoring
