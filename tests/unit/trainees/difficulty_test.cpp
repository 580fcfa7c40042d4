// Proves that a job is called hard for what it hides and for what has to be read, each by itself, and says why.

#include "sim/trainees/difficulty.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sim/trainees/on_arrival.hpp"
#include "tests/unit/trainees/small_house.hpp"

namespace emberpath::trainees {
namespace {

using faults::Cause;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

TEST(Difficulty, IsEasyWhereTheDisplaySpeaksForTheCauseAndLittleHasToBeRead) {
    const Difficulty direct{0.1, 10.0, false, 0.2};
    EXPECT_EQ(word(direct), "easy");
    EXPECT_THAT(reasons(direct), IsEmpty());
}

TEST(Difficulty, RisesWithWhatSpeaksAgainstTheTrueCause) {
    EXPECT_EQ(word({2.9, 10.0, false, 0.0}), "easy");
    EXPECT_EQ(word({3.1, 10.0, false, 0.0}), "middling");
    EXPECT_EQ(word({5.1, 10.0, false, 0.0}), "hard");
    EXPECT_THAT(reasons({5.1, 10.0, false, 0.0}), HasSubstr("(5.1 bits)"));
}

TEST(Difficulty, RisesWithTheReferencePath) {
    EXPECT_EQ(word({1.0, 15.0, false, 0.0}), "middling");
    EXPECT_EQ(word({1.0, 33.0, false, 0.0}), "hard");
    EXPECT_THAT(reasons({1.0, 33.0, false, 0.0}), HasSubstr("33 minutes"));
    EXPECT_THAT(reasons({1.0, 33.0, false, 0.0}), Not(HasSubstr("bits")));
}

TEST(Difficulty, IsNeverEasyWhereTwoFaultsHaveToBeFoundOrOrdinaryWorkMeetsObjections) {
    EXPECT_EQ(word({1.0, 10.0, true, 0.0}), "middling");
    EXPECT_EQ(word({1.0, 10.0, false, 0.3}), "middling");
    EXPECT_EQ(word({1.0, 10.0, false, 0.6}), "hard");
}

TEST(OnArrival, LeavesMoreOpenWhereNoWordStandsOnTheDisplay) {
    auto open = small_house(Cause::gas_pipe_restriction);
    auto told = small_house(Cause::outlet_sensor_open);
    const OnArrival without_word = on_arrival(open, 1, arrive(open, 1));
    const OnArrival with_word = on_arrival(told, 1, arrive(told, 1));
    EXPECT_GT(without_word.open_bits, with_word.open_bits + 1.0);
    EXPECT_GT(with_word.of_truth, 0.5);
    EXPECT_LT(without_word.of_truth, 0.5);
    EXPECT_NEAR(with_word.of_truth, with_word.probability, 0.05) << "the likeliest is the true one";
}

}  // namespace
}  // namespace emberpath::trainees
