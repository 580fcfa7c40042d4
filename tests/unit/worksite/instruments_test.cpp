// Proves that instruments read what is there when used rightly, and the physically wrong thing when not.

#include <gtest/gtest.h>

#include <cmath>

#include "tests/unit/worksite/house.hpp"
#include "tests/unit/worksite/twin.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;
using Script = std::vector<std::string>;

double last_value(const Attempt& attempt, std::size_t i = 0) {
    return attempt.log().back().observations.at(i).value;
}

const Script manometer_on{"shut gas at heater", "open test point inlet", "zero manometer",
                          "attach manometer to inlet", "open gas at heater"};
const Script dead{"switch power off", "unplug heater", "lock off plug", "take cover off",
                  "prove tester",     "test for dead", "prove tester",  "put on gloves"};

TEST(Manometer, ReadsLockUpAtRestAndWorkingPressureUnderLoad) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, manometer_on + Script{"read manometer"}), "");
    EXPECT_NEAR(last_value(attempt), 2350.0, 80.0);
    ASSERT_EQ(play(attempt, {"open bath tap", "wait 30 s", "read manometer"}), "");
    EXPECT_NEAR(last_value(attempt), 1820.0, 80.0);
    ASSERT_EQ(play(attempt, {"read manometer highest"}), "");
    EXPECT_NEAR(last_value(attempt), 2350.0, 80.0);
    ASSERT_EQ(play(attempt, {"clear hold", "wait 5 s", "read manometer highest"}), "");
    EXPECT_NEAR(last_value(attempt), 1820.0, 80.0);
}

TEST(Manometer, ReadsNothingAtAClosedTestPoint) {
    Twin twin(test_job());
    Attempt attempt(test_job(), 7, Mode::assessed, &twin);
    ASSERT_EQ(play(attempt, {"zero manometer", "attach manometer to inlet", "read manometer"}), "");
    EXPECT_NEAR(last_value(attempt), 0.0, 40.0);
    EXPECT_EQ(twin.observations, 0) << "nobody concludes anything from it";
}

TEST(Manometer, IsOffByItsZeroUntilZeroed) {
    Attempt raw(test_job(), 7, Mode::assessed), zeroed(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(zeroed, manometer_on + Script{"read manometer"}), "");
    ASSERT_EQ(play(raw, {"shut gas at heater", "open test point inlet", "attach manometer to inlet",
                         "open gas at heater", "read manometer"}),
              "");
    const double off = std::abs(last_value(raw) - last_value(zeroed));
    EXPECT_GE(off, 20.0);
    EXPECT_LE(off, 120.0);
}

TEST(Manometer, ZeroedUnderPressureReadsTheDifference) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, manometer_on + Script{"wait 5 s", "zero manometer", "read manometer"}),
              "");
    EXPECT_NEAR(last_value(attempt), 0.0, 80.0);
    ASSERT_EQ(play(attempt, {"open bath tap", "wait 30 s", "read manometer"}), "");
    EXPECT_NEAR(last_value(attempt), -530.0, 90.0);
}

TEST(Manometer, ShowsGasHeldInTheLine) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, manometer_on + Script{"shut gas at meter", "read manometer",
                                                  "leak test by pressure hold", "read manometer"}),
              "");
    EXPECT_NEAR(last_value(attempt), 2350.0, 80.0);
}

TEST(Multimeter, MeasuresASensorByItself) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, dead + Script{"unplug outlet sensor",
                                          "attach multimeter to outlet sensor", "read multimeter"}),
              "");
    EXPECT_GT(last_value(attempt), 3000.0);  // 10 kohm at 25 degC, less in warm water
    EXPECT_LT(last_value(attempt), 20000.0);
}

