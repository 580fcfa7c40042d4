#pragma once
/// One lane of the controller's memory as plain values.

#include "sim/controller/controller.hpp"
#include "sim/math/pack.hpp"

namespace emberpath::controller {

template <class Real>
Readout readout(const ControllerState<Real>& s, std::size_t i) {
    using math::lane;
    Readout r{};
    r.phase = static_cast<Phase>(static_cast<int>(lane(s.phase, i)));
    r.event = static_cast<Event>(static_cast<int>(lane(s.event, i)));
    r.latest_event = static_cast<Event>(static_cast<int>(lane(s.latest_event, i)));
    r.failed_light_ups = lane(s.failed_light_ups, i);
    r.flow_m3_per_s = lane(s.flow_m3_per_s, i);
    r.inlet_k = lane(s.inlet_k, i);
    r.outlet_k = lane(s.outlet_k, i);
    r.exchanger_k = lane(s.exchanger_k, i);
    r.ambient_k = lane(s.ambient_k, i);
    r.fan_rev_per_s = lane(s.fan_rev_per_s, i);
    r.fan_target_rev_per_s = lane(s.fan_target_rev_per_s, i);
    r.fan_current_a = lane(s.fan_current_a, i);
    r.ionisation_a = lane(s.ionisation_a, i);
    r.manifold_command_pa = lane(s.manifold_command_pa, i);
    r.heat_demand_w = lane(s.heat_demand_w, i);
    r.banks_open =
        r.phase == Phase::run ? lane(s.banks_open, i) : (r.heat_demand_w > 0.0 ? 1.0 : 0.0);
    r.loop_correction_k = lane(s.loop_correction_k, i);
    r.air_trim = lane(s.air_trim, i);
    r.water_valve = lane(s.water_valve, i);
    r.bypass = lane(s.bypass, i);
    r.set_point_k = lane(s.set_point_k, i);
    r.powered = lane(s.powered, i);
    return r;
}

}  // namespace emberpath::controller
