// Proves that every screen at every size can be used by keyboard, read without sight, and is not crowded.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/screens/every_screen.hpp"
#include "ui/kit/audit.hpp"
#include "ui/kit/interaction.hpp"

namespace emberpath::screens {
namespace {

using testing::IsEmpty;

TEST(EveryScreen, NamesEachThingOnceInItsRegion) {
    EXPECT_THAT(problems_of(kit::names_missing_or_repeated), IsEmpty());
}

TEST(EveryScreen, IsReachedWhollyByTabArrowsAndF6) {
    EXPECT_THAT(problems_of(kit::unreachable), IsEmpty());
}

TEST(EveryScreen, KeepsTextInItsBoxAndApart) {
    EXPECT_THAT(problems_of(kit::crowded_texts), IsEmpty());
}

TEST(EveryScreen, OffersTargetsLargeEnoughAndApart) {
    EXPECT_THAT(problems_of(kit::small_targets), IsEmpty());
}

TEST(EveryScreen, StandsOutFromItsGroundByDayAndByNight) {
    EXPECT_THAT(problems_of(kit::faint_texts), IsEmpty());
}

TEST(EveryScreen, ScrollsByKeysToo) {
    EXPECT_THAT(problems_of(kit::scrolled_by_pointer_only), IsEmpty());
}

TEST(EveryScreen, WritesOnlyCharactersThatItsFacesHave) {
    EXPECT_THAT(
        problems_of([](const kit::Frame& f) { return kit::missing_characters(f, typeface()); }),
        IsEmpty());
}

TEST(EveryScreen, ShowsItsFocusWhereverItIs) {
    for (const NamedScreen& screen : sample_screens())
        for (const Window& window : every_window()) {
            const kit::Frame frame = draw(screen, window);
            for (const std::size_t stop : kit::tab_stops(frame.tree, {})) {
                kit::State state;
                kit::focus_on(frame.tree, stop, state);
                const kit::Frame again = draw(screen, window, state);
                const kit::Node* node = again.tree.get(state.focus);
                ASSERT_NE(node, nullptr) << where(screen, window) << " loses " << state.focus;
                EXPECT_FALSE(node->visible.empty()) << where(screen, window) << ": " << state.focus;
            }
        }
}

}  // namespace
}  // namespace emberpath::screens
