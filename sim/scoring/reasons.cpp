// One sentence an area, naming what cost most.
#include <algorithm>
#include <cmath>

#include "sim/scoring/findings.hpp"
#include "sim/scoring/remedy_order.hpp"
#include "sim/scoring/warrant.hpp"
#include "sim/units/counted.hpp"

namespace emberpath::scoring {

namespace {

using faults::Remedy;

bool is_covered(const PlayedAttempt& played) {
    const auto needed = remedies_of(played.true_class);
    return std::all_of(needed.begin(), needed.end(),
                       [&](Remedy one) { return played.job.practice.licence.covers(one); });
}

bool is_named(const Findings& f, Remedy remedy) {
    return std::find(f.named.begin(), f.named.end(), remedy) != f.named.end();
}

std::string safety_reason(const PlayedAttempt& played, const Outcome& outcome) {
    const worksite::Breach* worst = gravest_breach(played, outcome);
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
    const bool same = worst != nullptr && is_named(f, worst->remedy) && most > 0.05;
    if (by_diagnosis >= most && !same) worst = nullptr;
    most = std::max(most, by_diagnosis);
    if (!f.named.empty() && !f.diagnosis.confirmed && f.diagnosis.probability >= f.diagnosis.need)
        return "The cause rests on the heater's own word and the complaint: no reading before it "
               "was "
               "settled could tell it from what else was open.";
    if (worst != nullptr)
        return at(outcome, *worst->step) + ": your own evidence gave " +
               given(worst->commitment.probability, worst->remedy) + "; this remedy needs " +
               percent(worst->commitment.need) + ".";
    if (f.named.empty()) return "No cause from the catalogue was written down and handed in.";
    const std::string held =
        "your evidence gave " + percent(f.diagnosis.probability) + " to \"" + named_title(f) + "\"";
    if (most < 0.05) return "Before anything was decided " + held + "; 90 % is asked.";
    return "The cause you wrote down was not yet shown: " + held + ", and 90 % is asked.";
}

}  // namespace

std::string named_title(const Findings& f) {
    std::string title;
    for (const Remedy one : f.named)
        title += (title.empty() ? "" : f.as_list ? " or " : " and ") + faults::class_title(one);
    return title;
}

std::string waited_in_vain(const Step& step) {
    return time_in_words(step.idle_minutes) +
           " of waiting; no reading after it told enough to pay for it.";
}

/// How much of what is open so many bits are.
static std::string_view share_in_words(double bits, double open) {
    const double share = bits / open;
    if (share < 0.02) return "next to nothing";
    if (share < 0.15) return "little";
    return share < 0.5 ? "part" : "much";
}

/// How the best reading at that moment compares with the one that was taken.
static std::string_view better_in_words(const Step& step) {
    if (step.best.bits < step.expected_bits) return "less, but more for each minute";
    return step.best.minutes < step.book_minutes ? "more in less time" : "more for its time";
}

/// "6 minutes with set-up": the book's time, which may be more than the act took.
static std::string paid_in_words(const Step& step) {
    const double act = static_cast<double>(step.entry->end_tick - step.entry->begin_tick) / 600.0;
    return time_in_words(step.book_minutes) + (step.book_minutes > 1.5 * act ? " with set-up" : "");
}

std::string reading_worth(const PlayedAttempt& played, const Step& step) {
    constexpr double settled_bits = 0.05;
    const double open = entropy_bits(step.before);
    if (open < settled_bits)
        return paid_in_words(step) + " for a reading when one cause had " +
               percent(*std::max_element(step.before.begin(), step.before.end())) +
               " already; half of it is charged, for a cause may be confirmed.";
    std::string text = paid_in_words(step) + " for a reading that could be expected to tell " +
                       std::string(share_in_words(step.expected_bits, open)) +
                       " of what was open (" + figure(step.expected_bits, 2) + " of " +
                       figure(open, 2) + " bits)";
    if (step.best.bits > 0.0)
        text += "; " + title_of(step.best, played.job) + " would have told " +
                std::string(better_in_words(step)) + " (" + figure(step.best.bits, 2) +
                " bits in " + time_in_words(step.best.minutes) + ")";
    return text + ".";
}

std::string test_reason(const PlayedAttempt& played, const Outcome& outcome, const Step& step) {
    return at(outcome, step) + ": " + reading_worth(played, step);
}

namespace {

std::string path_reason(const PlayedAttempt& played, const Ledger& ledger, const Findings& f,
                        const Outcome& outcome, const PathCharges& charges) {
    if (path_score(charges.total(), outcome.reference_minutes) >= 100.0)
        return "Every reading was worth its time; the reference path needs " +
               units::counted(figure(outcome.reference_minutes, 0), "minute") + ".";
    const Step *dearest = nullptr, *longest = nullptr;
    for (const Step& step : ledger.steps) {
        if (dearest == nullptr || step.charge > dearest->charge) dearest = &step;
        if (longest == nullptr || step.idle_minutes > longest->idle_minutes) longest = &step;
    }
    const Made* remedy = nullptr;
    for (const Made& m : f.made)
        if (remedy == nullptr ||
            remedy_charge_minutes(m.commitment) > remedy_charge_minutes(remedy->commitment))
            remedy = &m;
    const double by_test = dearest != nullptr ? dearest->charge : 0.0;
    const double by_remedy = remedy != nullptr ? remedy_charge_minutes(remedy->commitment) : 0.0;
    const double by_wait = longest != nullptr ? longest->idle_minutes : 0.0;
    const double most = std::max({by_test, by_remedy, by_wait, charges.submission});
    if (most == charges.submission && f.named.empty())
        return "No cause was named and handed in, which counts as a call-back: " +
               units::counted(figure(charges.submission, 0), "minute") + " charged.";
    if (most == charges.submission)
        return "The hand-in stood on " + percent(f.diagnosis.probability) +
               " for its cause, which risks a call-back: " +
               units::counted(figure(charges.submission, 0), "minute") + " charged.";
    if (longest != nullptr && most == by_wait)
        return at(outcome, *longest) + ": " + waited_in_vain(*longest);
    if (remedy != nullptr && most == by_remedy)
        return at(outcome, *remedy->step) + ": " + units::counted(figure(by_remedy, 0), "minute") +
               " charged, because the evidence gave this remedy " +
               so_little(remedy->commitment.probability) + ".";
    return dearest != nullptr ? test_reason(played, outcome, *dearest)
                              : "Every reading was worth its time.";
}

// The remedy that probability per cost would have put first at that moment.
std::string better_first(const Step& step, Remedy chosen) {
    std::vector<RemedyChoice> choices;
    for (std::size_t i = 0; i < faults::remedy_count; ++i)
        choices.push_back({needing(step.before, static_cast<Remedy>(i)),
                           remedy_cost(static_cast<Remedy>(i)).total()});
    const auto first = static_cast<Remedy>(by_probability_per_cost(choices).front());
    if (first == chosen) return "";
    return "; by probability for its cost, " + std::string(faults::remedy_title(first)) +
           " came first at " + percent(needing(step.before, first));
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
        return at(outcome, *worst->step) + ": " + units::counted(figure(most, 0), "minute") +
               " of work and parts spent on " + percent(worst->commitment.probability) +
               better_first(*worst->step, worst->remedy) + ".";
    const std::string title = remedy_title(played.true_class);
    if (!f.fixed && !is_covered(played))
        return "It was to be handed on, isolated, tagged and told: your licence does not cover \"" +
               title + "\".";
    if (f.handed_on_safe && !f.separable)
        return "Rightly made safe and handed on: no reading on this job tells the open causes "
               "apart.";
    if (f.handed_on_safe)
        return "Made safe and handed on, although " + std::string(why_not_hand_on(f)) +
               "; it needed: " + title + ".";
    if (!f.fixed && is_to_be_explained(played))
        return "No repair was called for, and that was not said; it needed: " + title + ".";
    if (!f.fixed) return "The fault was not set right; it needed: " + title + ".";
    if (warrant_of(f.diagnosis) < 0.98)
        return "Set right, but on " + percent(f.diagnosis.probability) + " for the cause named.";
    return "The right thing was done and nothing else: " + title + ".";
}

std::string proof_reason(const Outcome& outcome, bool fault_remains, bool to_explain) {
    const int needed = proof_item_count - static_cast<int>(outcome.not_needed.size());
    const int done = std::min<int>(static_cast<int>(outcome.verified.size()), needed);
    std::string text = std::to_string(done) + " of " + std::to_string(needed) +
                       " items of proof and handover were done";
    if (fault_remains)
        text +=
            to_explain ? ", and it was not said that nothing is wrong" : ", and the fault remains";
    for (std::size_t i = 0; i < outcome.unproved.size(); ++i)
        text += (i == 0 ? "; missing: " : "; ") + outcome.unproved[i];
    for (std::size_t i = 0; i < outcome.not_needed.size(); ++i)
        text += (i == 0 ? "; not called for here: " : "; ") + outcome.not_needed[i];
    return text + ".";
}

}  // namespace

Reasons reasons(const PlayedAttempt& played, const Ledger& ledger, const Findings& f,
                const Outcome& outcome, const PathCharges& charges) {
    return {safety_reason(played, outcome), evidence_reason(f, outcome),
            path_reason(played, ledger, f, outcome, charges), remedy_reason(played, f, outcome),
            proof_reason(outcome, !f.rightly_ended(), is_to_be_explained(played))};
}

}  // namespace emberpath::scoring
