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

/// Up to 3000 m off, in the steps that a hand can store: above what is right at a low site, below it at one higher
/// than half of that.
void misset_altitude(controller::Settings& s, double severity) {
    constexpr double span_m = 3000.0;
    const double off_m = controller::nearest_altitude_step_m(span_m * severity);
    controller::set_altitude(
        s, s.altitude_m > 0.5 * span_m ? s.altitude_m - off_m : s.altitude_m + off_m);
}

void raise_highest_setting(controller::Settings& s, double severity) {
    if (severity > 0.0) s.maximum_set_k = controller::greatest_highest_k;
}

}  // namespace emberpath::faults::effects
