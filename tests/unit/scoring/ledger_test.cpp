// Proves what each act of a path is charged for, on small made-up attempts.

#include "sim/scoring/ledger.hpp"

#include <gtest/gtest.h>

#include "tests/unit/scoring/made_up.hpp"

namespace emberpath::scoring {
namespace {

using faults::Remedy;
using Kind = worksite::LogEntry::Kind;
using worksite::Quantity;

TEST(Ledger, ChargesACombustionTestBeforeTheCureLikeAnyReading) {
    MadeUp m;
    m.act("combustion test", Kind::proof, 3.0);
    m.reads(Quantity::flue_co2, 0.08, {0.08, 0.08, 0.08, 0.08});
    m.act("replace igniter", Kind::remedy, 25.0).remedy = static_cast<int>(Remedy::replace_igniter);
    m.act("combustion test", Kind::proof, 3.0);
    m.reads(Quantity::flue_co2, 0.08, {0.08, 0.08, 0.08, 0.08});
    const Ledger ledger = m.ledger(Remedy::replace_igniter);
    EXPECT_GT(ledger.steps[0].charge, 0.0);
    EXPECT_EQ(ledger.steps[2].charge, 0.0);
}

void prove_warm_and_clean(MadeUp& m) {
    m.act("wait 1 min", Kind::wait, 1.0);
    m.act("combustion test", Kind::proof, 3.0);
    m.reads(Quantity::flue_co2, 0.08, {0.08, 0.08, 0.08, 0.08});
    m.act("measure temperature at tap", Kind::test, 0.5);
    m.reads(Quantity::tap_temperature, 323.15, {323.15, 323.15, 323.15, 323.15});
}

void explain(MadeUp& m) {
    m.act("explain", Kind::talk, 1.0).remedy = static_cast<int>(Remedy::explain_to_customer);
}

TEST(Ledger, ProofIsFreeBeforeTheWordsThatEndAJobAsItIsAfterThem) {
    MadeUp before, after;
    for (MadeUp* one : {&before, &after}) {
        one->act("listen to the fan", Kind::test, 1.0);
        one->reads(Quantity::fan_sound, 1.0, {1.0, 1.0, 1.0, 1.0});
    }
    prove_warm_and_clean(before);
    explain(before);
    explain(after);
    prove_warm_and_clean(after);
    const Ledger first = before.ledger(Remedy::explain_to_customer);
    const Ledger last = after.ledger(Remedy::explain_to_customer);
    EXPECT_GT(first.test_charge, 0.0) << "listening";
    EXPECT_EQ(first.test_charge, last.test_charge);
    EXPECT_EQ(first.idle_charge, last.idle_charge);
}

TEST(Ledger, AWaitThatNoProofFollowsIsChargedBeforeTheWordsAsWell) {
    MadeUp m;
    m.act("wait 20 min", Kind::wait, 20.0);
    explain(m);
    EXPECT_DOUBLE_EQ(m.ledger(Remedy::explain_to_customer).idle_charge, 20.0);
}

TEST(Ledger, ProofThatIsFollowedByFindingOutIsChargedThoughOnlyWordsAreLeft) {
    MadeUp m;
    prove_warm_and_clean(m);
    look_for_spark(m, 1.0);
    explain(m);
    const Ledger ledger = m.ledger(Remedy::explain_to_customer);
    EXPECT_GT(ledger.steps[1].charge, 0.0);
    EXPECT_GT(ledger.steps[2].charge, 0.0);
}

TEST(Ledger, PaysForEachFigureOfTheReadoutAndOnceForWhatAnInstrumentShowsTogether) {
    MadeUp m;
    m.act("read readout all", Kind::test, 0.1);
    for (const Quantity quantity :
         {Quantity::readout_fan, Quantity::readout_flow, Quantity::readout_flame})
        m.reads(quantity, 1.0, {1.0, 1.0, 1.0, 1.0});
    m.act("read analyser", Kind::test, 0.1);
    for (const Quantity quantity : {Quantity::flue_o2, Quantity::flue_co2})
        m.reads(quantity, 0.08, {0.08, 0.08, 0.08, 0.08});
    const Ledger ledger = m.ledger(Remedy::replace_igniter);
    const auto& readout = worksite::info(Quantity::readout_fan);
    const auto& analyser = worksite::info(Quantity::flue_o2);
    EXPECT_DOUBLE_EQ(ledger.steps[0].book_minutes, readout.set_up_minutes + 3.0 * readout.minutes);
    EXPECT_DOUBLE_EQ(ledger.steps[1].book_minutes, analyser.set_up_minutes + analyser.minutes);
}

TEST(Ledger, ReReadingCostsMinutesAndTellsNothing) {
    MadeUp m;
    for (int i = 0; i < 5; ++i) {
        m.act("read tap temperature", Kind::test, 0.5);
        m.reads(Quantity::tap_temperature, 315.0, {323.15, 318.0, 290.0, 312.0});
        m.tape.observations.back().condition.epoch = 1;
    }
    const Ledger ledger = m.ledger(Remedy::replace_igniter);
    EXPECT_GT(ledger.steps[0].expected_bits, 0.3);
    for (std::size_t i = 1; i < 5; ++i) {
        EXPECT_DOUBLE_EQ(ledger.steps[i].expected_bits, 0.0);
        EXPECT_NEAR(ledger.steps[i].charge, ledger.steps[i].book_minutes, 1e-12);
    }
}

TEST(Ledger, NamesTheBetterReadingNotTaken) {
    MadeUp m;
    m.act("listen to the fan", Kind::test, 1.0);
    m.reads(Quantity::fan_sound, 1.0, {1.0, 1.0, 1.0, 1.0});
    const Ledger ledger = m.ledger(Remedy::replace_igniter);
    EXPECT_EQ(ledger.steps[0].best.quantity, Quantity::spark);
    EXPECT_GT(ledger.steps[0].best.bits, 0.4);
    EXPECT_EQ(title_of(ledger.steps[0].best, m.job),
              "spark at the igniter just after a tap is opened");
    EXPECT_EQ(title_of({Quantity::tap_temperature, 3, 0.0, 0.0}, m.job),
              "water temperature at the tap just after it is opened");
    EXPECT_EQ(title_of({Quantity::readout_firing_rate, 3, 0.0, 0.0}, m.job),
              "firing rate asked for on the service readout just after a tap is opened");
    EXPECT_DOUBLE_EQ(ledger.steps[0].charge, ledger.steps[0].book_minutes);
}

TEST(Ledger, ReadingsAfterTheCureAreProofAndCostNothing) {
    MadeUp m = good_igniter_job();
    m.act("read tap temperature", Kind::test, 5.0);
    m.reads(Quantity::tap_temperature, 323.15, {323.15, 323.15, 323.15, 323.15});
    m.act("wait", Kind::wait, 20.0);
    const Ledger ledger = m.ledger(Remedy::replace_igniter);
    EXPECT_DOUBLE_EQ(ledger.steps.back().charge, 0.0);
    EXPECT_DOUBLE_EQ(ledger.idle_charge, 0.0);
}

TEST(Ledger, TheRoomsAirIsMeasuredOnceForSafetyAndThenAsATest) {
    MadeUp m;
    for (int time = 0; time < 2; ++time) {
        m.act("read room air", Kind::test, 1.5);
        m.reads(Quantity::room_co, 1e-6, {1e-6, 1e-6, 1e-6, 1e-6});
        m.log.back().observations.push_back(m.tape.observations.back());
    }
    const Ledger ledger = m.ledger(Remedy::replace_igniter);
    EXPECT_DOUBLE_EQ(ledger.steps[0].charge, 0.0);
    EXPECT_GT(ledger.steps[0].book_minutes, 0.0);
    EXPECT_NEAR(ledger.steps[1].charge, ledger.steps[1].book_minutes, 1e-12);
}

TEST(Ledger, AWaitIsFreeWhenTheReadingAfterItIsWorthItAndChargedOtherwise) {
    MadeUp idle;
    idle.act("wait", Kind::wait, 20.0);
    EXPECT_DOUBLE_EQ(idle.ledger(Remedy::replace_igniter).idle_charge, 20.0);
    MadeUp used;
    used.act("wait", Kind::wait, 1.0);
    look_for_spark(used, 0.0);
    EXPECT_LT(used.ledger(Remedy::replace_igniter).idle_charge, 1.0);
}

TEST(Ledger, ASafetyActPaysForTenMinutesOfWaitingAndNoMore) {
    const auto idle_before_power_off = [](double minutes) {
        MadeUp m;
        m.act("wait", Kind::wait, minutes);
        m.act("switch power off", Kind::safety, 0.1);
        return m.ledger(Remedy::replace_igniter).idle_charge;
    };
    EXPECT_DOUBLE_EQ(idle_before_power_off(10.0), 0.0);
    EXPECT_DOUBLE_EQ(idle_before_power_off(30.0), 20.0);
}

TEST(Ledger, NoSparkWithoutHavingWatchedIsNoEvidence) {
    worksite::Observation o;
    o.quantity = Quantity::spark;
    EXPECT_FALSE(is_evidence(o));
    o.watched_s = 8.0;
    EXPECT_TRUE(is_evidence(o));
    o.watched_s = 0.0;
    o.value = 1.0;
    EXPECT_TRUE(is_evidence(o));
}

}  // namespace
}  // namespace emberpath::scoring
