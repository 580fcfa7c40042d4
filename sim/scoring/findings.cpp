#include "sim/scoring/findings.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <span>
#include <utility>

#include "sim/scoring/warrant.hpp"
#include "sim/units/counted.hpp"

namespace emberpath::scoring {

namespace {

using faults::Remedy;

// Was a class that needs the remedy told from what else was open, by a reading in the steps before `end`?
bool confirmed_before(const Ledger& ledger, const Step* end, Remedy remedy) {
    for (const Step& step : ledger.steps) {
        if (&step == end) return false;
        for (std::size_t c = 0; c < step.separation.size(); ++c)
            if (step.separation[c] >= confirming_bits && needs(Class::at(c), remedy)) return true;
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
        m.commitment = {needing(step.before, remedy),
                        needing(ledger.arrival, remedy),
                        need(remedy),
                        book.minutes,
                        std::max(step.entry->part_minutes, book.part_minutes),
                        needs(played.true_class, remedy) && !step.cured_before,
                        confirmed_before(ledger, &step, remedy)};
        made.push_back(m);
    }
    return made;
}

// The diagnosis keeps the probability it had before the cure, or before it was explained or handed on:
// what is read afterwards is proof, no evidence gathered beforehand.
Commitment diagnosis_of(const PlayedAttempt& played, const Ledger& ledger, Remedy named) {
    Commitment diagnosis;
    diagnosis.need = need_of_final_diagnosis;
    const bool before_cure = needs(played.true_class, named) && !is_handed_on(named);
    const Step* settled = nullptr;  // the cure; or the last time it was explained or handed on
    for (const Step& step : ledger.steps) {
        if (step.entry->remedy != static_cast<int>(named)) continue;
        if (is_handed_on(named) || (before_cure && settled == nullptr)) settled = &step;
    }
    diagnosis.probability = needing(settled != nullptr ? settled->before : ledger.end, named);
    diagnosis.on_arrival = needing(ledger.arrival, named);
    diagnosis.confirmed = confirmed_before(ledger, settled, named);
    return diagnosis;
}

// Of causes that are all said to be there the least founded counts.
Commitment diagnosis_made(const PlayedAttempt& played, const Ledger& ledger,
                          std::span<const Remedy> named) {
    Commitment least;
    least.need = need_of_final_diagnosis;
    for (std::size_t i = 0; i < named.size(); ++i) {
        const Commitment one = diagnosis_of(played, ledger, named[i]);
        if (i == 0 || warrant_of(one) < warrant_of(least)) least = one;
    }
    return least;
}

/// What the causes written down need, each remedy once.
std::vector<Remedy> remedies_for(const std::string& first, const std::vector<std::string>& others) {
    std::vector<Remedy> out;
    const auto add = [&](const std::string& word) {
        const faults::CauseInfo* cause = faults::find_cause(word);
        if (cause != nullptr && std::find(out.begin(), out.end(), cause->remedy) == out.end())
            out.push_back(cause->remedy);
    };
    add(first);
    for (const std::string& word : others) add(word);
    return out;
}

// Alternatives count together only where no reading tells them apart.
double together(const Ledger& ledger, const Outcome& outcome, std::span<const Remedy> listed) {
    double total = 0.0;
    for (const Class open : outcome.open)
        if (std::find(listed.begin(), listed.end(), remedies_of(open).front()) != listed.end() &&
            !open.is_pair())
            total += ledger.at_cure.classes()[open.index()];
    return total;
}

}  // namespace

std::string figure(double value, int places) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%.*f", places, value);
    return buffer;
}

std::string so_little(double probability) {
    const std::string text = percent(probability);
    return text.starts_with("under") ? text : "only " + text;
}

std::string time_in_words(double minutes) {
    constexpr double seconds_per_minute = 60.0;
    if (minutes < 1.0) return units::counted(figure(seconds_per_minute * minutes, 0), "second");
    std::string text = figure(minutes, 1);
    if (text.ends_with(".0")) text.erase(text.size() - 2);
    return units::counted(text, "minute");
}

std::string at(const Outcome& outcome, const Step& step) {
    return "At " + clock_text(step.entry->begin_tick - outcome.start_tick) + " (" +
           step.entry->words + ")";
}

bool to_be_handed_on(const PlayedAttempt& played, Remedy remedy) {
    return is_handed_on(remedy) || !played.job.practice.licence.covers(remedy);
}

std::string_view why_not_hand_on(const Findings& f) {
    if (!f.told) return "a reading could still have told the cause";
    return f.covered ? "the readings told the cause and your licence covers its remedy"
                     : "the readings told the cause, and nobody was told whose remedy it is";
}

bool is_to_be_explained(const PlayedAttempt& played) {
    return played.true_class == Remedy::explain_to_customer;
}

bool is_lighter(const worksite::Breach& a, const worksite::Breach& b) {
    return std::pair(a.critical, a.deduction) < std::pair(b.critical, b.deduction);
}

const worksite::Breach* gravest_breach(const PlayedAttempt& played, const Outcome& outcome) {
    const auto ended_the_job = [&](const worksite::Breach& one) {
        return one.critical && !outcome.write_up.handed_in && one.act + 1 == played.log.size();
    };
    const auto worst = std::max_element(outcome.breaches.begin(), outcome.breaches.end(),
                                        [&](const worksite::Breach& a, const worksite::Breach& b) {
                                            if (ended_the_job(a) != ended_the_job(b))
                                                return ended_the_job(b);
                                            return is_lighter(a, b);
                                        });
    return worst != outcome.breaches.end() ? &*worst : nullptr;
}

// What is handed on must also be named.
static bool all_named(const PlayedAttempt& played, std::span<const Remedy> named) {
    const auto needed = remedies_of(played.true_class);
    return std::all_of(needed.begin(), needed.end(), [&](Remedy one) {
        return !to_be_handed_on(played, one) ||
               std::find(named.begin(), named.end(), one) != named.end();
    });
}

Findings find(const PlayedAttempt& played, const Ledger& ledger, const Outcome& outcome) {
    Findings f;
    f.made = remedies_made(played, ledger);
    for (const Made& m : f.made) f.commitments.push_back(m.commitment);
    const worksite::WriteUp& written = outcome.write_up;
    const std::vector<Remedy> listed = remedies_for(written.cause, written.possible);
    if (written.handed_in) f.named = remedies_for(written.cause, written.also);
    const bool is_list = written.handed_in && listed.size() > 1;
    if (is_list)  // a list that could have been shortened is taken for what the evidence put first
        f.named = {*std::max_element(listed.begin(), listed.end(), [&](Remedy a, Remedy b) {
            return needing(ledger.end, a) < needing(ledger.end, b);
        })};
    f.diagnosis = diagnosis_made(played, ledger, f.named);
    // Nothing wrong, or a fault that is handed on: it counts when it was also named.
    f.fixed = !outcome.fault_remains && all_named(played, f.named);
    // What is taken out of use and handed on in writing is right where it could not be set right.
    f.handed_on_safe = !f.fixed && outcome.made_safe && !f.named.empty();
    f.separable = outcome.separable;
    f.told = outcome.told;
    const auto needed = remedies_of(played.true_class);
    f.covered = std::none_of(needed.begin(), needed.end(),
                             [&](Remedy one) { return to_be_handed_on(played, one); });
    f.as_list = is_list && f.handed_on_safe && !f.separable;
    if (!f.as_list) return f;
    f.named = listed;
    f.diagnosis.probability = std::max(f.diagnosis.probability, together(ledger, outcome, listed));
    return f;
}

}  // namespace emberpath::scoring
