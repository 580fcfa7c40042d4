// Sensors, in the ohm domain: an open circuit is megohms, a short a few ohms, a drift a factor.
#include "sim/faults/effects.hpp"

namespace emberpath::faults::effects {
namespace {

using Thermistor = PlantParameters::Thermistor;

void open(Thermistor& sensor, double s) {
    sensor.series_ohm += 5.0e6 * s;  // a broken lead
}
void bridge(Thermistor& sensor, double s) {
    sensor.parallel_s += 0.2 * s;  // 5 ohm across the leads
}
void drift(Thermistor& sensor, double s) {
    sensor.gain *= 1.0 + 0.5 * s;
}

}  // namespace

void open_outlet_sensor(PlantParameters& p, double s) {
    open(p.outlet_sensor, s);
}
void short_outlet_sensor(PlantParameters& p, double s) {
    bridge(p.outlet_sensor, s);
}
void drift_outlet_sensor(PlantParameters& p, double s) {
    drift(p.outlet_sensor, s);
}

void open_inlet_sensor(PlantParameters& p, double s) {
    open(p.inlet_sensor, s);
}
void short_inlet_sensor(PlantParameters& p, double s) {
    bridge(p.inlet_sensor, s);
}
void drift_inlet_sensor(PlantParameters& p, double s) {
    drift(p.inlet_sensor, s);
}

void open_exchanger_sensor(PlantParameters& p, double s) {
    open(p.exchanger_sensor, s);
}
void short_exchanger_sensor(PlantParameters& p, double s) {
    bridge(p.exchanger_sensor, s);
}
void drift_exchanger_sensor(PlantParameters& p, double s) {
    drift(p.exchanger_sensor, s);
}

void open_ambient_sensor(PlantParameters& p, double s) {
    open(p.ambient_sensor, s);
}
void short_ambient_sensor(PlantParameters& p, double s) {
    bridge(p.ambient_sensor, s);
}
void drift_ambient_sensor(PlantParameters& p, double s) {
    drift(p.ambient_sensor, s);
}

/// A turbine that drags turns too slowly for the water that passes.
void drag_flow_sensor(PlantParameters& p, double s) {
    p.flow_sensor_gain *= 1.0 - s;
}

/// An overheat limiter that has opened for good, whatever its temperature.
void open_limiter(PlantParameters& p, double) {
    p.limiter_bad = 1.0;
}

/// Below 10 L/min at full severity.
void stick_turbine(PlantParameters& p, double s) {
    p.flow_sensor_sticks_m3_per_s += 10.0 / 60000.0 * s;
}

/// Gives up to 1.6 pulses for one.
void fit_other_turbine(PlantParameters& p, double s) {
    p.flow_sensor_gain *= 1.0 + 0.6 * s;
}

/// From 337 K (64 degC) down to 307 K (34 degC).
void open_warm_outlet_sensor(PlantParameters& p, double s) {
    p.outlet_sensor.opens_above_k = 337.0 - 30.0 * s;
}

void weaken_limiter(PlantParameters& p, double s) {
    p.limiter_opens_early_k += 50.0 * s;
}

}  // namespace emberpath::faults::effects
