// Proves what a debrief says of the fault's own comings and goings, of readings that nothing explains, of luck,
// and which readings count where the cure is words.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "sim/scoring/judgement.hpp"
#include "tests/unit/trainees/small_house.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::Not;
using trainees::small_house;

using Path = std::vector<std::string>;

Assessment assessed(const worksite::Job& job, const Path& path, const Terms& terms = {}) {
    std::vector<TimedAct> acts;
    for (const std::string& sentence : path) acts.push_back({0, sentence});
    return assess(job, 5, worksite::Mode::assessed, acts, terms);
}

Assessment unexplained(const worksite::Job& job, const Path& path) {
    Terms terms;
    terms.explained = false;
    return assessed(job, path, terms);
}

// There through the whole history and the first of four minutes in the house.
TEST(FaultThatComesAndGoes, IsSaidToHaveBeenThereInItsShareOfTheVisit) {
    worksite::Job job = small_house(Cause::igniter_failed);
    const Path path{"wait 4 min"};
    EXPECT_THAT(assessed(job, path).still_open, Not(Contains(HasSubstr("comes and goes"))));
    job.faults.front().period_s = 1.0e5;
    job.faults.front().present_s = job.site.arrival_s + 60.0;
    EXPECT_THAT(assessed(job, path).still_open,
                Contains("The fault comes and goes: it was there in 25 % of the time you were in "
                         "the house. When it was away you could not have seen it."));
}

// Three sensors short at once, which no shadow has. A reading that all causes expect alike takes a little from the
// catch-all again.
TEST(CatchAll, IsSaidFromAFifthOnAndNotBelow) {
    worksite::Job job = small_house(Cause::outlet_sensor_short);
    job.faults.push_back({Cause::inlet_sensor_short, 1.0});
    job.faults.push_back({Cause::exchanger_sensor_short, 1.0});
    const Path two{"open service readout", "read readout outlet temperature",
                   "read readout inlet temperature"};
    Path three = two;
    three.insert(three.begin() + 1, "read readout ambient temperature");
    const Assessment loud = assessed(job, two), quiet = assessed(job, three);
    ASSERT_GE(loud.something_else, 0.2);
    ASSERT_LT(quiet.something_else, 0.2);
    EXPECT_GT(quiet.something_else, 0.15);
    EXPECT_THAT(
        loud.still_open,
        Contains(HasSubstr(
            "The readings fit no cause of the catalogue well: a cause that is not in it has " +
            percent(loud.something_else) + " beside all of them.")));
    EXPECT_THAT(quiet.still_open, Not(Contains(HasSubstr("fit no cause"))));
}

double of_class(const std::vector<ClassProbability>& all, Class one) {
    for (const ClassProbability& c : all)
        if (c.of == one) return c.probability;
    return 0.0;
}

const Path find_out{"press reset",   "open service readout",        "read readout event",
                    "open bath tap", "watch burner window for 8 s", "listen for 8 s",
                    "close bath tap"};

Path and_then(Path path, const Path& more) {
    path.insert(path.end(), more.begin(), more.end());
    return path;
}

/// The same from the classes before and after each act; `acts`: so many count.
Luck recounted(const Assessment& a, Class truth, std::size_t acts) {
    Luck luck;
    for (std::size_t i = 0; i < acts; ++i) {
        const double before = of_class(a.acts[i].before, truth);
        luck.told_bits += std::log2(of_class(a.acts[i].after, truth) / before);
        luck.expected_bits += a.acts[i].bits_expected;
    }
    return luck;
}

TEST(Luck, IsHowFarWhatWasToldLiesFromWhatWasExpectedInStandardDeviations) {
    const worksite::Job dead = small_house(Cause::igniter_failed);
    worksite::Job sparking =
        dead;  // the same complaint, and from arrival on nothing to be seen of its cause
    sparking.faults.front().period_s = 1.0e5;
    sparking.faults.front().present_s = dead.site.arrival_s + 1.0;
    double index[2] = {};
    for (const bool there : {true, false}) {
        const Assessment a = assessed(there ? dead : sparking, find_out);
        const Luck again = recounted(a, faults::Remedy::replace_igniter, a.acts.size());
        EXPECT_NEAR(a.luck.told_bits, again.told_bits, 1e-9);
        EXPECT_NEAR(a.luck.expected_bits, again.expected_bits, 1e-9);
        EXPECT_EQ(a.luck.readings, 3);
        ASSERT_GT(a.luck.variance, 0.0);
        EXPECT_NEAR(a.luck.index * std::sqrt(a.luck.variance),
                    a.luck.told_bits - again.expected_bits, 1e-9);
        index[there ? 1 : 0] = a.luck.index;
    }
    EXPECT_GT(index[1], 0.0);
    EXPECT_LT(index[0], 0.0);
}

TEST(Luck, IsNoneWhereNothingWasReadAndNothingExpected) {
    const Luck none = assessed(small_house(Cause::igniter_failed), {"wait 1 min"}).luck;
    EXPECT_EQ(none.told_bits, none.expected_bits);
    EXPECT_EQ(none.index, 0.0);
    EXPECT_EQ(none.readings, 0);
}

TEST(Luck, CountsNoReadingAfterTheCure) {
    const worksite::Job job = small_house(Cause::igniter_failed);
    const Path cured =
        and_then(find_out, {"switch power off", "unplug heater", "lock off plug", "prove tester",
                            "take cover off", "test for dead", "prove tester", "replace igniter"});
    const Path proved =
        and_then(cured, {"refit cover", "unlock plug", "plug in heater", "switch power on",
                         "press reset", "open bath tap", "watch burner window for 8 s",
                         "measure temperature at bath tap", "look at display"});
    const Assessment before = assessed(job, cured), after = assessed(job, proved);
    ASSERT_EQ(after.acts.size(), proved.size());
    double expected_later = 0.0;
    for (std::size_t i = cured.size(); i < after.acts.size(); ++i)
        expected_later += after.acts[i].bits_expected;
    EXPECT_GT(expected_later, 0.1);  // there was something to be counted
    EXPECT_EQ(after.luck.readings, before.luck.readings);
    EXPECT_EQ(after.luck.told_bits, before.luck.told_bits);
    EXPECT_EQ(after.luck.expected_bits, before.luck.expected_bits);
    EXPECT_EQ(after.luck.index, before.luck.index);
}

// The assessment without explanations lets the shadows rest after a cure; words may be said again.
TEST(SaidTwice, AnExplanationCountsWithTheReadingsInBetween) {
    const worksite::Job job = small_house(Cause::no_fault);
    const Path once{"explain to customer", "open bath tap", "watch burner window for 8 s",
                    "measure temperature at bath tap"};
    const Path end{"write cause no_fault", "hand in"};
    const Assessment said_once = unexplained(job, and_then(once, end));
    const Path twice = and_then(and_then(once, {"explain to customer"}), end);
    const Assessment said_again = unexplained(job, twice);
    EXPECT_GT(said_again.diagnosis_probability, 2.0 * said_once.diagnosis_probability);
}

}  // namespace
}  // namespace emberpath::scoring
