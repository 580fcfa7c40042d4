// Proves that an attempt stops where the simulation leaves the range in which it is valid, says which quantity left it,
// takes no further act, and comes to the same end when it is played again.

#include <gtest/gtest.h>

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

/// A pipe has burst inside the case: about 15 L/min, of which more stays than the model can hold.
Job flooded_job() {
    Job job = test_job();
    job.healthy.casing_leak_gain = 4.0e-7;
    return job;
}

TEST(BeyondTheModel, AnAttemptStopsThereAndSaysWhat) {
    Attempt attempt(flooded_job(), 7, Mode::assessed);
    ASSERT_FALSE(attempt.over());
    ASSERT_EQ(attempt.beyond_model(), "");
    const auto outcome = attempt.perform("wait 30 min");
    ASSERT_NE(outcome.entry, nullptr) << outcome.refusal.text;
    EXPECT_TRUE(attempt.over());
    EXPECT_NE(attempt.beyond_model().find("water in the case"), std::string::npos)
        << attempt.beyond_model();
    EXPECT_LT(attempt.seconds_on_site(), 1800.0) << "it stops at once, not at the end of the act";
    ASSERT_FALSE(outcome.entry->shown.empty());
    EXPECT_NE(outcome.entry->shown.back().find("not usable as evidence"), std::string::npos)
        << outcome.entry->shown.back();
    const auto stopped = attempt.tick();
    EXPECT_EQ(attempt.perform("look at display").entry, nullptr);
    EXPECT_EQ(attempt.tick(), stopped);
}

TEST(BeyondTheModel, TheSameEndComesEachTime) {
    Attempt one(flooded_job(), 7, Mode::assessed), two(flooded_job(), 7, Mode::assessed);
    ASSERT_NE(one.perform("wait 30 min").entry, nullptr);
    ASSERT_NE(two.perform("wait 30 min").entry, nullptr);
    EXPECT_EQ(one.tick(), two.tick());
    EXPECT_EQ(one.state_hash(), two.state_hash());
    Attempt sound(test_job(), 7, Mode::assessed);
    ASSERT_NE(sound.perform("wait 30 min").entry, nullptr);
    EXPECT_FALSE(sound.over());
}

TEST(BeyondTheModel, AHistoryThatLeavesItEndsBeforeTheVisit) {
    Job job = flooded_job();
    job.site.arrival_s = 3600.0;
    Attempt attempt(job, 7, Mode::coached);
    EXPECT_TRUE(attempt.over());
    EXPECT_NE(attempt.beyond_model(), "");
    EXPECT_EQ(attempt.perform("look at display").entry, nullptr);
}

}  // namespace
}  // namespace emberpath::worksite
