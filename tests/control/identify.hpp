#pragma once
/// The heater's temperature loop, measured on the simulation: the process that the controller faces, found
/// from a step with the feedback held, and the tuning that the controller applies to it.

#include <cmath>
#include <vector>

#include "sim/controller/temperature_loop.hpp"
#include "tests/laws/house.hpp"
#include "tests/support/control_loop.hpp"

namespace emberpath::control {

inline double thermistor_ohm(double kelvin) {
    return 10.0e3 * std::exp(3435.0 * (1.0 / kelvin - 1.0 / 298.15));
}
inline double thermistor_k(double ohm) {
    return 1.0 / (1.0 / 298.15 + std::log(ohm * 1.0e-4) / 3435.0);
}

/// A warmed-up heater whose controller is made to believe that its outlet is exactly as set: proportional and
/// integral action then rest, and what is left is feed-forward, actuators, plant and sensor.
class HeldLoop {
  public:
    HeldLoop(double set_c, double flow_lpm) : house_(laws::warmed_up({"held", set_c, flow_lpm})) {}

    /// One tick; returns the outlet [K] as the controller's own sensor would have read it.
    double tick(double asked_rise_k) {
        auto& heater = house_.heater;
        const auto& at = house_.inputs.surroundings;
        plant::update_electrics(heater.plant, at);
        auto sensors = plant::sense(heater.plant, at);
        const double outlet_k = thermistor_k(sensors.outlet_ohm);
        sensors.outlet_ohm = thermistor_ohm(house_.inputs.panel.set_point_k);
        // A colder inlet asks for more heat and moves nothing else.
        sensors.inlet_ohm = thermistor_ohm(thermistor_k(sensors.inlet_ohm) - asked_rise_k);
        const auto commands =
            controller::control(heater.controller, sensors, house_.inputs.panel, heater.settings);
        plant::advance(heater.plant, at, commands);
        return outlet_k;
    }
    [[nodiscard]] worksite::HeaterView look() const { return house_.look(); }

  private:
    laws::House house_;
};

/// First-order-plus-dead-time fit (two-point method) of the answer to `rise_k` more rise asked for.
inline Process identify(double set_c, double flow_lpm, double rise_k) {
    HeldLoop loop(set_c, flow_lpm);
    double from_k = 0.0;
    for (int i = 0; i < 600; ++i) from_k = loop.tick(0.0);
    std::vector<double> course;
    for (int i = 0; i < 600; ++i) course.push_back(loop.tick(rise_k) - from_k);
    const double end_k = course.back();
    const auto reached = [&](double share) {
        for (std::size_t i = 1; i < course.size(); ++i) {
            const double before = course[i - 1] / end_k, now = course[i] / end_k;
            if (now < share) continue;
            return signals::tick_s *
                   (static_cast<double>(i - 1) + (share - before) / (now - before));
        }
        return 0.0;
    };
    return two_point(end_k / rise_k, reached(0.283), reached(0.632));
}

/// What the controller applies at a flow, as gain and integral time of a textbook controller.
inline Tuning applied(double flow_lpm) {
    namespace loop = controller::loop;
    const double scale = std::fmin(std::fmax(flow_lpm / 10.0, 0.3), 1.5);
    return {loop::proportional, loop::proportional / (loop::integral_per_s * scale)};
}

}  // namespace emberpath::control
