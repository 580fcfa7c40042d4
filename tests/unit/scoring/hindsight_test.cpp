// Proves what a debrief says afterwards: the moments that cost most, what was still open, how far scores move
// with what was chosen, and how lucky the readings were.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "sim/scoring/bands.hpp"
#include "sim/scoring/information.hpp"
#include "sim/scoring/moments.hpp"
#include "sim/worksite/outlets.hpp"
#include "tests/unit/scoring/made_up.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using faults::Remedy;
using Kind = worksite::LogEntry::Kind;
using ::testing::HasSubstr;
using ::testing::Not;
using worksite::Quantity;

// A long weighing that tells nothing, then the wrong part.
MadeUp costly_job() {
    MadeUp m;
    m.act("weigh cylinder", Kind::test, 5.0);
    m.reads(Quantity::cylinder_mass, 20.0, {20.0, 20.0, 20.0, 20.0});
    m.act("clean heat exchanger", Kind::remedy, 90.0).remedy =
        static_cast<int>(Remedy::clean_exchanger);
    m.hand_in("exchanger_sooted");
    return m;
}

std::vector<Moment> moments_of(MadeUp& m, Remedy truth) {
    const PlayedAttempt played{m.job, m.log, m.tape, m.marks, truth};
    const Ledger ledger = m.ledger(truth);
    const std::vector<Snapshot> signatures(modes(m.job).size(), Snapshot(1));
    return costliest_moments(played, ledger, find(played, ledger, m.outcome), m.outcome,
                             {m.job, m.shadows, signatures}, m.assessed(truth).areas);
}

TEST(CostliestMoments, AreTheWrongPartAndThenTheUselessReadingWithABetterOne) {
    MadeUp m = costly_job();
    const auto moments = moments_of(m, Remedy::replace_igniter);
    ASSERT_EQ(moments.size(), 2U);
    EXPECT_EQ(moments[0].act, 1U);
    EXPECT_GT(moments[0].minutes, moments[1].minutes);
    EXPECT_THAT(moments[1].text, HasSubstr("just after a tap is opened"));
    EXPECT_THAT(moments[1].text, HasSubstr("From there: "));
}

TEST(ReadingWorth, SaysInPlainWordsHowLittleItToldAndWhatWouldHaveToldMore) {
    MadeUp m;
    m.act("weigh cylinder", Kind::test, 5.0);
    m.reads(Quantity::cylinder_mass, 20.0, {20.0, 20.0, 20.0, 20.0});
    const PlayedAttempt played{m.job, m.log, m.tape, m.marks, Remedy::replace_igniter};
    const Ledger ledger = m.ledger(Remedy::replace_igniter);
    Step step = ledger.steps[0];
    step.book_minutes = 5.0;
    step.expected_bits = 0.0;
    step.best.bits = 0.7;
    step.best.minutes = 0.25;
    EXPECT_EQ(reading_worth(played, step),
              "5 minutes for a reading that could be expected to tell next to nothing of what was "
              "open (0.00 of " +
                  figure(entropy_bits(step.before), 2) +
                  " bits); spark at the igniter just after a tap is opened would have told more in "
                  "less time (0.70 bits in 15 seconds).");
    step.expected_bits = 0.9;
    EXPECT_THAT(reading_worth(played, step),
                HasSubstr("would have told less, but more for each minute"));
    step.best.bits = 1.0;
    step.best.minutes = 6.5;
    EXPECT_THAT(reading_worth(played, step),
                HasSubstr("would have told more for its time (1.00 bits in 6.5 minutes)"));
}

TEST(CostliestMoments, AreBreachesAloneWhereThePathIsNotScored) {
    MadeUp m = costly_job();
    m.outcome.not_scored_because = "of a test.";
    EXPECT_TRUE(moments_of(m, Remedy::replace_igniter).empty());
    m.outcome.breaches = {{"no_gloves", "Bare hands.", false, 0.05, 0}};
    const auto moments = moments_of(m, Remedy::replace_igniter);
    ASSERT_EQ(moments.size(), 1U);
    EXPECT_THAT(moments[0].text, HasSubstr("Bare hands."));
    EXPECT_DOUBLE_EQ(moments[0].minutes, 0.0);
}

TEST(CostliestMoments, AreNoneOnAGoodPath) {
    MadeUp m;
    look_for_spark(m, 0.0);
    m.act("read tap temperature", Kind::test, 0.5);
    m.reads(Quantity::tap_temperature, 290.0, {323.15, 318.0, 290.0, 312.0});
    m.act("replace igniter", Kind::remedy, 25.0).remedy = static_cast<int>(Remedy::replace_igniter);
    m.hand_in(word(Cause::igniter_failed).c_str());
    m.outcome.fault_remains = false;
    const auto moments = moments_of(m, Remedy::replace_igniter);
    EXPECT_TRUE(moments.empty()) << moments.front().text;
}

