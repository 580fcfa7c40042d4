// Proves that weighing tells how far it is and comes to the same bits as the assessment that tells nothing.
#include "ui/app/weighing.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/worksite/house.hpp"
#include "ui/app/tick_count.hpp"

namespace emberpath::app {
namespace {

/// A short visit that is handed in.
records::Record visit_to(const worksite::Job& job) {
    records::Record record;
    record.header.seed = 1;
    worksite::Attempt attempt(job, 1, record.header.mode);
    for (const char* sentence :
         {"look at display", "open kitchen tap", "wait 30 s", "look at flue terminal", "hand in"}) {
        record.acts.emplace_back();
        record.acts.back().tick = attempt.tick();
        record.acts.back().sentence = sentence;
        (void)attempt.perform(sentence);
    }
    return record;
}

worksite::Job blocked_flue() {
    return worksite::test_job({worksite::fault(faults::Cause::flue_blocked, 0.9)});
}

/// The same with the scores that it gives.
records::Record closed_visit_to(const worksite::Job& job) {
    records::Record record = visit_to(job);
    const auto now = records::assess(record, job);
    for (const auto& area : now.areas) record.scores.push_back({area.word, area.score});
    record.scores.push_back({"overall", now.overall});
    record.gates_met = now.gates_met;
    record.proposal = now.proposal;
    record.closed = true;
    return record;
}

TEST(WeighingAgain, TellsHowFarItIsAndComesToTheScoresOfTheRecord) {
    const worksite::Job job = blocked_flue();
    const records::Record record = closed_visit_to(job);
    std::size_t told = 0;
    const auto again =
        weigh_again(record, job, record.header.scenario_hash, [&](double) { ++told; });
    ASSERT_TRUE(again.assessment) << again.differs;
    EXPECT_EQ(again.assessment->overall, record.scores.back().score);
    EXPECT_GE(told, 20U);
}

TEST(WeighingAgain, SaysWhatIsNotTheSame) {
    const worksite::Job job = blocked_flue();
    records::Record other_score = closed_visit_to(job), no_end = other_score,
                    other_act = other_score;
    other_score.scores.back().score += 1.0e-9;
    no_end.acts.pop_back();
    other_act.acts[1].sentence = "open the moon";
    const auto said = [&](const records::Record& record) {
        const auto again = weigh_again(record, job, record.header.scenario_hash, [](double) {});
        EXPECT_FALSE(again.assessment);
        return again.differs;
    };
    EXPECT_THAT(said(other_score), testing::HasSubstr("the score for overall"));
    EXPECT_THAT(said(no_end), testing::HasSubstr("do not end the attempt"));
    EXPECT_THAT(said(other_act), testing::HasSubstr("cannot be done now"));
}

TEST(Weighing, GoesUpWithTheTicksAndChangesNoScore) {
    const worksite::Job job = blocked_flue();
    const records::Record record = visit_to(job);
    std::vector<double> told;
    const auto weighed = weigh(record, job, [&](double share) { told.push_back(share); });
    ASSERT_GE(told.size(), 20U);
    for (std::size_t i = 1; i < told.size(); ++i) EXPECT_GT(told[i], told[i - 1]);
    EXPECT_DOUBLE_EQ(told.back(), 1.0);
    const auto plain = records::assess(record, job);
    EXPECT_EQ(weighed.overall, plain.overall);
    EXPECT_EQ(weighed.overall_low, plain.overall_low);
    EXPECT_EQ(weighed.proposal, plain.proposal);
    ASSERT_EQ(weighed.areas.size(), plain.areas.size());
    for (std::size_t i = 0; i < plain.areas.size(); ++i)
        EXPECT_EQ(weighed.areas[i].score, plain.areas[i].score) << plain.areas[i].word;
}

TEST(TickCount, IsFullAtTheArrivalAndStopsThere) {
    const worksite::Job job = worksite::test_job();
    desktop::Progress progress;
    TickCount count(progress, job.site.arrival_s);
    EXPECT_EQ(progress.share, 0.0);
    worksite::Attempt attempt(job, 1, worksite::Mode::coached, &count);
    EXPECT_NEAR(progress.share, 1.0, 1e-9);
    EXPECT_DOUBLE_EQ(progress.minutes, job.site.arrival_s / 60.0);
    count.reached();
    attempt.run(100);
    EXPECT_NEAR(progress.share, 1.0, 1e-9);
}

}  // namespace
}  // namespace emberpath::app
