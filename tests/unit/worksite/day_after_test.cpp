// Proves that the day after is simulated on what was left behind: hot water in the sound house, escaped gas,
// scalds and lockouts where they were left, a heater turned on again where nothing forbids it; and the same
// day every time.

#include "sim/worksite/day_after.hpp"

#include <gtest/gtest.h>

#include "sim/worksite/workplace.hpp"
#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;
using Script = std::vector<std::string>;

std::string text_of(const Attempt::After& after) {
    std::string text;
    for (const auto& line : after.lines) text += line + "\n";
    return text;
}

/// What the day brings after these acts.
Attempt::After after(const Job& job, const Script& script) {
    Attempt attempt(job, 7, Mode::assessed);
    EXPECT_EQ(play(attempt, script), "");
    return attempt.day_after();
}

TEST(HouseholdDay, RepeatsTheHistoryFiveTimesInOrder) {
    const Job job = test_job();
    const auto day = household_day(job.site, 1000.0);
    EXPECT_EQ(day.size(), 10U);
    for (std::size_t i = 1; i < day.size(); ++i) EXPECT_LE(day[i - 1].at_s, day[i].at_s);
    EXPECT_GT(day.front().at_s, 1000.0);
    EXPECT_LT(day.back().at_s, 1000.0 + 86400.0);
}

TEST(HouseholdDay, OfAHouseWithoutDrawsOpensTheFirstTap) {
    Job job = test_job();
    job.site.events.clear();
    const auto day = household_day(job.site, 0.0);
    ASSERT_EQ(day.size(), 10U);
    EXPECT_EQ(day.front().kind, HouseholdEvent::Kind::tap);
}

TEST(DayAfter, InASoundHouseBringsHotWaterAndNothingElse) {
    const auto day = after(test_job(), {"hand in"});
    EXPECT_EQ(text_of(day), "Hot water was drawn 5 times, each time hot enough.\n");
}

TEST(DayAfter, IsTheSameEveryTimeAndLeavesTheAttemptAlone) {
    Attempt attempt(test_job({fault(Cause::wind_gust, 1.0)}), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"hand in"}), "");
    const auto hash = attempt.state_hash();
    const auto first = attempt.day_after();
    EXPECT_EQ(first, attempt.day_after());
    EXPECT_EQ(attempt.state_hash(), hash);
    EXPECT_EQ(first.state.size(), 16U);
}

TEST(DayAfter, ShowsAFaultThatWasLeftAsColdWaterAndLockouts) {
    const auto text = text_of(after(test_job({fault(Cause::igniter_failed)}), {"hand in"}));
    EXPECT_NE(text.find("5 cold"), std::string::npos) << text;
    EXPECT_NE(text.find("locked out"), std::string::npos) << text;
}

TEST(DayAfter, CountsTheGasOfAnOpenTestPoint) {
    const auto text = text_of(after(test_job(), {"open test point inlet", "hand in"}));
    EXPECT_NE(text.find("Gas escaped: "), std::string::npos) << text;
    EXPECT_NE(text.find("It met a flame and flashed."), std::string::npos) << text;
}

TEST(DayAfter, ScaldsWhereWaterIsLeftTooHot) {
    Job hot = test_job({fault(Cause::outlet_sensor_drift, 1.0)});
    const auto text = text_of(after(hot, {"hand in"}));
    EXPECT_NE(text.find("% of a burn"), std::string::npos) << text;
    EXPECT_EQ(text_of(after(test_job(), {"hand in"})).find("burn"), std::string::npos);
}

TEST(DayAfter, FindsTheHeaterTurnedOnAgainUnlessATagAndANoticeForbidIt) {
    const Job job = test_job();
    const Script shut{"shut gas at heater", "switch power off", "unplug heater"};
    Script tagged = shut, noticed = shut;
    tagged.insert(tagged.end(), {"tag heater", "hand in"});
    noticed.insert(noticed.end(), {"tag heater", "issue unsafe notice", "hand in"});
    const auto relit = text_of(after(job, tagged));
    EXPECT_NE(relit.find("turned it on again themselves"), std::string::npos) << relit;
    EXPECT_NE(relit.find("5 times, each time hot enough"), std::string::npos) << relit;
    const auto off = text_of(after(job, noticed));
    EXPECT_EQ(off, "Hot water was drawn 5 times: 0 hot enough, 5 cold.\n");
}

TEST(DayAfter, SaysWhatHungOrLayThereWhenTheyTurnedItOnAgain) {
    Job refusing = test_job();
    refusing.customer.agrees = Consent::never;
    const auto first_line = [](const Job& job, const Script& said) {
        Script script{"shut gas at heater"};
        script.insert(script.end(), said.begin(), said.end());
        script.emplace_back("hand in");
        return after(job, script).lines.front();
    };
    const std::string again = "They turned it on again themselves";
    EXPECT_EQ(first_line(test_job(), {}), again + ": nothing said that it must stay off.");
    EXPECT_EQ(first_line(test_job(), {"tag heater"}),
              again + ", tag or no tag: no notice in writing said why it must stay off.");
    EXPECT_EQ(first_line(test_job(), {"issue unsafe notice"}),
              again + ", notice or no notice: no tag hung where they did it.");
    EXPECT_EQ(first_line(refusing, {"tag heater", "issue unsafe notice"}),
              again + ", whatever tag and notice say.");
}

