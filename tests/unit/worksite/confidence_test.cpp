// Proves that a trainee can say how sure they are of the cause they wrote, and that saying nothing leaves an attempt
// as it always was.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sim/worksite/acts.hpp"
#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using testing::HasSubstr;

std::string read_as(std::string_view sentence) {
    const auto parsed = parse_act(sentence, test_job());
    const auto* act = std::get_if<Act>(&parsed);
    return act != nullptr ? render(*act, test_job()) : std::get<ActRefusal>(parsed).text;
}

Attempt attempt_with(const std::vector<std::string>& sentences) {
    Attempt attempt(test_job(), 1, Mode::assessed);
    EXPECT_EQ(play(attempt, sentences), "");
    return attempt;
}

TEST(Confidence, IsReadInWholePerCents) {
    EXPECT_EQ(read_as("write confidence 80 %"), "write confidence 80 %");
    EXPECT_EQ(read_as("write confidence 95%"), "write confidence 95 %");
    EXPECT_EQ(read_as("write confidence 100 percent"), "write confidence 100 %");
    EXPECT_EQ(read_as("write confidence 0"), "write confidence 0 %");
    for (const char* sentence : {"write confidence 101 %", "write confidence 0.8",
                                 "write confidence high", "write confidence"})
        EXPECT_THAT(read_as(sentence), HasSubstr("from 0 % to 100 %")) << sentence;
}

TEST(Confidence, IsOfTheCauseThatStandsThereAndGoesWithIt) {
    Attempt none = attempt_with({});
    EXPECT_THAT(none.perform("write confidence 80 %").refusal.text,
                HasSubstr("Write the cause first"));
    EXPECT_FALSE(none.write_up().confidence.has_value());
    const Attempt said = attempt_with({"write cause igniter failed", "write confidence 80 %"});
    ASSERT_TRUE(said.write_up().confidence.has_value());
    EXPECT_DOUBLE_EQ(*said.write_up().confidence, 0.8);
    const Attempt anew = attempt_with(
        {"write cause igniter failed", "write confidence 80 %", "write cause gas_valve_stuck_low"});
    EXPECT_FALSE(anew.write_up().confidence.has_value());
}

TEST(Confidence, IsPartOfTheStateWhereItWasSaid) {
    const Attempt a = attempt_with({"write cause igniter failed", "write confidence 80 %"});
    const Attempt b = attempt_with({"write cause igniter failed", "write confidence 90 %"});
    EXPECT_NE(a.state_hash(), b.state_hash());
}

}  // namespace
}  // namespace emberpath::worksite
