// Proves that going outside takes the person out of fumes and gas: the dose stops there and nowhere else, what can be
// done from there is done, and everything else is refused without a tick.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/worksite/dangerous_houses.hpp"

namespace emberpath::worksite {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

/// Gusts and no cover: the room fills with products, the alarm on.
const Acts smoky{"switch on co alarm", "take cover off", "open bath tap a little"};

Job gusty() {
    return test_job({fault(Cause::wind_gust, 0.6)});
}

double per_cent_after(const Attempt& attempt, const std::string& words) {
    for (const auto& line : attempt.truth().doses)
        if (const auto at = line.find(words); at != std::string::npos)
            return std::stod(line.substr(at + words.size()));
    ADD_FAILURE() << "no line says " << words;
    return -1.0;
}
double most_in_blood(const Attempt& attempt) {
    return per_cent_after(attempt, "Most carbon monoxide in your blood: ");
}
double in_blood_now(const Attempt& attempt) {
    return per_cent_after(attempt, "carbon monoxide in your blood at the end: ");
}

/// The alarm sounds while one waits.
void wait_for_the_alarm(Attempt& attempt) {
    for (int i = 0; i < 30 && !attempt.sight().alarm; ++i)
        ASSERT_EQ(play(attempt, {"wait 1 min"}), "");
    ASSERT_TRUE(attempt.sight().alarm);
}

TEST(Outside, NothingIsAddedToTheBloodAndWhatItHoldsFalls) {
    Attempt leaves(gusty(), 7, Mode::assessed), stays(gusty(), 7, Mode::assessed);
    for (Attempt* one : {&leaves, &stays}) {
        ASSERT_EQ(play(*one, smoky), "");
        wait_for_the_alarm(*one);
    }
    ASSERT_EQ(play(leaves, {"go outside"}), "");
    const double at_the_door = most_in_blood(leaves);
    ASSERT_EQ(play(leaves, {"wait 60 min", "wait 60 min", "wait 60 min"}), "");
    while (!stays.over()) ASSERT_EQ(play(stays, {"wait 60 min"}), "");
    EXPECT_EQ(most_in_blood(leaves), at_the_door);
    EXPECT_LT(in_blood_now(leaves), at_the_door);
    EXPECT_FALSE(broke(leaves, "room_co"));
    EXPECT_GE(most_in_blood(stays), 20.0);
    EXPECT_TRUE(broke(stays, "co_poisoning"));
    EXPECT_THAT(leaves.truth().doses, Contains(StartsWith("Time in the open air, away from gas "
                                                          "and fumes: 180.0 min")));
    EXPECT_THAT(stays.truth().doses, Not(Contains(StartsWith("Time in the open air"))));
}

TEST(Outside, FumesWaitForWhoeverComesBackIn) {
    Attempt attempt(gusty(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, smoky), "");
    wait_for_the_alarm(attempt);
    ASSERT_EQ(play(attempt, {"go outside"}), "");
    EXPECT_FALSE(attempt.sight().alarm);
    const double at_the_door = most_in_blood(attempt);
    ASSERT_EQ(play(attempt, {"wait 30 min", "go back in"}), "");
    EXPECT_TRUE(attempt.sight().alarm);
    EXPECT_THAT(attempt.log().back().shown,
                Contains("Your personal alarm sounds: carbon monoxide."));
    ASSERT_EQ(play(attempt, {"wait 30 min"}), "");
    EXPECT_GT(most_in_blood(attempt), at_the_door + 1.0);
}

TEST(Outside, NoGasIsAroundThePersonAndNoMinuteOfItCounts) {
    Attempt leaves(with(leak), 7, Mode::assessed), stays(with(leak), 7, Mode::assessed);
    ASSERT_EQ(play(leaves, {"go outside", "wait 10 min", "hand in"}), "");
    ASSERT_EQ(play(stays, {"wait 10 min", "hand in"}), "");
    EXPECT_FALSE(broke(leaves, "stayed_in_gas"));
    EXPECT_TRUE(broke(stays, "stayed_in_gas"));
}

/// The way out is not staying; the way back in is.
TEST(Outside, ComesToAMinuteInGasWhereOneGoesBackInTooSoon) {
    Attempt attempt(with(leak), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"look at room", "wait 40 s", "go outside", "wait 1 min"}), "");
    EXPECT_FALSE(broke(attempt, "stayed_in_gas"));
    ASSERT_EQ(play(attempt, {"go back in"}), "");
    EXPECT_TRUE(broke(attempt, "stayed_in_gas"));
}

TEST(Outside, GasGathersBehindThePersonAndIsSmeltAtTheDoor) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"open test point inlet", "go outside", "wait 2 min"}), "");
    EXPECT_THAT(attempt.log().back().shown, IsEmpty());
    const auto most_gas = [&] {
        return per_cent_after(attempt, "Most gas in the air at your hands: ");
    };
    const double before = most_gas();
    ASSERT_EQ(play(attempt, {"go back in"}), "");
    EXPECT_THAT(attempt.log().back().shown, Contains("It smells of gas."));
    EXPECT_GT(most_gas(), before + 5.0);
}

