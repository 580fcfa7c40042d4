#include "sim/scoring/modes.hpp"

#include "sim/worksite/outlets.hpp"

namespace emberpath::scoring {

std::vector<Mode> modes(const worksite::Job& job) {
    using controller::Phase;
    std::vector<Mode> all{{"as found", 0.0, 50, 0.0, false, Phase::standby},
                          {"at low draw", 1.5, 700, 0.25, true, Phase::run},
                          {"at full draw", 2.0, 1000, 1.0, true, Phase::run},
                          {"just after a tap is opened", 0.5, 40, 0.6, true, Phase::light_up}};
    if (job.site.gas == worksite::GasKind::propane_cylinder)
        all.push_back({"after ten minutes at full draw", 10.0, 6000, 1.0, true, Phase::run});
    if (job.healthy.open_flued > 0.5 && !job.site.fans.empty())
        all.push_back({"at full draw with the fan on", 3.0, 1500, 1.0, true, Phase::run, true});
    return all;
}

worksite::TickInputs mode_inputs(const worksite::Job& job, const Mode& mode,
                                 const worksite::TickInputs& at_arrival, std::int64_t tick) {
    worksite::TickInputs in = at_arrival;
    plant::Surroundings& s = in.surroundings;
    s.time_s = at_arrival.surroundings.time_s + 0.1 * static_cast<double>(tick + 1);
    worksite::open_all_outlets(s, job.site, mode.tap_share);
    s.cold_draw_m3_per_s = 0.0;
    s.other_gas_m3_per_s = 0.0;
    s.water_isolator = s.gas_isolator = s.gas_meter_valve = s.power_on = 1.0;
    s.test_nipple_leak_m3_per_s = 0.0;
    s.gust_shape = tick % 80 < 20 ? 1.0 : 0.0;
    if (mode.worst_draught) {
        s.room_opening = s.extraction_m3_per_s = 0.0;
        for (const auto& fan : job.site.fans) s.extraction_m3_per_s += fan.flow_m3_per_s;
    }
    // Who logs the voltage at full draw waits until the pump has run: it runs in the last 20 s.
    s.electrical = {};
    s.electrical.wall_fitted = at_arrival.surroundings.electrical.wall_fitted;
    s.electrical.damp = at_arrival.surroundings.electrical.damp;
    s.electrical.fuses_fitted = at_arrival.surroundings.electrical.fuses_fitted;
    s.electrical.safety_switch_closings = at_arrival.surroundings.electrical.safety_switch_closings;
    s.electrical.pump_running = mode.tap_share == 1.0 && tick >= mode.ticks - 200 ? 1.0 : 0.0;
    in.panel.switched_on = in.panel.powered = 1.0;
    in.panel.reset_pressed = mode.press_reset && tick == 0 ? 1.0 : 0.0;
    return in;
}

worksite::Senses settled_senses(const worksite::HeaterView& heater) {
    worksite::Senses senses;
    senses.o2.follow(heater.plant.o2_share, 0.0);
    senses.co2.follow(heater.plant.co2_share, 0.0);
    senses.co.follow(heater.plant.co_share, 0.0);
    senses.flue_temperature.follow(heater.plant.flue_k, 0.0);
    senses.flame_seen = heater.plant.flame_lit > 0.0;
    senses.spark_seen = heater.plant.spark_heard > 0.5;
    senses.loudest_fan_rev_per_s = heater.plant.fan_rev_per_s;
    return senses;
}

worksite::ToolSetup ready_tools() {
    worksite::ToolSetup tools;
    tools.analyser_sampling = true;
    tools.tap_opening_share = 1.0;
    tools.watching = tools.listening = true;
    return tools;
}

bool can_be_proposed(worksite::Quantity quantity, const worksite::Job& job) {
    using Q = worksite::Quantity;
    switch (quantity) {
        case Q::complaint_heard:
        case Q::readout_phase:
        case Q::room_co:
        case Q::volts_between:
        case Q::ohms_between:
        case Q::clamp_current:
        case Q::gas_in_air:
        case Q::tingle:  // a bare hand is no instrument: where it tells anything it hurts
            return false;
        case Q::link_heater_volts:
        case Q::link_wall_1_volts:
        case Q::wall_screen_1:
            return !job.site.wall_controllers.empty();
        case Q::link_wall_2_volts:
        case Q::wall_screen_2:
            return job.site.wall_controllers.size() > 1;
        case Q::link_wall_3_volts:
        case Q::wall_screen_3:
            return job.site.wall_controllers.size() > 2;
        // The reference technician does not yet use what a house offers beside its heater.
        case Q::water_pressure:
        case Q::night_water_pressure:
        case Q::reserve_mass:
        case Q::intake_o2:
        case Q::case_co:
        case Q::changeover_indicator:
        case Q::relief_drain:
        case Q::casing_wet:
            return false;
        case Q::diverter_smoke:
            return job.healthy.open_flued > 0.5;
        case Q::air_tube_pressure:
        case Q::air_tube_needle:
            return job.settings.air_by_tube > 0.5;
        case Q::companion_front:
        case Q::companion_pipe_temperature:
        case Q::companion_link_ohms:
            return job.settings.companion > 0.5;
        case Q::cylinder_mass:
        case Q::cylinder_frost:
            return job.site.gas == worksite::GasKind::propane_cylinder;
        default:
            return true;
    }
}

bool could_be_read(worksite::Quantity quantity, const worksite::Job& job) {
    return can_be_proposed(quantity, job) || quantity == worksite::Quantity::casing_wet ||
           quantity == worksite::Quantity::relief_drain;
}

bool needs_isolated_heater(worksite::Quantity quantity) {
    using Q = worksite::Quantity;
    switch (quantity) {
        case Q::outlet_ohms:
        case Q::inlet_ohms:
        case Q::exchanger_ohms:
        case Q::earth_ohms:
        case Q::insulation_ohms:
        case Q::valve_coil_ohms:
        case Q::valve_lead_ohms:
        case Q::igniter_lead_ohms:
        case Q::flame_lead_ohms:
        case Q::ohms_between:
        case Q::companion_link_ohms:
        case Q::board_fuse:
        case Q::limiter_leads:
        case Q::chamber_outside:
        case Q::electrode_tip:
        case Q::exchanger_fins:
        case Q::casing_wet:
            return true;
        default:
            return false;
    }
}

bool can_be_taken_in(const Mode& mode, worksite::Quantity quantity) {
    return mode.phase == controller::Phase::standby || !needs_isolated_heater(quantity);
}

}  // namespace emberpath::scoring
