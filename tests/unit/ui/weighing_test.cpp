// Proves that weighing tells how far it is and comes to the same bits as the assessment that tells nothing.
#include "ui/app/weighing.hpp"

#include <gtest/gtest.h>

#include "tests/unit/worksite/house.hpp"
#include "ui/app/tick_count.hpp"

namespace emberpath::app {
namespace {

TEST(Weighing, GoesUpWithTheTicksAndChangesNoScore) {
    const worksite::Job job =
        worksite::test_job({worksite::fault(faults::Cause::flue_blocked, 0.9)});
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
