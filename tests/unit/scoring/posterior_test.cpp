// Proves how readings turn into probabilities: sums, order, re-reads, mistakes, intermittent faults.

#include "sim/scoring/posterior.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include "sim/math/random.hpp"
#include "sim/scoring/likelihood.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using faults::Remedy;
using worksite::Quantity;

Hypothesis lane(Cause cause, Remedy remedy, double prior) {
    Hypothesis h;
    h.fault.cause = cause;
    h.remedy = remedy;
    h.prior = prior;
    return h;
}

std::vector<Hypothesis> four_causes() {
    return {lane(Cause::no_fault, Remedy::explain_to_customer, 0.4),
            lane(Cause::regulator_droop, Remedy::escalate_regulator, 0.2),
            lane(Cause::gas_pipe_restriction, Remedy::quote_larger_gas_pipe, 0.2),
            lane(Cause::igniter_failed, Remedy::replace_igniter, 0.2)};
}

Reading pressure(double kpa, std::uint32_t epoch = 1) {
    Reading r;
    r.quantity = Quantity::gas_inlet_pressure;
    r.condition.epoch = epoch;
    r.value = kpa * 1000.0;
    return r;
}
const std::vector<double> pressures{1820.0, 700.0, 1000.0, 2350.0};

Reading temperature(double celsius, std::uint32_t epoch = 1) {
    Reading r;
    r.quantity = Quantity::tap_temperature;
    r.condition.epoch = epoch;
    r.value = celsius + 273.15;
    return r;
}
const std::vector<double> temperatures{323.15, 315.15, 317.15, 288.15};

Reading spark(bool seen, int cycle) {
    Reading r;
    r.quantity = Quantity::spark;
    r.condition.epoch = static_cast<std::uint32_t>(cycle);
    r.cycle = cycle;
    r.value = seen ? 1.0 : 0.0;
    return r;
}
const std::vector<double> sparks{1.0, 1.0, 1.0, 0.0};

double sum(const std::vector<double>& p) {
    return std::accumulate(p.begin(), p.end(), 0.0);
}

TEST(Posterior, SumsToOneAfterEveryReading) {
    Posterior p(four_causes());
    EXPECT_NEAR(sum(p.probabilities()), 1.0, 1e-12);
    p.add(pressure(0.72), pressures);
    EXPECT_NEAR(sum(p.probabilities()), 1.0, 1e-12);
    p.add(temperature(42.0), temperatures);
    EXPECT_NEAR(sum(p.probabilities()), 1.0, 1e-12);
    EXPECT_NEAR(sum(p.classes()), 1.0, 1e-12);
}

TEST(Posterior, PutsTheCauseFirstThatPredictedTheReading) {
    Posterior p(four_causes());
    p.add(pressure(0.72), pressures);
    EXPECT_GT(p.classes()[static_cast<std::size_t>(Remedy::escalate_regulator)], 0.9);
}

TEST(Posterior, DoesNotDependOnTheOrderOfIndependentReadings) {
    Posterior forth(four_causes());
    forth.add(pressure(0.85), pressures);
    forth.add(temperature(43.0), temperatures);
    forth.add(spark(true, 0), sparks);
    Posterior back(four_causes());
    back.add(spark(true, 0), sparks);
    back.add(temperature(43.0), temperatures);
    back.add(pressure(0.85), pressures);
    for (std::size_t i = 0; i < 4; ++i)
        EXPECT_NEAR(forth.probabilities()[i], back.probabilities()[i], 1e-12);
}

TEST(Posterior, TenReReadsWeighHardlyMoreThanOne) {
    Posterior once(four_causes());
    once.add(pressure(0.85), pressures);
    Posterior ten(four_causes());
    for (int i = 0; i < 10; ++i) ten.add(pressure(0.85), pressures);
    const double odds_once = once.probabilities()[1] / once.probabilities()[2];
    const double odds_ten = ten.probabilities()[1] / ten.probabilities()[2];
    EXPECT_NEAR(std::log(odds_ten / odds_once), 0.0, 0.15);
}

TEST(Posterior, ANewConditionInWhichNothingIsPredictedAnewIsStillARepeat) {
    Posterior p(four_causes());
    p.add(pressure(0.85, 1), pressures);
    EXPECT_TRUE(p.repeats(pressure(0.85, 2), pressures));
    EXPECT_DOUBLE_EQ(p.expected_bits(pressure(0.85, 2), pressures), 0.0);
    const std::vector<double> after_the_tap_was_shut{2350.0, 2350.0, 2350.0, 2350.0};
    EXPECT_FALSE(p.repeats(pressure(2.35, 3), after_the_tap_was_shut));
}