TEST(CostliestMoments, NameAnIdleWaitAndAHandInWithoutACauseEachWithWhatWasBest) {
    MadeUp m;
    m.act("wait", Kind::wait, 20.0);
    const auto moments = moments_of(m, Remedy::replace_igniter);
    ASSERT_EQ(moments.size(), 2U);
    EXPECT_DOUBLE_EQ(moments[0].minutes, 60.0);
    EXPECT_THAT(moments[0].text,
                HasSubstr("No cause was named and handed in: that costs evidence and remedy, and "
                          "on the path 60 minutes for a call-back."));
    EXPECT_DOUBLE_EQ(moments[1].minutes, 20.0);
    EXPECT_THAT(moments[1].text, HasSubstr("20 minutes of waiting;"));
    for (const Moment& moment : moments) EXPECT_THAT(moment.text, HasSubstr("From there: "));
}

TEST(CostliestMoments, PutABreachBeforeAUselessReadingAndNameThePrecaution) {
    MadeUp m;
    m.act("weigh cylinder", Kind::test, 5.0);
    m.reads(Quantity::cylinder_mass, 20.0, {20.0, 20.0, 20.0, 20.0});
    look_for_spark(m, 0.0);
    m.act("hand in", Kind::write, 0.1);
    m.hand_in(word(Cause::igniter_failed).c_str());
    m.outcome.breaches = {{"live_work", "A hand went inside.", true, 0.35, 1}};
    const auto moments = moments_of(m, Remedy::replace_igniter);
    ASSERT_EQ(moments.size(), 2U);
    EXPECT_GT(moments[0].toll, moments[1].toll);
    EXPECT_EQ(moments[0].act, 1U);
    EXPECT_THAT(moments[0].text, HasSubstr("A hand went inside. Instead: switch off, unplug and "
                                           "lock before a hand goes inside."));
}

TEST(CostliestMoments,
     NameTheGravestRuleOfAnActAndCountTheOthersAndShowNoPathWhereNothingWasCharged) {
    MadeUp m;
    look_for_spark(m, 0.0);
    m.outcome.breaches = {{"no_gloves", "Bare hands.", false, 0.05, 0},
                          {"gas_open", "The gas was on.", true, 0.35, 0},
                          {"no_glasses", "Bare eyes.", false, 0.05, 0}};
    m.act("hand in", Kind::write, 0.1);
    m.hand_in(word(Cause::igniter_failed).c_str());
    const auto moments = moments_of(m, Remedy::replace_igniter);
    ASSERT_FALSE(moments.empty());
    EXPECT_THAT(moments[0].text,
                HasSubstr("The gas was on. Instead: shut the gas before a test "
                          "point or joint is opened. The same act broke 2 other rules, listed "
                          "with the unsafe acts."));
    EXPECT_THAT(moments[0].text, Not(HasSubstr("Bare hands")));
    EXPECT_THAT(moments[0].text, Not(HasSubstr("From there")));
}

TEST(CostliestMoments, TellWhatWasBrokenOnLeavingWithTheHandIn) {
    MadeUp m;
    look_for_spark(m, 0.0);
    m.act("hand in", Kind::write, 0.1);
    m.hand_in(word(Cause::igniter_failed).c_str());
    const std::size_t after = m.log.size();
    m.outcome.breaches = {{"left_unsafe", "It was left unsafe.", true, 0.45, after}};
    const auto moments = moments_of(m, Remedy::replace_igniter);
    ASSERT_FALSE(moments.empty());
    EXPECT_EQ(moments[0].act, after - 1);
    EXPECT_THAT(moments[0].text, HasSubstr("It was left unsafe. Instead: repair"));
}

TEST(StillOpen, SaysWhichReadingWouldHaveToldAndWhereNoneDoes) {
    MadeUp m;
    const Ledger nothing_read = m.ledger(Remedy::replace_igniter);
    const auto open = rivals(m.job, m.shadows, nothing_read.at_cure, m.tape);
    ASSERT_EQ(open.size(), 3U);  // four alike, the first of them leads
    const auto sentences = still_open(open, likeliest(nothing_read.at_cure.classes()));
    for (std::size_t i = 0; i < open.size(); ++i) {
        const bool igniter = open[i].of == Remedy::replace_igniter;
        EXPECT_EQ(open[i].separation >= separable_above, igniter);
        EXPECT_THAT(sentences[i],
                    HasSubstr(igniter ? "You could have known" : "You could not have known"));
        EXPECT_THAT(sentences[i], HasSubstr("from \"nothing wrong with the heater\""));
    }
}

TEST(StillOpen, NamesNoReadingThatWasTaken) {
    MadeUp m;
    const Ledger nothing_read = m.ledger(Remedy::replace_igniter);
    worksite::TickInputs trying;  // all outlets more than half open
    worksite::open_all_outlets(trying.surroundings, m.job.site, 0.6);
    m.act("watch burner window", Kind::look, 0.5);
    m.reads(Quantity::spark, 1.0, {1.0, 1.0, 0.0, 1.0});
    m.tape.observations.back().condition.phase = controller::Phase::light_up;
    m.tape.ticks.push_back(trying);
    m.tape.events = {{Tape::Kind::tick, 0}, {Tape::Kind::observation, 0}};
    for (const Rival& rival : rivals(m.job, m.shadows, nothing_read.at_cure, m.tape)) {
        EXPECT_LT(rival.separation, separable_above);
        EXPECT_EQ(rival.was_asked, rival.of == Remedy::replace_igniter);
        if (!rival.was_asked) continue;
        EXPECT_THAT(still_open({rival}, Remedy::explain_to_customer).front(),
                    HasSubstr("Left open"));
    }
}

