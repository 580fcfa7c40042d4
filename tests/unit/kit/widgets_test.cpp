// Proves that widgets draw what they say and put the same into the tree.

#include "ui/kit/widgets.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/kit/small_screen.hpp"

namespace emberpath::kit {
namespace {

using testing::HasSubstr;

std::string painted(const Frame& frame, Layer layer) {
    return frame.layers[static_cast<std::size_t>(layer)].as_text();
}

TEST(Tree, ReadsAsTextInReadingOrder) {
    const std::string text = small_screen({}).tree.as_text();
    EXPECT_THAT(text,
                HasSubstr("window \"Emberpath\" [0,0 400x300]\n"
                          "  region \"Left\" [0,0 200x300]\n"
                          "    button \"Record\" [10,10 120x28]\n"
                          "    button \"Open\", not now (needs the cover off) [10,50 120x28]\n"
                          "    group \"Speed\" [10,90 120x28]\n"
                          "      choice \"1\", selected [10,90 40x28]\n"));
    EXPECT_THAT(text, HasSubstr("field \"Note\" = abc [210,220 180x60]"));
}

TEST(Frames, AreTheSameForTheSameState) {
    const Frame a = small_screen({}), b = small_screen({});
    for (std::size_t i = 0; i < layer_count; ++i) EXPECT_EQ(a.layers[i], b.layers[i]);
    EXPECT_EQ(a.tree.as_text(), b.tree.as_text());
}

TEST(FocusRing, IsDrawnLastAndOutsideEveryClip) {
    State state;
    state.focus = "right.row.1";
    const std::string over = painted(small_screen(state), Layer::over);
    EXPECT_THAT(over, HasSubstr("stroke paper 2 closed"));
    EXPECT_THAT(over, HasSubstr("stroke ink 2 closed"));
    EXPECT_THAT(over, testing::Not(HasSubstr("clip")));
}

TEST(FocusRing, IsNotDrawnWhileThePointerLeads) {
    State state;
    state.focus = "right.row.1";
    state.focus_shown = false;
    EXPECT_EQ(painted(small_screen(state), Layer::over), "");
}

TEST(ScrollLists, CutTheLastRowVisiblyAndShowABar) {
    const Frame frame = small_screen({});
    const Node* cut = frame.tree.get("right.row.4");
    EXPECT_GT(cut->visible.h, 0.0);
    EXPECT_LT(cut->visible.h, cut->bounds.h);
    EXPECT_THAT(painted(frame, Layer::still), HasSubstr("box wash 384,10 4x100"));
}

TEST(Buttons, NotUsableNowLookDifferentWithoutColour) {
    EXPECT_THAT(painted(small_screen({}), Layer::still), HasSubstr("dash 4:3"));
}

TEST(Fields, ShowTheEditorsTextAndCaretWhenInFocus) {
    State state;
    state.focus = "right.note";
    state.editors["right.note"] = TextEditor("see #5", 6);
    const Frame frame = small_screen(state);
    EXPECT_EQ(frame.tree.get("right.note")->value, "see #5");
    EXPECT_THAT(painted(frame, Layer::still), HasSubstr("disc mark"));
    EXPECT_THAT(painted(frame, Layer::still), HasSubstr("box ink"));
}

TEST(Layers, KeepTheClipWhenPaintGoesToAnother) {
    const PlainMetrics metrics;
    const State state;
    Stage stage(metrics, state, small_keys(), {100, 100});
    stage.clip({10, 10, 20, 20});
    stage.use(Layer::moving);
    stage.paint().box({0, 0, 100, 100}, Token::ink);
    stage.use(Layer::still);
    stage.unclip();
    stage.paint().box({0, 0, 5, 5}, Token::mark);
    const Frame frame = stage.finish();
    EXPECT_EQ(painted(frame, Layer::moving), "clip 10,10 20x20\nbox ink 0,0 100x100\nunclip\n");
    EXPECT_EQ(painted(frame, Layer::still),
              "clip 10,10 20x20\nunclip\nclip 10,10 20x20\nunclip\nbox mark 0,0 5x5\n");
}

TEST(Balloons, AreTheSameNumberFilledOpenAndExpected) {
    const PlainMetrics metrics;
    const State state;
    Stage stage(metrics, state, small_keys(), {100, 100});
    balloon(stage, {20, 20}, 5, Balloon::filled);
    balloon(stage, {50, 20}, 5, Balloon::open);
    balloon(stage, {80, 20}, 5, Balloon::expected);
    const std::string text = painted(stage.finish(), Layer::still);
    EXPECT_THAT(text, HasSubstr("text paper bold 12 17,24.2 \"5\""));
    EXPECT_THAT(text, HasSubstr("text mark bold 12 47,24.2 \"5\""));
    EXPECT_THAT(text, HasSubstr("dash"));
}

}  // namespace
}  // namespace emberpath::kit