TEST(Posterior, DisplayAndLatestEventOfOneLockoutAreNotCountedTwice) {
    Reading display;
    display.value = 5.0;
    Reading event;
    event.quantity = Quantity::readout_event;
    event.value = 3.0;
    const std::vector<double> words{1.0, 5.0, 1.0, 7.0};
    const std::vector<double> same_state{0.0, 3.0, 0.0, 4.0};
    const std::vector<double> tells_more{0.0, 3.0, 2.0, 4.0};  // parts two that showed one word
    Posterior p(four_causes());
    p.add(display, words);
    EXPECT_TRUE(p.repeats(event, same_state));
    EXPECT_FALSE(p.repeats(event, tells_more));
    const double before = p.probabilities()[1];
    p.add(event, same_state);
    EXPECT_NEAR(p.probabilities()[1], before, 0.02);
}

TEST(Posterior, OneMistakenReadingDoesNotBuryACause) {
    Posterior p(four_causes());
    p.add(pressure(2.34), pressures);  // as with a dead igniter
    p.add(temperature(42.0), temperatures);
    p.add(spark(true, 0), sparks);
    EXPECT_GT(p.probabilities()[1], 1e-4);
}

TEST(Posterior, ExpectedInformationIsNeverNegativeAndAtMostTheEntropy) {
    math::Random random(20240);
    for (int trial = 0; trial < 200; ++trial) {
        Posterior p(four_causes());
        std::vector<double> predicted;
        for (int i = 0; i < 4; ++i) predicted.push_back(3000.0 * random.uniform());
        p.add(temperature(20.0 + 40.0 * random.uniform()), temperatures);
        const double bits = p.expected_bits(pressure(1.0), predicted);
        EXPECT_GE(bits, 0.0);
        EXPECT_LE(bits, p.class_entropy_bits() + 1e-12);
    }
}

// Readings drawn from what the shadows expect: on average the gain in log probability of the true class
// matches the expected information; tempering only makes the engine more cautious than that.
TEST(Posterior, RealisedGainMatchesTheExpectedOneOnAverage) {
    math::Random random(77);
    double expected = 0.0;
    double realised = 0.0;
    constexpr int trials = 4000;
    for (int trial = 0; trial < trials; ++trial) {
        Posterior p(four_causes());
        const std::vector<double> before = p.probabilities();
        double pick = random.uniform();
        std::size_t truth = 0;
        while (truth < 3 && pick >= before[truth]) pick -= before[truth++];
        const double read = pressures[truth] + 70.0 * random.normal();
        expected += p.expected_bits(pressure(read / 1000.0), pressures);
        p.add(pressure(read / 1000.0), pressures);
        realised += log2_of(p.probabilities()[truth]) - log2_of(before[truth]);
    }
    EXPECT_NEAR(realised / trials, expected / trials, 0.2 * expected / trials);
}

TEST(Posterior, AComplaintIsWeakEvidence) {
    Posterior p(four_causes());
    using worksite::Complaint;
    const std::vector<Complaint> own{Complaint::none, Complaint::not_hot_enough,
                                     Complaint::not_hot_enough, Complaint::no_hot_water};
    p.hear(Complaint::no_hot_water, own);
    EXPECT_GT(p.probabilities()[3], 0.2);
    EXPECT_LT(p.probabilities()[3], 0.7);
    EXPECT_GT(p.probabilities()[1], 0.02);
}

TEST(Posterior, ASparkInOneCycleDoesNotClearAnIgniterThatFailsNowAndThen) {
    using worksite::Complaint;
    const std::vector<Complaint> own(4, Complaint::drops_out_now_and_then);
    Posterior now_and_then(four_causes());
    now_and_then.hear(Complaint::drops_out_now_and_then, own);
    now_and_then.add(spark(true, 1), sparks);
    Posterior always(four_causes());
    always.hear(Complaint::no_hot_water, own);
    always.add(spark(true, 1), sparks);
    EXPECT_GT(now_and_then.probabilities()[3], 5.0 * always.probabilities()[3]);
    const double before = now_and_then.probabilities()[3];
    now_and_then.add(spark(false, 2), sparks);
    EXPECT_GT(now_and_then.probabilities()[3], 3.0 * before);
}

TEST(WornInstrument, IsHeldAgainstNoCauseBeyondWhatItWasOff) {
    // A gauge that shows half of 1.82 kPa: taken at its word it would all but prove the regulator.
    Reading low = pressure(0.72);
    Posterior misled(four_causes());
    misled.add(low, pressures);
    low.beyond_class = 1100.0;
    Posterior fair(four_causes());
    fair.add(low, pressures);
    EXPECT_GT(misled.probabilities()[1], 0.95);
    EXPECT_LT(fair.probabilities()[1], 0.5);
    EXPECT_GT(fair.probabilities()[0], 0.15);
}

