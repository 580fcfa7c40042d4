#pragma once
/// All quasi-steady quantities at one state, and the derivative of the states.
/// Balances: cell energy, first-order lags of sensors and actuators, chamber gas, cylinder liquid.

#include "sim/plant/air_path.hpp"
#include "sim/plant/burner.hpp"
#include "sim/plant/companion.hpp"
#include "sim/plant/cylinder.hpp"
#include "sim/plant/exchanger.hpp"
#include "sim/plant/gas_supply.hpp"
#include "sim/plant/held.hpp"
#include "sim/plant/plant.hpp"
#include "sim/plant/room_air.hpp"
#include "sim/plant/sensors.hpp"
#include "sim/plant/water_network.hpp"

namespace emberpath::plant {

template <class Real>
struct Algebra {
    WaterFlows<Real> water;
    GasFlows<Real> gas;
    Real air_m3_per_s;
    Real fan_loading;
    Real intake_oxygen{1.0};  // over outdoor air's [-]
    std::array<Real, bank_count> air_ratio;
    Real net_w;
    Real unburnt_m3_per_s;
    GasSide<Real> gas_side;
    Real seam_w_per_k;  // heat capacity of the gas that leaks into the casing
    Real water_kg_per_s, exchanger_kg_per_s, bypass_kg_per_s;
    Real water_side_w_per_k;  // of one cell
};

/// Gas, air and flames; `a.water` is there already. Returns the lit share of the burner's area.
template <class Real>
Real burner_algebra(const Plant<Real>& plant, const State<Real>& x, const Surroundings& at,
                    bool dark, Algebra<Real>& a) {
    const Parameters<Real>& p = plant.parameters;
    a.gas = gas_flows(p, x, at, plant.commands, a.water.heater_m3_per_s);
    a.air_m3_per_s = air_flow(p, x, at);
    a.fan_loading = fan_loading_of(p, a.air_m3_per_s, x[fan_speed]);
    Real lit_share = Real(0.0);
    if (dark) {
        a.net_w = a.unburnt_m3_per_s = Real(0.0);
        a.air_ratio.fill(Real(0.0));
        return lit_share;
    }
    a.intake_oxygen = intake_oxygen(p, x, a.gas, a.air_m3_per_s);
    a.air_ratio = bank_air_ratio(p, plant.flame.lit, a.air_m3_per_s * a.intake_oxygen, a.gas);
    a.net_w = net_heat_w(p, x, a.gas, a.air_ratio);
    a.unburnt_m3_per_s = unburnt_flow(x, a.gas);
    for (std::size_t b = 0; b < bank_count; ++b) lit_share += bank_area_share[b] * x[flame_0 + b];
    return lit_share;
}

template <class Real>
[[nodiscard]] Algebra<Real> algebra(const Plant<Real>& plant, const State<Real>& x,
                                    const Surroundings& at, const Held<Real>& held = {}) {
    const Parameters<Real>& p = plant.parameters;
    Algebra<Real> a;
    a.water = held.water ? held.flows : water_flows(p, x, at);
    const Real lit_share = burner_algebra(plant, x, at, held.dark, a);
    // The floor keeps the effectiveness defined when the fan stands still; no heat is set free then.
    const Real flue_gas = math::maximum(
        a.air_m3_per_s * air_kg_per_m3 + a.gas.total_m3_per_s * p.gas_kg_per_m3, Real(2e-4));
    const Real stays = 1.0 - p.seam_leak_share;
    a.gas_side =
        gas_side(p, x, Firing<Real>{a.net_w * stays, flue_gas * stays, lit_share}, at.ambient_k);
    a.seam_w_per_k = flue_gas * p.seam_leak_share * flue_gas_j_per_kg_k;
    a.water_kg_per_s = a.water.heater_m3_per_s * water_kg_per_m3;
    a.exchanger_kg_per_s = a.water.exchanger_m3_per_s * water_kg_per_m3;
    a.bypass_kg_per_s = a.water.bypass_m3_per_s * water_kg_per_m3;
    a.water_side_w_per_k =
        held.water ? held.water_side_w_per_k : water_side_conductance(p, a.exchanger_kg_per_s);
    return a;
}

namespace heat_capacity {
inline constexpr double water_cell_j_per_k = 0.55e-3 / 8.0 * water_kg_per_m3 * water_j_per_kg_k;
inline constexpr double metal_cell_j_per_k = 3.2 * 385.0 / 8.0;  // 3.2 kg of copper
inline constexpr double pocket_kg = 0.066;                       // outlet mixing pocket
inline constexpr double pocket_loss_w_per_k = 0.3;
inline constexpr double pipe_cell_j_per_k = 0.145 * 4186.0 * 1.15;  // 0.145 L and its copper
inline constexpr double pipe_loss_w_per_k = 0.15;
inline constexpr double casing_j_per_k = 3700.0;
inline constexpr double casing_to_room_w_per_k = 3.0;
}  // namespace heat_capacity

/// Heat [W] that flame gas from a leaking seam leaves in the casing before it escapes.
template <class Real>
[[nodiscard]] Real seam_heat_w(const Algebra<Real>& a, const Real& casing_k) {
    return a.seam_w_per_k * (a.gas_side.flame_theta - enthalpy_temperature(casing_k));
}

/// Heat [W] of the trace heating, as it is driven.
template <class Real>
[[nodiscard]] Real trace_heating_w(const Plant<Real>& plant) {
    const Real supply_v = plant.electrics.supply_v;
    return plant.commands.trace_heating * supply_v * supply_v /
           plant.parameters.electrical.trace_heating_ohm;
}

/// Water, metal, pocket, pipe and casing.
template <class Real>
void thermal_derivative(const Plant<Real>& plant, const State<Real>& x, const Surroundings& at,
                        const Algebra<Real>& a, State<Real>& d) {
    namespace hc = heat_capacity;
    const Real ua = a.water_side_w_per_k;
    const Real flow_w_per_k = a.exchanger_kg_per_s * water_j_per_kg_k;
    Real upstream = Real(at.inlet_water_k);
    Real casing_gain = Real(0.0);
    for (std::size_t i = 0; i < cell_count; ++i) {
        const Real exchange = ua * (x[metal_0 + i] - x[water_0 + i]);
        const Real loss = casing_w_per_k * (x[metal_0 + i] - x[casing_air]);
        d[water_0 + i] = (flow_w_per_k * (upstream - x[water_0 + i]) + exchange) *
                         (1.0 / hc::water_cell_j_per_k);
        d[metal_0 + i] =
            (a.gas_side.to_metal_w[i] - exchange - loss) * (1.0 / hc::metal_cell_j_per_k);
        casing_gain += loss;
        upstream = x[water_0 + i];
    }
    const Real pocket_in = a.exchanger_kg_per_s * (x[water_0 + 7] - x[mixing_pocket]) +
                           a.bypass_kg_per_s * (at.inlet_water_k - x[mixing_pocket]);
    const Real pocket_loss = hc::pocket_loss_w_per_k * (x[mixing_pocket] - x[casing_air]);
    d[mixing_pocket] =
        (pocket_in * water_j_per_kg_k - pocket_loss) * (1.0 / (hc::pocket_kg * water_j_per_kg_k));
    casing_gain += pocket_loss + seam_heat_w(a, x[casing_air]);
    upstream = x[mixing_pocket];
    for (std::size_t i = pipe_0; i < pipe_0 + cell_count; ++i) {
        d[i] = (a.water_kg_per_s * water_j_per_kg_k * (upstream - x[i]) -
                hc::pipe_loss_w_per_k * (x[i] - at.ambient_k)) *
               (1.0 / hc::pipe_cell_j_per_k);
        upstream = x[i];
    }
    casing_gain += trace_heating_w(plant);
    d[casing_air] = (casing_gain - hc::casing_to_room_w_per_k * (x[casing_air] - at.ambient_k)) *
                    (1.0 / hc::casing_j_per_k);
}

/// Actuators and sensors.
template <class Real>
void device_derivative(const Plant<Real>& plant, const State<Real>& x, const Surroundings& at,
                       const Algebra<Real>& a, State<Real>& d) {
    const Parameters<Real>& p = plant.parameters;
    const auto& c = plant.commands;
    d[fan_speed] = fan_acceleration(p, x[fan_speed], a.fan_loading, c.fan_duty);
    const Real asked_pa = c.manifold_pressure_pa;
    const Real given_pa = asked_pa * (1.0 + p.gas_valve_overset_per_pa * asked_pa);
    const Real valve_target =
        math::select(p.gas_valve_stuck > Real(0.5), p.gas_valve_held_pa, given_pa) *
        c.main_solenoid;
    d[valve_pressure] = (valve_target - x[valve_pressure]) * (1.0 / 0.12);
    d[water_valve] = water_valve_rate(plant, x);
    d[bypass_valve] = bypass_rate(plant, x);
    const Real turns = math::select(a.water.heater_m3_per_s > p.flow_sensor_sticks_m3_per_s,
                                    a.water.heater_m3_per_s * p.flow_sensor_gain, Real(0.0));
    d[flow_reading] = (turns - x[flow_reading]) * (1.0 / 0.12);
    d[inlet_bead] = (at.inlet_water_k - x[inlet_bead]) * (1.0 / 1.5);
    d[outlet_bead] = x[mixing_pocket] - x[outlet_bead];
    d[exchanger_bead] = x[water_0 + 7] - x[exchanger_bead];
    d[ambient_bead] = (at.ambient_k - x[ambient_bead]) * (1.0 / 20.0);
    d[ionisation] =
        (steady_ionisation_a(p, x[flame_0], a.air_ratio[0]) - x[ionisation]) * (1.0 / 0.12);
    d[flue_gas] = (temperature_of_enthalpy(a.gas_side.leaving_theta) - x[flue_gas]) * (1.0 / 1.5);
    for (std::size_t b = 0; b < bank_count; ++b)
        d[flame_0 + b] = (plant.flame.lit[b] - x[flame_0 + b]) * (1.0 / 0.10);
    // The limiter is strapped to the last return bend: half metal, half water.
    const Real bend = 0.5 * (x[metal_0 + 7] + x[water_0 + 7]);
    d[limiter_element] = (bend - x[limiter_element]) * (1.0 / 4.0);
}

/// Liquid of both cylinders, creep of the regulator, unburnt gas in the chamber.
template <class Real>
void gas_store_derivative(const Plant<Real>& plant, const State<Real>& x, const Surroundings& at,
                          const Algebra<Real>& a, State<Real>& d) {
    const Parameters<Real>& p = plant.parameters;
    constexpr double chamber_m3 = 0.020;
    d[unburnt_gas] = a.unburnt_m3_per_s - x[unburnt_gas] * a.air_m3_per_s * (1.0 / chamber_m3);
    const Real fed = math::select(p.cylinder_fed > Real(0.5), Real(1.0), Real(0.0));
    const Real boiled_kg_per_s = fed * a.gas.pipe_m3_per_s * p.gas_kg_per_m3;
    const Real from_reserve = boiled_kg_per_s * a.gas.reserve_share;
    const Real from_first = boiled_kg_per_s - from_reserve;
    d[cylinder_liquid_kg] = -from_first;
    d[cylinder_liquid_k] =
        cylinder_warming(p, x[cylinder_liquid_k], x[cylinder_liquid_kg], from_first, at);
    d[reserve_liquid_kg] = -from_reserve;
    d[reserve_liquid_k] =
        cylinder_warming(p, x[reserve_liquid_k], x[reserve_liquid_kg], from_reserve, at);
    d[regulator_creep] = creep_rate(p, x[regulator_creep], a.gas.pipe_m3_per_s);
}

/// Pressure behind the cold valve, and water in the casing. While water can move the pressure follows the
/// network; shut in, it falls by what leaks out of the pipes' small elasticity.
template <class Real>
void water_store_derivative(const Plant<Real>& plant, const State<Real>& x, const Surroundings& at,
                            const Algebra<Real>& a, State<Real>& d) {
    const Parameters<Real>& p = plant.parameters;
    constexpr double settles_s = 0.3;
    constexpr double gives_m3_per_pa = 2.0e-10;  // pipes, hoses and a little air: chosen
    constexpr double stays_in_casing = 0.2;      // of a leak; the rest runs out below: chosen
    constexpr double dries_in_s = 7200.0;
    const double moves =
        at.water_isolator > 1e-3 || at.hot_tap_conductance > 0.0 || at.outlet_count > 0 ? 1.0 : 0.0;
    const Real open = math::select(p.cross_flow_gain > Real(0.0), Real(1.0), Real(moves));
    const Real pressure = x[water_pressure];
    const Real leak = casing_leak(p, pressure);
    const Real lost = leak + relief_weep(p, pressure);
    d[water_pressure] = open * ((a.water.inlet_pa - pressure) * (1.0 / settles_s)) -
                        (1.0 - open) * lost * (1.0 / gives_m3_per_pa);
    d[casing_water] =
        leak * (stays_in_casing * water_kg_per_m3) - x[casing_water] * (1.0 / dries_in_s);
}

/// d(state)/dt in every entry of `d`.
template <class Real>
void state_derivative(const Plant<Real>& plant, const State<Real>& x, const Surroundings& at,
                      const Held<Real>& held, State<Real>& d) {
    const Algebra<Real> a = algebra(plant, x, at, held);
    thermal_derivative(plant, x, at, a, d);
    device_derivative(plant, x, at, a, d);
    gas_store_derivative(plant, x, at, a, d);
    water_store_derivative(plant, x, at, a, d);
    const auto companion =
        companion_rates(plant.parameters, x, at, plant.commands,
                        CompanionFlows<Real>{a.water.heater_m3_per_s, a.gas.companion_m3_per_s});
    d[companion_share] = companion.share_per_s;
    d[companion_outlet] = companion.outlet_k_per_s;
    room_derivative(
        plant.parameters, x, at,
        RoomSource<Real>{a.air_m3_per_s, burnt_gas(x, a.gas, a.air_ratio), plant.flame.co_m3_per_s},
        d);
}

}  // namespace emberpath::plant
