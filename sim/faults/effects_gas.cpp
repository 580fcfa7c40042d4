// Gas and its supply.
#include <algorithm>

#include "sim/faults/effects.hpp"

namespace emberpath::faults::effects {

/// Liquid left, as a share of a full cylinder. Chosen so that at 5 degC air and full draw half severity
/// still gives hot water, 0.8 lukewarm, 0.9 fails after about 23 minutes, 0.95 after 15; empty from 0.97.
void run_cylinder_down(PlantParameters& p, double s) {
    const double rest = 1.0 - s;
    const double share = std::max(0.0, 0.98 * rest - 0.403 * rest * rest - 0.0274);
    p.cylinder_start_kg = std::min(p.cylinder_start_kg, share * p.cylinder_full_kg);
}

void restrict_pipe(PlantParameters& p, double s) {
    p.gas_pipe_resistance *= 1.0 + 18.0 * s;
}

void droop_regulator(PlantParameters& p, double s) {
    p.regulator_droop *= 1.0 + 14.0 * s;
}

/// The injector of bank 1: the one that lights first and that the flame probe watches.
void block_injector(PlantParameters& p, double s) {
    p.injector_m2[0] *= 1.0 - 0.7 * s;
}

namespace {

void hold_gas_valve(PlantParameters& p, double share_of_full) {
    p.gas_valve_stuck = 1.0;
    p.gas_valve_held_pa = share_of_full * p.full_manifold_pa;
}

}  // namespace

void hold_gas_valve_low(PlantParameters& p, double s) {
    hold_gas_valve(p, 1.0 - s);
}

void hold_gas_valve_high(PlantParameters& p, double s) {
    hold_gas_valve(p, s);
}

/// Propane as a volume share of the gas in the pipe.
void mix_propane_in(PlantParameters& p, double s) {
    p = plant::with_propane_in_gas(p, s);
}

}  // namespace emberpath::faults::effects
