#include "sim/worksite/attempt.hpp"

namespace emberpath::worksite {

namespace {

constexpr double unplugged_ohm = 1.0e9;
constexpr double resistor_ohm = 4.3e3;      // as much as a sound sensor has at 49 °C: chosen
constexpr double strainer_body = 0.5;       // of the loss of strainer with screen: chosen
constexpr double most_drag = 0.6;           // of the turbine's count, full of grit: chosen
constexpr double other_count = 1.6;         // as the cause flow_sensor_wrong at its full severity
constexpr double under_tape = 0.8;          // of a crack still counts, dry as wet: chosen
constexpr double never_k = 1.0e4;           // a resistor does not lose contact
constexpr double past_tempering_k = 1.0e3;  // no water gets so hot: nothing is mixed in

}  // namespace

plant::PlantParameters with_alterations(plant::PlantParameters parameters,
                                        const Alterations& alterations) {
    // A bridge over a sound limiter shows only once it would have opened; the workplace holds it closed.
    if (alterations.limiter_bridged) parameters.limiter_bad = 0.0;
    if (alterations.air_proof_bridged) parameters.air_tube_bridged = 1.0;
    if (alterations.regulator_raised_pa != 0.0) {
        parameters.gas_no_load_pa += alterations.regulator_raised_pa;
        parameters.gas_lock_up_pa += alterations.regulator_raised_pa;
    }
    if (alterations.outlet_sensor_fooled) {
        parameters.outlet_sensor = {};
        parameters.outlet_sensor.gain = 0.0;
        parameters.outlet_sensor.series_ohm = resistor_ohm;
        parameters.outlet_sensor.opens_above_k = never_k;
    }
    if (alterations.sensor_unplugged[0]) parameters.outlet_sensor.series_ohm += unplugged_ohm;
    if (alterations.sensor_unplugged[1]) parameters.inlet_sensor.series_ohm += unplugged_ohm;
    if (alterations.sensor_unplugged[2]) parameters.exchanger_sensor.series_ohm += unplugged_ohm;
    if (alterations.board_harmed) parameters.electrical.low_voltage_v = 0.0;
    if (alterations.lead_taped) parameters.electrical.igniter_lead_crack *= under_tape;
    if (alterations.fuse_oversized) parameters.electrical.fuse_blows_a = 1.0e3;
    if (alterations.without_safety_switch) parameters.electrical.safety_switch_trips_a = 1.0e3;
    if (alterations.strainer_out)
        parameters.strainer_resistance =
            strainer_body * plant::PlantParameters{}.strainer_resistance;
    parameters.flow_sensor_gain *= 1.0 - most_drag * alterations.grit;
    if (alterations.other_flow_sensor) {
        parameters.flow_sensor_gain *= other_count;
        parameters.flow_sensor_sticks_m3_per_s = 0.0;  // its turbine is another one
    }
    if (alterations.tempering_bypassed) {
        parameters.tempering_set_k = past_tempering_k;
        parameters.tempering_cold_share = 0.0;
    }
    return parameters;
}

controller::Settings with_alterations(controller::Settings settings,
                                      const Alterations& alterations) {
    for (std::size_t i = 0; i < controller::setting_count; ++i)
        if (alterations.stored[i])
            controller::store(settings, static_cast<controller::Setting>(i),
                              *alterations.stored[i]);
    return settings;
}

Installation installation_of(const Job& job, std::span<const faults::Fault> faults,
                             const faults::Moment& now, const Alterations& alterations) {
    return {with_alterations(faults::with_faults(job.healthy, faults, now), alterations),
            with_alterations(faults::with_faults(job.settings, faults, now), alterations)};
}

}  // namespace emberpath::worksite
