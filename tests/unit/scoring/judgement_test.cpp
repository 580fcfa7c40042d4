// Proves how a path of acts becomes areas, reasons and a proposal, on small made-up attempts.

#include "sim/scoring/judgement.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sim/scoring/comparison.hpp"
#include "tests/unit/scoring/made_up.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using faults::Remedy;
using Kind = worksite::LogEntry::Kind;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;
using worksite::Quantity;

TEST(Judgement, AWellFoundedCureScoresHighInEveryArea) {
    MadeUp m = good_igniter_job();
    const Assessment a = m.assessed(Remedy::replace_igniter);
    ASSERT_EQ(a.areas.size(), 5U);
    EXPECT_TRUE(a.fixed);
    EXPECT_TRUE(a.gates_met);
    EXPECT_GT(a.true_class_probability, 0.8);
    for (const Area& area : a.areas)
        EXPECT_GT(area.score, 85.0) << area.word << ": " << area.reason;
    EXPECT_GT(a.overall, 90.0);
    EXPECT_THAT(a.proposal, StartsWith("A person decides."));
}

TEST(Judgement, APartSwappedWithoutEvidenceScoresLowInEvidenceAndRemedyThoughItCures) {
    MadeUp m;
    m.act("replace igniter", Kind::remedy, 25.0).remedy = static_cast<int>(Remedy::replace_igniter);
    m.hand_in(word(Cause::igniter_failed).c_str());
    m.outcome.fault_remains = false;
    const Assessment a = m.assessed(Remedy::replace_igniter);
    EXPECT_TRUE(a.fixed);
    EXPECT_LT(a.areas[1].score, 10.0);
    EXPECT_LT(a.areas[3].score, 55.0);
    EXPECT_LT(a.overall, 40.0);
    EXPECT_THAT(a.areas[1].reason, HasSubstr("At 00:00 (replace igniter)"));
    EXPECT_THAT(a.areas[1].reason, HasSubstr("needs 80 %"));
}

TEST(Judgement, TheHeatersOwnWordAloneIsHalfAWarrantAndMeetsAnObjection) {
    MadeUp m;
    m.act("look at display", Kind::look, 0.1);
    m.reads(Quantity::display_word, 9.0, {2.0, 2.0, 9.0, 2.0});
    m.act("replace igniter", Kind::remedy, 25.0).remedy = static_cast<int>(Remedy::replace_igniter);
    m.hand_in(word(Cause::igniter_failed).c_str());
    m.outcome.fault_remains = false;
    m.outcome.verified.assign(8, "item");
    const Assessment guessed = m.assessed(Remedy::replace_igniter);
    EXPECT_GT(guessed.true_class_probability, 0.8);
    EXPECT_LT(guessed.areas[1].score, 51.0);
    EXPECT_THAT(guessed.areas[1].reason, HasSubstr("no reading before it was settled could tell"));
    EXPECT_THAT(guessed.proposal, HasSubstr("not yet, because no measurement or inspection"));
    EXPECT_FALSE(guessed.unopposed);
    const Assessment looked = good_igniter_job().assessed(Remedy::replace_igniter);
    EXPECT_THAT(looked.proposal, HasSubstr("nothing stands against it"));
    EXPECT_TRUE(looked.unopposed);
    EXPECT_GT(looked.overall, guessed.overall + 10.0);
}

TEST(Judgement, ATokenReadingThatCouldTellNothingConfirmsNothing) {
    const auto proposal_after = [](std::vector<double> predicted) {
        MadeUp m;
        m.act("look at display", Kind::look, 0.1);
        m.reads(Quantity::display_word, 9.0, {2.0, 2.0, 9.0, 2.0});
        m.act("measure inlet temperature", Kind::test, 0.5);
        m.reads(Quantity::inlet_pipe_temperature, predicted[2], predicted);
        m.act("replace igniter", Kind::remedy, 25.0).remedy =
            static_cast<int>(Remedy::replace_igniter);
        m.hand_in(word(Cause::igniter_failed).c_str());
        m.outcome.fault_remains = false;
        m.outcome.verified.assign(8, "item");
        return m.assessed(Remedy::replace_igniter).proposal;
    };
    EXPECT_THAT(proposal_after({287.0, 287.0, 287.0, 287.0}),
                HasSubstr("no measurement or inspection"));
    EXPECT_THAT(proposal_after({320.0, 310.0, 287.0, 315.0}), HasSubstr("nothing stands against"));
}

