#include "sim/scoring/judgement.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <optional>
#include <utility>

#include "sim/scoring/remedy_order.hpp"
#include "sim/scoring/warrant.hpp"

namespace emberpath::scoring {

namespace {

using faults::Remedy;

std::string figure(double value, int places) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%.*f", places, value);
    return buffer;
}

std::size_t index_of(Remedy remedy) {
    return static_cast<std::size_t>(remedy);
}

/// A remedy carried out, with what the evidence said just before.
struct Made {
    Commitment commitment;
    const Step* step = nullptr;
    Remedy remedy = Remedy::explain_to_customer;
};

struct Findings {
    std::vector<Made> made;
    std::vector<Commitment> commitments;
    Commitment diagnosis;
    std::optional<Remedy> named;  // class of the cause written down
    bool fixed = false;
};

std::string at(const Outcome& outcome, const Step& step) {
    return "At " + clock_text(step.entry->begin_tick - outcome.start_tick) + " (" +
           step.entry->words + ")";
}

// Display and event are one report of the controller's; the complaint is nobody's measurement.
bool is_own_reading(const worksite::Observation& seen) {
    return is_evidence(seen) && seen.quantity != worksite::Quantity::display_word &&
           seen.quantity != worksite::Quantity::readout_event;
}

// Was anything measured or inspected in the steps before `end`?
bool confirmed_before(const PlayedAttempt& played, const Ledger& ledger, const Step* end) {
    for (const Step& step : ledger.steps) {
        if (&step == end) return false;
        for (std::size_t i = 0; i < step.observation_count; ++i)
            if (is_own_reading(played.tape.observations[step.first_observation + i])) return true;
    }
    return false;
}

std::vector<Made> remedies_made(const PlayedAttempt& played, const Ledger& ledger) {
    std::vector<Made> made;
    for (const Step& step : ledger.steps) {
        if (step.entry->remedy < 0) continue;
        const auto remedy = static_cast<Remedy>(step.entry->remedy);
        if (remedy == Remedy::explain_to_customer) continue;  // words: the diagnosis covers them
        const RemedyCost book = remedy_cost(remedy);
        Made m;
        m.step = &step;
        m.remedy = remedy;
        m.commitment = {step.before[index_of(remedy)],
                        ledger.arrival[index_of(remedy)],
                        need(remedy),
                        book.minutes,
                        std::max(step.entry->part_minutes, book.part_minutes),
                        remedy == played.true_class && !step.cured_before,
                        confirmed_before(played, ledger, &step)};
        made.push_back(m);
    }
    return made;
}

// The diagnosis keeps the probability it had before the cure, or before it was explained or handed on:
// what is read afterwards is proof, no evidence gathered beforehand.
Commitment diagnosis_made(const PlayedAttempt& played, const Ledger& ledger,
                          std::optional<Remedy> named) {
    Commitment diagnosis;
    diagnosis.need = need_of_final_diagnosis;
    if (!named) return diagnosis;
    const bool before_cure = *named == played.true_class && !is_handed_on(*named);
    const Step* settled = nullptr;  // the cure; or the last time it was explained or handed on
    for (const Step& step : ledger.steps) {
        if (step.entry->remedy != static_cast<int>(*named)) continue;
        if (is_handed_on(*named) || (before_cure && settled == nullptr)) settled = &step;
    }
    const auto& classes = settled != nullptr ? settled->before : ledger.end;
    diagnosis.probability = classes[index_of(*named)];
    diagnosis.on_arrival = ledger.arrival[index_of(*named)];
    diagnosis.confirmed = confirmed_before(played, ledger, settled);
    return diagnosis;
}

Findings find(const PlayedAttempt& played, const Ledger& ledger, const Outcome& outcome) {
    Findings f;
    f.made = remedies_made(played, ledger);
    for (const Made& m : f.made) f.commitments.push_back(m.commitment);
    const faults::CauseInfo* cause = faults::find_cause(outcome.write_up.cause);
    if (cause != nullptr && outcome.write_up.handed_in) f.named = cause->remedy;
    f.diagnosis = diagnosis_made(played, ledger, f.named);
    // Nothing wrong, or a fault that is handed on: it counts when it was also named.
    f.fixed = !outcome.fault_remains &&
              (!is_handed_on(played.true_class) || f.named == played.true_class);
    return f;
}

// --- reasons: one sentence an area, naming what cost most ---

std::string safety_reason(const PlayedAttempt& played, const Outcome& outcome) {
    const worksite::Breach* worst = nullptr;
    const auto weight = [](const worksite::Breach& b) {
        return b.deduction + (b.critical ? 1.0 : 0.0);
    };
    for (const worksite::Breach& breach : outcome.breaches)
        if (worst == nullptr || weight(breach) > weight(*worst)) worst = &breach;
    if (worst == nullptr) return "No safety rule was broken.";
    if (worst->act >= played.log.size()) return worst->text;
    const worksite::LogEntry& entry = played.log[worst->act];
    return "At " + clock_text(entry.begin_tick - outcome.start_tick) + " (" + entry.words +
           "): " + worst->text;
}

std::string evidence_reason(const Findings& f, const Outcome& outcome) {
    const double by_diagnosis = 8.0 * (1.0 - warrant_of(f.diagnosis));
    double most = 0.0;
    const Made* worst = nullptr;
    for (const Made& m : f.made) {
        const double cost = m.commitment.minutes + m.commitment.part_minutes;
        const double lost = std::sqrt(cost) * (1.0 - warrant_of(m.commitment));
        if (lost <= most) continue;
        most = lost;
        worst = &m;
    }
    // An unfounded remedy also fixes what the diagnosis of its class is worth: name the act then.
    const bool same = worst != nullptr && f.named == worst->remedy && most > 0.05;
    if (by_diagnosis >= most && !same) worst = nullptr;
    most = std::max(most, by_diagnosis);
    if (f.named && !f.diagnosis.confirmed && f.diagnosis.probability >= f.diagnosis.need)
        return "The cause rests on the heater's own word and the complaint: nothing was measured "
               "or inspected before it was settled.";
    if (worst != nullptr)
        return at(outcome, *worst->step) + ": your own evidence gave " +
               class_title(worst->remedy) + " " + percent(worst->commitment.probability) +
               "; this remedy needs " + percent(worst->commitment.need) + ".";
    if (!f.named) return "No cause from the catalogue was written down and handed in.";
    const std::string held =
        "your evidence gave " + class_title(*f.named) + " " + percent(f.diagnosis.probability);
    if (most < 0.05) return "Before anything was decided " + held + "; 90 % is asked.";
    return "The cause you wrote down was not yet shown: " + held + ", and 90 % is asked.";
}

std::string test_reason(const PlayedAttempt& played, const Outcome& outcome, const Step& step) {
    std::string text = at(outcome, step) + ": " + figure(step.book_minutes, 1) +
                       " minutes for a reading that could be expected to give " +
                       figure(step.expected_bits, 2) + " of " +
                       figure(entropy_bits(step.before), 2) + " bits";
    if (step.best.bits > 0.0)
        text += "; " + title_of(step.best, played.job) + " would have given " +
                figure(step.best.bits, 2) + " in " + figure(step.best.minutes, 1);
    return text + ".";
}

std::string path_reason(const PlayedAttempt& played, const Ledger& ledger, const Findings& f,
                        const Outcome& outcome, const PathCharges& charges) {
    if (path_score(charges.total(), outcome.reference_minutes) >= 100.0)
        return "Every reading was worth its time; the reference path needs " +
               figure(outcome.reference_minutes, 0) + " minutes.";
    const Step* dearest = nullptr;
    for (const Step& step : ledger.steps)
        if (dearest == nullptr || step.charge > dearest->charge) dearest = &step;
    const Made* remedy = nullptr;
    for (const Made& m : f.made)
        if (remedy == nullptr ||
            remedy_charge_minutes(m.commitment) > remedy_charge_minutes(remedy->commitment))
            remedy = &m;
    const double by_test = dearest != nullptr ? dearest->charge : 0.0;
    const double by_remedy = remedy != nullptr ? remedy_charge_minutes(remedy->commitment) : 0.0;
    const double most = std::max({by_test, by_remedy, charges.idle, charges.submission});
    if (most == charges.submission && !f.named)
        return "No cause was named and handed in, which counts as a call-back: " +
               figure(charges.submission, 0) + " minutes charged.";
    if (most == charges.submission)
        return "The hand-in stood on " + percent(f.diagnosis.probability) +
               " for its cause, which risks a call-back: " + figure(charges.submission, 0) +
               " minutes charged.";
    if (most == charges.idle)
        return figure(charges.idle, 1) + " minutes were waited without a reading that needed them.";
    if (remedy != nullptr && most == by_remedy)
        return at(outcome, *remedy->step) + ": " + figure(by_remedy, 0) +
               " minutes charged, because the evidence gave this remedy only " +
               percent(remedy->commitment.probability) + ".";
    return dearest != nullptr ? test_reason(played, outcome, *dearest)
                              : "Every reading was worth its time.";
}

// The remedy that probability per cost would have put first at that moment.
std::string better_first(const Step& step, Remedy chosen) {
    std::vector<RemedyChoice> choices;
    for (std::size_t i = 0; i < faults::remedy_count; ++i)
        choices.push_back({step.before[i], remedy_cost(static_cast<Remedy>(i)).total()});
    const auto first = static_cast<Remedy>(by_probability_per_cost(choices).front());
    if (first == chosen) return "";
    return "; by probability for its cost, " + std::string(faults::remedy_title(first)) +
           " came first at " + percent(step.before[index_of(first)]);
}

std::string remedy_reason(const PlayedAttempt& played, const Findings& f, const Outcome& outcome) {
    const Made* worst = nullptr;
    double most = 0.0;
    for (const Made& m : f.made) {
        const double waste = waste_minutes({&m.commitment, 1});
        if (waste <= most) continue;
        most = waste;
        worst = &m;
    }
    if (worst != nullptr && most > 0.5)
        return at(outcome, *worst->step) + ": " + figure(most, 0) +
               " minutes of work and parts spent on " + percent(worst->commitment.probability) +
               better_first(*worst->step, worst->remedy) + ".";
    const std::string title(faults::remedy_title(played.true_class));
    if (!f.fixed) return "The fault was not set right; it needed: " + title + ".";
    if (warrant_of(f.diagnosis) < 0.98)
        return "Set right, but on " + percent(f.diagnosis.probability) + " for the cause named.";
    return "The right thing was done and nothing else: " + title + ".";
}

std::string proof_reason(const Outcome& outcome, bool fault_remains) {
    const int done = std::min<int>(static_cast<int>(outcome.verified.size()), proof_item_count);
    std::string text = std::to_string(done) + " of 8 items of proof and handover were done";
    if (fault_remains) text += ", and the fault remains";
    for (std::size_t i = 0; i < outcome.unproved.size(); ++i)
        text += (i == 0 ? "; missing: " : "; ") + outcome.unproved[i];
    return text + ".";
}

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

std::string objection(const Findings& f, const Outcome& outcome, const Assessment& a) {
    for (const worksite::Breach& breach : outcome.breaches)
        if (breach.critical) return "a safety gate was broken: " + breach.text;
    if (!outcome.write_up.handed_in) return "nothing was handed in.";
    if (!outcome.not_scored_because.empty()) return "";
    if (!f.named) return "no cause from the catalogue was written down.";
    if (!f.fixed) return "the fault was not set right.";
    if (!f.diagnosis.confirmed)
        return "the cause rests on the heater's own word alone; nothing was measured or inspected.";
    if (warrant_of(f.diagnosis) < 0.5)
        return "the cause written down had " + percent(f.diagnosis.probability) +
               " on the evidence gathered.";
    const auto weakest =
        std::min_element(a.areas.begin(), a.areas.end(),
                         [](const Area& x, const Area& y) { return x.score < y.score; });
    if (a.overall < 60.0) return "the weakest area is " + weakest->word + ". " + weakest->reason;
    return "";
}

std::string proposal(const Findings& f, const Outcome& outcome, const Assessment& a) {
    const std::string against = objection(f, outcome, a);
    if (!against.empty()) return "A person decides. Suggested: not yet, because " + against;
    if (!outcome.not_scored_because.empty())
        return "A person decides. No suggestion: " + outcome.not_scored_because;
    return "A person decides. Suggested: nothing stands against it; no gate was broken, the fault "
           "was "
           "set right and the cause named had " +
           percent(f.diagnosis.probability) + ".";
}

}  // namespace

