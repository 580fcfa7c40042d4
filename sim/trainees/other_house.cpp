#include "sim/trainees/other_house.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/math/random.hpp"

namespace emberpath::trainees {

namespace {

using plant::PlantParameters;

constexpr std::array own_draw{
    &PlantParameters::isolating_valve_resistance,
    &PlantParameters::strainer_resistance,
    &PlantParameters::flow_sensor_resistance,
    &PlantParameters::water_outlet_resistance,
    &PlantParameters::water_supply_resistance,
    &PlantParameters::exchanger_conductance,
    &PlantParameters::water_valve_gain,
    &PlantParameters::bypass_gain,
    &PlantParameters::gas_side_ua_factor,
    &PlantParameters::regulator_droop,
    &PlantParameters::gas_pipe_resistance,
    &PlantParameters::gas_valve_resistance,
    &PlantParameters::cylinder_start_kg,
    &PlantParameters::cylinder_wall_w_per_k,
    &PlantParameters::fan_head,
    &PlantParameters::fan_internal_resistance,
    &PlantParameters::air_cold_resistance,
    &PlantParameters::air_exchanger_resistance,
    &PlantParameters::flue_resistance,
    &PlantParameters::room_ventilation_m3_per_s,
    &PlantParameters::room_leak_gain,
    &PlantParameters::open_flue_resistance,
    &PlantParameters::ionisation_gain,
    &PlantParameters::flow_sensor_gain,
};

double factor(math::Random& random) {
    constexpr double most = 2.5;
    return 1.0 + house_spread * std::clamp(random.normal(), -most, most);
}

void vary(PlantParameters& p, math::Random& random) {
    for (const auto member : own_draw) p.*member *= factor(random);
    for (double& area : p.injector_m2) area *= factor(random);
    for (auto* sensor : {&p.inlet_sensor, &p.outlet_sensor, &p.exchanger_sensor})
        sensor->gain *= factor(random);
    // One screw sets both pressures of a regulator, and a richer gas wants more air.
    const double regulator = factor(random), gas = factor(random);
    p.gas_no_load_pa *= regulator;
    p.gas_lock_up_pa *= regulator;
    p.gross_j_per_m3 *= gas;
    p.stoichiometric_air *= gas;
}

void vary(faults::Fault& fault, math::Random& random) {
    const double share = random.uniform();
    const auto [low, high] = severity_range(fault);
    fault.severity = std::copysign(low + share * (high - low), fault.severity);
}

}  // namespace

SeverityRange severity_range(const faults::Fault& fault) {
    const faults::CauseInfo& cause = faults::info(fault.cause);
    const double size = std::abs(fault.severity);
    if (cause.on_off || fault.cause == faults::Cause::no_fault) return {size, size};
    // A job may lie outside the range in which anybody notices; it stays where it was put.
    return {std::min(size, std::max((1.0 - severity_spread) * size, cause.least_severity)),
            std::max(size, std::min((1.0 + severity_spread) * size, cause.greatest_severity))};
}

worksite::Job other_house(worksite::Job job, std::uint64_t number) {
    math::Random random(number, "another house");
    vary(job.healthy, random);
    for (faults::Fault& fault : job.faults) vary(fault, random);
    return job;
}

}  // namespace emberpath::trainees
