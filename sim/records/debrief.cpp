#include "sim/records/debrief.hpp"

#include <algorithm>
#include <cmath>

#include "sim/records/debrief_parts.hpp"
#include "sim/scoring/areas.hpp"
#include "sim/scoring/findings.hpp"
#include "sim/scoring/warrant.hpp"
#include "sim/units/counted.hpp"
#include "sim/units/per_cent.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/cause_list.hpp"

namespace emberpath::records {

namespace {

constexpr double tick_s = 0.1;
constexpr double shown_bits = 0.05;      // what one decimal shows
constexpr std::size_t most_columns = 8;  // classes compared reading by reading
constexpr double shown_enough = 0.9;     // below it a right answer is "right, not shown"

std::string minutes_and_seconds(double seconds) {
    const auto whole = static_cast<long>(std::max(0.0, seconds));
    const std::string second = std::to_string(whole % 60);
    const std::string minute = std::to_string(whole / 60);
    return (minute.size() < 2 ? "0" : "") + minute + ":" + (second.size() < 2 ? "0" : "") + second;
}

/// What the replayed attempt ended with, in words.
struct Ending {
    std::string written_cause;  // titles; empty when none was written
    std::vector<std::string> left_behind, doses;
};

Ending ending_of(const Record& record, const worksite::Job& job) {
    worksite::Attempt attempt(job_of(record, job), record.header.seed, record.header.mode);
    for (const auto& act : record.acts) {
        attempt.run(std::max<std::int64_t>(0, act.tick - attempt.tick()));
        attempt.perform(act.sentence);
    }
    Ending ending;
    ending.written_cause = worksite::titles_of_causes_in(attempt.write_up());
    auto truth = attempt.truth();
    ending.left_behind = std::move(truth.left_behind);
    ending.doses = std::move(truth.doses);
    return ending;
}

bool broke(const scoring::Assessment& assessment, std::string_view rule) {
    return std::any_of(assessment.breaches.begin(), assessment.breaches.end(),
                       [&](const auto& one) { return one.rule == rule; });
}

/// How this job is rightly ended: by a cure, by handing on, or by explaining.
std::string settled_words(faults::Remedy remedy, bool settled) {
    if (remedy == faults::Remedy::explain_to_customer)
        return settled ? "Rightly explained" : "Not explained";
    if (!faults::works_at_once(remedy)) return settled ? "Rightly handed on" : "Not handed on";
    return settled ? "Put right" : "Not put right";
}

std::string headline(const worksite::Job& job, const scoring::Assessment& assessment) {
    const bool shown = assessment.true_class_probability >= shown_enough;
    std::string settled = settled_words(job.intended, assessment.fixed);
    if (!job.practice.licence.covers(job.intended))
        settled = !assessment.fixed                   ? "Not handed on as it should be"
                  : broke(assessment, "out_of_scope") ? "Put right, outside the licence"
                                                      : "Rightly handed on";
    if (broke(assessment, "board_harmed")) {
        if (settled.starts_with("Put right")) settled = "The cause was p" + settled.substr(1);
        settled += ", the heater's board was lost";
    }
    if (!assessment.overall_scored) return settled + ".";  // no shadow says what the readings show
    if (assessment.fixed)
        return settled + (shown ? ", and the readings show why."
                                : ", but the readings taken before do not show the cause.");
    return settled + (shown ? ", although the readings show the cause."
                            : ", and the readings do not show the cause.");
}

std::vector<std::string> outcome_of(const Record& record, const worksite::Job& job,
                                    const scoring::Assessment& assessment, const Ending& ending) {
    std::vector<std::string> said = {headline(job, assessment)};
    said.push_back("What it was: " + assessment.true_cause + ". " + evidence_for_truth(assessment));
    said.push_back(ending.written_cause.empty() ? "You wrote down no cause."
                                                : "You wrote: " + ending.written_cause + ".");
    if (auto words = confidence_in_words(assessment); !words.empty())
        said.push_back(std::move(words));
    if (!ending.left_behind.empty())
        said.push_back("You left behind: " + joined(ending.left_behind, "; ") + ".");
    if (!record.closed) said.push_back("The attempt was not handed in.");
    return said;
}

std::string act_words(const Record& record, std::size_t index) {
    return index < record.acts.size() ? record.acts[index].sentence : std::string();
}

std::vector<Debrief::UnsafeAct> unsafe_acts_of(const Record& record, const worksite::Job& job,
                                               const scoring::Assessment& assessment) {
    std::vector<Debrief::UnsafeAct> acts;
    for (const auto& breach : assessment.breaches) {
        const bool known = breach.act < record.acts.size();
        acts.push_back(
            {known ? time_on_site(record.acts[breach.act].tick, job) : std::string("end"),
             act_words(record, breach.act), breach.text, breach.critical});
    }
    return acts;
}

std::string gates_in_words(const scoring::Assessment& assessment) {
    const auto critical = std::count_if(assessment.breaches.begin(), assessment.breaches.end(),
                                        [](const auto& breach) { return breach.critical; });
    if (assessment.gates_met)
        return "Safety gates met: no rule was broken that nothing can offset.";
    return "Safety gates not met: " +
           (critical == 1 ? std::string("one act") : std::to_string(critical) + " acts") +
           " broke a rule that no other merit can offset.";
}

std::vector<Debrief::Act> acts_of(const Record& record, const worksite::Job& job,
                                  const scoring::Assessment& assessment) {
    std::vector<Debrief::Act> acts;
    for (std::size_t i = 0; i < record.acts.size(); ++i) {
        const RecordedAct& recorded = record.acts[i];
        Debrief::Act act;
        act.time = time_on_site(recorded.tick, job);
        act.sentence = recorded.sentence;
        act.value = value_of(recorded, assessment);
        for (const auto& worth : assessment.acts) {
            if (worth.act != i) continue;
            act.ruled_out = joined(worth.ruled_out, ", ");
            act.bits = worth.bits_gained;
            act.weighed = !recorded.readings.empty();
            act.better = worth.best_alternative;
        }
        acts.push_back(std::move(act));
    }
    return acts;
}

bool is_same_everywhere(const Debrief::Reading& reading) {
    return std::all_of(reading.cells.begin(), reading.cells.end(), [&](const auto& cell) {
        return !cell.ruled_out && cell.value == reading.cells.front().value;
    });
}

void add_comparisons(Debrief& debrief, const worksite::Job& job,
                     const scoring::Assessment& assessment) {
    const auto all = by_likelihood(job, assessment);
    const std::vector<scoring::Class> classes(
        all.begin(), all.begin() + static_cast<std::ptrdiff_t>(std::min(all.size(), most_columns)));
    debrief.columns_left_out = all.size() - classes.size();
    for (const auto one : classes) debrief.columns.emplace_back(scoring::class_title(one));
    for (const auto& comparison : assessment.comparisons) {
        Debrief::Reading reading{comparison.number, comparison.title, comparison.shown, {}, false};
        for (const auto one : classes) {
            Debrief::Cell found;
            for (const auto& cell : comparison.cells)
                if (cell.of == one) found = {cell.predicted, cell.ruled_out};
            reading.cells.push_back(found);
        }
        reading.same_everywhere = is_same_everywhere(reading);
        debrief.readings.push_back(std::move(reading));
    }
}

std::vector<std::string> limits() {
    return {
        "The heater, the house and the people are invented. The physics is a simplified model.",
        "Carbon monoxide and flame current follow curves of a plausible shape, not data.",
        "Bits weigh the causes of this program's catalogue, by its own simulations, and no others.",
        "Simulated evidence supports, and does not replace, workplace evidence.",
        "One job is feedback, not a grade.",
    };
}

std::string reference_in_words(const scoring::Assessment& assessment) {
    if (assessment.reference_path.empty() || !assessment.overall_scored) return {};
    return "Whoever always takes the reading that tells most per minute reads " +
           assessment.reference_path + "; paths are measured against " +
           units::counted(units::fixed(assessment.reference_minutes, 0), "minute") +
           " of readings" +
           (assessment.reference_leading < scoring::need_of_final_diagnosis
                ? ", though they give no cause more than " +
                      share_text(assessment.reference_leading)
                : "") +
           ".";
}

/// "General practice, 28 November 2026": by what limits the visit was judged.
std::string rules_in_words(const worksite::Practice& practice) {
    return practice.name +
           (practice.date.empty() ? "" : ", " + worksite::date_in_words(practice.date));
}

std::vector<Debrief::Proof> proof_of(const Record& record, const worksite::Practice& practice) {
    const std::string where = practice.holds_in.empty() ? "not said" : practice.holds_in;
    return {{"program version", record.header.program_version},
            {"program build", record.header.build},
            {"scenario hash", record.header.scenario_hash},
            {"seed", std::to_string(record.header.seed)},
            {"licence", record.header.licence.empty() ? "usual" : record.header.licence},
            {"rules", rules_in_words(practice)},
            {"rules hold in", where},
            {"record chain", record.chain},
            {"to check it", "emberpath verify " + record.file.filename().string()}};
}

}  // namespace

std::string time_on_site(std::int64_t tick, const worksite::Job& job) {
    return minutes_and_seconds(static_cast<double>(tick) * tick_s - job.site.arrival_s);
}

std::string share_text(double share) {
    if (share < 0.01) return "under 1 %";
    if (share > 0.99) return "over 99 %";
    return units::per_cent(share);
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
    std::string text;
    for (const auto& part : parts) text += (text.empty() ? "" : std::string(between)) + part;
    return text;
}

std::string score_text(double score) {
    return units::fixed(score, 0);
}

std::string band_text(double low, double high, bool scored) {
    if (!scored || score_text(low) == score_text(high)) return {};
    return score_text(low) + " to " + score_text(high);
}

std::string overall_text(const Debrief& debrief) {
    return debrief.overall_scored ? score_text(debrief.overall) : std::string("-");
}

std::string bits_text(const Debrief::Act& act) {
    if (!act.weighed) return "-";
    return units::fixed(std::abs(act.bits) < shown_bits ? 0.0 : act.bits, 1);
}

bool speaks_of_bits(std::string_view text) {
    return text.find(" bits") != std::string_view::npos ||
           text.find(">bits<") != std::string_view::npos;  // the head of a column
}

std::string left_out_text(const Debrief& debrief) {
    const bool has_table = std::any_of(debrief.readings.begin(), debrief.readings.end(),
                                       [](const auto& one) { return !one.same_everywhere; });
    if (debrief.columns_left_out == 0 || !has_table) return {};
    return std::to_string(debrief.columns_left_out) +
           " further kinds of cause are left out: they never were among the likeliest.";
}

std::string same_everywhere_text(const Debrief& debrief) {
    std::vector<std::string> numbers;
    for (const auto& reading : debrief.readings)
        if (reading.same_everywhere) numbers.push_back("#" + std::to_string(reading.number));
    if (numbers.empty()) return {};
    return "The same under every cause shown: " + joined(numbers, ", ") + ".";
}

/// "31 of the 93 points missing, 60.0 minutes charged. "
std::string cost_in_words(const scoring::Assessment& assessment, const scoring::Moment& moment) {
    double all = 0.0;
    for (std::size_t a = 0; a < assessment.areas.size(); ++a)
        all += scoring::area_toll(a, assessment.areas[a].score);
    std::vector<std::string> cost;
    const double missing = 100.0 - assessment.overall;
    if (assessment.overall_scored && moment.toll > 0.0)
        cost.push_back(units::fixed(missing * moment.toll / all, 1) + " of the " +
                       units::fixed(missing, 1) + " points missing");
    if (moment.minutes > 0.0) cost.push_back(scoring::time_in_words(moment.minutes) + " charged");
    return cost.empty() ? "" : joined(cost, ", ") + ". ";
}

std::string try_again_in_words(const Record& record, const worksite::Job& job,
                               const scoring::Assessment& assessment) {
    if (assessment.costliest.empty() || !record.closed) return {};
    std::vector<std::string> times;
    for (const auto& moment : assessment.costliest)
        if (moment.act < record.acts.size())
            times.push_back("--at " + time_on_site(record.acts[moment.act].tick, job));
    if (times.empty() || record.file.empty()) return {};
    const bool twice = times.size() > 1 && times[0] != times[1];
    return std::string(twice ? "Each of these" : "This") +
           " can be tried again from there, coached and in a record of its own: emberpath fork " +
           record.file.filename().string() + " " + (twice ? joined(times, " or ") : times[0]) + ".";
}

Debrief make_debrief(const Record& record, const worksite::Job& usual,
                     const scoring::Assessment& assessment, Reader reader,
                     const std::vector<Decision>& decisions) {
    const worksite::Job job = job_of(record, usual);
    Debrief debrief;
    debrief.title = job.title;
    debrief.call_out = job.call_out;
    debrief.mode = record.header.mode == worksite::Mode::assessed ? "assessed" : "coached";
    if (!record.acts.empty()) debrief.time_on_site = time_on_site(record.acts.back().end_tick, job);
    const Ending ending = ending_of(record, job);
    debrief.outcome = outcome_of(record, job, assessment, ending);
    debrief.doses = ending.doses;
    debrief.day_after = record.day_after.lines;
    debrief.unsafe_acts = unsafe_acts_of(record, job, assessment);
    for (const auto& area : assessment.areas)
        debrief.areas.push_back(
            {area.word, area.score, area.scored, area.reason, area.low, area.high});
    debrief.overall = assessment.overall;
    debrief.overall_scored = assessment.overall_scored;
    debrief.overall_low = assessment.overall_low;
    debrief.overall_high = assessment.overall_high;
    for (const auto& moment : assessment.costliest)
        debrief.moments.push_back(cost_in_words(assessment, moment) + moment.text);
    debrief.try_again = try_again_in_words(record, job, assessment);
    if (assessment.overall_scored) debrief.open = assessment.still_open;
    debrief.reference = reference_in_words(assessment);
    if (reader == Reader::assessor) {
        debrief.for_assessor = words_for_assessor(assessment);
        debrief.inputs = inputs_of(assessment);
    }
    debrief.gates_met = assessment.gates_met;
    debrief.gates = gates_in_words(assessment);
    debrief.proposal = assessment.proposal;
    for (const auto& one : decisions) debrief.decisions.push_back(in_words(one));
    debrief.lost = lost_of(record, job, assessment);
    debrief.acts = acts_of(record, job, assessment);
    add_stands(debrief, record, job, assessment);
    add_comparisons(debrief, job, assessment);
    debrief.against = against_truth(debrief);
    debrief.limits = limits();
    debrief.proof = proof_of(record, job.practice);
    return debrief;
}

}  // namespace emberpath::records
