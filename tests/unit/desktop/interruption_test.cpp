// Proves that a visit is weighed once and to its end, that words typed last are kept, that a record that cannot be
// written ends the visit and not the program, and that what is heard is also said.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"

namespace emberpath::desktop {
namespace {

using testing::Contains;
using testing::HasSubstr;

TEST(Weighing, BeginsOnceHoweverOftenKeysArePressed) {
    Person person;
    person.hand_in_and_hold();
    person.press(kit::Key::enter);
    person.press(kit::Key::enter);
    person.type("z");
    person.host.hold = false;
    person.wait_for(Place::debrief);
    EXPECT_EQ(person.host.weighed, 1);
}

TEST(Weighing, GoesOnToItsEndWhenSomebodyWantsToGoBack) {
    Person person;
    person.hand_in_and_hold();
    person.press(kit::Key::escape);
    person.program.elapse(1.0);
    person.look();
    ASSERT_EQ(person.program.place(), Place::loading);
    EXPECT_EQ(person.node("loading.back"), nullptr);
    person.press(kit::Key::escape);
    EXPECT_EQ(person.program.place(), Place::loading);
    person.host.hold = false;
    person.wait_for(Place::debrief);
}

TEST(Leaving, KeepsTheWordsTypedLast) {
    Person person;
    person.enter_house();
    person.press(kit::Key::f2);
    person.click("form.done");
    person.type("tightened it");
    person.press(kit::Key::escape);
    person.leave_house();
    EXPECT_EQ(person.host.kept_on_leaving.done, "tightened it");
    EXPECT_EQ(person.program.focus(), "start.go") << "not what lay behind the question";
}

TEST(ARecordThatCannotBeWritten, EndsTheVisitAndSaysWhy) {
    Person person;
    person.enter_house();
    person.host.at_work->disk_full = true;
    person.say("look at display");
    ASSERT_EQ(person.program.place(), Place::error);
    EXPECT_THAT(person.host.told.back(), HasSubstr("cannot be written"));
    person.press(kit::Key::enter);
    EXPECT_EQ(person.program.place(), Place::choose);
    EXPECT_FALSE(person.program.closed());
}

TEST(WhatIsHeard, IsSaidWhenItChangedDuringAnAct) {
    Person person;
    person.enter_house();
    person.program.elapse(0.1);
    person.say("open kitchen tap");
    person.say("wait 30 s");
    EXPECT_THAT(person.host.told, Contains(HasSubstr("The fan starts.")));
    EXPECT_THAT(person.host.told, Contains(HasSubstr("The burner lights.")));
    person.say("open kitchen tap a little");
    person.say("wait 1 min");
    EXPECT_THAT(person.host.told, Contains(HasSubstr("The fan comes down to a lower pitch.")));
    person.say("close kitchen tap");
    person.say("wait 2 min");
    EXPECT_THAT(person.host.told, Contains(HasSubstr("The burner goes out.")));
}

TEST(WhatIsHeard, StandsBesideTheWordsThatWereNotReadYet) {
    Person person;
    person.enter_house();
    person.say("open kitchen tap");
    const auto status = [&] { return person.node("status.line")->name; };
    const std::string done = status();
    person.until([&] { return status() != done; }, 0.05);
    EXPECT_THAT(status(), testing::StartsWith(done));
    EXPECT_GT(status().size(), done.size());
    for (int i = 0; i < 300; ++i) person.program.elapse(0.05);
    person.say("close kitchen tap");
    EXPECT_EQ(status().find("Water runs"), std::string::npos) << "that was read long ago";
}

TEST(AVisitThatCannotBeTakenUp, OffersToStartAfresh) {
    Person person;
    person.enter_house();
    person.host.can_resume = true;
    person.leave_house();
    person.host.refusal = "This attempt cannot be taken up again";
    person.click("start.go");
    person.wait_for(Place::error);
    ASSERT_EQ(person.node("error.way.2")->name, "Start afresh");
    person.host.refusal.clear();
    person.click("error.way.2");
    person.wait_for(Place::job);
}

TEST(TheList, BeginsWithTheHouseThatWasLeft) {
    MemoryHost host(worksite::test_job());
    host.can_resume = true;
    host.others_before = 30;
    MemoryClipboard clipboard;
    Program program(host, typeface(), clipboard, {});
    (void)program.frame({1280.0, 800.0});
    const auto& tree = program.last_frame().tree;
    EXPECT_EQ(tree.get("start.go")->name, "Go on where you left");
    EXPECT_TRUE(tree.get("jobs.test")->selected);
    EXPECT_FALSE(tree.get("jobs.test")->visible.empty()) << "and it is scrolled into view";
}

TEST(StartingAfresh, AsksFirstWhileAnAttemptIsUnderWay) {
    Person person;
    person.enter_house();
    person.host.can_resume = true;
    person.leave_house();
    person.click("start.afresh");
    ASSERT_NE(person.node("question.words"), nullptr);
    EXPECT_THAT(person.node("question.words")->name, HasSubstr("stays on disk"));
    person.press(kit::Key::escape);
    for (int i = 0; i < 20; ++i) person.program.elapse(0.01);
    EXPECT_EQ(person.program.place(), Place::choose);
    person.click("start.afresh");
    person.click("question.yes");
    person.wait_for(Place::job);
    EXPECT_TRUE(person.host.at_work->attempt().log().empty());
}

TEST(AFinishedDebrief, IsOpenedAgainFromTheList) {
    Person person;
    EXPECT_EQ(person.node("start.debrief"), nullptr);
    person.host.can_debrief = true;
    person.enter_house();
    person.leave_house();
    person.click("start.debrief");
    person.wait_for(Place::debrief);
    EXPECT_EQ(person.host.reopened, 1);
    person.type("r");
    person.wait_for(Place::replay);
}

TEST(AFinishedDebrief, IsWeighedAgainWithARulerByTheMinutesDone) {
    Person person;
    person.host.can_debrief = true;
    person.enter_house();
    person.leave_house();
    person.host.minutes_weighed = 20.0;
    person.host.share_weighed = 0.25;
    person.host.hold = true;
    person.click("start.debrief");
    person.until([&] { return person.node("loading.progress") != nullptr; }, 0.1);
    ASSERT_NE(person.node("loading.progress"), nullptr);
    EXPECT_EQ(person.node("loading.progress")->value, "25 %");
    std::string all;
    for (const auto& layer : person.program.last_frame().layers) all += layer.as_text();
    EXPECT_THAT(all, HasSubstr("5 of 20 minutes before you came"));
    person.host.hold = false;
    person.wait_for(Place::debrief);
}

TEST(AListThatCannotBeRead, IsAnErrorWithARemedyAndNotTheEnd) {
    Person person;
    person.host.no_list = "There are no jobs to choose from";
    person.enter_house();
    person.leave_house();
    ASSERT_EQ(person.program.place(), Place::error);
    EXPECT_EQ(person.program.focus(), "error.way.1");
    person.host.no_list.clear();
    person.press(kit::Key::enter);
    EXPECT_EQ(person.program.place(), Place::choose);
    EXPECT_FALSE(person.program.closed());
}

TEST(AWriteUpThatCannotBeKept, SaysSoUntilItIs) {
    Person person;
    person.enter_house();
    person.press(kit::Key::f2);
    person.click("form.done");
    person.host.disk_gone = true;
    person.type("tightened it");
    person.program.elapse(1.0);
    person.look();
    EXPECT_THAT(person.host.told.back(), HasSubstr("is not kept"));
    EXPECT_THAT(person.node("status.line")->name, HasSubstr("Not kept"));
    person.host.disk_gone = false;
    person.type(".");
    person.program.elapse(1.0);
    person.look();
    EXPECT_EQ(person.host.kept.done, "tightened it.");
    EXPECT_EQ(person.node("status.line")->name.find("Not kept"), std::string::npos);
}

TEST(AReadingTakenTooSoon, SaysThatTheFigureStillMoves) {
    Person person;
    person.enter_house();
    for (const char* words : {"shut gas at heater", "open test point inlet",
                              "attach manometer to inlet", "open gas at heater"})
        person.say(words);
    person.press(kit::Key::escape);
    person.say("wait 2 min");
    person.type("t1r");
    EXPECT_EQ(person.node("status.line")->name.find("moving"), std::string::npos)
        << person.node("status.line")->name;
    person.say("switch on analyser");
    person.say("wait 2 min");
    person.say("put probe in flue");
    person.say("open kitchen tap fully");
    person.say("wait 10 s");
    person.say("read analyser");
    EXPECT_THAT(person.host.told.back(), HasSubstr("still moving"));
}

}  // namespace
}  // namespace emberpath::desktop
