#pragma once
/// A heater through a day of draws: what gas went in, what heat came out, what the core kept and lost.

#include "tests/laws/house.hpp"
#include "tests/validation/draw_patterns.hpp"

namespace emberpath::validation {

/// Where the heater stands during the day.
struct Setting {
    double set_c, inlet_c, room_c;
};
/// The standards' own: 125, 58 and 67.5 degF; and 55 degC out of 10 degC water in a room of 20.
inline constexpr Setting simulated_use{51.67, 14.44, 19.72};
inline constexpr Setting load_profile{55.0, 10.0, 20.0};

/// The core: copper, water and mixing pocket [J/K], and what it loses to the room by way of the casing [W/K]
/// (docs/physics/plant.md).
inline constexpr double core_j_per_k = 3.2 * 385.0 + (0.55e-3 * 990.0 + 0.066) * 4186.0;
inline constexpr double core_loss_w_per_k = 1.0 / (1.0 / 3.2 + 1.0 / 3.0);
/// A tankless heater's core as fitted to measurements: 8.36 +- 0.6 kJ/K, losing 12.99 +- 4 kJ/(h K) (Master's
/// thesis, University of Colorado, 2010, abstract).
inline constexpr double published_core_j_per_k = 8360.0;
inline constexpr double published_loss_w_per_k = 12990.0 / 3600.0;

struct Day {
    double gas_j = 0.0;     // gross
    double water_j = 0.0;   // all heat that left with water, against its inlet temperature
    double useful_j = 0.0;  // of that, from the least temperature on (load profiles)
    double volume_m3 = 0.0;
    std::size_t draws = 0, peaks_missed = 0;
    double longest_wait_s = 0.0;  // until the least temperature
    double steady_gas_j =
        0.0;  // what the same heat would have cost in endless draws of the same flows
    double core_loss_j = 0.0;   // what a core of one temperature loses between the draws
    double heavy_loss_j = 0.0;  // the same with the published core

    [[nodiscard]] double efficiency() const { return water_j / gas_j; }
    [[nodiscard]] double steady() const { return water_j / steady_gas_j; }
    /// One-node estimate (the model of Burch et al. 2008): all gas at the steady efficiency, and the core warmed
    /// again for each draw.
    [[nodiscard]] double estimate() const { return steady() * water_j / (water_j + core_loss_j); }
    [[nodiscard]] double heavy_estimate() const {
        return steady() * water_j / (water_j + heavy_loss_j);
    }
};

/// The day of a simulated use test, from a cold heater.
[[nodiscard]] Day live(std::span<const Draw> draws, const Setting& setting);
/// The day of a load profile.
[[nodiscard]] Day live(std::span<const Tapping> tappings, const Setting& setting);
/// Draws of one size, all an hour apart: `count` of them.
[[nodiscard]] Day repeated(double litres, double litres_per_min, int count, const Setting& setting);
/// Efficiency after ten minutes of one draw.
[[nodiscard]] double steady_efficiency(double litres_per_min, const Setting& setting);

}  // namespace emberpath::validation