std::string class_title(Remedy remedy) {
    std::string title;
    for (const faults::CauseInfo& cause : faults::catalogue()) {
        if (cause.remedy != remedy) continue;
        if (!title.empty()) title += " or ";
        title += cause.title;
    }
    return title;
}

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

void judge(const PlayedAttempt& played, const Ledger& ledger, const Outcome& outcome,
           Assessment& out) {
    const Findings f = find(played, ledger, outcome);
    out.fixed = f.fixed;
    out.true_class_probability = ledger.at_cure.classes()[index_of(played.true_class)];
    out.gates_met = std::none_of(outcome.breaches.begin(), outcome.breaches.end(),
                                 [](const worksite::Breach& b) { return b.critical; });
    PathCharges charges{ledger.test_charge, ledger.idle_charge, 0.0,
                        submission_charge_minutes(f.diagnosis.probability)};
    for (const Commitment& c : f.commitments) charges.remedies += remedy_charge_minutes(c);
    std::vector<Omission> omissions;
    for (const worksite::Breach& b : outcome.breaches)
        omissions.push_back({b.deduction, b.critical});
    const AreaScores scores{
        safety_score(omissions), evidence_score(f.commitments, f.diagnosis),
        path_score(charges.total(), outcome.reference_minutes),
        remedy_score(f.fixed, warrant_of(f.diagnosis), waste_minutes(f.commitments)),
        proof_score(static_cast<int>(outcome.verified.size()), !f.fixed)};
    Area evidence = area_of("evidence", scores.evidence, evidence_reason(f, outcome));
    Area path = area_of("path", scores.path, path_reason(played, ledger, f, outcome, charges));
    Area remedy = area_of("remedy", scores.remedy, remedy_reason(played, f, outcome));
    out.overall = overall_score(scores);
    if (!outcome.not_scored_because.empty()) {
        for (Area* area : {&evidence, &path, &remedy})
            *area = unscored(*area, outcome.not_scored_because);
        out.overall = 0.0;
    }
    out.areas = {area_of("safe work", scores.safety, safety_reason(played, outcome)), evidence,
                 path, remedy, area_of("proof", scores.proof, proof_reason(outcome, !f.fixed))};
    out.proposal = proposal(f, outcome, out);
}

}  // namespace emberpath::scoring
