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

/// The second outlet of the house's list: as sites are written, where people shower.
void clog_outlet(PlantParameters& p, double s) {
    constexpr std::size_t shower = 1;
    p.tap_opening[shower] *= 1.0 - 0.95 * s;
}

/// A pinhole of up to 0.5 mm at 400 kPa, and what it wets.
void prick_tube(PlantParameters& p, double s) {
    p.casing_leak_gain += 6.0e-9 * s;
    p.electrical.moisture_s += 2.4e-4 * s;
}

void raise_night_pressure(PlantParameters& p, double s) {
    p.mains_rise_at_night_pa += 500.0e3 * s;
}

/// Wide open it passes as much as half a shower tap.
void cross_mixer(PlantParameters& p, double s) {
    p.cross_flow_gain += 4.0e-7 * s;
}

void wear_tempering_valve(PlantParameters& p, double s) {
    p.tempering_cold_share += 0.5 * s;
}

}  // namespace emberpath::faults::effects
