// Proves that each sound is heard when it should be, at the pitch it should have, and silence otherwise.
#include "ui/kit/synth.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace emberpath::kit {
namespace {

std::vector<std::int16_t> second_of(Synth& synth) {
    std::vector<std::int16_t> samples(Synth::rate_hz);
    synth.fill(samples);
    return samples;
}

double loudness(const std::vector<std::int16_t>& samples) {
    double sum = 0.0;
    for (const auto s : samples) sum += static_cast<double>(s) * s;
    return std::sqrt(sum / static_cast<double>(samples.size()));
}

/// Strength of one frequency: Goertzel's sum, in plain form.
double strength_at(const std::vector<std::int16_t>& samples, double hz) {
    double re = 0.0, im = 0.0;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const double angle = 2.0 * 3.14159265358979 * hz * static_cast<double>(i) / Synth::rate_hz;
        re += samples[i] * std::cos(angle);
        im += samples[i] * std::sin(angle);
    }
    return std::sqrt(re * re + im * im) / static_cast<double>(samples.size());
}

TEST(Synth, IsSilentWhenNothingSounds) {
    Synth synth;
    EXPECT_EQ(loudness(second_of(synth)), 0.0);
}

TEST(Synth, GivesTheFanItsPitch) {
    Synth synth;
    synth.hear({.fan_rev_per_s = 40.0});
    (void)second_of(synth);
    const auto samples = second_of(synth);
    const double tone = strength_at(samples, 40.0 * Synth::blades);
    EXPECT_GT(tone, 8.0 * strength_at(samples, 55.0 * Synth::blades));
}

TEST(Synth, FallsSilentWhenTheFanStops) {
    Synth synth;
    synth.hear({.fan_rev_per_s = 40.0});
    (void)second_of(synth);
    synth.hear({});
    (void)second_of(synth);
    EXPECT_LT(loudness(second_of(synth)), 5.0);
}

TEST(Synth, RoarsLouderWithMoreFlame) {
    Synth small, large;
    small.hear({.flame_share = 0.2});
    large.hear({.flame_share = 1.0});
    (void)second_of(small);
    (void)second_of(large);
    EXPECT_GT(loudness(second_of(large)), 3.0 * loudness(second_of(small)));
}

TEST(Synth, SparksInNineClicksASecond) {
    Synth synth;
    synth.hear({.spark = true});
    const auto samples = second_of(synth);
    int clicks = 0;
    std::size_t quiet = 1000;
    for (const auto s : samples) {
        if (s != 0 && quiet > 500) ++clicks;
        quiet = s == 0 ? quiet + 1 : 0;
    }
    EXPECT_NEAR(clicks, 9, 1);
}

TEST(Synth, SoundsTheAlarmAboveTheRoar) {
    Synth synth;
    synth.hear({.flame_share = 1.0, .alarm = true});
    (void)second_of(synth);
    const auto samples = second_of(synth);
    EXPECT_GT(strength_at(samples, 2900.0), 10.0 * strength_at(samples, 2500.0));
}

TEST(Synth, NeverLeavesTheRange) {
    Synth synth;
    synth.hear({100.0, true, 1.0, true});
    for (int i = 0; i < 3; ++i)
        for (const auto s : second_of(synth)) ASSERT_LE(std::abs(static_cast<int>(s)), 30000);
}

}  // namespace
}  // namespace emberpath::kit
