// What an installer can store, and the texts that name it.
#include "sim/controller/settings.hpp"

#include <algorithm>
#include <cmath>

#include "sim/math/functions.hpp"

namespace emberpath::controller {

void set_altitude(Settings& settings, double altitude_m) {
    const double height = std::clamp(altitude_m, 0.0, 3000.0);
    settings.altitude_m = height;
    // At sea level exactly 1: a stored zero changes nothing.
    settings.air_density_share =
        height > 0.0 ? math::power(1.0 - 2.25577e-5 * height, 4.25588) : 1.0;
}

double nearest_altitude_step_m(double altitude_m) {
    const double greatest = static_cast<double>(altitude_steps - 1);
    return altitude_step_m * std::clamp(std::round(altitude_m / altitude_step_m), 0.0, greatest);
}

std::string_view setting_title(Setting setting) {
    constexpr std::array<std::string_view, setting_count> titles{
        "gas",
        "altitude",
        "highest set temperature",
        "frost protection",
        "wall controllers listened to",
        "first in priority",
    };
    return titles.at(static_cast<std::size_t>(setting));
}

double stored(const Settings& settings, Setting setting) {
    switch (setting) {
        case Setting::gas:
            return settings.gas;
        case Setting::altitude:
            return settings.altitude_m;
        case Setting::highest_set_point:
            return settings.maximum_set_k;
        case Setting::frost_protection:
            return settings.frost_protection;
        case Setting::wall_controllers:
            return settings.wall_controllers;
        case Setting::priority:
            break;
    }
    return settings.first_priority;
}

void store(Settings& settings, Setting setting, double value) {
    const auto most = static_cast<double>(most_wall_controllers);
    switch (setting) {
        case Setting::gas:
            settings.gas = value > 0.5 ? 1.0 : 0.0;
            return;
        case Setting::altitude:
            return set_altitude(settings, value);
        case Setting::highest_set_point:
            settings.maximum_set_k = std::clamp(value, settings.minimum_set_k, greatest_highest_k);
            return;
        case Setting::frost_protection:
            settings.frost_protection = value > 0.5 ? 1.0 : 0.0;
            return;
        case Setting::wall_controllers:
            settings.wall_controllers = std::clamp(std::round(value), 0.0, most);
            return;
        case Setting::priority:
            settings.first_priority = std::clamp(std::round(value), 0.0, most);
            return;
    }
}

}  // namespace emberpath::controller
