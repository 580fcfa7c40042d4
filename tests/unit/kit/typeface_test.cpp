// Proves that the real faces give even figures, proportional widths and usable pictures without a display.

#include "ui/kit/typeface.hpp"

#include <gtest/gtest.h>

#include <numeric>

namespace emberpath::kit {
namespace {

const Typeface& typeface() {
    static const Typeface one(find_fonts());
    return one;
}

TEST(Typeface, FiguresHaveOneWidthSoThatReadingsLineUp) {
    for (const Face face : {Face::regular, Face::bold, Face::seven})
        for (char32_t digit = U'1'; digit <= U'9'; ++digit)
            EXPECT_DOUBLE_EQ(typeface().advance_em(face, digit), typeface().advance_em(face, U'0'));
}

TEST(Typeface, WidthGrowsInProportionToTheSize) {
    const double at_13 = width_of(typeface(), {Face::regular, 13.0, Token::ink}, "Room air");
    const double at_26 = width_of(typeface(), {Face::regular, 26.0, Token::ink}, "Room air");
    EXPECT_NEAR(at_26, 2.0 * at_13, 1e-9);
}

TEST(Typeface, HasTheCharactersOfTheTrade) {
    for (const char32_t c : decode("½ °C µ Ω × · “ ” … → − ≤ ± ₂ #"))
        EXPECT_TRUE(typeface().has(Face::regular, c)) << static_cast<unsigned>(c);
}

TEST(Typeface, SaysWhichPackageHoldsAMissingFace) {
    FontFiles files = find_fonts();
    files.faces[0] = "/nowhere/none.otf";
    try {
        const Typeface none(files);
        FAIL() << "opened a face that is not there";
    } catch (const std::runtime_error& problem) {
        EXPECT_STREQ(
            problem.what(),
            "the typeface /nowhere/none.otf cannot be opened; the package fonts-b612 holds it");
    }
}

TEST(GlyphPictures, StandOnTheBaselineAndAreMostlyInk) {
    const GlyphPicture h = typeface().picture(Face::bold, U'H', 20.0, 0);
    ASSERT_GT(h.width, 8);
    EXPECT_EQ(h.top, h.height);
    const double ink = std::accumulate(h.coverage.begin(), h.coverage.end(), 0.0) / 255.0;
    EXPECT_GT(ink, 0.4 * h.width * h.height);
    EXPECT_LT(ink, 0.9 * h.width * h.height);
}

TEST(GlyphPictures, MoveByAQuarterOfAPixel) {
    const auto centre = [](const GlyphPicture& g) {
        double sum = 0.0, weighted = 0.0;
        for (int y = 0; y < g.height; ++y)
            for (int x = 0; x < g.width; ++x) {
                const double c = g.coverage[static_cast<std::size_t>(y * g.width + x)];
                sum += c;
                weighted += c * (g.left + x + 0.5);
            }
        return weighted / sum;
    };
    const double at_0 = centre(typeface().picture(Face::regular, U'o', 14.0, 0));
    const double at_2 = centre(typeface().picture(Face::regular, U'o', 14.0, 2));
    EXPECT_NEAR(at_2 - at_0, 0.5, 0.06);
}

}  // namespace
}  // namespace emberpath::kit
