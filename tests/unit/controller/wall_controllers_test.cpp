// Proves which set value counts when several wall controllers hang on the link cable, when one is not heard.

#include <gtest/gtest.h>

#include "sim/controller/household.hpp"
#include "tests/unit/controller/bench.hpp"

namespace emberpath::controller {
namespace {

constexpr double kitchen_c = 50.0, bathroom_c = 42.0, panel_c = 55.0;

/// A kitchen and a bathroom controller; the panel stands at another value.
Bench two_rooms() {
    Bench bench;
    bench.panel.set_point_k = panel_c + celsius;
    bench.settings.wall_controllers = 2.0;
    bench.panel.wall[0] = {1.0, 1.0, kitchen_c + celsius, 1.0};
    bench.panel.wall[1] = {1.0, 0.0, bathroom_c + celsius, 1.0};
    return bench;
}

double set_c(Bench& bench) {
    bench.tick();
    return bench.now().set_point_k - celsius;
}

TEST(WallControllers, TheLowestSetValueCounts) {
    Bench bench = two_rooms();
    EXPECT_NEAR(set_c(bench), bathroom_c, 1e-9);
    EXPECT_EQ(bench.now().set_by, 2.0);
}

TEST(WallControllers, TheFirstInPriorityCountsWhileItIsHeardAndOn) {
    Bench bench = two_rooms();
    bench.settings.first_priority = 1.0;
    EXPECT_NEAR(set_c(bench), kitchen_c, 1e-9);
    bench.panel.wall[0].switched_on = 0.0;
    EXPECT_NEAR(set_c(bench), bathroom_c, 1e-9);
    bench.panel.wall[0].switched_on = 1.0;
    bench.link_wall_v[0] = 0.1;
    EXPECT_NEAR(set_c(bench), bathroom_c, 1e-9);
    EXPECT_EQ(bench.now().heard[0], 0.0);
}

TEST(WallControllers, PriorityDoesNotDependOnTheOrderOfNumbers) {
    Bench bench = two_rooms();
    bench.settings.first_priority = 2.0;
    bench.panel.wall[0].set_point_k = 38.0 + celsius;
    EXPECT_NEAR(set_c(bench), bathroom_c, 1e-9);
    EXPECT_EQ(bench.now().set_by, 2.0);
}

TEST(WallControllers, ThePanelCountsOnlyWhenNoneIsHeard) {
    Bench bench = two_rooms();
    bench.link_wall_v = {0.1, 0.1, 0.1};
    EXPECT_NEAR(set_c(bench), panel_c, 1e-9);
    EXPECT_EQ(bench.now().set_by, 0.0);
}

TEST(WallControllers, BeyondTheStoredNumberAreNotListenedTo) {
    Bench bench = two_rooms();
    bench.settings.wall_controllers = 1.0;
    EXPECT_NEAR(set_c(bench), kitchen_c, 1e-9);
    EXPECT_EQ(bench.now().heard[1], 0.0);
    EXPECT_GT(bench.now().link_wall_v[1], link_least_v) << "its screen is alive all the same";
}

TEST(WallControllers, OfAKindThatTheHeaterDoesNotAcceptAreNotHeard) {
    Bench bench = two_rooms();
    bench.settings.accepts_simple = 0.0;
    EXPECT_NEAR(set_c(bench), kitchen_c, 1e-9);
    bench.settings.accepts_simple = 1.0;
    bench.settings.accepts_service = 0.0;
    EXPECT_NEAR(set_c(bench), bathroom_c, 1e-9);
}

TEST(WallControllers, AllSwitchedOffSwitchTheHeaterOff) {
    Bench bench = two_rooms();
    bench.flow_lpm = 10.0;
    bench.panel.wall[0].switched_on = 0.0;
    bench.run(20.0);
    EXPECT_EQ(bench.now().phase, Phase::run) << "one is still on";
    bench.panel.wall[1].switched_on = 0.0;
    bench.run(20.0);
    EXPECT_EQ(bench.now().phase, Phase::standby);
    EXPECT_EQ(display_word(bench.now(), bench.panel), "SHUT");
}

TEST(WallControllers, NeverRaiseTheSetValueAboveTheStoredHighest) {
    Bench bench = two_rooms();
    bench.panel.wall[1].set_point_k = 70.0 + celsius;
    bench.panel.wall[0].set_point_k = 75.0 + celsius;
    store(bench.settings, Setting::highest_set_point, 48.0 + celsius);
    EXPECT_NEAR(set_c(bench), 48.0, 1e-9);
}

TEST(LinkCable, IsDeadWithoutMains) {
    Bench bench = two_rooms();
    bench.panel.powered = 0.0;
    bench.tick();
    EXPECT_EQ(bench.now().link_unit_v, 0.0);
    EXPECT_EQ(bench.now().link_wall_v[0], 0.0);
}

TEST(LinkCable, NothingFittedLeavesThePanelInCharge) {
    Bench bench;
    bench.settings.wall_controllers = 3.0;
    bench.panel.set_point_k = panel_c + celsius;
    EXPECT_NEAR(set_c(bench), panel_c, 1e-9);
}

}  // namespace
}  // namespace emberpath::controller
