// Proves that in an assessed attempt the house is left when the time allowed is up, that writing goes on, and that
// neither a coached attempt nor a job without a limit knows such an end.

#include <gtest/gtest.h>

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

Job job_of_ten_minutes() {
    Job job = test_job();
    job.time_allowed_s = 600.0;
    return job;
}

TEST(TimeAllowed, WhenItIsUpOnlyWritingIsLeft) {
    Attempt attempt(job_of_ten_minutes(), 7, Mode::assessed);
    ASSERT_NE(attempt.perform("wait 9 min").entry, nullptr);
    EXPECT_FALSE(attempt.time_is_up());
    ASSERT_NE(attempt.perform("wait 2 min").entry, nullptr) << "what was begun in time is ended";
    EXPECT_TRUE(attempt.time_is_up());
    const auto refused = attempt.perform("look at display");
    EXPECT_EQ(refused.entry, nullptr);
    EXPECT_NE(refused.refusal.text.find("time allowed is up"), std::string::npos)
        << refused.refusal.text;
    EXPECT_NE(attempt.perform("write cause no_fault").entry, nullptr);
    EXPECT_NE(attempt.perform("hand in").entry, nullptr);
    EXPECT_TRUE(attempt.over());
}

TEST(TimeAllowed, StopsTheRunningClockWhereItIsUp) {
    Attempt attempt(job_of_ten_minutes(), 7, Mode::assessed);
    attempt.run(7000);
    EXPECT_DOUBLE_EQ(attempt.seconds_on_site(), 600.0);
    attempt.run(100);
    EXPECT_DOUBLE_EQ(attempt.seconds_on_site(), 600.0);
    EXPECT_FALSE(attempt.over()) << "the write-up is still to come";
}

TEST(TimeAllowed, HoldsNobodyWhoIsCoachedAndNoJobWithoutIt) {
    Attempt coached(job_of_ten_minutes(), 7, Mode::coached);
    coached.run(7000);
    EXPECT_FALSE(coached.time_is_up());
    EXPECT_NE(coached.perform("look at display").entry, nullptr);
    Attempt unlimited(test_job(), 7, Mode::assessed);
    unlimited.run(7000);
    EXPECT_FALSE(unlimited.time_is_up());
}

}  // namespace
}  // namespace emberpath::worksite
