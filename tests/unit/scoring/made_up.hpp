#pragma once
/// A small made-up attempt with four shadows, for tests that need no simulation.

#include <array>
#include <utility>
#include <vector>

#include "sim/scoring/judgement.hpp"

namespace emberpath::scoring {

inline constexpr std::size_t lanes =
    4;  // sound house, sooted exchanger, dead igniter, blocked flue

struct MadeUp {
    worksite::Job job;
    std::vector<worksite::LogEntry> log;
    Tape tape;
    std::vector<std::size_t> marks;
    Shadows shadows;
    Outcome outcome;

    MadeUp() {
        job.customer.complaint = worksite::Complaint::no_hot_water;
        const std::array<faults::Cause, lanes> causes{
            faults::Cause::no_fault, faults::Cause::exchanger_sooted, faults::Cause::igniter_failed,
            faults::Cause::flue_blocked};
        for (const faults::Cause cause : causes) {
            Hypothesis h;
            h.fault.cause = cause;
            h.remedy = faults::info(cause).remedy;
            h.prior = 0.25;
            shadows.hypotheses.push_back(h);
        }
        shadows.complaints.assign(lanes, worksite::Complaint::no_hot_water);
        shadows.signatures.assign(modes(job).size(), Snapshot(lanes));
        // During a light-up attempt a look tells the dead igniter from all others.
        for (std::size_t i = 0; i < lanes; ++i)
            shadows.signatures[3].set(worksite::Quantity::spark, i, i == 2 ? 0.0 : 1.0);
        outcome.fault_remains = true;
        outcome.reference_minutes = 10.0;
    }

    worksite::LogEntry& act(const char* words, worksite::LogEntry::Kind kind, double minutes) {
        marks.push_back(tape.marks);
        tape.marked.push_back(tape.observations.size());
        ++tape.marks;
        shadows.passive.emplace_back(lanes);
        worksite::LogEntry entry;
        entry.words = words;
        entry.kind = kind;
        entry.begin_tick = log.empty() ? 0 : log.back().end_tick;
        entry.end_tick = entry.begin_tick + static_cast<std::int64_t>(600.0 * minutes);
        log.push_back(entry);
        return log.back();
    }
    void reads(worksite::Quantity quantity, double value, std::vector<double> predicted) {
        worksite::Observation o;
        o.number = static_cast<int>(tape.observations.size()) + 1;
        o.quantity = quantity;
        o.value = value;
        o.watched_s = 8.0;
        o.condition.epoch = static_cast<std::uint32_t>(log.size());
        tape.observations.push_back(o);
        tape.cycles.push_back(1);
        shadows.observed.push_back(std::move(predicted));
    }
    void hand_in(const char* cause) {
        outcome.write_up.cause = cause;
        outcome.write_up.handed_in = true;
    }
    Assessment assessed(faults::Remedy truth) {
        const PlayedAttempt played{job, log, tape, marks, truth};
        const Ledger ledger = keep_ledger(played, Evidence(shadows, tape, job.customer.complaint));
        Assessment out;
        judge(played, ledger, outcome, out);
        return out;
    }
    Ledger ledger(faults::Remedy truth) {
        return keep_ledger({job, log, tape, marks, truth},
                           Evidence(shadows, tape, job.customer.complaint));
    }
};

inline std::string word(faults::Cause cause) {
    return std::string(faults::info(cause).word);
}

inline void look_for_spark(MadeUp& m, double seen) {
    m.act("watch burner window", worksite::LogEntry::Kind::look, 0.5);
    m.reads(worksite::Quantity::spark, seen, {1.0, 1.0, 0.0, 1.0});
}

inline MadeUp good_igniter_job() {
    MadeUp m;
    look_for_spark(m, 0.0);
    m.act("replace igniter", worksite::LogEntry::Kind::remedy, 25.0).remedy =
        static_cast<int>(faults::Remedy::replace_igniter);
    m.hand_in(word(faults::Cause::igniter_failed).c_str());
    m.outcome.fault_remains = false;
    m.outcome.verified.assign(8, "item");
    return m;
}

}  // namespace emberpath::scoring
