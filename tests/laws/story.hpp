#pragma once
/// Ten minutes in which a heater and seven faulty ones live through every kind of event, and the hash of all
/// their states at every tick. One source for one heater at a time and for a pack of eight.

#include <array>
#include <cstdint>

#include "sim/math/hash.hpp"
#include "sim/math/pack.hpp"
#include "sim/worksite/heater.hpp"

namespace emberpath::laws {

inline constexpr std::size_t story_lanes = 8;
inline constexpr int story_ticks = 6000;
using Parameters8 = std::array<plant::PlantParameters, story_lanes>;
using Hashes = std::array<std::uint64_t, story_lanes>;

/// Sound, and with blocked flue, gusts, narrow pipe, fouled electrode, choked injector, soot, worn fan.
inline Parameters8 natural_gas_lanes() {
    Parameters8 lanes;
    lanes.fill(plant::natural_gas_parameters());
    lanes[1].flue_resistance *= 4.16;
    lanes[2].gust_amplitude = 0.8;
    lanes[3].gas_pipe_resistance *= 19.0;
    lanes[4].ionisation_gain = 0.24;
    lanes[5].injector_m2[0] *= 0.58;
    lanes[6].gas_side_ua_factor = 0.7;
    lanes[6].air_exchanger_resistance *= 5.0;
    lanes[6].soot = 1.0;
    lanes[7].fan_drive = 0.76;
    lanes[7].fan_head *= 0.82;
    lanes[7].fan_bearing_a = 0.072;
    return lanes;
}

/// Sound, and with low, nearly empty and empty cylinder, dead igniter, open and drifted sensor, drooping
/// regulator.
inline Parameters8 propane_lanes() {
    Parameters8 lanes;
    lanes.fill(plant::propane_parameters());
    lanes[1].cylinder_start_kg = 5.0;
    lanes[2].cylinder_start_kg = 0.15;
    lanes[3].cylinder_empty = 1.0;
    lanes[4].igniter_works = 0.0;
    lanes[5].outlet_sensor.series_ohm = 5.0e6;
    lanes[6].outlet_sensor.gain = 0.8;
    lanes[7].regulator_droop *= 15.0;
    return lanes;
}

/// What acts on every lane at a tick. Only sums and products of the tick: no library functions.
inline worksite::TickInputs story_inputs(int tick, bool propane) {
    constexpr double tap = 5.0e-7;  // m3/s per sqrt(Pa): about 16 L/min
    worksite::TickInputs in;
    auto& at = in.surroundings;
    at.time_s = tick * signals::tick_s;
    at.cylinder_ambient_k = 278.15;
    const auto between = [tick](int from_s, int to_s) {
        return tick >= 10 * from_s && tick < 10 * to_s;
    };
    if (between(3, 110)) at.hot_tap_conductance = tap;
    if (between(110, 170)) at.hot_tap_conductance = 0.45 * tap;
    if (between(200, 260)) at.hot_tap_conductance = 0.16 * tap;
    if (between(270, 480)) at.hot_tap_conductance = 0.6 * tap;
    if (between(520, 590)) at.hot_tap_conductance = 2.0 * tap;
    if (between(300, 330)) at.cold_draw_m3_per_s = 2.0e-4;
    if (between(340, 350)) at.other_gas_m3_per_s = propane ? 1.0e-4 : 6.0e-4;
    if (between(360, 364)) at.gas_isolator = 0.0;
    if (between(400, 405)) at.power_on = 0.0;
    if (between(430, 440)) at.water_isolator = 0.3;
    if (between(560, 575)) at.steady_wind_pa = 20.0;
    const int phase = tick % 80;  // a gust of two seconds in eight
    at.gust_shape = phase < 20 ? (phase < 10 ? 0.1 * phase : 0.1 * (20 - phase)) : 0.0;
    in.panel.set_point_k = between(150, 320) ? 333.15 : 318.15;
    in.panel.reset_pressed = tick % 1500 == 1499 ? 1.0 : 0.0;
    return in;
}

template <class Real>
worksite::Heater<Real> story_heater(bool propane) {
    worksite::Heater<Real> heater;
    if (propane) heater.settings.full_manifold_pa = 2000.0;
    return heater;
}

/// Eight heaters, one after another.
inline Hashes scalar_story(bool propane, int ticks = story_ticks) {
    const Parameters8 lanes = propane ? propane_lanes() : natural_gas_lanes();
    Hashes out{};
    for (std::size_t i = 0; i < story_lanes; ++i) {
        auto heater = story_heater<double>(propane);
        heater.plant.parameters = lanes[i];
        plant::settle_cold(heater.plant, story_inputs(0, propane).surroundings);
        math::Hash hash;
        for (int tick = 0; tick < ticks; ++tick) {
            heater.tick(story_inputs(tick, propane));
            hash.add(heater.hash(0));
        }
        out[i] = hash.value();
    }
    return out;
}

/// The same eight as the lanes of one pack.
template <class Pack>
Hashes pack_story(bool propane, int ticks = story_ticks) {
    const Parameters8 lanes = propane ? propane_lanes() : natural_gas_lanes();
    auto heater = story_heater<Pack>(propane);
    for (std::size_t i = 0; i < story_lanes; ++i) plant::set_parameters(heater.plant, i, lanes[i]);
    plant::settle_cold(heater.plant, story_inputs(0, propane).surroundings);
    std::array<math::Hash, story_lanes> hashes;
    for (int tick = 0; tick < ticks; ++tick) {
        heater.tick(story_inputs(tick, propane));
        for (std::size_t i = 0; i < story_lanes; ++i) hashes[i].add(heater.hash(i));
    }
    Hashes out{};
    for (std::size_t i = 0; i < story_lanes; ++i) out[i] = hashes[i].value();
    return out;
}

/// One number for a whole story.
inline std::uint64_t combined(const Hashes& hashes) {
    math::Hash all;
    for (const std::uint64_t one : hashes) all.add(one);
    return all.value();
}

}  // namespace emberpath::laws
