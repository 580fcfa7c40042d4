#pragma once
/// A plant driven by hand-set commands, without a controller.

#include <cmath>

#include "sim/plant/plant.hpp"

namespace emberpath::plant {

/// Commands that burn `banks` banks at a manifold pressure with the fan at a duty.
inline signals::ActuatorCommands<double> firing(int banks, double manifold_pa, double fan_duty) {
    signals::ActuatorCommands<double> c;
    c.fan_duty = fan_duty;
    c.main_solenoid = 1.0;
    for (int b = 0; b < banks; ++b) c.bank_solenoid[static_cast<std::size_t>(b)] = 1.0;
    c.manifold_pressure_pa = manifold_pa;
    return c;
}

struct OpenLoop {
    Plant<double> plant;
    Surroundings at;
    signals::ActuatorCommands<double> commands;

    explicit OpenLoop(const PlantParameters& parameters = natural_gas_parameters()) {
        plant.parameters = parameters;
        settle_cold(plant, at);
    }
    void run(double seconds) {
        const auto ticks = std::lround(seconds / signals::tick_s);
        for (long i = 0; i < ticks; ++i) advance(plant, at, commands);
    }
    /// Water flowing, air moving, bank 1 lit by the spark.
    void light() {
        at.hot_tap_conductance = 5.0e-7;
        commands = firing(0, 0.0, 0.36);
        run(4.0);
        commands = firing(1, 0.38 * plant.parameters.full_manifold_pa, 0.27);
        commands.spark = 1.0;
        run(2.0);
        commands.spark = 0.0;
    }
    [[nodiscard]] Observables look() const { return observe_one(plant, at); }
};

}  // namespace emberpath::plant
