// Proves that each check of a frame finds what is planted for it, and passes a sound screen.

#include "ui/kit/audit.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/kit/small_screen.hpp"

namespace emberpath::kit {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

const PlainMetrics metrics;

/// A region with whatever is drawn into it.
template <class Draw>
Frame with(Draw draw) {
    const State state;
    Stage stage(metrics, state, small_keys(), {400, 300});
    {
        const auto region = stage.region("r", "Region", {0, 0, 400, 300});
        draw(stage);
    }
    return stage.finish();
}

Node pressable(std::string id, std::string name, const Rect& r) {
    return {.id = std::move(id),
            .role = Role::button,
            .name = std::move(name),
            .bounds = r,
            .focusable = true};
}

TEST(Audit, PassesTheSmallScreen) {
    const Frame frame = small_screen({});
    EXPECT_THAT(names_missing_or_repeated(frame), IsEmpty());
    EXPECT_THAT(unreachable(frame), IsEmpty());
    EXPECT_THAT(crowded_texts(frame), IsEmpty());
    EXPECT_THAT(small_targets(frame), IsEmpty());
    EXPECT_THAT(missing_characters(frame, metrics), IsEmpty());
}

TEST(Audit, PassesADialogInFront) {
    const Frame frame = small_screen({}, true);
    EXPECT_THAT(unreachable(frame), IsEmpty());
    EXPECT_THAT(small_targets(frame), IsEmpty());
}

TEST(Audit, FindsAListThatOnlyAPointerScrolls) {
    const auto list = [](bool pressed) {
        return with([=](Stage& s) {
            const ScrollList rows(s, {0, 0, 100, 60}, "r.list", "Rows", 200.0);
            s.add({.id = "r.row",
                   .role = Role::row,
                   .name = "row",
                   .bounds = {0, 0, 90, 30},
                   .focusable = pressed});
        });
    };
    EXPECT_THAT(scrolled_by_pointer_only(list(true)), IsEmpty());
    EXPECT_THAT(scrolled_by_pointer_only(list(false)), Contains(HasSubstr("r.list")));
}

TEST(Audit, FindsMissingAndRepeatedNames) {
    const Frame frame = with([](Stage& s) {
        s.add(pressable("r.a", "", {0, 0, 30, 30}));
        s.add(pressable("r.b", "Same", {40, 0, 30, 30}));
        s.add(pressable("r.c", "Same", {80, 0, 30, 30}));
        s.add(pressable("r.c", "Other", {120, 0, 30, 30}));
    });
    const auto problems = names_missing_or_repeated(frame);
    EXPECT_THAT(problems, Contains(HasSubstr("has no name")));
    EXPECT_THAT(problems, Contains(HasSubstr("\"Same\" twice in one region")));
    EXPECT_THAT(problems, Contains(HasSubstr("id \"r.c\" twice")));
}

TEST(Audit, FindsWhatF6CannotVisit) {
    const State state;
    Stage stage(metrics, state, small_keys(), {400, 300});
    {
        const auto region = stage.region("r", "Region", {0, 0, 200, 300});
        stage.add(pressable("r.a", "A", {0, 0, 30, 30}));
    }
    stage.add(pressable("stray", "Stray", {300, 0, 30, 30}));
    const Frame frame = stage.finish();
    EXPECT_THAT(unreachable(frame), Contains("F6 visits 1 of 2 regions"));
    EXPECT_THAT(names_missing_or_repeated(frame), Contains(HasSubstr("is in no region")));
}

TEST(Audit, KnowsThatARowReachesIntoAGroupInsideIt) {
    const Frame frame = with([](Stage& s) {
        const auto row =
            s.inside({.id = "r.g", .name = "g", .bounds = {0, 0, 200, 40}, .moves = Moves::row});
        s.add(pressable("r.a", "A", {0, 0, 30, 30}));
        const auto inner =
            s.inside({.id = "r.h", .name = "h", .bounds = {40, 0, 60, 80}, .moves = Moves::column});
        s.add(pressable("r.b", "B", {40, 0, 30, 30}));
        s.add(pressable("r.c", "C", {40, 40, 30, 30}));
    });
    EXPECT_THAT(unreachable(frame), IsEmpty());
}

TEST(Audit, FindsTextThatIsTooWideOrCoversOther) {
    const Frame frame = with([](Stage& s) {
        s.text({10, 10, 20, 20}, "far too wide", style::row);
        s.text({10, 50, 100, 20}, "under", style::row);
        s.text({20, 52, 100, 20}, "over", style::row);
    });
    const auto problems = crowded_texts(frame);
    EXPECT_THAT(problems, Contains(HasSubstr("\"far too wide\" is wider than its box")));
    EXPECT_THAT(problems, Contains(HasSubstr("\"over\" covers \"under\"")));
}

TEST(Audit, FindsSmallAndOverlappingTargets) {
    const Frame frame = with([](Stage& s) {
        s.add(pressable("r.a", "A", {0, 0, 20, 30}));
        s.add(pressable("r.b", "B", {10, 10, 30, 30}));
    });
    const auto problems = small_targets(frame);
    EXPECT_THAT(problems, Contains(HasSubstr("\"r.a\" is small")));
    EXPECT_THAT(problems, Contains(HasSubstr("\"r.b\" covers \"r.a\"")));
}

TEST(Audit, FindsCharactersWithoutAShape) {
    const Frame frame = with([](Stage& s) { s.text({10, 10, 200, 20}, "box \u25B2", style::row); });
    EXPECT_EQ(missing_characters(frame, metrics).size(), 1U);
}

TEST(Audit, FindsCutTextsAndWhetherTheWholeCanBeHad) {
    const Frame frame = with([](Stage& s) {
        s.text_shortened({10, 50, 60, 20}, "much too long", style::row);
        s.add(pressable("r.whole", "much too long", {10, 50, 60, 20}));
        s.text_shortened({10, 90, 60, 20}, "lost for good", style::row);
        s.add(pressable("r.lost", "something else", {10, 90, 60, 20}));
        s.text_shortened({10, 130, 300, 20}, "long enough", style::row);
    });
    const auto cuts = cut_texts(frame);
    ASSERT_EQ(cuts.size(), 2U);
    EXPECT_EQ(cuts[0].place, "r.whole");
    EXPECT_TRUE(cuts[0].whole);
    EXPECT_EQ(cuts[1].place, "r.lost");
    EXPECT_FALSE(cuts[1].whole);
}

}  // namespace
}  // namespace emberpath::kit
