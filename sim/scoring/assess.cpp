#include <algorithm>
#include <optional>
#include <thread>

#include "sim/scoring/comparison.hpp"
#include "sim/scoring/judgement.hpp"
#include "sim/scoring/ledger.hpp"
#include "sim/scoring/reference_policy.hpp"
#include "sim/scoring/scoring.hpp"

namespace emberpath::scoring {

namespace {

constexpr double set_aside_minutes = 5.0;  // added to the reference policy's test minutes
constexpr double ruled_out_below = 0.05;
constexpr double excluded_below = 1.0e-3;

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
        if (classes[i] > 0.0) out.push_back({static_cast<faults::Remedy>(i), classes[i]});
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
        const double now = step.after[static_cast<std::size_t>(c.remedy)];
        if (c.probability >= ruled_out_below && now < ruled_out_below)
            worth.ruled_out.push_back(class_title(c.remedy));
    }
    return worth;
}

// The shadows stand for single causes; a truth they cannot represent would be scored as unwarranted work.
// Honest readings cannot exclude the true class; where they did, its severity fell between two shadows.
std::string why_not_scored(const worksite::Job& job, double true_class_probability) {
    if (job.faults.size() > 1)
        return "this job has more than one fault, and the shadows stand for single causes.";
    for (const faults::Fault& fault : job.faults)
        if (!applies(faults::info(fault.cause), job.site.gas))
            return "the true cause is not among the shadows of this site.";
    if (true_class_probability < excluded_below)
        return "the readings contradict every shadow of the true cause, so the shadows cannot "
               "judge "
               "this path.";
    return "";
}

std::string true_cause_title(const worksite::Job& job) {
    const faults::Cause cause =
        job.faults.empty() ? faults::Cause::no_fault : job.faults.front().cause;
    return std::string(faults::info(cause).title);
}

faults::Remedy true_class(const worksite::Job& job) {
    return job.faults.empty() ? faults::Remedy::explain_to_customer
                              : faults::info(job.faults.front().cause).remedy;
}

int worker_count() {
    return static_cast<int>(std::clamp(std::thread::hardware_concurrency(), 1U, 8U));
}

}  // namespace

Assessment assess(const worksite::Job& job, std::uint64_t seed, worksite::Mode mode,
                  const std::vector<TimedAct>& acts, const Bank* at_arrival) {
    Play p;
    play(p, job, seed, mode, acts);
    const Tape& tape = p.recorder.tape();
    Bank bank = at_arrival != nullptr ? *at_arrival : Bank(job, worker_count());
    bank.live_until(tape, tape.arrival_event());
    const Shadows& shadows = bank.shadows();
    const ReferenceRun reference = run_reference(job, shadows, true_signatures(job, tape));

    const PlayedAttempt played{job, p.attempt->log(), tape, p.mark_of_act, true_class(job)};
    const Ledger ledger = keep_ledger(played, {bank, tape, job.customer.complaint});
    const worksite::Attempt::Truth truth = p.attempt->truth();

    Outcome outcome;
    outcome.write_up = p.attempt->write_up();
    outcome.breaches = p.attempt->breaches();
    outcome.verified = truth.verified;
    outcome.unproved = truth.unproved;
    outcome.fault_remains = !truth.remaining.empty();
    outcome.start_tick = p.start_tick;
    outcome.reference_minutes =
        std::max(least_reference_minutes, reference.minutes + set_aside_minutes);
    outcome.not_scored_because =
        why_not_scored(job, ledger.at_cure.classes()[static_cast<std::size_t>(played.true_class)]);

    Assessment out;
    for (const Step& step : ledger.steps) out.acts.push_back(worth_of(step, job));
    out.breaches = outcome.breaches;
    out.on_arrival = sorted(ledger.arrival);
    out.at_end = sorted(ledger.end);
    out.true_cause = true_cause_title(job);
    out.comparisons = compare(tape, shadows, ledger.at_cure);
    judge(played, ledger, outcome, out);
    return out;
}

}  // namespace emberpath::scoring
