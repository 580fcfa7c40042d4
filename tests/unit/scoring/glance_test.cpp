// Proves that the figures of one glance weigh less than as many independent readings, that a figure which tells
// nothing thins none that does, and that the controller's word excludes a cause once.

#include "sim/scoring/glance.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "sim/scoring/posterior.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using faults::Remedy;
using worksite::Quantity;

std::vector<Hypothesis> two_causes() {
    std::vector<Hypothesis> all(2);
    all[0].fault.cause = Cause::no_fault;
    all[0].prior = 0.5;
    all[1].fault.cause = Cause::regulator_droop;
    all[1].remedy = Remedy::escalate_regulator;
    all[1].prior = 0.5;
    return all;
}

Reading figure(Quantity quantity, double value, std::uint32_t epoch = 1) {
    Reading r;
    r.quantity = quantity;
    r.condition.epoch = epoch;
    r.value = value;
    return r;
}

double log_odds(const Posterior& p) {
    return std::log(p.probabilities()[1] / p.probabilities()[0]);
}

// Three temperatures of the readout, each a little nearer to the second cause.
const std::array figures{Quantity::readout_inlet, Quantity::readout_outlet,
                         Quantity::readout_exchanger};
const std::vector<double> expected{320.0, 318.0};
constexpr double read_k = 318.4;

double alone(Quantity quantity) {
    Posterior p(two_causes());
    p.add(figure(quantity, read_k), expected);
    return log_odds(p);
}

TEST(Glance, ThreeFiguresOfOneGlanceWeighLessThanThreeReadingsAndMoreThanTheBest) {
    Posterior together(two_causes());
    double sum = 0.0, most = 0.0;
    for (const Quantity quantity : figures) {
        together.add(figure(quantity, read_k), expected);
        sum += alone(quantity);
        most = std::max(most, alone(quantity));
    }
    EXPECT_GT(log_odds(together), most);
    EXPECT_LT(log_odds(together), 0.9 * sum);
}

TEST(Glance, DoesNotDependOnTheOrderInWhichItIsRead) {
    Posterior forth(two_causes()), back(two_causes());
    for (std::size_t i = 0; i < figures.size(); ++i) {
        forth.add(figure(figures.at(i), read_k + 0.1 * static_cast<double>(i)), expected);
        const std::size_t k = figures.size() - 1 - i;
        back.add(figure(figures.at(k), read_k + 0.1 * static_cast<double>(k)), expected);
    }
    EXPECT_NEAR(log_odds(forth), log_odds(back), 1e-12);
}

TEST(Glance, AFigureThatTellsNothingThinsNoneThatDoes) {
    Posterior p(two_causes());
    p.add(figure(Quantity::readout_fan, 50.0), std::vector<double>{50.0, 50.0});
    p.add(figure(Quantity::readout_ambient, 290.0), std::vector<double>{290.0, 290.0});
    p.add(figure(Quantity::readout_outlet, read_k), expected);
    EXPECT_NEAR(log_odds(p), alone(Quantity::readout_outlet), 1e-9);
}

TEST(Glance, AnyNumberOfFiguresWeighsAtMostAsMuchAsThreeAndAThird) {
    const std::vector<double> one{0.0, 2.0};
    const std::vector<double> prior{0.5, 0.5};
    const std::vector<const std::vector<double>*> forty(40, &one);
    EXPECT_NEAR(weighed_together(forty, prior)[1], 2.0 / shared_error, 1e-4);
}

TEST(Glance, FiguresUnderAnotherConditionAreAnotherGlance) {
    const Reading first = figure(Quantity::readout_inlet, 300.0, 1);
    EXPECT_TRUE(of_one_glance(first, figure(Quantity::readout_outlet, 300.0, 1)));
    EXPECT_FALSE(of_one_glance(first, figure(Quantity::readout_outlet, 300.0, 2)));
    EXPECT_FALSE(of_one_glance(first, figure(Quantity::tap_temperature, 300.0, 1)));
    EXPECT_FALSE(of_one_glance(first, figure(Quantity::readout_event, 3.0, 1)));
    Reading later = figure(Quantity::readout_outlet, 300.0, 1);
    later.tick = 601;
    EXPECT_FALSE(of_one_glance(first, later));
}

TEST(Glance, TheControllersWordExcludesACauseOnce) {
    // The event parts what one word leaves together elsewhere, so it is no repeat; of this cause both say no.
    const std::vector<double> word{-1.5, -0.0, -0.0}, event{-1.5, -0.0, -1.4};
    const std::vector<const std::vector<double>*> both{&word, &event};
    const std::vector<double> together = as_one_report(both);
    EXPECT_DOUBLE_EQ(together[0], -1.5);
    EXPECT_DOUBLE_EQ(together[1], 0.0);
    EXPECT_DOUBLE_EQ(together[2], -1.4);
}

}  // namespace
}  // namespace emberpath::scoring
