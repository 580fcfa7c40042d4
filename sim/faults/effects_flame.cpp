// Ignition and flame sensing.
#include "sim/faults/effects.hpp"

namespace emberpath::faults::effects {

void foul_electrode(PlantParameters& p, double s) {
    p.ionisation_gain *= 1.0 - 0.95 * s;
}

void kill_igniter(PlantParameters& p, double s) {
    p.igniter_works *= s > 0.0 ? 0.0 : 1.0;
}

/// At full severity longer than an attempt lasts.
void delay_light_up(PlantParameters& p, double s) {
    p.ignition_delay_s += 4.5 * s;
}

}  // namespace emberpath::faults::effects
