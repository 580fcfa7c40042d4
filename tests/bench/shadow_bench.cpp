// What the shadows of one attempt cost: the good path of a shipped job, one heater at a time, in packs, in packs
// that sleep, and the whole assessment with its explanations. "per lane tick" is CPU time; its ratio to the
// first line is what packs, and then sleep, are worth. The same for an attempt of 45 minutes on site, and what
// scoring costs while it goes on.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <array>
#include <ctime>
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

double minutes_on_site(const Visit& v, double ticks) {
    return (ticks * 0.1 - v.job.site.arrival_s) / 60.0;
}

/// Plays sentences into a visit.
class Player {
  public:
    explicit Player(Visit& v)
        : v_(v), attempt_(v.job, seed, worksite::Mode::assessed, &recorder_) {}
    void perform(const std::string& line) {
        v_.acts.push_back({attempt_.tick(), line});
        recorder_.mark();
        (void)attempt_.perform(line);
    }
    [[nodiscard]] double minutes() const {
        return minutes_on_site(v_, static_cast<double>(attempt_.tick()));
    }
    void finish() {
        v_.tape = recorder_.tape();
        v_.ticks = v_.tape.ticks.size();
    }

  private:
    Visit& v_;
    Recorder recorder_;
    worksite::Attempt attempt_;
};

/// The good path of a job. With `minutes` the trainee draws hot water, reads and waits over and over before
/// writing the cause down, until so much time has gone by; what is left of the path follows. The shadows live through
/// all of it.
Visit visit(const std::string& name, double minutes = 0.0) {
    constexpr std::array again{"open upstairs shower",     "wait 60 s",
                               "read readout firing rate", "measure temperature at upstairs shower",
                               "close upstairs shower",    "wait 60 s",
                               "look at display",          "read readout exchanger temperature"};
    const std::string root = EMBERPATH_SOURCE_DIR;
    Visit v;
    v.job = scenario::load(root + "/scenarios/jobs/" + name + ".toml").job;
    Player player(v);
    std::ifstream in(root + "/tests/jobs/paths/" + name + ".good.acts");
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line.front() == '#') continue;
        if (line.starts_with("write cause"))
            for (std::size_t i = 0; player.minutes() < minutes; ++i)
                player.perform(again.at(i % again.size()));
        player.perform(line);
    }
    player.finish();
    return v;
}

const Visit& juniper() {
    static const Visit one = visit("juniper");
    return one;
}

const Visit& long_juniper() {
    static const Visit one = visit("juniper", 36.5);
    return one;
}

void report(benchmark::State& state, double lane_ticks) {
    state.counters["ns per lane tick"] =
        benchmark::Counter(lane_ticks * 1.0e-9, benchmark::Counter::kIsIterationInvariantRate |
                                                    benchmark::Counter::kInvert);
}

