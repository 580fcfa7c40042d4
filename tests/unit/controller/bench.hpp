#pragma once
/// A controller on a bench: simple stand-ins for fan, flame and water answer its commands, and every sensor
/// can be overruled. No physics of the real heater is needed to test what the controller does.

#include <array>
#include <cmath>
#include <optional>
#include <vector>

#include "sim/controller/controller.hpp"
#include "sim/controller/protections.hpp"

namespace emberpath::controller {

inline constexpr double litre_per_minute = 1.0 / 60000.0;  // m3/s
inline constexpr double celsius = 273.15;                  // K at 0 degC

/// Resistance [ohm] the controller's thermistors have at a temperature.
inline double ohm_at(double kelvin) {
    return 10.0e3 * std::exp(3435.0 * (1.0 / kelvin - 1.0 / 298.15));
}

class Bench {
  public:
    ControllerState<double> state{};
    signals::ActuatorCommands<double> commands{};
    Panel panel{};
    Settings settings{};

    // What the stand-ins do.
    double flow_lpm = 0.0;     // asked; the water valve does not throttle it
    double inlet_c = 14.0;     // water
    double fan_loading = 1.0;  // air per revolution over its nominal value
    bool fan_turns = true;
    bool lights = true;       // a flame follows 0.4 s of spark and stays while gas flows
    bool probe_sees = true;   // the flame reaches the ionisation probe
    double heat_given = 1.0;  // share of the commanded heat that reaches the water
    // Overruled sensors.
    std::optional<double> inlet_ohm, outlet_ohm, exchanger_ohm, ionisation_a, limiter_closed;
    std::optional<double> outlet_c;
    std::optional<double> ambient_ohm;
    double ambient_c = 15.0;
    std::array<double, most_wall_controllers> link_wall_v{22.0, 22.0, 22.0};
    double air_tube_pa = 0.0;

    Bench() { sense(); }

    void tick() {
        sense();
        commands = control(state, sensors_, panel, settings);
        answer();
        history_.push_back(now().phase);
    }
    void run(double seconds) {
        const long ticks = std::lround(seconds / signals::tick_s);
        for (long i = 0; i < ticks; ++i) tick();
    }
    /// Seconds until a phase is reached; `limit_s` when it is not.
    double seconds_until(Phase phase, double limit_s) {
        const long ticks = std::lround(limit_s / signals::tick_s);
        for (long i = 1; i <= ticks; ++i) {
            tick();
            if (now().phase == phase) return static_cast<double>(i) * signals::tick_s;
        }
        return limit_s;
    }
    void run_until_steady() { run(120.0); }
    void press_reset() {
        panel.reset_pressed = 1.0;
        tick();
        panel.reset_pressed = 0.0;
    }
    void ask_for_restart() {
        panel.restart_asked = 1.0;
        tick();
        panel.restart_asked = 0.0;
    }
    [[nodiscard]] Readout now() const { return readout(state, 0); }
    /// Phases in the order they were entered.
    [[nodiscard]] std::vector<Phase> phases() const {
        std::vector<Phase> order;
        for (const Phase phase : history_)
            if (order.empty() || order.back() != phase) order.push_back(phase);
        return order;
    }
    [[nodiscard]] bool flame() const { return flame_; }
    [[nodiscard]] double outlet_true_c() const { return outlet_true_c_; }

  private:
    signals::SensorSignals<double> sensors_{};
    std::vector<Phase> history_;
    double fan_rev_per_s_ = 0.0;
    bool flame_ = false;
    double spark_s_ = 0.0;
    double outlet_true_c_ = 14.0;

    void sense() {
        const double n = fan_rev_per_s_ / 80.0;
        sensors_.flow_m3_per_s = flow_lpm * litre_per_minute;
        sensors_.inlet_ohm = inlet_ohm.value_or(ohm_at(inlet_c + celsius));
        sensors_.outlet_ohm =
            outlet_ohm.value_or(ohm_at(outlet_c.value_or(outlet_true_c_) + celsius));
        sensors_.exchanger_ohm = exchanger_ohm.value_or(ohm_at(outlet_true_c_ + 1.0 + celsius));
        sensors_.ambient_ohm = ambient_ohm.value_or(ohm_at(ambient_c + celsius));
        sensors_.fan_rev_per_s = fan_rev_per_s_;
        sensors_.fan_current_a = 0.08 + 0.5 * n * n * (0.35 + 0.65 * fan_loading);
        sensors_.ionisation_current_a = ionisation_a.value_or(flame_ && probe_sees ? 8.0e-6 : 0.0);
        sensors_.link_wall_v = link_wall_v;
        sensors_.air_tube_pa = air_tube_pa;
        sensors_.limiter_closed = limiter_closed.value_or(1.0);
    }
    void answer() {
        const double duty = fan_turns ? commands.fan_duty : 0.0;
        fan_rev_per_s_ += (120.0 * duty - fan_rev_per_s_) * (signals::tick_s / 0.7);
        spark_s_ = commands.spark > 0.5 ? spark_s_ + signals::tick_s : 0.0;
        const bool gas = commands.main_solenoid > 0.5 && commands.bank_solenoid[0] > 0.5;
        flame_ = gas && lights && (flame_ || spark_s_ > 0.35);
        const double share = 0.25 * commands.bank_solenoid[0] + 0.30 * commands.bank_solenoid[1] +
                             0.45 * commands.bank_solenoid[2];
        const double heat_w =
            flame_ ? heat_given * 0.84 * settings.full_heat_input_w * share *
                         std::sqrt(commands.manifold_pressure_pa / settings.full_manifold_pa)
                   : 0.0;
        const double flow = flow_lpm * litre_per_minute;
        const double target = flow > 1e-6 ? inlet_c + heat_w / (flow * 4.144e6) : outlet_true_c_;
        outlet_true_c_ += (target - outlet_true_c_) * (signals::tick_s / 1.5);
    }
};

}  // namespace emberpath::controller
