// Proves whole attempts from sentences to scores: a sound path scores above part swapping and live work,
// twice the same path gives the same figures, and a preview shows what a fault does.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "sim/scoring/scoring.hpp"
#include "tests/unit/scoring/driven_house.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using ::testing::HasSubstr;

worksite::Job job_with(Cause cause, double severity) {
    worksite::Job job = plain_job(worksite::GasKind::natural_gas);
    using Kind = worksite::HouseholdEvent::Kind;
    job.site.events = {{60.0, Kind::tap, 1, 1.0},
                       {360.0, Kind::tap, 1, 0.0},
                       {700.0, Kind::tap, 0, 0.6},
                       {820.0, Kind::tap, 0, 0.0}};
    job.customer.complaint = worksite::Complaint::no_hot_water;
    job.faults = {{cause, severity}};
    job.intended = faults::info(cause).remedy;
    return job;
}

std::vector<TimedAct> in_turn(const std::vector<std::string>& sentences) {
    std::vector<TimedAct> acts;
    for (const std::string& sentence : sentences) acts.push_back({0, sentence});
    return acts;
}

const std::vector<std::string> sound_path{"look at display",
                                          "open service readout",
                                          "read readout event",
                                          "press reset",
                                          "open kitchen tap",
                                          "watch burner window for 8 s",
                                          "listen for 8 s",
                                          "read readout flow",
                                          "close kitchen tap",
                                          "switch power off",
                                          "unplug heater",
                                          "lock off plug",
                                          "prove tester",
                                          "take cover off",
                                          "test for dead",
                                          "prove tester",
                                          "replace igniter",
                                          "refit cover",
                                          "unlock plug",
                                          "plug in heater",
                                          "switch power on",
                                          "press reset",
                                          "open shower",
                                          "wait 2 min",
                                          "measure temperature at shower",
                                          "look at display",
                                          "close shower",
                                          "tell customer the igniter had failed and is new",
                                          "write cause igniter failed",
                                          "write because #1 #2",
                                          "write done replaced the igniter",
                                          "write told the igniter had failed",
                                          "hand in"};

const std::vector<std::string> swapping{
    "take cover off", "replace outlet sensor", "clean heat exchanger",       "replace igniter",
    "refit cover",    "press reset",           "write cause igniter failed", "hand in"};

Assessment assess_path(const std::vector<std::string>& path) {
    return assess(job_with(Cause::igniter_failed, 1.0), 5, worksite::Mode::assessed, in_turn(path));
}

// Played once for the tests that only read it.
const Assessment& sound() {
    static const Assessment once = assess_path(sound_path);
    return once;
}

std::string described(const Assessment& a) {
    std::string text = "overall " + std::to_string(a.overall) + "\n";
    for (const Area& area : a.areas)
        text += area.word + " " + std::to_string(area.score) + ": " + area.reason + "\n";
    for (const worksite::Breach& b : a.breaches) text += "breach " + b.rule + ": " + b.text + "\n";
    return text + a.proposal + "\n";
}

TEST(Assess, ASoundPathFindsTheDeadIgniterAndScoresAboveSwappingPartsLive) {
    const Assessment& good = sound();
    const Assessment bad = assess_path(swapping);
    EXPECT_TRUE(good.fixed) << described(good);
    EXPECT_TRUE(good.gates_met) << described(good);
    // 89 %: clogged injectors, too, end in "no flame at light-up". The warrant of naming it is whole all the same.
    EXPECT_GT(good.areas[1].score, 99.0) << described(good);
    EXPECT_GT(good.true_class_probability, 0.8) << described(good);  // need of replacing an igniter
    EXPECT_FALSE(bad.gates_met) << described(bad);
    EXPECT_LT(bad.true_class_probability, 0.6) << described(bad);
    EXPECT_GT(good.overall, bad.overall + 30.0) << described(good) << described(bad);
    EXPECT_EQ(good.acts.size(), sound_path.size());
}

/// The rule of roof spaces leaves the gate open; who faints there has closed it.
TEST(Assess, AFaintInTheRoofSpaceClosesTheGateOfAnAttemptThatSetTheFaultRight) {
    worksite::Job job = job_with(Cause::igniter_failed, 1.0);
    job.site.dangers.pipe_in_roof = true;
    auto path = sound_path;
    path.pop_back();
    path.insert(path.end(), {"say where you go", "switch main switch off"});
    path.insert(path.end(), 6, "look at gas pipe run");
    const Assessment a = assess(job, 5, worksite::Mode::assessed, in_turn(path));
    EXPECT_TRUE(a.fixed) << described(a);
    EXPECT_FALSE(a.gates_met) << described(a);
    EXPECT_THAT(a.proposal, HasSubstr("not yet, because a safety gate was broken: You were "));
}

