// Proves that a release check of enough houses ends with the table for the job file, and one of few houses with none.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "ui/app/release.hpp"

namespace emberpath::app {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

std::string written(int houses, const std::string& refusal = {}) {
    trainees::Release release;
    trainees::HouseSeen house;
    house.of_truth = house.of_leading = 0.98;
    house.leads = true;
    release.houses.assign(static_cast<std::size_t>(houses), house);
    release.drawn = houses;
    release.reference_minutes = 20.0;
    release.not_scored_because = refusal;
    worksite::Job job;
    job.title = "Job 0: a house";
    std::ostringstream out;
    write_release(out, job, release, "2026-11-28", "0123456789abcdef");
    return out.str();
}

TEST(ReleaseText, EndsWithATableThatNamesDayFilesAndHouses) {
    EXPECT_THAT(written(50), HasSubstr("\n[release]\nchecked_on = \"2026-11-28\"\n"
                                       "of = \"0123456789abcdef\"\nhouses = 50\nshown = 50\n"));
    EXPECT_THAT(written(50), Not(HasSubstr("refused = ")));
}

TEST(ReleaseText, WritesAReasonAgainstTheJobIntoTheTableWithItsQuotesEscaped) {
    EXPECT_THAT(written(50, "a \"word\"."),
                HasSubstr("refused = \"whoever reads all this is not scored: a \\\"word\\\".\"\n"));
}

TEST(ReleaseText, HasNoTableWhereTooFewHousesWereTried) {
    EXPECT_THAT(written(20), HasSubstr("[release]"));
    EXPECT_THAT(written(19), Not(HasSubstr("[release]")));
    EXPECT_THAT(written(19), HasSubstr("In fewer than 20 houses, 95 % cannot be told."));
    EXPECT_THAT(written(0), HasSubstr("No table for the job file"));
}

}  // namespace
}  // namespace emberpath::app
