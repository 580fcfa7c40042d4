// Proves each protection as a story: the condition, how long it is tolerated, what follows and what clears it;
// and that the table of protections is complete.

#include "sim/controller/protections.hpp"

#include <gtest/gtest.h>

#include <functional>
#include <set>

#include "sim/controller/sequence.hpp"
#include "tests/unit/controller/bench.hpp"

namespace emberpath::controller {
namespace {

TEST(Protections, EveryEventHasExactlyOneRow) {
    std::set<Event> seen;
    for (const Protection& row : protections) EXPECT_TRUE(seen.insert(row.event).second);
    EXPECT_EQ(seen.size(), event_count - 1);
    EXPECT_FALSE(seen.contains(Event::none));
}

TEST(Protections, CombustionLockoutsWantARestartAndOthersReset) {
    const std::set<Event> combustion{Event::air_path_restricted, Event::flame_lost,
                                     Event::flame_seen_before_gas, Event::overheat_limiter_open};
    for (const Protection& row : protections)
        EXPECT_EQ(row.cleared != Cleared::by_reset, combustion.contains(row.event))
            << event_name(row.event);
}

/// A bench that has burned for half a minute.
Bench burning(double flow_lpm = 10.0) {
    Bench bench;
    bench.flow_lpm = flow_lpm;
    bench.run(30.0);
    EXPECT_EQ(bench.now().phase, Phase::run);
    return bench;
}

/// Resets that a lockout accepts are used up one after another while the condition lasts, then reset does
/// nothing more; after the repair a deliberate restart alone clears it, through a minute of purge.
void expect_cleared_by_restart_alone(Bench& bench, Event event,
                                     const std::function<void()>& repair) {
    EXPECT_EQ(bench.now().event, event);
    const auto accepted = static_cast<int>(resets_accepted(row_of(event)->cleared));
    for (int n = 0; n < accepted; ++n) {
        ASSERT_EQ(bench.now().phase, Phase::lockout);
        EXPECT_EQ(bench.now().restart_needed, 0.0);
        bench.press_reset();
        EXPECT_LT(bench.seconds_until(Phase::lockout, 90.0), 90.0) << "it comes back unrepaired";
    }
    EXPECT_EQ(bench.now().restart_needed, 1.0);
    repair();
    bench.press_reset();
    bench.run(30.0);
    EXPECT_EQ(bench.now().phase, Phase::lockout) << "reset is refused";
    EXPECT_EQ(bench.now().event, event);
    EXPECT_EQ(bench.commands.main_solenoid, 0.0);
    bench.ask_for_restart();
    EXPECT_EQ(bench.now().phase, Phase::restart);
    const double proved_s = bench.seconds_until(Phase::standby, 90.0);
    EXPECT_NEAR(proved_s, sequence::restart_purge_s, 0.15);
    EXPECT_EQ(bench.now().event, Event::none);
    bench.run(10.0);
    EXPECT_EQ(bench.now().phase, Phase::run);
}

/// Only reset clears this lockout, and only once the condition has gone.
void expect_cleared_by_reset_alone(Bench& bench, Event event, const std::function<void()>& repair) {
    EXPECT_EQ(bench.now().phase, Phase::lockout);
    EXPECT_EQ(bench.now().event, event);
    EXPECT_EQ(bench.commands.main_solenoid, 0.0);
    bench.press_reset();
    EXPECT_LT(bench.seconds_until(Phase::lockout, 60.0), 60.0) << "it comes back unrepaired";
    EXPECT_EQ(bench.now().event, event);
    repair();
    bench.run(60.0);
    EXPECT_EQ(bench.now().phase, Phase::lockout) << "repair alone does not clear it";
    bench.press_reset();
    bench.run(60.0);
    EXPECT_EQ(bench.now().phase, Phase::run);
    EXPECT_EQ(bench.now().event, Event::none);
}

TEST(SensorOutOfRange, OpenAndShortedSensorsLockOutInTheSameTickEvenAtRest) {
    struct Row {
        std::optional<double> Bench::*sensor;
        Event event;
    };
    for (const Row& row : {Row{&Bench::inlet_ohm, Event::inlet_sensor_out_of_range},
                           Row{&Bench::outlet_ohm, Event::outlet_sensor_out_of_range},
                           Row{&Bench::exchanger_ohm, Event::exchanger_sensor_out_of_range}}) {
        for (const double ohm : {1.1e6, 5.0e6, 9.0, 0.0}) {
            Bench bench;
            bench.run(1.0);
            bench.*row.sensor = ohm;
            bench.tick();
            EXPECT_EQ(bench.now().phase, Phase::lockout) << ohm;
            EXPECT_EQ(bench.now().event, row.event) << ohm;
            bench.flow_lpm = 10.0;
            expect_cleared_by_reset_alone(bench, row.event, [&] { (bench.*row.sensor).reset(); });
        }
    }
}

TEST(SensorOutOfRange, AcceptsEverythingFromTenOhmToAMegohm) {
    for (const double ohm : {11.0, 0.9e6}) {
        Bench bench;
        bench.exchanger_ohm = ohm;
        bench.run(5.0);
        EXPECT_EQ(bench.now().phase, Phase::standby) << ohm;
    }
}

TEST(OverheatLimiter, LocksOutInTheSameTick) {
    Bench bench = burning();
    bench.limiter_closed = 0.0;
    bench.tick();
    expect_cleared_by_restart_alone(bench, Event::overheat_limiter_open,
                                    [&] { bench.limiter_closed.reset(); });
}

TEST(OutletTooHot, IsToleratedForASecondAboveEightyDegrees) {
    Bench bench = burning();
    bench.outlet_c = 81.0;
    bench.run(0.9);
    EXPECT_EQ(bench.now().phase, Phase::run);
    bench.outlet_c = 79.0;
    bench.tick();
    bench.outlet_c = 81.0;
    bench.run(0.9);
    EXPECT_EQ(bench.now().phase, Phase::run) << "the second starts again";
    bench.tick();
    expect_cleared_by_reset_alone(bench, Event::outlet_too_hot, [&] { bench.outlet_c.reset(); });
}

TEST(FlameLost, IsToleratedForAQuarterSecondThenLightsAgain) {
    Bench bench = burning();
    bench.ionisation_a = 0.5e-6;
    bench.run(0.2);
    EXPECT_EQ(bench.now().phase, Phase::run);
    bench.ionisation_a.reset();
    bench.tick();
    EXPECT_EQ(bench.now().latest_event, Event::none);
    bench.ionisation_a = 0.5e-6;
    bench.run(0.3);
    EXPECT_EQ(bench.now().phase, Phase::pre_purge);
    EXPECT_EQ(bench.now().latest_event, Event::flame_lost);
    EXPECT_EQ(bench.commands.main_solenoid, 0.0);
    bench.ionisation_a.reset();
    EXPECT_LT(bench.seconds_until(Phase::run, 10.0), 4.0);
    bench.run(61.0);
    EXPECT_EQ(bench.now().failed_light_ups, 0.0);
}

/// The flame goes out for longer than is tolerated.
void lose_flame(Bench& bench) {
    bench.ionisation_a = 0.0;
    bench.run(0.3);
    bench.ionisation_a.reset();
}

TEST(FlameLost, ThreeTimesWithoutAGoodMinuteLocksOut) {
    Bench bench = burning();
    for (int i = 0; i < 3; ++i) {
        EXPECT_EQ(bench.now().phase, Phase::run) << i;
        lose_flame(bench);
        bench.run(10.0);
    }
    EXPECT_EQ(bench.now().phase, Phase::lockout);
    EXPECT_EQ(bench.now().event, Event::flame_lost);
}

TEST(FlameLost, AcceptsTwoResetsWithoutAGoodMinuteAndThenWantsARestart) {
    Bench bench = burning();
    for (int lockout = 0; lockout < 3; ++lockout) {
        for (int i = 0; i < 3; ++i) {
            lose_flame(bench);
            bench.run(10.0);
        }
        ASSERT_EQ(bench.now().phase, Phase::lockout);
        EXPECT_EQ(bench.now().restart_needed, lockout < 2 ? 0.0 : 1.0);
        bench.press_reset();
        bench.run(20.0);
        EXPECT_EQ(bench.now().phase, lockout < 2 ? Phase::run : Phase::lockout) << lockout;
    }
}

TEST(FlameLost, AGoodMinuteMakesResetsCountAfresh) {
    Bench bench = burning();
    for (int lockout = 0; lockout < 5; ++lockout) {
        for (int i = 0; i < 3; ++i) {
            lose_flame(bench);
            bench.run(10.0);
        }
        bench.press_reset();
        bench.run(70.0);
        EXPECT_EQ(bench.now().phase, Phase::run) << lockout;
    }
}

TEST(FlameLost, FlameAboveSevenTenthsOfAMicroampereHoldsAndLowerIsLost) {
    Bench bench = burning();
    bench.ionisation_a = 0.75e-6;
    bench.run(20.0);
    EXPECT_EQ(bench.now().phase, Phase::run);
    bench.ionisation_a = 0.65e-6;
    bench.run(0.5);
    EXPECT_EQ(bench.now().latest_event, Event::flame_lost);
}

TEST(NoFlameAtLightUp, IsToleratedForFourSeconds) {
    Bench bench;
    bench.probe_sees = false;
    bench.flow_lpm = 10.0;
    bench.seconds_until(Phase::light_up, 10.0);
    EXPECT_NEAR(bench.seconds_until(Phase::pre_purge, 10.0), 4.0, 0.05);
    EXPECT_EQ(bench.now().latest_event, Event::no_flame_at_light_up);
    bench.seconds_until(Phase::lockout, 30.0);
    expect_cleared_by_reset_alone(bench, Event::no_flame_at_light_up,
                                  [&] { bench.probe_sees = true; });
}

TEST(FlameSeenBeforeGas, IsToleratedForTwoSecondsAndGasStaysShut) {
    Bench bench;
    bench.ionisation_a = 2.0e-6;
    bench.flow_lpm = 10.0;
    bench.tick();
    for (int i = 0; i < 19; ++i) {
        bench.tick();
        EXPECT_EQ(bench.now().phase, Phase::pre_purge);
        EXPECT_EQ(bench.commands.main_solenoid, 0.0);
    }
    bench.tick();
    expect_cleared_by_restart_alone(bench, Event::flame_seen_before_gas,
                                    [&] { bench.ionisation_a.reset(); });
}

TEST(FanSpeedNotReached, IsToleratedForSevenSecondsOfPrePurge) {
    Bench bench;
    bench.fan_turns = false;
    bench.flow_lpm = 10.0;
    EXPECT_NEAR(bench.seconds_until(Phase::lockout, 20.0), 7.0, 0.15);
    expect_cleared_by_reset_alone(bench, Event::fan_speed_not_reached,
                                  [&] { bench.fan_turns = true; });
}

TEST(FanSpeedNotReached, IsNoticedWhileRunningToo) {
    Bench bench = burning();
    bench.fan_turns = false;
    EXPECT_LT(bench.seconds_until(Phase::lockout, 30.0), 9.0);
    EXPECT_EQ(bench.now().event, Event::fan_speed_not_reached);
}

TEST(AirPathRestricted, LocksOutWhenTheFanTrimAtItsLimitCannotMakeItGood) {
    Bench bench;
    bench.fan_loading = 0.55;
    bench.flow_lpm = 10.0;
    const double after = bench.seconds_until(Phase::lockout, 60.0);
    EXPECT_NEAR(after, 16.0, 1.0);
    expect_cleared_by_restart_alone(bench, Event::air_path_restricted,
                                    [&] { bench.fan_loading = 1.0; });
}

TEST(AirPathRestricted, IsJudgedByTheTubeWhereThereIsOneAndNotByTheCurrent) {
    Bench bench;
    bench.settings.air_by_tube = 1.0;
    bench.fan_loading = 0.55;  // of the current, which nobody asks
    bench.air_tube_pa = 200.0;
    bench.flow_lpm = 10.0;
    bench.run(60.0);
    EXPECT_EQ(bench.now().phase, Phase::run);
    bench.air_tube_pa = 0.0;
    const double after = bench.seconds_until(Phase::lockout, 60.0);
    EXPECT_NEAR(after, 16.0, 2.5);
    EXPECT_EQ(bench.now().event, Event::air_path_restricted);
}

TEST(AirPathRestricted, FollowsFiveSecondsAfterAFurtherLossOnceTheTrimIsAtItsLimit) {
    Bench bench;
    bench.fan_loading = 0.80;
    bench.flow_lpm = 10.0;
    bench.run(60.0);
    EXPECT_EQ(bench.now().phase, Phase::run);
    EXPECT_NEAR(bench.now().air_trim, 1.2, 1e-3);
    bench.fan_loading = 0.70;
    EXPECT_NEAR(bench.seconds_until(Phase::lockout, 60.0), 5.0, 0.15);
}

TEST(AirPathRestricted, ToleratesTwoSecondGusts) {
    Bench bench;
    bench.flow_lpm = 10.0;
    bench.run(30.0);
    for (int gust = 0; gust < 20; ++gust) {
        bench.fan_loading = 0.5;
        bench.run(2.0);
        bench.fan_loading = 0.95;
        bench.run(6.0);
    }
    EXPECT_EQ(bench.now().phase, Phase::run);
}

TEST(Protections, LaterRowOfTheTableWinsWhenTwoFallInOneTick) {
    Bench bench = burning();
    bench.outlet_ohm = 5.0e6;
    bench.limiter_closed = 0.0;
    bench.tick();
    EXPECT_EQ(bench.now().event, Event::overheat_limiter_open);
}

TEST(Protections, WithoutPowerNothingIsJudged) {
    Bench bench;
    bench.panel.powered = 0.0;
    bench.limiter_closed = 0.0;  // unplugged for work
    bench.run(10.0);
    EXPECT_EQ(bench.now().phase, Phase::standby);
    bench.limiter_closed.reset();
    bench.panel.powered = 1.0;
    bench.run(10.0);
    EXPECT_EQ(bench.now().phase, Phase::standby);
    EXPECT_EQ(bench.now().latest_event, Event::none);
}

TEST(Protections, FirstLockoutStandsWhateverComesAfter) {
    Bench bench = burning();
    bench.outlet_ohm = 5.0e6;
    bench.tick();
    bench.limiter_closed = 0.0;
    bench.run(10.0);
    EXPECT_EQ(bench.now().event, Event::outlet_sensor_out_of_range);
}

}  // namespace
}  // namespace emberpath::controller
