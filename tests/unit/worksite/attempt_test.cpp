// Proves that an attempt keeps one clock, one log and one state: acts take their time, refusals take none,
// the same acts give the same bits, and whoever follows can predict every reading.

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>

#include "tests/unit/worksite/house.hpp"
#include "tests/unit/worksite/twin.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;

Attempt coached(Job job, std::uint64_t seed = 7) {
    return Attempt(std::move(job), seed, Mode::coached);
}

const std::vector<std::string>& safe_sensor_path() {
    static const std::vector<std::string> path{"ask about problem",
                                               "look at display",
                                               "switch power off",
                                               "unplug heater",
                                               "lock off plug",
                                               "take cover off",
                                               "prove tester",
                                               "test for dead",
                                               "prove tester",
                                               "put on gloves",
                                               "unplug outlet sensor",
                                               "attach multimeter to outlet sensor",
                                               "read multimeter",
                                               "take multimeter off",
                                               "plug in outlet sensor",
                                               "replace outlet sensor",
                                               "refit cover",
                                               "unlock plug",
                                               "plug in heater",
                                               "switch power on",
                                               "press reset",
                                               "open bath tap",
                                               "wait 90 s",
                                               "measure temperature at bath tap",
                                               "look at display",
                                               "switch on analyser",
                                               "wait 1 min",
                                               "put probe in flue",
                                               "combustion test",
                                               "take probe out",
                                               "leak test with fluid",
                                               "close bath tap",
                                               "write cause outlet_sensor_open",
                                               "write because #1 #2",
                                               "write done new sensor",
                                               "write told all of it",
                                               "tell customer all of it",
                                               "hand in"};
    return path;
}

TEST(Attempt, BeginsWhenTheHistoryIsOver) {
    const auto attempt = coached(test_job());
    EXPECT_EQ(attempt.tick(), 1800);
    EXPECT_DOUBLE_EQ(attempt.seconds_on_site(), 0.0);
    EXPECT_TRUE(attempt.log().empty());
    EXPECT_FALSE(attempt.over());
}

TEST(Attempt, LetsEachActTakeItsTime) {
    auto attempt = coached(test_job());
    ASSERT_EQ(play(attempt, {"look at display", "wait 90 s", "open bath tap"}), "");
    EXPECT_DOUBLE_EQ(attempt.seconds_on_site(), 98.0);
    EXPECT_EQ(attempt.log()[1].begin_tick, 1850);
    EXPECT_EQ(attempt.log()[1].end_tick, 2750);
}

TEST(Attempt, RefusesWithoutTimeOrTrace) {
    auto attempt = coached(test_job());
    const auto before = attempt.state_hash();
    for (const char* sentence :
         {"dance", "read manometer", "look at fins", "weigh cylinder", "write because #4",
          "set temperature to 80 °C", "plug in heater"}) {
        const auto outcome = attempt.perform(sentence);
        EXPECT_EQ(outcome.entry, nullptr) << sentence;
        EXPECT_FALSE(outcome.refusal.text.empty());
        EXPECT_EQ(attempt.check(sentence).text, outcome.refusal.text);
    }
    EXPECT_EQ(attempt.state_hash(), before);
    EXPECT_TRUE(attempt.log().empty());
}

TEST(Attempt, NumbersReadingsInTheOrderTheyAreTaken) {
    auto attempt = coached(test_job());
    ASSERT_EQ(play(attempt, {"look at display", "open service readout", "read readout all",
                             "ask about problem", "listen"}),
              "");
    int next = 1;
    for (const auto& entry : attempt.log())
        for (const auto& seen : entry.observations) {
            if (seen.quantity == Quantity::complaint_heard) continue;
            EXPECT_EQ(seen.number, next++);
        }
    EXPECT_EQ(next, 20);
}

TEST(Attempt, ShowsAReadingInTradeUnitsWithItsCondition) {
    auto attempt = coached(test_job());
    ASSERT_EQ(play(attempt, {"look at display"}), "");
    EXPECT_EQ(attempt.log().back().shown,
              std::vector<std::string>{"#1  word on the display  REST  (heater at rest)"});
}

TEST(Attempt, EndsWhenTheRecordIsHandedIn) {
    auto attempt = coached(test_job());
    ASSERT_EQ(play(attempt, {"hand in"}), "");
    EXPECT_TRUE(attempt.over());
    EXPECT_EQ(attempt.perform("look at display").refusal.text, "The attempt is over.");
}

TEST(Attempt, GivesTheSameBitsForTheSameSeedAndActs) {
    for (const auto cause : {Cause::outlet_sensor_open, Cause::flue_blocked}) {
        auto one = coached(test_job({fault(cause)}));
        auto two = coached(test_job({fault(cause)}));
        for (const auto& sentence : safe_sensor_path()) {
            ASSERT_EQ(play(one, {sentence}), "");
            ASSERT_EQ(play(two, {sentence}), "");
            ASSERT_EQ(one.state_hash(), two.state_hash()) << sentence;
        }
        EXPECT_EQ(all_shown(one), all_shown(two));
    }
}

