// Proves when a fault is in force: onset, ramp, intermittency, and when a list of faults stops changing.

#include <gtest/gtest.h>

#include <vector>

#include "sim/faults/faults.hpp"

namespace emberpath::faults {
namespace {

constexpr Cause any = Cause::flue_blocked;

TEST(Severity, StandsFromTheBeginningUnlessAnOnsetIsGiven) {
    const Fault fault{any, 0.7};
    EXPECT_EQ(severity_at(fault, 0.0), 0.7);
    EXPECT_EQ(severity_at(fault, 1.0e6), 0.7);
}

TEST(Severity, IsNoughtBeforeItsOnsetAndFullFromItOn) {
    const Fault fault{any, 0.7, 100.0};
    EXPECT_EQ(severity_at(fault, 99.9), 0.0);
    EXPECT_EQ(severity_at(fault, 100.0), 0.7);
}

TEST(Severity, RisesInAStraightLineOverItsRamp) {
    const Fault fault{any, 0.8, 100.0, 50.0};
    EXPECT_EQ(severity_at(fault, 100.0), 0.0);
    EXPECT_DOUBLE_EQ(severity_at(fault, 125.0), 0.4);
    EXPECT_EQ(severity_at(fault, 150.0), 0.8);
    EXPECT_EQ(severity_at(fault, 900.0), 0.8);
}

TEST(Severity, KeepsItsSignOverTheRamp) {
    const Fault fault{Cause::outlet_sensor_drift, -0.8, 0.0, 50.0};
    EXPECT_DOUBLE_EQ(severity_at(fault, 25.0), -0.4);
}

TEST(Severity, ComesAndGoesWithItsPeriodCountedFromTheOnset) {
    const Fault fault{any, 0.7, 100.0, 0.0, 60.0, 20.0};
    EXPECT_EQ(severity_at(fault, 100.0), 0.7);
    EXPECT_EQ(severity_at(fault, 119.9), 0.7);
    EXPECT_EQ(severity_at(fault, 120.0), 0.0);
    EXPECT_EQ(severity_at(fault, 159.9), 0.0);
    EXPECT_EQ(severity_at(fault, 160.0), 0.7);
    EXPECT_EQ(severity_at(fault, 100.0 + 60.0 * 1000.0 + 19.0), 0.7);
}

TEST(Severity, RampGoesOnBehindTheGapsOfAnIntermittentFault) {
    const Fault fault{any, 1.0, 0.0, 100.0, 20.0, 10.0};
    EXPECT_DOUBLE_EQ(severity_at(fault, 5.0), 0.05);
    EXPECT_EQ(severity_at(fault, 15.0), 0.0);
    EXPECT_DOUBLE_EQ(severity_at(fault, 45.0), 0.45);
}

TEST(Severity, WaitsForNightRainOrAWarmCase) {
    Fault fault{any, 0.7, 100.0};
    Moment dry_day(200.0), night(200.0), rain(200.0), warm(200.0);
    night.night = rain.rain = 1.0;
    warm.case_k = hot_case_k + 0.1;
    struct Row {
        While what;
        const Moment* when;
    };
    for (const Row& row :
         {Row{While::night, &night}, Row{While::rain, &rain}, Row{While::hot, &warm}}) {
        fault.present_while = row.what;
        for (const Moment* now : {&dry_day, &night, &rain, &warm})
            EXPECT_EQ(severity_at(fault, *now), now == row.when ? 0.7 : 0.0);
        Moment early = *row.when;
        early.time_s = 99.0;
        EXPECT_EQ(severity_at(fault, early), 0.0);
    }
}

TEST(Severity, BeginsAfterTheLightUpItWaitsFor) {
    Fault fault{any, 0.7};
    fault.after_light_ups = 3;
    Moment now(50.0);
    for (int light_ups = 0; light_ups < 6; ++light_ups) {
        now.light_ups = light_ups;
        EXPECT_EQ(severity_at(fault, now), light_ups >= 3 ? 0.7 : 0.0) << light_ups;
    }
}

TEST(ChangesAfter, IsAlwaysTrueOfWhatWaits) {
    Fault at_night{any, 0.5}, third{any, 0.5};
    at_night.present_while = While::night;
    third.after_light_ups = 3;
    EXPECT_TRUE(changes_after(std::vector{at_night}, 1.0e9));
    EXPECT_TRUE(changes_after(std::vector{third}, 1.0e9));
}

TEST(ChangesAfter, IsFalseOnceEverySteadyFaultHasArrived) {
    const std::vector<Fault> none, standing{{any, 0.5}}, ramped{{any, 0.5, 10.0, 20.0}},
        coming_and_going{{any, 0.5, 0.0, 0.0, 60.0, 10.0}};
    EXPECT_FALSE(changes_after(none, 0.0));
    EXPECT_FALSE(changes_after(standing, 0.1));
    EXPECT_TRUE(changes_after(ramped, 0.0));
    EXPECT_TRUE(changes_after(ramped, 29.9));
    EXPECT_FALSE(changes_after(ramped, 30.1));
    EXPECT_TRUE(changes_after(coming_and_going, 1.0e9));
}

}  // namespace
}  // namespace emberpath::faults
