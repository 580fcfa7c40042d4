// Proves that shadows may sleep without anybody noticing: probabilities agree with those of a bank in which
// all stay awake, woken shadows have lost nothing, and a copied bank goes on like its original.

#include "sim/scoring/bank.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "sim/scoring/evidence.hpp"
#include "tests/unit/scoring/driven_house.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using worksite::GasKind;
using worksite::Quantity;

worksite::Job house_with(Cause cause, double severity) {
    worksite::Job job = plain_job(GasKind::natural_gas);
    job.customer.complaint = worksite::Complaint::not_hot_enough;
    job.faults = {{cause, severity}};
    return job;
}

// Ten readings in three conditions, each its own act, then a remedy that may be the wrong one.
void work_through(DrivenHouse& house, faults::Remedy remedy) {
    house.live_until_arrival();
    worksite::ToolSetup tools;
    tools.watching = tools.listening = tools.analyser_sampling = true;
    tools.tap_opening_share = 1.0;
    tools.manometer = Quantity::gas_inlet_pressure;
    house.tools(tools);
    const auto read = [&](Quantity quantity) {
        house.recorder().mark();
        house.run(5.0);
        house.read(quantity);
    };
    read(Quantity::display_word);
    read(Quantity::readout_event);
    read(Quantity::flue_terminal);
    house.open_taps(1.0);
    house.run(90.0);
    for (const Quantity quantity :
         {Quantity::gas_inlet_pressure, Quantity::flue_co2, Quantity::flue_co,
          Quantity::tap_temperature, Quantity::readout_outlet, Quantity::flame})
        read(quantity);
    house.recorder().mark();
    house.remedy(remedy);
    house.run(60.0);
    read(Quantity::tap_temperature);
    read(Quantity::gas_inlet_pressure);
}

std::vector<double> weigh_everything(Evidence& evidence, const Tape& tape) {
    for (std::size_t mark = 0; mark < tape.marks; ++mark) {
        const bool last = mark + 1 == tape.marks;
        evidence.live_until(last ? tape.events.size() : tape.event_of_mark[mark + 1]);
        const std::size_t end = last ? tape.observations.size() : tape.marked[mark + 1];
        for (std::size_t i = tape.marked[mark]; i < end; ++i) evidence.weigh(i);
        evidence.rest();
    }
    return evidence.posterior().classes();
}

struct Both {
    std::vector<double> sleeping, awake;
    std::size_t groups_awake = 0, group_count = 0, ticks_sleeping = 0, ticks_awake = 0;
};

Both weigh_both_ways(const worksite::Job& job, faults::Remedy remedy) {
    DrivenHouse house(job, 7);
    work_through(house, remedy);
    const Tape& tape = house.tape();
    Bank bank(job, 2);
    bank.live_until(tape, tape.arrival_event());
    Bank untouched = bank;
    Evidence evidence(bank, tape, job.customer.complaint);
    Both both;
    both.sleeping = weigh_everything(evidence, tape);
    both.groups_awake = bank.groups_awake();
    both.group_count = untouched.groups_awake();  // none of its own sleeps
    both.ticks_sleeping = bank.group_ticks();
    untouched.live_until(tape, tape.events.size());
    both.ticks_awake = untouched.group_ticks();
    Evidence full(untouched.shadows(), tape, job.customer.complaint);
    both.awake = weigh_everything(full, tape);
    return both;
}

void expect_the_same(const Both& both) {
    for (std::size_t i = 0; i < both.awake.size(); ++i)
        EXPECT_NEAR(both.sleeping[i], both.awake[i], 2.0e-4) << i;
}

TEST(Bank, LetsExcludedCausesSleepWithoutChangingWhatIsBelieved) {
    const Both both = weigh_both_ways(house_with(Cause::gas_pipe_restriction, 0.72),
                                      faults::Remedy::clear_flue_terminal);
    EXPECT_LT(both.groups_awake, both.group_count);
    EXPECT_LT(both.ticks_sleeping, both.ticks_awake);
    expect_the_same(both);
}

TEST(Bank, BelievesTheSameWhenTheLikeliestCauseTurnsOutWrong) {
    // The remedy of a blocked flue is done in a house with a sooted exchanger.
    expect_the_same(weigh_both_ways(house_with(Cause::exchanger_sooted, 0.63),
                                    faults::Remedy::clear_flue_terminal));
    expect_the_same(weigh_both_ways(house_with(Cause::exchanger_sooted, 0.63),
                                    faults::Remedy::clean_exchanger));
}

TEST(Bank, WokenShadowsHaveLostNothing) {
    const worksite::Job job = house_with(Cause::gas_pipe_restriction, 0.72);
    DrivenHouse house(job, 7);
    work_through(house, faults::Remedy::clear_flue_terminal);
    const Tape& tape = house.tape();
    Bank awake(job, 1);
    awake.live_until(tape, tape.events.size());
    Bank sleeper(job, 1);
    sleeper.live_until(tape, tape.event_of_mark[2]);
    const std::size_t lanes = sleeper.shadows().hypotheses.size();
    sleeper.let_sleep(std::vector<bool>(lanes, true));
    EXPECT_LT(sleeper.groups_awake(), awake.groups_awake());
    sleeper.live_until(tape, tape.events.size());
    EXPECT_NE(sleeper.shadows().observed, awake.shadows().observed);
    EXPECT_TRUE(sleeper.wake(tape, std::vector<bool>(lanes, true)));
    EXPECT_EQ(sleeper.shadows().observed, awake.shadows().observed);
    EXPECT_FALSE(sleeper.wake(tape, std::vector<bool>(lanes, true)));
}

TEST(Bank, ACopyGoesOnLikeItsOriginal) {
    const worksite::Job job = house_with(Cause::exchanger_sooted, 0.63);
    DrivenHouse house(job, 7);
    work_through(house, faults::Remedy::clean_exchanger);
    Bank original(job, 1);
    original.live_until(house.tape(), house.tape().arrival_event());
    Bank copy = original;
    original.live_until(house.tape(), house.tape().events.size());
    copy.live_until(house.tape(), house.tape().events.size());
    EXPECT_EQ(copy.shadows().observed, original.shadows().observed);
}

TEST(Representatives, AreTheMiddleSeverityOfEachCauseAndSign) {
    const auto all = hypotheses(faults::SiteTraits{});
    const auto of = representatives(all);
    for (std::size_t i = 0; i < all.size(); ++i) {
        EXPECT_EQ(of[of[i]], of[i]);
        EXPECT_EQ(all[of[i]].fault.cause, all[i].fault.cause);
        EXPECT_EQ(all[of[i]].fault.severity < 0.0, all[i].fault.severity < 0.0);
    }
}

}  // namespace
}  // namespace emberpath::scoring
