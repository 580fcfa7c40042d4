// Proves that text is decoded, wrapped and shortened without losing words.

#include "ui/kit/text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/kit/plain_metrics.hpp"

namespace emberpath::kit {
namespace {

using testing::ElementsAre;

const PlainMetrics metrics;
constexpr TextStyle ten{Face::regular, 10.0, Token::ink};  // 5 px a character

TEST(Utf8, ComesBackAsItWent) {
    const std::string text = "½ open, 50 °C, “quoted” … \xF0\x9F\x94\xA5";
    EXPECT_EQ(encode(decode(text)), text);
    EXPECT_EQ(decode("½").size(), 1U);
}

TEST(Utf8, BadBytesBecomeReplacementCharacters) {
    EXPECT_EQ(decode("a\xFFz"), U"a\uFFFDz");
    EXPECT_EQ(decode("\xC0\xAF"), U"\uFFFD\uFFFD");
    EXPECT_EQ(decode("\xE2\x82"), U"\uFFFD\uFFFD");
    EXPECT_EQ(decode("\xED\xA0\x80"), U"\uFFFD");
}

TEST(Minus, StandsBeforeNumbersAndNowhereElse) {
    EXPECT_EQ(with_minus("-79.5 Pa"), "−79.5 Pa");
    EXPECT_EQ(with_minus("from -5 to (-2) °C"), "from −5 to (−2) °C");
    EXPECT_EQ(with_minus("long-life, 12-15, Ctrl -, - 3"), "long-life, 12-15, Ctrl -, - 3");
    EXPECT_EQ(with_minus(""), "");
}

TEST(Wrapping, BreaksAtSpaces) {
    EXPECT_THAT(wrapped(metrics, ten, "one two three", 40.0), ElementsAre("one two", "three"));
}

TEST(Wrapping, BreaksAWordThatIsTooLong) {
    EXPECT_THAT(wrapped(metrics, ten, "abcdefghij", 20.0), ElementsAre("abcd", "efgh", "ij"));
}

TEST(Wrapping, KeepsNewlinesAndEmptyLines) {
    EXPECT_THAT(wrapped(metrics, ten, "a\n\nb", 40.0), ElementsAre("a", "", "b"));
}

TEST(Wrapping, NoLineIsWiderThanTheWidth) {
    const std::string text =
        "New 28 mm pipe from the meter to the heater. Old run capped and tested.";
    for (double width = 30.0; width < 200.0; width += 7.0) {
        std::string joined;
        for (const auto& line : wrapped(metrics, ten, text, width)) {
            EXPECT_LE(width_of(metrics, ten, line), width + 1e-6);
            joined += line;
        }
        std::string wanted = text;
        std::erase(wanted, ' ');
        std::erase(joined, ' ');
        EXPECT_EQ(joined, wanted);
    }
}

TEST(Shortening, LeavesWhatFits) {
    EXPECT_EQ(shortened(metrics, ten, "abc", 15.0), "abc");
}

TEST(Shortening, EndsInAnEllipsisWithinTheWidth) {
    EXPECT_EQ(shortened(metrics, ten, "abcdef", 20.0), "abc…");
    EXPECT_EQ(shortened(metrics, ten, "ab cdef", 20.0), "ab…");
}

}  // namespace
}  // namespace emberpath::kit
