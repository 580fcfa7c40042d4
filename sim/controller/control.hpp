#pragma once
/// One tick of the controller: decode, sequence, loop, commands.

#include "sim/controller/air_proof.hpp"
#include "sim/controller/controller.hpp"
#include "sim/controller/household.hpp"
#include "sim/controller/sequence.hpp"
#include "sim/controller/temperature_loop.hpp"
#include "sim/math/functions.hpp"

namespace emberpath::controller {

namespace frost {
inline constexpr double on_k = 276.15;
inline constexpr double off_k = 279.15;
}  // namespace frost

/// Temperature [K] of a 10 kohm, B 3435 K thermistor: 1/T = 1/298.15 + ln(R/R25)/B.   [iec60539]
template <class Real>
[[nodiscard]] Real decoded_k(const Real& ohm) {
    const Real sane = math::clamp(ohm, Real(1.0), Real(1.0e7));
    return 1.0 / (1.0 / 298.15 + math::log(sane * 1.0e-4) * (1.0 / 3435.0));
}

template <class Real>
void decode(WorkingState<Real>& s, const signals::SensorSignals<Real>& in, const Panel& panel) {
    s.flow_m3_per_s = in.flow_m3_per_s;
    s.inlet_k = decoded_k(in.inlet_ohm);
    s.outlet_k = decoded_k(in.outlet_ohm);
    s.exchanger_k = decoded_k(in.exchanger_ohm);
    s.ambient_k = decoded_k(in.ambient_ohm);
    s.fan_rev_per_s = in.fan_rev_per_s;
    s.fan_current_a = in.fan_current_a;
    s.air_tube_pa = in.air_tube_pa;
    s.ionisation_a = in.ionisation_current_a;
    s.water_valve_position = in.water_valve_position;
    const auto powered =
        math::both(Real(panel.powered) > Real(0.5), in.supply_v > Real(signals::board_drops_out_v));
    s.powered = math::select(powered, Real(1.0), Real(0.0));
    s.link_unit_v = in.link_unit_v * s.powered;
    for (std::size_t i = 0; i < most_wall_controllers; ++i)
        s.link_wall_v[i] = in.link_wall_v[i] * s.powered;
}

/// Trace heating comes on when it is cold around the heater and goes off with a margin. Both its sensors
/// must be in range: an open ambient sensor would read as deep frost for ever, so the controller gives the
/// protection up without a word.
template <class Real>
void protect_from_frost(WorkingState<Real>& s, const signals::SensorSignals<Real>& in,
                        const SettingsOf<Real>& settings) {
    using math::both;
    using math::either;
    const Real coldest = math::minimum(s.ambient_k, s.exchanger_k);
    const auto believed = both(math::negate(out_of_range(in.ambient_ohm)),
                               math::negate(out_of_range(in.exchanger_ohm)));
    const auto allowed =
        both(both(believed, settings.frost_protection > Real(0.5)), s.powered > Real(0.5));
    const auto goes_on = either(coldest < Real(frost::on_k),
                                both(s.trace_heating > Real(0.5), coldest < Real(frost::off_k)));
    s.trace_heating = math::select(both(allowed, goes_on), Real(1.0), 0.0);
}

/// Fan target, manifold command and firing rate of the phases other than run.
template <class Real>
void idle_targets(WorkingState<Real>& s, const Ratings<Real>& rated) {
    using math::either;
    using math::select;
    const auto lighting = either(is(s.phase, Phase::light_up), is(s.phase, Phase::prove));
    const auto sweeping =
        either(either(purging(s), is(s.phase, Phase::post_purge)),
               math::both(is(s.phase, Phase::lockout), s.phase_s < Real(sequence::post_purge_s)));
    s.fan_target_rev_per_s = select(lighting, sequence::light_up_rev_per_s,
                                    select(sweeping, Real(sequence::purge_rev_per_s), 0.0));
    const Real light_pa = sequence::light_up_manifold_share * rated.full_manifold_pa;
    s.manifold_command_pa = select(lighting, light_pa, 0.0);
    const Real light_w = loop::stage_share[0] * rated.full_heat_input_w *
                         math::square_root(Real(sequence::light_up_manifold_share));
    s.heat_demand_w = select(lighting, light_w, 0.0);
    // Water valve and bypass wait open and at their set place for the next draw.
    s.water_valve = Real(1.0);
    s.bypass = resting_bypass(s.set_point_k);
}

/// Take `active` where the lane runs, `idle` elsewhere.
template <class Real>
void merge_run(WorkingState<Real>& s, const WorkingState<Real>& active,
               const WorkingState<Real>& idle, const math::Mask<Real>& running) {
    using math::select;
    s.loop_correction_k = select(running, active.loop_correction_k, idle.loop_correction_k);
    s.banks_open = select(running, active.banks_open, idle.banks_open);
    s.bank_hold_s = select(running, active.bank_hold_s, idle.bank_hold_s);
    s.heat_demand_w = select(running, active.heat_demand_w, idle.heat_demand_w);
    s.manifold_command_pa = select(running, active.manifold_command_pa, idle.manifold_command_pa);
    s.water_valve = select(running, active.water_valve, idle.water_valve);
    s.bypass = select(running, active.bypass, idle.bypass);
    s.companion_called = select(running, active.companion_called, Real(0.0));
    s.fan_target_rev_per_s =
        select(running, active.fan_target_rev_per_s, idle.fan_target_rev_per_s);
}

template <class Real>
[[nodiscard]] signals::ActuatorCommands<Real> commands_of(const WorkingState<Real>& s,
                                                          const math::Mask<Real>& running) {
    using math::either;
    using math::select;
    signals::ActuatorCommands<Real> out;
    out.fan_duty = s.fan_duty;
    const Real one(1.0), zero(0.0);
    const auto lighting = is(s.phase, Phase::light_up);
    const auto gas = either(either(lighting, is(s.phase, Phase::prove)), running);
    out.spark = select(lighting, one, zero);
    out.main_solenoid = select(gas, one, zero);
    out.bank_solenoid[0] = out.main_solenoid;
    out.bank_solenoid[1] = select(math::both(running, s.banks_open > Real(1.5)), one, zero);
    out.bank_solenoid[2] = select(math::both(running, s.banks_open > Real(2.5)), one, zero);
    out.manifold_pressure_pa = s.manifold_command_pa;
    out.water_valve = s.water_valve;
    out.bypass = s.bypass;
    out.trace_heating = s.trace_heating;
    out.companion_call = s.companion_called;
    out.companion_set_k = s.set_point_k;
    return out;
}

template <class Real>
signals::ActuatorCommands<Real> control(ControllerState<Real>& s,
                                        const signals::SensorSignals<Real>& sensors,
                                        const Panel& panel, const SettingsOf<Real>& settings) {
    const Ratings<Real> rated = ratings(settings);
    decode<Real>(s, sensors, panel);
    hear_household<Real>(s, panel, settings);
    step_sequence(s, sensors, panel);
    protect_from_frost<Real>(s, sensors, settings);
    const auto running = is(s.phase, Phase::run);
    follow_air<Real>(s, running, is(s.phase, Phase::restart), rated.air_density_share,
                     settings.air_by_tube);
    WorkingState<Real> active = s;
    WorkingState<Real> idle = s;
    modulate(active, rated);
    call_companion<Real>(active, rated, settings.companion);
    idle_targets(idle, rated);
    merge_run<Real>(s, active, idle, running);
    s.fan_duty = fan_duty<Real>(s) * s.powered;
    const auto commands = commands_of<Real>(s, running);
    s.valve_driven = commands.main_solenoid * s.powered;
    return commands;
}

}  // namespace emberpath::controller
