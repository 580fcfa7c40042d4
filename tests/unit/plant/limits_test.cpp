// Proves that every state has one range of validity, that leaving any of them is reported by name and value, and
// that a running heater is inside them all.
#include "sim/plant/limits.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "tests/unit/plant/open_loop.hpp"

namespace emberpath::plant {
namespace {

TEST(Limits, ARestingAndABurningHeaterAreInside) {
    OpenLoop heater;
    EXPECT_FALSE(beyond_limits(heater.plant, heater.at));
    heater.light();
    EXPECT_FALSE(beyond_limits(heater.plant, heater.at));
}

TEST(Limits, EachStateIsReportedAboveBelowAndWhenItIsNoNumber) {
    const OpenLoop sound;
    for (const ValidRange& range : valid_ranges())
        for (std::size_t i = range.first; i <= range.last; ++i)
            for (const double value : {range.low - 1e-3 * std::abs(range.high), 1.01 * range.high,
                                       std::numeric_limits<double>::quiet_NaN()}) {
                State<double> state = sound.plant.state;
                state[i] = value;
                const auto beyond = beyond_limits(state);
                ASSERT_TRUE(beyond) << range.name;
                EXPECT_EQ(beyond->name, range.name);
                EXPECT_TRUE(beyond->value == value || std::isnan(value));
            }
}

TEST(Limits, WaterThatWouldBoilIsNamedFirst) {
    OpenLoop heater;
    heater.plant.state[water_0 + 7] = 430.0;
    const auto beyond = beyond_limits(heater.plant, heater.at);
    ASSERT_TRUE(beyond);
    EXPECT_EQ(beyond->name, "water in the exchanger");
    EXPECT_EQ(beyond->unit, "K");
    EXPECT_EQ(beyond->value, 430.0);
}

TEST(Limits, WaterBoilsEarlierAtLessPressure) {
    OpenLoop heater;
    heater.plant.state[water_0 + 7] = 390.0;  // boils at 0.18 MPa absolute
    heater.plant.state[water_pressure] = 100.0e3;
    EXPECT_FALSE(beyond_limits(heater.plant, heater.at));
    heater.plant.state[water_pressure] = 50.0e3;
    const auto beyond = beyond_limits(heater.plant, heater.at);
    ASSERT_TRUE(beyond);
    EXPECT_EQ(beyond->name, "water in the exchanger");
    EXPECT_NEAR(beyond->high, 384.8, 0.3) << "0.15 MPa: 111.6 degC in steam tables";
}

TEST(Limits, FlowsAndIntakeAirAreWatchedToo) {
    OpenLoop heater;
    heater.light();
    heater.plant.parameters.intake_from_room = 1.0;
    heater.plant.state[room_oxygen_used] = 0.149;
    const auto beyond = beyond_limits(heater.plant, heater.at);
    ASSERT_TRUE(beyond);
    EXPECT_EQ(beyond->name, "oxygen of the burner's air over that outdoors");
}

}  // namespace
}  // namespace emberpath::plant
