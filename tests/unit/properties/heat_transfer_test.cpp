// Proves the laws of exchangers: order of arrangements, limits, inverses, and the same bits in a pack.

#include "sim/properties/heat_transfer.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace emberpath::properties {
namespace {

constexpr std::array units{0.1, 0.5, 1.0, 2.0, 5.0};
constexpr std::array capacity_ratios{0.05, 0.25, 0.5, 0.9, 1.0};

TEST(Effectiveness, CounterflowIsBestAndParallelFlowWorst) {
    for (const double ntu : units)
        for (const double cr : capacity_ratios) {
            const double best = counterflow_effectiveness(ntu, cr);
            const double worst = parallel_flow_effectiveness(ntu, cr);
            const double cross = crossflow_unmixed_exact_effectiveness(ntu, cr);
            EXPECT_GE(best, cross - 1e-12);
            EXPECT_GE(cross, worst - 1e-12);
            EXPECT_LE(best, 1.0);
            EXPECT_GE(best, crossflow_cmin_mixed_effectiveness(ntu, cr) - 1e-12);
            EXPECT_GE(best, crossflow_cmax_mixed_effectiveness(ntu, cr) - 1e-12);
            EXPECT_GE(best, shell_and_tube_effectiveness(ntu, cr) - 1e-12);
        }
}

TEST(Effectiveness, EveryArrangementTendsToTheSameLimit) {
    for (const double ntu : units) {
        const double limit = constant_temperature_effectiveness(ntu), cr = 1e-6;
        EXPECT_NEAR(counterflow_effectiveness(ntu, cr), limit, 1e-5);
        EXPECT_NEAR(parallel_flow_effectiveness(ntu, cr), limit, 1e-5);
        EXPECT_NEAR(crossflow_unmixed_effectiveness(ntu, cr), limit, 1e-5);
        EXPECT_NEAR(crossflow_cmin_mixed_effectiveness(ntu, cr), limit, 1e-5);
        EXPECT_NEAR(crossflow_cmax_mixed_effectiveness(ntu, cr), limit, 1e-5);
        EXPECT_NEAR(shell_and_tube_effectiveness(ntu, cr), limit, 1e-5);
    }
}

TEST(Effectiveness, CounterflowHasNoJumpAtEqualCapacities) {
    for (const double ntu : units)
        for (const double away : {1e-9, 1e-8, 9e-8, 1.1e-7, 1e-6, 1e-5})
            EXPECT_NEAR(counterflow_effectiveness(ntu, 1.0 - away), ntu / (1.0 + ntu), 1e-5 + away);
}

TEST(Effectiveness, ApproximationStaysWithinTwoPercentOfTheSeries) {
    for (const double ntu : units)
        for (const double cr : capacity_ratios)
            EXPECT_NEAR(crossflow_unmixed_effectiveness(ntu, cr),
                        crossflow_unmixed_exact_effectiveness(ntu, cr), 0.02);
}

TEST(Effectiveness, TransferUnitsInvertIt) {
    for (const double ntu : units) {
        EXPECT_NEAR(counterflow_ntu(counterflow_effectiveness(ntu, 0.6), 0.6), ntu, 1e-10);
        EXPECT_NEAR(shell_and_tube_ntu(shell_and_tube_effectiveness(ntu, 0.6), 0.6), ntu, 1e-8);
        EXPECT_NEAR(
            crossflow_unmixed_exact_ntu(crossflow_unmixed_exact_effectiveness(ntu, 0.6), 0.6), ntu,
            1e-8);
    }
}

TEST(Effectiveness, LanesHaveTheBitsOfTheScalar) {
    math::Pack<8> ntu, cr;
    for (std::size_t i = 0; i < 8; ++i) {
        math::set_lane(ntu, i, 0.2 + 0.4 * static_cast<double>(i));
        math::set_lane(cr, i, 0.125 * (1.0 + static_cast<double>(i)));
    }
    const auto counter = counterflow_effectiveness(ntu, cr);
    const auto cross = crossflow_unmixed_effectiveness(ntu, cr);
    const auto shell = shell_and_tube_effectiveness(ntu, cr);
    for (std::size_t i = 0; i < 8; ++i) {
        const double n = math::lane(ntu, i), c = math::lane(cr, i);
        EXPECT_EQ(math::lane(counter, i), counterflow_effectiveness(n, c));
        EXPECT_EQ(math::lane(cross, i), crossflow_unmixed_effectiveness(n, c));
        EXPECT_EQ(math::lane(shell, i), shell_and_tube_effectiveness(n, c));
    }
}

TEST(HeatTransfer, LogMeanLiesBetweenGeometricAndArithmeticMean) {
    for (const double ratio : {0.2, 0.999, 0.99995, 1.0, 1.00005, 3.0}) {
        const double mean = log_mean_difference_k(20.0 * ratio, 20.0);
        EXPECT_GE(mean, 20.0 * std::sqrt(ratio) - 1e-7);
        EXPECT_LE(mean, 10.0 * (1.0 + ratio) + 1e-7);
    }
}

// [incropera2007] warns of errors up to 25 % in the simpler one.
TEST(HeatTransfer, TheTwoTubeFormulasAgreeWithinAQuarter) {
    for (double re = 2e4; re < 2e5; re *= 1.5)
        EXPECT_NEAR(gnielinski_nusselt(re, 4.0) / dittus_boelter_nusselt(re, 4.0), 1.0, 0.25);
}

TEST(HeatTransfer, DittusBoelterFollowsItsExponent) {
    EXPECT_NEAR(dittus_boelter_nusselt(40000.0, 4.0) / dittus_boelter_nusselt(20000.0, 4.0),
                std::pow(2.0, 0.8), 1e-12);
}

}  // namespace
}  // namespace emberpath::properties
