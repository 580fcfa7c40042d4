// Proves what each key does in the program, place by place, and that help and settings tell the truth about it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"

namespace emberpath::desktop {
namespace {

using testing::HasSubstr;

bool runs(const Person& person) {
    return person.program.desk()->runs();
}

TEST(HouseKeys, PauseByPAnywhereAndBySpaceUnlessAButtonHasTheFocus) {
    Person person;
    person.enter_house();
    ASSERT_TRUE(runs(person));
    person.type("p");
    EXPECT_FALSE(runs(person));
    person.type("p");
    EXPECT_TRUE(runs(person));
    person.click("sheet.P1");
    person.press(kit::Key::space);
    EXPECT_FALSE(runs(person));
    person.press(kit::Key::space);
    EXPECT_TRUE(runs(person));
    person.say("customer");
    ASSERT_EQ(person.program.focus(), "sheet.P1");
    person.press(kit::Key::f3);
    person.press(kit::Key::space);
    EXPECT_TRUE(runs(person)) << "the panel's button was pressed instead";
    EXPECT_EQ(person.last_act(), "turn off heater");
}

TEST(HouseKeys, F3GoesToTheFrontPanel) {
    Person person;
    person.enter_house();
    person.press(kit::Key::f3);
    EXPECT_EQ(person.program.focus(), "panel.power");
    EXPECT_EQ(person.node("actions.what")->name, "panel");
}

TEST(HouseKeys, COpensTheCausesAndGoesBack) {
    Person person;
    person.enter_house();
    person.type("c");
    EXPECT_THAT(person.program.focus(), testing::StartsWith("causes."));
    person.type("c");
    EXPECT_EQ(person.program.focus(), "evidence.record");
}

TEST(HouseKeys, TThenANumberTakesTheToolAndTheSameAgainPutsItBack) {
    Person person;
    person.enter_house();
    person.type("t2");
    EXPECT_TRUE(person.node("bench.tool.2")->selected);
    person.type("t2");
    EXPECT_FALSE(person.node("bench.tool.2")->selected);
    person.type("t");
    person.press(kit::Key::escape);
    EXPECT_TRUE(person.host.at_work->attempt().log().empty());
}

TEST(EverywhereKeys, ChangeTheTextSizeAndTheColours) {
    Person person;
    person.press(kit::Key::plus, {.shift = true, .control = true});
    EXPECT_EQ(person.host.settings.text_percent, 125) << "as + is typed on many keyboards";
    person.press(kit::Key::plus, {.control = true});
    EXPECT_EQ(person.host.settings.text_percent, 150);
    person.press(kit::Key::minus, {.control = true});
    EXPECT_EQ(person.host.settings.text_percent, 125);
    person.press(kit::Key::zero, {.control = true});
    EXPECT_EQ(person.host.settings.text_percent, 100);
    person.press(kit::Key::minus, {.control = true});
    EXPECT_EQ(person.host.settings.text_percent, 100) << "the smallest there is";
    person.press(kit::Key::d, {.control = true});
    EXPECT_TRUE(person.host.settings.night);
}

TEST(EverywhereKeys, F1ShowsTheKeysOfThePlace) {
    Person person;
    person.press(kit::Key::f1);
    ASSERT_NE(person.node("keys.list"), nullptr);
    person.press(kit::Key::escape);
    EXPECT_EQ(person.node("keys.list"), nullptr);
    person.enter_house();
    person.press(kit::Key::f1);
    std::string all;
    for (const auto& node : person.program.last_frame().tree.nodes())
        if (node.id.starts_with("keys.")) all += node.name + "=" + node.value + "\n";
    EXPECT_THAT(all, HasSubstr("1 to 6=that action on the selected thing"));
    EXPECT_THAT(all, HasSubstr("? or F1=all keys"));
    EXPECT_THAT(all, HasSubstr("Shift Left=further left"));
}

TEST(AuthorKeys, LookAgainWithF9AndPlayWithF5) {
    Person person(worksite::test_job(), {1280.0, 800.0}, true);
    person.wait_for(Place::author);
    person.press(kit::Key::f9);
    person.until([&] { return person.host.previews == 2 && !person.program.moves(); });
    EXPECT_EQ(person.host.previews, 2);
    person.press(kit::Key::f5);
    person.wait_for(Place::job);
}

// --- the drawing ---

double place_of(const Person& person, const char* id, bool level) {
    const auto& r = person.node(id)->bounds;
    return level ? r.x : r.y;
}

TEST(Sheet, ComesNearerAndIsShiftedByKeysAndByDragging) {
    Person person;
    person.enter_house();
    person.click("sheet.P1");
    const double at_first = place_of(person, "sheet.A2", true);
    person.press(kit::Key::left, {.shift = true});
    EXPECT_EQ(place_of(person, "sheet.A2", true), at_first) << "all of it is in view";
    EXPECT_THAT(person.host.told.back(), HasSubstr("in view"));
    person.type("+++");
    const double nearer = place_of(person, "sheet.A2", true);
    EXPECT_NE(nearer, at_first);
    person.press(kit::Key::right, {.shift = true});
    EXPECT_NEAR(place_of(person, "sheet.A2", true), nearer - 80.0, 1.0);
    const auto empty = person.node("sheet.points")->visible;
    kit::Point hold{};
    for (double y = empty.y + 20.0; y < empty.bottom() && hold.x == 0.0; y += 10.0) {
        bool free = true;
        const kit::Point at{empty.centre().x, y};
        for (const auto& node : person.program.last_frame().tree.nodes())
            free = free && !(node.focusable && node.visible.contains(at));
        if (free) hold = at;
    }
    const double before = place_of(person, "sheet.A2", false);
    person.program.event(kit::PointerPress{hold, false, {}});
    person.look();
    person.program.event(kit::PointerMove{hold + kit::Point{0.0, 30.0}});
    person.look();
    person.program.event(kit::PointerRelease{hold + kit::Point{0.0, 30.0}, false});
    person.look();
    EXPECT_NEAR(place_of(person, "sheet.A2", false), before + 30.0, 1.0);
    person.type("---");
    EXPECT_NEAR(place_of(person, "sheet.A2", true), at_first, 0.01);
}

TEST(Sheet, BringsTheSelectedThingIntoViewAndStandsStillUnderThePointer) {
    Person person;
    person.enter_house();
    person.click("sheet.A1");
    person.type("++++++");
    EXPECT_TRUE(person.node("sheet.points")->visible.contains(person.node("sheet.A1")->bounds));
    person.say("T4");
    EXPECT_EQ(person.node("actions.what")->name, "T4");
    EXPECT_TRUE(person.node("sheet.points")->visible.contains(person.node("sheet.T4")->bounds));
    // A click on whatever is seen selects it, though the drawing may move for it afterwards.
    for (const char* id : {"sheet.T4", "sheet.T6", "sheet.A2", "sheet.P1"}) {
        if (person.node(id) == nullptr || person.node(id)->visible.w < 20.0) continue;
        person.click(id);
        EXPECT_EQ("sheet." + person.node("actions.what")->name, id);
    }
}

// --- debrief and replay ---

std::vector<screens::StepView> five_steps() {
    std::vector<screens::StepView> steps(5);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        steps[i].minute = static_cast<double>(i + 1);
        steps[i].title = "Done " + std::to_string(i + 1);
    }
    steps[1].balloon = 1;
    steps[3].unsafe = true;
    return steps;
}

void come_to_the_debrief(Person& person) {
    person.host.steps = five_steps();
    person.enter_house();
    person.say("write cause no_fault");
    person.hand_in();
    person.wait_for(Place::debrief);
}

TEST(DebriefKeys, GoThroughStepsAndMarkedMoments) {
    Person person;
    come_to_the_debrief(person);
    const auto status = [&] { return person.node("status.line")->name; };
    person.press(kit::Key::right);
    person.press(kit::Key::right);
    EXPECT_THAT(status(), HasSubstr("Step 3 of 5"));
    person.press(kit::Key::left);
    EXPECT_THAT(status(), HasSubstr("Step 2 of 5"));
    person.press(kit::Key::left);
    person.press(kit::Key::left);
    EXPECT_THAT(status(), HasSubstr("Step 1 of 5")) << "there is none before the first";
    person.press(kit::Key::down, {.control = true});
    EXPECT_THAT(status(), HasSubstr("Step 2 of 5")) << "a reading";
    person.press(kit::Key::down, {.control = true});
    EXPECT_THAT(status(), HasSubstr("Step 4 of 5")) << "an unsafe act";
    person.press(kit::Key::up, {.control = true});
    EXPECT_THAT(status(), HasSubstr("Step 2 of 5"));
    person.type("t");
    EXPECT_THAT(person.program.focus(), testing::StartsWith("table."));
}

void wait_for_replay_of(Person& person, std::size_t acts) {
    person.until([&] { return person.host.replayed == acts && !person.program.moves(); });
    ASSERT_EQ(person.program.place(), Place::replay);
    EXPECT_EQ(person.host.replayed, acts);
}

TEST(Replay, GoesFromStepToStepAndToMarkedMoments) {
    Person person;
    come_to_the_debrief(person);
    person.type("r");
    person.wait_for(Place::replay);
    wait_for_replay_of(person, 1);
    EXPECT_EQ(person.node("replay.where")->name, "Replay  step 1 of 5");
    EXPECT_FALSE(person.node("replay.back")->enabled);
    person.press(kit::Key::right, {.control = true});
    wait_for_replay_of(person, 2);
    person.press(kit::Key::down, {.control = true});
    wait_for_replay_of(person, 4);
    EXPECT_EQ(person.node("replay.where")->value, "Done 4");
    EXPECT_FALSE(person.node("replay.mark-on")->enabled);
    person.press(kit::Key::left, {.control = true});
    wait_for_replay_of(person, 3);
    person.click("replay.mark-back");
    wait_for_replay_of(person, 2);
    person.click("replay.on");
    wait_for_replay_of(person, 3);
    EXPECT_THAT(person.node("status.line")->name, HasSubstr("Step 3 of 5: Done 3"));
}

TEST(Replay, KeepsTheEyeWhereItWasAndTellsItsKeys) {
    Person person;
    come_to_the_debrief(person);
    person.type("r");
    person.wait_for(Place::replay);
    wait_for_replay_of(person, 1);
    person.say("P1");
    person.type("z++");
    const auto there = person.node("sheet.P1")->bounds;
    person.press(kit::Key::right, {.control = true});
    wait_for_replay_of(person, 2);
    EXPECT_EQ(person.node("sheet.P1")->bounds, there);
    EXPECT_EQ(person.node("rail.pause"), nullptr) << "no time runs that could be stopped";
    person.press(kit::Key::f1);
    std::string all;
    for (const auto& node : person.program.last_frame().tree.nodes())
        if (node.id.starts_with("keys.")) all += node.name + "=" + node.value + "\n";
    EXPECT_THAT(all, HasSubstr("Ctrl Right=next step"));
    EXPECT_THAT(all, HasSubstr("Ctrl Up=previous reading or unsafe act"));
    EXPECT_THAT(all, testing::Not(HasSubstr("record the reading")));
}

TEST(Replay, ShowsWhatHungWhereAndOffersNothingToDo) {
    Person person;
    come_to_the_debrief(person);
    person.type("r");
    person.wait_for(Place::replay);
    wait_for_replay_of(person, 1);
    ASSERT_NE(person.node("bench.heading"), nullptr);
    EXPECT_EQ(person.node("bench.heading")->value, "nothing connected");
    for (const auto& text : person.program.last_frame().texts)
        EXPECT_EQ(text.text.find("press T"), std::string::npos) << text.text;
    EXPECT_FALSE(person.node("actions.1")->enabled);
    person.click("bench.tool.2");
    EXPECT_THAT(person.node("bench.heading")->value, HasSubstr("multimeter"));
    EXPECT_EQ(person.node("bench.key.1"), nullptr) << "its keys would be acts";
}

// --- coming back ---

TEST(ComingBack, FindsTheKeyboardWhereItWas) {
    Person person;
    person.enter_house();
    person.press(kit::Key::tab);
    person.press(kit::Key::tab);
    const std::string there = person.program.focus();
    ASSERT_NE(there, "actions.1");
    person.press(kit::Key::f10);
    ASSERT_EQ(person.program.place(), Place::settings);
    person.press(kit::Key::tab);
    person.press(kit::Key::escape);
    EXPECT_EQ(person.program.place(), Place::job);
    EXPECT_EQ(person.program.focus(), there) << "from the settings";
    person.press(kit::Key::f2);
    person.press(kit::Key::tab);
    const std::string field = person.program.focus();
    person.press(kit::Key::f10);
    person.press(kit::Key::escape);
    EXPECT_EQ(person.program.focus(), field) << "in the write-up";
    person.press(kit::Key::f2);
    EXPECT_EQ(person.program.focus(), there) << "from the write-up";
}

TEST(ComingBack, FindsTheListAsItWasScrolled) {
    Person person;
    person.press(kit::Key::f10);
    person.press(kit::Key::escape);
    EXPECT_EQ(person.program.focus(), "start.go");
    person.enter_house();
    person.type("c");
    for (int i = 0; i < 30; ++i) person.press(kit::Key::down);
    const std::string cause = person.program.focus();
    const auto place = person.node(cause)->bounds;
    person.press(kit::Key::f10);
    person.press(kit::Key::escape);
    EXPECT_EQ(person.program.focus(), cause);
    EXPECT_EQ(person.node(cause)->bounds, place);
}

TEST(ComingBack, FromAReplayToTheStepOfTheDebrief) {
    Person person;
    come_to_the_debrief(person);
    person.type("t");
    const std::string row = person.program.focus();
    ASSERT_THAT(row, testing::StartsWith("table."));
    person.type("r");
    person.wait_for(Place::replay);
    EXPECT_EQ(person.program.focus(), "replay.on");
    person.press(kit::Key::escape);
    EXPECT_EQ(person.program.place(), Place::debrief);
    EXPECT_EQ(person.program.focus(), row);
}

// --- changing keys ---

TEST(KeySettings, RefuseAFixedKeySayWhyAndGiveAllKeysBack) {
    Person person;
    person.press(kit::Key::f10);
    EXPECT_FALSE(person.node("keys.row.next region")->focusable) << "fixed";
    const auto change = [&](const char* row, kit::Key key, kit::Modifiers with) {
        person.click(row);
        person.press(key, with);
    };
    change("keys.row.settings", kit::Key::f6, {.shift = true});
    ASSERT_NE(person.node("keys.problem"), nullptr);
    EXPECT_THAT(person.node("keys.problem")->name, HasSubstr("moves the focus"));
    change("keys.row.help 2", kit::Key::f9, {});
    EXPECT_THAT(person.node("keys.problem")->name, HasSubstr("already means"));
    change("keys.row.help 2", kit::Key::f7, {});
    EXPECT_EQ(person.node("keys.row.help 2")->value, "F7") << "the row that was chosen";
    EXPECT_EQ(person.node("keys.row.help")->value, "?");
    person.click("keys.reset");
    person.click("question.yes");
    EXPECT_EQ(person.node("keys.row.help 2")->value, "F1");
    EXPECT_TRUE(person.host.settings.keys.empty());
}

}  // namespace
}  // namespace emberpath::desktop
