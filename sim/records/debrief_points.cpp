// Where the points went, what was said beside what was shown, and what only an assessor reads.
#include <algorithm>
#include <cmath>

#include "sim/records/debrief_parts.hpp"
#include "sim/scoring/release_terms.hpp"
#include "sim/units/counted.hpp"
#include "sim/units/per_cent.hpp"

namespace emberpath::records {

namespace {

constexpr double listed_from = 0.05;   // probability on arrival
constexpr double settled_from = 0.99;  // probability before a reading: it could not move much
constexpr double worth_telling =
    0.005;  // between two probabilities: half of what whole per cents show

/// Overall without one area, the others keeping their weights.
std::string without_each_area(const scoring::Assessment& assessment) {
    std::string text;
    for (std::size_t a = 0; a < assessment.areas.size(); ++a)
        text += (a == 0 ? "" : ", ") + assessment.areas[a].word + " " +
                score_text(scoring::overall_without(assessment, a));
    return "Overall score with one area left out: " + text + ".";
}

std::string luck_in_words(const scoring::Luck& luck) {
    return "Luck: " + units::counted(luck.readings, "act") + " with readings told " +
           units::fixed(luck.told_bits, 1) + " bits about the true cause where " +
           units::fixed(luck.expected_bits, 1) + " could be expected; index " +
           units::fixed(luck.index, 1) +
           ". Honest work lies about 0. Several attempts well above 2 may mean that the answer was "
           "known beforehand; one alone means nothing.";
}

/// Whether its cause shows itself where house and instruments differ.
std::string other_houses_in_words(const worksite::ReleaseCheck& check) {
    if (check.checked_on.empty()) return "In other houses it was never checked.";
    return "On " + check.checked_on + " its cause showed itself in " + std::to_string(check.shown) +
           " of " + units::counted(check.houses, "other house") + "." +
           (check.refused.empty() ? "" : " It was refused: " + check.refused) +
           (check.outdated ? " Its files have changed since." : "");
}

/// Which way an attempt at this job may be read; the whole check is `emberpath rate`.
std::string release_in_words(const scoring::Assessment& assessment) {
    const double minutes = assessment.reference_minutes;
    std::vector<std::string> doubts;
    if (assessment.reference_leading < scoring::likely_enough_for_release)
        doubts.push_back("readings free of error end on " +
                         share_text(assessment.reference_leading) + " for one cause, under " +
                         units::per_cent(scoring::likely_enough_for_release));
    if (minutes < scoring::shortest_reference_minutes ||
        minutes > scoring::longest_reference_minutes)
        doubts.push_back("its reference path of " + units::fixed(minutes, 0) +
                         " minutes lies outside " +
                         units::fixed(scoring::shortest_reference_minutes, 0) + " to " +
                         units::fixed(scoring::longest_reference_minutes, 0));
    const std::string label =
        assessment.direct ? "direct: the complaint alone warrants the remedy, so that evidence "
                            "and path say little here"
                          : "the complaint alone does not warrant the remedy; its cause is to be "
                            "found out";
    return "Release check of this job: " + label + ". " +
           (doubts.empty() ? "The best readings end on " +
                                 share_text(assessment.reference_leading) + " for one cause."
                           : "In doubt: " + joined(doubts, "; ") + ".") +
           " " + other_houses_in_words(assessment.release) +
           " The whole check is emberpath rate --release.";
}

std::string under_text(const scoring::LikelihoodInput::Under& under) {
    return under.predicted + ", " + under.scale + " (" + scoring::class_title(under.of) + ", " +
           share_text(under.before) + " before; " + units::fixed(under.likelihood, 2) + ")";
}

bool same_under_all(const scoring::LikelihoodInput& input) {
    return input.under.size() > 1 &&
           std::all_of(input.under.begin(), input.under.end(), [&](const auto& one) {
               return one.predicted == input.under.front().predicted &&
                      one.scale == input.under.front().scale &&
                      units::fixed(one.likelihood, 2) == "1.00";
           });
}

/// "0 ppm, factor 2.92 (all the same: outlet sensor, 92 % before; gas valve, under 1 % before)".
std::string all_in_one_line(const scoring::LikelihoodInput& input) {
    std::vector<std::string> classes;
    for (const auto& under : input.under)
        classes.push_back(scoring::class_title(under.of) + ", " + share_text(under.before) +
                          " before");
    return input.under.front().predicted + ", " + input.under.front().scale +
           " (all the same: " + joined(classes, "; ") + ")";
}

}  // namespace

std::string lost_text(double points) {
    return "-" + units::fixed(points, 1);
}

std::string lost_words(const Debrief::Lost& lost) {
    if (lost.act.empty()) return "never handed in: " + lost.reason;
    return lost.missing.empty() ? lost.act + ": " + lost.reason : lost.reason;
}

std::vector<Debrief::Lost> lost_of(const Record& record, const worksite::Job& job,
                                   const scoring::Assessment& assessment) {
    std::vector<Debrief::Lost> all;
    for (const auto& area : assessment.areas)
        for (const auto& lost : area.lost) {
            const bool by_act = lost.act < record.acts.size();
            all.push_back(
                {area.word,
                 by_act ? time_on_site(record.acts[lost.act].tick, job) : std::string("-"),
                 by_act ? record.acts[lost.act].sentence : std::string(), lost.item, lost.reason,
                 lost.points});
        }
    return all;
}

std::string confidence_in_words(const scoring::Assessment& assessment) {
    if (!assessment.stated_confidence.has_value()) return {};
    const double said = *assessment.stated_confidence, shown = assessment.diagnosis_probability;
    constexpr double as_good_as = 0.1;
    const std::string judged = std::abs(said - shown) <= as_good_as ? "You knew how much you knew."
                               : said > shown                       ? "You were surer than that."
                                              : "They showed more than you trusted them for.";
    return "You said " + units::per_cent(said) + "; your own readings gave " + share_text(shown) +
           " before it was settled. " + judged;
}

std::string evidence_for_truth(const scoring::Assessment& assessment) {
    if (!assessment.overall_scored) return "What the readings say of it is not scored; see Areas.";
    const double alone = assessment.true_class_probability,
                 needed = assessment.true_remedy_probability;
    if (needed - alone < worth_telling)
        return "The evidence gave it " + share_text(alone) + " before anything was done about it.";
    return "Before anything was done about it the evidence gave it " + share_text(alone) +
           " as the only cause, and " + share_text(needed) +
           " alone or beside another: its remedy was needed either way.";
}

std::vector<std::string> against_truth(const Debrief& debrief) {
    std::vector<std::string> said;
    for (const auto& reading : debrief.readings)
        if (!reading.cells.empty() && reading.cells.front().ruled_out)
            said.push_back(
                "#" + std::to_string(reading.number) +
                " by itself speaks against the cause of this house: you read " + reading.shown +
                ", where its shadow would have shown " + reading.cells.front().value +
                ". A shadow stands near this house and is not it, and moments differ: gusts, drops "
                "and what comes and goes fall otherwise. It was weighed as it stands, and the "
                "other readings outweighed it.");
    return said;
}

std::vector<std::string> words_for_assessor(const scoring::Assessment& assessment) {
    std::vector<std::string> said;
    if (assessment.luck.readings > 0) said.push_back(luck_in_words(assessment.luck));
    if (assessment.luck.misfit > 0.0)
        said.push_back("Misfit: the readings lie " + units::fixed(assessment.luck.misfit, 1) +
                       " (mean square, in their own scales) from the likeliest shadow. Far above 1 "
                       "the shadows do not represent this house, and the scores deserve doubt.");
    if (assessment.overall_scored) said.push_back(without_each_area(assessment));
    said.push_back(release_in_words(assessment));
    std::vector<std::string> priors;
    for (const auto& c : assessment.on_arrival)
        if (c.probability >= listed_from)
            priors.push_back(scoring::class_title(c.of) + " " + share_text(c.probability));
    if (!priors.empty())
        said.push_back("By the complaint alone, on arrival: " + joined(priors, ", ") + ".");
    return said;
}

std::vector<Debrief::Input> inputs_of(const scoring::Assessment& assessment) {
    std::vector<Debrief::Input> inputs;
    for (const auto& one : assessment.inputs) {
        Debrief::Input input;
        input.number = one.number > 0 ? "#" + std::to_string(one.number) : "";
        input.title = one.title;
        input.condition = one.condition;
        input.shown = one.shown;
        input.weight = units::fixed(one.exponent, 2);
        if (one.reads > 1) input.weight += " shared by " + std::to_string(one.reads);
        input.settled = !one.under.empty() && one.under.front().before > settled_from;
        input.under = same_under_all(one) ? std::vector<std::string>{all_in_one_line(one)}
                                          : std::vector<std::string>();
        if (input.under.empty())
            for (const auto& under : one.under) input.under.push_back(under_text(under));
        inputs.push_back(std::move(input));
    }
    return inputs;
}

}  // namespace emberpath::records