double cpu_s() {
    std::timespec t{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return static_cast<double>(t.tv_sec) + 1.0e-9 * static_cast<double>(t.tv_nsec);
}

// The scalar path: every sixteenth shadow as a heater of its own, one after the other, through the whole visit.
void shadows_alone(benchmark::State& state, const Visit& v) {
    const std::vector<Hypothesis> all = hypotheses(worksite::traits_of(v.job));
    double lanes = 0.0;
    for (auto _ : state) {
        lanes = 0.0;
        for (std::size_t i = 0; i < all.size(); i += 16, lanes += 1.0) {
            Shadows out;
            out.complaints.assign(1, worksite::Complaint::none);
            out.signatures.assign(modes(v.job).size(), Snapshot(1));
            out.observed.assign(v.tape.observations.size(), std::vector<double>(1, 0.0));
            out.passive.assign(v.tape.marks, Snapshot(1));
            LaneRole role;
            if (all[i].fault.cause != faults::Cause::no_fault) role.faults = {all[i].fault};
            LaneGroup<double> alone(v.job, {role});
            alone.live_through(v.tape, out, false);
            benchmark::DoNotOptimize(out);
        }
    }
    state.counters["lanes"] = lanes;
    state.counters["of"] = static_cast<double>(all.size());
    report(state, lanes * static_cast<double>(v.ticks));
}

void all_shadows_awake(benchmark::State& state, const Visit& v) {
    double lanes = 0.0;
    for (auto _ : state) {
        Bank bank(v.job, static_cast<int>(state.range(0)));
        bank.live_until(v.tape, v.tape.events.size());
        lanes = static_cast<double>(bank.shadows().hypotheses.size());
    }
    state.counters["lanes"] = lanes;
    report(state, lanes * static_cast<double>(v.ticks));
}

/// From arrival on: lives through the tape in pieces of `piece` events at most, weighs each reading, lets sleep.
void live_and_weigh(Bank& bank, const Visit& v, std::size_t piece) {
    Evidence evidence(bank, v.tape, v.job.customer.complaint);
    std::size_t next = 0, at = v.tape.arrival_event();
    for (std::size_t mark = 0; mark < v.tape.marks; ++mark) {
        const bool last = mark + 1 == v.tape.marks;
        const std::size_t until = last ? v.tape.events.size() : v.tape.event_of_mark[mark + 1];
        while (at < until) evidence.live_until(at = std::min(at + piece, until));
        const std::size_t end = last ? v.tape.observations.size() : v.tape.marked[mark + 1];
        for (; next < end; ++next)
            if (is_evidence(v.tape.observations[next])) evidence.weigh(next);
        evidence.rest();
    }
}

void shadows_that_sleep(benchmark::State& state, const Visit& v) {
    double lanes = 0.0, share = 0.0;
    for (auto _ : state) {
        Bank bank(v.job, static_cast<int>(state.range(0)));
        bank.live_until(v.tape, v.tape.arrival_event());
        live_and_weigh(bank, v, v.tape.events.size());
        lanes = static_cast<double>(bank.shadows().hypotheses.size());
        share =
            8.0 * static_cast<double>(bank.group_ticks()) / (lanes * static_cast<double>(v.ticks));
    }
    state.counters["share lived"] = share;
    report(state, lanes * static_cast<double>(v.ticks));
}

// What an attempt costs while it goes on: a second of its time after the other, on one thread, from arrival.
void live_scoring(benchmark::State& state, const Visit& v) {
    Bank at_arrival(v.job, 1);
    at_arrival.live_until(v.tape, v.tape.arrival_event());
    double spent_s = 0.0;
    for (auto _ : state) {
        const double from_s = cpu_s();
        Bank bank(at_arrival);
        live_and_weigh(bank, v, 10);
        spent_s += cpu_s() - from_s;
    }
    const double minutes = minutes_on_site(v, static_cast<double>(v.ticks));
    state.counters["minutes on site"] = minutes;
    state.counters["share of a core"] =
        spent_s / static_cast<double>(state.iterations()) / (minutes * 60.0);
}

void whole_assessment(benchmark::State& state, const Visit& v) {
    const Terms terms{.threads = static_cast<int>(state.range(0))};
    for (auto _ : state) {
        auto made = assess(v.job, seed, worksite::Mode::assessed, v.acts, terms);
        benchmark::DoNotOptimize(made);
    }
    state.counters["minutes on site"] = minutes_on_site(v, static_cast<double>(v.ticks));
}

void measure(const std::string& path, const Visit& (*made)()) {
    const auto add = [&](const char* what, auto run) {
        return benchmark::RegisterBenchmark((path + "/" + what).c_str(),
                                            [=](benchmark::State& state) { run(state, made()); })
            ->Unit(benchmark::kMillisecond)
            ->MeasureProcessCPUTime();
    };
    add("shadows_alone", shadows_alone);
    add("all_shadows_awake", all_shadows_awake)->Arg(1)->Arg(2);
    add("shadows_that_sleep", shadows_that_sleep)->Arg(1)->Arg(2);
    add("live_scoring", live_scoring);
    add("whole_assessment", whole_assessment)->Arg(1)->Arg(2);
}

}  // namespace

int main(int argc, char** argv) {
    measure("good_path", juniper);
    measure("45_minutes", long_juniper);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
