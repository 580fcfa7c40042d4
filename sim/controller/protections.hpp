#pragma once
/// Protections as a table: what is tolerated, what follows, what clears it. All values chosen.

#include <array>

#include "sim/controller/controller.hpp"

namespace emberpath::controller {

enum class Response { retry, lockout };

/// What releases the lockout that an event leads to, at once or after the last retry. Combustion lockouts
/// want a person who starts the heater again with its own proof; some let reset be tried before.
enum class Cleared { by_reset, by_restart, by_restart_after_two_resets };

struct Protection {
    Event event;
    double tolerated_s;
    Response response;
    Cleared cleared;
};

/// Later rows win when two events fall in one tick.
// clang-format off
inline constexpr std::array protections{
    Protection{Event::air_path_restricted,           5.0,  Response::lockout, Cleared::by_restart_after_two_resets},
    Protection{Event::flame_lost,                    0.3,  Response::retry,   Cleared::by_restart_after_two_resets},
    Protection{Event::no_flame_at_light_up,          4.0,  Response::retry,   Cleared::by_reset},
    Protection{Event::fan_speed_not_reached,         7.0,  Response::lockout, Cleared::by_reset},
    Protection{Event::flame_seen_before_gas,         2.0,  Response::lockout, Cleared::by_restart},
    Protection{Event::outlet_too_hot,                1.0,  Response::lockout, Cleared::by_reset},
    Protection{Event::inlet_sensor_out_of_range,     0.0,  Response::lockout, Cleared::by_reset},
    Protection{Event::exchanger_sensor_out_of_range, 0.0,  Response::lockout, Cleared::by_reset},
    Protection{Event::outlet_sensor_out_of_range,    0.0,  Response::lockout, Cleared::by_reset},
    Protection{Event::overheat_limiter_open,         0.0,  Response::lockout, Cleared::by_restart},
};
// clang-format on

/// A tolerance between two ticks would be decided by the last bit of a sum.
constexpr bool last_whole_ticks() {
    for (const Protection& row : protections) {
        const double ticks = row.tolerated_s / signals::tick_s;
        const double past = ticks - static_cast<double>(static_cast<int>(ticks));
        if (past > 1.0e-9 && past < 1.0 - 1.0e-9) return false;
    }
    return true;
}
static_assert(last_whole_ticks(), "every tolerance is a whole number of ticks");

inline constexpr double most_failed_light_ups = 3.0;  // the third failure locks out
inline constexpr double good_run_s = 60.0;            // forgets failures, resets and probation

[[nodiscard]] constexpr const Protection* row_of(Event event) {
    for (const Protection& row : protections)
        if (row.event == event) return &row;
    return nullptr;
}
[[nodiscard]] constexpr double tolerated_s(Event event) {
    const Protection* const row = row_of(event);
    return row != nullptr ? row->tolerated_s : 0.0;
}
/// How many plain resets this lockout accepts before it wants a deliberate restart; -1: any number.
[[nodiscard]] constexpr double resets_accepted(Cleared cleared) {
    if (cleared == Cleared::by_reset) return -1.0;
    return cleared == Cleared::by_restart ? 0.0 : 2.0;
}

}  // namespace emberpath::controller
