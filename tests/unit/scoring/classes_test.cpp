// Proves that chosen pairs of causes are classes of their own: what they need, what is left of them after a remedy, and
// that no pair stands where one of its causes cannot act.

#include "sim/scoring/classes.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <set>

#include "sim/scoring/hypotheses.hpp"
#include "tests/unit/scoring/driven_house.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using faults::Remedy;

faults::Fault of(Cause cause, double severity = 1.0) {
    faults::Fault fault;
    fault.cause = cause;
    fault.severity = severity;
    return fault;
}

const std::vector scaled_and_open{of(Cause::limiter_open), of(Cause::exchanger_scaled, 0.7)};

TEST(Classes, OfAChosenPairIsThatPairInEitherOrder) {
    const auto one = class_of(scaled_and_open);
    ASSERT_TRUE(one.has_value());
    EXPECT_TRUE(one->is_pair());
    EXPECT_EQ(class_of(std::vector{scaled_and_open[1], scaled_and_open[0]}), one);
    EXPECT_EQ(remedies_of(*one), (std::vector{Remedy::descale_exchanger, Remedy::replace_limiter}));
    EXPECT_TRUE(needs(*one, Remedy::replace_limiter));
    EXPECT_FALSE(needs(*one, Remedy::replace_igniter));
}

TEST(Classes, OfOneCauseOrOneRemedyAreThatRemedy) {
    EXPECT_EQ(class_of(std::vector<faults::Fault>{}), Class(Remedy::explain_to_customer));
    EXPECT_EQ(class_of(std::vector{of(Cause::igniter_failed)}), Class(Remedy::replace_igniter));
    EXPECT_EQ(class_of(std::vector{of(Cause::earth_missing), of(Cause::supply_swapped)}),
              Class(Remedy::escalate_wiring));
}

TEST(Classes, OfTwoCausesThatNobodyChoseAreNone) {
    EXPECT_EQ(class_of(std::vector{of(Cause::igniter_failed), of(Cause::flue_blocked)}),
              std::nullopt);
}

TEST(Classes, NeedARemedyWithTheProbabilityOfAllThatNeedIt) {
    std::vector<double> classes(class_count, 0.0);
    classes[Class(Remedy::replace_limiter).index()] = 0.3;
    classes[class_of(scaled_and_open)->index()] = 0.2;
    classes[Class(Remedy::replace_igniter).index()] = 0.5;
    EXPECT_DOUBLE_EQ(needing(classes, Remedy::replace_limiter), 0.5);
    EXPECT_DOUBLE_EQ(needing(classes, Remedy::descale_exchanger), 0.2);
    EXPECT_DOUBLE_EQ(needing(classes, Remedy::replace_igniter), 0.5);
}

TEST(Pairs, StandAmongTheHypothesesOfASiteWhereBothCausesCanAct) {
    for (const auto gas : {worksite::GasKind::natural_gas, worksite::GasKind::propane_cylinder}) {
        const auto site = worksite::traits_of(plain_job(gas));
        const auto all = hypotheses(site);
        std::set<int> present;
        double total = 0.0;
        for (const Hypothesis& h : all) {
            total += h.prior;
            if (!h.is_pair()) continue;
            present.insert(h.pair);
            EXPECT_TRUE(faults::can_act(faults::info(h.fault.cause), site));
            EXPECT_TRUE(faults::can_act(faults::info(faults_of(h).back().cause), site));
            EXPECT_EQ(class_of(faults_of(h)), class_of(h));
        }
        EXPECT_NEAR(total, 1.0, 1.0e-12);
        std::size_t possible = 0;
        for (const ChosenPair& pair : chosen_pairs)
            possible += faults::can_act(faults::info(pair.first), site) &&
                                faults::can_act(faults::info(pair.second), site)
                            ? 1U
                            : 0U;
        EXPECT_EQ(present.size(), possible);
        EXPECT_GE(possible, 3U);
    }
}

TEST(Pairs, AreLeftWithTheOtherCauseOnceOneIsCuredAndSoundOnceBothAre) {
    const auto all = hypotheses(worksite::traits_of(plain_job(worksite::GasKind::natural_gas)));
    const std::array one{Remedy::replace_limiter};
    const std::array both{Remedy::replace_limiter, Remedy::descale_exchanger};
    const auto after_one = stands_as_after(all, one), after_both = stands_as_after(all, both);
    const Class pair = *class_of(scaled_and_open);
    std::size_t seen = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (class_of(all[i]) != pair) continue;
        ++seen;
        const Hypothesis& left = all[after_one[i]];
        EXPECT_FALSE(left.is_pair());
        EXPECT_EQ(left.fault.cause, Cause::exchanger_scaled);
        EXPECT_EQ(left.fault.severity, all[i].fault.severity);
        EXPECT_EQ(after_both[i], sound_house(all));
    }
    EXPECT_EQ(seen, 4U);
    std::vector<std::size_t> untouched(all.size());
    std::iota(untouched.begin(), untouched.end(), std::size_t{0});
    EXPECT_EQ(stands_as_after(all, {}), untouched);
}

}  // namespace
}  // namespace emberpath::scoring