TEST(SpareInstrument, IsNewEvidenceAndNoRepeat) {
    Posterior p(four_causes());
    Reading first = pressure(1.82), second = pressure(1.82);
    first.beyond_class = 1100.0;
    p.add(first, pressures);
    EXPECT_TRUE(p.repeats(second, pressures));
    second.condition.spare = true;
    EXPECT_FALSE(p.repeats(second, pressures));
    const double before = p.probabilities()[0];
    p.add(second, pressures);
    EXPECT_GT(p.probabilities()[0], before + 0.2);
}

TEST(Posterior, CausesThatShareARemedyAreOneClass) {
    Posterior p({lane(Cause::no_fault, Remedy::explain_to_customer, 0.5),
                 lane(Cause::outlet_sensor_open, Remedy::replace_outlet_sensor, 0.25),
                 lane(Cause::outlet_sensor_drift, Remedy::replace_outlet_sensor, 0.25)});
    EXPECT_NEAR(p.class_entropy_bits(), 1.0, 1e-12);
    EXPECT_DOUBLE_EQ(p.classes()[static_cast<std::size_t>(Remedy::replace_outlet_sensor)], 0.5);
}

TEST(Posterior, ATrueSeverityBetweenTwoShadowsStillFindsItsCause) {
    auto all = four_causes();
    all.push_back(lane(Cause::gas_pipe_restriction, Remedy::quote_larger_gas_pipe, 0.2));
    all[2].upper = 4;
    all[4].lower = 2;
    Posterior p(all);
    const std::vector<double> predicted{1820.0, 700.0, 1000.0, 2350.0, 1200.0};
    p.add(pressure(1.10), predicted);
    EXPECT_GT(p.classes()[static_cast<std::size_t>(Remedy::quote_larger_gas_pipe)], 0.9);
}

TEST(SomethingElse, FallsWhereACauseFitsAndRisesWhereNoneDoes) {
    Posterior fits(four_causes());
    fits.add(pressure(0.70), pressures);
    fits.add(temperature(42.0), temperatures);
    EXPECT_LT(fits.something_else(), something_else_prior);
    Posterior none(four_causes());
    none.add(pressure(0.70), pressures);        // as with the regulator
    none.add(temperature(63.0), temperatures);  // as with nothing
    const std::vector<double> at_rest{3000.0, 2900.0, 2950.0, 3100.0};
    none.add(pressure(4.5, 2), at_rest);
    EXPECT_GT(none.something_else(), 0.2);
}

// The shadows' probabilities are those of a world without it: worked out here from the formula alone.
TEST(SomethingElse, TakesNothingFromTheShadows) {
    Posterior p(four_causes());
    p.add(pressure(4.5), pressures);  // fits nobody: it has risen far
    EXPECT_GT(p.something_else(), 2.0 * something_else_prior);
    const auto likelihood = Posterior(four_causes()).likelihoods(pressure(4.5), pressures);
    const auto all = four_causes();
    double pool = 0.0, total = 0.0;
    for (std::size_t i = 0; i < all.size(); ++i) pool += all[i].prior * likelihood[i];
    std::vector<double> alone;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const double mixed = (1.0 - outlier_share) * likelihood[i] + outlier_share * pool;
        alone.push_back(all[i].prior * std::pow(mixed, tempering));
        total += alone.back();
    }
    for (std::size_t i = 0; i < all.size(); ++i)
        EXPECT_NEAR(p.probabilities()[i], alone[i] / total, 1e-9) << i;
}

TEST(Posterior, CountsAReadingWithItsRepeatsAndItsGlance) {
    Posterior p(four_causes());
    const std::size_t first = p.add(pressure(0.70), pressures);
    EXPECT_DOUBLE_EQ(p.counted(first).exponent, tempering);
    EXPECT_EQ(p.add(pressure(0.71), pressures), first);
    EXPECT_EQ(p.counted(first).reads, 2U);
    const auto of_readout = [](Quantity quantity, double value) {
        Reading r;
        r.quantity = quantity;
        r.value = value;
        return r;
    };
    const std::vector<double> fans{100.0, 60.0, 90.0, 20.0}, flows{2.0e-4, 2.0e-4, 2.0e-4, 2.0e-4};
    const std::size_t telling = p.add(of_readout(Quantity::readout_fan, 60.0), fans);
    const std::size_t dumb = p.add(of_readout(Quantity::readout_flow, 2.0e-4), flows);
    EXPECT_DOUBLE_EQ(p.counted(telling).exponent, tempering);
    EXPECT_NEAR(p.counted(dumb).exponent, 0.7 * tempering, 1e-12);
}

}  // namespace
}  // namespace emberpath::scoring
