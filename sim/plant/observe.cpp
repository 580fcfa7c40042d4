// Instrument quantities of one heater at its present state.
#include <algorithm>

#include "sim/plant/gauges_impl.hpp"
#include "sim/plant/step.hpp"

namespace emberpath::plant {
namespace {

void observe_gas(const Plant<double>& plant, const Algebra<double>& a,
                 const TestPoints<double>& points, Observables& o) {
    o.before_regulator_pa = a.gas.upstream_pa;
    o.before_gas_isolator_pa = points.before_gas_isolator_pa;
    o.gas_m3_per_s = a.gas.total_m3_per_s;
    o.heat_input_w = a.gas.total_m3_per_s * plant.parameters.gross_j_per_m3;
}

void observe_heat(const Plant<double>& plant, const Surroundings& at, const Algebra<double>& a,
                  Observables& o) {
    const Parameters<double>& p = plant.parameters;
    const State<double>& x = plant.state;
    const State<double> d = derivative(plant, x, at);
    const double capacity = a.gas_side.flue_gas_kg_per_s * flue_gas_j_per_kg_k;
    const double seam_w =
        a.seam_w_per_k * (enthalpy_temperature(x[casing_air]) - enthalpy_temperature(at.ambient_k));
    const double burnt_gross_w = a.net_w / p.net_to_gross;
    const double unburnt_w = o.heat_input_w - burnt_gross_w;
    o.flue_loss_w = capacity * (a.gas_side.leaving_theta - enthalpy_temperature(at.ambient_k)) +
                    (burnt_gross_w - a.net_w) + unburnt_w;
    o.heat_to_water_w = water_j_per_kg_k * (a.exchanger_kg_per_s + a.bypass_kg_per_s) *
                        (x[mixing_pocket] - at.inlet_water_k);
    o.casing_loss_w =
        heat_capacity::casing_to_room_w_per_k * (x[casing_air] - at.ambient_k) + seam_w;
    o.trace_heating_w = trace_heating_w(plant);
    o.storage_w = heat_capacity::pocket_kg * water_j_per_kg_k * d[mixing_pocket] +
                  heat_capacity::casing_j_per_k * d[casing_air];
    for (std::size_t i = 0; i < cell_count; ++i)
        o.storage_w += heat_capacity::water_cell_j_per_k * d[water_0 + i] +
                       heat_capacity::metal_cell_j_per_k * d[metal_0 + i];
}

void observe_cylinders(const Plant<double>& plant, const Algebra<double>& a, Observables& o) {
    const Parameters<double>& p = plant.parameters;
    const State<double>& x = plant.state;
    o.cylinder_kg = x[cylinder_liquid_kg];
    o.cylinder_liquid_k = x[cylinder_liquid_k];
    o.vapour_pressure_pa = propane_vapour_pressure(x[cylinder_liquid_k]);
    o.reserve_kg = x[reserve_liquid_kg];
    o.reserve_liquid_k = x[reserve_liquid_k];
    o.reserve_in_use = a.gas.reserve_share;
    o.cylinder_pa = vapour_of(x[cylinder_liquid_k], x[cylinder_liquid_kg], p.ambient_pa).gauge_pa *
                    (1.0 - p.cylinder_empty);
    o.reserve_pa = vapour_of(x[reserve_liquid_k], x[reserve_liquid_kg], p.ambient_pa).gauge_pa;
}

/// Pressures and leaks on the water side, and what each listed outlet gives.
void observe_water(const Plant<double>& plant, const Surroundings& at, const Algebra<double>& a,
                   Observables& o) {
    const Parameters<double>& p = plant.parameters;
    const State<double>& x = plant.state;
    const double q = a.water.heater_m3_per_s;
    const double cross = a.water.cross_m3_per_s;
    o.hot_water_m3_per_s = q;
    o.cold_water_pa = a.water.cold_pa;
    o.water_inlet_pa = x[water_pressure];
    o.strainer_drop_pa = p.strainer_resistance * q * q;
    o.relief_weep_m3_per_s = relief_weep(p, x[water_pressure]);
    o.casing_leak_m3_per_s = casing_leak(p, x[water_pressure]);
    o.casing_water_kg = x[casing_water];
    o.cross_flow_m3_per_s = cross;
    const double own_k = x[pipe_0 + cell_count - 1];
    const double piped_k = own_k + x[companion_share] * (x[companion_outlet] - own_k);
    const double all = q / (1.0 - x[companion_share]);
    o.companion_share = x[companion_share];
    o.companion_outlet_k = x[companion_outlet];
    o.tap_water_k = piped_k + (at.inlet_water_k - piped_k) * (cross / (all + cross + 1e-12));
    const double cold = tempering_cold_share(p, piped_k, at.inlet_water_k);
    for (std::size_t i = 0; i < at.outlet_count; ++i) {
        const Outlet& outlet = at.outlets[i];
        const double driving = std::max(a.water.dividing_pa - outlet.head_pa, 0.0);
        const double open = p.tap_opening[outlet.tap] * outlet.conductance;
        o.tap_m3_per_s[outlet.tap] = open * math::square_root(driving);
        o.tap_k[outlet.tap] =
            o.tap_water_k + cold * outlet.tempered * (at.inlet_water_k - o.tap_water_k);
    }
}

/// Air around the heater and in its case. The case is swept by a little air of its own.
void observe_air(const Plant<double>& plant, const Surroundings& at, const Algebra<double>& a,
                 Observables& o) {
    constexpr double case_draught_m3_per_s = 5.0e-3;  // through its slots, chosen
    const Parameters<double>& p = plant.parameters;
    const State<double>& x = plant.state;
    o.room_o2_share = oxygen_of_air - x[room_oxygen_used];
    o.room_co2_share = x[room_co2];
    o.room_co_share = x[room_co];
    o.intake_o2_share = oxygen_of_air * a.intake_oxygen;
    o.spilled_share = spilled_share(p, x, at, a.air_m3_per_s);
    o.room_depression_pa = room_depression(p, at, a.air_m3_per_s);
    const double leaks = p.seam_leak_share * a.air_m3_per_s;
    const double products = leaks / (leaks + case_draught_m3_per_s);
    o.casing_co_share = products * o.co_share + (1.0 - products) * x[room_co];
    o.casing_co2_share = products * o.co2_share + (1.0 - products) * x[room_co2];
}

void observe_temperatures(const State<double>& x, const Surroundings& at, Observables& o) {
    o.inlet_water_k = at.inlet_water_k;
    o.exchanger_outlet_k = x[water_0 + 7];
    o.outlet_water_k = x[mixing_pocket];
    o.hottest_metal_k = *std::max_element(x.begin() + metal_0, x.begin() + metal_0 + cell_count);
    o.casing_k = x[casing_air];
}

/// Readings of a heater whose parameters or switches changed since its last tick are worked out here.
void observe_electrics(const Plant<double>& plant, const Surroundings& at, Observables& o) {
    Electrics<double> e = plant.electrics;
    if (e.any_stale || !same(e.worked_out_for, at.electrical)) {
        Wiring wiring{plant.parameters.electrical, at.electrical, e.lane[0].latches, {}};
        work_out(e.lane[0], wiring);
    }
    o.electrical = e.lane[0].readings;
    o.electrical_latches = e.lane[0].latches;
    // The first bank opens with the main valve: it shows the drive of one whose coil is open, too.
    o.valve_asked = plant.commands.bank_solenoid[0];
    o.electrical_drives = {o.valve_asked > 0.5 ? 1.0 : 0.0,
                           plant.commands.fan_duty > 0.05 ? 1.0 : 0.0,
                           plant.commands.trace_heating};
}

}  // namespace

Wiring wiring_of(const PlantParameters& parameters, const Observables& seen,
                 const Surroundings& at) {
    return {parameters.electrical, at.electrical, seen.electrical_latches, seen.electrical_drives};
}

Observables observe_one(const Plant<double>& plant, const Surroundings& at) {
    const State<double>& x = plant.state;
    const Algebra<double> a = algebra(plant, x, at);
    const signals::SensorSignals<double> s = sense(plant, at);
    Observables o{};
    const TestPoints<double> points = test_points(plant, at, a.gas);
    take_lane(gauges_of(plant, a, points), 0, o);
    observe_gas(plant, a, points, o);
    observe_heat(plant, at, a, o);
    observe_temperatures(x, at, o);
    observe_water(plant, at, a, o);
    observe_cylinders(plant, a, o);
    o.spark = plant.commands.spark;
    o.unburnt_gas_m3 = x[unburnt_gas];
    o.rough_light_up_m3 = plant.flame.rough_light_up_m3;
    observe_air(plant, at, a, o);
    observe_electrics(plant, at, o);
    o.air_m3_per_s = a.air_m3_per_s;
    o.fan_current_a = s.fan_current_a;
    o.air_tube_pa = s.air_tube_pa;
    o.inlet_ohm = s.inlet_ohm;
    o.outlet_ohm = s.outlet_ohm;
    o.exchanger_ohm = s.exchanger_ohm;
    o.ambient_ohm = s.ambient_ohm;
    o.limiter_closed = s.limiter_closed;
    return o;
}

}  // namespace emberpath::plant
