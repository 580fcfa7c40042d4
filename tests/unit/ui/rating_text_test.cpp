// Proves that what is printed of a rated job names its difficulty with the reason, the blind guess, what can be found
// out, the shortest safe path and each refusal.

#include "ui/app/rating_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

namespace emberpath::app {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

trainees::Rating made_up() {
    trainees::Rating rating;
    rating.difficulty = {3.32, 33.0, false, 0.2};
    rating.on_arrival.probability = 0.4;
    rating.on_arrival.of_truth = 0.1;
    rating.identifiable = 0.97;
    rating.shortest = {true, trainees::Policy::heuristic, 2, 41.0, 57};
    trainees::Fare fare;
    fare.policy = trainees::Policy::heuristic;
    fare.attempts = fare.unopposed = 2;
    fare.overall = 93.0;
    rating.fares = {fare};
    return rating;
}

std::string written(const trainees::Rating& rating) {
    worksite::Job job;
    job.title = "Job 0: a house";
    job.faults = {{faults::Cause::gas_pipe_restriction, 0.5}};
    std::ostringstream out;
    write_rating(out, job, rating);
    return out.str();
}

TEST(RatingText, NamesDifficultyGuessAndPath) {
    const std::string text = written(made_up());
    EXPECT_THAT(text, HasSubstr("Difficulty: hard, for complaint and display speak against"));
    EXPECT_THAT(text, HasSubstr("(3.3 bits)"));
    EXPECT_THAT(text, HasSubstr("likeliest remedy has 40 %; the right one 10 %"));
    EXPECT_THAT(text, HasSubstr("gave the true remedy 97 %"));
    EXPECT_THAT(text, HasSubstr("41 minutes, 57 acts (troubleshooting by symptom, seed 2)"));
    EXPECT_THAT(text, HasSubstr("2 of 2"));
    EXPECT_THAT(text, HasSubstr("Answer: gas pipe carries too little; quote a larger gas pipe."));
    EXPECT_THAT(text, Not(HasSubstr("Beside it")));
    EXPECT_THAT(text, HasSubstr("Fit for release"));
    EXPECT_THAT(text, Not(HasSubstr("Guessable")));
}

TEST(RatingText, CallsAJobGuessableAboveFifteenPerCent) {
    auto rating = made_up();
    rating.on_arrival.of_truth = 0.16;
    EXPECT_THAT(written(rating), HasSubstr("Guessable: a right guess is likelier than 15 %"));
}

TEST(RatingText, NamesWhatNoReadingTellsFromTheAnswer) {
    auto rating = made_up();
    rating.not_told_apart = {{faults::Remedy::replace_igniter, 0.12}};
    EXPECT_THAT(written(rating), HasSubstr("Beside it 12 % stay with \"igniter failed\"."));
}

TEST(RatingText, SaysThatNoSafePathWasFoundAndWhyAJobIsRefused) {
    auto rating = made_up();
    rating.shortest = {};
    rating.refusals = {"\"guesser\" is left without objection in 1 of 2 attempts."};
    const std::string text = written(rating);
    EXPECT_THAT(text, HasSubstr("No safe path was found."));
    EXPECT_THAT(text, HasSubstr("Refused for release because \"guesser\" is left"));
    EXPECT_THAT(text, Not(HasSubstr("Fit for release")));
}

}  // namespace
}  // namespace emberpath::app
