// Proves how the debrief's chart is changed from the causes to the remedies left and back, and what it tells.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"

namespace emberpath::desktop {
namespace {

using testing::HasSubstr;

void come_to_the_debrief(Person& person) {
    person.enter_house();
    person.say("write cause no_fault");
    person.hand_in();
    person.wait_for(Place::debrief);
}

void chart_two_causes(Person& person) {
    person.host.likely = {"gas pipe too small", "all others"};
    person.host.stands = {{0.0, 0, {0.25, 0.75}, {"25 %", "75 %"}},
                          {2.0, 2, {0.995, 0.005}, {">99 %", "<1 %"}}};
}

TEST(DebriefChart, CChangesTheChartFromTheCausesToTheRemediesLeftAndBack) {
    Person person;
    chart_two_causes(person);
    come_to_the_debrief(person);
    ASSERT_NE(person.node("steps.lane.causes"), nullptr);
    EXPECT_TRUE(person.node("steps.lane.causes")->selected);
    EXPECT_NE(person.node("steps.cause.0"), nullptr);
    person.type("c");
    EXPECT_TRUE(person.node("steps.lane.left")->selected);
    EXPECT_EQ(person.node("steps.cause.0"), nullptr);
    EXPECT_THAT(person.host.told.back(), HasSubstr("how many remedies were left"));
    person.type("c");
    EXPECT_TRUE(person.node("steps.lane.causes")->selected);
    EXPECT_THAT(person.host.told.back(), HasSubstr("how likely the causes were"));
    person.click("steps.lane.left");
    EXPECT_TRUE(person.node("steps.lane.left")->selected);
    person.click("steps.lane.left");
    EXPECT_TRUE(person.node("steps.lane.left")->selected) << "chosen, not changed";
    person.press(kit::Key::f1);
    std::string all;
    for (const auto& node : person.program.last_frame().tree.nodes())
        if (node.id.starts_with("keys.")) all += node.name + "=" + node.value + "\n";
    EXPECT_THAT(all, HasSubstr("C=chart of the causes, or of the remedies left"));
}

TEST(DebriefChart, CGoesToTheChartWhereOnePartStandsAtATime) {
    Person person(worksite::test_job(), {960.0, 540.0});
    chart_two_causes(person);
    come_to_the_debrief(person);
    ASSERT_EQ(person.node("steps.chart"), nullptr);
    person.type("c");
    EXPECT_NE(person.node("steps.chart"), nullptr);
}

TEST(DebriefChart, CSaysWhereNothingWasWeighedThatNoCauseCanBeCharted) {
    Person person;
    come_to_the_debrief(person);
    EXPECT_EQ(person.node("steps.lane.causes"), nullptr);
    person.type("c");
    EXPECT_THAT(person.node("status.line")->name, HasSubstr("Nothing was weighed"));
    EXPECT_EQ(person.node("steps.cause.0"), nullptr);
}

TEST(DebriefChart, GoThroughStepsAndTheirCauses) {
    Person person;
    chart_two_causes(person);
    come_to_the_debrief(person);
    EXPECT_THAT(person.node("steps.chart")->value,
                HasSubstr("on arrival: gas pipe too small (what it was) 25 %, all others 75 %"));
    EXPECT_EQ(person.node("steps.cause.1")->value, "75 %");
    person.press(kit::Key::right);
    EXPECT_THAT(person.node("steps.chart")->value,
                HasSubstr("gas pipe too small (what it was) over 99 %, all others under 1 %"));
    EXPECT_EQ(person.node("steps.cause.1")->value, "under 1 %");
}

}  // namespace
}  // namespace emberpath::desktop