TEST(Judgement, ObjectsToWorkThatWasNotProved) {
    MadeUp m = good_igniter_job();
    m.outcome.verified.assign(6, "item");
    m.outcome.unproved = {"hot water measured at the set temperature", "display clear"};
    EXPECT_THAT(m.assessed(Remedy::replace_igniter).proposal, HasSubstr("not proved"));
    m.outcome.verified.assign(7, "item");
    EXPECT_THAT(m.assessed(Remedy::replace_igniter).proposal, HasSubstr("nothing stands against"));
}

TEST(Judgement, HandingOnIsRightOnlyWhereNoReadingCouldStillTell) {
    MadeUp m = good_igniter_job();
    m.log.pop_back();  // the remedy
    m.marks.pop_back();
    m.outcome.fault_remains = true;
    m.outcome.made_safe = true;
    m.outcome.open = {Remedy::replace_igniter, Remedy::clean_exchanger};
    m.outcome.separable = false;
    const Assessment right = m.assessed(Remedy::replace_igniter);
    EXPECT_GT(right.areas[3].score, 95.0);
    EXPECT_THAT(right.proposal, HasSubstr("nothing stands against"));
    m.outcome.separable = true;
    const Assessment early = m.assessed(Remedy::replace_igniter);
    EXPECT_LE(early.areas[3].score, 60.0);
    EXPECT_THAT(early.proposal, HasSubstr("could still have told"));
}

TEST(Judgement, WhatIsReadAfterExplainingDoesNotWarrantTheExplanation) {
    MadeUp m;
    m.act("explain to customer", Kind::remedy, 5.0).remedy =
        static_cast<int>(Remedy::explain_to_customer);
    m.act("measure temperature", Kind::test, 1.0);
    m.reads(Quantity::tap_temperature, 323.0, {323.0, 310.0, 285.0, 285.0});
    m.hand_in(word(Cause::no_fault).c_str());
    m.outcome.fault_remains = false;
    m.outcome.verified.assign(8, "item");
    const Assessment a = m.assessed(Remedy::explain_to_customer);
    EXPECT_LT(a.areas[1].score, 30.0);
    EXPECT_THAT(a.proposal, HasSubstr("not yet"));
}

TEST(Judgement, AWrongPartFirstCostsAndItsReasonNamesTheBetterRemedy) {
    MadeUp m;
    look_for_spark(m, 0.0);
    m.act("clean exchanger", Kind::remedy, 90.0).remedy = static_cast<int>(Remedy::clean_exchanger);
    m.act("replace igniter", Kind::remedy, 25.0).remedy = static_cast<int>(Remedy::replace_igniter);
    m.hand_in(word(Cause::igniter_failed).c_str());
    m.outcome.fault_remains = false;
    m.outcome.verified.assign(8, "item");
    MadeUp straight = good_igniter_job();
    const Assessment a = m.assessed(Remedy::replace_igniter);
    const Assessment b = straight.assessed(Remedy::replace_igniter);
    EXPECT_LT(a.areas[1].score, b.areas[1].score);
    EXPECT_LT(a.areas[2].score, b.areas[2].score);
    EXPECT_LT(a.areas[3].score, b.areas[3].score);
    EXPECT_THAT(a.areas[3].reason, HasSubstr("clean exchanger"));
    EXPECT_THAT(
        a.areas[3].reason,
        HasSubstr(std::string(faults::remedy_title(Remedy::replace_igniter)) + " came first"));
}

