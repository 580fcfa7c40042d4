// Proves: looking for the best reading in the order of what each can tell at most, on several threads, finds
// what asking for every reading finds; and attached instruments follow the same from the small view of a lane
// as from the whole one.

#include <gtest/gtest.h>

#include <array>
#include <set>

#include "sim/plant/gauges.hpp"
#include "sim/scoring/reference_policy.hpp"
#include "sim/worksite/heater_lanes.hpp"
#include "tests/unit/scoring/driven_house.hpp"

namespace emberpath::scoring {
namespace {

using worksite::GasKind;
using worksite::Quantity;

// Every reading in every mode, one after the other; the first of equals.
Option best_of_all(const Situation& at) {
    Option best;
    const std::vector<Mode> all = modes(at.job);
    for (std::size_t q = 0; q < worksite::quantity_count; ++q)
        for (std::size_t m = 0; m < all.size(); ++m) {
            Option option{static_cast<Quantity>(q), m, 0.0, all[m].minutes};
            if (!can_be_proposed(option.quantity, at.job)) continue;
            if (!can_be_taken_in(all[m], option.quantity)) continue;
            option.minutes += at.set_ups.minutes(option.quantity);
            Reading reading = reading_of(option);
            if (m == 0) reading.cycle = at.cycle;
            option.bits = at.posterior.expected_bits(reading, signature(at, m, option.quantity));
            if (option.bits >= 0.01 && option.rate() > best.rate()) best = option;
        }
    return best;
}

TEST(BestReading, IsThatOfAskingForEveryOneOnAnyNumberOfThreads) {
    DrivenHouse house(plain_job(GasKind::natural_gas), 1);
    house.live_until_arrival();
    const Shadows shadows = run_shadows(house.job(), house.tape(), 2);
    Posterior posterior(shadows.hypotheses);
    const SetUps set_ups;
    const std::vector<std::size_t> as_found = stands_as_after(shadows.hypotheses, {});
    const std::size_t sound = sound_house(shadows.hypotheses);
    for (int readings = 0; readings < 6; ++readings) {
        Situation at{house.job(), shadows, posterior, set_ups, nullptr, &as_found};
        const Option expected = best_of_all(at);
        ASSERT_GT(expected.bits, 0.0);
        for (const int threads : {1, 3}) {
            at.threads = threads;
            const Option found = best_option(at);
            EXPECT_EQ(found.quantity, expected.quantity) << readings;
            EXPECT_EQ(found.mode, expected.mode) << readings;
            EXPECT_EQ(found.bits, expected.bits) << readings;
            EXPECT_EQ(found.minutes, expected.minutes) << readings;
        }
        Reading taken = reading_of(expected);  // as the sound house would show it
        const auto predicted = signature(at, expected.mode, expected.quantity);
        taken.value = predicted[sound];
        posterior.add(taken, predicted);
    }
}

// Over every reading of a house, with the belief of somebody who has taken none and some.
TEST(BestReading, TellsNoMoreThanItsCloserBound) {
    DrivenHouse house(plain_job(GasKind::propane_cylinder), 1);
    house.live_until_arrival();
    const Shadows shadows = run_shadows(house.job(), house.tape(), 2);
    Posterior posterior(shadows.hypotheses);
    const std::size_t sound = sound_house(shadows.hypotheses);
    double closer = 0.0, first = 0.0;
    for (const Quantity next : {Quantity::display_word, Quantity::gas_inlet_pressure,
                                Quantity::readout_event, Quantity::flue_temperature}) {
        for (std::size_t m = 0; m < shadows.signatures.size(); ++m)
            for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
                const Reading reading = reading_of({static_cast<Quantity>(q), m, 0.0, 1.0});
                const auto predicted = shadows.signatures[m].of(reading.quantity);
                const double most = posterior.closer_most_bits(reading, predicted);
                EXPECT_GE(most, posterior.expected_bits(reading, predicted)) << q << " " << m;
                closer += most;
                first += posterior.most_bits(predicted);
            }
        Reading taken = reading_of({next, 2, 0.0, 1.0});
        const auto predicted = shadows.signatures[2].of(next);
        taken.value = predicted[sound];
        posterior.add(taken, predicted);
    }
    EXPECT_LT(closer, 0.8 * first);
}

void expect_same(const worksite::Gauge& small, const worksite::Gauge& whole, int tick) {
    EXPECT_EQ(small.shown, whole.shown) << tick;
    EXPECT_EQ(small.highest, whole.highest) << tick;
    EXPECT_EQ(small.lowest, whole.lowest) << tick;
    EXPECT_EQ(small.primed, whole.primed) << tick;
}

TEST(AttachedInstruments, FollowTheSameFromTheSmallViewAsFromTheWhole) {
    DrivenHouse house(plain_job(GasKind::propane_cylinder), 1);
    house.live_until_arrival();
    worksite::Heater<double> heater;
    heater.install(0, worksite::installation_of(house.job(), {}, 0.0));
    worksite::ToolSetup tools;
    tools.watching = tools.listening = tools.analyser_sampling = tools.meter_in_flame_lead = true;
    worksite::Senses small, whole;
    int tick = 0, burning = 0;
    for (const worksite::TickInputs& inputs : house.tape().ticks) {
        if (tick == 0) plant::settle_cold(heater.plant, inputs.surroundings);
        heater.tick(inputs);
        constexpr std::array points{Quantity::gas_inlet_pressure, Quantity::manifold_pressure,
                                    Quantity::regulator_pressure};
        tools.manometer = points[static_cast<std::size_t>(tick / 200) % points.size()];
        worksite::HeaterView gauges{};
        plant::take_lane(plant::gauges(heater.plant, inputs.surroundings), 0, gauges.plant);
        small.step(gauges, tools);
        whole.step(worksite::view(heater, 0, inputs), tools);
        burning += whole.burning_s > 0.0 ? 1 : 0;
        if (++tick % 100 != 0) continue;
        for (const auto gauge :
             {&worksite::Senses::manometer, &worksite::Senses::flame_current, &worksite::Senses::o2,
              &worksite::Senses::co2, &worksite::Senses::co, &worksite::Senses::flue_temperature,
              &worksite::Senses::air_ratio, &worksite::Senses::flame_unrest})
            expect_same(small.*gauge, whole.*gauge, tick);
        EXPECT_EQ(small.spark_seen, whole.spark_seen);
        EXPECT_EQ(small.flame_seen, whole.flame_seen);
        EXPECT_EQ(small.loudest_fan_rev_per_s, whole.loudest_fan_rev_per_s);
    }
    EXPECT_GT(burning, 1000);  // two draws of four minutes in all
}

// Every lane with another fault: each shows what it shows to whoever looks at it alone.
TEST(AttachedInstruments, MeetInEveryLaneOfAPackWhatThatLaneShows) {
    using Pack = math::Pack<8, math::Baseline>;
    DrivenHouse house(plain_job(GasKind::propane_cylinder), 1);
    house.live_until_arrival();
    const auto all = hypotheses(worksite::traits_of(house.job()));
    worksite::Heater<Pack> heater;
    for (std::size_t i = 0; i < 8; ++i) {
        const std::array one{all[i * all.size() / 8].fault};
        heater.install(i, worksite::installation_of(house.job(), one, 0.0));
    }
    int tick = 0;
    std::set<double> oxygen;
    for (const worksite::TickInputs& inputs : house.tape().ticks) {
        if (tick == 0) plant::settle_cold(heater.plant, inputs.surroundings);
        heater.tick(inputs);
        if (++tick % 50 != 0) continue;
        const auto gauges = plant::gauges(heater.plant, inputs.surroundings);
        for (std::size_t i = 0; i < 8; ++i) {
            plant::Observables small{};
            plant::take_lane(gauges, i, small);
            const auto whole = worksite::view(heater, i, inputs).plant;
            for (const auto seen :
                 {&plant::Observables::gas_inlet_pa, &plant::Observables::regulator_outlet_pa,
                  &plant::Observables::manifold_pa, &plant::Observables::o2_share,
                  &plant::Observables::co2_share, &plant::Observables::co_share,
                  &plant::Observables::flue_k, &plant::Observables::excess_air_ratio,
                  &plant::Observables::flame_lit, &plant::Observables::spark_heard,
                  &plant::Observables::fan_rev_per_s, &plant::Observables::ionisation_a})
                EXPECT_EQ(small.*seen, whole.*seen) << "tick " << tick << ", lane " << i;
            oxygen.insert(small.o2_share);
        }
    }
    EXPECT_GT(oxygen.size(), 100U);  // they do burn, and differently
}

}  // namespace
}  // namespace emberpath::scoring
