// Proves that the points of every area are attributed whole: each lost point is an act's or something missing's.

#include "sim/scoring/attribution.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <numeric>

#include "tests/unit/scoring/made_up.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using faults::Remedy;
using Kind = worksite::LogEntry::Kind;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using worksite::Quantity;

constexpr std::size_t safety = 0, evidence = 1, path = 2, remedy = 3, proof = 4;

double points_in(const Area& area) {
    double sum = 0.0;
    for (const Lost& lost : area.lost) sum += lost.points;
    return sum;
}

void expect_whole(const Assessment& a) {
    for (const Area& area : a.areas) {
        EXPECT_NEAR(points_in(area), area.scored ? 100.0 - area.score : 0.0, 1.0e-9) << area.word;
        for (const Lost& lost : area.lost) {
            EXPECT_GT(lost.points, 0.0) << area.word;
            EXPECT_NE(lost.reason, "") << area.word;
            EXPECT_TRUE(lost.act != Lost::no_act || !lost.item.empty()) << area.word;
        }
    }
}

// One replacement without evidence, one wait for nothing, two breaches, half of the proof.
MadeUp poor_job() {
    MadeUp m;
    m.act("wait 6 min", Kind::wait, 6.0);
    m.act("replace igniter", Kind::remedy, 25.0).remedy = static_cast<int>(Remedy::replace_igniter);
    m.act("measure pipe", Kind::test, 0.5);
    m.reads(Quantity::inlet_pipe_temperature, 287.0, {287.0, 287.0, 287.0, 287.0});
    m.act("hand in", Kind::write, 0.2);
    m.hand_in(word(Cause::igniter_failed).c_str());
    m.outcome.verified.assign(5, "item");
    m.outcome.unproved = {"display clear", "customer told", "record written"};
    m.outcome.breaches = {{"live_work", "The cover came off live.", true, 0.3, 1},
                          {"untold", "The customer was not told.", false, 0.1, 99}};
    return m;
}

TEST(PointsOf, AreSharedByWhatEachChargeAloneTakesAndSumToWhatIsMissing) {
    EXPECT_THAT(points_of(40.0, std::array{70.0, 50.0, 40.0}), ElementsAre(45.0, 15.0, 0.0));
}

TEST(PointsOf, AreSharedAlikeWhereNoChargeAloneWouldHelp) {
    EXPECT_THAT(points_of(0.0, std::array{0.0, 0.0}), ElementsAre(50.0, 50.0));
    EXPECT_THAT(points_of(100.0, {}), IsEmpty());
}

TEST(LostPoints, OfEveryAreaSumToWhatIsMissingFromAHundred) {
    MadeUp good = good_igniter_job(), poor = poor_job();
    expect_whole(good.assessed(Remedy::replace_igniter));
    const Assessment a = poor.assessed(Remedy::clean_exchanger);
    expect_whole(a);
    for (const Area& area : a.areas) EXPECT_LT(area.score, 100.0) << area.word;
}

TEST(LostPoints, AreTiedToTheActsThatLostThem) {
    MadeUp m = poor_job();
    const Assessment a = m.assessed(Remedy::clean_exchanger);
    const auto& unsafe = a.areas[safety].lost;
    ASSERT_EQ(unsafe.size(), 2U);
    EXPECT_EQ(unsafe[0].act, 1U);  // live work, the dearer of the two
    EXPECT_EQ(unsafe[1].act, 3U);  // left undone: the hand-in carries it
    EXPECT_EQ(unsafe[1].reason, "The customer was not told.");
    EXPECT_EQ(a.areas[evidence].lost.size(), 2U);  // the remedy and the diagnosis
    bool waited = false, swapped = false;
    for (const Lost& lost : a.areas[path].lost) {
        waited = waited || (lost.act == 0 && lost.reason ==
                                                 "6 minutes of waiting; no reading after it "
                                                 "told enough to pay for it.");
        swapped = swapped || lost.act == 1;
    }
    EXPECT_TRUE(waited);
    EXPECT_TRUE(swapped);
    EXPECT_EQ(a.areas[proof].lost.size(), 4U);  // three items, and the fault remains
    EXPECT_EQ(a.areas[proof].lost.front().item.empty(), false);
}

TEST(LostPoints, NameWhatIsMissingWhereNothingWasHandedIn) {
    MadeUp m;
    look_for_spark(m, 0.0);
    m.outcome.unproved.assign(8, "item");
    const Assessment a = m.assessed(Remedy::replace_igniter);
    expect_whole(a);
    ASSERT_FALSE(a.areas[evidence].lost.empty());
    EXPECT_EQ(a.areas[evidence].lost.front().act, Lost::no_act);
    EXPECT_THAT(a.areas[evidence].lost.front().item, HasSubstr("a cause"));
    bool fault_left = false;
    for (const Lost& lost : a.areas[remedy].lost)
        fault_left = fault_left || lost.item == "replace the igniter";
    EXPECT_TRUE(fault_left);
}

// It cured, so that what it cost is what there was to lose.
TEST(LostPoints, OfARemedyAreMoreTheDearerItWas) {
    const auto lost_with = [](double part_minutes) {
        MadeUp m = poor_job();
        m.log[1].part_minutes = part_minutes;
        m.outcome.fault_remains = false;
        const Assessment a = m.assessed(Remedy::replace_igniter);
        expect_whole(a);
        for (const Lost& lost : a.areas[remedy].lost)
            if (lost.act == 1) return lost.points / (100.0 - a.areas[remedy].score);
        return 0.0;
    };
    EXPECT_GT(lost_with(120.0), lost_with(60.0));
    EXPECT_GT(lost_with(60.0), 0.0);
}

TEST(LostPoints, AreNoneWhereAnAreaIsNotScored) {
    MadeUp m = poor_job();
    m.outcome.not_scored_because = "this job has faults together that no shadow stands for.";
    const Assessment a = m.assessed(Remedy::clean_exchanger);
    EXPECT_THAT(a.areas[evidence].lost, IsEmpty());
    EXPECT_FALSE(a.areas[safety].lost.empty());
    expect_whole(a);
}

TEST(StatedConfidence, StandsBesideTheComputedOneAndMovesNoScore) {
    MadeUp silent = good_igniter_job(), sure = good_igniter_job();
    sure.outcome.write_up.confidence = 0.4;
    const Assessment a = silent.assessed(Remedy::replace_igniter);
    const Assessment b = sure.assessed(Remedy::replace_igniter);
    EXPECT_FALSE(a.stated_confidence.has_value());
    EXPECT_EQ(b.stated_confidence, 0.4);
    EXPECT_EQ(a.overall, b.overall);
    EXPECT_EQ(a.diagnosis_probability, b.diagnosis_probability);
    EXPECT_NEAR(b.diagnosis_probability, b.true_remedy_probability, 1.0e-12);
}

}  // namespace
}  // namespace emberpath::scoring
