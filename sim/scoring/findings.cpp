#include "sim/scoring/findings.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <utility>

#include "sim/scoring/warrant.hpp"

namespace emberpath::scoring {

namespace {

using faults::Remedy;

// Was the class told from what else was open, by a reading in the steps before `end`?
bool confirmed_before(const Ledger& ledger, const Step* end, Remedy remedy) {
    for (const Step& step : ledger.steps) {
        if (&step == end) return false;
        if (!step.separation.empty() && step.separation[class_index(remedy)] >= confirming_bits)
            return true;
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
        m.commitment = {step.before[class_index(remedy)],
                        ledger.arrival[class_index(remedy)],
                        need(remedy),
                        book.minutes,
                        std::max(step.entry->part_minutes, book.part_minutes),
                        remedy == played.true_class && !step.cured_before,
                        confirmed_before(ledger, &step, remedy)};
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
    diagnosis.probability = classes[class_index(*named)];
    diagnosis.on_arrival = ledger.arrival[class_index(*named)];
    diagnosis.confirmed = confirmed_before(ledger, settled, *named);
    return diagnosis;
}

}  // namespace

std::string figure(double value, int places) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%.*f", places, value);
    return buffer;
}

std::string at(const Outcome& outcome, const Step& step) {
    return "At " + clock_text(step.entry->begin_tick - outcome.start_tick) + " (" +
           step.entry->words + ")";
}

/// By its nature, or because the licence of the person at work does not cover the cure.
static bool to_be_handed_on(const PlayedAttempt& played) {
    return is_handed_on(played.true_class) ||
           !played.job.practice.licence.covers(played.true_class);
}

Findings find(const PlayedAttempt& played, const Ledger& ledger, const Outcome& outcome) {
    Findings f;
    f.made = remedies_made(played, ledger);
    for (const Made& m : f.made) f.commitments.push_back(m.commitment);
    const faults::CauseInfo* cause = faults::find_cause(outcome.write_up.cause);
    if (cause != nullptr && outcome.write_up.handed_in) f.named = cause->remedy;
    f.diagnosis = diagnosis_made(played, ledger, f.named);
    // Nothing wrong, or a fault that is handed on: it counts when it was also named.
    f.fixed = !outcome.fault_remains && (!to_be_handed_on(played) || f.named == played.true_class);
    // What is taken out of use and handed on in writing is right where it could not be set right.
    f.handed_on_safe = !f.fixed && outcome.made_safe && f.named.has_value();
    f.separable = outcome.separable;
    if (f.handed_on_safe && !f.separable)  // the diagnosis is that it is one of these
        f.diagnosis.probability = std::max(f.diagnosis.probability, outcome.open_mass);
    return f;
}

}  // namespace emberpath::scoring
