// Proves the time stepping: RK4 of order four on an open-loop transient, and that two substeps a tick leave
// less than 5 mK of error in the closed loop.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "sim/plant/step.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

using plant::State;

/// Eight seconds in which the flow falls from 10 to 7 L/min, the valve rises by 15 % and the fan by 3 % duty;
/// commands and flame flags are held, so that nothing but the stepping is at work.
State<double> open_loop_transient(House house, int steps_per_tick) {
    house.open_taps(7.0);
    auto& plant = house.heater.plant;
    plant.commands.manifold_pressure_pa *= 1.15;
    plant.commands.fan_duty += 0.03;
    for (int tick = 0; tick < 80; ++tick)
        plant::step_states(plant, house.inputs.surroundings, steps_per_tick);
    return plant.state;
}

/// Largest difference among the 25 water, metal, pocket and pipe temperatures [K].
double distance_k(const State<double>& a, const State<double>& b) {
    double largest = 0.0;
    for (std::size_t i = plant::water_0; i < plant::fan_speed; ++i)
        largest = std::max(largest, std::abs(a[i] - b[i]));
    return largest;
}

TEST(RungeKutta, IsOfOrderFourBelowFiftyMilliseconds) {
    const House start = warmed_up({"shower", 50.0, 10.0});
    const State<double> exact = open_loop_transient(start, 128);
    const double moved = distance_k(exact, start.heater.plant.state);
    ASSERT_GT(moved, 5.0) << "a transient worth the name";
    double last = distance_k(open_loop_transient(start, 2), exact);
    EXPECT_LT(last, 1e-5) << "error of the 50 ms step";
    for (const int steps : {4, 8}) {
        const double now = distance_k(open_loop_transient(start, steps), exact);
        EXPECT_NEAR(std::log2(last / now), 4.0, 0.4) << signals::tick_s / steps << " s";
        last = now;
    }
}

/// One tick of the closed loop with another number of RK4 steps: what Heater::tick does, spelt out.
void tick_with(House& house, int steps) {
    auto& heater = house.heater;
    const auto& at = house.inputs.surroundings;
    const auto sensors = plant::sense(heater.plant, at);
    const auto commands =
        controller::control(heater.controller, sensors, house.inputs.panel, heater.settings);
    plant::hold_commands(heater.plant, at, commands);
    plant::flame_logic(heater.plant, at);
    plant::step_states(heater.plant, at, steps);
}

/// Outlet temperature at every tick of five minutes with eight tap events.
std::vector<double> outlet_over_eight_taps(int steps) {
    constexpr double asked_lpm[] = {10.0, 6.0, 16.0, 3.5, 12.0, 0.0, 8.0, 5.0};
    House house(false, 50.0);
    std::vector<double> outlet;
    for (int tick = 0; tick < 3000; ++tick) {
        if (tick % 375 == 20) house.open_taps(asked_lpm[tick / 375]);
        tick_with(house, steps);
        outlet.push_back(house.heater.plant.state[plant::mixing_pocket]);
    }
    return outlet;
}

TEST(StepHalving, TwoSubstepsStayWithinFiveMillikelvinInTheClosedLoop) {
    const std::vector<double> product = outlet_over_eight_taps(plant::substeps);
    const std::vector<double> halved = outlet_over_eight_taps(2 * plant::substeps);
    const std::vector<double> fine = outlet_over_eight_taps(32);
    double to_halved = 0.0, to_fine = 0.0;
    for (std::size_t i = 0; i < product.size(); ++i) {
        to_halved = std::max(to_halved, std::abs(product[i] - halved[i]));
        to_fine = std::max(to_fine, std::abs(product[i] - fine[i]));
    }
    RecordProperty("largest_difference_mk", std::to_string(1e3 * to_fine));
    EXPECT_LT(to_halved, 5e-3);
    EXPECT_LT(to_fine, 5e-3);
    EXPECT_GT(*std::max_element(fine.begin(), fine.end()), 45.0 + celsius);
}

TEST(StepHalving, SpeltOutTickIsTheTickOfTheHeater) {
    House spelt, ticked;
    for (House* house : {&spelt, &ticked}) house->open_taps(10.0);
    for (int i = 0; i < 300; ++i) {
        tick_with(spelt, plant::substeps);
        ticked.run(signals::tick_s);
        ASSERT_EQ(spelt.heater.hash(0), ticked.heater.hash(0)) << i;
    }
}

}  // namespace
}  // namespace emberpath::laws
