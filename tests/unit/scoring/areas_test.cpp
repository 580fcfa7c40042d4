// Proves warrant, the area formulas and the overall score on worked figures.

#include "sim/scoring/areas.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "sim/scoring/warrant.hpp"

namespace emberpath::scoring {
namespace {

TEST(Warrant, FollowsTheWorkedFigures) {
    EXPECT_NEAR(warrant(0.75, 0.10, 0.80), 0.9817, 5e-5);
    EXPECT_NEAR(warrant(0.34, 0.10, 0.90), 0.2805, 5e-5);
    EXPECT_NEAR(warrant(0.55, 0.40, 0.60), 0.9614, 5e-5);
}

TEST(Warrant, IsFullAtTheNeedAndNothingAtTheArrivalLevel) {
    EXPECT_DOUBLE_EQ(warrant(0.80, 0.10, 0.80), 1.0);
    EXPECT_DOUBLE_EQ(warrant(0.10, 0.10, 0.80), 0.0);
    EXPECT_DOUBLE_EQ(warrant(1.0, 0.10, 0.80), 1.0);
    EXPECT_DOUBLE_EQ(warrant(0.0, 0.10, 0.80), 0.0);
}

TEST(Warrant, RisesWithProbability) {
    double before = -1.0;
    for (double p = 0.10; p < 0.90; p += 0.01) {
        EXPECT_GE(warrant(p, 0.10, 0.90), before);
        before = warrant(p, 0.10, 0.90);
    }
}

TEST(Need, IsHigherForDearerRemedies) {
    EXPECT_DOUBLE_EQ(need(faults::Remedy::clear_flue_terminal), 0.60);
    EXPECT_DOUBLE_EQ(need(faults::Remedy::replace_igniter), 0.80);
    EXPECT_DOUBLE_EQ(need(faults::Remedy::clean_exchanger), 0.90);
}

TEST(Overall, FollowsTheWorkedFigures) {
    EXPECT_NEAR(overall_score({100, 95, 80, 95, 90}), 92.40, 0.005);
    EXPECT_NEAR(geometric_mean({45, 98, 96, 98, 45}), 73.21, 0.005);
    EXPECT_NEAR(overall_score({45, 98, 96, 98, 45}), 64.52, 0.005);
    EXPECT_NEAR(overall_score({100, 0, 30, 31, 95}), 23.77, 0.005);
    EXPECT_NEAR(overall_score({100, 98, 15, 98, 92}), 69.55, 0.005);
}

TEST(Overall, NeverExceedsTheSafetyScoreByMoreThanTwenty) {
    for (double safety = 0.0; safety <= 100.0; safety += 5.0)
        EXPECT_LE(overall_score({safety, 100, 100, 100, 100}), safety + 20.0);
}

TEST(Evidence, IsFullWhenEveryCommitmentWasWarranted) {
    const Commitment sure{0.97, 0.1, 0.8, 20.0, 30.0, true};
    EXPECT_DOUBLE_EQ(evidence_score({{sure}}, sure), 100.0);
}

TEST(Evidence, OfAnUnfoundedRemedyIsLowAndTheDearerOneWeighsMore) {
    const Commitment diagnosis{0.95, 0.1, 0.9};
    const Commitment cheap{0.05, 0.1, 0.6, 5.0, 0.0, false};
    const Commitment dear{0.05, 0.1, 0.9, 90.0, 100.0, false};
    EXPECT_LT(evidence_score({{dear}}, diagnosis), evidence_score({{cheap}}, diagnosis));
    EXPECT_LT(evidence_score({{cheap}}, diagnosis), 100.0);
    EXPECT_NEAR(evidence_score({{dear}}, diagnosis), 100.0 * 8.0 / (8.0 + std::sqrt(190.0)), 1e-9);
}

TEST(Path, ATestWorthItsTimeCostsNothing) {
    EXPECT_DOUBLE_EQ(test_charge_minutes(3.0, 0.5, 0.25), 0.0);  // worth 2 x 0.5 / 0.25 = 4 minutes
    EXPECT_DOUBLE_EQ(test_charge_minutes(5.0, 0.5, 0.25), 1.0);
    EXPECT_DOUBLE_EQ(test_charge_minutes(5.0, 0.0, 0.25), 5.0);
    EXPECT_DOUBLE_EQ(test_charge_minutes(5.0, 0.0, 0.0), 5.0);
}

TEST(Path, AFifthOfTheReferenceIsFree) {
    EXPECT_DOUBLE_EQ(path_score(4.0, 20.0), 100.0);
    EXPECT_NEAR(path_score(24.0, 20.0), 100.0 * 20.0 / 32.0, 1e-12);
    EXPECT_DOUBLE_EQ(path_score(2.0, 1.0), 100.0);  // the reference is at least ten minutes
}

TEST(Path, ConfirmationTapersInsteadOfStepping) {
    EXPECT_DOUBLE_EQ(confirmation_factor(0.90), 1.0);
    EXPECT_DOUBLE_EQ(confirmation_factor(0.99), 0.5);
    double before = 1.0;
    for (double p = 0.90; p <= 0.99; p += 0.001) {
        EXPECT_LE(std::abs(confirmation_factor(p) - before), 0.01);
        before = confirmation_factor(p);
    }
}

TEST(Remedy, AWellFoundedCureIsFullAndWasteTakesFromIt) {
    EXPECT_DOUBLE_EQ(remedy_score(true, 1.0, 0.0), 100.0);
    EXPECT_DOUBLE_EQ(remedy_score(false, 0.0, 0.0), 0.0);
    EXPECT_NEAR(remedy_score(true, 1.0, 60.0), 100.0 * std::exp(-1.0), 1e-9);
}

TEST(Remedy, APartThatDidNotCureIsWasteEvenWhenItWasLikely) {
    const Commitment likely{0.80, 0.1, 0.80, 20.0, 30.0, false};
    EXPECT_NEAR(waste_minutes({{likely}}), 0.25 * 0.2 * (30.0 + 6.0), 1e-12);
    Commitment cured = likely;
    cured.cured = true;
    EXPECT_DOUBLE_EQ(waste_minutes({{cured}}), 0.0);
}

TEST(Safety, OmissionsMultiplyAndCriticalOnesMoreThanHalve) {
    EXPECT_DOUBLE_EQ(safety_score({}), 100.0);
    EXPECT_NEAR(safety_score({{{0.2, false}, {0.1, true}}}), 100.0 * 0.8 * 0.9 * 0.45, 1e-12);
}

TEST(Proof, CountsEightItemsAndKeepsSeventyPerCentWhileTheFaultRemains) {
    EXPECT_DOUBLE_EQ(proof_score(8, 0, false), 100.0);
    EXPECT_DOUBLE_EQ(proof_score(4, 0, true), 35.0);
    EXPECT_DOUBLE_EQ(proof_score(11, 0, false), 100.0);
    EXPECT_DOUBLE_EQ(proof_score(4, 3, false), 80.0);
}

}  // namespace
}  // namespace emberpath::scoring
