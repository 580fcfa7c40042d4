#pragma once
/// How one heater's controller is set up: its ratings, what an installer stores in it, and how the link
/// cable to its wall controllers is wired. A cause or a hand can change any of it, in one lane of a pack.

#include <array>
#include <cstddef>
#include <string_view>

#include "sim/math/pack.hpp"

namespace emberpath::controller {

inline constexpr std::size_t most_wall_controllers = 3;
inline constexpr double link_least_v = 15.0;  // below, a wall controller's screen is dark

/// Real is double for one heater or Pack<8> for eight: same members, same order. SI; 1 yes, 0 no.
template <class Real>
struct SettingsOf {
    // Ratings of the heater, as on its data plate.
    Real minimum_set_k{310.15};
    Real maximum_set_k{333.15};      // highest set point stored by the installer
    Real full_heat_input_w{41.5e3};  // gross, at full manifold pressure, sea level
    Real full_manifold_pa{950.0};    // on the gas of the plate
    Real fan_full_rev_per_s{80.0};   // at full rate, sea level
    Real companion{0.0};  // 1: a companion heater on the same outlet pipe is called at high demand
    Real air_by_tube{0.0};  // 1: proves its air by the pressure in a tube, not by the fan's current
    Real plate_gas{0.0};    // what the injectors are drilled for: 0 natural gas, 1 propane
    Real other_gas_manifold_pa{2000};  // full pressure the controller keeps for the other gas

    // Installer settings.
    Real gas{0.0};         // as stored: 0 natural gas, 1 propane
    Real altitude_m{0.0};  // as stored; air_density_share follows from it, see set_altitude()
    Real air_density_share{1.0};  // against sea level
    Real frost_protection{1.0};
    Real wall_controllers{0.0};  // how many are listened to, 0 to 3, from the first
    Real first_priority{
        0.0};  // 0: the lowest set value counts; n: wall controller n, while it is heard
    Real accepts_simple{1.0};  // kinds of wall controller this heater talks to
    Real accepts_service{1.0};

    bool operator==(const SettingsOf&) const = default;
};
using Settings = SettingsOf<double>;

inline constexpr std::size_t settings_count = sizeof(Settings) / sizeof(double);

/// Every member as one flat list, in declaration order: lanes, hashes and tests use it.
template <class Real>
[[nodiscard]] Real* flat(SettingsOf<Real>& s) {
    static_assert(sizeof(SettingsOf<Real>) == settings_count * sizeof(Real));
    return reinterpret_cast<Real*>(&s);
}
template <class Real>
[[nodiscard]] const Real* flat(const SettingsOf<Real>& s) {
    static_assert(sizeof(SettingsOf<Real>) == settings_count * sizeof(Real));
    return reinterpret_cast<const Real*>(&s);
}

/// Give one lane its own settings.
template <class Real>
void set_settings(SettingsOf<Real>& all, std::size_t lane, const Settings& one) {
    const double* from = flat(one);
    Real* to = flat(all);
    for (std::size_t i = 0; i < settings_count; ++i) math::set_lane(to[i], lane, from[i]);
}
template <class Real>
[[nodiscard]] Settings settings_of(const SettingsOf<Real>& all, std::size_t lane) {
    Settings one;
    const Real* from = flat(all);
    double* to = flat(one);
    for (std::size_t i = 0; i < settings_count; ++i) to[i] = math::lane(from[i], lane);
    return one;
}

/// The highest set point an installer can store [K]. Chosen.
inline constexpr double greatest_highest_k = 348.15;

/// What an installer can store at the heater, in the order the service readout lists it.
enum class Setting {
    gas,
    altitude,
    highest_set_point,
    frost_protection,
    wall_controllers,
    priority
};
inline constexpr std::size_t setting_count = 6;
[[nodiscard]] std::string_view setting_title(Setting setting);
/// As stored: 0 or 1, m, K, a number.
[[nodiscard]] double stored(const Settings& settings, Setting setting);
/// Stores a value, held to what the heater takes: 0 to 3000 m, 37 to 75 degC, 0 to 3 wall controllers.
void store(Settings& settings, Setting setting, double value);

/// Stores an altitude [m], 0 to 3000.
///
/// Equation  rho / rho_0 = (1 - 2.25577e-5 h)^4.25588, h in m
/// Source    [usstd1976] (recalled)
/// Checked   tests/unit/controller/settings_test.cpp
void set_altitude(Settings& settings, double altitude_m);

/// Heights are stored in steps; the right one for a place is the nearest.
inline constexpr double altitude_step_m = 300.0;
inline constexpr std::size_t altitude_steps = 11;  // 0 to 3000 m
[[nodiscard]] double nearest_altitude_step_m(double altitude_m);

/// What the burner may be given under these settings.
template <class Real>
struct Ratings {
    Real full_heat_input_w;   // gross
    Real per_full_input;      // 1 / full_heat_input_w
    Real full_manifold_pa;    // of the gas that is set
    Real fan_full_rev_per_s;  // at full rate: thin air asks for more turns
    Real air_density_share;
};

/// Gas and air both pass fixed openings, so their mass goes with the square root of the density: the full
/// rate falls with it, and the fan must turn faster by its inverse to keep the excess air.
template <class Real>
[[nodiscard]] Ratings<Real> ratings(const SettingsOf<Real>& s) {
    const Real root = math::square_root(s.air_density_share);
    const Real full_w = s.full_heat_input_w * root;
    const Real manifold_pa =
        math::select(s.gas == s.plate_gas, s.full_manifold_pa, s.other_gas_manifold_pa);
    return {full_w, 1.0 / full_w, manifold_pa, s.fan_full_rev_per_s / root, s.air_density_share};
}

}  // namespace emberpath::controller
