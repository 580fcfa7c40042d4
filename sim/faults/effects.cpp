// From cause to what it does.
#include "sim/faults/effects.hpp"

#include <array>

namespace emberpath::faults {
namespace {

struct Row {
    Cause cause;
    effects::Effect effect;                      // none: nothing changes in the plant
    effects::SettingsEffect settings = nullptr;  // none: nothing changes in the controller
};

using namespace effects;

constexpr std::array<Row, cause_count> table{{
    {Cause::no_fault, nullptr},
    {Cause::flue_blocked, block_flue},
    {Cause::wind_gust, expose_to_gusts},
    {Cause::cylinder_low, run_cylinder_down},
    {Cause::gas_pipe_restriction, restrict_pipe},
    {Cause::regulator_droop, droop_regulator},
    {Cause::outlet_sensor_open, open_outlet_sensor},
    {Cause::outlet_sensor_drift, drift_outlet_sensor},
    {Cause::electrode_fouled, foul_electrode},
    {Cause::igniter_failed, kill_igniter},
    {Cause::exchanger_sooted, soot_exchanger},
    {Cause::earth_missing, disconnect_earth},
    {Cause::supply_swapped, swap_supply},
    {Cause::neutral_broken, break_neutral},
    {Cause::supply_sags, weaken_line},
    {Cause::moisture_in_heater, wet_wiring},
    {Cause::valve_lead_chafed, chafe_valve_lead},
    {Cause::valve_coil_open, open_valve_coil},
    {Cause::igniter_lead_cracked, crack_igniter_lead},
    {Cause::flame_lead_broken, break_flame_lead},
    {Cause::injector_blocked, block_injector},
    {Cause::gas_valve_stuck_low, hold_gas_valve_low},
    {Cause::gas_valve_stuck_high, hold_gas_valve_high},
    {Cause::propane_in_gas, mix_propane_in},
    {Cause::strainer_blocked, block_strainer},
    {Cause::water_valve_stuck_open, hold_water_valve_open},
    {Cause::water_valve_stuck_shut, hold_water_valve_shut},
    {Cause::bypass_stuck, hold_bypass},
    {Cause::flow_sensor_dragging, drag_flow_sensor},
    {Cause::exchanger_scaled, scale_exchanger},
    {Cause::outlet_sensor_short, short_outlet_sensor},
    {Cause::inlet_sensor_open, open_inlet_sensor},
    {Cause::inlet_sensor_short, short_inlet_sensor},
    {Cause::inlet_sensor_drift, drift_inlet_sensor},
    {Cause::exchanger_sensor_open, open_exchanger_sensor},
    {Cause::exchanger_sensor_short, short_exchanger_sensor},
    {Cause::exchanger_sensor_drift, drift_exchanger_sensor},
    {Cause::ambient_sensor_open, open_ambient_sensor},
    {Cause::ambient_sensor_short, short_ambient_sensor},
    {Cause::ambient_sensor_drift, drift_ambient_sensor},
    {Cause::fan_worn, wear_fan},
    {Cause::tachometer_low, slow_tachometer},
    {Cause::limiter_open, open_limiter},
    {Cause::gas_setting_wrong, nullptr, store_other_gas},
    {Cause::gas_isolator_part_shut, throttle_gas_isolator},
    {Cause::gas_screen_blocked, block_gas_screen},
    {Cause::regulator_creeps, let_regulator_creep},
    {Cause::gas_union_weeps, weep_at_union},
    {Cause::wrong_injectors, fit_other_injectors},
    {Cause::high_fire_overset, overset_high_fire},
    {Cause::boil_off_small, shrink_cylinder},
    {Cause::changeover_stuck, stick_changeover},
    {Cause::second_stage_passes, pass_second_stage},
    {Cause::intake_felted, felt_intake},
    {Cause::products_drawn_back, draw_products_back},
    {Cause::chamber_seam_open, open_seam},
    {Cause::open_flue_blocked, block_open_flue},
    {Cause::room_too_tight, tighten_room},
    {Cause::light_up_late, delay_light_up},
    {Cause::outlet_clogged, clog_outlet},
    {Cause::flow_sensor_sticks, stick_turbine},
    {Cause::flow_sensor_wrong, fit_other_turbine},
    {Cause::pinhole_inside, prick_tube},
    {Cause::night_pressure_high, raise_night_pressure},
    {Cause::mixer_cross_flow, cross_mixer},
    {Cause::tempering_valve_worn, wear_tempering_valve},
    {Cause::outlet_sensor_opens_warm, open_warm_outlet_sensor},
    {Cause::limiter_weak, weaken_limiter},
    {Cause::priority_elsewhere, nullptr, move_priority},
    {Cause::link_cable_corroded, corrode_link},
    {Cause::altitude_setting_wrong, nullptr, misset_altitude},
    {Cause::highest_setting_raised, nullptr, raise_highest_setting},
    {Cause::second_supply, feed_from_second_supply},
    {Cause::limiter_bridged, bridge_limiter},
    {Cause::air_tube_water, let_water_into_air_tube},
    {Cause::companion_link_open, open_companion_link},
}};

constexpr bool in_enum_order() {
    for (std::size_t i = 0; i < cause_count; ++i)
        if (table[i].cause != static_cast<Cause>(i)) return false;
    return true;
}
static_assert(in_enum_order(), "the table follows the order of Cause");

}  // namespace

void apply(PlantParameters& p, Cause cause, double severity) {
    const Effect effect = table.at(static_cast<std::size_t>(cause)).effect;
    if (severity == 0.0 || effect == nullptr) return;
    effect(p, severity);
}

void apply(controller::Settings& s, Cause cause, double severity) {
    const SettingsEffect effect = table.at(static_cast<std::size_t>(cause)).settings;
    if (severity == 0.0 || effect == nullptr) return;
    effect(s, severity);
}

}  // namespace emberpath::faults
