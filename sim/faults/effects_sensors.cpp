// Sensors, in the ohm domain: an open circuit is megohms, a short a few ohms, a drift a factor.
#include "sim/faults/effects.hpp"

namespace emberpath::faults::effects {

void open_outlet_sensor(PlantParameters& p, double s) {
    p.outlet_sensor.series_ohm += 5.0e6 * s;  // a broken lead: megohms
}

void drift_outlet_sensor(PlantParameters& p, double s) {
    p.outlet_sensor.gain *= 1.0 + 0.5 * s;
}

}  // namespace emberpath::faults::effects
