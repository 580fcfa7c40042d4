#pragma once
/// One lane of the controller's memory as plain values.

#include "sim/controller/sequence.hpp"
#include "sim/math/pack.hpp"

namespace emberpath::controller {

template <class Real>
void read_history(Readout& r, const EventHistory<Real>& h, std::size_t i) {
    using math::lane;
    r.power_ups = lane(h.power_ups, i);
    for (std::size_t line = 0; line < history_lines; ++line) {
        r.history[line].event = static_cast<Event>(static_cast<int>(lane(h.event[line], i)));
        r.history[line].count = lane(h.count[line], i);
        r.history[line].age_s = lane(h.clock_s, i) - lane(h.at_s[line], i);
    }
}

template <class Real>
void read_household(Readout& r, const WorkingState<Real>& s, std::size_t i) {
    using math::lane;
    r.set_point_k = lane(s.set_point_k, i);
    r.household_on = lane(s.household_on, i);
    r.set_by = lane(s.set_by, i);
    r.link_unit_v = lane(s.link_unit_v, i);
    for (std::size_t w = 0; w < most_wall_controllers; ++w) {
        r.link_wall_v[w] = lane(s.link_wall_v[w], i);
        r.heard[w] = lane(s.heard[w], i);
    }
}

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
    r.feed_forward_w = lane(feed_forward_w<Real>(s), i);
    r.proportional_k = loop::proportional * (lane(s.set_point_k, i) - lane(s.outlet_k, i));
    r.air_trim = lane(s.air_trim, i);
    r.water_valve = lane(s.water_valve, i);
    r.bypass = lane(s.bypass, i);
    r.powered = lane(s.powered, i);
    r.water_valve_position = lane(s.water_valve_position, i);
    r.fan_duty = lane(s.fan_duty, i);
    r.valve_driven = lane(s.valve_driven, i);
    r.trace_heating = lane(s.trace_heating, i);
    const bool refused = lane(resets_left<Real>(s), i) < 0.5;
    r.restart_needed = r.phase == Phase::lockout && refused ? 1.0 : 0.0;
    read_household<Real>(r, s, i);
    read_history(r, s.history, i);
    return r;
}

}  // namespace emberpath::controller
