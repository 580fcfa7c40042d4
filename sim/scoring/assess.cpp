#include <algorithm>
#include <cmath>
#include <optional>

#include "sim/scoring/bands.hpp"
#include "sim/scoring/comparison.hpp"
#include "sim/scoring/inputs.hpp"
#include "sim/scoring/judgement.hpp"
#include "sim/scoring/ledger.hpp"
#include "sim/scoring/moments.hpp"
#include "sim/scoring/reference_policy.hpp"
#include "sim/scoring/release_terms.hpp"
#include "sim/scoring/scoring.hpp"
#include "sim/scoring/share_out.hpp"
#include "sim/scoring/warrant.hpp"

namespace emberpath::scoring {

namespace {

constexpr double ruled_out_below = 0.05;
constexpr double excluded_below = 1.0e-3;
constexpr double misfit_from = 0.2;  // of the catch-all: worth saying

struct Play {
    Recorder recorder;
    std::optional<worksite::Attempt> attempt;
    std::vector<std::size_t> mark_of_act;
    std::int64_t start_tick = 0;
};

void play(Play& p, const worksite::Job& job, std::uint64_t seed, worksite::Mode mode,
          const std::vector<TimedAct>& acts) {
    p.attempt.emplace(job, seed, mode, &p.recorder);
    p.start_tick = p.attempt->tick();
    for (const TimedAct& act : acts) {
        if (p.attempt->over()) break;
        if (act.tick > p.attempt->tick()) p.attempt->run(act.tick - p.attempt->tick());
        const std::size_t mark = p.recorder.tape().marks;
        const std::size_t before = p.attempt->log().size();
        p.recorder.mark();
        (void)p.attempt->perform(act.sentence);
        for (std::size_t i = before; i < p.attempt->log().size(); ++i)
            p.mark_of_act.push_back(mark);
    }
}

std::vector<ClassProbability> sorted(const std::vector<double>& classes) {
    std::vector<ClassProbability> out;
    for (std::size_t i = 0; i < classes.size(); ++i)
        if (classes[i] > 0.0) out.push_back({Class::at(i), classes[i]});
    std::stable_sort(out.begin(), out.end(),
                     [](const ClassProbability& a, const ClassProbability& b) {
                         return a.probability > b.probability;
                     });
    return out;
}

ActWorth worth_of(const Step& step, const worksite::Job& job) {
    ActWorth worth;
    worth.act = step.act;
    worth.minutes = static_cast<double>(step.entry->end_tick - step.entry->begin_tick) / 600.0;
    worth.bits_gained = entropy_bits(step.before) - entropy_bits(step.after);
    worth.bits_expected = step.expected_bits;
    if (step.best.bits > 0.0) {
        worth.best_bits_per_minute = step.best.rate();
        worth.best_alternative = title_of(step.best, job);
    }
    worth.before = sorted(step.before);
    worth.after = sorted(step.after);
    for (const ClassProbability& c : worth.before) {
        const double now = step.after[c.of.index()];
        if (c.probability >= ruled_out_below && now < ruled_out_below)
            worth.ruled_out.push_back(class_title(c.of));
    }
    return worth;
}

// What is left of a house once a class has been dealt with.
std::vector<faults::Fault> left_after(Class dealt_with, std::vector<faults::Fault> all) {
    std::erase_if(all, [&](const faults::Fault& fault) {
        return needs(dealt_with, faults::info(fault.cause).remedy);
    });
    return all;
}

// Where the readings as found lead to the first of two faults, the second is looked for in the house that is
// left; both together are the reference.
double second_part_minutes(const Play& p, const Hindsight& hindsight, const ReferenceRun& first) {
    const Class whole = class_or_first_of(hindsight.job.faults);
    if (!whole.is_pair() || first.found == whole || !covers(whole, first.found)) return 0.0;
    const std::vector<Snapshot> left = signatures_of(hindsight.job, p.recorder.tape(),
                                                     left_after(first.found, hindsight.job.faults));
    return run_reference({hindsight.job, hindsight.shadows, left, hindsight.threads}).minutes;
}

// A truth that no shadow represents would be scored as unwarranted work.
// Honest readings cannot exclude the true class; where they did, its severity fell between two shadows.
std::string why_not_scored(const worksite::Job& job, double true_class_probability,
                           const ReferenceRun& reference) {
    if (std::string unfit = why_not_fit(job.release); !unfit.empty()) return unfit;
    if (!class_of(job.faults)) return "this job has faults together that no shadow stands for.";
    for (const faults::Fault& fault : job.faults)
        if (!faults::can_act(faults::info(fault.cause), worksite::traits_of(job)))
            return "the true cause is not among the shadows of this site.";
    if (reference.leading >= need_of_final_diagnosis &&
        !covers(class_or_first_of(job.faults), reference.found))
        return "the best readings this job offers, free of error, lead to another cause (" +
               class_title(reference.found) + ").";
    if (true_class_probability < excluded_below)
        return "the readings contradict every shadow of the true cause, so the shadows cannot "
               "judge "
               "this path.";
    return "";
}

std::string true_cause_title(const worksite::Job& job) {
    if (job.faults.empty()) return std::string(faults::info(faults::Cause::no_fault).title);
    std::string titles;
    for (const faults::Fault& fault : job.faults)
        titles += (titles.empty() ? "" : " and ") + std::string(faults::info(fault.cause).title);
    return titles;
}

int worker_count(const Terms& terms) {
    return terms.threads > 0 ? terms.threads : usual_threads();
}

Outcome outcome_of(const Play& p) {
    const worksite::Attempt::Truth truth = p.attempt->truth();
    Outcome outcome;
    outcome.write_up = p.attempt->write_up();
    outcome.breaches = p.attempt->breaches();
    outcome.verified = truth.verified;
    outcome.unproved = truth.unproved;
    outcome.not_needed = truth.not_needed;
    outcome.fault_remains = !truth.remaining.empty();
    outcome.made_safe = truth.made_safe;
    outcome.start_tick = p.start_tick;
    return outcome;
}

// What is explained or handed on may be said twice; then what was read in between still counts.
bool settled_by_cure(const Play& p, const PlayedAttempt& played) {
    const faults::CauseInfo* named = faults::find_cause(p.attempt->write_up().cause);
    return named != nullptr && played.true_class == Class(named->remedy) &&
           faults::works_at_once(named->remedy);
}

// Whether a reading could still tell the open classes apart, and which it could not.
void note_rivals(const std::vector<Rival>& open, const Posterior& posterior, Class truth,
                 Outcome& outcome) {
    outcome.open = {likeliest(posterior.classes())};
    outcome.separable = open.empty();
    outcome.told = open.empty() && covers(truth, outcome.open.front());
    for (const Rival& rival : open) {
        outcome.separable = outcome.separable || rival.separation >= separable_above;
        if (rival.separation < separable_above) outcome.open.push_back(rival.of);
    }
}

Luck luck_of(const PlayedAttempt& played, const Ledger& ledger, const Shadows& shadows) {
    Luck luck;
    double variance = 0.0;
    for (const Step& step : ledger.steps) {
        if (step.cured_before || !step.weighed) continue;
        luck.told_bits += step.told_of_truth_bits;
        luck.expected_bits += step.expected_bits;
        variance += step.expected_variance;
        ++luck.readings;
    }
    luck.variance = variance;
    if (variance > 0.0) luck.index = (luck.told_bits - luck.expected_bits) / std::sqrt(variance);
    luck.misfit = misfit(played, ledger, shadows);
    return luck;
}

// Nothing has to be found out where complaint and display on arrival say what its remedy needs.
bool is_direct(const PlayedAttempt& played, const Ledger& ledger) {
    const auto needed = remedies_of(played.true_class);
    return std::all_of(needed.begin(), needed.end(), [&](faults::Remedy one) {
        return needing(ledger.arrival, one) >= need(one);
    });
}

void add_misfit(Assessment& out) {
    if (out.something_else < misfit_from) return;
    out.still_open.push_back(
        "The readings fit no cause of the catalogue well: a cause that is not in it has " +
        percent(out.something_else) +
        " beside all of them. A mistaken reading can do that; so can two faults at once.");
}

// A fault that comes and goes: how much of the visit it was there.
void add_presence(const worksite::Job& job, const Tape& tape, std::vector<std::string>& said) {
    for (const faults::Fault& fault : job.faults) {
        if (fault.period_s <= 0.0) continue;
        std::size_t there = 0, ticks = 0;
        for (std::size_t e = tape.arrival_event(); e < tape.events.size(); ++e) {
            if (tape.events[e].kind != Tape::Kind::tick) continue;
            const double time_s = tape.ticks[tape.events[e].index].surroundings.time_s;
            there += faults::severity_at(fault, time_s) != 0.0 ? 1 : 0;
            ++ticks;
        }
        if (ticks == 0) continue;
        said.push_back("The fault comes and goes: it was there in " +
                       percent(static_cast<double>(there) / static_cast<double>(ticks)) +
                       " of the time you were in the house. When it was away you could not have "
                       "seen it.");
    }
}

/// All that an explanation rests on.
struct Weighed {
    const PlayedAttempt& played;
    const Ledger& ledger;
    const Shadows& shadows;
    const std::vector<Snapshot>& signatures;
    const ReferenceRun& reference;
    const Outcome& outcome;
    const std::vector<Rival>& open;
};

void explain(const Weighed& w, Assessment& out) {
    const worksite::Job& job = w.played.job;
    out.comparisons = compare(w.played.tape, w.shadows, w.ledger.at_cure);
    out.reference_path = path_in_words(w.reference, job);
    out.reference_leading = w.reference.leading;
    out.release = job.release;
    out.direct = is_direct(w.played, w.ledger);
    out.luck = luck_of(w.played, w.ledger, w.shadows);
    out.inputs = likelihood_inputs(w.played, w.ledger, w.shadows);
    out.still_open = still_open(w.open, likeliest(w.ledger.at_cure.classes()));
    add_misfit(out);
    add_presence(job, w.played.tape, out.still_open);
    out.costliest =
        costliest_moments(w.played, w.ledger, find(w.played, w.ledger, w.outcome), w.outcome,
                          {job, w.shadows, w.signatures, w.played.threads}, out.areas);
    set_bands(w.played, w.shadows, w.signatures, w.outcome, w.played.threads, out);
}

}  // namespace

Assessment assess(const worksite::Job& job, std::uint64_t seed, worksite::Mode mode,
                  const std::vector<TimedAct>& acts, const Terms& terms) {
    const int threads = worker_count(terms);
    Play p;
    play(p, job, seed, mode, acts);
    const Tape& tape = p.recorder.tape();
    Bank bank = terms.at_arrival != nullptr ? *terms.at_arrival : Bank(job, threads);
    bank.live_until(tape, tape.arrival_event());
    const Shadows& shadows = bank.shadows();
    const std::vector<Snapshot> signatures = true_signatures(job, tape);
    const ReferenceRun reference = run_reference({job, shadows, signatures, threads});

    const PlayedAttempt played{
        job, p.attempt->log(), tape, p.mark_of_act, class_or_first_of(job.faults), threads};
    const Until until =
        settled_by_cure(p, played) && !terms.explained ? Until::the_cure : Until::the_end;
    const Ledger ledger = keep_ledger(played, {bank, tape, job.customer.complaint}, until);
    Outcome outcome = outcome_of(p);
    std::vector<Rival> open;
    if (terms.explained || outcome.made_safe)
        open = rivals(job, shadows, ledger.at_cure, tape, threads);
    note_rivals(open, ledger.at_cure, played.true_class, outcome);
    outcome.second_part_minutes =
        second_part_minutes(p, {job, shadows, signatures, threads}, reference);
    outcome.reference_minutes = reference_minutes(reference) + outcome.second_part_minutes;
    outcome.not_scored_because =
        why_not_scored(job, ledger.at_cure.classes()[played.true_class.index()], reference);

    outcome.beyond_model = !p.attempt->beyond_model().empty();
    if (outcome.beyond_model)
        outcome.not_scored_because = p.attempt->beyond_model() + " It is not usable as evidence.";

    Assessment out;
    for (const Step& step : ledger.steps) out.acts.push_back(worth_of(step, job));
    out.breaches = outcome.breaches;
    out.on_arrival = sorted(ledger.arrival);
    out.at_end = sorted(ledger.end);
    out.true_cause = true_cause_title(job);
    out.something_else = ledger.at_cure.something_else();
    judge(played, ledger, outcome, out);
    out.reference_minutes = outcome.reference_minutes;
    for (const Change& change : terms.changes)
        out.overall_with.push_back(
            overall_with(change, played, shadows, signatures, outcome, until));
    if (terms.explained)
        explain({played, ledger, shadows, signatures, reference, outcome, open}, out);
    return out;
}

}  // namespace emberpath::scoring
