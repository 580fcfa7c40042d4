#include "sim/scoring/attribution.hpp"

#include <algorithm>
#include <functional>
#include <numeric>
#include <string>
#include <utility>

#include "sim/scoring/moments.hpp"
#include "sim/scoring/warrant.hpp"
#include "sim/units/counted.hpp"

namespace emberpath::scoring {

namespace {

/// A charge with the score that its area would have without it.
struct Charge {
    std::size_t act = Lost::no_act;
    std::string item, reason;
    double without = 0.0;
};

std::size_t hand_in_of(const Charged& c) {
    return scoring::hand_in_of(c.played, c.outcome);
}

Commitment warranted(Commitment commitment) {
    commitment.probability = 1.0;
    commitment.confirmed = true;
    return commitment;
}

bool is_warranted(const Commitment& commitment) {
    return warrant_of(commitment) >= 1.0;
}

std::string why_unwarranted(const Commitment& commitment, const std::string& what) {
    if (commitment.probability >= commitment.need)
        return "No reading before it was settled could tell " + what +
               " from what else was open: half of its warrant.";
    return "Your own evidence gave " + what + " " + percent(commitment.probability) + "; " +
           percent(commitment.need) + " is asked" +
           (commitment.confirmed
                ? "."
                : ", and no reading that was taken could tell it from what else was open.");
}

std::string quoted(const std::string& title) {
    return "\"" + title + "\"";
}

std::string why_remedy(const Made& made) {
    return why_unwarranted(made.commitment, quoted(faults::class_title(made.remedy)));
}

std::string why_diagnosis(const Findings& f) {
    if (f.named.empty()) return "No cause from the catalogue was written down and handed in.";
    return "The cause you handed in: " + why_unwarranted(f.diagnosis, quoted(named_title(f)));
}

std::vector<Charge> safety_charges(const Charged& c) {
    std::vector<Omission> all;
    for (const worksite::Breach& b : c.outcome.breaches) all.push_back({b.deduction, b.critical});
    std::vector<Charge> charges;
    for (std::size_t i = 0; i < all.size(); ++i) {
        std::vector<Omission> rest = all;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
        const worksite::Breach& breach = c.outcome.breaches[i];
        const bool by_act = breach.act < c.played.log.size();
        charges.push_back({by_act ? breach.act : hand_in_of(c), by_act ? "" : breach.text,
                           breach.text, safety_score(rest)});
    }
    return charges;
}

std::vector<Charge> evidence_charges(const Charged& c) {
    const Findings& f = c.findings;
    std::vector<Charge> charges;
    for (std::size_t i = 0; i < f.made.size(); ++i) {
        if (is_warranted(f.commitments[i])) continue;
        std::vector<Commitment> others = f.commitments;
        others[i] = warranted(others[i]);
        charges.push_back(
            {f.made[i].step->act, "", why_remedy(f.made[i]), evidence_score(others, f.diagnosis)});
    }
    if (!is_warranted(f.diagnosis))
        charges.push_back({hand_in_of(c), f.named.empty() ? "a cause, written and handed in" : "",
                           why_diagnosis(f),
                           evidence_score(f.commitments, warranted(f.diagnosis))});
    return charges;
}

std::vector<Charge> path_charges(const Charged& c) {
    std::vector<Charge> charges;
    const auto add = [&](std::size_t act, double minutes, std::string item, std::string reason) {
        if (minutes > 0.0)
            charges.push_back({act, std::move(item), std::move(reason),
                               path_score(c.path.total() - minutes, c.outcome.reference_minutes)});
    };
    for (const Step& step : c.ledger.steps) {
        add(step.act, step.charge, "", reading_worth(c.played, step));
        add(step.act, step.idle_minutes, "", waited_in_vain(step));
    }
    for (const Made& made : c.findings.made) {
        const double minutes = remedy_charge_minutes(made.commitment);
        add(made.step->act, minutes, "",
            units::counted(figure(minutes, 0), "minute") + " of work charged. " + why_remedy(made));
    }
    add(hand_in_of(c), c.path.submission,
        c.findings.named.empty() ? "a cause, written and handed in" : "",
        units::counted(figure(c.path.submission, 0), "minute") + " for a call-back. " +
            why_diagnosis(c.findings));
    return charges;
}

/// R as a function of what it depends on.
double remedy_area(const Findings& f, bool ended_rightly, double warrant, double waste) {
    return f.handed_on_safe ? handing_on_score(ended_rightly, warrant, waste)
                            : remedy_score(ended_rightly, warrant, waste);
}

std::vector<Charge> remedy_charges(const Charged& c) {
    const Findings& f = c.findings;
    const bool ended = f.rightly_ended();
    const double warrant = warrant_of(f.diagnosis), waste = waste_minutes(f.commitments);
    std::vector<Charge> charges;
    for (const Made& made : f.made) {
        const double own = waste_minutes({&made.commitment, 1});
        if (own > 0.0)
            charges.push_back({made.step->act, "",
                               units::counted(figure(own, 0), "minute") +
                                   " of work and parts were not called for by what you knew. " +
                                   why_remedy(made),
                               remedy_area(f, ended, warrant, waste - own)});
    }
    if (warrant < 1.0)
        charges.push_back({hand_in_of(c), f.named.empty() ? "a cause, written and handed in" : "",
                           why_diagnosis(f), remedy_area(f, ended, 1.0, waste)});
    if (!ended)
        charges.push_back({hand_in_of(c), remedy_title(c.played.true_class),
                           f.handed_on_safe ? "Made safe and handed on, although " +
                                                  std::string(why_not_hand_on(f)) + "."
                           : is_to_be_explained(c.played)
                               ? "Nothing was wrong with the heater, and that was not said."
                               : "The fault was not set right.",
                           remedy_area(f, true, warrant, waste)});
    return charges;
}

std::vector<Charge> proof_charges(const Charged& c) {
    const auto done = static_cast<int>(c.outcome.verified.size());
    const auto not_needed = static_cast<int>(c.outcome.not_needed.size());
    const bool remains = !c.findings.rightly_ended();
    std::vector<Charge> charges;
    for (const std::string& item : c.outcome.unproved)
        charges.push_back({hand_in_of(c), item, "Not done: " + item + ".",
                           proof_score(done + 1, not_needed, remains)});
    if (remains)
        charges.push_back(
            {hand_in_of(c), remedy_title(c.played.true_class),
             is_to_be_explained(c.played)
                 ? "What is right with the heater was not said: what was proved is worth less."
                 : "The fault remains: what was proved is worth less.",
             proof_score(done, not_needed, false)});
    return charges;
}

std::vector<Lost> lost_to(double score, std::vector<Charge> charges) {
    std::vector<double> without;
    for (const Charge& charge : charges) without.push_back(charge.without);
    const std::vector<double> points = points_of(score, without);
    std::vector<Lost> lost;
    for (std::size_t i = 0; i < charges.size(); ++i)
        if (points[i] > 0.0)
            lost.push_back({charges[i].act, std::move(charges[i].item), points[i],
                            std::move(charges[i].reason)});
    std::stable_sort(lost.begin(), lost.end(),
                     [](const Lost& a, const Lost& b) { return a.points > b.points; });
    return lost;
}

}  // namespace

std::size_t hand_in_of(const PlayedAttempt& played, const Outcome& outcome) {
    if (played.log.empty()) return Lost::no_act;
    const std::size_t last = played.log.size() - 1;
    const bool ended_badly =
        std::any_of(outcome.breaches.begin(), outcome.breaches.end(),
                    [&](const worksite::Breach& b) { return b.critical && b.act == last; });
    return outcome.write_up.handed_in || ended_badly ? last : Lost::no_act;
}

std::vector<double> points_of(double score, std::span<const double> without) {
    constexpr double nothing = 1.0e-12;  // of 100 points: rounding
    std::vector<double> points;
    for (const double one : without) points.push_back(std::max(0.0, one - score));
    const double total = std::accumulate(points.begin(), points.end(), 0.0);
    const double missing = std::max(0.0, 100.0 - score);
    for (double& one : points)
        one =
            total > nothing ? one * missing / total : missing / static_cast<double>(points.size());
    return points;
}

std::vector<std::vector<Lost>> lost_points(const Charged& c, const AreaScores& scores) {
    return {lost_to(scores.safety, safety_charges(c)),
            lost_to(scores.evidence, evidence_charges(c)), lost_to(scores.path, path_charges(c)),
            lost_to(scores.remedy, remedy_charges(c)), lost_to(scores.proof, proof_charges(c))};
}

}  // namespace emberpath::scoring
