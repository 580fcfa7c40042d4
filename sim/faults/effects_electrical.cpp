// What causes of the electrical supply and of the heater's own wiring change.
#include "sim/faults/effects.hpp"

namespace emberpath::faults::effects {
namespace {

constexpr double broken_ohm = 1.0e9;

}  // namespace

void disconnect_earth(PlantParameters& p, double s) {
    p.electrical.circuit_earth_ohm += broken_ohm * s;
}

void swap_supply(PlantParameters& p, double s) {
    p.electrical.swapped = s > 0.0 ? 1.0 : p.electrical.swapped;
}

void break_neutral(PlantParameters& p, double s) {
    p.electrical.street_neutral_ohm += broken_ohm * s;
}

/// A pump of 6 kW on a line whose active conductor has grown by up to 5 ohm. Chosen so that the board holds
/// below half severity and lets go above.
void weaken_line(PlantParameters& p, double s) {
    p.electrical.street_active_ohm += 5.0 * s;
    p.electrical.pump_s += 0.11;
}

/// Wet through, 55 mA at full severity.
void wet_wiring(PlantParameters& p, double s) {
    p.electrical.moisture_s += 2.4e-4 * s;
}

/// The more it is worn, the less heat it takes to make it touch. Chosen.
void chafe_valve_lead(PlantParameters& p, double s) {
    p.electrical.valve_lead_short_s += 5.0;
    p.electrical.valve_lead_touches_above_k = 305.0 - 14.0 * s;
}

void open_valve_coil(PlantParameters& p, double s) {
    p.electrical.valve_coil_ohm += broken_ohm * s;
}

void crack_igniter_lead(PlantParameters& p, double s) {
    p.electrical.igniter_lead_crack += s;
}

void break_flame_lead(PlantParameters& p, double s) {
    p.electrical.flame_lead_ohm += broken_ohm * s;
}

void feed_from_second_supply(PlantParameters& p, double s) {
    p.electrical.second_source = s > 0.0 ? 1.0 : p.electrical.second_source;
}

void bridge_limiter(PlantParameters& p, double) {
    p.limiter_bridged = 1.0;
}

/// Conductance between the cores and resistance along them, as green joints have both.
void corrode_link(PlantParameters& p, double s) {
    p.electrical.link_series_ohm[0] += 400.0 * s;
    p.electrical.link_leak_s[0] += 4.0e-3 * s;
}

void open_companion_link(PlantParameters& p, double s) {
    if (s > 0.0) p.companion_link_ohm = 5.0e6;
}

}  // namespace emberpath::faults::effects
