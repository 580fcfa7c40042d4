// Proves when evidence, path and remedy are left unscored and what is said then, and what the second of two
// faults adds to the time a path is measured against.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "sim/scoring/scoring.hpp"
#include "tests/unit/trainees/small_house.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using trainees::small_house;

Assessment assessed(const worksite::Job& job, const std::vector<std::string>& path) {
    std::vector<TimedAct> acts;
    for (const std::string& sentence : path) acts.push_back({0, sentence});
    Terms terms;
    terms.explained = false;
    return assess(job, 5, worksite::Mode::assessed, acts, terms);
}

/// Of evidence, path and remedy alike; safe work and proof are scored all the same.
std::string why_not(const Assessment& assessment) {
    const auto& areas = assessment.areas;
    EXPECT_TRUE(areas[0].scored && areas[4].scored);
    EXPECT_EQ(areas[1].not_scored_because, areas[2].not_scored_because);
    EXPECT_EQ(areas[1].not_scored_because, areas[3].not_scored_because);
    EXPECT_EQ(areas[1].not_scored_because.empty(), assessment.overall_scored);
    return areas[1].not_scored_because;
}

TEST(NotScored, IsACauseThatCannotActAtTheSite) {
    worksite::Job job = small_house(Cause::igniter_failed);  // on mains gas
    EXPECT_EQ(why_not(assessed(job, {})), "");
    job.faults = {{Cause::cylinder_low, 0.8}};
    EXPECT_EQ(why_not(assessed(job, {})), "the true cause is not among the shadows of this site.");
}

// Held a little shut the water valve hides behind what a drifted sensor does; the shadows stand where it shows.
TEST(NotScored, IsAFaultThatTheBestReadingsTakeForAnotherCause) {
    worksite::Job job = small_house(Cause::water_valve_stuck_shut);
    job.faults.front().severity = 0.8;
    EXPECT_EQ(why_not(assessed(job, {})), "");
    job.faults.front().severity = 0.35;
    ASSERT_LT(job.faults.front().severity,
              faults::info(Cause::water_valve_stuck_shut).least_severity);
    EXPECT_EQ(why_not(assessed(job, {})),
              "the best readings this job offers, free of error, lead to another cause (inlet "
              "sensor).");
}

// Away from the moment of arrival the igniter sparks. Two looks at the flame leave a little of the dead one, the word
// on the display after one look leaves less.
TEST(NotScored, IsAnAttemptWhoseReadingsLeaveTheTrueClassUnderAThousandth) {
    worksite::Job job = small_house(Cause::igniter_failed);
    job.faults.front().period_s = 1.0e5;
    job.faults.front().present_s = job.site.arrival_s + 1.0;
    std::vector<std::string> twice{"press reset", "open bath tap", "watch burner window for 8 s"};
    std::vector<std::string> display = twice;
    twice.insert(twice.end(), {"wait 30 s", "watch burner window for 8 s"});
    display.push_back("look at display");
    const Assessment a_little = assessed(job, twice), less = assessed(job, display);
    ASSERT_GE(a_little.true_class_probability, 1.0e-3);
    ASSERT_LT(less.true_class_probability, 1.0e-3);
    EXPECT_EQ(why_not(a_little), "");
    EXPECT_EQ(why_not(less),
              "the readings contradict every shadow of the true cause, so the shadows cannot judge "
              "this path.");
}

TEST(SecondOfTwoFaults, AddsItsOwnReadingsToTheTimeOfTheFirst) {
    const worksite::Job first = small_house(Cause::outlet_sensor_open);
    worksite::Job second = first, both = first;
    second.faults = {{Cause::gas_pipe_restriction, 0.55}};
    both.faults.push_back(second.faults.front());
    const double of_second = assessed(second, {}).reference_minutes;
    ASSERT_GT(of_second, 10.0);        // so that the least of all does not hide what it needs
    constexpr double set_aside = 5.0;  // once for both
    const Assessment of_both = assessed(both, {});
    EXPECT_EQ(why_not(of_both), "");  // readings that lead to the first lead to a part of the truth
    EXPECT_NEAR(of_both.reference_minutes,
                assessed(first, {}).reference_minutes + of_second - set_aside, 1e-9);
}

}  // namespace
}  // namespace emberpath::scoring
