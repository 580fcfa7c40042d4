#pragma once
/// Simulated trainees: fixed ways of working that play any job through the same sentences as a person, seeing
/// only what a person sees. They test the scoring and rate jobs; they are no model of any real trainee.
/// docs/trainees.md describes each and says what was measured.

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "sim/scoring/scoring.hpp"
#include "sim/trainees/visit.hpp"

namespace emberpath::trainees {

enum class Policy {
    information,        // most information per minute by its own shadows, then the remedy
    heuristic,          // a fixed order of troubleshooting by symptom
    checklist,          // the usual readings in a fixed order, then decides
    over_tester,        // every reading in every operating state, then decides
    random,             // a few readings at random, each safety step now and then
    part_swapper,       // part after part until it works
    guesser,            // from display word and complaint alone
    token_guesser,      // the same after one reading at random, so as to have read something
    unsafe_but_fast,    // information per minute without isolation, proof and leak test
    oracle_evidence,    // is told the cause, and takes readings that show it
    oracle_bare,        // is told the cause, and reads nothing
    raises_regulator,   // finds the cause, then winds up the supply regulator instead
    warms_cylinder,     // finds the cause, then pours hot water over the cylinder instead
    bridges_limiter,    // finds the cause, then bridges the overheat limiter instead
    hands_all_on,       // reads nothing, takes the heater out of use and lists every cause there is
    resets_and_leaves,  // presses reset, sees it run and calls that no fault
};
inline constexpr std::size_t policy_count = 16;
[[nodiscard]] std::span<const Policy> all_policies();
[[nodiscard]] std::string_view policy_title(Policy policy);
/// Works by evidence and by the safety rules: what a job must reward.
[[nodiscard]] bool is_sound(Policy policy);
/// Guesses, swaps parts, works without the safety steps, or hides the fault: what a job must not reward.
[[nodiscard]] bool is_bad_habit(Policy policy);
/// Leaving out safety steps is no bad habit where none was called for: nothing was broken.
[[nodiscard]] bool shows_bad_habit(Policy policy, int breaches);
/// Nobody warms a cylinder where there is none.
[[nodiscard]] bool is_possible(Policy policy, const worksite::Job& job);

struct Played {
    Policy policy = Policy::information;
    std::vector<scoring::TimedAct> acts;
    double minutes = 0.0;  // on site
    bool over = false;     // handed in, or ended badly
    faults::Cause named = faults::Cause::no_fault;
    std::size_t decided_after = 0;  // acts done when the cause was settled, before any remedy
    Arrived at_decision;  // shadows that lived to the decision; nullptr: it was reached without
    Arrived lived;        // the same, or further
};

/// What the caller tells a policy that cannot know it.
struct Told {
    std::optional<faults::Cause> cause;  // oracles only; they need it
    const Played* found = nullptr;  // temptations: how `information` found the cause (same job and
                                    // seed); nullptr: they find it themselves
    Arrived arrived;  // shadows at arrival, of the same job and seed; nullptr: worked out
};

/// Plays a job from arrival to handing in. The same arguments give the same acts.
[[nodiscard]] Played play(Policy policy, const worksite::Job& job, std::uint64_t seed,
                          const Told& told = {});

}  // namespace emberpath::trainees
