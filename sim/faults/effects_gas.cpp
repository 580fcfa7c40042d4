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

}  // namespace emberpath::faults::effects
