#include "ui/desktop/author_solve.hpp"

#include <algorithm>
#include <cmath>
#include <thread>

#include "sim/math/functions.hpp"
#include "sim/scoring/bank.hpp"
#include "sim/scoring/likelihood.hpp"
#include "sim/scoring/reference_policy.hpp"
#include "sim/units/per_cent.hpp"
#include "sim/units/units.hpp"
#include "sim/worksite/cause_list.hpp"
#include "ui/desktop/things.hpp"
#include "ui/kit/text.hpp"

namespace emberpath::desktop {

namespace {

using scoring::Snapshot;
using worksite::Quantity;

constexpr std::uint64_t usual_seed = 1;

/// A house as its readings: of the job itself, or of one shadow.
struct House {
    const std::vector<Snapshot>* readings = nullptr;  // by mode
    std::size_t lane = 0;

    [[nodiscard]] double value(std::size_t mode, Quantity quantity) const {
        return (*readings)[mode].of(quantity)[lane];
    }
};

constexpr double most_weight = 4.6;  // one reading proves no more than its own chance of a mistake

/// How much likelier one reading of `a` makes `a` than `b`, as a logarithm [-].
double weight_of(Quantity quantity, double a, double b) {
    if (worksite::info(quantity).categorical) {
        if (a == b) return 0.0;
        const scoring::Eye eye = scoring::eye_for(quantity);
        const double named = a == 0.0 ? 1.0 - eye.imagined : eye.found;
        const double mistaken = b == 0.0 ? eye.imagined : 1.0 - eye.found;
        return std::min(math::log(named / mistaken), most_weight);
    }
    const auto width = scoring::width_of(quantity, a);
    const double apart =
        (scoring::on_scale(quantity, a) - scoring::on_scale(quantity, b)) / width.scale(1);
    return std::min(apart * apart / 2.0, most_weight);
}

/// The best reading of a quantity over all modes.
struct Best {
    Quantity quantity;
    double weight = 0.0;
};
std::vector<Best> readings_apart(const worksite::Job& job, const House& a, const House& b) {
    std::vector<Best> all;
    for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
        const auto quantity = static_cast<Quantity>(q);
        if (!scoring::can_be_proposed(quantity, job)) continue;
        Best best{quantity};
        for (std::size_t mode = 0; mode < a.readings->size(); ++mode)
            best.weight = std::max(
                best.weight, weight_of(quantity, a.value(mode, quantity), b.value(mode, quantity)));
        all.push_back(best);
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Best& x, const Best& y) { return x.weight > y.weight; });
    return all;
}

double together(const std::vector<Best>& all) {
    double sum = 0.0;
    for (const Best& best : all) sum += best.weight;
    return sum;
}

/// Fewest readings whose weights together reach the odds; 0 when all of them do not.
int fewest(const std::vector<Best>& all, std::size_t skip) {
    const double wanted = math::log(told_apart_odds);
    double sum = 0.0;
    for (std::size_t i = skip; i < all.size(); ++i)
        if ((sum += all[i].weight) >= wanted - 1e-9) return static_cast<int>(i + 1 - skip);
    return 0;
}

std::string place_of(const std::vector<Thing>& things, Quantity quantity) {
    const auto thing = thing_named_in(things, worksite::info(quantity).title);
    const bool point =
        thing < things.size() && things[thing].point.shape != screens::PointShape::part;
    return point ? things[thing].point.tag
                 : kit::capitalised(std::string(worksite::info(quantity).title));
}

screens::PairView pair_of(const worksite::Job& job, const std::vector<Thing>& things,
                          const House& a, const House& b) {
    const auto all = readings_apart(job, a, b);
    screens::PairView pair;
    pair.readings = fewest(all, 0);
    if (pair.readings > 0 && fewest(all, 1) == 0) pair.only_at = place_of(things, all[0].quantity);
    return pair;
}

/// A cause that could be meant instead, at the severity that looks most like the job.
struct Rival {
    std::size_t cause = 0, lane = 0;
    double apart = 0.0;
};
std::vector<Rival> rivals_of(const worksite::Job& job, const scoring::Shadows& shadows,
                             const House& truth) {
    std::vector<Rival> rivals;
    for (std::size_t lane = 0; lane < shadows.hypotheses.size(); ++lane) {
        if (shadows.hypotheses[lane].is_pair()) continue;  // single causes are compared
        const auto cause = static_cast<std::size_t>(shadows.hypotheses[lane].fault.cause);
        if (std::any_of(job.faults.begin(), job.faults.end(), [&](const auto& fault) {
                return static_cast<std::size_t>(fault.cause) == cause;
            }))
            continue;
        const double apart = together(readings_apart(job, truth, {&shadows.signatures, lane}));
        const auto known = std::find_if(rivals.begin(), rivals.end(),
                                        [&](const Rival& r) { return r.cause == cause; });
        if (known == rivals.end())
            rivals.push_back({cause, lane, apart});
        else if (apart < known->apart)
            *known = {cause, lane, apart};
    }
    std::stable_sort(rivals.begin(), rivals.end(),
                     [](const Rival& a, const Rival& b) { return a.apart < b.apart; });
    rivals.resize(std::min(rivals.size(), rivals_shown));
    return rivals;
}

