// Proves the order of remedies by probability per cost on worked examples.

#include "sim/scoring/remedy_order.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <numeric>
#include <span>
#include <utility>
#include <vector>

namespace emberpath::scoring {
namespace {

const std::vector<RemedyChoice> four{{0.4, 40.0}, {0.3, 10.0}, {0.2, 15.0}, {0.1, 2.0}};

// Expected cost of trying `order` until cured; what is left after the last one pays `call_cost`.
double expected_cost(std::span<const RemedyChoice> choices, std::span<const std::size_t> order,
                     double call_cost) {
    double still_faulty = 1.0;
    double cost = 0.0;
    for (const std::size_t i : order) {
        cost += still_faulty * choices[i].cost;
        still_faulty -= choices[i].probability;
    }
    return cost + std::max(0.0, still_faulty) * call_cost;
}

// Number of remedies of `order` worth trying before handing on at `call_cost`.
std::size_t tries_before_call(std::span<const RemedyChoice> choices,
                              std::span<const std::size_t> order, double call_cost) {
    std::size_t best = 0;
    double least = expected_cost(choices, {}, call_cost);
    for (std::size_t tries = 1; tries <= order.size(); ++tries) {
        const double cost = expected_cost(choices, order.first(tries), call_cost);
        if (cost >= least) continue;
        least = cost;
        best = tries;
    }
    return best;
}

TEST(RemedyOrder, GoesByProbabilityPerCost) {
    EXPECT_EQ(by_probability_per_cost(four), (std::vector<std::size_t>{3, 1, 2, 0}));
}

TEST(RemedyOrder, CostsThirtySixAndNoOtherOrderCostsLess) {
    const auto order = by_probability_per_cost(four);
    EXPECT_NEAR(expected_cost(four, order, 0.0), 36.0, 1e-12);
    std::vector<std::size_t> any(4);
    std::iota(any.begin(), any.end(), std::size_t{0});
    double worst = 0.0;
    do {
        const double cost = expected_cost(four, any, 0.0);
        EXPECT_GE(cost, 36.0 - 1e-12);
        worst = std::max(worst, cost);
    } while (std::next_permutation(any.begin(), any.end()));
    EXPECT_NEAR(worst, 53.2, 1e-12);
}

TEST(RemedyOrder, WithACallAtThirtyFiveTwoRemediesAreTriedFirst) {
    const auto order = by_probability_per_cost(four);
    const std::span<const std::size_t> all(order);
    EXPECT_NEAR(expected_cost(four, all.first(0), 35.0), 35.0, 1e-12);
    EXPECT_NEAR(expected_cost(four, all.first(1), 35.0), 33.5, 1e-12);
    EXPECT_NEAR(expected_cost(four, all.first(2), 35.0), 32.0, 1e-12);
    EXPECT_NEAR(expected_cost(four, all.first(3), 35.0), 34.0, 1e-12);
    EXPECT_EQ(tries_before_call(four, order, 35.0), 2U);
}

// Two causes, a check for each (C1, C2) and a repair (R1, R2): whichever check comes first, each repair
// is paid exactly when its cause is there, so only C / p decides.
TEST(RemedyOrder, OfTwoCausesTheCheckWithLessCostPerProbabilityComesFirst) {
    for (const auto& [p, c1, c2] : std::vector<std::array<double, 3>>{{0.3, 4.0, 9.0},
                                                                      {0.3, 4.0, 9.5},
                                                                      {0.5, 7.0, 6.0},
                                                                      {0.9, 40.0, 4.0},
                                                                      {0.05, 1.0, 20.0}})
        for (const auto& [r1, r2] : {std::pair{100.0, 1.0}, std::pair{1.0, 100.0}}) {
            const double first_one = c1 + p * r1 + (1.0 - p) * (c2 + r2);
            const double first_two = c2 + (1.0 - p) * r2 + p * (c1 + r1);
            const std::vector<RemedyChoice> two{{p, c1}, {1.0 - p, c2}};
            EXPECT_EQ(by_probability_per_cost(two).front(), first_one <= first_two ? 0U : 1U) << p;
            EXPECT_EQ(c1 / p <= c2 / (1.0 - p), first_one <= first_two) << p;
        }
}

}  // namespace
}  // namespace emberpath::scoring
