// Proves the event history: twelve lines newest first, repeats counted, times by the controller's own clock,
// kept without power; and the count of times the mains came back.

#include "sim/controller/history.hpp"

#include <gtest/gtest.h>

#include "tests/unit/controller/bench.hpp"

namespace emberpath::controller {
namespace {

void lock_out_by(Bench& bench, std::optional<double> Bench::*sensor) {
    bench.*sensor = 5.0e6;
    bench.run(1.0);
    (bench.*sensor).reset();
    bench.press_reset();
    bench.run(1.0);
}

TEST(EventHistory, IsEmptyOnANewHeater) {
    Bench bench;
    bench.run(10.0);
    for (const HistoryLine& line : bench.now().history) {
        EXPECT_EQ(line.event, Event::none);
        EXPECT_EQ(line.count, 0.0);
    }
}

TEST(EventHistory, ListsNewestFirstWithItsAge) {
    Bench bench;
    lock_out_by(bench, &Bench::inlet_ohm);
    bench.run(100.0);
    lock_out_by(bench, &Bench::outlet_ohm);
    const auto lines = bench.now().history;
    EXPECT_EQ(lines[0].event, Event::outlet_sensor_out_of_range);
    EXPECT_NEAR(lines[0].age_s, 2.0, 0.15);
    EXPECT_EQ(lines[1].event, Event::inlet_sensor_out_of_range);
    EXPECT_NEAR(lines[1].age_s, 104.0, 0.25);
    EXPECT_EQ(lines[2].event, Event::none);
}

TEST(EventHistory, CountsRepeatsOnOneLine) {
    Bench bench;
    for (int i = 0; i < 5; ++i) lock_out_by(bench, &Bench::inlet_ohm);
    EXPECT_EQ(bench.now().history[0].count, 5.0);
    EXPECT_EQ(bench.now().history[1].event, Event::none);
}

TEST(EventHistory, ForgetsTheOldestAfterTwelveLines) {
    Bench bench;
    lock_out_by(bench, &Bench::exchanger_ohm);
    for (int i = 0; i < 6; ++i) {
        lock_out_by(bench, &Bench::inlet_ohm);
        lock_out_by(bench, &Bench::outlet_ohm);
    }
    for (const HistoryLine& line : bench.now().history) {
        EXPECT_NE(line.event, Event::exchanger_sensor_out_of_range);
        EXPECT_NE(line.event, Event::none);
    }
}

TEST(EventHistory, HoldsRetriesThatNeverLockedOut) {
    Bench bench;
    bench.flow_lpm = 10.0;
    bench.run(30.0);
    bench.ionisation_a = 0.0;
    bench.run(0.3);
    bench.ionisation_a.reset();
    bench.run(100.0);
    EXPECT_EQ(bench.now().phase, Phase::run);
    EXPECT_EQ(bench.now().history[0].event, Event::flame_lost);
}

TEST(EventHistory, IsKeptWithoutPowerAndItsClockWaits) {
    Bench bench;
    lock_out_by(bench, &Bench::inlet_ohm);
    const double age_s = bench.now().history[0].age_s;
    bench.panel.powered = 0.0;
    bench.run(1000.0);
    EXPECT_EQ(bench.now().history[0].event, Event::inlet_sensor_out_of_range);
    EXPECT_NEAR(bench.now().history[0].age_s, age_s, 1e-9);
    bench.panel.powered = 1.0;
    bench.run(10.0);
    EXPECT_NEAR(bench.now().history[0].age_s, age_s + 10.0, 1e-6);
    EXPECT_EQ(bench.now().latest_event, Event::none) << "while the latest since power-up is gone";
    EXPECT_EQ(bench.now().power_ups, 1.0);
}

}  // namespace
}  // namespace emberpath::controller