TEST(Multimeter, MeasuresTheControllerTooWhenTheSensorIsPlugged) {
    Attempt alone(test_job(), 7, Mode::assessed), plugged(test_job(), 7, Mode::assessed);
    Twin twin(test_job());
    ASSERT_EQ(play(alone, dead + Script{"unplug inlet sensor", "attach multimeter to inlet sensor",
                                        "read multimeter"}),
              "");
    ASSERT_EQ(play(plugged, dead + Script{"attach multimeter to inlet sensor", "read multimeter"}),
              "");
    const double r = last_value(alone);
    EXPECT_NEAR(last_value(plugged), r * 1.0e4 / (r + 1.0e4), 0.05 * r);
}

TEST(Multimeter, FindsAnOpenSensorOverRange) {
    Attempt attempt(test_job({fault(Cause::outlet_sensor_open)}), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, dead + Script{"unplug outlet sensor",
                                          "attach multimeter to outlet sensor", "read multimeter"}),
              "");
    EXPECT_GT(last_value(attempt), 1.0e6);
}

TEST(Multimeter, ReadsFlameCurrentInSeries) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, dead + Script{"attach multimeter to flame lead", "unlock plug",
                                          "plug in heater", "switch power on", "open bath tap",
                                          "wait 40 s", "read multimeter"}),
              "");
    EXPECT_NEAR(last_value(attempt), 9.0e-6, 1.0e-6);
    EXPECT_TRUE(attempt.breaches().empty());
}

TEST(Analyser, ReadsTheFlueOnceWarm) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"switch on analyser", "wait 60 s", "put probe in flue",
                             "open bath tap", "wait 90 s", "read analyser"}),
              "");
    EXPECT_NEAR(last_value(attempt, 0), 0.076, 0.008);
    EXPECT_NEAR(last_value(attempt, 1), 0.075, 0.012);
    EXPECT_NEAR(last_value(attempt, 2), 15.0e-6, 25.0e-6);
}

TEST(Analyser, HoldsTheExtremesOfALightUpUntilTheyAreCleared) {
    Twin twin(test_job());
    Attempt attempt(test_job(), 7, Mode::assessed, &twin);
    ASSERT_EQ(
        play(attempt, {"switch on analyser", "wait 60 s", "put probe in flue", "open bath tap",
                       "wait 90 s", "close bath tap", "wait 2 min", "read analyser"}),
        "");
    const double air_o2 = last_value(attempt, 0);
    EXPECT_NEAR(air_o2, 0.2095, 0.01);
    ASSERT_EQ(play(attempt, {"read analyser lowest"}), "");
    EXPECT_LT(last_value(attempt, 0), 0.10) << "oxygen while it burned";
    ASSERT_EQ(play(attempt, {"read analyser highest"}), "");
    EXPECT_GT(last_value(attempt, 1), 0.06) << "carbon dioxide while it burned";
    EXPECT_NE(attempt.log().back().shown.front().find(", highest"), std::string::npos);
    ASSERT_EQ(play(attempt, {"clear hold", "read analyser lowest"}), "");
    EXPECT_NEAR(last_value(attempt, 0), air_o2, 0.01);
    EXPECT_EQ(twin.wrong, "") << "a shadow predicts what is held";
    EXPECT_EQ(twin.observations, 16);
}

TEST(Analyser, WatchedShowsATrendAndEndsInNumberedReadings) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    EXPECT_EQ(attempt.check("watch analyser for 2 min").text, "The analyser is off.");
    ASSERT_EQ(play(attempt, {"switch on analyser", "wait 60 s", "put probe in flue",
                             "open bath tap", "watch analyser for 2 min"}),
              "");
    const auto& entry = attempt.log().back();
    ASSERT_EQ(entry.shown.size(), 7U + 4U);
    EXPECT_TRUE(entry.shown.front().starts_with("After 15 s: oxygen ")) << entry.shown.front();
    EXPECT_EQ(entry.end_tick - entry.begin_tick, 1200);
    double last_o2 = 100.0;
    for (std::size_t i = 1; i < 5; ++i) {  // the flame burns from the second look on
        const double o2 = std::stod(entry.shown[i].substr(entry.shown[i].find("oxygen ") + 7));
        EXPECT_LE(o2, last_o2 + 0.11) << entry.shown[i];
        last_o2 = o2;
    }
    EXPECT_EQ(entry.observations.size(), 4U);
    EXPECT_TRUE(entry.shown[7].starts_with("#1  oxygen in the flue gas"));
}

