#include "ui/app/rate.hpp"

#include <chrono>
#include <cstdio>
#include <ostream>

#include "sim/trainees/rating.hpp"
#include "sim/units/per_cent.hpp"
#include "ui/app/jobs.hpp"
#include "ui/app/progress.hpp"
#include "ui/app/release.hpp"
#include "ui/debrief/page.hpp"

namespace emberpath::app {

namespace {

constexpr int most_seeds = 100;
constexpr int most_runs = 1000;
constexpr int usual_seeds = 2;

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

void write_summary(std::ostream& out, const trainees::Rating& rating) {
    const auto& best = rating.shortest;
    out << "\nDifficulty: " << trainees::difficulty_word(rating.missed_share) << "; "
        << units::per_cent(rating.missed_share) << " of ordinary attempts met an objection.\n";
    if (best.found)
        out << "Shortest safe path found: " << units::fixed(best.minutes, 0) << " minutes, "
            << best.acts << " acts (" << trainees::policy_title(best.policy) << ", seed "
            << best.seed << ").\n";
    else
        out << "No safe path was found.\n";
    out << "Blind guess: with complaint and display word alone the likeliest remedy has "
        << units::per_cent(rating.on_arrival.probability) << "; the right one "
        << (rating.on_arrival.of_truth < 0.005 ? "under 1 %"
                                               : units::per_cent(rating.on_arrival.of_truth))
        << ".\n"
        << "Identifiable: after every reading in every operating state the true remedy has "
        << units::per_cent(rating.identifiable) << ".\n";
    if (rating.on_arrival.is_direct())
        out << "A direct job: complaint and display word leave little to find out.\n";
}

void check_range(std::string_view option, int value, int most) {
    if (value < 1 || value > most)
        throw BadInput(std::string(option) + " takes 1 to " + std::to_string(most) + ", not " +
                       std::to_string(value) + ".");
}

/// By the world's calendar; the author's own may be a day ahead.
std::string today() {
    const auto days = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
    const std::chrono::year_month_day date(days);
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%04d-%02u-%02u", static_cast<int>(date.year()),
                  static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
    return buffer;
}

Status check_release(Context& context, const RateRequest& request) {
    const int runs = request.runs.value_or(trainees::usual_houses);
    check_range("--runs", runs, most_runs);
    const auto loaded = load_job(find_job(context, request.job));
    const auto release = with_progress(context, "Houses with this cause are gone through",
                                       [&] { return trainees::check_release(loaded.job, {runs}); });
    write_release(context.out, loaded.job, release, today(), loaded.hash);
    return release.refusals.empty() ? Status::done : Status::not_so;
}

}  // namespace

Status rate(Context& context, const RateRequest& request) {
    if (request.release && request.seeds)
        throw BadInput("--seeds is for simulated trainees; with --release there is --runs.");
    if (!request.release && request.runs)
        throw BadInput("--runs goes with --release; simulated trainees take --seeds.");
    if (request.release) return check_release(context, request);
    const int seeds = request.seeds.value_or(usual_seeds);
    check_range("--seeds", seeds, most_seeds);
    const auto loaded = load_job(find_job(context, request.job));
    const auto rating = with_progress(context, "Simulated trainees at work",
                                      [&] { return trainees::rate(loaded.job, seeds); });
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
