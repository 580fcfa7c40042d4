// Proves that the debrief screen holds how the causes stood as the text has it, at the steps' own minutes.
#include "ui/desktop/debrief_fill.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace emberpath::desktop {
namespace {

using testing::DoubleEq;
using testing::DoubleNear;
using testing::ElementsAre;

/// A reading at the second minute, a look at nothing at the fourth, another reading at the fifth.
struct Weighed {
    Weighed() {
        job.healthy = plant::natural_gas_parameters();
        job.site.arrival_s = 600.0;
        truth = scoring::class_or_first_of(job.faults);
        record.acts = {act(2.0, 1), act(4.0, 0), act(5.0, 2)};
        assessment.on_arrival = {{valve, 0.5}, {igniter, 0.3}, {truth, 0.1},
                                 {lead, 0.05}, {sensor, 0.03}, {strainer, 0.02}};
        assessment.acts = {worth(0, {{truth, 0.4},
                                     {valve, 0.3},
                                     {igniter, 0.2},
                                     {lead, 0.06},
                                     {sensor, 0.03},
                                     {strainer, 0.01}}),
                           worth(2, {{truth, 0.996}, {valve, 0.003}, {igniter, 0.001}})};
    }
    static records::RecordedAct act(double minute, int reading) {
        records::RecordedAct made;
        made.sentence = "look at display";
        made.end_tick = 6000 + static_cast<std::int64_t>(minute * 600.0);
        made.tick = made.end_tick - 300;
        if (reading > 0) made.readings = {{reading, "gas_inlet_pressure", 620.0}};
        return made;
    }
    static scoring::ActWorth worth(std::size_t act, std::vector<scoring::ClassProbability> after) {
        scoring::ActWorth made;
        made.act = act;
        made.bits_gained = 1.0;
        made.after = std::move(after);
        return made;
    }
    [[nodiscard]] screens::DebriefView view() const {
        return debrief_view(record, job, assessment);
    }

    records::Record record;
    worksite::Job job;
    scoring::Assessment assessment;
    scoring::Class truth = faults::Remedy::replace_igniter;
    scoring::Class igniter = faults::Remedy::replace_igniter,
                   valve = faults::Remedy::replace_gas_valve,
                   lead = faults::Remedy::replace_flame_lead,
                   sensor = faults::Remedy::replace_outlet_sensor,
                   strainer = faults::Remedy::clean_strainer;
};

TEST(CausesOfTheDebrief, AreThatOfThisHouseThreeLikeliestOnesAndAllOthers) {
    const Weighed weighed;
    EXPECT_THAT(
        weighed.view().likely,
        ElementsAre(scoring::class_title(weighed.truth), scoring::class_title(weighed.valve),
                    scoring::class_title(weighed.igniter), scoring::class_title(weighed.lead),
                    "all others"));
}

TEST(CausesOfTheDebrief, StandOnArrivalAndFromEachReadingOn) {
    const auto view = Weighed().view();
    ASSERT_EQ(view.stands.size(), 3U) << "an act without a reading moves nothing";
    EXPECT_EQ(view.stands[0].steps, 0U);
    EXPECT_EQ(view.stands[1].steps, 1U);
    EXPECT_EQ(view.stands[2].steps, 3U);
    EXPECT_EQ(view.stands[0].minute, 0.0);
    EXPECT_THAT(view.stands[1].minute, DoubleEq(view.steps[0].minute));
    EXPECT_THAT(view.stands[2].minute, DoubleEq(view.steps[2].minute));
    EXPECT_THAT(view.stands[2].minute, DoubleNear(5.0, 1e-9));
}

TEST(CausesOfTheDebrief, HaveTheSharesOfTheText) {
    const auto view = Weighed().view();
    ASSERT_EQ(view.stands.size(), 3U);
    EXPECT_THAT(view.stands[1].shares,
                ElementsAre(DoubleNear(0.4, 1e-12), DoubleNear(0.3, 1e-12), DoubleNear(0.2, 1e-12),
                            DoubleNear(0.06, 1e-12), DoubleNear(0.04, 1e-12)));
    EXPECT_THAT(view.stands[0].figures, ElementsAre("10 %", "50 %", "30 %", "5 %", "5 %"));
    EXPECT_THAT(view.stands[2].figures, ElementsAre(">99 %", "<1 %", "<1 %", "<1 %", "<1 %"));
    EXPECT_TRUE(screens::charts_causes(view));
}

TEST(CausesOfTheDebrief, AreNotChartedWhereNothingWasWeighed) {
    Weighed weighed;
    weighed.assessment.acts.clear();
    EXPECT_TRUE(weighed.view().stands.empty());
    EXPECT_FALSE(screens::charts_causes(weighed.view()));
    Weighed unscored;
    unscored.assessment.overall_scored = false;
    EXPECT_FALSE(screens::charts_causes(unscored.view()));
}

}  // namespace
}  // namespace emberpath::desktop
