// Proves that nothing hands and causes can do to a house makes the heater's state something that is no number, a
// negative mass or flow, or a quantity that cannot be: whatever leaves its range of validity, plant::beyond_limits
// says so; and where the step holds a mass at zero, it held back no more than a trace.
//
// EMBERPATH_FUZZ_ACTS=1000000 does a million acts, EMBERPATH_FUZZ_SEED takes other ones.

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <map>

#include "sim/plant/limits.hpp"
#include "sim/scenario/scenario.hpp"
#include "tests/fuzz/random_house.hpp"

namespace emberpath::fuzz {
namespace {

std::uint64_t number_of(const char* variable, std::uint64_t otherwise) {
    const char* text = std::getenv(variable);
    return text == nullptr ? otherwise : std::strtoull(text, nullptr, 10);
}

std::vector<worksite::Job> shipped_houses() {
    std::vector<worksite::Job> jobs;
    const std::filesystem::path folder = EMBERPATH_SOURCE_DIR "/scenarios/jobs";
    for (const auto& file : scenario::list_jobs(folder)) jobs.push_back(scenario::load(file).job);
    return jobs;
}

/// Whatever else is wrong: no mass, pressure, flow or share below nothing, nothing colder than ice can be.
/// The table of plant::limits is not asked; empty when all is well.
std::string impossible(const plant::State<double>& x) {
    using namespace plant;
    constexpr double rounding = 1e-9;
    for (std::size_t i = 0; i < state_count; ++i)
        if (!std::isfinite(x[i])) return "state " + std::to_string(i) + " is no number";
    for (const std::size_t i :
         {cylinder_liquid_kg, reserve_liquid_kg, water_pressure, casing_water, unburnt_gas,
          room_oxygen_used, room_co2, room_co, fan_speed, flow_reading, ionisation})
        if (x[i] < -rounding) return "state " + std::to_string(i) + " is " + std::to_string(x[i]);
    for (const std::size_t i :
         {std::size_t{water_0}, std::size_t{water_0} + 7, std::size_t{mixing_pocket},
          std::size_t{pipe_0}, std::size_t{metal_0}, std::size_t{casing_air}})
        if (x[i] < 200.0)
            return "state " + std::to_string(i) + " is " + std::to_string(x[i]) + " K";
    return {};
}

/// Kilograms that holding at zero has taken back in this tick, from the rate before it.
double held_back(const plant::Plant<double>& before, const plant::State<double>& after,
                 const plant::Surroundings& at, std::size_t i) {
    if (after[i] > 0.0 || before.state[i] <= 0.0) return 0.0;
    const double rate = plant::derivative(before, before.state, at)[i];
    return std::max(0.0, -rate * signals::tick_s - before.state[i]);
}

struct Tally {
    std::uint64_t acts = 0, ticks = 0, houses = 0, burning = 0;
    double most_held_back_kg = 0.0;
    std::map<std::string, int> stopped;  // by what left its range
};

/// One tick with all checks; false when the house has to be left.
bool live(RandomHouse& house, Tally& tally) {
    const plant::Plant<double> before = house.heater().plant;
    house.tick();
    ++tally.ticks;
    const plant::Plant<double>& now = house.heater().plant;
    const auto& at = house.inputs().surroundings;
    tally.burning += now.flame.lit[0] > 0.5 ? 1 : 0;
    for (const std::size_t i : {plant::cylinder_liquid_kg, plant::reserve_liquid_kg})
        tally.most_held_back_kg =
            std::max(tally.most_held_back_kg, held_back(before, now.state, at, i));
    const auto beyond = plant::beyond_limits(now, at);
    if (beyond && ++tally.stopped[std::string(beyond->name)] == 1)
        std::cout << "first " << beyond->name << " at " << beyond->value << " " << beyond->unit
                  << ": " << house.describe() << "\n";
    if (beyond) return false;
    const std::string wrong = impossible(now.state);
    if (!wrong.empty()) ADD_FAILURE() << wrong << " and no limit says so: " << house.describe();
    return wrong.empty();
}

Tally play(std::uint64_t acts, std::uint64_t seed) {
    constexpr std::uint64_t acts_in_a_house = 250;
    const std::vector<worksite::Job> jobs = shipped_houses();
    math::Random random(seed, "heater fuzz");
    Tally tally;
    while (tally.acts < acts && !testing::Test::HasFailure()) {
        RandomHouse house(jobs[tally.houses % jobs.size()], random.next());
        ++tally.houses;
        bool goes_on = true;
        for (std::uint64_t i = 0; i < acts_in_a_house && tally.acts < acts && goes_on; ++i) {
            ++tally.acts;
            for (auto left = house.act(); left > 0 && goes_on; --left) goes_on = live(house, tally);
        }
    }
    return tally;
}

TEST(HeaterFuzz, NothingLeavesItsRangeUnsaid) {
    const auto acts = number_of("EMBERPATH_FUZZ_ACTS", 20000);
    const Tally tally = play(acts, number_of("EMBERPATH_FUZZ_SEED", 1));
    std::cout << tally.acts << " acts in " << tally.houses << " houses, " << tally.ticks
              << " ticks, " << tally.burning << " of them burning; held back at most "
              << tally.most_held_back_kg << " kg\n";
    for (const auto& [name, count] : tally.stopped)
        std::cout << "stopped " << count << " times: " << name << "\n";
    EXPECT_EQ(tally.acts, acts);
    EXPECT_GT(tally.burning, tally.ticks / 20) << "heaters that never burn prove little";
    EXPECT_LT(tally.most_held_back_kg, 1e-6);
}

}  // namespace
}  // namespace emberpath::fuzz
