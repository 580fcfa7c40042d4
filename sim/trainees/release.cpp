#include "sim/trainees/release.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "sim/scoring/bank.hpp"
#include "sim/scoring/reference_policy.hpp"
#include "sim/scoring/share_out.hpp"
#include "sim/trainees/house_run.hpp"
#include "sim/trainees/other_house.hpp"
#include "sim/trainees/thorough.hpp"
#include "sim/units/per_cent.hpp"

namespace emberpath::trainees {

namespace {

constexpr int most_draws_per_house = 4;  // until as many households complain as the card says
constexpr std::array bin_edges{0.0, 0.3, 0.6, 0.9, 0.97, 1.0};

/// Evidence is not short of time: a job's limit is asked for by whoever plays it whole. And what an earlier check
/// found must not decide this one.
worksite::Job as_checked(worksite::Job job) {
    job.time_allowed_s = 0.0;
    job.release = {};
    return job;
}

/// What the scorer makes of somebody who reads all this: C, and whether it scores such work at all.
void ask_scorer(const worksite::Job& job, const Script& script, const scoring::Bank& lived,
                int threads, Release& release) {
    const auto assessment = scoring::assess(job, script_seed, worksite::Mode::assessed, script.acts,
                                            {&lived, false, threads});
    release.reference_minutes = assessment.reference_minutes;
    for (const scoring::Area& area : assessment.areas)
        if (!area.scored) release.not_scored_because = area.not_scored_because;
}

std::vector<Release::Step> steps_of(const worksite::Job& job, const scoring::Shadows& shadows) {
    std::vector<Release::Step> steps;
    for (const scoring::Gap& gap : scoring::gaps_between(job, shadows, job.faults)) {
        const auto holds_a_house = [&](const faults::Fault& fault) {
            const auto [low, high] = severity_range(fault);
            return fault.cause == gap.lower.cause && high >= std::abs(gap.lower.severity) &&
                   low <= std::abs(gap.upper.severity);
        };
        steps.push_back({gap, std::any_of(job.faults.begin(), job.faults.end(), holds_a_house)});
    }
    return steps;
}

/// Houses in the order of their numbers, until enough of their households complain as the job's does.
void go_through_houses(const worksite::Job& job, const Script& script,
                       const scoring::Shadows& shadows, int wanted, int threads, Release& release) {
    const auto most = wanted * most_draws_per_house;
    while (static_cast<int>(release.houses.size()) < wanted && release.drawn < most) {
        const int missing = wanted - static_cast<int>(release.houses.size());
        const int batch = std::min(missing, most - release.drawn);
        std::vector<std::optional<HouseSeen>> seen(static_cast<std::size_t>(batch));
        scoring::share_out(seen.size(), threads, [&](std::size_t i) {
            const auto number = static_cast<std::uint64_t>(release.drawn + 1) + i;
            seen[i] = go_through(script, shadows, job, number);
        });
        for (const auto& one : seen)
            if (one) release.houses.push_back(*one);
        release.drawn += batch;
    }
}

void refuse_for_evidence(const Release& release, std::vector<std::string>& refusals) {
    const auto count = static_cast<int>(release.houses.size());
    if (count == 0) {
        refusals.emplace_back("no house with this cause makes its household complain so.");
        return;
    }
    if (scoring::enough_houses(release.identified(), count)) return;
    std::map<std::size_t, int> instead;
    for (const HouseSeen& house : release.houses)
        if (!house.leads) ++instead[house.leading.index()];
    std::string why = "after all reasonable readings the true cause leads with " +
                      units::per_cent(likely_enough_for_release) + " in only " +
                      std::to_string(release.identified()) + " of " + std::to_string(count) +
                      " houses, and " + units::per_cent(share_of_houses) + " of them are wanted.";
    const auto rival =
        std::max_element(instead.begin(), instead.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    if (rival != instead.end())
        why += " In " + std::to_string(rival->second) + " of them \"" +
               scoring::class_title(scoring::Class::at(rival->first)) + "\" leads instead.";
    refusals.push_back(why);
}

void refuse_for_claims(const Release& release, std::vector<std::string>& refusals) {
    for (const ClaimBin& bin : release.calibration())
        if (claims_too_much(bin))
            refusals.push_back("where the scorer claims " + units::per_cent(bin.from) + " to " +
                               units::per_cent(bin.to) + " for the likeliest cause (" +
                               units::per_cent(bin.mean_claim) + " in the mean), it is right in " +
                               std::to_string(bin.right) + " of " + std::to_string(bin.runs) +
                               " houses.");
}

}  // namespace

bool claims_too_much(const ClaimBin& bin) {
    return bin.runs >= runs_that_count && bin.mean_claim - bin.share_right() > most_off_claim;
}

int Release::identified() const {
    return static_cast<int>(std::count_if(houses.begin(), houses.end(), [](const HouseSeen& one) {
        return one.leads && one.of_truth >= likely_enough_for_release;
    }));
}

std::array<ClaimBin, 5> Release::calibration() const {
    std::array<ClaimBin, 5> bins;
    for (std::size_t i = 0; i < bins.size(); ++i) {
        ClaimBin& bin = bins[i];
        bin.from = bin_edges[i];
        bin.to = bin_edges[i + 1];
        const bool last = i + 1 == bins.size();
        for (const HouseSeen& house : houses) {
            if (house.of_leading < bin.from || (house.of_leading >= bin.to && !last)) continue;
            ++bin.runs;
            bin.right += house.leads ? 1 : 0;
            bin.mean_claim += house.of_leading;
        }
        if (bin.runs > 0) bin.mean_claim /= bin.runs;
    }
    return bins;
}

const scoring::Gap* Release::widest_step(bool only_near) const {
    const scoring::Gap* widest = nullptr;
    for (const Step& step : steps)
        if ((step.near || !only_near) && (widest == nullptr || step.gap.widths > widest->widths))
            widest = &step.gap;
    return widest;
}

std::string title_of(const scoring::Gap& gap, const worksite::Job& job) {
    scoring::Option option;
    option.quantity = gap.quantity;
    option.mode = gap.mode;
    return scoring::title_of(option, job) + ", severity " + units::fixed(gap.lower.severity, 2) +
           " to " + units::fixed(gap.upper.severity, 2);
}

namespace {

std::vector<std::string> refusals_beside_evidence(const Release& release) {
    std::vector<std::string> refusals;
    refuse_for_claims(release, refusals);
    if (!release.not_scored_because.empty())
        refusals.push_back("whoever reads all this is not scored: " + release.not_scored_because);
    if (release.reference_minutes > longest_reference_minutes ||
        release.reference_minutes < shortest_reference_minutes)
        refusals.push_back("the reference path takes " +
                           units::fixed(release.reference_minutes, 0) + " minutes, and " +
                           units::fixed(shortest_reference_minutes, 0) + " to " +
                           units::fixed(longest_reference_minutes, 0) + " are wanted.");
    return refusals;
}

}  // namespace

std::vector<std::string> refusals_of(const Release& release) {
    std::vector<std::string> refusals;
    refuse_for_evidence(release, refusals);
    for (std::string& one : refusals_beside_evidence(release)) refusals.push_back(std::move(one));
    return refusals;
}

std::string other_refusals(const Release& release) {
    std::string text;
    for (const std::string& one : refusals_beside_evidence(release))
        text += (text.empty() ? "" : " And ") + one;
    return text;
}

std::vector<std::string> remarks_of(const Release& release, const worksite::Job& job) {
    const scoring::Gap* widest = release.widest_step(true);
    if (widest == nullptr || widest->widths <= scoring::most_widths_apart) return {};
    return {"neighbouring severities about the job's own stand " + units::fixed(widest->widths, 1) +
            " widths apart (" + title_of(*widest, job) + "): farther than " +
            units::fixed(scoring::most_widths_apart, 0) +
            ", so that a house between them may look like neither. Whether it does, the houses "
            "above say."};
}

Release check_release(const worksite::Job& asked, const ReleaseTerms& terms) {
    const worksite::Job job = as_checked(asked);
    const Arrived arrived =
        terms.at_arrival != nullptr ? terms.at_arrival : arrive(job, script_seed, terms.threads);
    const Script script = script_of(job, arrived);
    scoring::Bank lived(*arrived);
    lived.live_until(script.tape, script.tape.events.size());
    Release release;
    release.acts = script.acts.size();
    release.readings = script.readings();
    release.minutes = script.minutes;
    release.on_arrival = on_arrival(job, script_seed, arrived);
    release.steps = steps_of(job, lived.shadows());
    ask_scorer(job, script, lived, terms.threads, release);
    go_through_houses(job, script, lived.shadows(), terms.houses, terms.threads, release);
    release.refusals = refusals_of(release);
    release.remarks = remarks_of(release, job);
    return release;
}

}  // namespace emberpath::trainees