TEST(OtherBank, HasPriorsWithinAFactorOfThreeAndTheSameBitsEachTime) {
    MadeUp m;
    for (int number = 0; number < band_banks; ++number) {
        const OtherBank bank = other_bank(m.shadows, m.tape, number);
        const OtherBank again = other_bank(m.shadows, m.tape, number);
        EXPECT_GE(bank.width_factor, narrowest_width);
        EXPECT_LE(bank.width_factor, widest_width);
        double total = 0.0, least = 1.0, most = 0.0;
        for (std::size_t i = 0; i < bank.shadows.hypotheses.size(); ++i) {
            const double prior = bank.shadows.hypotheses[i].prior;
            EXPECT_EQ(prior, again.shadows.hypotheses[i].prior);
            total += prior;
            least = std::min(least, prior);
            most = std::max(most, prior);
        }
        EXPECT_NEAR(total, 1.0, 1e-12);
        EXPECT_LE(most / least, prior_factor * prior_factor + 1e-9);
        EXPECT_GT(most / least, 1.0);
    }
}

TEST(Bands, ContainTheScoreAndDoNotDependOnThreads) {
    MadeUp m = costly_job();
    const PlayedAttempt played{m.job, m.log, m.tape, m.marks, Remedy::replace_igniter};
    const std::vector<Snapshot> signatures(modes(m.job).size(), Snapshot(1));
    Assessment one = m.assessed(Remedy::replace_igniter), three = one;
    set_bands(played, m.shadows, signatures, m.outcome, 1, one);
    set_bands(played, m.shadows, signatures, m.outcome, 3, three);
    for (std::size_t a = 0; a < one.areas.size(); ++a) {
        EXPECT_LE(one.areas[a].low, one.areas[a].score);
        EXPECT_GE(one.areas[a].high, one.areas[a].score);
        EXPECT_EQ(one.areas[a].low, three.areas[a].low);
        EXPECT_EQ(one.areas[a].high, three.areas[a].high);
    }
    EXPECT_LT(one.overall_low, one.overall_high);  // the part's prior decides what it was worth
}

TEST(Luck, OfAReadingThatTellsAllIsWhatWasExpectedAndOfASurpriseIsMore) {
    MadeUp likely;
    likely.act("watch burner window", Kind::look, 0.5);
    likely.reads(Quantity::spark, 1.0, {1.0, 1.0, 0.0, 1.0});  // three of four predicted it
    const Step expected = likely.ledger(Remedy::clean_exchanger).steps[0];
    MadeUp surprise;
    surprise.act("watch burner window", Kind::look, 0.5);
    surprise.reads(Quantity::spark, 0.0, {1.0, 1.0, 0.0, 1.0});
    const Step unexpected = surprise.ledger(Remedy::replace_igniter).steps[0];
    EXPECT_GT(unexpected.told_of_truth_bits, expected.told_of_truth_bits);
    EXPECT_GT(unexpected.told_of_truth_bits, unexpected.expected_bits);
    EXPECT_GT(unexpected.expected_variance, 0.0);
    // One in four is a surprise, three in four are none: on average nothing is left.
    const double mean = 0.25 * unexpected.told_of_truth_bits + 0.75 * expected.told_of_truth_bits;
    EXPECT_NEAR(mean, expected.expected_bits, 0.15);
}

TEST(Information, HasTheMeanOfItsBitsAndNoSpreadWhenEveryOutcomeTellsAlike) {
    const std::vector<double> p{0.5, 0.5};
    const std::vector<std::size_t> own{0, 1};
    const OutcomeTable telling{2, {1.0, 0.0, 0.0, 1.0}};
    EXPECT_NEAR(information(p, own, 2, telling).bits, 1.0, 1e-12);
    EXPECT_NEAR(information(p, own, 2, telling).variance, 0.0, 1e-12);
    const OutcomeTable weak{2, {0.8, 0.2, 0.4, 0.6}};
    EXPECT_NEAR(information(p, own, 2, weak).bits, information_bits(p, own, 2, weak), 1e-12);
    EXPECT_GT(information(p, own, 2, weak).variance, 0.0);
}

TEST(HandingOn, ScoresSixtyToAHundredWhereNothingTellsAndAtMostSixtyElsewhere) {
    EXPECT_DOUBLE_EQ(handing_on_score(true, 1.0, 0.0), 100.0);
    EXPECT_DOUBLE_EQ(handing_on_score(true, 0.0, 0.0), 60.0);
    EXPECT_DOUBLE_EQ(handing_on_score(false, 1.0, 0.0), 60.0);
    EXPECT_NEAR(handing_on_score(true, 1.0, 60.0), 100.0 * std::exp(-1.0), 1e-9);
}

}  // namespace
}  // namespace emberpath::scoring
