// Proves that keys are written, read, looked up by place and changed without clashes.

#include "ui/kit/key_map.hpp"

#include <gtest/gtest.h>

#include <array>

namespace emberpath::kit {
namespace {

const std::array<Binding, 6> table{{
    {"help", "", "?", "all keys"},
    {"back", "", "Esc", "one level back"},
    {"record", "job", "R", "record the reading"},
    {"wait", "job", "W", "wait again"},
    {"choose wait", "job", "Shift W", "choose a wait"},
    {"hand in", "write-up", "Ctrl Enter", "sign and hand in"},
}};

Chord typed(char32_t c) {
    return {Key::none, c, {}};
}

TEST(Chords, AreReadAsTheyAreWritten) {
    for (const char* text : {"R", "Shift W", "/", "?", "+", "Ctrl Enter", "Shift F6", "Ctrl +",
                             "Page down", "Esc", "Ctrl Shift Z", "1"}) {
        const auto chord = parse_chord(text);
        ASSERT_TRUE(chord) << text;
        EXPECT_EQ(text_of(*chord), text);
    }
}

TEST(Chords, WhatIsNoKeyIsRefused) {
    for (const char* text : {"", "Ctrl", "Hyper X", "RR", "Ctrl ?", "Shift /"})
        EXPECT_FALSE(parse_chord(text)) << text;
}

TEST(Keys, MeanWhatTheirPlaceSays) {
    const KeyMap keys(table);
    EXPECT_EQ(keys.command(typed(U'r'), "job"), "record");
    EXPECT_EQ(keys.command(typed(U'r'), "debrief"), "");
    EXPECT_EQ(keys.command({Key::escape, 0, {}}, "debrief"), "back");
    EXPECT_EQ(keys.command({Key::enter, 0, {.control = true}}, "write-up"), "hand in");
}

TEST(Keys, ShiftedLettersMayMeanSomethingElse) {
    const KeyMap keys(table);
    EXPECT_EQ(keys.command(typed(U'w'), "job"), "wait");
    EXPECT_EQ(keys.command(typed(U'W'), "job"), "choose wait");
    EXPECT_EQ(keys.command(typed(U'R'), "job"), "record") << "as with the capitals lock on";
}

TEST(Keys, ShowTheirCaps) {
    const KeyMap keys(table);
    EXPECT_EQ(keys.caps("record"), "R");
    EXPECT_EQ(keys.caps("choose wait"), "Shift W");
    EXPECT_EQ(keys.caps("unheard of"), "");
}

TEST(Keys, OfOneCharacterCanBeSwitchedOff) {
    KeyMap keys(table);
    keys.use_characters(false);
    EXPECT_EQ(keys.command(typed(U'r'), "job"), "");
    EXPECT_EQ(keys.caps("record"), "");
    EXPECT_EQ(keys.command({Key::escape, 0, {}}, "job"), "back");
}

TEST(Keys, CanBeChangedUnlessTheyClash) {
    KeyMap keys(table);
    EXPECT_EQ(keys.rebind("record", "W"), "W already means: wait again");
    EXPECT_EQ(keys.rebind("record", "?"), "? already means: all keys");
    EXPECT_EQ(keys.rebind("record", "Hyper"), "\"Hyper\" is not a key");
    EXPECT_EQ(keys.rebind("fly", "F"), "there is no command \"fly\"");
    EXPECT_EQ(keys.rebind("record", "M"), "");
    EXPECT_EQ(keys.command(typed(U'm'), "job"), "record");
    EXPECT_EQ(keys.command(typed(U'r'), "job"), "");
}

TEST(Keys, TheHelpListsThoseOfThePlaceAndOfEverywhere) {
    const auto listed = KeyMap(table).at("write-up");
    ASSERT_EQ(listed.size(), 3U);
    EXPECT_EQ(listed[2].words, "sign and hand in");
}

TEST(Keys, MayHoldAtSeveralPlacesAndHaveSeveralRows) {
    const std::array<Binding, 4> rows{{{"back", "debrief", "B", "step back"},
                                       {"back", "debrief replay", "Ctrl Left", "step back"},
                                       {"zoom", "job replay", "+", "nearer"},
                                       {"other", "house", "X", "something else"}}};
    KeyMap keys(rows);
    EXPECT_EQ(keys.command({Key::left, 0, {.control = true}}, "replay"), "back");
    EXPECT_EQ(keys.command(typed(U'b'), "replay"), "");
    EXPECT_EQ(keys.caps("back", "replay"), "Ctrl Left");
    EXPECT_EQ(keys.caps("back", "debrief"), "B");
    EXPECT_EQ(keys.at("replay").size(), 2U);
    EXPECT_EQ(keys.rebind("back 2", "M"), "") << "the second row has a key of its own";
    EXPECT_EQ(keys.caps("back", "debrief"), "B");
    EXPECT_EQ(keys.command(typed(U'm'), "replay"), "back");
    EXPECT_EQ(keys.rebind("zoom", "M"), "M already means: step back") << "both hold in the replay";
    EXPECT_EQ(keys.rebind("other", "M"), "");
}

TEST(Keys, ThatTheKitItselfUsesCannotBeTakenOrGivenAway) {
    const std::array<Binding, 3> rows{{{"next region", "", "F6", "next region", true},
                                       {"record", "job", "R", "record the reading"},
                                       {"hand in", "job", "Ctrl Enter", "sign and hand in"}}};
    KeyMap keys(rows);
    EXPECT_EQ(keys.rebind("record", "F6"), "F6 already means: next region");
    for (const char* taken : {"Tab", "Shift Tab", "Shift F6", "Left", "Page down", "Enter"})
        EXPECT_NE(keys.rebind("record", taken), "") << taken;
    EXPECT_NE(keys.rebind("hand in", "Ctrl C"), "") << "it copies in a field";
    EXPECT_NE(keys.rebind("next region", "X"), "");
    EXPECT_EQ(keys.caps("next region"), "F6");
    EXPECT_EQ(keys.caps("record"), "R");
}

TEST(Keys, CanChangePlaces) {
    KeyMap keys(table);
    EXPECT_TRUE(keys.rebind_all({{"record", "W"}, {"wait", "R"}}).empty());
    EXPECT_EQ(keys.command(typed(U'w'), "job"), "record");
    EXPECT_EQ(keys.command(typed(U'r'), "job"), "wait");
}

TEST(Keys, ThatClashInAFileKeepTheirOwnAndSaySo) {
    KeyMap keys(table);
    const auto problems = keys.rebind_all({{"fly", "F"}, {"record", "W"}});
    ASSERT_EQ(problems.size(), 2U);
    EXPECT_EQ(problems[1], "W already means: wait again");
    EXPECT_EQ(keys.command(typed(U'r'), "job"), "record");
}

}  // namespace
}  // namespace emberpath::kit
