// Proves that the window's program works a job by keyboard and by mouse, from the list to the debrief.
#include "ui/desktop/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"

namespace emberpath::desktop {
namespace {

using testing::Contains;
using testing::HasSubstr;

TEST(FirstScreen, HasTheFocusOnGoingToTheHouse) {
    Person person;
    EXPECT_EQ(person.program.place(), Place::choose);
    EXPECT_EQ(person.node("start.go")->name, "Go to the house");
    person.enter_house();
    EXPECT_EQ(person.program.place(), Place::job);
}

TEST(FirstScreen, OnlySelectsAHouseThatIsClicked) {
    Person person;
    person.click("jobs.test");
    person.click("jobs.test");
    for (int i = 0; i < 50; ++i) person.program.elapse(0.01);
    EXPECT_EQ(person.program.place(), Place::choose);
    person.press(kit::Key::down);
    person.press(kit::Key::enter);
    person.wait_for(Place::job);
}

TEST(FirstMoment, OffersToAskTheCustomerUnderKeyOne) {
    Person person;
    person.enter_house();
    EXPECT_EQ(person.node("actions.1")->name, "Ask: problem");
    EXPECT_THAT(person.node("status.line")->name, HasSubstr("Ask the customer first: press 1"));
    person.type("1");
    EXPECT_EQ(person.last_act(), "ask about problem");
    ASSERT_NE(person.node("card.words"), nullptr);
    EXPECT_THAT(person.node("card.words")->value, HasSubstr("It is not as it was."));
}

TEST(GoToBox, SelectsAThingByItsTag) {
    Person person;
    person.enter_house();
    person.say("P1");
    EXPECT_EQ(person.node("actions.what")->name, "P1");
}

TEST(GoToBox, DoesAnActThatIsSpelt) {
    Person person;
    person.enter_house();
    person.say("open kitchen tap halfway");
    EXPECT_EQ(person.last_act(), "open kitchen tap halfway");
}

TEST(GoToBox, SaysWhyAnActCannotBeDone) {
    Person person;
    person.enter_house();
    person.say("look at flame electrode");
    EXPECT_TRUE(person.host.at_work->attempt().log().empty());
    EXPECT_THAT(person.host.told.back(), HasSubstr("cover"));
}

TEST(Actions, ThatNeedSomethingStayListedAndSayWhat) {
    Person person;
    person.enter_house();
    person.say("P2");
    bool refused = false;
    for (int i = 1; i <= 9; ++i)
        if (const auto* action = person.node("actions." + std::to_string(i)))
            refused =
                refused || (!action->enabled && action->hint.find("cover") != std::string::npos);
    EXPECT_TRUE(refused);
}

TEST(Actions, BeyondSixAreOnFurtherPages) {
    Person person;
    person.enter_house();
    ASSERT_NE(person.node("actions.6"), nullptr);
    EXPECT_EQ(person.node("actions.6")->name, "More …");
    person.type("6");
    EXPECT_NE(person.node("actions.1")->name, "Ask: problem");
    person.press(kit::Key::escape);
    EXPECT_EQ(person.node("actions.1")->name, "Ask: problem");
}

TEST(Actions, StayOnTheirPageAfterOneIsDone) {
    Person person;
    person.enter_house();
    person.type("6");
    const std::string first = person.node("actions.1")->name;
    person.type("1");
    EXPECT_EQ(person.node("actions.1")->name, first);
}

TEST(Actions, WithWordsOfTheirOwnOpenTheBoxWithTheirBeginning) {
    Person person;
    person.enter_house();
    person.say("customer");
    for (int page = 0; page < 12; ++page) {
        for (int i = 1; i <= 9; ++i) {
            const auto* action = person.node("actions." + std::to_string(i));
            if (action == nullptr || action->name != "Tell customer …") continue;
            person.type(std::to_string(i));
            ASSERT_NE(person.node("goto.name"), nullptr);
            person.type("it is safe now");
            person.press(kit::Key::enter);
            EXPECT_EQ(person.last_act(), "tell customer it is safe now");
            return;
        }
        person.type("6");
    }
    FAIL() << "no way to tell the customer";
}

TEST(Record, ReadsTheToolInHand) {
    Person person;
    person.enter_house();
    for (const char* words : {"shut gas at heater", "open test point inlet",
                              "attach manometer to inlet", "open gas at heater"})
        person.say(words);
    person.type("t1");
    person.type("r");
    EXPECT_EQ(person.last_act(), "read manometer");
    EXPECT_NE(person.node("evidence.reading.1"), nullptr);
    EXPECT_THAT(person.node("sheet.P1")->value, HasSubstr("manometer connected, reading 1"));
}

TEST(Record, SaysThatNothingIsInHand) {
    Person person;
    person.enter_house();
    person.type("r");
    EXPECT_TRUE(person.host.at_work->attempt().log().empty());
    EXPECT_THAT(person.host.told.back(), HasSubstr("Not now"));
}

TEST(Panel, KeysSetTheTemperatureAndOpenTheReadout) {
    Person person;
    person.enter_house();
    person.click("panel.up");
    EXPECT_EQ(person.last_act(), "set temperature to 51 °C");
    person.click("panel.readout");
    EXPECT_EQ(person.last_act(), "open service readout");
    EXPECT_EQ(person.node("actions.what")->name, "readout");
}

TEST(Causes, GoFromHeldToDoubtfulToStruckOut) {
    Person person;
    person.enter_house();
    const std::string word = person.host.at_work->suspects().front().word;
    person.click("causes." + word);
    EXPECT_EQ(person.last_act(), "doubt " + word);
    person.click("causes." + word);
    EXPECT_EQ(person.last_act(), "strike out " + word);
    EXPECT_THAT(person.node("causes." + word)->value, HasSubstr("struck out"));
}

TEST(Mouse, SelectsOnTheSheetAndActsInTheStrip) {
    Person person;
    person.enter_house();
    person.click("sheet.T4");
    EXPECT_EQ(person.node("actions.what")->name, "T4");
    person.click("actions.1");
    EXPECT_EQ(person.host.at_work->attempt().log().size(), 1U);
}

TEST(Mouse, DragsAToolToAPoint) {
    Person person;
    person.enter_house();
    const auto from = person.node("bench.tool.1")->visible.centre();
    const auto to = person.node("sheet.P1")->visible.centre();
    person.program.event(kit::PointerPress{from, false, {}});
    person.look();
    person.program.event(kit::PointerRelease{to, false});
    person.look();
    EXPECT_EQ(person.last_act(), "attach manometer to inlet");
}

TEST(Clock, RunsAtItsSpeedInWholeTicks) {
    Person person;
    person.enter_house();
    const auto before = person.host.at_work->attempt().tick();
    for (int i = 0; i < 20; ++i) person.program.elapse(0.05);
    EXPECT_EQ(person.host.at_work->attempt().tick() - before, 10);
    person.type("ss");
    for (int i = 0; i < 20; ++i) person.program.elapse(0.05);
    EXPECT_EQ(person.host.at_work->attempt().tick() - before, 210);
}

TEST(Clock, StandsWhilePaused) {
    Person person;
    person.enter_house();
    person.type("h");
    person.press(kit::Key::escape);
    person.click("rail.pause");
    const auto before = person.host.at_work->attempt().tick();
    for (int i = 0; i < 20; ++i) person.program.elapse(0.05);
    EXPECT_EQ(person.host.at_work->attempt().tick(), before);
}

TEST(Clock, DropsWhatAStallOwesAndSaysSo) {
    Person person;
    person.enter_house();
    const auto before = person.host.at_work->attempt().tick();
    person.program.elapse(3.0);
    EXPECT_EQ(person.host.at_work->attempt().tick() - before, 2);
    EXPECT_THAT(person.host.told.back(), HasSubstr("held up"));
    const auto said = person.host.told.size();
    person.program.elapse(3.0);
    EXPECT_EQ(person.host.told.size(), said) << "said once, not at every picture";
}

TEST(Waits, AreChosenAndRepeated) {
    Person person;
    person.enter_house();
    person.type("W");
    person.type("1");
    EXPECT_EQ(person.last_act(), "wait 10 s");
    person.type("W");
    person.type("3");
    EXPECT_EQ(person.last_act(), "wait 2 min");
    person.type("w");
    EXPECT_EQ(person.host.at_work->attempt().log().size(), 3U);
    EXPECT_EQ(person.last_act(), "wait 2 min");
}

TEST(Coached, PutsAnUnsafeActInFrontUntilItIsRead) {
    Person person;
    person.enter_house();
    person.say("open test point inlet");
    ASSERT_NE(person.node("notice.words"), nullptr);
    EXPECT_FALSE(person.program.desk()->runs());
    person.press(kit::Key::escape);
    EXPECT_EQ(person.node("notice.words"), nullptr);
}

TEST(Assessed, StatesNoJudgement) {
    Person person;
    person.enter_assessed();
    person.say("open test point inlet");
    EXPECT_EQ(person.node("notice.words"), nullptr);
}

TEST(Assessed, EndsAtTheTimeAllowedAndLeavesTheWriteUp) {
    worksite::Job job = worksite::test_job();
    job.time_allowed_s = 600.0;
    Person person(job);
    person.enter_assessed();
    EXPECT_THAT(person.node("rail.clock")->value, HasSubstr("of 10 min"));
    person.say("wait 9 min");
    ASSERT_EQ(person.node("sheet.paused"), nullptr);
    person.say("wait 2 min");
    EXPECT_THAT(person.node("status.line")->name, HasSubstr("time allowed is up"));
    ASSERT_NE(person.node("sheet.paused"), nullptr);
    EXPECT_THAT(person.node("sheet.paused")->name, HasSubstr("Time is up"));
    EXPECT_FALSE(person.program.desk()->runs());
    person.say("look at display");
    EXPECT_EQ(person.last_act(), "wait 2 min");
    person.press(kit::Key::escape);
    person.press(kit::Key::f2);
    EXPECT_EQ(person.program.place(), Place::write_up);
}

TEST(WriteUp, CitesReadingsAndHandsIn) {
    Person person;
    person.enter_house();
    person.say("look at display");
    person.press(kit::Key::f2);
    ASSERT_EQ(person.program.place(), Place::write_up);
    EXPECT_FALSE(person.node("form.hand-in")->enabled);
    person.press(kit::Key::enter);
    person.press(kit::Key::enter);
    EXPECT_THAT(person.last_act(), HasSubstr("write cause"));
    person.click("form.because");
    person.type("The display said it: #1");
    EXPECT_THAT(person.node("evidence.reading.1")->value, HasSubstr(", cited"));
    person.program.elapse(1.0);
    EXPECT_EQ(person.host.kept.because, "The display said it: #1");
    person.press(kit::Key::enter, {.control = true});
    person.click("question.yes");
    person.wait_for(Place::debrief);
}

TEST(Leaving, KeepsTheAttempt) {
    Person person;
    person.enter_house();
    person.leave_house();
    EXPECT_EQ(person.program.place(), Place::choose);
    EXPECT_EQ(person.host.left, 1);
    EXPECT_THAT(person.node("head.title")->value, HasSubstr("kept"));
}

TEST(Resuming, SaysSoAndBringsTheDraftBack) {
    Person person;
    person.enter_house();
    person.host.can_resume = true;
    person.leave_house();
    EXPECT_EQ(person.node("start.go")->name, "Go on where you left");
    person.click("start.go");
    person.wait_for(Place::job);
    EXPECT_THAT(person.host.told, Contains(HasSubstr("Attempt resumed")));
    person.press(kit::Key::f2);
    EXPECT_EQ(person.program.desk()->draft().done, "written before");
}

TEST(HandingIn, IsAskedAboutWhereverItIsSaid) {
    Person person;
    person.enter_house();
    person.say("write cause no_fault");
    for (const char* words : {"hand in", "Hand  in "}) {
        person.say(words);
        ASSERT_NE(person.node("question.yes"), nullptr) << words;
        EXPECT_EQ(person.node("question.yes")->name, "Hand in");
        person.press(kit::Key::escape);
        EXPECT_EQ(person.last_act(), "write cause no_fault") << "nothing was done";
        EXPECT_EQ(person.program.place(), Place::job);
    }
    person.say("hand in");
    person.click("question.yes");
    person.wait_for(Place::debrief);
    EXPECT_EQ(person.host.weighed, 1);
}

TEST(Debrief, StepsAndReplays) {
    Person person;
    person.enter_house();
    person.say("write cause no_fault");
    person.hand_in();
    person.wait_for(Place::debrief);
    person.press(kit::Key::right);
    EXPECT_THAT(person.node("status.line")->name, HasSubstr("Step 2 of 2"));
    person.type("r");
    person.wait_for(Place::replay);
    EXPECT_EQ(person.host.replayed, 2U);
    person.say("open kitchen tap fully");
    EXPECT_TRUE(person.host.at_work->attempt().log().empty());
    person.press(kit::Key::escape);
    EXPECT_EQ(person.program.place(), Place::debrief);
}

TEST(Trouble, IsShownWithItsWaysOut) {
    Person person;
    person.host.refusal = "This job cannot be opened";
    person.press(kit::Key::enter);
    person.wait_for(Place::error);
    person.press(kit::Key::enter);
    EXPECT_EQ(person.program.place(), Place::choose);
}

TEST(Settings, AreKeptAndChangeTheScreen) {
    Person person;
    person.press(kit::Key::f10);
    ASSERT_EQ(person.program.place(), Place::settings);
    person.click("looks.text.150");
    EXPECT_EQ(person.host.settings.text_percent, 150);
    EXPECT_EQ(person.program.scale(), 1.5);
    person.click("looks.night");
    EXPECT_TRUE(person.host.settings.night);
}

TEST(Settings, GiveAnActionAnotherKey) {
    Person person;
    person.press(kit::Key::f10);
    const auto row_of = [&](std::string_view command) {
        for (std::size_t i = 0; i < person.program.last_frame().tree.nodes().size(); ++i)
            if (person.program.last_frame().tree.at(i).command.argument == command) return i;
        return kit::nothing;
    };
    const auto record = row_of("record");
    ASSERT_NE(record, kit::nothing);
    person.focus(record);
    person.press(kit::Key::enter);
    person.type("x");
    EXPECT_EQ(person.host.settings.keys.at("record"), "X");
    person.focus(row_of("record"));
    person.press(kit::Key::enter);
    person.type("w");
    EXPECT_THAT(person.node("keys.problem")->name, HasSubstr("already means"));
    EXPECT_EQ(person.host.settings.keys.at("record"), "X");
}

TEST(Closing, LeavesTheVisitKept) {
    Person person;
    person.enter_house();
    person.program.event(kit::CloseRequest{});
    EXPECT_TRUE(person.program.closed());
    EXPECT_EQ(person.host.left, 1);
}

}  // namespace
}  // namespace emberpath::desktop
