// Proves that the release check plays one script in every house, weighs what was read there and nothing else, lets
// a plain job pass and refuses one that nobody can find out, each with its reason.

#include "sim/trainees/release.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <memory>

#include "sim/scoring/bank.hpp"
#include "sim/trainees/house_run.hpp"
#include "tests/unit/trainees/small_house.hpp"

namespace emberpath::trainees {
namespace {

using faults::Cause;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using worksite::Quantity;

constexpr int few_houses = 4;

bool has_read(const Script& script, Quantity quantity) {
    const auto& all = script.tape.observations;
    return std::any_of(all.begin(), all.end(),
                       [&](const worksite::Observation& one) { return one.quantity == quantity; });
}

/// Shadows at arrival of the few causes that these tests think of: all of them would take a minute.
Arrived few_shadows(const worksite::Job& job) {
    constexpr std::array causes{Cause::no_fault,
                                Cause::igniter_failed,
                                Cause::igniter_lead_cracked,
                                Cause::gas_pipe_restriction,
                                Cause::valve_coil_open,
                                Cause::outlet_sensor_open};
    std::vector<scoring::Hypothesis> few;
    for (scoring::Hypothesis h : scoring::hypotheses(worksite::traits_of(job))) {
        if (h.is_pair() || std::find(causes.begin(), causes.end(), h.fault.cause) == causes.end())
            continue;
        const auto here = static_cast<int>(few.size());
        h.lower = h.lower < 0 ? -1 : here - 1;
        h.upper = h.upper < 0 ? -1 : here + 1;
        few.push_back(h);
    }
    double total = 0.0;
    for (const auto& h : few) total += h.prior;
    for (auto& h : few) h.prior /= total;
    scoring::Recorder recorder;
    const worksite::Attempt history(job, script_seed, worksite::Mode::assessed, &recorder);
    auto bank = std::make_shared<scoring::Bank>(as_seen(job), few, 2);
    bank->live_until(recorder.tape(), recorder.tape().arrival_event());
    return bank;
}

/// A house whose igniter has failed, the script read there, and the shadows that lived through it.
class OneScript : public testing::Test {
  protected:
    static void SetUpTestSuite() {
        job_ = small_house(Cause::igniter_failed);
        const Arrived arrived = few_shadows(job_);
        script_ = script_of(job_, arrived);
        scoring::Bank bank(*arrived);
        bank.live_until(script_.tape, script_.tape.events.size());
        shadows_ = bank.shadows();
    }
    static inline worksite::Job job_;
    static inline Script script_;
    static inline scoring::Shadows shadows_;
};

TEST_F(OneScript, ReadsWhatTheChecklistLeavesOutAndBreaksNoRule) {
    for (const Quantity quantity :
         {Quantity::spark, Quantity::gas_inlet_pressure, Quantity::outlet_ohms,
          Quantity::igniter_lead_ohms, Quantity::valve_coil_ohms})
        EXPECT_TRUE(has_read(script_, quantity)) << worksite::info(quantity).word;
    worksite::Attempt again(job_, script_seed, worksite::Mode::assessed);
    for (const auto& act : script_.acts) {
        EXPECT_EQ(again.tick(), act.tick) << act.sentence;
        EXPECT_NE(again.perform(act.sentence).entry, nullptr) << act.sentence;
    }
    EXPECT_THAT(again.breaches(), IsEmpty());
}

TEST_F(OneScript, ShowsTheFailedIgniterInEveryHouse) {
    for (std::uint64_t number = 1; number <= few_houses; ++number) {
        const auto seen = go_through(script_, shadows_, job_, number);
        ASSERT_TRUE(seen.has_value());
        EXPECT_TRUE(seen->leads);
        EXPECT_GT(seen->of_truth, likely_enough_for_release);
        EXPECT_EQ(seen->left_out, 0U);
        EXPECT_FALSE(seen->ended_early);
    }
}

TEST_F(OneScript, GivesTheSameHouseTheSameBeliefTwice) {
    const auto once = go_through(script_, shadows_, job_, 3);
    const auto again = go_through(script_, shadows_, job_, 3);
    const auto other = go_through(script_, shadows_, job_, 4);
    EXPECT_EQ(once->of_truth, again->of_truth);
    EXPECT_NE(once->of_truth, other->of_truth);
}

TEST_F(OneScript, IsNotPlayedWhereTheHouseholdWouldComplainOtherwise) {
    Script otherwise = script_;
    otherwise.met = worksite::Complaint::too_hot;
    EXPECT_FALSE(go_through(otherwise, shadows_, job_, 1).has_value());
}

TEST_F(OneScript, LeavesOutWhatAHouseRefuses) {
    Script longer = script_;
    longer.acts.back().sentence = "dance";
    const auto seen = go_through(longer, shadows_, job_, 1);
    const auto [first, last] =
        std::pair{script_.tape.marked.back(), script_.tape.observations.size()};
    EXPECT_EQ(seen->left_out, last - first);
    EXPECT_EQ(matched(script_.tape, script_.tape).back(),
              static_cast<std::ptrdiff_t>(script_.tape.observations.size()) - 1);
}

worksite::Observation reading(Quantity quantity, std::int64_t tick) {
    worksite::Observation one;
    one.quantity = quantity;
    one.tick = tick;
    return one;
}

TEST(Matching, FindsEachReadingOfTheSameActAtTheSameInstant) {
    scoring::Recorder script, played;
    script.mark();
    script.observed(reading(Quantity::flue_o2, 10));
    script.observed(reading(Quantity::flue_co, 10));
    script.mark();
    script.observed(reading(Quantity::tap_flow, 20));
    script.observed(reading(Quantity::tap_flow, 30));
    played.mark();
    played.observed(reading(Quantity::flue_co, 10));
    played.mark();
    played.observed(reading(Quantity::tap_flow, 20));
    played.observed(reading(Quantity::tap_flow, 31));
    EXPECT_THAT(matched(script.tape(), played.tape()), ElementsAre(-1, 0, 1, -1));
}

TEST(ReleaseCheck, LetsAPlainJobPass) {
    const auto job = small_house(Cause::igniter_failed);
    const Release release = check_release(job, {few_houses, 2, few_shadows(job)});
    EXPECT_EQ(release.houses.size(), static_cast<std::size_t>(few_houses));
    EXPECT_EQ(release.identified(), few_houses);
    EXPECT_THAT(release.refusals, IsEmpty());
    EXPECT_THAT(release.not_scored_because, IsEmpty());
    EXPECT_EQ(release.widest_step(false), nullptr);
    int runs = 0;
    for (const ClaimBin& bin : release.calibration()) runs += bin.runs;
    EXPECT_EQ(runs, few_houses);
}

TEST(ReleaseCheck, RefusesAFaultTooSmallToBeSeen) {
    auto job = small_house(Cause::gas_pipe_restriction);
    job.faults.front().severity = 0.02;
    job.site.arrival_s = 200.0;
    const Release release = check_release(job, {2, 1, few_shadows(job)});
    EXPECT_EQ(release.identified(), 0);
    ASSERT_FALSE(release.refusals.empty());
    EXPECT_THAT(release.refusals.front(), HasSubstr("in only 0 of 2 houses"));
    EXPECT_THAT(release.refusals.front(), HasSubstr("\"nothing wrong with the heater\""));
}

TEST(Claims, CondemnOnlyWhereTheyAreTooHighInEnoughHouses) {
    EXPECT_TRUE(claims_too_much({0.9, 0.97, 10, 8, 0.95}));
    EXPECT_FALSE(claims_too_much({0.9, 0.97, 10, 9, 0.95}));
    EXPECT_FALSE(claims_too_much({0.9, 0.97, 9, 0, 0.95}));   // too few
    EXPECT_FALSE(claims_too_much({0.6, 0.9, 40, 40, 0.70}));  // too low: one cause in every house
}

/// A job that passes in every point.
Release passing() {
    Release release;
    HouseSeen house;
    house.of_truth = house.of_leading = 0.98;
    house.leads = true;
    release.houses.assign(50, house);
    release.reference_minutes = 20.0;
    return release;
}

TEST(Refusals, AreNoneForAJobThatPasses) {
    EXPECT_THAT(refusals_of(passing()), IsEmpty());
}

TEST(Refusals, NameTheRivalWhereTooFewHousesShowTheCause) {
    Release release = passing();
    for (std::size_t i = 0; i < 3; ++i) {
        release.houses[i].leads = false;
        release.houses[i].of_truth = 0.2;
        release.houses[i].leading = faults::Remedy::clear_flue_terminal;
    }
    EXPECT_THAT(refusals_of(release),
                ElementsAre("after all reasonable readings the true cause leads with 80 % in only "
                            "47 of 50 houses, and 95 % of them are wanted. In 3 of them \"" +
                            scoring::class_title(faults::Remedy::clear_flue_terminal) +
                            "\" leads instead."));
    release.houses[0] = passing().houses[0];
    EXPECT_THAT(refusals_of(release), IsEmpty());  // 48 of 50
}

TEST(Refusals, NameALongReferencePathAndWhatIsNotScored) {
    Release release = passing();
    release.reference_minutes = 61.0;
    release.not_scored_because = "no shadow stands for it.";
    EXPECT_THAT(refusals_of(release),
                ElementsAre("whoever reads all this is not scored: no shadow stands for it.",
                            "the reference path takes 61 minutes, and 10 to 60 are wanted."));
}

TEST(Refusals, BesideEvidenceAreWhatAJobCarriesInWords) {
    Release release = passing();
    EXPECT_EQ(other_refusals(release), "");
    for (HouseSeen& house : release.houses) house.of_truth = 0.1;
    EXPECT_EQ(other_refusals(release), "");  // the counts say that
    release.reference_minutes = 70.0;
    EXPECT_EQ(other_refusals(release),
              "the reference path takes 70 minutes, and 10 to 60 are wanted.");
}

TEST(Remarks, NameAWideStepOnlyWhereTheJobLiesAndRefuseNothing) {
    Release release = passing();
    scoring::Gap gap;
    gap.lower.severity = 0.5;
    gap.upper.severity = 0.6;
    gap.quantity = Quantity::tap_temperature;
    gap.widths = 2.4;
    release.steps = {{gap, false}};
    EXPECT_THAT(remarks_of(release, {}), IsEmpty());
    release.steps = {{gap, true}};
    EXPECT_THAT(refusals_of(release), IsEmpty());
    EXPECT_THAT(remarks_of(release, {}),
                ElementsAre(HasSubstr(
                    "2.4 widths apart (water temperature at the tap, severity 0.50 to 0.60)")));
    EXPECT_EQ(release.widest_step(false)->widths, 2.4);
}

TEST(Arrival, IsDirectWhereTheRightRemedyHasItsNeedAlready) {
    OnArrival seen;
    seen.probability = 0.85;
    seen.need = 0.8;
    EXPECT_FALSE(seen.is_direct());
    seen.leads_to_truth = true;
    EXPECT_FALSE(seen.is_direct()) << "one of two faults";
    seen.tells_all = true;
    EXPECT_TRUE(seen.is_direct());
    seen.need = 0.9;
    EXPECT_FALSE(seen.is_direct());
}

}  // namespace
}  // namespace emberpath::trainees
