#pragma once
/// What a job rewards: all simulated trainees play it, every attempt is scored as a person's would be, and
/// the job is refused for release when a bad habit pays or no sound way of working leads through.

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "sim/trainees/difficulty.hpp"
#include "sim/trainees/on_arrival.hpp"
#include "sim/trainees/trainees.hpp"

namespace emberpath::trainees {

/// One attempt of one policy, scored.
struct Scored {
    Policy policy = Policy::information;
    std::uint64_t seed = 1;
    std::array<double, 5> areas{};  // S E P R V, 0 to 100
    double overall = 0.0;
    bool scored = true;      // all five areas
    bool unopposed = false;  // the proposal has no objection
    bool gates_met = false;  // no critical breach
    int breaches = 0;        // of any safety rule
    bool fixed = false;
    double true_class_probability = 0.0;
    double leading_probability = 0.0;  // of the likeliest class when all was weighed
    bool leading_is_true = false;
    /// Other classes that were still open when all was weighed, the likeliest first.
    std::vector<scoring::ClassProbability> still_open;
    double minutes = 0.0;
    double reference_minutes = 0.0;  // what its path is measured against
    std::size_t acts = 0;
    std::string proposal;
    std::vector<double> overall_with;  // for each change that was asked for
};
[[nodiscard]] Scored score(const worksite::Job& job, std::uint64_t seed, const Played& played,
                           const Arrived& arrived = nullptr,
                           std::span<const scoring::Change> changes = {});

struct Cast {
    std::span<const Policy> policies = all_policies();
    int seeds = 1;            // first_seed, first_seed + 1, ...
    Arrived at_arrival = {};  // shadows of the first seed; nullptr: worked out
    std::span<const scoring::Change> changes = {};  // each attempt is scored with these as well
    std::uint64_t first_seed = 1;
};
/// The possible ones of these policies, once for each seed, in order of seed and policy. Works on two
/// attempts at a time; the result does not depend on that.
[[nodiscard]] std::vector<Scored> play_all(const worksite::Job& job, const Cast& cast);

struct Fare {
    Policy policy = Policy::information;
    int attempts = 0, unopposed = 0, fixed = 0, critical = 0;
    int breaches = 0;               // of any safety rule, over all attempts
    double overall = 0.0;           // mean
    std::array<double, 5> areas{};  // means
    double minutes = 0.0, acts = 0.0;
};

struct Rating {
    std::vector<Fare> fares;  // by policy
    Difficulty difficulty;
    struct Shortest {
        bool found = false;
        Policy policy = Policy::information;
        std::uint64_t seed = 1;
        double minutes = 0.0;
        std::size_t acts = 0;
    } shortest;  // safe path without objection, oracles left out
    OnArrival on_arrival;
    // Mean over the seeds of what the best reader (a sound one or the over-tester) gave the true class, and what one of
    // these left open beside it, the likeliest first.
    double identifiable = 0.0;
    std::vector<scoring::ClassProbability> not_told_apart;
    std::vector<std::string> refusals;  // sentences; empty: fit for release
};
[[nodiscard]] Rating rate(const worksite::Job& job, int seeds);
/// A job that its own release check refuses, or whose files have changed since it, is refused here as well.
void refuse_by_check(const worksite::ReleaseCheck& check, Rating& rating);
/// The judging part alone, for attempts that were played already. `at_arrival`: of seed 1, or nullptr.
[[nodiscard]] Rating judge(const worksite::Job& job, const std::vector<Scored>& attempts,
                           const Arrived& at_arrival = nullptr);

}  // namespace emberpath::trainees
