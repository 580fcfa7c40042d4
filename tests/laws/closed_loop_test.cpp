// Proves how the controlled heater behaves in time: light-up, settling from cold, flow steps, hot restarts. The
// bands are those of docs/physics/controller.md; they hold the controller to its measured quality.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

/// What the outlet does after a change.
struct Course {
    double most_k = -1e9, least_k = 1e9;  // against the set point
    double within_1k_s = 0.0;             // last time it was further away than 1 K
    double first_within_1k_s = -1.0;
};

Course follow(House& house, double seconds) {
    Course course;
    for (double t = signals::tick_s; t <= seconds; t += signals::tick_s) {
        house.run(signals::tick_s);
        const worksite::HeaterView now = house.look();
        const double off_k = now.plant.outlet_water_k - now.readout.set_point_k;
        course.most_k = std::max(course.most_k, off_k);
        course.least_k = std::min(course.least_k, off_k);
        if (std::abs(off_k) > 1.0) course.within_1k_s = t;
        if (std::abs(off_k) <= 1.0 && course.first_within_1k_s < 0.0) course.first_within_1k_s = t;
    }
    return course;
}

Course flow_step(double from_lpm, double to_lpm) {
    House house = warmed_up({"step", 50.0, from_lpm});
    house.open_taps(to_lpm);
    return follow(house, 120.0);
}

TEST(LightUp, FlameIsRecognisedWithinTwoSecondsAndModulatedWithinThree) {
    House house;
    house.run(2.0);
    house.open_taps(10.0);
    double recognised_s = 0.0, running_s = 0.0;
    for (double t = signals::tick_s; t < 10.0; t += signals::tick_s) {
        house.run(signals::tick_s);
        const controller::Phase phase = house.look().readout.phase;
        if (recognised_s == 0.0 && phase == controller::Phase::prove) recognised_s = t;
        if (running_s == 0.0 && phase == controller::Phase::run) running_s = t;
    }
    EXPECT_NEAR(recognised_s, 1.7, 0.3);
    EXPECT_NEAR(running_s, 2.4, 0.35);
}

TEST(ColdStart, IsWithinOneKelvinInSixToTwentySecondsAndOvershootsLittle) {
    for (const double set_c : {45.0, 50.0, 60.0})
        for (const double asked : {3.5, 6.0, 10.0, 16.0, 20.0}) {
            House house(false, set_c);
            house.run(2.0);
            house.open_taps(asked);
            const Course course = follow(house, 300.0);
            EXPECT_GE(course.first_within_1k_s, 6.5) << set_c << " " << asked;
            EXPECT_LE(course.first_within_1k_s, 20.0) << set_c << " " << asked;
            EXPECT_LE(course.most_k, 2.6) << set_c << " " << asked;
        }
}

TEST(ColdStart, EndsWithinATwentiethOfAKelvin) {
    for (const double asked : {3.5, 10.0, 16.0}) {
        const worksite::HeaterView now = warmed_up({"end", 50.0, asked}).look();
        EXPECT_NEAR(now.plant.outlet_water_k, 50.0 + celsius, 0.05) << asked;
    }
}

TEST(FlowStep, TenToSixOvershootsByAboutOneAndAHalf) {
    const Course course = flow_step(10.0, 6.0);
    EXPECT_NEAR(course.most_k, 1.45, 0.25);
    EXPECT_NEAR(course.within_1k_s, 7.7, 1.0);
}

TEST(FlowStep, SixToTenUndershootsByAboutTwoAndAHalf) {
    const Course course = flow_step(6.0, 10.0);
    EXPECT_NEAR(course.least_k, -2.3, 0.25);
    EXPECT_NEAR(course.within_1k_s, 5.1, 1.0);
}

TEST(FlowStep, SixteenToTenSettlesInThreeToFourSeconds) {
    const Course course = flow_step(16.0, 10.0);
    EXPECT_NEAR(course.most_k, 1.4, 0.25);
    EXPECT_NEAR(course.within_1k_s, 2.9, 1.0);
}

TEST(FlowStep, TenToThreeAndAHalfStaysAlight) {
    const Course course = flow_step(10.0, 3.5);
    EXPECT_NEAR(course.most_k, 1.6, 0.25);
    EXPECT_NEAR(course.within_1k_s, 7.1, 1.0);
}

TEST(FlowStep, PipeToTheTapSmoothsTheOvershoot) {
    House house = warmed_up({"step", 50.0, 10.0});
    house.open_taps(6.0);
    double outlet_k = 0.0, tap_k = 0.0;
    for (int i = 0; i < 600; ++i) {
        house.run(signals::tick_s);
        outlet_k = std::max(outlet_k, house.look().plant.outlet_water_k);
        tap_k = std::max(tap_k, house.look().plant.tap_water_k);
    }
    EXPECT_LT(tap_k, outlet_k - 0.3);
}

TEST(HotRestart, SendsAColdSlugAndThenOvershootsLittle) {
    for (const double pause_s : {5.0, 30.0, 100.0, 300.0}) {
        House house = warmed_up({"restart", 50.0, 10.0});
        house.open_taps(0.0);
        house.run(pause_s);
        house.open_taps(10.0);
        house.run(1.5);  // the hot water that stood in the exchanger
        const Course course = follow(house, 60.0);
        EXPECT_LT(course.least_k, -13.0) << pause_s;
        EXPECT_GT(course.least_k, -20.0) << pause_s;
        EXPECT_LT(course.most_k, 2.5) << pause_s;
        EXPECT_LT(course.within_1k_s, 12.0) << pause_s;
    }
}

/// The aim is 8 to 10 s: the integral, narrow during the first seconds, takes the last 0.7 s.
TEST(HotRestart, SettlesInElevenSeconds) {
    House house = warmed_up({"restart", 50.0, 10.0});
    house.open_taps(0.0);
    house.run(30.0);
    house.open_taps(10.0);
    const double settled_s = follow(house, 60.0).within_1k_s;
    EXPECT_NEAR(settled_s, 10.7, 0.3);
}

TEST(SmallestDraw, BurnsSteadilyOnOneBank) {
    House house(false, 38.0);
    house.run(2.0);
    house.open_taps(2.6);
    house.run(300.0);
    const Course course = follow(house, 60.0);
    EXPECT_LT(course.most_k - course.least_k, 0.2);
    EXPECT_EQ(house.look().readout.banks_open, 1.0);
}

TEST(LoopCorrection, StaysSmallOnASoundHeaterInMiddleDraws) {
    for (const double asked : {3.5, 10.0, 16.0}) {
        const double correction =
            warmed_up({"sound", 50.0, asked}).look().readout.loop_correction_k;
        EXPECT_LE(std::abs(correction), 0.75) << asked;
    }
}

TEST(PowerLoss, EndsTheFlameAtOnceAndTheDrawGoesOnAfterwards) {
    House house = warmed_up({"power", 50.0, 10.0});
    house.inputs.surroundings.power_on = 0.0;
    house.run(0.3);
    EXPECT_EQ(house.look().plant.flame_lit, 0.0);
    EXPECT_EQ(house.look().readout.phase, controller::Phase::standby);
    house.run(30.0);
    house.inputs.surroundings.power_on = 1.0;
    house.run(60.0);
    EXPECT_EQ(house.look().readout.phase, controller::Phase::run);
    EXPECT_EQ(house.look().readout.latest_event, controller::Event::none);
}

}  // namespace
}  // namespace emberpath::laws
