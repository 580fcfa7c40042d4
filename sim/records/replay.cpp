#include <bit>
#include <charconv>
#include <optional>
#include <utility>

#include "sim/records/line.hpp"
#include "sim/records/record.hpp"
#include "sim/scoring/share_out.hpp"
#include "sim/units/counted.hpp"

namespace emberpath::records {

namespace {

bool same_bits(double a, double b) {
    return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

std::string exact(double value) {
    char buffer[32];
    const auto end = std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
    return {buffer, end};
}

std::string counted(std::size_t count, std::string_view thing) {
    return units::counted(static_cast<long long>(count), thing);
}

std::string act_name(std::size_t index, const RecordedAct& act) {
    return "act " + std::to_string(index + 1) + " (" + act.sentence + ")";
}

std::string compare_readings(const std::vector<worksite::Observation>& now,
                             const std::vector<RecordedReading>& then) {
    for (std::size_t i = 0; i < now.size() && i < then.size(); ++i) {
        const auto word = std::string(worksite::info(now[i].quantity).word);
        if (word != then[i].quantity)
            return "reads " + word + " now and " + then[i].quantity + " in the record";
        if (now[i].number != then[i].number)
            return word + " is reading " + std::to_string(now[i].number) + " now and " +
                   std::to_string(then[i].number) + " in the record";
        if (!same_bits(now[i].value, then[i].value))
            return word + " is " + exact(now[i].value) + " now and " + exact(then[i].value) +
                   " in the record";
    }
    if (now.size() != then.size())
        return "gives " + counted(now.size(), "reading") + " now and " +
               std::to_string(then.size()) + " in the record";
    return {};
}

std::string compare_result(const worksite::LogEntry& now, const RecordedAct& then,
                           const std::string& state_hash) {
    if (auto difference = compare_readings(now.observations, then.readings); !difference.empty())
        return difference;
    if (now.end_tick != then.end_tick)
        return "ends at tick " + std::to_string(now.end_tick) + " now and " +
               std::to_string(then.end_tick) + " in the record";
    if (now.shown != then.shown) return "shows other words now than in the record";
    if (state_hash != then.state_hash)
        return "leaves state " + state_hash + " now and " + then.state_hash + " in the record";
    return {};
}

/// Does one recorded act again; returns what differs, or nothing.
std::string redo(worksite::Attempt& attempt, const RecordedAct& act,
                 const worksite::LogEntry*& entry) {
    if (act.tick < attempt.tick())
        return "begins at tick " + std::to_string(act.tick) +
               " in the record, when the clock already shows " + std::to_string(attempt.tick());
    attempt.run(act.tick - attempt.tick());
    const auto outcome = attempt.perform(act.sentence);
    entry = outcome.entry;
    if (!entry) return "cannot be done now: " + outcome.refusal.text;
    if (!act.finished) return {};
    return compare_result(*entry, act, hash_text(attempt.state_hash()));
}

std::string compare_scores(const scoring::Assessment& now, const Record& record) {
    std::vector<RecordedScore> scores;
    for (const auto& area : now.areas) scores.push_back({area.word, area.score});
    scores.push_back({"overall", now.overall});
    if (scores.size() != record.scores.size())
        return "there are " + std::to_string(scores.size()) + " scores now and " +
               std::to_string(record.scores.size()) + " in the record";
    for (std::size_t i = 0; i < scores.size(); ++i) {
        const auto& then = record.scores[i];
        if (scores[i].area != then.area)
            return "score " + std::to_string(i + 1) + " is for " + scores[i].area +
                   " now and for " + then.area + " in the record";
        if (!same_bits(scores[i].score, then.score))
            return "the score for " + then.area + " is " + exact(scores[i].score) + " now and " +
                   exact(then.score) + " in the record";
    }
    if (now.gates_met != record.gates_met)
        return std::string("the gates are ") + (now.gates_met ? "met" : "not met") +
               " now and otherwise in the record";
    if (now.proposal != record.proposal)
        return "the proposal reads otherwise now than in the record";
    return {};
}

/// Another build may well compute other bits; only the one that wrote a record can find it false.
Verification differs(const Record& record, const std::string& what) {
    const std::string& build = record.header.build;
    if (build == build_mark()) return {false, true, "Not the same: " + what + ".", {}};
    return {
        false,
        false,
        "Cannot be compared: another build of the program made it (" +
            (build.empty() ? "one from before records carried a build mark" : "build " + build) +
            "; this is build " + std::string(build_mark()) + "), and here " + what +
            ". That does not make the record false: verify it with the build that made it.",
        {}};
}

/// What the acts give now: the first difference, or nothing.
struct Replayed {
    std::string difference;
    std::size_t readings = 0;
};

Replayed replay(const Record& record, const worksite::Job& job, Extent extent) {
    worksite::Attempt attempt(job_of(record, job), record.header.seed, record.header.mode);
    const worksite::LogEntry* entry = nullptr;
    Replayed out;
    for (std::size_t i = 0; i < record.acts.size(); ++i) {
        if (auto what = redo(attempt, record.acts[i], entry); !what.empty())
            return {act_name(i, record.acts[i]) + " " + what, 0};
        out.readings += record.acts[i].readings.size();
    }
    if (!record.closed) return out;
    if (!attempt.over())
        out.difference = "the record is closed, but its acts do not end the attempt";
    else if (extent == Extent::the_visit_and_the_day_after &&
             attempt.day_after() != record.day_after)
        out.difference = "the day after the visit goes otherwise now than in the record";
    return out;
}

}  // namespace

std::string cannot_be_replayed(const Record& record, const worksite::Job& job,
                               const std::string& scenario_hash) {
    if (!record.good())
        return "The record is damaged (" + counted(record.problems.size(), "problem") +
               "); the first is in line " + std::to_string(record.problems.front().line) + ".";
    if (record.header.program_version != program_version)
        return "The record was written by version " + record.header.program_version +
               "; this is version " + std::string(program_version) +
               ". Use the version that wrote it.";
    if (record.header.scenario_hash != scenario_hash)
        return "The scenario has changed since: the record has " + record.header.scenario_hash +
               ", the files now give " + scenario_hash + ". Use the scenario it was made with.";
    if (job_of(record, job).practice.licence.name != record.header.licence &&
        !record.header.licence.empty())
        return "The record was made under the licence \"" + record.header.licence +
               "\", which the rules of this job do not know. Use the rules it was made with.";
    return {};
}

std::vector<scoring::TimedAct> timed_acts(const Record& record) {
    std::vector<scoring::TimedAct> acts;
    for (const auto& act : record.acts) acts.push_back({act.tick, act.sentence});
    return acts;
}

worksite::Job job_of(const Record& record, worksite::Job job) {
    (void)worksite::take_licence(job.practice, record.header.licence);
    return job;
}

scoring::Assessment assess(const Record& record, const worksite::Job& job) {
    return scoring::assess(job_of(record, job), record.header.seed, record.header.mode,
                           timed_acts(record));
}

Resumed resume(const Record& record, const worksite::Job& job, const std::string& scenario_hash) {
    Resumed resumed;
    resumed.problem = cannot_be_replayed(record, job, scenario_hash);
    if (resumed.problem.empty() && record.closed)
        resumed.problem = "This attempt is finished: see emberpath debrief.";
    if (!resumed.problem.empty()) return resumed;
    auto attempt = std::make_unique<worksite::Attempt>(job_of(record, job), record.header.seed,
                                                       record.header.mode);
    attempt->keep_trail();
    const worksite::LogEntry* entry = nullptr;
    for (std::size_t i = 0; i < record.acts.size(); ++i) {
        const auto difference = redo(*attempt, record.acts[i], entry);
        if (!difference.empty()) {
            resumed.problem = "The attempt cannot be brought back: " + act_name(i, record.acts[i]) +
                              " " + difference + ". Use the program that wrote it, or begin again.";
            return resumed;
        }
    }
    if (!record.acts.empty() && !record.acts.back().finished) resumed.unwritten = entry;
    resumed.attempt = std::move(attempt);
    return resumed;
}

Verification verify(const Record& record, const worksite::Job& job,
                    const std::string& scenario_hash, Extent extent) {
    if (auto why = cannot_be_replayed(record, job, scenario_hash); !why.empty())
        return {false, false, why, {}};
    // Replayed and scored side by side: neither asks anything of the other, and each has stretches that leave a
    // core idle.
    Replayed replayed;
    std::optional<scoring::Assessment> scored;
    scoring::share_out(record.closed ? 2 : 1, 2, [&](std::size_t piece) {
        if (piece == 0)
            replayed = replay(record, job, extent);
        else
            scored = assess(record, job);
    });
    if (!replayed.difference.empty()) return differs(record, replayed.difference);
    const std::string compared = counted(record.acts.size(), "act") + ", " +
                                 counted(replayed.readings, "reading") + " and " +
                                 counted(record.acts.size(), "state");
    if (!record.closed)
        return {
            true, true, "The same, bit for bit: " + compared + ". The attempt is unfinished.", {}};
    if (auto what = compare_scores(*scored, record); !what.empty()) return differs(record, what);
    return {true, true,
            "The same, bit for bit: " + compared + ", " + counted(record.scores.size(), "score") +
                (extent == Extent::the_visit_and_the_day_after ? " and the day after." : "."),
            std::move(scored)};
}

}  // namespace emberpath::records
