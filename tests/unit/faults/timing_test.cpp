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
