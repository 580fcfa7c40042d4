// Air, fan, flue and the gas side of the exchanger.
#include "sim/faults/effects.hpp"

namespace emberpath::faults::effects {

void block_flue(PlantParameters& p, double s) {
    const double open = 1.0 - 0.85 * s;  // free area; loss goes with its inverse square
    p.flue_resistance = p.flue_resistance / (open * open);
}

void expose_to_gusts(PlantParameters& p, double s) {
    p.gust_amplitude += s;
}

void soot_exchanger(PlantParameters& p, double s) {
    p.gas_side_ua_factor *= 1.0 - 0.3 * s;
    p.air_exchanger_resistance *= 1.0 + 4.0 * s;
    p.soot += s;
}

/// Less of the voltage becomes speed, the blades move less air at a speed, and the bearing rubs. The extra
/// current of the bearing hides the missing air from the controller.
void wear_fan(PlantParameters& p, double s) {
    p.fan_drive *= 1.0 - 0.4 * s;
    p.fan_head *= 1.0 - 0.3 * s;
    p.fan_bearing_a += 0.12 * s;
}

void slow_tachometer(PlantParameters& p, double s) {
    p.tachometer_gain *= 1.0 - s;
}

}  // namespace emberpath::faults::effects
