// What is stored in the controller: an installer's choice, there or not.
#include "sim/faults/effects.hpp"

namespace emberpath::faults::effects {

void store_other_gas(controller::Settings& s, double severity) {
    if (severity > 0.0) s.gas = 1.0 - s.plate_gas;
}

}  // namespace emberpath::faults::effects
