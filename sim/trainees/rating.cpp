#include "sim/trainees/rating.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>

#include "sim/scoring/release_terms.hpp"
#include "sim/scoring/share_out.hpp"

namespace emberpath::trainees {

namespace {

constexpr double clearly_above = 1.0;   // points of the overall score
constexpr double least_share = 1.0e-6;  // less is as good as excluded: 20 bits
constexpr double still_open_from = 0.05;
constexpr int attempts_at_a_time = 2;

std::string points(double value) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%.0f", value);
    return buffer;
}

faults::Cause true_cause(const worksite::Job& job) {
    return job.faults.empty() ? faults::Cause::no_fault : job.faults.front().cause;
}

// Whoever reads before deciding; at random counts as neither good nor bad.
bool is_ordinary(Policy policy) {
    return is_sound(policy) || policy == Policy::over_tester;
}

Fare fare_of(Policy policy, const std::vector<Scored>& attempts) {
    Fare fare;
    fare.policy = policy;
    for (const Scored& one : attempts) {
        if (one.policy != policy) continue;
        ++fare.attempts;
        fare.unopposed += one.unopposed ? 1 : 0;
        fare.fixed += one.fixed ? 1 : 0;
        fare.critical += one.gates_met ? 0 : 1;
        fare.breaches += one.breaches;
        fare.overall += one.overall;
        for (std::size_t a = 0; a < 5; ++a) fare.areas[a] += one.areas[a];
        fare.minutes += one.minutes;
        fare.acts += static_cast<double>(one.acts);
    }
    if (fare.attempts == 0) return fare;
    const auto n = static_cast<double>(fare.attempts);
    fare.overall /= n;
    for (double& area : fare.areas) area /= n;
    fare.minutes /= n;
    fare.acts /= n;
    return fare;
}

Rating::Shortest shortest_of(const std::vector<Scored>& attempts) {
    Rating::Shortest best;
    for (const Scored& one : attempts) {
        if (!is_sound(one.policy) || !one.unopposed || !one.gates_met) continue;
        if (best.found && one.minutes >= best.minutes) continue;
        best = {true, one.policy, one.seed, one.minutes, one.acts};
    }
    return best;
}

void refuse_bad_habits(Rating& rating, double best_sound) {
    for (const Fare& fare : rating.fares) {
        if (!shows_bad_habit(fare.policy, fare.breaches)) continue;
        const std::string who(policy_title(fare.policy));
        if (fare.unopposed > 0)
            rating.refusals.push_back("\"" + who + "\" is left without objection in " +
                                      std::to_string(fare.unopposed) + " of " +
                                      std::to_string(fare.attempts) + " attempts.");
        if (fare.overall > best_sound - clearly_above)
            rating.refusals.push_back("\"" + who + "\" scores " + points(fare.overall) +
                                      ", and the best sound way of working " + points(best_sound) +
                                      ".");
    }
}

// What a careful person can find out: in each seed what the best reader knew. More readings are not always better, for a
// house changes while somebody reads for six hours.
void find_identifiability(const std::vector<Scored>& attempts, Rating& rating) {
    std::map<std::uint64_t, const Scored*> best;
    for (const Scored& one : attempts) {
        if (!is_ordinary(one.policy)) continue;
        const Scored*& seen = best[one.seed];
        if (seen == nullptr || one.true_class_probability > seen->true_class_probability)
            seen = &one;
    }
    if (best.empty()) return;
    for (const auto& [seed, one] : best) {
        rating.identifiable += one->true_class_probability / static_cast<double>(best.size());
        if (one->still_open.size() > rating.not_told_apart.size())
            rating.not_told_apart = one->still_open;
    }
    if (rating.identifiable < scoring::likely_enough_for_release)
        rating.refusals.push_back("whoever reads best gives the true cause only " +
                                  points(100.0 * rating.identifiable) + " %.");
}

}  // namespace

