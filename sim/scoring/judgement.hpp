#pragma once
/// From the ledger to areas, overall score, gates and the proposal, each with its reason in a sentence.

#include <string>

#include "sim/scoring/areas.hpp"
#include "sim/scoring/ledger.hpp"
#include "sim/scoring/scoring.hpp"

namespace emberpath::scoring {

/// What the attempt came to, apart from the ledger.
struct Outcome {
    worksite::WriteUp write_up;
    std::vector<worksite::Breach> breaches;
    std::vector<std::string> verified;    // proof and handover items done
    std::vector<std::string> unproved;    // and not done
    std::vector<std::string> not_needed;  // and not called for
    bool fault_remains = true;            // in the plant
    bool made_safe = false;               // taken out of use, tagged, with a notice that is heeded
    bool separable = true;                // some reading could still tell the open classes apart
    bool told = false;                    // nothing was open beside the true class
    std::vector<Class> open;          // the likeliest class and those that no reading tells from it
    std::int64_t start_tick = 0;      // the trainee's time begins
    double reference_minutes = 10.0;  // C
    double second_part_minutes = 0.0;  // of C: for the second of two faults, once the first is gone
    std::string not_scored_because;    // E, P and R; empty: scored
    bool beyond_model = false;         // what happened cannot be simulated: nothing follows from it
};

/// Fills areas, overall, gates_met, fixed, proposal and true_class_probability of `out`.
void judge(const PlayedAttempt& played, const Ledger& ledger, const Outcome& outcome,
           Assessment& out);

/// "04:10" since the trainee's time began.
[[nodiscard]] std::string clock_text(std::int64_t ticks);
/// "97 % to \"igniter failed\"".
[[nodiscard]] std::string given(double probability, Class one);
/// "97 %", "under 1 %", "over 99 %".
[[nodiscard]] std::string percent(double probability);

}  // namespace emberpath::scoring
