// Proves, where there is a display, that painting gives crisp lines, soft edges and even text, the same twice.

#include <gtest/gtest.h>

#include <cstring>
#include <optional>

#include "ui/window/display.hpp"
#include "ui/window/presenter.hpp"

namespace emberpath::window {
namespace {

using kit::Token;

class Painting : public testing::Test {
  protected:
    void SetUp() override {
        if (const std::string why = why_no_display(); !why.empty()) GTEST_SKIP() << why;
        typeface.emplace(kit::find_fonts());
        presenter.emplace(*typeface);
    }
    [[nodiscard]] sf::Image paint(const kit::Frame& frame, double scale = 1.0) {
        return picture_of(*presenter, frame, {kit::Theme::day, scale});
    }
    static kit::Frame blank() {
        kit::Frame frame;
        frame.size = {60, 40};
        layer(frame).box({0, 0, 60, 40}, Token::paper);
        return frame;
    }
    static kit::Recording& layer(kit::Frame& frame) { return frame.layers[0]; }
    static sf::Color plain(Token token) {
        const kit::Colour c = kit::colour(kit::Theme::day, token);
        return {c.r, c.g, c.b};
    }

    std::optional<kit::Typeface> typeface;
    std::optional<Presenter> presenter;
};

TEST_F(Painting, AThinLevelLineFillsOneRowOfPixelsAndNoMore) {
    kit::Frame frame = blank();
    kit::line(layer(frame), {10, 20.3}, {50, 20.3}, {.width = 1.0, .ink = Token::ink});
    const sf::Image image = paint(frame);
    EXPECT_EQ(image.getPixel(30, 20), plain(Token::ink));
    EXPECT_EQ(image.getPixel(30, 19), plain(Token::paper));
    EXPECT_EQ(image.getPixel(30, 21), plain(Token::paper));
}

TEST_F(Painting, ABoxEndsOnWholePixelsAtAnyScale) {
    for (const double scale : {1.0, 1.25, 1.5}) {
        kit::Frame frame = blank();
        layer(frame).box({10.1, 10.1, 19.9, 10.0}, Token::mark);
        const sf::Image image = paint(frame, scale);
        int mixed = 0;
        for (unsigned x = 0; x < image.getSize().x; ++x) {
            const sf::Color c = image.getPixel(x, static_cast<unsigned>(15 * scale));
            if (c != plain(Token::mark) && c != plain(Token::paper)) ++mixed;
        }
        EXPECT_EQ(mixed, 0) << scale;
    }
}

TEST_F(Painting, ASlopingLineHasSoftEdges) {
    kit::Frame frame = blank();
    kit::line(layer(frame), {5, 5}, {55, 33}, {.width = 3.0, .ink = Token::ink});
    const sf::Image image = paint(frame);
    int mixed = 0;
    for (unsigned y = 0; y < 40; ++y)
        for (unsigned x = 0; x < 60; ++x)
            if (image.getPixel(x, y) != plain(Token::ink) &&
                image.getPixel(x, y) != plain(Token::paper))
                ++mixed;
    EXPECT_GT(mixed, 60);
}

TEST_F(Painting, AClipKeepsPaintInside) {
    kit::Frame frame = blank();
    layer(frame).push_clip({10, 10, 10, 10});
    layer(frame).box({0, 0, 60, 40}, Token::ink);
    layer(frame).pop_clip();
    const sf::Image image = paint(frame);
    EXPECT_EQ(image.getPixel(10, 10), plain(Token::ink));
    EXPECT_EQ(image.getPixel(19, 19), plain(Token::ink));
    EXPECT_EQ(image.getPixel(20, 15), plain(Token::paper));
    EXPECT_EQ(image.getPixel(9, 15), plain(Token::paper));
}

TEST_F(Painting, EveryPictureIsOpaque) {
    kit::Frame frame = blank();
    layer(frame).disc({30, 20}, 9.0, kit::Ink(Token::mark, 0.4));
    const sf::Image image = paint(frame);
    for (unsigned y = 0; y < 40; ++y)
        for (unsigned x = 0; x < 60; ++x) EXPECT_EQ(image.getPixel(x, y).a, 255);
}

TEST_F(Painting, TheSameFrameGivesTheSamePixels) {
    kit::Frame frame = blank();
    layer(frame).text({4, 24}, "2.75 kPa", {kit::Face::bold, 13.0, Token::ink});
    const sf::Image a = paint(frame);
    Presenter fresh(*typeface);
    const sf::Image b = picture_of(fresh, frame, {kit::Theme::day, 1.0});
    ASSERT_EQ(a.getSize(), b.getSize());
    EXPECT_EQ(std::memcmp(a.getPixelsPtr(), b.getPixelsPtr(), 60 * 40 * 4), 0);
}

TEST_F(Painting, TheStillLayerIsRepaintedOnlyWhenItChanges) {
    kit::Frame frame = blank();
    (void)paint(frame);
    EXPECT_TRUE(presenter->repainted());
    (void)paint(frame);
    EXPECT_FALSE(presenter->repainted());
    layer(frame).box({1, 1, 2, 2}, Token::ink);
    (void)paint(frame);
    EXPECT_TRUE(presenter->repainted());
}

TEST_F(Painting, AFullGlyphCacheStartsAfresh) {
    kit::Frame frame;
    frame.size = {600, 400};
    layer(frame).box({0, 0, 600, 400}, Token::paper);
    for (int size = 100; size < 330; size += 3)
        layer(frame).text({10, 350}, "0123456789", {kit::Face::bold, size * 1.0, Token::ink});
    const sf::Image image = paint(frame);
    EXPECT_EQ(image.getSize().x, 600U);
}

}  // namespace
}  // namespace emberpath::window
