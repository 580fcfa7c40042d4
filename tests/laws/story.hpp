#pragma once
/// Minutes in which a heater and seven faulty ones live through every kind of event, and the hash of all their
/// states at every tick. One source for one heater at a time and for a pack of eight.

#include <array>
#include <cstdint>

#include "sim/math/hash.hpp"
#include "sim/math/pack.hpp"
#include "sim/worksite/heater.hpp"

namespace emberpath::laws {

inline constexpr std::size_t story_lanes = 8;

/// A house on mains gas, one on a cylinder, and a tall house with an open flue in a room, a pair of cylinders,
/// a tempering valve, wall controllers on a link cable and trouble with its wiring.
enum class Story { natural_gas, propane, tall_house };
inline constexpr std::array stories{Story::natural_gas, Story::propane, Story::tall_house};
constexpr const char* title(Story story) {
    constexpr std::array words{"natural gas", "propane", "tall house"};
    return words.at(static_cast<std::size_t>(story));
}
constexpr int ticks_of(Story story) {
    return story == Story::tall_house ? 3000 : 6000;
}

using Settings8 = std::array<controller::Settings, 8>;
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

/// Sound, and with a stuck changeover and creep, a spilling flue, a seam and lint, mixed and worn valves at the
/// taps, a pinhole under night pressure, a swapped supply, a chafed lead.
inline Parameters8 tall_house_lanes() {
    Parameters8 lanes;
    plant::PlantParameters sound = plant::with_cylinder_pair(
        plant::with_flue(plant::propane_parameters(), plant::FlueKind::open_flued));
    sound.cylinder_start_kg = 0.6;
    lanes.fill(sound);
    lanes[1].changeover_stuck = 1.0;
    lanes[1].regulator_creep_pa_per_s = 5.0;
    lanes[2].open_flue_resistance *= 40.0;
    lanes[2].room_ventilation_m3_per_s = 0.0;
    lanes[3].seam_leak_share = 0.1;
    lanes[3].intake_resistance = 2.0e5;
    lanes[3].recirculated_share = 0.1;
    lanes[4].cross_flow_gain = 1.0e-7;
    lanes[4].tempering_cold_share = 0.3;
    lanes[4].tap_opening[1] = 0.3;
    lanes[5].casing_leak_gain = 1.0e-8;
    lanes[5].mains_rise_at_night_pa = 350.0e3;
    lanes[5].ignition_delay_s = 2.0;
    lanes[6].electrical.swapped = 1.0;
    lanes[2].electrical.link_series_ohm[0] = 5.0e6;
    lanes[3].electrical.link_leak_s[1] = 0.03;
    lanes[6].companion_fitted = 1.0;
    lanes[7] = plant::with_air_tube(lanes[7]);
    lanes[7].air_tube_water_pa = 12.0;
    lanes[4] = plant::with_altitude(lanes[4], 1200.0);
    lanes[7].electrical.valve_lead_short_s = 5.0;
    lanes[7].electrical.valve_lead_touches_above_k = 291.0;
    return lanes;
}

inline Parameters8 lanes_of(Story story) {
    if (story == Story::natural_gas) return natural_gas_lanes();
    return story == Story::propane ? propane_lanes() : tall_house_lanes();
}

/// Stored settings and link cables; each lane of the tall house has its own.
inline Settings8 settings_of_lanes(Story story) {
    Settings8 lanes;
    if (story == Story::natural_gas) return lanes;
    for (auto& one : lanes) one.full_manifold_pa = 2000.0;
    if (story == Story::propane) return lanes;
    for (auto& one : lanes) one.wall_controllers = 2.0;
    lanes[1].first_priority = 2.0;
    lanes[6].companion = 1.0;
    lanes[7].air_by_tube = 1.0;
    controller::set_altitude(lanes[4], 1500.0);
    lanes[5].gas = 1.0;
    lanes[6].frost_protection = 0.0;
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

/// The tall house by day and night: taps on three floors, a fan, a window, rain, frost, a restart.
inline worksite::TickInputs tall_house_inputs(int tick) {
    constexpr double tap = 5.0e-7, floor_pa = 27.0e3;
    worksite::TickInputs in;
    auto& at = in.surroundings;
    at.time_s = tick * signals::tick_s;
    at.cylinder_ambient_k = 275.15;
    at.ambient_k = at.outdoor_k = tick < 1500 ? 288.15 : 272.15;
    at.night = tick < 1500 ? 0.0 : 1.0;
    at.rain = at.electrical.damp = tick < 2000 ? 0.0 : 1.0;
    at.reserve_first = tick < 1200 ? 0.0 : 1.0;
    at.extraction_m3_per_s = tick >= 600 && tick < 900 ? 0.05 : 0.0;
    at.room_opening = tick >= 900 && tick < 1300 ? 0.3 : 0.0;
    const auto between = [tick](int from_s, int to_s) {
        return tick >= 10 * from_s && tick < 10 * to_s;
    };
    const auto open = [&at](std::size_t which, double conductance, double floors, double tempered) {
        at.outlets[at.outlet_count++] = {which, conductance, floors * floor_pa, tempered};
    };
    if (between(3, 100)) open(0, 0.6 * tap, 0.0, 0.0);
    if (between(20, 80) || between(160, 240)) open(1, 0.5 * tap, 1.0, 1.0);
    if (between(50, 90) || between(180, 240)) open(2, 0.4 * tap, 2.0, 1.0);
    if (between(110, 112)) at.power_on = 0.0;
    if (between(130, 140)) at.water_isolator = 0.0;
    in.panel.set_point_k = 323.15;
    in.panel.reset_pressed = tick == 1000 ? 1.0 : 0.0;
    in.panel.restart_asked = tick == 2450 ? 1.0 : 0.0;
    for (std::size_t i = 0; i < 2; ++i) {
        in.panel.wall[i].fitted = at.electrical.wall_fitted[i] = 1.0;
        in.panel.wall[i].set_point_k = i == 0 ? 318.15 : 328.15;
    }
    return in;
}

inline worksite::TickInputs inputs_of(Story story, int tick) {
    return story == Story::tall_house ? tall_house_inputs(tick)
                                      : story_inputs(tick, story == Story::propane);
}

/// Eight heaters, one after another.
inline Hashes scalar_story(Story story) {
    const Parameters8 lanes = lanes_of(story);
    const Settings8 settings = settings_of_lanes(story);
    Hashes out{};
    for (std::size_t i = 0; i < story_lanes; ++i) {
        worksite::Heater<double> heater;
        heater.install(0, {lanes[i], settings[i]});
        plant::settle_cold(heater.plant, inputs_of(story, 0).surroundings);
        math::Hash hash;
        for (int tick = 0; tick < ticks_of(story); ++tick) {
            heater.tick(inputs_of(story, tick));
            hash.add(heater.hash(0));
        }
        out[i] = hash.value();
    }
    return out;
}

/// The same eight as the lanes of one pack.
template <class Pack>
Hashes pack_story(Story story) {
    const Parameters8 lanes = lanes_of(story);
    const Settings8 settings = settings_of_lanes(story);
    worksite::Heater<Pack> heater;
    for (std::size_t i = 0; i < story_lanes; ++i) heater.install(i, {lanes[i], settings[i]});
    plant::settle_cold(heater.plant, inputs_of(story, 0).surroundings);
    std::array<math::Hash, story_lanes> hashes;
    for (int tick = 0; tick < ticks_of(story); ++tick) {
        heater.tick(inputs_of(story, tick));
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
