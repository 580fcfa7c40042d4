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
    person.say("close kitchen tap");
    person.say("wait 2 min");
    EXPECT_THAT(person.host.told, Contains(HasSubstr("The burner goes out.")));
}

}  // namespace
}  // namespace emberpath::desktop