TEST(Assess, SamePathTwiceGivesTheSameBits) {
    const Assessment& a = sound();
    const Assessment b = assess_path(sound_path);
    EXPECT_EQ(a.overall, b.overall);
    EXPECT_EQ(a.true_class_probability, b.true_class_probability);
    for (std::size_t i = 0; i < a.acts.size(); ++i) {
        EXPECT_EQ(a.acts[i].bits_gained, b.acts[i].bits_gained);
        EXPECT_EQ(a.acts[i].bits_expected, b.acts[i].bits_expected);
    }
}

TEST(Assess, ReadsTheClassesBeforeAndAfterEachAct) {
    const Assessment& a = sound();
    double gained = 0.0;
    for (const ActWorth& worth : a.acts) {
        double sum = 0.0;
        for (const ClassProbability& c : worth.after) sum += c.probability;
        EXPECT_NEAR(sum, 1.0, 1e-9);
        EXPECT_GE(worth.bits_expected, 0.0);
        gained += worth.bits_gained;
    }
    EXPECT_GT(gained, 1.0);
    ASSERT_FALSE(a.comparisons.empty());
    EXPECT_GE(a.comparisons.front().cells.size(), 8U);
}

TEST(Assess, AnEmptyAttemptIsScoredAndSuggestedAsNotYet) {
    const Assessment a = assess_path({});
    EXPECT_FALSE(a.fixed);
    EXPECT_TRUE(a.acts.empty());
    EXPECT_THAT(a.proposal, HasSubstr("not yet"));
}

TEST(Assess, AJobThatItsReleaseCheckRefusedIsNotScoredOnEvidencePathAndRemedy) {
    worksite::Job job = job_with(Cause::igniter_failed, 1.0);
    const auto assessed_after = [&](const worksite::ReleaseCheck& check) {
        job.release = check;
        return assess(job, 5, worksite::Mode::assessed, in_turn({"hand in"}));
    };
    const Assessment fit = assessed_after({"2026-11-28", 50, 48, ""});
    EXPECT_TRUE(fit.overall_scored);
    const Assessment unseen = assessed_after({"2026-11-28", 50, 47, ""});
    EXPECT_FALSE(unseen.overall_scored);
    EXPECT_FALSE(unseen.unopposed);
    EXPECT_TRUE(unseen.areas[0].scored);  // safe work
    for (const std::size_t i : {1U, 2U, 3U})
        EXPECT_EQ(unseen.areas[i].not_scored_because,
                  "the release check of 2026-11-28 found that its cause shows itself in only 47 of "
                  "50 other houses.");
    const Assessment other =
        assessed_after({"2026-11-28", 50, 50, "the reference path takes 70 minutes."});
    EXPECT_EQ(other.areas[1].not_scored_because,
              "the release check of 2026-11-28 refused it: the reference path takes 70 minutes.");
    worksite::ReleaseCheck of_another_job{"2026-11-28", 50, 50, ""};
    of_another_job.outdated = true;
    EXPECT_THAT(assessed_after(of_another_job).areas[1].not_scored_because,
                HasSubstr("speaks of another job"));
}

TEST(Assess, TwoFaultsAreNotScoredOnEvidencePathAndRemedy) {
    worksite::Job job = job_with(Cause::igniter_failed, 1.0);
    job.faults.push_back({Cause::exchanger_sooted, 0.5});
    const Assessment a = assess(job, 5, worksite::Mode::assessed, in_turn({"hand in"}));
    EXPECT_FALSE(a.areas[1].scored);
    EXPECT_TRUE(a.areas[0].scored);
}

TEST(Preview, ShowsThatADeadIgniterLightsNothing) {
    const std::vector<PreviewRow> rows = preview(job_with(Cause::igniter_failed, 1.0));
    const auto flame = std::find_if(rows.begin(), rows.end(), [](const PreviewRow& row) {
        return row.condition == "at full draw" && row.title == "flame at the burner window";
    });
    ASSERT_NE(flame, rows.end());
    EXPECT_EQ(flame->sound, "steady");
    EXPECT_EQ(flame->faulty, "none");
    EXPECT_TRUE(flame->changed);
    const auto static_pressure = std::find_if(rows.begin(), rows.end(), [](const PreviewRow& row) {
        return row.condition == "as found" && row.title == "gas pressure at the heater inlet";
    });
    ASSERT_NE(static_pressure, rows.end());
    EXPECT_FALSE(static_pressure->changed);
}

}  // namespace
}  // namespace emberpath::scoring
