// Proves that the complaint each shipped job states is what its household met in the simulated history,
// whatever the seed, and that the same household in the sound house would have had no reason to call.
#include <gtest/gtest.h>

#include <string>

#include "sim/scenario/scenario.hpp"
#include "sim/worksite/complaint.hpp"

namespace emberpath {
namespace {

std::vector<worksite::Job> shipped() {
    std::vector<worksite::Job> jobs;
    const auto folder = std::filesystem::path(EMBERPATH_SOURCE_DIR) / "scenarios/jobs";
    for (const auto& file : scenario::list_jobs(folder)) jobs.push_back(scenario::load(file).job);
    return jobs;
}

class History : public testing::TestWithParam<worksite::Job> {};

TEST_P(History, ShowsTheComplaintThatIsStated) {
    const worksite::Job& job = GetParam();
    for (std::uint64_t seed = 1; seed <= 4; ++seed)
        EXPECT_EQ(worksite::simulated_complaint(job, seed), job.customer.complaint)
            << job.name << " with seed " << seed;
}

TEST_P(History, GivesNoCauseForComplaintInTheSoundHouse) {
    worksite::Job sound = GetParam();
    sound.faults.clear();
    EXPECT_EQ(worksite::simulated_complaint(sound, 1), worksite::Complaint::none);
}

/// A severity at the very edge of its complaint would make the job depend on the last digit.
TEST_P(History, HoldsForSlightlyOtherSeverities) {
    worksite::Job job = GetParam();
    const double stated = job.faults.at(0).severity;
    for (const double factor : {0.985, 1.015}) {
        job.faults.at(0).severity = stated * factor;
        EXPECT_EQ(worksite::simulated_complaint(job, 1), job.customer.complaint) << factor;
    }
}

std::string name_of(const testing::TestParamInfo<worksite::Job>& info) {
    std::string name = info.param.name;
    name.at(0) = static_cast<char>(name.at(0) - 'a' + 'A');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Jobs, History, testing::ValuesIn(shipped()), name_of);

}  // namespace
}  // namespace emberpath
