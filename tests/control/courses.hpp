#pragma once
/// What the outlet does after a change, as an instructor would sum it up.

#include <algorithm>
#include <cmath>

#include "tests/laws/house.hpp"

namespace emberpath::control {

struct Course {
    double most_k = -1e9, least_k = 1e9;  // outlet against set point
    double within_1k_s = 0.0;             // last time it was further away than 1 K
    double absolute_error_k_s = 0.0;
    int bank_changes = 0;
};

inline Course follow(laws::House& house, double seconds) {
    Course course;
    double banks = house.look().readout.banks_open;
    const auto ticks = std::lround(seconds / signals::tick_s);
    for (long i = 1; i <= ticks; ++i) {
        house.run(signals::tick_s);
        const worksite::HeaterView now = house.look();
        const double off_k = now.plant.outlet_water_k - now.readout.set_point_k;
        course.most_k = std::max(course.most_k, off_k);
        course.least_k = std::min(course.least_k, off_k);
        course.absolute_error_k_s += std::abs(off_k) * signals::tick_s;
        if (std::abs(off_k) > 1.0) course.within_1k_s = static_cast<double>(i) * signals::tick_s;
        if (now.readout.banks_open != banks) ++course.bank_changes;
        banks = now.readout.banks_open;
    }
    return course;
}

inline Course flow_step(double set_c, double from_lpm, double to_lpm) {
    laws::House house = laws::warmed_up({"step", set_c, from_lpm});
    house.open_taps(to_lpm);
    return follow(house, 120.0);
}

inline Course set_point_step(double flow_lpm, double from_c, double to_c) {
    laws::House house = laws::warmed_up({"step", from_c, flow_lpm});
    house.inputs.panel.set_point_k = to_c + laws::celsius;
    return follow(house, 120.0);
}

/// A steady small draw, watched for two minutes once it has settled.
inline Course small_draw(double set_c, double inlet_c, double flow_lpm) {
    laws::House house(false, set_c);
    house.inputs.surroundings.inlet_water_k = inlet_c + laws::celsius;
    house.run(2.0);
    house.open_taps(flow_lpm);
    house.run(300.0);
    return follow(house, 120.0);
}

}  // namespace emberpath::control
