// Proves that the state of the services is what the trainee did or found last, and nothing else.

#include "ui/views/services.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/worksite/house.hpp"
#include "ui/views/views.hpp"

namespace emberpath::views {
namespace {

std::string state_of(const std::vector<TimedWords>& log, const std::string& service) {
    for (const auto& row : services(log))
        if (row.service == service) return row.state;
    return "no such service";
}

TEST(Services, NothingIsKnownBeforeItIsChecked) {
    const auto rows = services(std::vector<TimedWords>{});
    ASSERT_EQ(rows.size(), 5U);
    for (const auto& row : rows) {
        EXPECT_EQ(row.state, "not checked") << row.service;
        EXPECT_TRUE(row.time.empty()) << row.service;
    }
}

TEST(Services, TheLastActCounts) {
    const std::vector<TimedWords> log = {{"shut gas at meter", "01:00"},
                                         {"open gas at meter", "02:00"},
                                         {"shut gas at heater", "03:00"},
                                         {"look at display", "04:00"}};
    EXPECT_EQ(state_of(log, "gas"), "shut at the heater");
    EXPECT_EQ(services(log)[0].time, "03:00");
    EXPECT_EQ(state_of(log, "water"), "not checked");
}

TEST(Services, PowerOffIsNotCalledDeadUntilItIsTested) {
    EXPECT_EQ(state_of({{"unplug heater", "01:00"}}, "power"), "unplugged, not proved dead");
    EXPECT_EQ(state_of({{"unplug heater", "01:00"}, {"test for dead", "02:00"}}, "power"),
              "tested at the terminals: see the log");
}

std::string power_after(const std::vector<std::string>& acts) {
    worksite::Attempt attempt(worksite::test_job(), 7, worksite::Mode::assessed);
    EXPECT_EQ(worksite::play(attempt, acts), "");
    for (const auto& row : services(attempt))
        if (row.service == "power") return row.state;
    return "no such service";
}

TEST(Services, PowerIsProvedDeadByATesterProvedBeforeAndAfterAndNoLongerOnceItIsSwitched) {
    using Acts = std::vector<std::string>;
    const Acts isolated{"switch power off", "unplug heater", "lock off plug", "take cover off",
                        "wait 60 s"};
    const Acts proof{"prove tester", "test for dead", "prove tester"};
    using worksite::operator+;
    EXPECT_EQ(power_after(isolated + proof), "proved dead at the terminals");
    const char* tested = "tested at the terminals: see the log";
    EXPECT_EQ(power_after(isolated + Acts{"prove tester", "test for dead"}), tested);
    EXPECT_EQ(power_after(isolated + Acts{"test for dead", "prove tester"}), tested);
    EXPECT_EQ(power_after(Acts{"take cover off"} + proof), tested) << "live, and found so";
    EXPECT_EQ(power_after(isolated + proof + Acts{"unlock plug", "plug in heater"}), "plugged in");
    EXPECT_EQ(power_after(isolated + proof + Acts{"use outlet without safety switch"}), tested);
}

TEST(Views, ClockAndCostsReadAsPeopleSayThem) {
    EXPECT_EQ(clock_text(0.0), "00:00");
    EXPECT_EQ(clock_text(250.9), "04:10");
    EXPECT_EQ(clock_text(6000.0), "100:00");
    EXPECT_EQ(clock_text(-5.0), "00:00");
    EXPECT_EQ(cost_text(0.0), "varies");
    EXPECT_EQ(cost_text(20.0), "20 s");
    EXPECT_EQ(cost_text(150.0), "2.5 min");
    EXPECT_EQ(cost_text(600.0), "10 min");
}

TEST(Views, HelpFindsSentencesByAnyWordInThem) {
    EXPECT_EQ(phrases("").size(), worksite::phrases().size());
    EXPECT_FALSE(phrases("MANOMETER").empty());
    for (const auto& phrase : phrases("manometer"))
        EXPECT_THAT(phrase.pattern + " " + phrase.help, testing::HasSubstr("manometer"));
    EXPECT_TRUE(phrases("teapot").empty());
}

}  // namespace
}  // namespace emberpath::views
