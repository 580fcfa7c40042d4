#pragma once
/// Protections as a table: what is tolerated, what follows, what clears it. All values chosen.

#include <array>

#include "sim/controller/controller.hpp"

namespace emberpath::controller {

enum class Response { retry, lockout };
enum class Cleared { by_sixty_seconds_of_run, by_user_reset };

struct Protection {
    Event event;
    double tolerated_s;
    Response response;
    Cleared cleared;
};

/// Later rows win when two events fall in one tick.
// clang-format off
inline constexpr std::array protections{
    Protection{Event::air_path_restricted,           5.0,  Response::lockout, Cleared::by_user_reset},
    Protection{Event::flame_lost,                    0.25, Response::retry,   Cleared::by_sixty_seconds_of_run},
    Protection{Event::no_flame_at_light_up,          4.0,  Response::retry,   Cleared::by_sixty_seconds_of_run},
    Protection{Event::fan_speed_not_reached,         7.0,  Response::lockout, Cleared::by_user_reset},
    Protection{Event::flame_seen_before_gas,         2.0,  Response::lockout, Cleared::by_user_reset},
    Protection{Event::outlet_too_hot,                1.0,  Response::lockout, Cleared::by_user_reset},
    Protection{Event::inlet_sensor_out_of_range,     0.0,  Response::lockout, Cleared::by_user_reset},
    Protection{Event::exchanger_sensor_out_of_range, 0.0,  Response::lockout, Cleared::by_user_reset},
    Protection{Event::outlet_sensor_out_of_range,    0.0,  Response::lockout, Cleared::by_user_reset},
    Protection{Event::overheat_limiter_open,         0.0,  Response::lockout, Cleared::by_user_reset},
};
// clang-format on

inline constexpr double most_failed_light_ups = 3.0;  // the third failure locks out
inline constexpr double good_run_s = 60.0;

[[nodiscard]] constexpr double tolerated_s(Event event) {
    for (const Protection& row : protections)
        if (row.event == event) return row.tolerated_s;
    return 0.0;
}

}  // namespace emberpath::controller
