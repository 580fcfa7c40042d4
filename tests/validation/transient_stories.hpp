#pragma once
/// What happens to a running heater, and what must follow: which readings rise, fall or stay, how far the
/// outlet strays, which protections respond. Signs and responses follow from the physics and from what the controller
/// is for; bands of the outlet hold what was measured, where no published value gives them.

#include <cmath>
#include <initializer_list>
#include <string_view>
#include <vector>

#include "sim/controller/controller.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::validation {

/// What is read before and after.
enum class Reading {
    working_pressure,
    manifold_pressure,
    gas_rate,
    water_flow,
    outlet,
    exchanger_outlet,
    hottest_metal,
    flue,
    air,
    fan_speed,
    oxygen,
    carbon_dioxide,
    carbon_monoxide,
    flame_current,
    correction,
};
inline constexpr std::size_t reading_count = 15;

struct ReadingInfo {
    std::string_view name, unit;
    double per_unit, offset;  // trade unit = SI x per_unit - offset
    double unchanged;         // a change within this [trade unit] counts as none
    int decimals;
};
[[nodiscard]] const ReadingInfo& info(Reading reading);
[[nodiscard]] double value_of(Reading reading, const worksite::HeaterView& view);  // SI

enum class Moves { rises, falls, stays };
struct Expected {
    Reading reading;
    Moves moves;
};

/// How far above and below the set point [K] the outlet may go, each between two bounds.
struct Straying {
    double most_low = -200.0, most_high = 200.0;
    double least_low = -200.0, least_high = 200.0;
};

struct Story {
    std::string_view name;  // of the event, as the report prints it
    bool propane = false;
    double set_c = 50.0;
    double asked_lpm = 10.0;  // before; 0: the heater rests, cold
    void (*happens)(laws::House&) = nullptr;
    void (*each_tick)(laws::House&, double time_s) = nullptr;  // since it happened
    double watched_s = 60.0;
    std::vector<Expected> expected{};
    Straying straying{};
    std::vector<controller::Event> responses{};  // exactly these, in any order
    bool locks_out = false;
};

[[nodiscard]] inline plant::PlantParameters& parts(laws::House& house) {
    return house.heater.plant.parameters;
}

/// The stories of several lists, in their order.
[[nodiscard]] inline std::vector<Story> joined(std::initializer_list<std::vector<Story>> lists) {
    std::vector<Story> all;
    for (const auto& list : lists) all.insert(all.end(), list.begin(), list.end());
    return all;
}

/// A gust at the terminal: rises for a second and falls for a second, in every eight.
inline void gust(laws::House& house, double time_s) {
    const double phase = time_s - 8.0 * std::floor(time_s / 8.0);
    house.inputs.surroundings.gust_shape = phase < 1.0 ? phase : phase < 2.0 ? 2.0 - phase : 0.0;
}

[[nodiscard]] std::vector<Story> use_stories();     // taps, set point, services
[[nodiscard]] std::vector<Story> fault_stories();   // something breaks while it runs
[[nodiscard]] std::vector<Story> wear_stories();    // more of both, from the first draw on
[[nodiscard]] std::vector<Story> silent_stories();  // something is wrong and nothing responds

}  // namespace emberpath::validation
