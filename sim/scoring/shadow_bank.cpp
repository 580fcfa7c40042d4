#include "sim/scoring/shadow_bank.hpp"

#include <algorithm>
#include <atomic>
#include <thread>

#include "sim/scoring/lane_group.hpp"

namespace emberpath::scoring {

namespace {

constexpr std::size_t group_lanes = 8;

Shadows empty_results(const worksite::Job& job, const Tape& tape, std::size_t lanes) {
    Shadows out;
    out.complaints.assign(lanes, worksite::Complaint::none);
    out.observed.assign(tape.observations.size(), std::vector<double>(lanes, 0.0));
    out.passive.assign(tape.marks, Snapshot(lanes));
    out.signatures.assign(modes(job).size(), Snapshot(lanes));
    return out;
}

std::array<LaneRole, group_lanes> roles_of(const Shadows& shadows, std::size_t group) {
    std::array<LaneRole, group_lanes> roles;
    for (std::size_t i = 0; i < group_lanes; ++i) {
        const std::size_t lane = group * group_lanes + i;
        roles[i].wanted = lane < shadows.hypotheses.size();
        if (!roles[i].wanted) continue;
        roles[i].column = lane;
        if (shadows.hypotheses[lane].fault.cause != faults::Cause::no_fault)
            roles[i].faults = {shadows.hypotheses[lane].fault};
    }
    return roles;
}

template <class Isa>
void run_groups(const worksite::Job& job, const Tape& tape, int threads, Shadows& out) {
    using Real = math::Pack<group_lanes, Isa>;
    const std::size_t groups = (out.hypotheses.size() + group_lanes - 1) / group_lanes;
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t g = next++; g < groups; g = next++) {
            LaneGroup<Real> group(job, roles_of(out, g));
            group.live_through(tape, out, false);
        }
    };
    std::vector<std::thread> helpers;
    for (int i = 1; i < threads; ++i) helpers.emplace_back(work);
    work();
    for (std::thread& helper : helpers) helper.join();
}

}  // namespace

Shadows run_shadows(const worksite::Job& job, const Tape& tape, int threads) {
    std::vector<Hypothesis> all = hypotheses(job.site.gas);
    Shadows out = empty_results(job, tape, all.size());
    out.hypotheses = std::move(all);
    threads = std::max(threads, 1);
    if (worksite::wide_is_supported())
        run_groups<math::Wide>(job, tape, threads, out);
    else
        run_groups<math::Baseline>(job, tape, threads, out);
    return out;
}

std::vector<Snapshot> signatures_of(const worksite::Job& job, const Tape& tape,
                                    const std::vector<faults::Fault>& faults) {
    Shadows out = empty_results(job, tape, 1);
    LaneGroup<double> alone(job, {LaneRole{faults, 0, true}});
    alone.live_through(tape, out, true);
    return out.signatures;
}

std::vector<Snapshot> true_signatures(const worksite::Job& job, const Tape& tape) {
    return signatures_of(job, tape, job.faults);
}

}  // namespace emberpath::scoring
