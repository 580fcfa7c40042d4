#include "ui/app/rate.hpp"

#include <chrono>
#include <cstdio>

#include "sim/trainees/rating.hpp"
#include "ui/app/jobs.hpp"
#include "ui/app/progress.hpp"
#include "ui/app/rating_text.hpp"
#include "ui/app/release.hpp"

namespace emberpath::app {

namespace {

constexpr int most_seeds = 100;
constexpr int most_runs = 1000;
constexpr int usual_seeds = 2;

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
    write_rating(context.out, loaded.job, rating);
    return rating.refusals.empty() ? Status::done : Status::not_so;
}

}  // namespace emberpath::app
