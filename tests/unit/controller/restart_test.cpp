// Proves the deliberate restart as stories: what it proves while it purges, what ends it, that the first run
// after it has no second chances, and that neither reset nor mains nor switch is a way round it.

#include <gtest/gtest.h>

#include "sim/controller/sequence.hpp"
#include "tests/unit/controller/bench.hpp"

namespace emberpath::controller {
namespace {

/// Locked out by an open limiter that has closed again since.
Bench locked_out() {
    Bench bench;
    bench.flow_lpm = 10.0;
    bench.run(30.0);
    bench.limiter_closed = 0.0;
    bench.tick();
    bench.limiter_closed.reset();
    bench.run(20.0);
    EXPECT_EQ(bench.now().phase, Phase::lockout);
    EXPECT_EQ(bench.now().restart_needed, 1.0);
    return bench;
}

TEST(DeliberateRestart, PurgesForAMinuteWithTheGasShut) {
    Bench bench = locked_out();
    bench.ask_for_restart();
    for (int i = 0; i < 590; ++i) {
        bench.tick();
        ASSERT_EQ(bench.now().phase, Phase::restart) << i;
        ASSERT_EQ(bench.commands.main_solenoid, 0.0);
        ASSERT_EQ(bench.commands.spark, 0.0);
    }
    EXPECT_DOUBLE_EQ(bench.now().fan_target_rev_per_s, sequence::purge_rev_per_s);
    EXPECT_LT(bench.seconds_until(Phase::standby, 5.0), 5.0);
}

TEST(DeliberateRestart, WithoutFanLocksOutAfterSevenSeconds) {
    Bench bench = locked_out();
    bench.fan_turns = false;
    bench.ask_for_restart();
    EXPECT_NEAR(bench.seconds_until(Phase::lockout, 30.0), 7.0, 0.2);
    EXPECT_EQ(bench.now().event, Event::fan_speed_not_reached);
}

TEST(DeliberateRestart, WithAFlameStillSeenLocksOutAfterTwoSeconds) {
    Bench bench = locked_out();
    bench.ionisation_a = 2.0e-6;
    bench.ask_for_restart();
    EXPECT_NEAR(bench.seconds_until(Phase::lockout, 30.0), 2.0, 0.2);
    EXPECT_EQ(bench.now().event, Event::flame_seen_before_gas);
}

TEST(DeliberateRestart, WithTooLittleAirLocksOutOnceTheFanHasSettled) {
    Bench bench = locked_out();
    bench.fan_loading = 0.6;
    bench.ask_for_restart();
    EXPECT_NEAR(bench.seconds_until(Phase::lockout, 60.0), 15.0, 0.2);
    EXPECT_EQ(bench.now().event, Event::air_path_restricted);
    EXPECT_EQ(bench.now().restart_needed, 1.0) << "the proof is still owed, whatever ended it";
}

TEST(DeliberateRestart, ThatFailedOpensNoWayRoundItsProof) {
    Bench bench = locked_out();
    bench.fan_turns = false;
    bench.ask_for_restart();
    bench.run(10.0);
    ASSERT_EQ(bench.now().event, Event::fan_speed_not_reached) << "which alone a reset would clear";
    bench.fan_turns = true;
    bench.press_reset();
    bench.run(5.0);
    EXPECT_EQ(bench.now().phase, Phase::lockout);
    bench.ask_for_restart();
    bench.run(80.0);
    EXPECT_EQ(bench.now().phase, Phase::run);
    EXPECT_EQ(bench.now().restart_needed, 0.0);
}

TEST(DeliberateRestart, ToleratesAFlickerOfFlameCurrent) {
    Bench bench = locked_out();
    bench.ask_for_restart();
    bench.run(30.0);
    bench.ionisation_a = 2.0e-6;
    bench.tick();
    bench.ionisation_a.reset();
    bench.run(25.0);
    EXPECT_EQ(bench.now().phase, Phase::restart);
}

TEST(DeliberateRestart, WithTheLimiterStillOpenEndsAtOnce) {
    Bench bench = locked_out();
    bench.limiter_closed = 0.0;
    bench.ask_for_restart();
    bench.tick();
    EXPECT_EQ(bench.now().phase, Phase::lockout);
    EXPECT_EQ(bench.now().event, Event::overheat_limiter_open);
}

TEST(DeliberateRestart, InterruptedByTheMainsHasNotHappened) {
    Bench bench = locked_out();
    bench.ask_for_restart();
    bench.run(30.0);
    bench.panel.powered = 0.0;
    bench.run(5.0);
    bench.panel.powered = 1.0;
    bench.run(60.0);
    EXPECT_EQ(bench.now().phase, Phase::lockout);
    EXPECT_EQ(bench.now().event, Event::overheat_limiter_open);
    EXPECT_EQ(bench.now().restart_needed, 1.0);
}

TEST(DeliberateRestart, IsNotBegunByResetSwitchOrMains) {
    Bench bench = locked_out();
    bench.press_reset();
    bench.panel.switched_on = 0.0;
    bench.run(5.0);
    bench.panel.switched_on = 1.0;
    bench.panel.powered = 0.0;
    bench.run(5.0);
    bench.panel.powered = 1.0;
    bench.press_reset();
    bench.run(60.0);
    EXPECT_EQ(bench.now().phase, Phase::lockout);
}

TEST(DeliberateRestart, AskedForWithoutALockoutDoesNothing) {
    Bench bench;
    bench.flow_lpm = 10.0;
    bench.run(30.0);
    bench.ask_for_restart();
    EXPECT_EQ(bench.now().phase, Phase::run);
}

TEST(DeliberateRestart, FirstRunAfterItHasNoSecondChance) {
    Bench bench = locked_out();
    bench.ask_for_restart();
    bench.run(80.0);
    ASSERT_EQ(bench.now().phase, Phase::run);
    bench.ionisation_a = 0.0;
    bench.run(0.4);
    EXPECT_EQ(bench.now().phase, Phase::lockout);
    EXPECT_EQ(bench.now().event, Event::flame_lost);
}

TEST(DeliberateRestart, AfterAGoodMinuteRetriesAreAllowedAgain) {
    Bench bench = locked_out();
    bench.ask_for_restart();
    bench.run(150.0);
    ASSERT_EQ(bench.now().phase, Phase::run);
    bench.ionisation_a = 0.0;
    bench.run(0.4);
    EXPECT_EQ(bench.now().phase, Phase::pre_purge);
}

TEST(DeliberateRestart, ShowsItsOwnWordWhileItIsProved) {
    Bench bench = locked_out();
    EXPECT_EQ(display_word(bench.now(), bench.panel), "OVER");
    bench.ask_for_restart();
    EXPECT_EQ(display_word(bench.now(), bench.panel), "WAKE");
}

}  // namespace
}  // namespace emberpath::controller
