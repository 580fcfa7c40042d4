// Times the tick of one heater and of packs, and sixty-four shadows over half an hour.
//
// Every run lives through the ten-minute story of the determinism tests, so that lit, purging, starting and
// resting heaters are all in the mean.

#include <benchmark/benchmark.h>

#include <thread>
#include <vector>

#include "tests/laws/story.hpp"

namespace {

using namespace emberpath;
using BaselinePack = math::Pack<8, math::Baseline>;
using WidePack = math::Pack<8, math::Wide>;

const std::vector<worksite::TickInputs>& story() {
    static const std::vector<worksite::TickInputs> inputs = [] {
        std::vector<worksite::TickInputs> all;
        for (int tick = 0; tick < laws::ticks_of(laws::Story::natural_gas); ++tick)
            all.push_back(laws::inputs_of(laws::Story::natural_gas, tick));
        return all;
    }();
    return inputs;
}

template <class Real>
worksite::Heater<Real> cold_heater(std::size_t shift = 0) {
    const laws::Parameters8 lanes = laws::natural_gas_lanes();
    worksite::Heater<Real> heater;
    for (std::size_t i = 0; i < math::lanes<Real>; ++i)
        plant::set_parameters(heater.plant, i, lanes[(i + shift) % laws::story_lanes]);
    plant::settle_cold(heater.plant, story()[0].surroundings);
    return heater;
}

template <class Real>
void ticks(benchmark::State& state) {
    if (std::is_same_v<Real, WidePack> && !worksite::wide_is_supported())
        return state.SkipWithError("no wide instructions here");
    const auto& inputs = story();
    for (auto _ : state) {
        auto heater = cold_heater<Real>();
        for (const auto& in : inputs) heater.tick(in);
        benchmark::DoNotOptimize(heater);
    }
    using benchmark::Counter;
    const double lane_ticks = static_cast<double>(inputs.size() * math::lanes<Real>);
    state.counters["s_per_lane_tick"] =
        Counter(lane_ticks, Counter::kIsIterationInvariantRate | Counter::kInvert);
    state.counters["x_real_time"] = Counter(static_cast<double>(inputs.size()) * signals::tick_s,
                                            Counter::kIsIterationInvariantRate);
}
BENCHMARK(ticks<double>)->Unit(benchmark::kMillisecond);
BENCHMARK(ticks<BaselinePack>)->Unit(benchmark::kMillisecond);
BENCHMARK(ticks<WidePack>)->Unit(benchmark::kMillisecond);

/// The derivative alone, as every RK4 stage computes it.
template <class Real>
void right_hand_side(benchmark::State& state) {
    if (std::is_same_v<Real, WidePack> && !worksite::wide_is_supported())
        return state.SkipWithError("no wide instructions here");
    auto heater = cold_heater<Real>();
    const auto& inputs = story();
    for (std::size_t i = 0; i < 600; ++i) heater.tick(inputs[i]);
    for (auto _ : state)
        benchmark::DoNotOptimize(
            plant::derivative(heater.plant, heater.plant.state, inputs[600].surroundings));
    using benchmark::Counter;
    state.counters["s_per_lane"] = Counter(static_cast<double>(math::lanes<Real>),
                                           Counter::kIsIterationInvariantRate | Counter::kInvert);
}
BENCHMARK(right_hand_side<double>);
BENCHMARK(right_hand_side<BaselinePack>);
BENCHMARK(right_hand_side<WidePack>);

/// Groups of eight shadows through half an hour: the story three times over.
template <class Pack>
void live_half_an_hour(std::size_t first_group, std::size_t step) {
    constexpr std::size_t groups = 8;
    for (std::size_t group = first_group; group < groups; group += step) {
        auto heater = cold_heater<Pack>(group);
        for (int third = 0; third < 3; ++third)
            for (const auto& in : story()) heater.tick(in);
        benchmark::DoNotOptimize(heater);
    }
}

template <class Pack>
void sixty_four_shadows_half_an_hour(benchmark::State& state) {
    if (std::is_same_v<Pack, WidePack> && !worksite::wide_is_supported())
        return state.SkipWithError("no wide instructions here");
    const auto threads = static_cast<std::size_t>(state.range(0));
    (void)story();
    for (auto _ : state) {
        std::vector<std::thread> crew;
        for (std::size_t i = 1; i < threads; ++i)
            crew.emplace_back(live_half_an_hour<Pack>, i, threads);
        live_half_an_hour<Pack>(0, threads);
        for (std::thread& one : crew) one.join();
    }
}
BENCHMARK(sixty_four_shadows_half_an_hour<BaselinePack>)
    ->Arg(1)
    ->Arg(2)
    ->ArgName("threads")
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK(sixty_four_shadows_half_an_hour<WidePack>)
    ->Arg(1)
    ->Arg(2)
    ->ArgName("threads")
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

}  // namespace
