#pragma once
/// What each cause does to the healthy parameters: one small function each, a file for each subsystem, and
/// one table that leads from cause to function (effects.cpp). Maps are chosen so that severity 0 is sound
/// and the greatest is the worst that is still that fault; docs/causes.md lists the signatures.

#include "sim/faults/faults.hpp"

namespace emberpath::faults {

/// Apply one cause at a severity (already resolved in time). Severity 0 changes nothing.
void apply(plant::PlantParameters& p, Cause cause, double severity);
void apply(controller::Settings& s, Cause cause, double severity);

namespace effects {

using plant::PlantParameters;
using Effect = void (*)(PlantParameters& p, double severity);
using SettingsEffect = void (*)(controller::Settings& s, double severity);

// effects_gas.cpp
void run_cylinder_down(PlantParameters& p, double s);
void restrict_pipe(PlantParameters& p, double s);
void droop_regulator(PlantParameters& p, double s);
void block_injector(PlantParameters& p, double s);
void hold_gas_valve_low(PlantParameters& p, double s);
void hold_gas_valve_high(PlantParameters& p, double s);
void mix_propane_in(PlantParameters& p, double s);
void throttle_gas_isolator(PlantParameters& p, double s);
void block_gas_screen(PlantParameters& p, double s);
void let_regulator_creep(PlantParameters& p, double s);
void weep_at_union(PlantParameters& p, double s);
void fit_other_injectors(PlantParameters& p, double s);
void overset_high_fire(PlantParameters& p, double s);
void shrink_cylinder(PlantParameters& p, double s);
void stick_changeover(PlantParameters& p, double s);
void pass_second_stage(PlantParameters& p, double s);

// effects_air.cpp
void block_flue(PlantParameters& p, double s);
void expose_to_gusts(PlantParameters& p, double s);
void soot_exchanger(PlantParameters& p, double s);
void wear_fan(PlantParameters& p, double s);
void slow_tachometer(PlantParameters& p, double s);
void felt_intake(PlantParameters& p, double s);
void draw_products_back(PlantParameters& p, double s);
void open_seam(PlantParameters& p, double s);
void block_open_flue(PlantParameters& p, double s);
void tighten_room(PlantParameters& p, double s);
void let_water_into_air_tube(PlantParameters& p, double s);

// effects_flame.cpp
void foul_electrode(PlantParameters& p, double s);
void kill_igniter(PlantParameters& p, double s);
void delay_light_up(PlantParameters& p, double s);

// effects_water.cpp
void block_strainer(PlantParameters& p, double s);
void hold_water_valve_open(PlantParameters& p, double s);
void hold_water_valve_shut(PlantParameters& p, double s);
void hold_bypass(PlantParameters& p, double s);
void scale_exchanger(PlantParameters& p, double s);
void clog_outlet(PlantParameters& p, double s);
void stick_turbine(PlantParameters& p, double s);
void fit_other_turbine(PlantParameters& p, double s);
void prick_tube(PlantParameters& p, double s);
void raise_night_pressure(PlantParameters& p, double s);
void cross_mixer(PlantParameters& p, double s);
void wear_tempering_valve(PlantParameters& p, double s);

// effects_sensors.cpp
void open_outlet_sensor(PlantParameters& p, double s);
void drift_outlet_sensor(PlantParameters& p, double s);
void drag_flow_sensor(PlantParameters& p, double s);
void short_outlet_sensor(PlantParameters& p, double s);
void open_inlet_sensor(PlantParameters& p, double s);
void short_inlet_sensor(PlantParameters& p, double s);
void drift_inlet_sensor(PlantParameters& p, double s);
void open_exchanger_sensor(PlantParameters& p, double s);
void short_exchanger_sensor(PlantParameters& p, double s);
void drift_exchanger_sensor(PlantParameters& p, double s);
void open_ambient_sensor(PlantParameters& p, double s);
void short_ambient_sensor(PlantParameters& p, double s);
void drift_ambient_sensor(PlantParameters& p, double s);
void open_limiter(PlantParameters& p, double s);
void open_warm_outlet_sensor(PlantParameters& p, double s);
void weaken_limiter(PlantParameters& p, double s);

// effects_electrical.cpp
void disconnect_earth(PlantParameters& p, double s);
void swap_supply(PlantParameters& p, double s);
void break_neutral(PlantParameters& p, double s);
void weaken_line(PlantParameters& p, double s);
void wet_wiring(PlantParameters& p, double s);
void chafe_valve_lead(PlantParameters& p, double s);
void open_valve_coil(PlantParameters& p, double s);
void crack_igniter_lead(PlantParameters& p, double s);
void break_flame_lead(PlantParameters& p, double s);
void feed_from_second_supply(PlantParameters& p, double s);
void bridge_limiter(PlantParameters& p, double s);
void corrode_link(PlantParameters& p, double s);
void open_companion_link(PlantParameters& p, double s);

// effects_settings.cpp
void store_other_gas(controller::Settings& s, double severity);
void move_priority(controller::Settings& s, double severity);
void misset_altitude(controller::Settings& s, double severity);
void raise_highest_setting(controller::Settings& s, double severity);

}  // namespace effects
}  // namespace emberpath::faults
