// What is stored in the controller: an installer's choice, there or not.
#include "sim/faults/effects.hpp"

namespace emberpath::faults::effects {

void store_other_gas(controller::Settings& s, double severity) {
    if (severity > 0.0) s.gas = 1.0 - s.plate_gas;
}

/// The first wall controller, or where it has priority the second.
void move_priority(controller::Settings& s, double severity) {
    if (severity > 0.0) s.first_priority = s.first_priority == 1.0 ? 2.0 : 1.0;
}

/// Conductance between the cores and resistance along them, as green joints have both.
void corrode_link(controller::Settings& s, double severity) {
    s.link[0].series_ohm += 400.0 * severity;
    s.link[0].leak_s += 4.0e-3 * severity;
}

/// Up to 3000 m above what is right.
void raise_altitude(controller::Settings& s, double severity) {
    controller::set_altitude(s, s.altitude_m + 3000.0 * severity);
}

void raise_highest_setting(controller::Settings& s, double severity) {
    if (severity > 0.0) s.maximum_set_k = 348.15;
}

}  // namespace emberpath::faults::effects
