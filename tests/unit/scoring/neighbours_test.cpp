// Proves that a step between two severities is measured in the widths that weighing uses, in the reading that
// tells them apart best, and never across a change of regime.

#include "sim/scoring/neighbours.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "sim/scoring/bank.hpp"
#include "sim/scoring/likelihood.hpp"
#include "tests/unit/scoring/driven_house.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using worksite::Quantity;

TEST(Neighbours, AreAsFarApartAsTheirCombinedWidths) {
    // The relative parts are the same to three digits so close by: sqrt(2) of one width.
    const double one = width_of(Quantity::tap_temperature, 320.0).scale(1);
    const double apart = widths_apart(Quantity::tap_temperature, 320.0, 320.0 + one);
    EXPECT_NEAR(apart, 1.0 / std::sqrt(2.0), 0.01);
    EXPECT_DOUBLE_EQ(widths_apart(Quantity::tap_temperature, 320.0, 320.0), 0.0);
    EXPECT_DOUBLE_EQ(widths_apart(Quantity::gas_inlet_pressure, 900.0, 1900.0),
                     widths_apart(Quantity::gas_inlet_pressure, 1900.0, 900.0));
}

TEST(Neighbours, OfOhmsAreComparedByTheirLogarithm) {
    EXPECT_NEAR(widths_apart(Quantity::outlet_ohms, 3000.0, 3300.0),
                widths_apart(Quantity::outlet_ohms, 30000.0, 33000.0), 0.05);
}

/// A mains house at arrival.
class Steps : public testing::Test {
  protected:
    static void SetUpTestSuite() {
        job_ = plain_job(worksite::GasKind::natural_gas);
        DrivenHouse house(job_, 3);
        house.live_until_arrival();
        Bank bank(job_, 2);
        bank.live_until(house.tape(), house.tape().events.size());
        shadows_ = bank.shadows();
    }
    static std::vector<Gap> of(Cause cause, double severity) {
        faults::Fault fault;
        fault.cause = cause;
        fault.severity = severity;
        return gaps_between(job_, shadows_, std::array{fault});
    }
    static inline worksite::Job job_;
    static inline Shadows shadows_;
};

TEST_F(Steps, StandBetweenEachTwoSeveritiesOfACauseAndSign) {
    const auto gaps = of(Cause::gas_pipe_restriction, 0.5);
    std::size_t severities = 0;
    for (const Hypothesis& h : shadows_.hypotheses)
        severities += h.fault.cause == Cause::gas_pipe_restriction && !h.is_pair() ? 1 : 0;
    ASSERT_EQ(gaps.size(), severities - 1);
    for (std::size_t i = 0; i < gaps.size(); ++i) {
        EXPECT_LT(gaps[i].lower.severity, gaps[i].upper.severity);
        EXPECT_GT(gaps[i].widths, 0.0);
        if (i > 0) {
            EXPECT_EQ(gaps[i].lower.severity, gaps[i - 1].upper.severity);
        }
    }
    for (const Gap& gap : of(Cause::outlet_sensor_drift, -0.5)) EXPECT_LT(gap.upper.severity, 0.0);
}

TEST_F(Steps, AreNoneWhereACauseIsThereOrNot) {
    EXPECT_TRUE(of(Cause::igniter_failed, 1.0).empty());
    EXPECT_TRUE(gaps_between(job_, shadows_, {}).empty());
}

TEST_F(Steps, AreMeasuredWhereTheDisplayShowsTheSame) {
    std::size_t changes = 0;
    for (const Hypothesis& h : shadows_.hypotheses) {
        if (h.lower >= 0 || h.upper < 0 || h.is_pair()) continue;
        for (const Gap& gap : of(h.fault.cause, h.fault.severity)) {
            if (gap.widths == 0.0) continue;
            const auto words = shadows_.signatures[gap.mode].of(Quantity::display_word);
            for (std::size_t i = 0; i < shadows_.hypotheses.size(); ++i) {
                const Hypothesis& lower = shadows_.hypotheses[i];
                if (lower.upper < 0 || lower.is_pair() || lower.fault.cause != gap.lower.cause ||
                    lower.fault.severity != gap.lower.severity)
                    continue;
                EXPECT_EQ(words[i], words[i + 1]);
                ++changes;
            }
        }
    }
    EXPECT_GT(changes, 50U);
}

}  // namespace
}  // namespace emberpath::scoring