TEST(Judgement, WhatWorksAfterTheCureDoesNotWarrantIt) {
    MadeUp m;
    m.act("replace igniter", Kind::remedy, 25.0).remedy = static_cast<int>(Remedy::replace_igniter);
    m.act("read inlet pressure", Kind::test, 1.0);
    // Afterwards the cured shadow alone behaves as the heater does.
    m.reads(Quantity::tap_temperature, 323.15, {290.0, 290.0, 323.15, 290.0});
    m.hand_in(word(Cause::igniter_failed).c_str());
    m.outcome.fault_remains = false;
    const Ledger ledger = m.ledger(Remedy::replace_igniter);
    EXPECT_GT(ledger.end[static_cast<std::size_t>(Remedy::replace_igniter)], 0.9);
    EXPECT_LT(ledger.at_cure.classes()[static_cast<std::size_t>(Remedy::replace_igniter)], 0.3);
    EXPECT_LT(m.assessed(Remedy::replace_igniter).areas[1].score, 10.0);
}

TEST(Judgement, ACriticalBreachClosesTheGateWhateverElseWasDone) {
    MadeUp m = good_igniter_job();
    m.outcome.breaches = {
        {"live_work", "The supply was still on: 230 V at the terminals.", true, 0.3, 1}};
    const Assessment a = m.assessed(Remedy::replace_igniter);
    EXPECT_FALSE(a.gates_met);
    EXPECT_NEAR(a.areas[0].score, 100.0 * 0.7 * 0.45, 1e-9);
    EXPECT_LE(a.overall, a.areas[0].score + 20.0);
    EXPECT_THAT(a.areas[0].reason, HasSubstr("(replace igniter)"));
    EXPECT_THAT(a.proposal, HasSubstr("not yet"));
    EXPECT_THAT(a.proposal, HasSubstr("230 V"));
}

TEST(Judgement, OfSeveralBrokenGatesTheProposalNamesTheGravest) {
    MadeUp m = good_igniter_job();
    worksite::Breach lighter, graver;
    lighter.critical = graver.critical = true;
    lighter.deduction = 0.2;
    lighter.text = "The lighter one.";
    graver.deduction = 0.6;
    graver.text = "The graver one.";
    m.outcome.breaches = {lighter, graver};
    EXPECT_THAT(m.assessed(Remedy::replace_igniter).proposal,
                HasSubstr("a safety gate was broken: The graver one."));
}

TEST(Judgement, TheBreachThatEndedTheJobIsNamedBeforeAGraverOne) {
    MadeUp m = good_igniter_job();
    worksite::Breach graver, ended_it;
    graver.critical = ended_it.critical = true;
    graver.deduction = 0.6;
    graver.text = "The graver one.";
    ended_it.deduction = 0.2;
    ended_it.act = m.log.size() - 1;
    ended_it.text = "You are taken away.";
    m.outcome.breaches = {graver, ended_it};
    m.outcome.write_up.handed_in = false;
    const Assessment a = m.assessed(Remedy::replace_igniter);
    EXPECT_THAT(a.proposal, HasSubstr("a safety gate was broken: You are taken away."));
    EXPECT_THAT(a.areas[0].reason, HasSubstr("You are taken away."));
}

TEST(Judgement, NeverUsesTheWordsOfTheVerdict) {
    MadeUp good = good_igniter_job();
    MadeUp empty;
    for (MadeUp* m : {&good, &empty})
        EXPECT_THAT(m->assessed(Remedy::replace_igniter).proposal, Not(HasSubstr("competent")));
}

TEST(Judgement, AnAttemptNotHandedInIsSuggestedAsNotYet) {
    MadeUp m;
    look_for_spark(m, 0.0);
    const Assessment a = m.assessed(Remedy::replace_igniter);
    EXPECT_FALSE(a.fixed);
    EXPECT_THAT(a.proposal, HasSubstr("nothing was handed in"));
}

TEST(Judgement, SaysWhyAnAreaIsNotScored) {
    MadeUp m = good_igniter_job();
    m.outcome.not_scored_because = "this job has more than one fault.";
    const Assessment a = m.assessed(Remedy::replace_igniter);
    for (const std::size_t i : {1U, 2U, 3U}) {
        EXPECT_FALSE(a.areas[i].scored);
        EXPECT_EQ(a.areas[i].not_scored_because, "this job has more than one fault.");
    }
    EXPECT_TRUE(a.areas[0].scored);
    EXPECT_TRUE(a.areas[4].scored);
}

