// Proves that the caret stands where the text is, in one line and in wrapped ones.

#include "ui/kit/text_layout.hpp"

#include <gtest/gtest.h>

#include "tests/unit/kit/plain_metrics.hpp"
#include "ui/kit/text_editor.hpp"

namespace emberpath::kit {
namespace {

const PlainMetrics metrics;
constexpr TextStyle ten{Face::regular, 10.0, Token::ink};  // 5 px a character

TEST(TextLayouts, WrapAtSpacesAndKeepEveryCharacterInALine) {
    const TextLayout layout = lay_out(metrics, ten, U"one two three", 40.0, true);
    ASSERT_EQ(layout.lines.size(), 2U);
    EXPECT_EQ(layout.lines[0].end, 7U);
    EXPECT_EQ(layout.lines[1].begin, 8U);
    EXPECT_EQ(layout.lines[1].end, 13U);
}

TEST(TextLayouts, AOneLineFieldNeverWraps) {
    EXPECT_EQ(lay_out(metrics, ten, U"one two three", 40.0, false).lines.size(), 1U);
}

TEST(TextLayouts, AnEmptyTextHasOneLineForTheCaret) {
    const TextLayout layout = lay_out(metrics, ten, U"", 40.0, true);
    ASSERT_EQ(layout.lines.size(), 1U);
    EXPECT_DOUBLE_EQ(layout.x_of(0), 0.0);
}

TEST(TextLayouts, ATrailingNewlineOpensALine) {
    const TextLayout layout = lay_out(metrics, ten, U"ab\n", 40.0, true);
    ASSERT_EQ(layout.lines.size(), 2U);
    EXPECT_EQ(layout.line_of(3), 1U);
}

TEST(TextLayouts, FindTheCharacterUnderThePointer) {
    const TextLayout layout = lay_out(metrics, ten, U"one two three", 40.0, true);
    EXPECT_EQ(layout.index_at({11.0, 5.0}), 2U);
    EXPECT_EQ(layout.index_at({11.0, layout.line_height + 1.0}), 10U);
    EXPECT_EQ(layout.index_at({999.0, 999.0}), 13U);
    EXPECT_EQ(layout.index_at({-5.0, -5.0}), 0U);
}

TEST(TextLayouts, UpAndDownKeepTheColumn) {
    const TextLayout layout = lay_out(metrics, ten, U"one two three", 40.0, true);
    EXPECT_EQ(layout.vertical(2, 1), 10U);
    EXPECT_EQ(layout.vertical(10, -1), 2U);
    EXPECT_EQ(layout.vertical(2, -1), 0U);
    EXPECT_EQ(layout.vertical(10, 1), 13U);
}

TEST(TextLayouts, ACitationTakesTheRoomOfItsBalloon) {
    const std::u32string text = with_citations(U"a#5b", 9);
    const TextLayout layout = lay_out(metrics, ten, text, 100.0, true);
    EXPECT_DOUBLE_EQ(layout.x_of(2) - layout.x_of(1), citation_width(ten, 5));
}

}  // namespace
}  // namespace emberpath::kit
