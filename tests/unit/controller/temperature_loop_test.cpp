// Proves the temperature loop: feed-forward, the integral and its gates, bank changes with hysteresis and hold,
// gas following proven air, water throttling, bypass.

#include "sim/controller/temperature_loop.hpp"

#include <gtest/gtest.h>

#include "tests/unit/controller/bench.hpp"

namespace emberpath::controller {
namespace {

/// Firing rate [W] that gives a draw its rise at the loop's assumed efficiency.
double heat_for(double lpm, double rise_k) {
    return lpm * litre_per_minute * loop::water_j_per_m3_k * rise_k / loop::efficiency;
}

TEST(TemperatureLoop, ReachesTheSetPointAndStaysWithoutCorrection) {
    for (const double lpm : {3.5, 6.0, 10.0, 13.0}) {
        Bench bench;
        bench.flow_lpm = lpm;
        bench.run_until_steady();
        EXPECT_NEAR(bench.outlet_true_c(), 50.0, 0.05) << lpm;
        EXPECT_NEAR(bench.now().loop_correction_k, 0.0, 0.1) << lpm;
        EXPECT_NEAR(bench.now().heat_demand_w, heat_for(lpm, 36.0), 100.0) << lpm;
    }
}

TEST(TemperatureLoop, IntegralMakesGoodWhatFeedForwardGetsWrong) {
    Bench bench;
    bench.heat_given = 0.9;
    bench.flow_lpm = 8.0;
    bench.run_until_steady();
    EXPECT_NEAR(bench.outlet_true_c(), 50.0, 0.05);
    EXPECT_NEAR(bench.now().loop_correction_k, 36.0 / 0.9 - 36.0, 0.1);
}

TEST(TemperatureLoop, IntegralIsLimitedToTenKelvin) {
    Bench low;
    low.heat_given = 0.5;
    low.flow_lpm = 5.0;
    low.run(600.0);
    EXPECT_DOUBLE_EQ(low.now().loop_correction_k, loop::integral_limit_k);
    Bench high;
    high.heat_given = 1.6;
    high.flow_lpm = 8.0;
    high.run(600.0);
    EXPECT_DOUBLE_EQ(high.now().loop_correction_k, -loop::integral_limit_k);
}

TEST(TemperatureLoop, IntegralWaitsWhileAColdHeaterWarmsUp) {
    Bench bench;
    bench.flow_lpm = 8.0;
    bench.outlet_c = 20.0;  // far below the set point
    bench.run(15.0);
    EXPECT_DOUBLE_EQ(bench.now().loop_correction_k, 0.0);
    bench.outlet_c = 47.0;  // within the band
    bench.run(1.0);
    EXPECT_GT(bench.now().loop_correction_k, 0.0);
}

TEST(TemperatureLoop, IntegralStopsWhenTheBurnerCanGiveNoMore) {
    Bench bench;
    bench.flow_lpm = 16.0;
    bench.heat_given = 0.8;
    bench.run(600.0);
    const Readout now = bench.now();
    EXPECT_DOUBLE_EQ(now.heat_demand_w, bench.settings.full_heat_input_w);
    EXPECT_LT(now.loop_correction_k, 1.0);
}

TEST(TemperatureLoop, SetPointIsHeldWithinTheSettings) {
    Bench bench;
    bench.panel.set_point_k = 99.0 + celsius;
    bench.tick();
    EXPECT_DOUBLE_EQ(bench.now().set_point_k, bench.settings.maximum_set_k);
    bench.panel.set_point_k = 5.0 + celsius;
    bench.tick();
    EXPECT_DOUBLE_EQ(bench.now().set_point_k, bench.settings.minimum_set_k);
}

/// Flow [L/min] at which feed-forward asks for a firing rate at a rise of 36 K.
double flow_for(double kilowatt) {
    return kilowatt * 1.0e3 / heat_for(1.0, 36.0);
}

TEST(Banks, ChangeUpAndDownWithHysteresis) {
    struct Row {
        double kilowatt, banks;
    };
    Bench bench;
    bench.outlet_c = 50.0;  // no error: the rate is what flow and rise call for
    for (const Row& row : {Row{9.5, 1},
                           {10.3, 2},
                           {8.6, 2},
                           {7.8, 1},
                           {10.3, 2},
                           {21.2, 2},
                           {22.4, 3},
                           {16.2, 3},
                           {15.0, 2},
                           {7.8, 1}}) {
        bench.flow_lpm = flow_for(row.kilowatt);
        bench.run(60.0);
        EXPECT_EQ(bench.now().banks_open, row.banks) << row.kilowatt << " kW";
    }
}

TEST(Banks, OpenTheSecondAtOnceAndTheThirdAfterAHoldOfOneAndAHalfSeconds) {
    Bench bench;
    bench.flow_lpm = 14.0;
    bench.seconds_until(Phase::run, 10.0);
    EXPECT_EQ(bench.now().banks_open, 2.0);
    bench.run(1.4);
    EXPECT_EQ(bench.now().banks_open, 2.0);
    bench.run(0.1);
    EXPECT_EQ(bench.now().banks_open, 3.0);
}

TEST(Banks, CloseWithoutHold) {
    Bench bench;
    bench.flow_lpm = 14.0;
    bench.run_until_steady();
    bench.flow_lpm = 2.2;
    bench.run(0.2);
    EXPECT_EQ(bench.now().banks_open, 1.0);
}

TEST(FanTarget, FollowsTheFiringRateWithTheFactorOfTheStage) {
    struct Row {
        double kilowatt, factor;
    };
    for (const Row& row : {Row{8.0, 2.40}, {13.0, 1.41}, {30.0, 1.0}}) {
        Bench bench;
        bench.flow_lpm = flow_for(row.kilowatt);
        bench.run_until_steady();
        EXPECT_NEAR(bench.now().fan_target_rev_per_s, 80.0 * row.kilowatt / 41.5 * row.factor, 0.3)
            << row.kilowatt;
        EXPECT_NEAR(bench.now().fan_rev_per_s, bench.now().fan_target_rev_per_s, 0.5);
    }
}

TEST(FanTarget, LimitsTheRateToThePresentStageFirst) {
    Bench bench;
    bench.flow_lpm = 16.0;
    bench.seconds_until(Phase::run, 10.0);
    EXPECT_LE(bench.now().fan_target_rev_per_s, 80.0 * 0.55 * 1.41 + 1e-9)
        << "two banks are never given the air of three";
}

TEST(GasFollowsAir, RateIsCappedByWhatTheMeasuredSpeedSupports) {
    Bench bench;
    bench.flow_lpm = 13.0;
    bench.run_until_steady();
    bench.fan_turns = false;  // coasts down
    for (int i = 0; i < 20; ++i) {
        bench.tick();
        if (bench.now().phase != Phase::run) break;
        const double supported = 1.12 * bench.now().fan_rev_per_s / 80.0 * 41.5e3;
        const double least = 41.5e3 * std::sqrt(loop::least_manifold_share);
        EXPECT_LE(bench.now().heat_demand_w, std::max(supported, least) + 1e-6);
    }
    EXPECT_LT(bench.now().heat_demand_w, 15.0e3);
}

TEST(GasFollowsAir, ManifoldPressureGoesWithTheSquareOfTheRate) {
    Bench bench;
    bench.flow_lpm = 10.0;
    bench.run_until_steady();
    const double relative = bench.now().heat_demand_w / bench.settings.full_heat_input_w;
    EXPECT_NEAR(bench.commands.manifold_pressure_pa, 950.0 * relative * relative, 1e-9);
}

TEST(WaterValve, StaysOpenUntilDemandPassesWhatTheBurnerCanGive) {
    Bench bench;
    bench.flow_lpm = flow_for(0.97 * 41.5);
    bench.run_until_steady();
    EXPECT_DOUBLE_EQ(bench.commands.water_valve, 1.0);
    bench.flow_lpm = flow_for(1.05 * 41.5);
    bench.run(5.0);
    EXPECT_LT(bench.commands.water_valve, 0.9);
    bench.flow_lpm = flow_for(0.8 * 41.5);
    bench.run(60.0);
    EXPECT_DOUBLE_EQ(bench.commands.water_valve, 1.0);
}

TEST(WaterValve, DoesNotAnswerToColdOutletWaterAlone) {
    Bench bench;
    bench.heat_given = 0.7;  // a weak gas supply
    bench.flow_lpm = flow_for(0.9 * 41.5);
    bench.run_until_steady();
    EXPECT_DOUBLE_EQ(bench.commands.water_valve, 1.0);
    EXPECT_LT(bench.outlet_true_c(), 45.0);
}

TEST(Bypass, OpensWithTheDistanceOfTheSetPointBelowSixty) {
    for (const double set_c : {40.0, 50.0, 60.0}) {
        Bench bench;
        bench.panel.set_point_k = set_c + celsius;
        bench.tick();
        EXPECT_NEAR(bench.commands.bypass, 0.02 * (60.0 - set_c), 1e-12);
        bench.flow_lpm = 6.0;
        bench.run_until_steady();
        EXPECT_NEAR(bench.commands.bypass, 0.02 * (60.0 - set_c), 1e-3);
    }
}

TEST(Bypass, StaysShutAtSetPointsAboveSixty) {
    Bench bench;
    bench.settings.maximum_set_k = 75.0 + celsius;
    bench.panel.set_point_k = 72.0 + celsius;
    bench.tick();
    ASSERT_NEAR(bench.now().set_point_k, 72.0 + celsius, 1e-9);
    EXPECT_EQ(bench.commands.bypass, 0.0);
    bench.flow_lpm = 4.0;
    bench.run(20.0);
    EXPECT_GE(bench.commands.bypass, 0.0);
}

TEST(Bypass, OpensFurtherOnOvershoot) {
    Bench bench;
    bench.flow_lpm = 6.0;
    bench.run_until_steady();
    bench.outlet_c = 53.0;
    bench.tick();
    EXPECT_GT(bench.commands.bypass, 0.4);
    EXPECT_LE(bench.commands.bypass, 1.0);
}

TEST(AirTrim, MakesGoodALowEstimateWithALagOfFourSeconds) {
    Bench bench;
    bench.flow_lpm = 10.0;
    bench.run_until_steady();
    EXPECT_NEAR(bench.now().air_trim, 1.0, 1e-9);
    bench.fan_loading = 1.0 / 1.1;
    bench.run(4.0);
    EXPECT_NEAR(bench.now().air_trim, 1.0 + 0.1 * (1.0 - std::exp(-1.0)), 0.003);
    bench.run_until_steady();
    EXPECT_NEAR(bench.now().air_trim, 1.1, 1e-3);
}

TEST(AirTrim, NeverSlowsTheFanBelowItsPlainTarget) {
    Bench bench;
    bench.fan_loading = 1.3;
    bench.flow_lpm = 10.0;
    bench.run_until_steady();
    EXPECT_DOUBLE_EQ(bench.now().air_trim, 1.0);
}

}  // namespace
}  // namespace emberpath::controller
