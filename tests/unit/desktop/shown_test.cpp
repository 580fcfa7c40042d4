// Proves that the job screen says what people look for on it: names of tools, of readings and of services, what
// was said so far, what the write-up still lacks, and how long a wait has taken.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"
#include "ui/desktop/job_fill.hpp"

namespace emberpath::desktop {
namespace {

using testing::HasSubstr;

TEST(JobCard, HoldsWhatTheOfficeWroteAndAllThatTheCustomerSaid) {
    Person person;
    person.enter_house();
    person.say("ask about problem");
    person.say("ask about when");
    person.type("h");
    ASSERT_NE(person.node("jobcard.office"), nullptr);
    EXPECT_EQ(person.node("jobcard.office")->value, person.host.at_work->card().call_out);
    ASSERT_NE(person.node("jobcard.said.1"), nullptr);
    EXPECT_THAT(person.node("jobcard.said.1")->name, HasSubstr("ask about problem"));
    EXPECT_THAT(person.node("jobcard.said.1")->value, HasSubstr("It is not as it was."));
    ASSERT_NE(person.node("jobcard.said.2"), nullptr);
    EXPECT_THAT(person.node("jobcard.said.2")->name, HasSubstr("ask about when"));
}

TEST(Pointer, ReachesTheOtherSheetTheJobCardAndTheKeysAtTheFootOfTheScreen) {
    Person person;
    person.enter_house();
    person.click("status.other sheet");
    EXPECT_NE(person.node("sheet.title"), nullptr);
    person.click("status.other sheet");
    EXPECT_EQ(person.node("sheet.title"), nullptr);
    person.click("status.job card");
    ASSERT_NE(person.node("jobcard.office"), nullptr);
    person.click("jobcard.close");
    person.click("status.help");
    EXPECT_NE(person.node("keys.list"), nullptr);
    person.click("keys.close");
    person.click("status.go to");
    EXPECT_NE(person.node("goto.name"), nullptr);
}

TEST(Foot, OffersToRunOnOnlyWhileTimeIsLeft) {
    worksite::Job job = worksite::test_job();
    job.time_allowed_s = 600.0;
    Person person(job);
    person.enter_assessed();
    ASSERT_NE(person.node("status.pause"), nullptr);
    person.click("status.pause");
    EXPECT_EQ(person.node("status.pause")->name, "run");
    person.say("wait 11 min");
    EXPECT_EQ(person.node("status.pause"), nullptr);
    for (const char* of_time : {"rail.pause", "rail.speed.5", "rail.wait", "rail.waits"})
        EXPECT_EQ(person.node(of_time), nullptr) << of_time;
    for (const char* key : {"p", "s", "w", "W"}) {
        person.type(key);
        EXPECT_EQ(person.node("status.line")->name, "The time allowed is up.") << key;
        EXPECT_EQ(person.node("waits.1"), nullptr);
    }
    person.click("status.write-up");
    EXPECT_EQ(person.program.place(), Place::write_up);
}

TEST(Foot, KeepsTheRecordAndTheWriteUpAloneWhenTimeIsUpInASmallWindow) {
    worksite::Job job = worksite::test_job();
    job.time_allowed_s = 600.0;
    Person person(job, {640.0, 400.0});
    person.enter_assessed();
    EXPECT_NE(person.node("foot.wait"), nullptr);
    person.say("wait 11 min");
    for (const char* of_time : {"foot.pause", "foot.speed", "foot.wait"})
        EXPECT_EQ(person.node(of_time), nullptr) << of_time;
    EXPECT_NE(person.node("foot.record"), nullptr);
    person.click("foot.write-up");
    EXPECT_EQ(person.program.place(), Place::write_up);
}

TEST(Pointer, ReachesTheOtherSheetAndAllThatWasSaidInASmallWindow) {
    Person person(worksite::test_job(), {640.0, 400.0});
    person.enter_house();
    person.click("tabs.other");
    EXPECT_NE(person.node("sheet.title"), nullptr);
    person.click("tabs.other");
    EXPECT_EQ(person.node("sheet.title"), nullptr);
    person.say("ask about problem");
    person.click("tabs.card");
    EXPECT_NE(person.node("jobcard.said.1"), nullptr);
}

TEST(Bench, NamesItsToolsWhileNothingIsInHand) {
    Person person;
    person.enter_house();
    std::string seen;
    for (const auto& text : person.program.last_frame().texts) seen += text.text + "\n";
    for (const auto& tool : belt()) EXPECT_THAT(seen, HasSubstr(std::string(tool.name) + "\n"));
}

TEST(Bench, SaysWhyAKeyOfAToolDoesNothingNow) {
    Person person;
    person.enter_house();
    person.type("t2");
    ASSERT_NE(person.node("bench.key.1"), nullptr);
    EXPECT_EQ(person.node("bench.key.1")->hint, "not attached");
    person.click("bench.key.1");
    EXPECT_THAT(person.node("status.line")->name, HasSubstr("not attached"));
}

TEST(Rail, NeverShortensALeakTestToALeak) {
    Person person(worksite::test_job(), {960.0, 540.0});
    person.enter_house();
    person.say("leak test with fluid");
    EXPECT_EQ(person.node("rail.gas")->value, "Leak tested");
    for (const auto& text : person.program.last_frame().texts) EXPECT_NE(text.text, "Leak");
}

TEST(Rail, SaysThatTheFlueTerminalWasClearedUntilItIsLookedAtAgain) {
    Person person(worksite::test_job({worksite::fault(faults::Cause::flue_blocked, 0.9)}));
    person.enter_house();
    person.say("look at flue terminal");
    const std::string before = person.node("rail.flue")->value;
    person.say("put on glasses");
    person.say("clear flue terminal");
    EXPECT_EQ(person.node("rail.flue")->value, "Cleared");
    person.say("look at flue terminal");
    EXPECT_EQ(person.node("rail.flue")->value, "Clear");
    EXPECT_NE(before, "Clear");
}

TEST(Record, SaysOfWhatAReadingIsWhereThePlaceDoesNot) {
    Person person;
    person.enter_house();
    person.say("open service readout");
    person.say("read readout all");
    const auto status = person.node("status.line")->name;
    EXPECT_THAT(status, testing::StartsWith("Readings 1 to "));
    EXPECT_THAT(status, HasSubstr("inlet temperature "));
    EXPECT_EQ(status.find("service readout"), std::string::npos) << status;
    std::string seen;
    for (const auto& text : person.program.last_frame().texts) seen += text.text + "\n";
    EXPECT_THAT(seen, HasSubstr("ambient temperature\n")) << "the newest, in the list";
}

TEST(WriteUp, SaysInCoachedModeThatTheCustomerWasNotToldYet) {
    Person person;
    person.enter_house();
    person.press(kit::Key::f2);
    EXPECT_THAT(person.node("form.hint")->name, HasSubstr("Nothing was told to the customer"));
    person.press(kit::Key::f2);
    person.say("tell customer it is safe");
    person.press(kit::Key::f2);
    EXPECT_EQ(person.node("form.hint")->name.find("Nothing was told"), std::string::npos);
}

TEST(WriteUp, StatesInAssessedModeOnlyWhatIsEmpty) {
    Person person;
    person.enter_assessed();
    person.press(kit::Key::f2);
    EXPECT_THAT(person.node("form.hint")->name, HasSubstr("Still empty: the cause"));
    EXPECT_EQ(person.node("form.hint")->name.find("Nothing was told"), std::string::npos);
}

TEST(GoTo, SaysWhatEachActTakesAtTheRightOfItsRow) {
    Person person;
    person.enter_house();
    person.type("/");
    person.type("open bath tap fully");
    const std::string cost = person.node("goto.act")->value;
    EXPECT_EQ(cost,
              views::cost_text(person.host.at_work->attempt().seconds_for("open bath tap fully")));
    double right_of_name = 0.0, right_of_cost = 0.0;
    for (const auto& text : person.program.last_frame().texts) {
        if (text.text == "Do it: open bath tap fully") right_of_name = text.ink.right();
        if (text.text == cost) right_of_cost = std::max(right_of_cost, text.ink.right());
    }
    EXPECT_GT(right_of_name, 0.0);
    EXPECT_GT(right_of_cost, right_of_name);
}

TEST(Weighing, FillsItsRulerByMinutesWhereTheyCount) {
    Person person;
    person.host.share_weighed = 0.6;
    person.host.minutes_weighed = 30.0;
    person.hand_in_and_hold();
    person.until([&] { return person.node("loading.progress") != nullptr; }, 1.0);
    ASSERT_NE(person.node("loading.progress"), nullptr);
    EXPECT_EQ(person.node("loading.progress")->value, "60 %");
    EXPECT_THAT(person.node("loading.words")->name, testing::StartsWith("18 of 30 minutes"));
    person.host.share_weighed = -1.0;
    person.until([&] { return person.node("loading.progress") == nullptr; });
    EXPECT_EQ(person.node("loading.progress"), nullptr) << "what cannot be told has no ruler";
    EXPECT_THAT(person.node("loading.words")->name, HasSubstr("is replayed"));
    person.host.hold = false;
    person.wait_for(Place::debrief);
}

TEST(Weighing, SaysHowLongItHasTaken) {
    Person person;
    person.hand_in_and_hold();
    person.program.elapse(1.0);
    person.look();
    ASSERT_EQ(person.program.place(), Place::loading);
    EXPECT_EQ(person.node("loading.words")->value, "");
    person.program.elapse(11.5);
    person.look();
    EXPECT_EQ(person.node("loading.words")->value, "12 s so far");
    person.host.hold = false;
    person.wait_for(Place::debrief);
}

}  // namespace
}  // namespace emberpath::desktop
