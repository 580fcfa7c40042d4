// Proves that every pair of colours that is drawn has the contrast people need, by day and by night.

#include "ui/kit/tokens.hpp"

#include <gtest/gtest.h>

#include <set>

namespace emberpath::kit {
namespace {

TEST(Contrast, BlackOnWhiteIs21AndAColourOnItselfIs1) {
    EXPECT_NEAR(contrast_ratio({0, 0, 0}, {255, 255, 255}), 21.0, 1e-9);
    EXPECT_NEAR(contrast_ratio({90, 40, 10}, {90, 40, 10}), 1.0, 1e-12);
}

TEST(Contrast, MidGreyOnWhiteIsJustEnoughForText) {
    // #767676 on white is the published example of the lightest grey that reaches 4.5.
    EXPECT_GE(contrast_ratio({0x76, 0x76, 0x76}, {255, 255, 255}), 4.5);
    EXPECT_LT(contrast_ratio({0x77, 0x77, 0x77}, {255, 255, 255}), 4.5);
}

TEST(Tokens, EveryDrawnPairReachesItsContrastByDayAndByNight) {
    for (const Theme theme : {Theme::day, Theme::night})
        for (const ContrastDemand& d : contrast_demands())
            EXPECT_GE(contrast_ratio(colour(theme, d.front), colour(theme, d.behind)), d.least)
                << name_of(d.front) << " on " << name_of(d.behind) << ", " << name_of(theme);
}

TEST(Tokens, HairlinesAndHatchingStayQuiet) {
    for (const Theme theme : {Theme::day, Theme::night})
        for (const Token token : {Token::hair, Token::hatch})
            EXPECT_LT(contrast_ratio(colour(theme, token), colour(theme, Token::paper)), 1.65)
                << name_of(token) << ", " << name_of(theme);
}

TEST(Tokens, NoTwoHaveOneName) {
    std::set<std::string_view> names;
    for (std::size_t i = 0; i < token_count; ++i) names.insert(name_of(static_cast<Token>(i)));
    EXPECT_EQ(names.size(), token_count);
}

}  // namespace
}  // namespace emberpath::kit
