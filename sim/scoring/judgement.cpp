#include "sim/scoring/judgement.hpp"

#include <algorithm>
#include <cstdio>
#include <utility>

#include "sim/scoring/attribution.hpp"
#include "sim/scoring/findings.hpp"
#include "sim/scoring/warrant.hpp"

namespace emberpath::scoring {

namespace {

constexpr double least_proof = 80.0;  // of the area, for no objection

Area area_of(const char* word, double score, std::string reason) {
    Area area;
    area.word = word;
    area.score = score;
    area.reason = std::move(reason);
    return area;
}

Area unscored(Area area, const std::string& because) {
    area.scored = false;
    area.score = 0.0;
    area.not_scored_because = because;
    area.reason = "Not scored: " + because;
    return area;
}

std::string objection(const PlayedAttempt& played, const Findings& f, const Outcome& outcome,
                      const Assessment& a) {
    const worksite::Breach* gravest = gravest_breach(played, outcome);
    if (gravest != nullptr && gravest->critical)
        return "a safety gate was broken: " + gravest->text;
    if (!outcome.write_up.handed_in) return "nothing was handed in.";
    // A fault that is still there needs no shadow to be seen.
    if (!outcome.not_scored_because.empty())
        return f.fixed || f.handed_on_safe || outcome.beyond_model ? ""
                                                                   : "the fault was not set right.";
    if (f.named.empty()) return "no cause from the catalogue was written down.";
    if (!f.rightly_ended())
        return f.handed_on_safe
                   ? "the heater was made safe, but " + std::string(why_not_hand_on(f)) +
                         ", and the fault was not set right."
                   : "the fault was not set right.";
    Commitment unhalved = f.diagnosis;
    unhalved.confirmed = true;
    if (warrant_of(unhalved) < 0.5)
        return "the cause written down had " + percent(f.diagnosis.probability) +
               " on the evidence gathered.";
    if (!f.diagnosis.confirmed)
        return "no measurement or inspection made before could tell the cause written down from "
               "what else was open.";
    const auto weakest =
        std::min_element(a.areas.begin(), a.areas.end(),
                         [](const Area& x, const Area& y) { return x.score < y.score; });
    if (a.areas[4].score < least_proof) return "the work was not proved. " + a.areas[4].reason;
    if (a.overall < 60.0) return "the weakest area is " + weakest->word + ". " + weakest->reason;
    return "";
}

/// A cause whose remedy is a word or another trade's work ends well without anything being mended.
std::string ending_in_words(const PlayedAttempt& played) {
    if (is_to_be_explained(played)) return "what was found was rightly explained";
    const auto needed = remedies_of(played.true_class);
    const bool others = std::all_of(needed.begin(), needed.end(), [&](faults::Remedy one) {
        return to_be_handed_on(played, one);
    });
    return others ? "the fault was rightly handed on" : "the fault was set right";
}

std::string proposal(const PlayedAttempt& played, const Findings& f, const Outcome& outcome,
                     const std::string& against) {
    if (!against.empty()) return "A person decides. Suggested: not yet, because " + against;
    if (!outcome.not_scored_because.empty())
        return "A person decides. No suggestion: " + outcome.not_scored_because;
    if (!f.fixed)
        return "A person decides. Suggested: nothing stands against it; no gate was broken, no "
               "reading could tell the open causes apart, and the heater was taken out of use and "
               "handed on.";
    return "A person decides. Suggested: nothing stands against it; no gate was broken, " +
           ending_in_words(played) + " and the cause named had " +
           percent(f.diagnosis.probability) + ".";
}

}  // namespace

std::string clock_text(std::int64_t ticks) {
    const std::int64_t seconds = std::max<std::int64_t>(ticks, 0) / 10;
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%02lld:%02lld", static_cast<long long>(seconds / 60),
                  static_cast<long long>(seconds % 60));
    return buffer;
}