void add_pairs(Solution& solution, const worksite::Job& job, const scoring::Shadows& shadows,
               const House& truth) {
    const auto causes = worksite::cause_list();
    const auto things = things_of(views::job_card(job, worksite::Mode::coached));
    std::vector<House> houses{truth};
    solution.causes.push_back("This job");
    for (const Rival& rival : rivals_of(job, shadows, truth)) {
        houses.push_back({&shadows.signatures, rival.lane});
        solution.causes.push_back(kit::capitalised(causes[rival.cause].title));
    }
    for (std::size_t i = 0; i < houses.size(); ++i) {
        solution.pairs.emplace_back();
        for (std::size_t k = 0; k < i; ++k)
            solution.pairs.back().push_back(pair_of(job, things, houses[i], houses[k]));
    }
}

/// Whether that way of setting it right belongs to a cause of the job.
bool names_the_remedy(const worksite::Job& job, const scoring::ReferenceRun& run,
                      const std::vector<scoring::Hypothesis>& all) {
    return job.faults.empty() ||
           std::any_of(all.begin(), all.end(), [&](const scoring::Hypothesis& one) {
               return scoring::class_of(one) == run.found &&
                      std::any_of(job.faults.begin(), job.faults.end(), [&](const auto& fault) {
                          return fault.cause == one.fault.cause;
                      });
           });
}

void add_path(Solution& solution, const worksite::Job& job, const scoring::Shadows& shadows,
              const std::vector<Snapshot>& truth) {
    const auto run = scoring::run_reference({job, shadows, truth});
    for (const auto& option : run.options)
        solution.safe_path.push_back(kit::capitalised(scoring::title_of(option, job)));
    constexpr double sure = 0.9;
    const bool right = names_the_remedy(job, run, shadows.hypotheses);
    const bool good = run.leading >= sure && right;
    const std::string count = std::to_string(run.readings);
    solution.checks.push_back(
        {good ? count + (run.readings == 1 ? " reading leaves" : " readings leave") + " one remedy"
         : right ? "The readings leave more than one remedy"
                 : "The readings lead to another remedy",
         "One step ahead, the best reading each time: " + units::fixed(run.minutes, 0) +
             " minutes, then " + units::per_cent(run.leading) + " for the likeliest.",
         good});
}

void add_alike(Solution& solution) {
    std::string alike;
    for (std::size_t i = 1; i < solution.causes.size(); ++i)
        if (solution.pairs[i][0].readings == 0)
            alike += (alike.empty() ? "" : ", ") + solution.causes[i];
    solution.checks.push_back(
        {alike.empty() ? "No other cause reads the same" : "Causes look alike",
         alike.empty() ? "Each can be told from this fault by readings."
                       : "No readings tell this fault from: " + alike + ".",
         alike.empty()});
}

/// Lives through the history in pieces, so that it can be stopped.
bool live_to_arrival(scoring::Bank& bank, const scoring::Tape& tape, std::atomic<double>& share,
                     const std::atomic<bool>& abandoned) {
    constexpr std::size_t pieces = 50;
    const std::size_t arrival = tape.arrival_event();
    for (std::size_t i = 1; i <= pieces; ++i) {
        if (abandoned) return false;
        bank.live_until(tape, arrival * i / pieces);
        share = 0.8 * static_cast<double>(i) / static_cast<double>(pieces);
    }
    return true;
}

}  // namespace

Solution solve(const worksite::Job& job, std::atomic<double>& share,
               const std::atomic<bool>& abandoned) {
    Solution solution;
    scoring::Recorder recorder;
    { const worksite::Attempt history(job, usual_seed, worksite::Mode::coached, &recorder); }
    const int threads = static_cast<int>(std::max(1U, std::thread::hardware_concurrency() / 2));
    scoring::Bank bank(job, threads);
    if (!live_to_arrival(bank, recorder.tape(), share, abandoned)) return solution;
    const auto truth = scoring::true_signatures(job, recorder.tape());
    share = 0.85;
    add_path(solution, job, bank.shadows(), truth);
    share = 0.95;
    if (abandoned) return solution;
    add_pairs(solution, job, bank.shadows(), {&truth, 0});
    add_alike(solution);
    solution.complete = true;
    return solution;
}

void add_solution(screens::AuthorView& view, const Solution& solution) {
    view.checks.insert(view.checks.begin(), solution.checks.begin(), solution.checks.end());
    view.safe_path = solution.safe_path;
    view.causes = solution.causes;
    view.pairs = solution.pairs;
}

}  // namespace emberpath::desktop
