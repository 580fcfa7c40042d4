// Proves what a shock, the heat of a roof or bad air comes to when it ends a job: where the hand does not let go, that
// gloves keep it off, and that harm closes the gate whatever the rule would close by itself.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "sim/worksite/hazards.hpp"
#include "tests/unit/worksite/dangerous_houses.hpp"

namespace emberpath::worksite {
namespace {

using testing::HasSubstr;
using testing::Not;

/// The neutral is lost, and the street's main is plastic: only the house's own stake carries what comes back.
Job lost_neutral_on_plastic() {
    Job job = test_job({fault(Cause::neutral_broken)});
    job.healthy.electrical.water_service_ohm = 1.0e9;
    return job;
}

std::string text_of_breach(const Attempt& attempt, const std::string& rule) {
    for (const auto& one : attempt.breaches())
        if (one.rule == rule) return one.text;
    return "not broken";
}

TEST(HandOnAPipe, DoesNotLetGoWhereTheWholeReturnStandsOnTheStake) {
    for (const char* touch : {"touch bath tap", "open bath tap"}) {
        Attempt attempt(lost_neutral_on_plastic(), 7, Mode::assessed);
        ASSERT_EQ(play(attempt, {touch}), "");
        EXPECT_TRUE(attempt.over()) << touch;
        EXPECT_THAT(text_of_breach(attempt, "live_pipe"),
                    HasSubstr("V and your hand does not let go."));
        EXPECT_THAT(
            attempt.truth().doses,
            testing::Contains(HasSubstr("mA, hand to foot, with nothing that cuts it off")));
    }
}

TEST(HandOnAPipe, OnlyTinglesWhereTheStreetsMainCarriesIt) {
    Attempt attempt(test_job({fault(Cause::neutral_broken)}), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"touch bath tap"}), "");
    EXPECT_FALSE(attempt.over());
    EXPECT_EQ(text_of_breach(attempt, "live_pipe"), "not broken");
}

TEST(HandOnAPipe, IsKeptOffItByAGlove) {
    Attempt attempt(lost_neutral_on_plastic(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"put on gloves", "touch bath tap", "open bath tap"}), "");
    EXPECT_FALSE(attempt.over());
    EXPECT_THAT(attempt.truth().doses, Not(testing::Contains(HasSubstr("Most current"))));
}

/// The same hand on the same terminal: 0.19 A for some milliseconds, or until somebody pulls it away.
TEST(SafetySwitch, CutsAShockShortUnlessTheHeaterIsFedRoundItOrTheHandIsBeforeIt) {
    const Acts hand{"take cover off", "unplug outlet sensor"};
    const auto dose_of = [](const Acts& acts) {
        Attempt attempt(test_job(), 7, Mode::assessed);
        EXPECT_EQ(play(attempt, acts), "");
        EXPECT_TRUE(attempt.over());
        for (const auto& line : attempt.truth().doses)
            if (line.starts_with("Most current")) return line;
        return std::string();
    };
    EXPECT_THAT(dose_of(hand), HasSubstr("mA, hand to hand, cut off by the safety switch after 13 "
                                         "ms; from 10 mA a hand cannot let go"));
    EXPECT_THAT(dose_of(Acts{"use outlet without safety switch"} + hand),
                HasSubstr("mA, hand to hand, with nothing that cuts it off; from 10 mA"));
    EXPECT_THAT(dose_of({"clamp street active"}), HasSubstr("with nothing that cuts it off"));
}

/// A visit that ends in harm.
struct End {
    const char* name;
    const char* rule;
    Job job;
    Acts acts;
};
void PrintTo(const End& end, std::ostream* out) {
    *out << end.name;
}

std::vector<End> ends() {
    const Acts rewired = dead + dressed + Acts{"dry and reseal wiring", "unlock plug"};
    const auto in_roof = [](Job& job) { job.site.dangers.pipe_in_roof = true; };
    return {
        {"CasingEnergisedUntested", "not_tested_before_power", lost_neutral_on_plastic(),
         rewired + Acts{"take off gloves", "plug in heater", "switch power on"}},
        {"HeatUnderTheRoof", "roof_space", with(in_roof),
         Acts{"say where you go", "switch main switch off"} + Acts(6, "look at gas pipe run")},
        {"PipeParted",
         "no_bridge",
         test_job({fault(Cause::neutral_broken)}),
         {"shut water at heater", "undo water union"}},
        {"HandOnAPipe", "live_pipe", lost_neutral_on_plastic(), {"touch bath tap"}},
        {"HandOnMains", "live_work", test_job(), {"take cover off", "unplug outlet sensor"}},
        {"HandInTheSwitchboard", "beyond_scope", test_job(), {"clamp street neutral"}},
    };
}

