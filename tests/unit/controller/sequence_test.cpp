// Proves the burner sequence as stories in time: what starts it, how long each phase lasts, what ends it, what
// a failed light-up leads to, and what mains, switch and reset do.

#include "sim/controller/sequence.hpp"

#include <gmock/gmock.h>

#include "tests/unit/controller/bench.hpp"

namespace emberpath::controller {
namespace {

using testing::ElementsAre;

TEST(BurnerSequence, StartsAtTwoAndAHalfLitresPerMinuteAndNotBelow) {
    Bench bench;
    bench.flow_lpm = 2.45;
    bench.run(30.0);
    EXPECT_EQ(bench.now().phase, Phase::standby);
    bench.flow_lpm = 2.55;
    bench.tick();
    EXPECT_EQ(bench.now().phase, Phase::pre_purge);
}

TEST(BurnerSequence, KeepsRunningDownToTwoLitresPerMinute) {
    Bench bench;
    bench.flow_lpm = 4.0;
    bench.run(20.0);
    bench.flow_lpm = 2.05;
    bench.run(20.0);
    EXPECT_EQ(bench.now().phase, Phase::run);
    bench.flow_lpm = 1.95;
    bench.tick();
    EXPECT_EQ(bench.now().phase, Phase::post_purge);
}

TEST(BurnerSequence, GoesThroughEveryPhaseInOrderAndBackToStandby) {
    Bench bench;
    bench.flow_lpm = 8.0;
    bench.run(30.0);
    bench.flow_lpm = 0.0;
    bench.run(30.0);
    EXPECT_THAT(bench.phases(), ElementsAre(Phase::pre_purge, Phase::light_up, Phase::prove,
                                            Phase::run, Phase::post_purge, Phase::standby));
}

TEST(BurnerSequence, RecognisesTheFlameWithinTwoSecondsAndModulatesWithinTwoAndAHalf) {
    Bench bench;
    bench.flow_lpm = 8.0;
    const double recognised = bench.seconds_until(Phase::prove, 10.0);
    EXPECT_GE(recognised, 1.2);
    EXPECT_LE(recognised, 2.0);
    EXPECT_LE(recognised + bench.seconds_until(Phase::run, 10.0), 2.5);
}

TEST(BurnerSequence, PurgesAtLeastEightTenthsOfASecondAtPurgeSpeed) {
    Bench bench;
    bench.flow_lpm = 8.0;
    bench.tick();
    EXPECT_DOUBLE_EQ(bench.now().fan_target_rev_per_s, sequence::purge_rev_per_s);
    EXPECT_GE(bench.seconds_until(Phase::light_up, 10.0), sequence::least_purge_s - 1e-9);
}

TEST(BurnerSequence, WaitsInPrePurgeUntilTheFanIsFast) {
    Bench bench;
    bench.fan_turns = false;
    bench.flow_lpm = 8.0;
    bench.run(5.0);
    EXPECT_EQ(bench.now().phase, Phase::pre_purge);
    bench.fan_turns = true;
    EXPECT_LT(bench.seconds_until(Phase::light_up, 3.0), 1.5);
}

TEST(BurnerSequence, LightsTheFirstBankAloneAtLowPressureWithSpark) {
    Bench bench;
    bench.lights = false;
    bench.flow_lpm = 16.0;
    bench.seconds_until(Phase::light_up, 10.0);
    EXPECT_EQ(bench.commands.spark, 1.0);
    EXPECT_EQ(bench.commands.main_solenoid, 1.0);
    EXPECT_EQ(bench.commands.bank_solenoid[0], 1.0);
    EXPECT_EQ(bench.commands.bank_solenoid[1] + bench.commands.bank_solenoid[2], 0.0);
    EXPECT_NEAR(bench.commands.manifold_pressure_pa, 360.0, 1e-9);
    EXPECT_DOUBLE_EQ(bench.now().fan_target_rev_per_s, 1950.0 / 60.0);
}

TEST(BurnerSequence, ProvesTheFlameWithoutSpark) {
    Bench bench;
    bench.flow_lpm = 8.0;
    bench.seconds_until(Phase::prove, 10.0);
    EXPECT_EQ(bench.commands.spark, 0.0);
    EXPECT_EQ(bench.commands.main_solenoid, 1.0);
    EXPECT_NEAR(bench.seconds_until(Phase::run, 10.0), sequence::prove_s, 1e-9);
}

TEST(BurnerSequence, LocksOutAfterTheThirdFailedLightUp) {
    Bench bench;
    bench.lights = false;
    bench.flow_lpm = 8.0;
    bench.run(10.0);
    EXPECT_EQ(bench.now().failed_light_ups, 1.0 + 1.0);
    EXPECT_NE(bench.now().phase, Phase::lockout);
    bench.seconds_until(Phase::lockout, 30.0);
    EXPECT_EQ(bench.now().failed_light_ups, 3.0);
    EXPECT_EQ(bench.now().event, Event::no_flame_at_light_up);
    EXPECT_THAT(bench.phases(),
                ElementsAre(Phase::pre_purge, Phase::light_up, Phase::pre_purge, Phase::light_up,
                            Phase::pre_purge, Phase::light_up, Phase::lockout));
    EXPECT_EQ(bench.commands.main_solenoid, 0.0);
}

TEST(BurnerSequence, LightsAtTheSecondAttemptAndForgetsTheFailureAfterAMinuteOfRunning) {
    Bench bench;
    bench.lights = false;
    bench.flow_lpm = 8.0;
    bench.run(6.0);
    bench.lights = true;
    bench.seconds_until(Phase::run, 10.0);
    EXPECT_EQ(bench.now().failed_light_ups, 1.0);
    bench.run(59.0);
    EXPECT_EQ(bench.now().failed_light_ups, 1.0);
    bench.run(2.0);
    EXPECT_EQ(bench.now().failed_light_ups, 0.0);
    EXPECT_EQ(bench.now().latest_event, Event::no_flame_at_light_up);
}

TEST(BurnerSequence, RunsOnForEightSecondsAfterTheTapCloses) {
    Bench bench;
    bench.flow_lpm = 8.0;
    bench.run(20.0);
    bench.flow_lpm = 0.0;
    bench.tick();
    EXPECT_EQ(bench.commands.main_solenoid, 0.0);
    EXPECT_DOUBLE_EQ(bench.now().fan_target_rev_per_s, 50.0);
    EXPECT_NEAR(bench.seconds_until(Phase::standby, 20.0), 8.0, 0.05);
    EXPECT_EQ(bench.commands.fan_duty, 0.0);
}

TEST(BurnerSequence, LightsAgainWhenTheTapOpensDuringPostPurge) {
    Bench bench;
    bench.flow_lpm = 8.0;
    bench.run(20.0);
    bench.flow_lpm = 0.0;
    bench.run(3.0);
    EXPECT_EQ(bench.now().phase, Phase::post_purge);
    bench.flow_lpm = 8.0;
    bench.tick();
    EXPECT_EQ(bench.now().phase, Phase::pre_purge);
    EXPECT_LT(bench.seconds_until(Phase::run, 10.0), 3.0);
}

TEST(BurnerSequence, ClosedTapEndsALightUpWithoutCountingAFailure) {
    Bench bench;
    bench.lights = false;
    bench.flow_lpm = 8.0;
    bench.run(3.0);
    bench.flow_lpm = 0.0;
    bench.tick();
    EXPECT_EQ(bench.now().phase, Phase::post_purge);
    EXPECT_EQ(bench.now().failed_light_ups, 0.0);
}

TEST(BurnerSequence, SwitchingOffClosesTheGasAndVentsFirst) {
    Bench bench;
    bench.flow_lpm = 8.0;
    bench.run(20.0);
    bench.panel.switched_on = 0.0;
    bench.tick();
    EXPECT_EQ(bench.now().phase, Phase::post_purge);
    EXPECT_EQ(bench.commands.main_solenoid, 0.0);
    bench.run(60.0);
    EXPECT_EQ(bench.now().phase, Phase::standby);
}

TEST(BurnerSequence, LosingPowerDropsFlameAndSequenceAtOnce) {
    Bench bench;
    bench.flow_lpm = 8.0;
    bench.run(20.0);
    bench.panel.powered = 0.0;
    bench.tick();
    EXPECT_EQ(bench.now().phase, Phase::standby);
    EXPECT_EQ(bench.commands.main_solenoid, 0.0);
    EXPECT_EQ(bench.commands.fan_duty, 0.0);
    bench.run(5.0);
    EXPECT_EQ(bench.now().phase, Phase::standby);
    bench.panel.powered = 1.0;
    EXPECT_LT(bench.seconds_until(Phase::run, 10.0), 4.0);
}

TEST(BurnerSequence, PowerLossForgetsFailuresAndPastEventsButNotALockout) {
    Bench bench;
    bench.lights = false;
    bench.flow_lpm = 8.0;
    bench.run(6.0);
    EXPECT_EQ(bench.now().latest_event, Event::no_flame_at_light_up);
    bench.panel.powered = 0.0;
    bench.tick();
    EXPECT_EQ(bench.now().failed_light_ups, 0.0);
    EXPECT_EQ(bench.now().latest_event, Event::none);
    bench.panel.powered = 1.0;
    bench.seconds_until(Phase::lockout, 30.0);
    bench.panel.powered = 0.0;
    bench.run(60.0);
    EXPECT_EQ(bench.now().phase, Phase::lockout);
    EXPECT_EQ(bench.now().event, Event::no_flame_at_light_up);
    EXPECT_EQ(bench.now().latest_event, Event::no_flame_at_light_up);
    bench.press_reset();
    EXPECT_EQ(bench.now().phase, Phase::lockout) << "reset needs power";
    bench.panel.powered = 1.0;
    bench.tick();
    EXPECT_EQ(bench.now().phase, Phase::lockout);
}

TEST(BurnerSequence, ResetClearsALockoutAndTriesAgain) {
    Bench bench;
    bench.lights = false;
    bench.flow_lpm = 8.0;
    bench.seconds_until(Phase::lockout, 30.0);
    bench.lights = true;
    bench.run(300.0);
    EXPECT_EQ(bench.now().phase, Phase::lockout) << "time alone clears nothing";
    bench.press_reset();
    EXPECT_EQ(bench.now().event, Event::none);
    EXPECT_EQ(bench.now().failed_light_ups, 0.0);
    EXPECT_LT(bench.seconds_until(Phase::run, 10.0), 4.0);
}

TEST(BurnerSequence, ResetDoesNothingOutsideALockout) {
    Bench bench, untouched;
    for (Bench* one : {&bench, &untouched}) {
        one->flow_lpm = 8.0;
        one->run(1.5);
    }
    bench.press_reset();
    untouched.tick();
    EXPECT_EQ(bench.now().phase, untouched.now().phase);
    bench.run(30.0);
    bench.press_reset();
    EXPECT_EQ(bench.now().phase, Phase::run);
}

TEST(BurnerSequence, VentsForEightSecondsInLockoutThenRests) {
    Bench bench;
    bench.flow_lpm = 8.0;
    bench.run(20.0);
    bench.limiter_closed = 0.0;
    bench.tick();
    EXPECT_EQ(bench.now().phase, Phase::lockout);
    EXPECT_GT(bench.commands.fan_duty, 0.0);
    bench.run(8.1);
    EXPECT_EQ(bench.commands.fan_duty, 0.0);
}

}  // namespace
}  // namespace emberpath::controller
