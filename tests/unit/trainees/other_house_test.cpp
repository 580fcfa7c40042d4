// Proves that another house of a job differs from it by what its author left to chance, and by nothing that can be
// seen from outside.

#include "sim/trainees/other_house.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/unit/trainees/small_house.hpp"

namespace emberpath::trainees {
namespace {

using faults::Cause;

constexpr double most_apart = 0.0251;  // two and a half standard deviations of one per cent

TEST(OtherHouse, IsTheSameForTheSameNumberAndAnotherForAnother) {
    const auto job = small_house(Cause::gas_pipe_restriction);
    const auto once = other_house(job, 7), again = other_house(job, 7), next = other_house(job, 8);
    EXPECT_EQ(once.healthy.fan_head, again.healthy.fan_head);
    EXPECT_EQ(once.faults.front().severity, again.faults.front().severity);
    EXPECT_NE(once.healthy.fan_head, next.healthy.fan_head);
    EXPECT_NE(once.faults.front().severity, next.faults.front().severity);
}

TEST(OtherHouse, LiesAFewPerCentAwayInEveryParameter) {
    const auto job = small_house(Cause::gas_pipe_restriction);
    std::size_t moved = 0;
    double sum = 0.0;
    for (std::uint64_t number = 1; number <= 40; ++number) {
        const auto other = other_house(job, number);
        for (std::size_t i = 0; i < plant::parameter_count; ++i) {
            const double own = plant::flat(job.healthy)[i], theirs = plant::flat(other.healthy)[i];
            if (own == theirs) continue;
            ++moved;
            EXPECT_LE(std::abs(theirs / own - 1.0), most_apart) << i;
            sum += theirs / own - 1.0;
        }
    }
    EXPECT_GT(moved, 40U * 25U);
    EXPECT_NEAR(sum / static_cast<double>(moved), 0.0, 0.001);
}

TEST(OtherHouse, KeepsGasLockUpAboveWorkingPressure) {
    const auto job = small_house(Cause::no_fault);
    for (std::uint64_t number = 1; number <= 40; ++number) {
        const auto p = other_house(job, number).healthy;
        EXPECT_NEAR(p.gas_lock_up_pa / p.gas_no_load_pa,
                    job.healthy.gas_lock_up_pa / job.healthy.gas_no_load_pa, 1e-12);
    }
}

TEST(OtherHouse, StandsBesideTheSeverityOfTheJob) {
    auto job = small_house(Cause::outlet_sensor_drift);
    job.faults.front().severity = -0.5;
    double least = 0.0, most = -1.0;
    for (std::uint64_t number = 1; number <= 40; ++number) {
        const double severity = other_house(job, number).faults.front().severity;
        EXPECT_LT(severity, -0.45 + 1e-12);
        EXPECT_GT(severity, -0.55 - 1e-12);
        least = std::min(least, severity);
        most = std::max(most, severity);
    }
    EXPECT_GT(most - least, 0.05);
}

TEST(OtherHouse, StaysWithinTheSymptomaticRange) {
    faults::Fault fault;
    fault.cause = Cause::gas_pipe_restriction;
    const auto& cause = faults::info(fault.cause);
    fault.severity = cause.greatest_severity;
    EXPECT_EQ(severity_range(fault).high, cause.greatest_severity);
    fault.severity = cause.least_severity;
    EXPECT_EQ(severity_range(fault).low, cause.least_severity);
}

TEST(OtherHouse, HasAFaultThatIsThereOrNotAsTheJobHasIt) {
    const auto job = small_house(Cause::igniter_failed);
    EXPECT_EQ(other_house(job, 3).faults.front().severity, job.faults.front().severity);
}

TEST(OtherHouse, LooksTheSameFromOutside) {
    const auto job = small_house(Cause::gas_pipe_restriction);
    const auto other = other_house(job, 5);
    EXPECT_EQ(other.site.mains_water_pa, job.site.mains_water_pa);
    EXPECT_EQ(other.site.inlet_water_k, job.site.inlet_water_k);
    EXPECT_EQ(other.customer.complaint, job.customer.complaint);
    EXPECT_EQ(other.faults.size(), job.faults.size());
    EXPECT_EQ(other.site.taps.front().conductance, job.site.taps.front().conductance);
}

}  // namespace
}  // namespace emberpath::trainees