Scored score(const worksite::Job& job, std::uint64_t seed, const Played& played,
             const Arrived& arrived, std::span<const scoring::Change> changes) {
    const Arrived& shadows = played.lived != nullptr ? played.lived : arrived;
    const auto assessment = scoring::assess(job, seed, worksite::Mode::assessed, played.acts,
                                            {shadows.get(), false, 1, changes});
    Scored scored;
    scored.policy = played.policy;
    scored.seed = seed;
    for (std::size_t a = 0; a < 5; ++a) {
        scored.areas[a] = assessment.areas[a].score;
        scored.scored = scored.scored && assessment.areas[a].scored;
    }
    scored.overall = assessment.overall;
    scored.unopposed = assessment.unopposed;
    scored.gates_met = assessment.gates_met;
    scored.breaches = static_cast<int>(assessment.breaches.size());
    scored.fixed = assessment.fixed;
    scored.true_class_probability = assessment.true_class_probability;
    const auto truth = scoring::class_or_first_of(job.faults);
    for (const auto& one : assessment.at_end)
        if (one.of != truth && one.probability >= still_open_from) scored.still_open.push_back(one);
    if (!assessment.at_end.empty()) {
        scored.leading_probability = assessment.at_end.front().probability;
        scored.leading_is_true = assessment.at_end.front().of == truth;
    }
    scored.minutes = played.minutes;
    scored.reference_minutes = assessment.reference_minutes;
    scored.acts = played.acts.size();
    scored.proposal = assessment.proposal;
    scored.overall_with = assessment.overall_with;
    return scored;
}

std::vector<Scored> play_all(const worksite::Job& job, const Cast& cast) {
    const auto count = static_cast<std::size_t>(std::max(cast.seeds, 1));
    std::vector<Played> found(count);
    std::vector<Arrived> arrived(count);
    arrived.front() = cast.at_arrival;
    scoring::share_out(count, attempts_at_a_time, [&](std::size_t i) {
        const auto seed = cast.first_seed + i;
        if (arrived[i] == nullptr) arrived[i] = arrive(job, seed);
        found[i] = play(Policy::information, job, seed, {{}, nullptr, arrived[i]});
    });
    std::vector<Scored> all;
    for (std::size_t i = 0; i < count; ++i)
        for (const Policy policy : cast.policies)
            if (is_possible(policy, job)) {
                Scored one;
                one.policy = policy;
                one.seed = cast.first_seed + i;
                all.push_back(one);
            }
    scoring::share_out(all.size(), attempts_at_a_time, [&](std::size_t i) {
        const auto seed = all[i].seed;
        const auto index = static_cast<std::size_t>(seed - cast.first_seed);
        const Played& sound = found[index];
        const bool known = all[i].policy == Policy::information;
        const Told told{true_cause(job), &sound, arrived[index]};
        all[i] = score(job, seed, known ? sound : play(all[i].policy, job, seed, told),
                       told.arrived, cast.changes);
    });
    return all;
}

Rating judge(const worksite::Job& job, const std::vector<Scored>& attempts,
             const Arrived& at_arrival) {
    Rating rating;
    double best_sound = 0.0;
    int ordinary = 0, missed = 0;
    Difficulty& difficulty = rating.difficulty;
    for (const Policy policy : all_policies()) {
        if (!is_possible(policy, job)) continue;
        rating.fares.push_back(fare_of(policy, attempts));
        const Fare& fare = rating.fares.back();
        if (is_sound(policy)) best_sound = std::max(best_sound, fare.overall);
        if (is_ordinary(policy)) ordinary += fare.attempts;
        if (is_ordinary(policy)) missed += fare.attempts - fare.unopposed;
    }
    if (ordinary > 0) difficulty.missed_share = static_cast<double>(missed) / ordinary;
    rating.shortest = shortest_of(attempts);
    rating.on_arrival = on_arrival(job, 1, at_arrival);
    difficulty.surprise_bits = -std::log2(std::max(rating.on_arrival.of_truth, least_share));
    if (!attempts.empty()) difficulty.reference_minutes = attempts.front().reference_minutes;
    difficulty.two_faults = job.faults.size() > 1;
    find_identifiability(attempts, rating);
    if (!rating.shortest.found)
        rating.refusals.emplace_back("no sound way of working leads through without an objection.");
    refuse_bad_habits(rating, best_sound);
    return rating;
}

void refuse_by_check(const worksite::ReleaseCheck& check, Rating& rating) {
    if (std::string unfit = scoring::why_not_fit(check); !unfit.empty())
        rating.refusals.push_back(std::move(unfit));
}

Rating rate(const worksite::Job& asked, int seeds) {
    worksite::Job job = asked;
    job.release = {};  // the figures are wanted whatever another check found
    const Arrived at_arrival = arrive(job, 1);
    Rating rating = judge(job, play_all(job, {all_policies(), seeds, at_arrival}), at_arrival);
    refuse_by_check(asked.release, rating);
    return rating;
}

}  // namespace emberpath::trainees