TEST(Outside, ATelephoneIsNoSpark) {
    Attempt outside(with(leak), 7, Mode::assessed), inside(with(leak), 7, Mode::assessed),
        back_in(with(leak), 7, Mode::assessed);
    ASSERT_EQ(play(outside, {"go outside", "escalate to distributor"}), "");
    ASSERT_EQ(play(inside, {"escalate to distributor"}), "");
    ASSERT_EQ(play(back_in, {"go outside", "go back in", "escalate to distributor"}), "");
    EXPECT_FALSE(broke(outside, "spark_in_gas"));
    EXPECT_TRUE(broke(inside, "spark_in_gas"));
    EXPECT_TRUE(broke(back_in, "spark_in_gas"));
}

TEST(Outside, AFlashBehindThePersonEndsTheVisitAndBurnsNoHand) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"turn on cooktop", "open test point inlet", "go outside"}), "");
    ASSERT_EQ(play(attempt, {"wait 5 min"}), "");
    ASSERT_TRUE(attempt.over());
    EXPECT_THAT(attempt.log().back().shown.front(),
                AllOf(HasSubstr("flashes where you had stood"), Not(HasSubstr("burnt"))));
}

TEST(Outside, WhatNeedsAHandAtTheHeaterIsRefusedAndTakesNoTime) {
    for (Job job : {test_job(), cylinder_job()}) {
        job.site.windows = {{"laundry window", 0.0, false}};
        Attempt attempt(job, 7, Mode::assessed);
        ASSERT_EQ(play(attempt, {"go outside"}), "");
        const auto tick = attempt.tick();
        for (const char* act :
             {"look at display", "open bath tap", "switch power off", "unplug heater",
              "shut gas at heater", "switch main switch off", "air the place", "move people out",
              "open laundry window", "take cover off", "read room air", "read gas detector",
              "replace igniter", "listen", "wait until something changes", "look at room"}) {
            const auto outcome = attempt.perform(act);
            EXPECT_EQ(outcome.entry, nullptr) << act;
            EXPECT_EQ(outcome.refusal.text,
                      "You stand in the open air, away from it; go back in first.")
                << act;
        }
        EXPECT_EQ(attempt.tick(), tick);
    }
}

TEST(Outside, WhatStandsThereAndWhatOneCarriesIsWithinReach) {
    Attempt mains(test_job(), 7, Mode::assessed), cylinder(cylinder_job(), 7, Mode::assessed);
    const Acts talk{"ask about problem",
                    "ask customer for consent",
                    "tell customer to wait",
                    "issue unsafe notice",
                    "escalate to electrician",
                    "put on gloves",
                    "switch on co alarm",
                    "suspect igniter_failed",
                    "write done nothing yet",
                    "explain to customer",
                    "wait 1 min",
                    "say where you go"};
    EXPECT_EQ(play(mains, Acts{"go outside"} + talk + Acts{"shut gas at meter"}), "");
    EXPECT_FALSE(mains.sight().gas_at_supply);
    EXPECT_EQ(play(cylinder, Acts{"go outside"} + talk +
                                 Acts{"shut gas at cylinder", "look at cylinder", "weigh cylinder",
                                      "open gas at cylinder", "hand in"}),
              "");
    EXPECT_TRUE(cylinder.over());
}

TEST(Outside, OneGoesOutOnceAndComesBackOnce) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    EXPECT_THAT(play(attempt, {"go back in"}), HasSubstr("You are not outside."));
    EXPECT_EQ(play(attempt, {"step outside"}), "");
    EXPECT_THAT(play(attempt, {"go out"}), HasSubstr("You stand outside already."));
    EXPECT_EQ(play(attempt, {"go inside", "look at display"}), "");
    EXPECT_EQ(attempt.log().front().words, "go outside");
}

TEST(Outside, ThePersonIsPartOfTheState) {
    Attempt outside(test_job(), 7, Mode::assessed), inside(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(outside, {"go outside"}), "");
    ASSERT_EQ(play(inside, {"wait 15 s"}), "");
    ASSERT_EQ(outside.tick(), inside.tick());
    EXPECT_NE(outside.state_hash(), inside.state_hash());
    ASSERT_EQ(play(outside, {"go back in"}), "");
    ASSERT_EQ(play(inside, {"wait 15 s"}), "");
    ASSERT_EQ(outside.tick(), inside.tick());
    EXPECT_EQ(outside.state_hash(), inside.state_hash())
        << "the air was the same, and no time was spent outside but on the way";
}

/// Nobody out there sees a figure or hears the house; the house goes on meanwhile.
TEST(Outside, TheHouseIsAsItWasLeftUntilOneComesBack) {
    Job job = test_job();
    job.site.events.push_back({300.0, HouseholdEvent::Kind::tap, 0, 1.0});
    Attempt attempt(job, 7, Mode::assessed);
    attempt.keep_trail();
    ASSERT_EQ(play(attempt, {"open service readout", "wait 10 s", "go outside"}), "");
    EXPECT_THAT(attempt.sight().figures, IsEmpty());
    EXPECT_TRUE(attempt.sight().outside);
    const auto points = attempt.trail().size();
    ASSERT_EQ(play(attempt, {"wait 5 min"}), "");
    EXPECT_THAT(attempt.log().back().shown, IsEmpty()) << "somebody opened a tap in the house";
    EXPECT_EQ(attempt.sight().tap_opening.front(), 0.0);
    EXPECT_EQ(attempt.trail().size(), points);
    ASSERT_EQ(play(attempt, {"go back in"}), "");
    EXPECT_EQ(attempt.sight().tap_opening.front(), 1.0);
    EXPECT_FALSE(attempt.sight().outside);
    EXPECT_FALSE(attempt.sight().figures.empty());
}

}  // namespace
}  // namespace emberpath::worksite