/// Its carbon monoxide is seven parts in a hundred above what the flue holds: hydrogen passes the same cell.
TEST(Analyser, ShowsHydrogenAsCarbonMonoxide) {
    const Job sooty = test_job({fault(Cause::exchanger_sooted, 0.6)});
    Attempt attempt(sooty, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"switch on analyser", "wait 60 s", "put probe in flue",
                             "open bath tap", "wait 40 s"}),
              "");
    const auto truth = attempt.truth();
    const auto& heater = truth.heater;
    ASSERT_GT(heater.plant.co_share, 100.0e-6);
    Senses senses;
    ToolSetup tools;
    tools.analyser_sampling = true;
    for (int tick = 0; tick < 1200; ++tick) senses.step(heater, tools);
    EXPECT_NEAR(senses.co.shown / heater.plant.co_share, 1.07, 0.001);
}

TEST(DisplayWord, OfADeadPanelIsSaidToBeDark) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"switch power off", "look at display"}), "");
    EXPECT_EQ(attempt.log().back().shown.front(), "#1  word on the display  dark  (power off)");
}

TEST(Analyser, DriftsWhileItIsCold) {
    Twin twin(test_job());
    Attempt attempt(test_job(), 7, Mode::assessed, &twin);
    ASSERT_EQ(play(attempt, {"switch on analyser", "read analyser"}), "");
    EXPECT_GT(last_value(attempt, 0), 0.22) << "more oxygen than air has";
    EXPECT_EQ(attempt.log().back().shown.front(), "The analyser is still warming up.");
    EXPECT_EQ(twin.observations, 0);
}

TEST(Analyser, ZeroedInProductsTakesThemForAir) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"put probe in flue", "open bath tap", "wait 60 s",
                             "switch on analyser", "wait 90 s", "read analyser"}),
              "");
    EXPECT_NEAR(last_value(attempt, 0), 0.2095, 0.01);
    EXPECT_NEAR(last_value(attempt, 1), 0.0, 0.012);
}

TEST(FlowCup, MeasuresTheShareOfOneTap) {
    Attempt one(test_job(), 7, Mode::assessed), two(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(one, {"open shower", "wait 30 s", "measure flow at shower"}), "");
    ASSERT_EQ(play(two, {"open shower", "open bath tap", "wait 30 s", "measure flow at shower"}),
              "");
    EXPECT_LT(last_value(two), 0.7 * last_value(one));
}

TEST(Thermometer, NeedsRunningWater) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    EXPECT_EQ(attempt.check("measure temperature at shower").text, "The shower is closed.");
}

TEST(Readout, NeedsPowerAndToBeOpened) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    EXPECT_EQ(attempt.check("read readout flow").text, "The service readout is not open.");
    ASSERT_EQ(play(attempt, {"unplug heater"}), "");
    EXPECT_EQ(attempt.check("open service readout").text, "The panel is dark.");
}

TEST(Errors, OfTheInstrumentStayAndOfTheReadingChange) {
    double sum = 0.0, squares = 0.0;
    constexpr int seeds = 60;
    for (int seed = 1; seed <= seeds; ++seed) {
        Attempt attempt(test_job(), static_cast<std::uint64_t>(seed), Mode::assessed);
        ASSERT_EQ(play(attempt, {"open bath tap", "wait 60 s", "measure flow at bath tap"}), "");
        const double error = last_value(attempt) * 60000.0 - 13.8;
        sum += error;
        squares += error * error;
    }
    const double sigma = 0.1 + 0.03 * 13.8;  // of the flow cup
    EXPECT_LT(std::abs(sum / seeds), 3.0 * sigma / std::sqrt(seeds) + 0.1);
    EXPECT_NEAR(std::sqrt(squares / seeds), sigma, 0.35 * sigma);
}

}  // namespace
}  // namespace emberpath::worksite
