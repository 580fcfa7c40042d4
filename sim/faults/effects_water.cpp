// Water: strainer, water valve, bypass, the water side of the exchanger.
#include "sim/faults/effects.hpp"

namespace emberpath::faults::effects {

/// Dirt takes free area; the loss goes with its inverse square.
void block_strainer(PlantParameters& p, double s) {
    constexpr double clean = 0.04 * 3.6e12;  // Pa s2/m6: body and screen of the strainer; chosen
    const double open = 1.0 - 0.9 * s;
    p.strainer_resistance += clean * (1.0 / (open * open) - 1.0);
}

void hold_water_valve_open(PlantParameters& p, double) {
    p.water_valve_stuck = 1.0;
    p.water_valve_position = 1.0;
}

void hold_water_valve_shut(PlantParameters& p, double s) {
    p.water_valve_stuck = 1.0;
    p.water_valve_position = 1.0 - s;
}

void hold_bypass(PlantParameters& p, double s) {
    p.bypass_stuck = 1.0;
    p.bypass_position = s;
}

/// Scale resists heat and, growing inwards, water.
void scale_exchanger(PlantParameters& p, double s) {
    p.scale_k_per_w += 0.0022 * s;
    p.exchanger_conductance *= 1.0 - 0.4 * s;
}

}  // namespace emberpath::faults::effects
