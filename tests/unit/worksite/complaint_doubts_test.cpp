// Proves that a job which contradicts its own physics, or gives its cause away, is found out.

#include <gtest/gtest.h>

#include "sim/worksite/complaint.hpp"
#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;

std::string doubts(const Job& job) {
    std::string text;
    for (const auto& doubt : doubts_about(job)) text += doubt + "\n";
    return text;
}

Job cold_house() {
    Job job = test_job({fault(Cause::igniter_failed)});
    job.intended = faults::Remedy::replace_igniter;
    return job;
}

TEST(Doubts, AreNoneAboutAJobThatHoldsTogether) {
    EXPECT_EQ(doubts(cold_house()), "");
}

TEST(Doubts, AriseWhenTheComplaintIsNotWhatTheHistoryShows) {
    Job job = cold_house();
    job.customer.complaint = Complaint::too_hot;
    EXPECT_EQ(doubts(job),
              "the customer complains of \"too hot\", but the history shows \"no hot water\"\n");
}

TEST(Doubts, AriseWhenTheSoundHouseWouldComplainToo) {
    Job job = cold_house();
    job.panel.switched_on = 0.0;
    EXPECT_NE(doubts(job).find("without the fault the household would complain all the same"),
              std::string::npos);
}

TEST(Doubts, AriseWhenWordsNameTheCause) {
    Job job = cold_house();
    job.customer.answers["history"] = "The last one said the Igniter failed.";
    EXPECT_EQ(doubts(job), "the answer about history names the cause, igniter failed\n");
}

TEST(Complaints, HaveAWordEach) {
    for (std::size_t i = 0; i < complaint_count; ++i)
        EXPECT_FALSE(complaint_word(static_cast<Complaint>(i)).empty());
}

}  // namespace
}  // namespace emberpath::worksite