TEST(Attempt, ShowsOtherFiguresOfTheSameHouseUnderAnotherSeed) {
    auto one = coached(test_job(), 1);
    auto two = coached(test_job(), 2);
    const std::vector<std::string> acts{"open bath tap", "wait 1 min",
                                        "measure temperature at bath tap",
                                        "measure flow at bath tap"};
    ASSERT_EQ(play(one, acts), "");
    ASSERT_EQ(play(two, acts), "");
    EXPECT_NE(all_shown(one), all_shown(two));
    EXPECT_NEAR(one.log().back().observations[0].value, two.log().back().observations[0].value,
                1.5 / 60000.0);
}

TEST(Attempt, IsBroughtBackByDoingItsActsAgain) {
    auto first = coached(test_job({fault(Cause::electrode_fouled)}));
    ASSERT_EQ(play(first, {"open bath tap", "watch burner window for 20 s", "press reset"}), "");
    first.run(37);
    ASSERT_EQ(play(first, {"listen"}), "");
    auto again = coached(test_job({fault(Cause::electrode_fouled)}));
    for (const auto& entry : first.log()) {
        again.run(entry.begin_tick - again.tick());
        ASSERT_EQ(play(again, {entry.words}), "");
    }
    EXPECT_EQ(again.state_hash(), first.state_hash());
    EXPECT_EQ(all_shown(again), all_shown(first));
}

TEST(Attempt, ShowsTheSameInBothModesButForWarnings) {
    const std::vector<std::string> acts{"open test point inlet", "shut gas at heater",
                                        "close test point inlet"};
    Attempt told(test_job(), 7, Mode::coached), silent(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(told, acts), "");
    ASSERT_EQ(play(silent, acts), "");
    EXPECT_NE(all_shown(told).find("Unsafe:"), std::string::npos);
    EXPECT_EQ(all_shown(silent).find("Unsafe:"), std::string::npos);
    EXPECT_NE(all_shown(silent).find("Gas hisses out."), std::string::npos);
    EXPECT_NE(told.state_hash(), silent.state_hash());  // the mode is part of what is proved
}

TEST(Follower, HearsOfEveryTickAndOfArrivalOnce) {
    Twin twin({});
    Attempt attempt(test_job(), 7, Mode::assessed, &twin);
    EXPECT_EQ(twin.ticks, 1800);
    EXPECT_EQ(twin.arrivals, 1);
    ASSERT_EQ(play(attempt, {"wait 20 s", "look at display"}), "");
    EXPECT_EQ(twin.ticks, attempt.tick());
    EXPECT_EQ(twin.observations, 1);
}

class TwinOf : public testing::TestWithParam<Cause> {};

TEST_P(TwinOf, PredictsEveryReadingThroughRemediesAndAlterations) {
    const auto cause = GetParam();
    const bool cylinder = faults::info(cause).cylinder_only;
    const std::vector faults{fault(cause, faults::info(cause).greatest_severity)};
    const Job job = cylinder ? cylinder_job(faults) : test_job(faults);
    Twin twin(job);
    Attempt attempt(job, 11, Mode::assessed, &twin);
    auto path = safe_sensor_path();
    path.insert(path.begin() + 2,
                {"open bath tap", "watch burner window for 15 s", "listen", "shut gas at heater",
                 "open test point inlet", "zero manometer", "attach manometer to inlet",
                 "open gas at heater", "press reset", "wait 10 s", "read manometer",
                 "read manometer lowest", "open service readout", "read readout all",
                 "look at flue terminal", "clear flue terminal", "raise supply regulator",
                 "read manometer", "close bath tap"});
    path.insert(path.begin() + 35, {"clean flame electrode", "replace igniter"});
    if (cylinder)
        path.insert(path.end() - 1,
                    {"weigh cylinder", "change cylinder", "weigh cylinder", "look at cylinder"});
    ASSERT_EQ(play(attempt, path), "");
    EXPECT_GT(twin.observations, 30);
    EXPECT_EQ(twin.wrong, "") << twin.wrong;
}

INSTANTIATE_TEST_SUITE_P(EachCause, TwinOf,
                         testing::Values(Cause::no_fault, Cause::flue_blocked, Cause::wind_gust,
                                         Cause::cylinder_low, Cause::gas_pipe_restriction,
                                         Cause::regulator_droop, Cause::outlet_sensor_open,
                                         Cause::outlet_sensor_drift, Cause::electrode_fouled,
                                         Cause::igniter_failed, Cause::exchanger_sooted),
                         [](const auto& i) {
                             std::string name(faults::info(i.param).word);
                             std::erase(name, '_');
                             return name;
                         });

}  // namespace
}  // namespace emberpath::worksite
