// One small function for each cause.
#include "sim/faults/effects.hpp"

#include <algorithm>

namespace emberpath::faults {
namespace {

using plant::PlantParameters;

void block_flue(PlantParameters& p, double s) {
    const double open = 1.0 - 0.85 * s;  // free area; loss goes with its inverse square
    p.flue_resistance = p.flue_resistance / (open * open);
}

void expose_to_gusts(PlantParameters& p, double s) {
    p.gust_amplitude += s;
}

/// Liquid left, as a share of a full cylinder. Chosen so that at 5 degC air and full draw half severity
/// still gives hot water, 0.8 lukewarm, 0.9 fails after about 23 minutes, 0.95 after 15; empty from 0.97.
void run_cylinder_down(PlantParameters& p, double s) {
    const double rest = 1.0 - s;
    const double share = std::max(0.0, 0.98 * rest - 0.403 * rest * rest - 0.0274);
    p.cylinder_start_kg = std::min(p.cylinder_start_kg, share * p.cylinder_full_kg);
}

void restrict_pipe(PlantParameters& p, double s) {
    p.gas_pipe_resistance *= 1.0 + 18.0 * s;
}

void droop_regulator(PlantParameters& p, double s) {
    p.regulator_droop *= 1.0 + 14.0 * s;
}

void open_outlet_sensor(PlantParameters& p, double s) {
    p.outlet_sensor.series_ohm += 5.0e6 * s;  // a broken lead: megohms
}

void drift_outlet_sensor(PlantParameters& p, double s) {
    p.outlet_sensor.gain *= 1.0 + 0.5 * s;
}

void foul_electrode(PlantParameters& p, double s) {
    p.ionisation_gain *= 1.0 - 0.95 * s;
}

void kill_igniter(PlantParameters& p, double s) {
    p.igniter_works *= s > 0.0 ? 0.0 : 1.0;
}

void soot_exchanger(PlantParameters& p, double s) {
    p.gas_side_ua_factor *= 1.0 - 0.3 * s;
    p.air_exchanger_resistance *= 1.0 + 4.0 * s;
    p.soot += s;
}

}  // namespace

void apply(PlantParameters& p, Cause cause, double severity) {
    if (severity == 0.0) return;
    switch (cause) {
        case Cause::no_fault:
            return;
        case Cause::flue_blocked:
            return block_flue(p, severity);
        case Cause::wind_gust:
            return expose_to_gusts(p, severity);
        case Cause::cylinder_low:
            return run_cylinder_down(p, severity);
        case Cause::gas_pipe_restriction:
            return restrict_pipe(p, severity);
        case Cause::regulator_droop:
            return droop_regulator(p, severity);
        case Cause::outlet_sensor_open:
            return open_outlet_sensor(p, severity);
        case Cause::outlet_sensor_drift:
            return drift_outlet_sensor(p, severity);
        case Cause::electrode_fouled:
            return foul_electrode(p, severity);
        case Cause::igniter_failed:
            return kill_igniter(p, severity);
        case Cause::exchanger_sooted:
            return soot_exchanger(p, severity);
    }
}

}  // namespace emberpath::faults