TEST(Judgement, AFaultThatIsLeftIsHeldAgainstAPathEvenWhereNoShadowCanWeighIt) {
    MadeUp m = good_igniter_job();
    m.outcome.not_scored_because = "this job has more than one fault.";
    EXPECT_THAT(m.assessed(Remedy::replace_igniter).proposal, HasSubstr("No suggestion"));
    m.outcome.fault_remains = true;
    EXPECT_THAT(m.assessed(Remedy::replace_igniter).proposal,
                HasSubstr("not yet, because the fault was not set right."));
    m.outcome.beyond_model = true;
    EXPECT_THAT(m.assessed(Remedy::replace_igniter).proposal, HasSubstr("No suggestion"));
}

TEST(Judgement, ExplainingToTheCustomerIsTheRemedyWhereNothingIsWrong) {
    MadeUp m;
    m.act("read tap temperature", Kind::test, 1.0);
    m.reads(Quantity::tap_temperature, 323.15, {323.15, 300.0, 290.0, 310.0});
    m.act("read flue gas", Kind::test, 1.0);
    m.reads(Quantity::flue_co2, 0.075, {0.075, 0.09, 0.0, 0.11});
    m.hand_in(word(Cause::no_fault).c_str());
    m.outcome.fault_remains = false;
    const Assessment a = m.assessed(Remedy::explain_to_customer);
    EXPECT_TRUE(a.fixed);
    EXPECT_GT(a.areas[3].score, 90.0);
}

TEST(Comparison, ShowsEachReadingUnderEveryClassAndWhatItAloneRulesOut) {
    MadeUp m;
    look_for_spark(m, 0.0);
    const Ledger ledger = m.ledger(Remedy::replace_igniter);
    const std::vector<Comparison> rows = compare(m.tape, m.shadows, ledger.at_cure);
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].shown, "no spark");
    ASSERT_EQ(rows[0].cells.size(), lanes);
    for (const Comparison::Cell& cell : rows[0].cells) {
        const bool igniter = cell.of == Remedy::replace_igniter;
        EXPECT_EQ(cell.predicted, igniter ? "no spark" : "spark");
        EXPECT_EQ(cell.ruled_out, !igniter);
    }
}

TEST(ReferencePolicy, TakesTheOneReadingThatTells) {
    MadeUp m;
    std::vector<Snapshot> truth(modes(m.job).size(), Snapshot(1));
    const ReferenceRun run = run_reference({m.job, m.shadows, truth});  // spark 0 in every mode
    ASSERT_EQ(run.readings, 1);
    EXPECT_EQ(run.options[0].quantity, Quantity::spark);
    EXPECT_GT(run.leading, 0.8);
    EXPECT_GT(run.minutes, 0.0);
}

TEST(ReferencePolicy, AsksForAResistanceAtRestAndNeverWhileTheBurnerRuns) {
    const auto best_where_ohms_differ_in = [](std::size_t mode) {
        MadeUp m;
        m.shadows.signatures[3] = Snapshot(lanes);
        for (std::size_t i = 0; i < lanes; ++i)
            m.shadows.signatures[mode].set(Quantity::outlet_ohms, i,
                                           1000.0 * static_cast<double>(i + 1));
        const Ledger start = m.ledger(Remedy::replace_igniter);
        return best_option({m.job, m.shadows, start.at_cure, SetUps()});
    };
    EXPECT_EQ(best_where_ohms_differ_in(0).quantity, Quantity::outlet_ohms);
    EXPECT_EQ(best_where_ohms_differ_in(2).bits, 0.0) << "full draw";
}

TEST(Words, AClassIsNamedByItsOnlyCauseOrByWhatItsCausesHaveInCommon) {
    EXPECT_EQ(class_title(Remedy::replace_igniter), "igniter failed");
    EXPECT_EQ(class_title(Remedy::replace_outlet_sensor), "outlet sensor");
}

TEST(Words, ClockAndPerCent) {
    EXPECT_EQ(clock_text(2500), "04:10");
    EXPECT_EQ(percent(0.004), "under 1 %");
    EXPECT_EQ(percent(0.754), "75 %");
    EXPECT_EQ(percent(0.999), "over 99 %");
}

}  // namespace
}  // namespace emberpath::scoring
