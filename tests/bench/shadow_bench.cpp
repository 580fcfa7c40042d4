// What the shadows of one attempt cost: the good path of a shipped job, one heater at a time, in packs, in packs
// that sleep, and the whole assessment with its explanations. "per lane tick" is CPU time; its ratio to the
// first line is what packs, and then sleep, are worth.

#include <benchmark/benchmark.h>

#include <fstream>
#include <string>
#include <vector>

#include "sim/scenario/scenario.hpp"
#include "sim/scoring/evidence.hpp"
#include "sim/scoring/lane_group.hpp"
#include "sim/scoring/scoring.hpp"

namespace {

using namespace emberpath;
using namespace emberpath::scoring;

constexpr std::uint64_t seed = 1;

/// A job, its good path and what happened on it.
struct Visit {
    worksite::Job job;
    std::vector<TimedAct> acts;
    Tape tape;
    std::size_t ticks = 0;
};

Visit visit(const std::string& name) {
    const std::string root = EMBERPATH_SOURCE_DIR;
    Visit v;
    v.job = scenario::load(root + "/scenarios/jobs/" + name + ".toml").job;
    Recorder recorder;
    worksite::Attempt attempt(v.job, seed, worksite::Mode::assessed, &recorder);
    std::ifstream in(root + "/tests/jobs/paths/" + name + ".good.acts");
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line.front() == '#') continue;
        v.acts.push_back({attempt.tick(), line});
        recorder.mark();
        (void)attempt.perform(line);
    }
    v.tape = recorder.tape();
    v.ticks = v.tape.ticks.size();
    return v;
}

const Visit& juniper() {
    static const Visit one = visit("juniper");
    return one;
}

void report(benchmark::State& state, double lane_ticks) {
    state.counters["ns per lane tick"] =
        benchmark::Counter(lane_ticks * 1.0e-9, benchmark::Counter::kIsIterationInvariantRate |
                                                    benchmark::Counter::kInvert);
}

void one_heater(benchmark::State& state) {
    const Visit& v = juniper();
    for (auto _ : state) {
        Shadows out;
        out.complaints.assign(1, worksite::Complaint::none);
        out.signatures.assign(modes(v.job).size(), Snapshot(1));
        out.observed.assign(v.tape.observations.size(), std::vector<double>(1, 0.0));
        out.passive.assign(v.tape.marks, Snapshot(1));
        LaneGroup<double> alone(v.job, {LaneRole{v.job.faults, 0, true}});
        alone.live_through(v.tape, out, false);
        benchmark::DoNotOptimize(out);
    }
    report(state, static_cast<double>(v.ticks));
}

void all_shadows_awake(benchmark::State& state) {
    const Visit& v = juniper();
    double lanes = 0.0;
    for (auto _ : state) {
        Bank bank(v.job, static_cast<int>(state.range(0)));
        bank.live_until(v.tape, v.tape.events.size());
        lanes = static_cast<double>(bank.shadows().hypotheses.size());
    }
    state.counters["lanes"] = lanes;
    report(state, lanes * static_cast<double>(v.ticks));
}

void shadows_that_sleep(benchmark::State& state) {
    const Visit& v = juniper();
    double lanes = 0.0, share = 0.0;
    for (auto _ : state) {
        Bank bank(v.job, static_cast<int>(state.range(0)));
        bank.live_until(v.tape, v.tape.arrival_event());
        Evidence evidence(bank, v.tape, v.job.customer.complaint);
        std::size_t next = 0;
        for (std::size_t mark = 0; mark < v.tape.marks; ++mark) {
            const bool last = mark + 1 == v.tape.marks;
            evidence.live_until(last ? v.tape.events.size() : v.tape.event_of_mark[mark + 1]);
            const std::size_t end = last ? v.tape.observations.size() : v.tape.marked[mark + 1];
            for (; next < end; ++next)
                if (is_evidence(v.tape.observations[next])) evidence.weigh(next);
            evidence.rest();
        }
        lanes = static_cast<double>(bank.shadows().hypotheses.size());
        share =
            8.0 * static_cast<double>(bank.group_ticks()) / (lanes * static_cast<double>(v.ticks));
    }
    state.counters["share lived"] = share;
    report(state, lanes * static_cast<double>(v.ticks));
}

void whole_assessment(benchmark::State& state) {
    const Visit& v = juniper();
    for (auto _ : state) {
        auto made = assess(v.job, seed, worksite::Mode::assessed, v.acts);
        benchmark::DoNotOptimize(made);
    }
    state.counters["minutes on site"] =
        (static_cast<double>(v.ticks) * 0.1 - v.job.site.arrival_s) / 60.0;
}

BENCHMARK(one_heater)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();
BENCHMARK(all_shadows_awake)
    ->Arg(1)
    ->Arg(2)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime();
BENCHMARK(shadows_that_sleep)
    ->Arg(1)
    ->Arg(2)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime();
BENCHMARK(whole_assessment)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();

}  // namespace