class Harm : public testing::TestWithParam<End> {};

TEST_P(Harm, ClosesTheGateWhateverItsRuleClosesByItself) {
    const End& end = GetParam();
    Attempt attempt(end.job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, end.acts), "");
    ASSERT_TRUE(attempt.over()) << all_shown(attempt);
    EXPECT_EQ(attempt.log().back().shown.back(), "The job ends here.");
    const auto& breaches = attempt.breaches();
    const auto last = std::find_if(breaches.begin(), breaches.end(),
                                   [&](const Breach& one) { return one.rule == end.rule; });
    ASSERT_NE(last, breaches.end());
    EXPECT_THAT(last->text, HasSubstr("The job ended there."));
    EXPECT_TRUE(last->critical);
    EXPECT_EQ(last->deduction, rule(end.rule).deduction);
}
INSTANTIATE_TEST_SUITE_P(Ends, Harm, testing::ValuesIn(ends()),
                         [](const auto& i) { return std::string(i.param.name); });

/// What was never done cannot have been done badly.
TEST(ShockAtTheStart, LeavesNothingToReproachForTheWorkThatWasNotDone) {
    Attempt live(test_job(), 7, Mode::assessed), off(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(live, {"take cover off", "descale heat exchanger"}), "");
    EXPECT_TRUE(live.over());
    EXPECT_THAT(text_of_breach(live, "live_work"), HasSubstr("You began work inside with "));
    ASSERT_EQ(play(off, {"unplug heater", "take cover off", "descale heat exchanger"}), "");
    for (const char* word : {"no_gloves", "no_glasses", "water_not_shut"}) {
        EXPECT_FALSE(broke(live, word)) << word;
        EXPECT_TRUE(broke(off, word)) << word;
    }
}

/// Some of these rules leave the gate open where nobody is hurt.
TEST(GateColumn, IsOpenForThreeOfTheRulesThatCanEndAJob) {
    for (const char* word : {"not_tested_before_power", "roof_space", "no_bridge"})
        EXPECT_FALSE(rule(word).critical) << word;
    Attempt untested(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(untested, dead + dressed +
                                 Acts{"dry and reseal wiring", "unlock plug", "plug in heater",
                                      "switch power on"}),
              "");
    for (const auto& one : untested.breaches()) EXPECT_FALSE(one.critical) << one.rule;
    EXPECT_TRUE(broke(untested, "not_tested_before_power"));
}

TEST(Switchboard, IsOpenedByAClampThatGoesAroundItsConductors) {
    for (const char* conductor : {"street active", "street neutral", "earth link"}) {
        const std::string act = std::string("clamp ") + conductor;
        Attempt gloved(test_job(), 7, Mode::assessed), bare(test_job(), 7, Mode::assessed);
        ASSERT_EQ(play(gloved, {"put on gloves", act}), "");
        EXPECT_TRUE(broke(gloved, "beyond_scope")) << act;
        EXPECT_FALSE(gloved.over());
        EXPECT_EQ(gloved.log().back().observations.size(), 1U) << act;
        ASSERT_EQ(play(bare, {act}), "");
        EXPECT_TRUE(bare.over()) << act;
        EXPECT_TRUE(bare.log().back().observations.empty()) << act;
        EXPECT_THAT(text_of_breach(bare, "beyond_scope"),
                    HasSubstr("Your hand meets the incoming bar"));
    }
    for (const char* act : {"clamp whole lead", "clamp lead earth", "clamp water pipe"}) {
        Attempt elsewhere(test_job(), 7, Mode::assessed);
        ASSERT_EQ(play(elsewhere, {act}), "");
        EXPECT_FALSE(broke(elsewhere, "beyond_scope")) << act;
    }
}

}  // namespace
}  // namespace emberpath::worksite
