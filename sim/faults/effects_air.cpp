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

/// Free area of the intake grille; the loss goes with its inverse square.
void felt_intake(PlantParameters& p, double s) {
    constexpr double clean = 1.0e5;  // Pa s2/m6, of the bare grille; chosen
    const double open = 1.0 - 0.9 * s;
    p.intake_resistance += clean / p.air_density_share * (1.0 / (open * open) - 1.0);
}

void draw_products_back(PlantParameters& p, double s) {
    p.recirculated_share += 0.5 * s;
}

void open_seam(PlantParameters& p, double s) {
    p.seam_leak_share += 0.05 * s;
}

void block_open_flue(PlantParameters& p, double s) {
    const double open = 1.0 - 0.9 * s;
    p.open_flue_resistance = p.open_flue_resistance / (open * open);
}

/// Closed gaps leave a hundredth of what a plain room lets in.
void tighten_room(PlantParameters& p, double s) {
    p.room_leak_gain *= 1.0 - 0.99 * s;
    p.room_ventilation_m3_per_s *= 1.0 - 0.99 * s;
}

/// The two ends of a plug of water in a sag of the tube stand up to 8 mm apart: 80 Pa.
void let_water_into_air_tube(PlantParameters& p, double s) {
    p.air_tube_water_pa += 80.0 * s;
}

}  // namespace emberpath::faults::effects