std::string percent(double probability) {
    if (probability < 0.01) return "under 1 %";
    if (probability > 0.99) return "over 99 %";
    return figure(100.0 * probability, 0) + " %";
}

std::string given(double probability, Class one) {
    return percent(probability) + " to \"" + class_title(one) + "\"";
}

static void add_lost_points(const Charged& charged, const AreaScores& scores, Assessment& out) {
    std::vector<std::vector<Lost>> lost = lost_points(charged, scores);
    for (std::size_t a = 0; a < out.areas.size(); ++a)
        if (out.areas[a].scored) out.areas[a].lost = std::move(lost[a]);
}

static void add_confidence(const Findings& f, const Outcome& outcome, Assessment& out) {
    out.diagnosis_named = !f.named.empty();
    out.diagnosis_probability = f.diagnosis.probability;
    if (out.diagnosis_named) out.stated_confidence = outcome.write_up.confidence;
}

double overall_without(const Assessment& a, std::size_t area) {
    const AreaScores scores{a.areas[0].score, a.areas[1].score, a.areas[2].score, a.areas[3].score,
                            a.areas[4].score};
    return std::max(0.0, under_safety_ceiling(geometric_mean_without(scores, area), scores.safety));
}

void judge(const PlayedAttempt& played, const Ledger& ledger, const Outcome& outcome,
           Assessment& out) {
    const Findings f = find(played, ledger, outcome);
    out.fixed = f.fixed;
    const std::vector<double> at_cure = ledger.at_cure.classes();
    out.true_class_probability = at_cure[played.true_class.index()];
    out.true_remedy_probability = 1.0;
    for (const faults::Remedy one : remedies_of(played.true_class))
        out.true_remedy_probability = std::min(out.true_remedy_probability, needing(at_cure, one));
    out.gates_met = std::none_of(outcome.breaches.begin(), outcome.breaches.end(),
                                 [](const worksite::Breach& b) { return b.critical; });
    PathCharges charges{ledger.test_charge, ledger.idle_charge, 0.0,
                        submission_charge_minutes(f.diagnosis.probability)};
    for (const Commitment& c : f.commitments) charges.remedies += remedy_charge_minutes(c);
    std::vector<Omission> omissions;
    for (const worksite::Breach& b : outcome.breaches)
        omissions.push_back({b.deduction, b.critical});
    const double remedy_points =
        f.handed_on_safe
            ? handing_on_score(!f.separable, warrant_of(f.diagnosis), waste_minutes(f.commitments))
            : remedy_score(f.fixed, warrant_of(f.diagnosis), waste_minutes(f.commitments));
    const AreaScores scores{
        safety_score(omissions), evidence_score(f.commitments, f.diagnosis),
        path_score(charges.total(), outcome.reference_minutes), remedy_points,
        proof_score(static_cast<int>(outcome.verified.size()),
                    static_cast<int>(outcome.not_needed.size()), !f.rightly_ended())};
    const Reasons why = reasons(played, ledger, f, outcome, charges);
    Area evidence = area_of("evidence", scores.evidence, why.evidence);
    Area path = area_of("path", scores.path, why.path);
    Area remedy = area_of("remedy", scores.remedy, why.remedy);
    out.overall = overall_score(scores);
    if (!outcome.not_scored_because.empty()) {
        for (Area* area : {&evidence, &path, &remedy})
            *area = unscored(*area, outcome.not_scored_because);
        out.overall = 0.0;
        out.overall_scored = false;
    }
    out.areas = {area_of("safe work", scores.safety, why.safety), evidence, path, remedy,
                 area_of("proof", scores.proof, why.proof)};
    add_lost_points({played, ledger, f, outcome, charges}, scores, out);
    add_confidence(f, outcome, out);
    const std::string against = objection(played, f, outcome, out);
    out.proposal = proposal(played, f, outcome, against);
    out.unopposed = against.empty() && outcome.not_scored_because.empty();
}

}  // namespace emberpath::scoring
