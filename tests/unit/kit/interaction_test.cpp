// Proves what keys, characters and the pointer do, event by event, without a window.

#include "ui/kit/interaction.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>

#include "tests/unit/kit/small_screen.hpp"

namespace emberpath::kit {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

class Board final : public Clipboard {
  public:
    [[nodiscard]] std::string get() const override { return text; }
    void set(std::string_view utf8) override { text = utf8; }
    std::string text;
};

/// A person at the small screen.
struct Person {
    PlainMetrics metrics;
    Board board;
    State state;
    bool dialog = false;
    std::vector<Command> asked;

    void does(const Event& event) {
        const Frame frame = small_screen(state, dialog);
        settle(frame, state);
        for (Command& c : handle(event, frame, {metrics, small_keys(), board}, state))
            asked.push_back(std::move(c));
    }
    void presses(Key key, Modifiers modifiers = {}) { does(KeyPress{key, modifiers}); }
    void types(std::u32string_view text) {
        for (const char32_t c : text) does(Character{c});
    }
    void clicks(Point at) {
        does(PointerPress{at});
        does(PointerRelease{at});
    }
};

TEST(Keyboard, EnterActivatesWhatIsInFocus) {
    Person p;
    p.presses(Key::tab);
    EXPECT_EQ(p.state.focus, "left.record");
    p.presses(Key::enter);
    EXPECT_THAT(p.asked, ElementsAre(Command{"record", "1"}));
}

/// Keys at a page in front, from its Close button.
State after_keys(bool lines_to_press, std::initializer_list<Key> keys) {
    const PlainMetrics metrics;
    Board board;
    State state;
    for (const Key key : keys) {
        const Frame frame = page_in_front(state, lines_to_press);
        settle(frame, state);
        (void)handle(KeyPress{key, {}}, frame, {metrics, small_keys(), board}, state);
    }
    return state;
}

TEST(Keyboard, ScrollsAPageInFrontThatHoldsNothingToPress) {
    const auto scrolled = [](std::initializer_list<Key> keys) {
        return after_keys(false, keys).scroll["page.list"];
    };
    EXPECT_EQ(scrolled({Key::down, Key::down}), 80.0);
    EXPECT_EQ(scrolled({Key::down, Key::up}), 0.0);
    EXPECT_EQ(scrolled({Key::page_down}), 0.9 * 140.0);
    EXPECT_EQ(scrolled({Key::page_down, Key::page_down, Key::page_down, Key::page_down}),
              page_length - 140.0);
    EXPECT_EQ(after_keys(false, {Key::down}).focus, "page.close");
}

TEST(Keyboard, ALetterLeadsToTheNextRowThatBeginsWithIt) {
    const PlainMetrics metrics;
    Board board;
    State state = after_keys(true, {Key::down});
    const auto types = [&](char32_t letter) {
        const Frame frame = page_in_front(state, true);
        (void)handle(Character{letter}, frame, {metrics, small_keys(), board}, state);
        return state.focus;
    };
    EXPECT_EQ(types(U'L'), "page.line.2");
    EXPECT_EQ(types(U'l'), "page.line.3");
    EXPECT_EQ(types(U'x'), "page.line.3") << "there is none";
    for (int i = 0; i < 8; ++i) (void)types(U'l');
    EXPECT_EQ(state.focus, "page.line.1") << "after the last comes the first";
}

TEST(Keyboard, DownLeadsIntoTheListOfWhatIsInFront) {
    EXPECT_EQ(after_keys(true, {Key::down}).focus, "page.line.1");
    EXPECT_EQ(after_keys(true, {Key::down, Key::down}).focus, "page.line.2");
}

TEST(Keyboard, SpacePressesAButtonAndPausesElsewhere) {
    Person p;
    p.state.focus = "left.record";
    p.presses(Key::space);
    p.state.focus = "right.P1";
    p.presses(Key::space);
    EXPECT_THAT(p.asked, ElementsAre(Command{"record", "1"}, Command{"pause"}));
}

TEST(Keyboard, AShortcutActivatesTheThingThatCarriesIt) {
    Person p;
    p.types(U"r");
    EXPECT_THAT(p.asked, ElementsAre(Command{"record", "1"}));
}

TEST(Keyboard, WhatCannotBeDoneSaysWhatItNeeds) {
    Person p;
    p.state.focus = "left.open";
    p.presses(Key::enter);
    EXPECT_THAT(p.asked, ElementsAre(Command{"not now", "needs the cover off"}));
}

TEST(Keyboard, APrefixWaitsForOneDigit) {
    Person p;
    p.types(U"t3");
    EXPECT_THAT(p.asked, ElementsAre(Command{"take", "3"}));
    p.asked.clear();
    p.types(U"tr");
    EXPECT_THAT(p.asked, ElementsAre(Command{"record", "1"})) << "another key drops the prefix";
    EXPECT_EQ(p.state.prefix, "");
}

TEST(Keyboard, ARepeatedKeyActsOnce) {
    Person p;
    p.does(Character{U'r', false});
    p.does(Character{U'r', true});
    EXPECT_EQ(p.asked.size(), 1U);
}

TEST(Keyboard, LettersAreTextInsideAField) {
    Person p;
    p.state.focus = "right.note";
    p.types(U"r #5");
    EXPECT_EQ(p.state.editors.at("right.note").text(), "abcr #5");
    EXPECT_THAT(p.asked,
                ElementsAre(Command{"edited", "right.note"}, Command{"edited", "right.note"},
                            Command{"edited", "right.note"}, Command{"edited", "right.note"}));
}

TEST(Keyboard, TabLeavesAField) {
    Person p;
    p.state.focus = "right.note";
    p.presses(Key::tab);
    EXPECT_EQ(p.state.focus, "left.record");
    EXPECT_THAT(p.asked, IsEmpty());
}

TEST(Keyboard, EscapeAsksToGoBackFromAnywhere) {
    Person p;
    p.state.focus = "right.note";
    p.presses(Key::escape);
    EXPECT_THAT(p.asked, ElementsAre(Command{"back"}));
}

TEST(Keyboard, CopiesAndPastesBetweenFieldAndClipboard) {
    Person p;
    p.state.focus = "right.note";
    p.presses(Key::a, {.control = true});
    p.presses(Key::c, {.control = true});
    p.presses(Key::end);
    p.presses(Key::v, {.control = true});
    EXPECT_EQ(p.board.text, "abc");
    EXPECT_EQ(p.state.editors.at("right.note").text(), "abcabc");
    p.presses(Key::z, {.control = true});
    EXPECT_EQ(p.state.editors.at("right.note").text(), "abc");
}

TEST(Lists, FollowTheFocusIntoView) {
    Person p;
    p.state.focus = "right.row.1";
    for (int i = 1; i < small_list_rows; ++i) p.presses(Key::down);
    EXPECT_EQ(p.state.focus, "right.row.8");
    EXPECT_DOUBLE_EQ(p.state.scroll.at("right.list"), small_list_rows * 30.0 - 100.0);
    const Frame frame = small_screen(p.state);
    EXPECT_FALSE(frame.tree.get("right.row.8")->visible.empty());
    EXPECT_TRUE(frame.tree.get("right.row.1")->visible.empty());
    p.presses(Key::home);
    EXPECT_DOUBLE_EQ(p.state.scroll.at("right.list"), 0.0);
}

TEST(Lists, ScrollByTheWheelNoFurtherThanTheirEnd) {
    Person p;
    for (int i = 0; i < 20; ++i) p.does(Wheel{{300, 50}, -1.0});
    EXPECT_DOUBLE_EQ(p.state.scroll.at("right.list"), small_list_rows * 30.0 - 100.0);
    EXPECT_THAT(p.asked, IsEmpty());
    p.does(Wheel{{20, 20}, 1.0});
    EXPECT_THAT(p.asked, ElementsAre(Command{"wheel", "+1"}));
}

TEST(Pointer, ActivatesOnReleaseOverTheSameThing) {
    Person p;
    p.does(PointerPress{{20, 20}});
    EXPECT_THAT(p.asked, IsEmpty());
    p.does(PointerRelease{{20, 20}});
    EXPECT_THAT(p.asked, ElementsAre(Command{"record", "1"}));
}

TEST(Pointer, APressThatSlidesOffDoesNothing) {
    Person p;
    p.does(PointerPress{{20, 20}});
    p.does(PointerRelease{{20, 200}});
    EXPECT_THAT(p.asked, IsEmpty());
}

TEST(Pointer, AFastClickIsNotLost) {
    Person p;
    p.clicks({20, 20});
    p.clicks({20, 20});
    EXPECT_EQ(p.asked.size(), 2U);
}

TEST(Pointer, DragsAToolToAPoint) {
    Person p;
    p.does(PointerPress{{20, 150}});
    p.does(PointerMove{{230, 140}});
    p.does(PointerRelease{{230, 140}});
    EXPECT_THAT(p.asked, ElementsAre(Command{"drop", "gauge>right.P1"}));
}

TEST(Pointer, PutsTheCaretAndSelects) {
    Person p;
    p.does(PointerPress{{224, 240}});
    p.does(PointerMove{{400, 240}});
    p.does(PointerRelease{{400, 240}});
    const TextEditor& editor = p.state.editors.at("right.note");
    EXPECT_EQ(editor.selection_begin(), 0U);
    EXPECT_EQ(editor.selection_end(), 3U);
}

TEST(Dialogs, TakeTheFocusAndGiveItBack) {
    Person p;
    p.state.focus = "right.P2";
    p.dialog = true;
    p.types(U"y");
    EXPECT_THAT(p.asked, ElementsAre(Command{"yes"}));
    EXPECT_EQ(p.state.focus, "ask.yes");
    p.clicks({20, 20});
    EXPECT_EQ(p.asked.size(), 1U) << "what is behind cannot be pressed";
    p.dialog = false;
    p.does(PointerMove{{0, 0}});
    EXPECT_EQ(p.state.focus, "right.P2");
}

TEST(Focus, MovesToItsRegionWhenItsThingIsGone) {
    Person p;
    p.state.focus = "right.gone";
    p.does(PointerMove{{0, 0}});
    EXPECT_EQ(p.state.focus, "right.row.1");
}

TEST(KeyRepeat, IsWantedInFieldsAndGroupsOnly) {
    State state;
    const Frame frame = small_screen(state);
    for (const auto& [id, wanted] :
         {std::pair{"right.note", true}, {"right.row.2", true}, {"left.record", false}}) {
        state.focus = id;
        EXPECT_EQ(wants_key_repeat(frame, state), wanted) << id;
    }
}

double part(const Command& pan, int which) {
    char* rest = nullptr;
    const double x = std::strtod(pan.argument.c_str(), &rest);
    return which == 0 ? x : std::strtod(rest, nullptr);
}

TEST(ADrawing, IsShiftedByDraggingItsEmptyPartAsFarAsItGoes) {
    Person p;
    p.does(PointerPress{{265, 190}});
    p.does(PointerMove{{285, 200}});
    p.does(PointerMove{{385, 200}});
    p.does(PointerRelease{{385, 200}});
    p.does(PointerMove{{100, 100}});
    ASSERT_EQ(p.asked.size(), 2U) << "and no further when it is let go";
    EXPECT_EQ(p.asked[0].name, "pan");
    EXPECT_DOUBLE_EQ(part(p.asked[0], 0), 20.0);
    EXPECT_DOUBLE_EQ(part(p.asked[0], 1), 10.0);
    EXPECT_DOUBLE_EQ(part(p.asked[1], 0), 30.0) << "no emptiness is drawn in";
}

TEST(ADrawing, IsShiftedByTheMiddleButtonEvenOverAThing) {
    Person p;
    p.does(PointerPress{{230, 140}, false, {}, true});
    p.does(PointerMove{{222, 140}});
    p.does(PointerRelease{{222, 140}, false, true});
    ASSERT_EQ(p.asked.size(), 1U) << "and nothing is selected";
    EXPECT_DOUBLE_EQ(part(p.asked[0], 0), -8.0);
}

TEST(ADrawing, IsShiftedByKeysWhileArrowsMoveTheFocus) {
    Person p;
    p.state.focus = "right.P1";
    p.presses(Key::left, {.shift = true});
    p.presses(Key::up, {.shift = true});
    EXPECT_EQ(p.state.focus, "right.P1");
    ASSERT_EQ(p.asked.size(), 2U);
    EXPECT_DOUBLE_EQ(part(p.asked[0], 0), 30.0);
    EXPECT_DOUBLE_EQ(part(p.asked[1], 1), 80.0);
    p.presses(Key::right);
    EXPECT_EQ(p.state.focus, "right.P2");
}

TEST(PlusAndMinus, MeanTheSameWithShift) {
    Person p;
    p.presses(Key::plus, {.shift = true, .control = true});
    p.presses(Key::plus, {.control = true});
    EXPECT_THAT(p.asked, ElementsAre(Command{"text larger"}, Command{"text larger"}));
}

}  // namespace
}  // namespace emberpath::kit
