#pragma once
/// How much each part of a cause's range changes what can be read, on natural gas and on propane.

#include <algorithm>
#include <map>
#include <utility>
#include <vector>

#include "sim/scoring/bank.hpp"
#include "sim/scoring/neighbours.hpp"
#include "sim/scoring/severities.hpp"
#include "tests/unit/scoring/driven_house.hpp"

namespace emberpath::scoring {

/// A step of a fine grid counts for at most this: beyond it the readings jump, and nothing lies between.
inline constexpr double most_of_a_fine_step = 1.0;

/// Cause, and whether it acts in its opposite direction.
using Graded = std::pair<faults::Cause, bool>;
/// Combined widths (neighbours.hpp) of each of the equal steps over the symptomatic range, capped.
using FineSteps = std::map<Graded, std::vector<double>>;

inline std::vector<Graded> graded_causes(const worksite::Job& job) {
    std::vector<Graded> all;
    for (const faults::CauseInfo& cause : faults::catalogue()) {
        if (cause.on_off || cause.cause == faults::Cause::no_fault) continue;
        if (!faults::can_act(cause, worksite::traits_of(job))) continue;
        all.emplace_back(cause.cause, false);
        if (cause.has_sign) all.emplace_back(cause.cause, true);
    }
    return all;
}

inline std::vector<Hypothesis> evenly_spaced(const worksite::Job& job, int steps) {
    std::vector<Hypothesis> all(1);  // the sound house
    all.front().fault.cause = faults::Cause::no_fault;
    for (const auto& [cause, opposite] : graded_causes(job)) {
        const faults::CauseInfo& info = faults::info(cause);
        const int first = static_cast<int>(all.size()), last = first + steps;
        for (const double size : even_severities(info, steps + 1)) {
            Hypothesis h;
            const int here = static_cast<int>(all.size());
            h.fault.cause = cause;
            h.fault.severity = opposite ? -size : size;
            h.remedy = info.remedy;
            h.lower = here > first ? here - 1 : -1;
            h.upper = here < last ? here + 1 : -1;
            all.push_back(h);
        }
    }
    for (Hypothesis& h : all) h.prior = 1.0 / static_cast<double>(all.size());
    return all;
}

inline void add_fine_steps(worksite::GasKind gas, int steps, FineSteps& out) {
    const worksite::Job job = plain_job(gas);
    DrivenHouse house(job, 3);
    house.live_until_arrival();
    Bank bank(job, evenly_spaced(job, steps), 2);
    bank.live_until(house.tape(), house.tape().events.size());
    for (const Graded& one : graded_causes(job)) {
        faults::Fault fault;
        fault.cause = one.first;
        fault.severity = one.second ? -1.0 : 1.0;
        std::vector<double>& widths = out[one];
        widths.resize(static_cast<std::size_t>(steps));
        const std::vector<Gap> gaps = gaps_between(job, bank.shadows(), {&fault, 1});
        for (std::size_t i = 0; i < gaps.size(); ++i)
            widths[i] = std::max(widths[i], std::min(gaps[i].widths, most_of_a_fine_step));
    }
}

/// On both gases the larger of the two.
inline FineSteps fine_steps(int steps) {
    FineSteps all;
    add_fine_steps(worksite::GasKind::natural_gas, steps, all);
    add_fine_steps(worksite::GasKind::propane_cylinder, steps, all);
    return all;
}

}  // namespace emberpath::scoring
