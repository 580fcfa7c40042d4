// Proves that what is worked out once a tick (sim/plant/held.hpp) is what every stage would have found: the same
// derivative, bit for bit, in lit, purging, starting, resting and locked-out heaters, and at states a stage away.

#include <gtest/gtest.h>

#include "sim/plant/algebra.hpp"
#include "tests/laws/story.hpp"

namespace emberpath::laws {
namespace {

constexpr double step_s = 0.05;

/// How often something was held and how often it was not.
struct Tally {
    int water = 0, dark = 0, ticks = 0;
};

void compare(const plant::Plant<double>& p, const plant::State<double>& x,
             const plant::Surroundings& at, const plant::Held<double>& once) {
    plant::State<double> with, without;
    plant::state_derivative(p, x, at, once, with);
    plant::state_derivative(p, x, at, plant::Held<double>{}, without);
    for (std::size_t i = 0; i < plant::state_count; ++i)
        ASSERT_EQ(with[i], without[i]) << "state " << i << " at " << at.time_s << " s";
}

Tally follow(Story story, std::size_t lane) {
    worksite::Heater<double> heater;
    heater.install(0, {lanes_of(story)[lane], settings_of_lanes(story)[lane]});
    plant::settle_cold(heater.plant, inputs_of(story, 0).surroundings);
    Tally tally;
    for (int tick = 0; tick < ticks_of(story); ++tick) {
        const worksite::TickInputs inputs = inputs_of(story, tick);
        heater.tick(inputs);
        const plant::Plant<double>& p = heater.plant;
        const plant::Surroundings& at = inputs.surroundings;
        const plant::Held<double> once = plant::held(p, at);
        compare(p, p.state, at, once);
        plant::State<double> later, slope;
        plant::state_derivative(p, p.state, at, once, slope);
        for (std::size_t i = 0; i < plant::state_count; ++i)
            later[i] = p.state[i] + step_s * slope[i];
        compare(p, later, at, once);
        tally.water += once.water ? 1 : 0;
        tally.dark += once.dark ? 1 : 0;
        ++tally.ticks;
    }
    return tally;
}

TEST(Held, IsWhatEveryStageWouldFindToTheBit) {
    for (const Story story : stories) {
        Tally tally = follow(story, 0);
        if (HasFatalFailure()) return;
        // A law over ticks in which nothing was ever held, or always, would prove nothing.
        EXPECT_GT(tally.dark, 0) << title(story);
        EXPECT_LT(tally.dark, tally.ticks) << title(story);
        EXPECT_GT(tally.water, 0) << title(story);
        EXPECT_LT(tally.water, tally.ticks) << title(story);
        (void)follow(story, 5);
        if (HasFatalFailure()) return;
    }
}

TEST(Held, ValvesThatMoveLetNothingBeHeld) {
    worksite::Heater<double> heater;
    heater.install(0, {lanes_of(stories[0])[0], settings_of_lanes(stories[0])[0]});
    plant::settle_cold(heater.plant, inputs_of(stories[0], 0).surroundings);
    plant::Plant<double>& p = heater.plant;
    p.commands.water_valve = 1.0;
    p.commands.bypass = 0.0;
    EXPECT_TRUE(plant::held(p, {}).water);
    p.commands.water_valve = 0.5;
    EXPECT_FALSE(plant::held(p, {}).water);
    p.commands.water_valve = 1.0;
    p.commands.bypass = 0.3;
    EXPECT_FALSE(plant::held(p, {}).water);
}

TEST(Held, AValveArrivesAndThenStandsForEveryTick) {
    worksite::Heater<double> heater;
    heater.install(0, {lanes_of(stories[0])[0], settings_of_lanes(stories[0])[0]});
    plant::settle_cold(heater.plant, inputs_of(stories[0], 0).surroundings);
    plant::Plant<double>& p = heater.plant;
    signals::ActuatorCommands<double> commands = p.commands;
    for (const double target : {0.3, 1.0, 0.0, 0.1}) {
        commands.water_valve = 1.0 - target;
        commands.bypass = target;
        for (int tick = 0; tick < 200; ++tick) plant::advance(p, {}, commands);
        EXPECT_NEAR(p.state[plant::bypass_valve], target, plant::has_arrived);
        EXPECT_NEAR(p.state[plant::water_valve], 1.0 - target, plant::has_arrived);
        const double there = p.state[plant::water_valve];
        EXPECT_TRUE(plant::held(p, {}).water) << target;
        plant::advance(p, {}, commands);
        EXPECT_EQ(p.state[plant::water_valve], there);
    }
}

}  // namespace
}  // namespace emberpath::laws
