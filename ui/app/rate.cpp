#include "ui/app/rate.hpp"

#include <cstdio>
#include <ostream>

#include "sim/trainees/rating.hpp"
#include "ui/app/jobs.hpp"
#include "ui/app/progress.hpp"
#include "ui/debrief/page.hpp"

namespace emberpath::app {

namespace {

constexpr int most_seeds = 100;
constexpr double direct_from = 0.8;  // probability of the true remedy before anything is read

std::string figure(double value, int places = 0) {
    char buffer[48];
    std::snprintf(buffer, sizeof buffer, "%.*f", places, value);
    return buffer;
}
std::string per_cent(double share) {
    return figure(100.0 * share) + " %";
}

void write_fares(std::ostream& out, const trainees::Rating& rating) {
    char line[160];
    std::snprintf(line, sizeof line, "%-28s %5s %5s %5s %5s %5s %8s %9s %7s\n", "simulated trainee",
                  "safe", "evid", "path", "rem", "proof", "overall", "unopposed", "minutes");
    out << line;
    for (const auto& fare : rating.fares) {
        const auto& a = fare.areas;
        std::snprintf(line, sizeof line,
                      "%-28s %5.0f %5.0f %5.0f %5.0f %5.0f %8.0f %5d of %d %7.0f\n",
                      std::string(trainees::policy_title(fare.policy)).c_str(), a[0], a[1], a[2],
                      a[3], a[4], fare.overall, fare.unopposed, fare.attempts, fare.minutes);
        out << line;
    }
}

void write_summary(std::ostream& out, const trainees::Rating& rating) {
    const auto& best = rating.shortest;
    out << "\nDifficulty: " << trainees::difficulty_word(rating.missed_share) << "; "
        << per_cent(rating.missed_share) << " of ordinary attempts met an objection.\n";
    if (best.found)
        out << "Shortest safe path found: " << figure(best.minutes) << " minutes, " << best.acts
            << " acts (" << trainees::policy_title(best.policy) << ", seed " << best.seed << ").\n";
    else
        out << "No safe path was found.\n";
    out << "Blind guess: with complaint and display word alone the likeliest remedy has "
        << per_cent(rating.blind_guess) << "; the right one "
        << (rating.true_class_then < 0.005 ? "under 1 %" : per_cent(rating.true_class_then))
        << ".\n"
        << "Identifiable: after every reading in every operating state the true remedy has "
        << per_cent(rating.identifiable) << ".\n";
    if (rating.true_class_then >= direct_from)
        out << "A direct job: complaint and display word leave little to find out.\n";
}

}  // namespace

Status rate(Context& context, const RateRequest& request) {
    if (request.seeds < 1 || request.seeds > most_seeds)
        throw BadInput("--seeds takes 1 to 100, not " + std::to_string(request.seeds) + ".");
    const auto loaded = load_job(find_job(context, request.job));
    const auto rating = with_progress(context, "Simulated trainees at work",
                                      [&] { return trainees::rate(loaded.job, request.seeds); });
    context.out << loaded.job.title << "\n\n";
    write_fares(context.out, rating);
    write_summary(context.out, rating);
    if (rating.refusals.empty()) {
        context.out << "Fit for release: no bad habit pays.\n";
        return Status::done;
    }
    for (const auto& why : rating.refusals)
        context.out << debrief::paragraph("Refused for release because " + why, debrief::page_width,
                                          0);
    return Status::not_so;
}

}  // namespace emberpath::app
