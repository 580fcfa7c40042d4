#pragma once
/// The path act by act: what each cost, what it could have told, what it told.

#include <span>
#include <vector>

#include "sim/scoring/evidence.hpp"
#include "sim/scoring/reference_policy.hpp"

namespace emberpath::scoring {

struct Step {
    std::size_t act = 0;  // index into the log
    const worksite::LogEntry* entry = nullptr;
    std::size_t first_observation = 0, observation_count = 0;  // on the tape
    bool weighed = false;                                      // brought evidence
    bool cured_before = false;  // the true fault had been removed already
    double book_minutes = 0.0;  // of its readings, with set-up; what the path is charged by
    double expected_bits = 0.0;
    Option best;                        // best reading at that moment
    double charge = 0.0;                // minutes charged against the path
    std::vector<double> before, after;  // class probabilities, by faults::Remedy
};

struct Ledger {
    std::vector<Step> steps;           // one per log entry
    std::vector<double> arrival, end;  // class probabilities
    Posterior at_cure;                 // as it stood before the curing remedy, else at the end
    double test_charge = 0.0, idle_charge = 0.0;
};

/// What is needed to keep the ledger.
struct PlayedAttempt {
    const worksite::Job& job;
    const std::vector<worksite::LogEntry>& log;
    const Tape& tape;
    std::vector<std::size_t> mark_of_act;  // mark set before each log entry
    faults::Remedy true_class = faults::Remedy::explain_to_customer;
};

/// `evidence` has lived to arrival and weighed nothing yet; it lives through the attempt act by act.
[[nodiscard]] Ledger keep_ledger(const PlayedAttempt& played, Evidence evidence);

}  // namespace emberpath::scoring
