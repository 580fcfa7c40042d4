#include "ui/kit/synth.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace emberpath::kit {

namespace {

constexpr double two_pi = 2.0 * std::numbers::pi;
constexpr double slide = 1.0 / 1500.0;  // of what is missing, each sample
constexpr unsigned spark_every = Synth::rate_hz / 9, spark_length = Synth::rate_hz / 400;
constexpr unsigned alarm_every = Synth::rate_hz / 2, alarm_length = Synth::rate_hz / 4;
constexpr double alarm_hz = 2900.0;

void turn(double& phase, double hz) {
    phase += hz / Synth::rate_hz;
    phase -= std::floor(phase);
}

}  // namespace

/// White, -1 to 1: a linear congruential generator (Numerical Recipes' constants, from memory).
double Synth::noise() {
    noise_ = noise_ * 1664525U + 1013904223U;
    return static_cast<double>(noise_ >> 8U) / static_cast<double>(1U << 23U) - 1.0;
}

double Synth::next() {
    const bool turns = wanted_.fan_rev_per_s > 1.0;
    if (turns) fan_hz_ += (wanted_.fan_rev_per_s * blades - fan_hz_) * slide * 4.0;
    fan_loud_ += ((turns ? 0.10 : 0.0) - fan_loud_) * slide;
    roar_loud_ += (0.22 * std::clamp(wanted_.flame_share, 0.0, 1.0) - roar_loud_) * slide;
    alarm_loud_ = wanted_.alarm ? 0.25 : 0.0;
    turn(fan_phase_, fan_hz_);
    turn(alarm_phase_, alarm_hz);
    const double hiss = noise();
    roar_ += (hiss - roar_) * 0.06;
    double level = fan_loud_ * (0.8 * std::sin(two_pi * fan_phase_) +
                                0.3 * std::sin(2.0 * two_pi * fan_phase_) + 0.12 * hiss);
    level += roar_loud_ * 3.0 * roar_;
    if (wanted_.spark && sample_ % spark_every < spark_length) level += 0.5 * hiss;
    if (sample_ % alarm_every < alarm_length)
        level += alarm_loud_ * std::sin(two_pi * alarm_phase_);
    ++sample_;
    return level;
}

void Synth::fill(std::span<std::int16_t> samples) {
    constexpr double full = 30000.0, inaudible = 1.0e-4;
    for (std::int16_t& sample : samples) {
        const double level = next();
        const double kept = std::abs(level) < inaudible ? 0.0 : std::clamp(level, -1.0, 1.0);
        sample = static_cast<std::int16_t>(std::lround(full * kept));
    }
}

}  // namespace emberpath::kit
