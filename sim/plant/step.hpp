#pragma once
/// One tick of the plant, as templates; plant.cpp, plant_wide.cpp and plant_widest.cpp instantiate them.
/// Fixed-step RK4 by Boost.Odeint, two substeps of 50 ms: actuators and flame flags jump every tick, so
/// adaptive and multistep methods would restart ten times a second (docs/physics/plant.md).

#include <boost/numeric/odeint/stepper/runge_kutta4.hpp>

#include "sim/math/hash.hpp"
#include "sim/plant/algebra.hpp"
#include "sim/plant/flue_composition.hpp"

namespace emberpath::plant {

inline constexpr int substeps = 2;
inline constexpr double least_rail_v = 15.0;  // of 24 V: below it the board is dead

template <class Real>
State<Real> derivative(const Plant<Real>& plant, const State<Real>& state, const Surroundings& at) {
    State<Real> d;
    state_derivative(plant, state, at, Held<Real>{}, d);
    return d;
}

template <class Real>
void settle_cold(Plant<Real>& plant, const Surroundings& at) {
    plant.flame = Flame<Real>{};
    plant.commands = signals::ActuatorCommands<Real>{};
    State<Real>& x = plant.state;
    x.fill(Real(0.0));
    for (std::size_t i = water_0; i < fan_speed; ++i) x[i] = Real(at.ambient_k);
    for (std::size_t i = inlet_bead; i <= ambient_bead; ++i) x[i] = Real(at.ambient_k);
    x[inlet_bead] = Real(at.inlet_water_k);
    x[flue_gas] = Real(at.ambient_k);
    x[limiter_element] = Real(at.ambient_k);
    x[casing_air] = Real(at.ambient_k);
    x[companion_outlet] = Real(at.ambient_k);
    x[water_valve] = Real(1.0);
    x[cylinder_liquid_k] = Real(at.cylinder_ambient_k);
    x[cylinder_liquid_kg] = plant.parameters.cylinder_start_kg;
    x[reserve_liquid_k] = Real(at.cylinder_ambient_k);
    x[reserve_liquid_kg] = plant.parameters.reserve_start_kg;
    x[water_pressure] = mains_pressure(plant.parameters, at);
}

template <class Real>
void change_cylinder(Plant<Real>& plant, const Surroundings& at) {
    plant.state[cylinder_liquid_kg] = plant.parameters.cylinder_full_kg;
    plant.state[cylinder_liquid_k] = Real(at.cylinder_ambient_k);
}

template <class Real>
void change_reserve(Plant<Real>& plant, const Surroundings& at) {
    plant.state[reserve_liquid_kg] = plant.parameters.cylinder_full_kg;
    plant.state[reserve_liquid_k] = Real(at.cylinder_ambient_k);
}

template <class Real>
signals::SensorSignals<Real> sense(const Plant<Real>& plant, const Surroundings& at) {
    const Parameters<Real>& p = plant.parameters;
    const State<Real>& x = plant.state;
    signals::SensorSignals<Real> s;
    s.flow_m3_per_s = x[flow_reading];
    s.inlet_ohm = seen_ohm(x[inlet_bead], p.inlet_sensor);
    s.outlet_ohm = seen_ohm(x[outlet_bead], p.outlet_sensor);
    s.exchanger_ohm = seen_ohm(x[exchanger_bead], p.exchanger_sensor);
    s.ambient_ohm = seen_ohm(x[ambient_bead], p.ambient_sensor);
    s.fan_rev_per_s = x[fan_speed] * p.tachometer_gain;
    const Real air = air_flow(p, x, at);
    const Real loading = fan_loading_of(p, air, x[fan_speed]);
    s.fan_current_a = fan_current(p, x[fan_speed], loading) * at.power_on;
    s.air_tube_pa = air_tube_pressure(p, air, x[fan_speed], at);
    s.ionisation_current_a = x[ionisation] * plant.electrics.flame_signal;
    s.water_valve_position = x[water_valve];
    s.supply_v = plant.electrics.supply_v * at.power_on;
    s.link_unit_v = plant.electrics.link_unit_v * at.power_on;
    for (std::size_t i = 0; i < link_runs; ++i)
        s.link_wall_v[i] = plant.electrics.link_wall_v[i] * at.power_on;
    const Real intact = (1.0 - plant.flame.limiter_tripped) * (1.0 - p.limiter_bad);
    s.limiter_closed = math::maximum(intact, p.limiter_bridged);
    return s;
}

/// Flame flags and limiter for the coming tick, at the state where it begins.
template <class Real>
void flame_logic(Plant<Real>& plant, const Surroundings& at) {
    const Parameters<Real>& p = plant.parameters;
    const State<Real>& x = plant.state;
    Flame<Real>& flame = plant.flame;
    const Real one(1.0), zero(0.0);
    const auto works =
        math::both(p.igniter_works > Real(0.5), plant.electrics.spark_arrives > Real(0.5));
    const auto sparking = math::both(plant.commands.spark > Real(0.5), works);
    flame.spark_s = math::select(sparking, flame.spark_s + signals::tick_s, zero);
    const Real water = math::all(p.companion_fitted == Real(0.0))
                           ? Real(0.0)
                           : water_flows(p, x, at).heater_m3_per_s;
    const GasFlows<Real> gas = gas_flows(p, x, at, plant.commands, water);
    const Real air = air_flow(p, x, at);
    const Real oxygen = intake_oxygen(p, x, gas, air);
    const auto ratio = bank_air_ratio(p, flame.lit, air * oxygen, gas);
    flame.co_m3_per_s = carbon_monoxide_m3_per_s(p, made_by_flame(p, x, gas, ratio));
    const auto next = next_lit(p, flame.lit, gas, ratio, flame.spark_s);
    const auto ignited = math::both(flame.lit[0]<Real(0.5), next[0]> Real(0.5));
    flame.rough_light_up_m3 = math::select(ignited, x[unburnt_gas], flame.rough_light_up_m3);
    flame.lit = next;
    flame.limiter_tripped =
        math::select(x[limiter_element] > limiter_opens_k - p.limiter_opens_early_k, one,
                     math::select(x[limiter_element] < limiter_closes_k - p.limiter_opens_early_k,
                                  zero, flame.limiter_tripped));
}

/// What the actuators do with the commands. Without mains everything electrical is at rest; the water
/// valve and the bypass are motor-driven and stay where they are.
template <class Real>
void hold_commands(Plant<Real>& plant, const Surroundings& at,
                   const signals::ActuatorCommands<Real>& commands) {
    const Real on = math::select(plant.electrics.supply_v > Real(signals::board_drops_out_v),
                                 Real(at.power_on), Real(0.0));
    auto& held = plant.commands;
    held = commands;
    held.fan_duty *= on;
    held.spark *= on;
    held.main_solenoid *= on * plant.electrics.valve_pulls;
    for (Real& solenoid : held.bank_solenoid) solenoid *= on;
    held.manifold_pressure_pa *= on;
    held.trace_heating *= on;
    held.companion_call *= on;
    held.water_valve = on * commands.water_valve + (1.0 - on) * plant.state[water_valve];
    held.bypass = on * commands.bypass + (1.0 - on) * plant.state[bypass_valve];
}

/// The electrical parameters of one lane.
template <class Real>
ElectricalParameters<double> electrical_of(const Plant<Real>& plant, std::size_t lane) {
    constexpr std::size_t count = sizeof(ElectricalParameters<double>) / sizeof(double);
    ElectricalParameters<double> one;
    const Real* from = reinterpret_cast<const Real*>(&plant.parameters.electrical);
    double* to = reinterpret_cast<double*>(&one);
    for (std::size_t i = 0; i < count; ++i) to[i] = math::lane(from[i], lane);
    return one;
}

/// New parameters are about to be set: does the network have to be asked again?
template <class Real>
void note_electrical_change(Plant<Real>& plant, std::size_t lane,
                            const ElectricalParameters<double>& next) {
    LaneElectrics& e = plant.electrics.lane[lane];
    if (!same(electrical_of(plant, lane), next)) e.stale = plant.electrics.any_stale = true;
    e.moving = next.moisture_s > 0.0 || next.valve_lead_short_s > 0.0;
    plant.electrics.any_moving = false;
    for (const LaneElectrics& one : plant.electrics.lane)
        plant.electrics.any_moving = plant.electrics.any_moving || one.moving;
}

template <class Real>
void take_over(Plant<Real>& plant, std::size_t lane, const Wiring& wiring) {
    Electrics<Real>& e = plant.electrics;
    const ElectricalReadings& r = e.lane[lane].readings;
    const double board_v = r.rail_v > least_rail_v ? r.terminal_v : 0.0;
    math::set_lane(e.supply_v, lane, board_v);
    math::set_lane(e.flame_signal, lane, flame_signal_share(r));
    math::set_lane(e.spark_arrives, lane, spark_at_burner(wiring));
    math::set_lane(e.valve_pulls, lane, valve_pulls_in(wiring, r));
    math::set_lane(e.link_unit_v, lane, r.link_unit_v);
    for (std::size_t i = 0; i < link_runs; ++i)
        math::set_lane(e.link_wall_v[i], lane, r.link_wall_v[i]);
}

template <class Real>
void age_lane(Plant<Real>& plant, std::size_t lane, const Surroundings& at) {
    LaneElectrics& e = plant.electrics.lane[lane];
    if (!e.moving) return;
    age(e, electrical_of(plant, lane),
        {math::lane(plant.state[casing_air], lane), at.ambient_k, at.electrical.damp,
         math::lane(plant.commands.main_solenoid, lane)});
}

template <class Real>
void update_electrics(Plant<Real>& plant, const Surroundings& at) {
    Electrics<Real>& e = plant.electrics;
    const bool as_before = same(e.worked_out_for, at.electrical);
    if (as_before && !e.any_stale && !e.any_moving) return;
    for (std::size_t i = 0; i < math::lanes<Real>; ++i) {
        age_lane(plant, i, at);
        if (as_before && !e.lane[i].stale) continue;
        Wiring wiring{electrical_of(plant, i), at.electrical, e.lane[i].latches, {}};
        work_out(e.lane[i], wiring);
        take_over(plant, i, wiring);
    }
    e.worked_out_for = at.electrical;
    e.any_stale = false;
}

/// States that fade towards nothing are nothing below 1e-30 of their unit. Left to themselves they would stay among
/// the subnormal numbers for as long as the heater rests, and arithmetic with those is several times slower.
template <class Real>
void forget_traces(State<Real>& x) {
    // clang-format off
    constexpr std::array<std::size_t, 16> fading{
        fan_speed, valve_pressure, water_valve, bypass_valve, flow_reading, ionisation, flame_0, flame_0 + 1,
        flame_0 + 2, unburnt_gas, regulator_creep, casing_water, room_oxygen_used, room_co2, room_co, companion_share};
    // clang-format on
    for (const std::size_t i : fading)
        x[i] = math::select(math::magnitude(x[i]) < Real(1e-30), Real(0.0), x[i]);
}

/// The states over one tick in `steps` RK4 steps, commands and flame flags held.
template <class Real>
void step_states(Plant<Real>& plant, const Surroundings& at, int steps) {
    using Stepper = boost::numeric::odeint::runge_kutta4<State<Real>, double, State<Real>, double,
                                                         boost::numeric::odeint::array_algebra>;
    Stepper stepper;
    const double step_s = signals::tick_s / steps;
    const Held<Real> standing = held(plant, at);
    const auto system = [&](const State<Real>& x, State<Real>& d, double) {
        state_derivative(plant, x, at, standing, d);
    };
    for (int i = 0; i < steps; ++i) stepper.do_step(system, plant.state, i * step_s, step_s);
    // Boiling stops at an empty cylinder, a leak at an empty pipe: the last trace must not turn negative.
    for (const std::size_t i : {cylinder_liquid_kg, reserve_liquid_kg, water_pressure})
        plant.state[i] = math::maximum(plant.state[i], Real(0.0));
    forget_traces(plant.state);
}

template <class Real>
void advance(Plant<Real>& plant, const Surroundings& at,
             const signals::ActuatorCommands<Real>& commands) {
    hold_commands(plant, at, commands);
    flame_logic(plant, at);
    step_states(plant, at, substeps);
}

template <class Real>
void set_parameters(Plant<Real>& plant, std::size_t lane, const PlantParameters& parameters) {
    note_electrical_change(plant, lane, parameters.electrical);
    const double* from = flat(parameters);
    Real* to = flat(plant.parameters);
    for (std::size_t i = 0; i < parameter_count; ++i) math::set_lane(to[i], lane, from[i]);
}

template <class Real>
Electrics<double> one_lane(const Electrics<Real>& all, std::size_t lane) {
    Electrics<double> one;
    one.lane[0] = all.lane[lane];
    one.worked_out_for = all.worked_out_for;
    one.any_stale = all.lane[lane].stale;
    one.any_moving = all.lane[lane].moving;
    one.supply_v = math::lane(all.supply_v, lane);
    one.flame_signal = math::lane(all.flame_signal, lane);
    one.spark_arrives = math::lane(all.spark_arrives, lane);
    one.valve_pulls = math::lane(all.valve_pulls, lane);
    one.link_unit_v = math::lane(all.link_unit_v, lane);
    for (std::size_t i = 0; i < link_runs; ++i)
        one.link_wall_v[i] = math::lane(all.link_wall_v[i], lane);
    return one;
}

template <class Real>
Plant<double> one_lane(const Plant<Real>& plant, std::size_t lane) {
    Plant<double> one;
    const Real* from = flat(plant.parameters);
    double* to = flat(one.parameters);
    for (std::size_t i = 0; i < parameter_count; ++i) to[i] = math::lane(from[i], lane);
    for (std::size_t i = 0; i < state_count; ++i) one.state[i] = math::lane(plant.state[i], lane);
    for (std::size_t b = 0; b < bank_count; ++b) {
        one.flame.lit[b] = math::lane(plant.flame.lit[b], lane);
        one.commands.bank_solenoid[b] = math::lane(plant.commands.bank_solenoid[b], lane);
    }
    one.flame.spark_s = math::lane(plant.flame.spark_s, lane);
    one.flame.rough_light_up_m3 = math::lane(plant.flame.rough_light_up_m3, lane);
    one.flame.co_m3_per_s = math::lane(plant.flame.co_m3_per_s, lane);
    one.flame.limiter_tripped = math::lane(plant.flame.limiter_tripped, lane);
    one.commands.fan_duty = math::lane(plant.commands.fan_duty, lane);
    one.commands.spark = math::lane(plant.commands.spark, lane);
    one.commands.main_solenoid = math::lane(plant.commands.main_solenoid, lane);
    one.commands.manifold_pressure_pa = math::lane(plant.commands.manifold_pressure_pa, lane);
    one.commands.water_valve = math::lane(plant.commands.water_valve, lane);
    one.commands.bypass = math::lane(plant.commands.bypass, lane);
    one.commands.trace_heating = math::lane(plant.commands.trace_heating, lane);
    one.commands.companion_call = math::lane(plant.commands.companion_call, lane);
    one.commands.companion_set_k = math::lane(plant.commands.companion_set_k, lane);
    one.electrics = one_lane(plant.electrics, lane);
    return one;
}

template <class Real>
std::uint64_t state_hash(const Plant<Real>& plant, std::size_t lane) {
    const Plant<double> one = one_lane(plant, lane);
    math::Hash hash;
    for (const double x : one.state) hash.add(x);
    for (const double lit : one.flame.lit) hash.add(lit);
    hash.add(one.flame.spark_s);
    hash.add(one.flame.rough_light_up_m3);
    hash.add(one.flame.limiter_tripped);
    hash.add(one.commands.fan_duty);
    hash.add(one.commands.manifold_pressure_pa);
    hash.add(one.commands.main_solenoid);
    const Latches& latches = one.electrics.lane[0].latches;
    for (const double latch : {latches.safety_switch_tripped, latches.breaker_tripped,
                               latches.fuse_blown, latches.wetness, latches.lead_touches})
        hash.add(latch);
    return hash.value();
}

template <class Real>
Observables observe(const Plant<Real>& plant, std::size_t lane, const Surroundings& at) {
    return observe_one(one_lane(plant, lane), at);
}

}  // namespace emberpath::plant
