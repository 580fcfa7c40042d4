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

/// From the upper half of the full pressure up to all of it: never what one stuck nearly shut holds.
void hold_gas_valve_high(PlantParameters& p, double s) {
    hold_gas_valve(p, 0.5 + 0.5 * s);
}

/// Propane as a volume share of the gas in the pipe.
void mix_propane_in(PlantParameters& p, double s) {
    p = plant::with_propane_in_gas(p, s);
}

/// Free area goes with the handle, the loss with its inverse square. Open, the valve is a fiftieth of the pipe.
void throttle_gas_isolator(PlantParameters& p, double s) {
    const double open = 1.0 - 0.98 * s;
    p.gas_isolator_resistance += 0.02 * p.gas_pipe_resistance * (1.0 / (open * open) - 1.0);
}

void block_gas_screen(PlantParameters& p, double s) {
    p.gas_valve_resistance *= 1.0 + 12.0 * s;
}

/// Up to 2 Pa a second: 7 kPa in an hour, were there no relief.
void let_regulator_creep(PlantParameters& p, double s) {
    p.regulator_creep_pa_per_s += 2.0 * s;
}

/// Up to 2 L an hour: smelt at the union, far too little for the burner to notice.
void weep_at_union(PlantParameters& p, double s) {
    p.gas_union_leak_m3_per_s += 2.0e-3 / 3600.0 * s;
}

/// Drilled for the other gas, in the same proportion to the heater's rating.
void fit_other_injectors(PlantParameters& p, double s) {
    if (s <= 0.0) return;
    constexpr double between_the_gases = 15.0;  // m3 of air per m3 of gas
    const auto natural = plant::natural_gas_injectors(), propane = plant::propane_injectors();
    const bool burns_propane = p.stoichiometric_air > between_the_gases;
    for (std::size_t b = 0; b < plant::bank_count; ++b)
        p.injector_m2[b] *= burns_propane ? natural[b] / propane[b] : propane[b] / natural[b];
}

/// At full fire up to twice what is asked, in proportion to the fire.
void overset_high_fire(PlantParameters& p, double s) {
    p.gas_valve_overset_per_pa += s / p.full_manifold_pa;
}

/// Everything of the cylinder in proportion; it holds as large a share of its own size.
void shrink_cylinder(PlantParameters& p, double s) {
    const double size = 1.0 - 0.9 * s;
    p.cylinder_full_kg *= size;
    p.cylinder_start_kg *= size;
    p.cylinder_steel_j_per_k *= size;
    p.cylinder_wall_w_per_k *= size;
}

void stick_changeover(PlantParameters& p, double) {
    p.changeover_stuck = 1.0;
    p.cylinder_start_kg = 0.0;
}

/// The seat never closes on the first stage's pressure, flow or no flow.
void pass_second_stage(PlantParameters& p, double s) {
    p.gas_no_load_pa += 6.0e3 * s;
    p.gas_lock_up_pa += 6.0e3 * s;
    p.regulator_creep_pa_per_s += 10.0 * s;
    p.regulator_creep_limit_pa += 10.0e3 * s;
}

}  // namespace emberpath::faults::effects