TEST(DayAfter, DoesNotFindALockedPlugPulledOpen) {
    const auto text = text_of(
        after(test_job(), {"switch power off", "unplug heater", "lock off plug", "hand in"}));
    EXPECT_NE(text.find("5 cold"), std::string::npos) << text;
}

TEST(DayAfter, NobodyPressesResetAtATag) {
    const Job job = test_job({fault(Cause::igniter_failed)});
    const auto pressed = text_of(after(job, {"hand in"}));
    EXPECT_EQ(pressed.find("they pressed reset 0 times"), std::string::npos) << pressed;
    const auto tagged = text_of(after(job, {"tag heater", "issue unsafe notice", "hand in"}));
    EXPECT_NE(tagged.find("they pressed reset 0 times"), std::string::npos) << tagged;
}

bool tells(const Attempt::After& after, const std::string& words) {
    return text_of(after).find(words) != std::string::npos;
}

TEST(DayAfter, TellsWhatAHandOnATapOfALostNeutralGets) {
    const Script left{"hand in"};
    const Job job = test_job({fault(Cause::neutral_broken)});
    EXPECT_TRUE(tells(after(job, left), "A hand on the kitchen tap: "));
    EXPECT_TRUE(tells(after(job, left), " mA from hand to foot; from 10 mA a hand cannot let go."));
    EXPECT_FALSE(tells(after(test_job(), left), "A hand on")) << "nothing is felt in a sound house";
}

TEST(DayAfter, TellsWhatAHandOnALiveCasingGetsAndNotBehindAPlugThatStaysOut) {
    const Job job = test_job({fault(Cause::earth_missing), fault(Cause::moisture_in_heater, 1.0)});
    EXPECT_TRUE(tells(after(job, {"use outlet without safety switch", "hand in"}),
                      "A hand on the heater's casing: "));
    EXPECT_FALSE(
        tells(after(job, {"switch power off", "unplug heater", "lock off plug", "hand in"}),
              "A hand on the heater's casing: "));
}

TEST(DayAfter, TellsOfNoCurrentThatIsNotFelt) {
    DayAfter day;
    day.live_tap = "shower";
    day.tap_current_a = day.casing_current_a = 0.4e-3;
    EXPECT_EQ(lines_of(day, Limits{}).size(), 1U);
    day.tap_current_a = 7.5e-3;
    EXPECT_EQ(lines_of(day, Limits{}).back(),
              "A hand on the shower: 7.5 mA from hand to foot; from 10 mA a hand cannot let go.");
}

DayAfter leaking_day() {
    DayAfter day;
    day.most_leakage_a = 12.0e-3;
    return day;
}

TEST(DayAfter, SaysWhetherTheSafetySwitchOpenedByTheStateOfTheSwitch) {
    DayAfter day = leaking_day();
    const auto lines = [&day] {
        std::string text;
        for (const auto& line : lines_of(day, Limits{})) text += line + "\n";
        return text;
    };
    EXPECT_NE(lines().find("leaked to earth, and no safety switch opened"), std::string::npos);
    day.safety_switch_opened = true;
    EXPECT_NE(lines().find("leaked to earth, and the safety switch opened"), std::string::npos);
    EXPECT_EQ(lines().find("no safety switch"), std::string::npos) << lines();
}

TEST(DayAfter, ComparesTheGasPressureWithWhatASoundRegulatorLocksUpAt) {
    DayAfter day;
    day.governed_pa = 2500.0;
    day.most_gas_pa = 3600.0;
    EXPECT_EQ(lines_of(day, Limits{}).back(),
              "Gas stood at up to 3.60 kPa behind the regulator, where a sound one locks up at "
              "2.50 kPa: an open burner takes 20 % more at the first pressure than at the second.");
}

TEST(DayAfter, SaysThatTheCoverWasOffWhereItLetTheProductsOut) {
    DayAfter day;
    day.most_spilled = 0.1;
    EXPECT_EQ(lines_of(day, Limits{}).back(),
              "Up to 10 % of the products of combustion entered the room.");
    const auto text = text_of(
        after(test_job(), {"unplug heater", "take cover off", "plug in heater", "hand in"}));
    EXPECT_NE(text.find("The cover was off: up to 10 % of the products of combustion"),
              std::string::npos)
        << text;
}

TEST(DayAfter, NoticesThatTooLittleWaterComes) {
    constexpr std::size_t bath = 2;
    Job blocked = test_job({fault(Cause::strainer_blocked, 1.0)}), sound = test_job();
    for (Job* job : {&blocked, &sound})
        for (auto& event : job->site.events) event.index = bath;
    const auto little = text_of(after(blocked, {"hand in"}));
    EXPECT_NE(little.find("5 times too little water came"), std::string::npos) << little;
    EXPECT_EQ(text_of(after(sound, {"hand in"})).find("too little"), std::string::npos);
}

}  // namespace
}  // namespace emberpath::worksite
