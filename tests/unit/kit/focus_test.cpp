// Proves that the keyboard reaches everything, comes round again, and is never trapped.

#include "ui/kit/focus.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/kit/small_screen.hpp"

namespace emberpath::kit {
namespace {

using testing::ElementsAre;

std::vector<std::string> ids(const Tree& tree, const std::vector<std::size_t>& found) {
    std::vector<std::string> names;
    for (const std::size_t i : found) names.push_back(tree.at(i).id);
    return names;
}

std::string next(const Frame& frame, std::string_view from, bool backwards = false,
                 const FocusMemory& memory = {}) {
    return frame.tree.at(next_stop(frame.tree, memory, from, backwards)).id;
}

TEST(TabStops, CountASwitchAndAListOnceAndEachPointByItself) {
    const Frame frame = small_screen({});
    EXPECT_THAT(ids(frame.tree, tab_stops(frame.tree, {})),
                ElementsAre("left.record", "left.open", "left.1", "left.tool", "right.row.1",
                            "right.P1", "right.P2", "right.P3", "right.note"));
}

TEST(TabStops, AListIsEnteredWhereItWasLeft) {
    const Frame frame = small_screen({});
    FocusMemory memory;
    remember(frame.tree, "right.row.4", memory);
    EXPECT_EQ(next(frame, "left.tool", false, memory), "right.row.4");
}

TEST(Tab, ComesRoundBothWays) {
    const Frame frame = small_screen({});
    EXPECT_EQ(next(frame, "right.note"), "left.record");
    EXPECT_EQ(next(frame, "left.record", true), "right.note");
    EXPECT_EQ(next(frame, ""), "left.record");
}

TEST(Tab, LeavesAGroupFromAnyThingInside) {
    const Frame frame = small_screen({});
    EXPECT_EQ(next(frame, "left.20"), "left.tool");
    EXPECT_EQ(next(frame, "left.20", true), "left.open");
}

TEST(F6, GoesToTheNextRegionAndBackToWhereItWasLeft) {
    const Frame frame = small_screen({});
    FocusMemory memory;
    const auto region = [&](std::string_view from) {
        return frame.tree.at(next_region(frame.tree, memory, from, false)).id;
    };
    EXPECT_EQ(region("left.record"), "right.row.1");
    EXPECT_EQ(region("right.P2"), "left.record");
    remember(frame.tree, "left.5", memory);
    EXPECT_EQ(region("right.P2"), "left.5");
}

TEST(Arrows, GoAlongARowAndStopAtItsEnds) {
    const Frame frame = small_screen({});
    EXPECT_EQ(frame.tree.at(arrow_target(frame.tree, "left.1", Direction::right)).id, "left.5");
    EXPECT_EQ(arrow_target(frame.tree, "left.20", Direction::right), nothing);
    EXPECT_EQ(arrow_target(frame.tree, "left.1", Direction::down), nothing);
    EXPECT_EQ(arrow_target(frame.tree, "left.record", Direction::right), nothing);
}

TEST(Arrows, GoToTheNearestPointInThatDirection) {
    const Frame frame = small_screen({});
    const auto to = [&](std::string_view from, Direction d) {
        const std::size_t i = arrow_target(frame.tree, from, d);
        return i == nothing ? std::string("-") : frame.tree.at(i).id;
    };
    EXPECT_EQ(to("right.P1", Direction::right), "right.P2");
    EXPECT_EQ(to("right.P1", Direction::down), "right.P3");
    EXPECT_EQ(to("right.P3", Direction::up), "right.P1");
    EXPECT_EQ(to("right.P1", Direction::left), "-");
}

TEST(Dialogs, KeepTheFocusInside) {
    const Frame frame = small_screen({}, true);
    EXPECT_THAT(ids(frame.tree, tab_stops(frame.tree, {})), ElementsAre("ask.yes", "ask.no"));
    EXPECT_EQ(next(frame, "ask.no"), "ask.yes");
}

}  // namespace
}  // namespace emberpath::kit
