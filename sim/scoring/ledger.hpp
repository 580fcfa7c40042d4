#pragma once
/// The path act by act: what each cost, what it could have told, what it told.

#include <memory>
#include <optional>
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
    bool cured_before = false;  // all that the true class needs had been done already
    double book_minutes = 0.0;  // of its readings, with set-up; what the path is charged by
    double expected_bits = 0.0;
    double expected_variance = 0.0;   // of what the readings would tell about the truth [bits^2]
    double told_of_truth_bits = 0.0;  // log2 of the true class's probability after / before
    std::vector<double> separation;   // by class: best of its own readings (see Evidence); or empty
    Option best;                      // best reading at that moment
    std::shared_ptr<const Posterior> posterior_before;  // of what may be charged, before the cure
    SetUps set_ups_before;
    int cycle = -1;                     // demand cycle under way, where posterior_before is there
    double charge = 0.0;                // minutes charged against the path for a test
    double idle_minutes = 0.0;          // waited without a later reading that needed it
    std::vector<double> before, after;  // class probabilities
};

struct Ledger {
    std::vector<Step> steps;           // one per log entry
    std::vector<double> arrival, end;  // class probabilities
    Posterior at_cure;  // as it stood before the remedy that completed the cure, else at the end
    double test_charge = 0.0, idle_charge = 0.0;
    SetUps set_ups;                                      // at the end
    std::optional<std::size_t> cured_by = std::nullopt;  // the step whose remedy completed the cure
};

/// What is needed to keep the ledger.
struct PlayedAttempt {
    const worksite::Job& job;
    const std::vector<worksite::LogEntry>& log;
    const Tape& tape;
    std::vector<std::size_t> mark_of_act;  // mark set before each log entry
    Class true_class = faults::Remedy::explain_to_customer;
    int threads = 1;  // at most so many look for the best reading
};

/// How far the shadows live: what is read after the cure is proof, it moves no score but is explained.
enum class Until { the_end, the_cure };
/// `evidence` has lived to arrival and weighed nothing yet; it lives through the attempt act by act.
[[nodiscard]] Ledger keep_ledger(const PlayedAttempt& played, Evidence evidence,
                                 Until until = Until::the_end);

}  // namespace emberpath::scoring
