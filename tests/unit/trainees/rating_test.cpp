// Proves what a rating refuses a job for, and what it takes for the best that can be found out there.

#include "sim/trainees/rating.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/trainees/small_house.hpp"

namespace emberpath::trainees {
namespace {

using faults::Cause;
using ::testing::HasSubstr;

Scored attempt_of(Policy policy, double overall, bool unopposed) {
    Scored one;
    one.policy = policy;
    one.overall = overall;
    one.unopposed = unopposed;
    one.gates_met = true;
    one.minutes = 30.0;
    one.true_class_probability = 0.95;
    return one;
}

TEST(Rating, RefusesAJobThatRewardsABadHabitAndSaysWhich) {
    const auto job = small_house(Cause::igniter_failed);
    const auto fit = judge(job, {attempt_of(Policy::information, 90.0, true),
                                 attempt_of(Policy::guesser, 30.0, false)});
    EXPECT_TRUE(fit.refusals.empty());
    EXPECT_TRUE(fit.shortest.found);
    const auto outscored = judge(job, {attempt_of(Policy::information, 80.0, true),
                                       attempt_of(Policy::guesser, 85.0, false)});
    ASSERT_EQ(outscored.refusals.size(), 1U);
    EXPECT_THAT(outscored.refusals[0], HasSubstr("guesser"));
    const auto unopposed = judge(job, {attempt_of(Policy::information, 90.0, true),
                                       attempt_of(Policy::part_swapper, 60.0, true)});
    ASSERT_EQ(unopposed.refusals.size(), 1U);
    EXPECT_THAT(unopposed.refusals[0], HasSubstr("without objection in 1 of 1"));
}

TEST(Rating, RefusesAJobThatItsReleaseCheckRefusesOrWhichHasChangedSince) {
    Rating fit, refused, changed;
    worksite::ReleaseCheck check{"2026-11-28", 50, 48, ""};
    refuse_by_check(check, fit);
    EXPECT_TRUE(fit.refusals.empty());
    check.outdated = true;
    refuse_by_check(check, changed);
    ASSERT_EQ(changed.refusals.size(), 1U);
    EXPECT_THAT(changed.refusals[0], HasSubstr("have changed since"));
    refuse_by_check({"2026-11-28", 50, 47, ""}, refused);
    ASSERT_EQ(refused.refusals.size(), 1U);
    EXPECT_THAT(refused.refusals[0], HasSubstr("only 47 of 50 other houses"));
}

TEST(Rating, RefusesAJobThatNoSoundWayLeadsThrough) {
    const auto rating =
        judge(small_house(Cause::igniter_failed), {attempt_of(Policy::information, 50.0, false)});
    ASSERT_FALSE(rating.refusals.empty());
    EXPECT_THAT(rating.refusals[0], HasSubstr("no sound way"));
    EXPECT_FALSE(rating.shortest.found);
}

TEST(Rating, TakesWhatTheBestReaderOfEachSeedFoundForWhatCanBeFoundOut) {
    auto quick = attempt_of(Policy::information, 90.0, true);
    auto thorough = attempt_of(Policy::over_tester, 60.0, true);
    thorough.true_class_probability = 0.7;  // six hours later it is another house
    thorough.still_open = {{faults::Remedy::replace_igniter, 0.2}};
    const auto job = small_house(Cause::gas_pipe_restriction);
    const auto one_seed = judge(job, {quick, thorough});
    EXPECT_DOUBLE_EQ(one_seed.identifiable, 0.95);
    EXPECT_TRUE(one_seed.not_told_apart.empty()) << "the best reader told them apart";
    thorough.seed = 2;
    const auto two_seeds = judge(job, {quick, thorough});
    EXPECT_DOUBLE_EQ(two_seeds.identifiable, 0.825);
    EXPECT_EQ(two_seeds.not_told_apart.size(), 1U);
}

TEST(Rating, RefusesAJobWhoseCauseNobodyCanTell) {
    auto best = attempt_of(Policy::information, 90.0, true);
    best.true_class_probability = 0.79;
    const auto rating = judge(small_house(Cause::igniter_failed), {best});
    ASSERT_EQ(rating.refusals.size(), 1U);
    EXPECT_THAT(rating.refusals[0], HasSubstr("only 79 %"));
}

TEST(Rating, CountsObjectionsOfThoseWhoReadAndNotOfThoseWhoGuess) {
    const auto job = small_house(Cause::igniter_failed);
    const auto rating = judge(
        job,
        {attempt_of(Policy::information, 90.0, true), attempt_of(Policy::checklist, 55.0, false),
         attempt_of(Policy::random, 20.0, false), attempt_of(Policy::guesser, 20.0, false)});
    EXPECT_DOUBLE_EQ(rating.difficulty.missed_share, 0.5);
}

}  // namespace
}  // namespace emberpath::trainees
