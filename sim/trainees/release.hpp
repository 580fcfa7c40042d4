#pragma once
/// Is a job fit to be scored by? What it hides is put into other houses, each with its own parameters, severity
/// and instrument errors, everything that it is reasonable to read is read there, and the scorer must see the
/// truth.
///
/// The script of readings is made once, in the job's own house (thorough.hpp). The shadows live through it once
/// and none of them sleeps, so what they predict holds for every house: the same acts at the same instants
/// under the same weather. A reading that a house refuses, or gives at another instant, is left out there and
/// counted.
/// Checked   tests/unit/trainees/release_test.cpp

#include <array>
#include <string>
#include <vector>

#include "sim/scoring/neighbours.hpp"
#include "sim/scoring/release_terms.hpp"
#include "sim/scoring/scoring.hpp"
#include "sim/trainees/on_arrival.hpp"
#include "sim/trainees/visit.hpp"

namespace emberpath::trainees {

inline constexpr int usual_houses = 50;
using scoring::likely_enough_for_release;
using scoring::share_of_houses;
inline constexpr double most_off_claim = 0.1;
inline constexpr int runs_that_count = 10;  // a bin of fewer cannot condemn
using scoring::longest_reference_minutes;
using scoring::shortest_reference_minutes;

/// What was believed at the end in one house.
struct HouseSeen {
    std::uint64_t number = 0;  // other_house()
    double of_truth = 0.0;     // probability of the true class; of a pair, with its parts
    scoring::Class leading = faults::Remedy::explain_to_customer;
    double of_leading = 0.0;
    bool leads = false;        // the true class, or a part of it that may hide the rest, leads
    std::size_t left_out = 0;  // readings refused or taken at another instant
    bool ended_early = false;  // by harm, or beyond the model
};

/// Houses by what was claimed for the likeliest class.
struct ClaimBin {
    double from = 0.0, to = 1.0;
    int runs = 0, right = 0;
    double mean_claim = 0.0;
    [[nodiscard]] double share_right() const { return runs > 0 ? 1.0 * right / runs : 0.0; }
};
/// Does the bin condemn? Claims that are too high do; with one cause in every house, rivals that look like it
/// are never true, so claims may well be too low. A bin of few runs does not.
[[nodiscard]] bool claims_too_much(const ClaimBin& bin);

struct Release {
    std::vector<HouseSeen> houses;
    int drawn = 0;  // until so many households would have complained as the card says
    std::size_t acts = 0, readings = 0;  // of the script
    double minutes = 0.0;
    double reference_minutes = 0.0;  // C
    std::string
        not_scored_because;  // what the scorer says of whoever reads all this; empty: it scores
    OnArrival on_arrival;
    struct Step {
        scoring::Gap gap;
        bool near = false;  // the job's severity, or that of another house of it, lies there
    };
    std::vector<Step> steps;            // between the severities of the true cause, rising
    std::vector<std::string> refusals;  // sentences; empty: fit
    std::vector<std::string> remarks;   // what an author should look at; they refuse nothing

    [[nodiscard]] int identified() const;  // the true class leads with 80 % or more
    [[nodiscard]] std::array<ClaimBin, 5> calibration() const;
    /// The widest step; nullptr where there is none. Steps elsewhere say nothing of this job.
    [[nodiscard]] const scoring::Gap* widest_step(bool only_near) const;
};

struct ReleaseTerms {
    int houses = usual_houses;     // >= 1
    int threads = 2;               // at most so many work; no figure depends on how many
    Arrived at_arrival = nullptr;  // shadows of the job and script_seed; nullptr: worked out
};
[[nodiscard]] Release check_release(const worksite::Job& job, const ReleaseTerms& terms = {});
/// The judging part alone.
[[nodiscard]] std::vector<std::string> refusals_of(const Release& release);
/// Those of them that do not follow from how many houses show the cause, as one text; empty: none.
[[nodiscard]] std::string other_refusals(const Release& release);
/// Severities of the scorer that stand far apart about the job's own. The houses, drawn between them, say whether
/// that matters.
[[nodiscard]] std::vector<std::string> remarks_of(const Release& release, const worksite::Job& job);
/// "flow at the tap at full draw, severity 0.50 to 0.58".
[[nodiscard]] std::string title_of(const scoring::Gap& gap, const worksite::Job& job);

}  // namespace emberpath::trainees
