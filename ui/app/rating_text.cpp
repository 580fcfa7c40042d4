#include "ui/app/rating_text.hpp"

#include <cstdio>
#include <ostream>
#include <string>

#include "sim/scoring/classes.hpp"
#include "sim/units/per_cent.hpp"
#include "ui/debrief/page.hpp"

namespace emberpath::app {

namespace {

constexpr double guessable_above = 0.15;  // a right guess from complaint and display: chosen

void write_fares(std::ostream& out, const trainees::Rating& rating) {
    char line[160];
    std::snprintf(line, sizeof line, "%-28s %5s %5s %5s %5s %5s %8s %9s %7s %5s\n",
                  "simulated trainee", "safe", "evid", "path", "rem", "proof", "overall",
                  "unopposed", "minutes", "acts");
    out << line;
    for (const auto& fare : rating.fares) {
        const auto& a = fare.areas;
        std::snprintf(
            line, sizeof line, "%-28s %5.0f %5.0f %5.0f %5.0f %5.0f %8.0f %5d of %d %7.0f %5.0f\n",
            std::string(trainees::policy_title(fare.policy)).c_str(), a[0], a[1], a[2], a[3], a[4],
            fare.overall, fare.unopposed, fare.attempts, fare.minutes, fare.acts);
        out << line;
    }
}

/// Causes with one remedy are one answer.
std::string answer_of(const worksite::Job& job) {
    const scoring::Class truth = scoring::class_or_first_of(job.faults);
    return scoring::class_title(truth) + "; " + scoring::remedy_title(truth);
}

void write_summary(std::ostream& out, const worksite::Job& job, const trainees::Rating& rating) {
    const auto& best = rating.shortest;
    const auto& difficulty = rating.difficulty;
    const std::string why = trainees::reasons(difficulty);
    out << '\n'
        << debrief::paragraph("Difficulty: " + std::string(word(difficulty)) +
                                  (why.empty() ? "" : ", for " + why) + ".",
                              debrief::page_width, 0);
    out << "Ordinary attempts that met an objection: " << units::per_cent(difficulty.missed_share)
        << ".\n";
    if (best.found)
        out << "Shortest safe path found: " << units::fixed(best.minutes, 0) << " minutes, "
            << best.acts << " acts (" << trainees::policy_title(best.policy) << ", seed "
            << best.seed << ").\n";
    else
        out << "No safe path was found.\n";
    const auto& seen = rating.on_arrival;
    out << debrief::paragraph("Answer: " + answer_of(job) + ".", debrief::page_width, 0)
        << "Blind guess: with complaint and display word alone the likeliest remedy has "
        << units::per_cent(seen.probability) << "; the right one "
        << (seen.of_truth < 0.005 ? "under 1 %" : units::per_cent(seen.of_truth)) << ".\n"
        << "Identifiable: whoever of them read best gave the true remedy "
        << units::per_cent(rating.identifiable) << ".\n";
    for (const auto& one : rating.not_told_apart)
        out << debrief::paragraph("Beside it " + units::per_cent(one.probability) +
                                      " stay with \"" + scoring::class_title(one.of) + "\".",
                                  debrief::page_width, 2);
    if (seen.of_truth > guessable_above)
        out << "Guessable: a right guess is likelier than " << units::per_cent(guessable_above)
            << ". Good for practice; in an assessment, one of several jobs.\n";
    if (seen.is_direct())
        out << "A direct job: complaint and display word leave little to find out.\n";
}

}  // namespace

void write_rating(std::ostream& out, const worksite::Job& job, const trainees::Rating& rating) {
    out << job.title << "\n\n";
    write_fares(out, rating);
    write_summary(out, job, rating);
    if (rating.refusals.empty()) out << "Fit for release: no bad habit pays.\n";
    for (const auto& why : rating.refusals)
        out << debrief::paragraph("Refused for release because " + why, debrief::page_width, 0);
}

}  // namespace emberpath::app
