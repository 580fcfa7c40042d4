#include "sim/worksite/site_state.hpp"

#include <algorithm>

namespace emberpath::worksite {

namespace {

constexpr double gust_rise_s = 0.3;
constexpr double gust_length_s = 2.0;
constexpr double damp_in_rain = 0.95;  // chosen

template <class... Numbers>
void add_all(math::Hash& hash, Numbers... numbers) {
    (hash.add(static_cast<double>(numbers)), ...);
}

}  // namespace

Gusts::Gusts(std::uint64_t seed, double period_s)
    : random_(seed, "gusts"),
      period_s_(std::max(period_s, gust_length_s + 0.5)),
      begins_s_(period_s_ * random_.uniform()) {}

double Gusts::shape_at(double time_s) {
    while (time_s >= begins_s_ + gust_length_s) {
        const double next = period_s_ * (0.75 + 0.5 * random_.uniform());
        begins_s_ += std::max(next, gust_length_s + 0.1);
    }
    const double into = time_s - begins_s_;
    if (into <= 0.0) return 0.0;
    return std::clamp(std::min(into, gust_length_s - into) / gust_rise_s, 0.0, 1.0);
}

double pump_runs_at(double time_s) {
    constexpr double period_s = 240.0, first_s = 100.0, running_s = 45.0;
    const double since = time_s - first_s;
    const double into = since - period_s * std::floor(since / period_s);
    return into < running_s ? 1.0 : 0.0;
}

double night_at(double time_of_day_s) {
    constexpr double day_s = 86400.0, ramp_s = 5400.0;
    constexpr double falls_quiet_s = 22.0 * 3600.0, wakes_s = 5.0 * 3600.0;
    const double clock = time_of_day_s - day_s * std::floor(time_of_day_s / day_s);
    const double evening = (clock - falls_quiet_s) / ramp_s;
    const double morning = 1.0 - (clock - wakes_s) / ramp_s;
    return std::clamp(clock > day_s / 2.0 ? evening : morning, 0.0, 1.0);
}

void surround(plant::Surroundings& at, const Site& site, const Services& services, double time_s) {
    at.outdoor_k = site.outdoor_k;
    at.night = night_at(site.visit_s + time_s - site.arrival_s);
    at.rain = services.raining ? 1.0 : 0.0;
    at.reserve_first = services.reserve_first ? 1.0 : 0.0;
    at.extraction_m3_per_s = at.room_opening = 0.0;
    for (std::size_t i = 0; i < services.fan_on.size(); ++i)
        if (services.fan_on[i] != 0) at.extraction_m3_per_s += site.fans[i].flow_m3_per_s;
    for (std::size_t i = 0; i < services.window_open.size(); ++i)
        if (services.window_open[i] != 0) at.room_opening += site.windows[i].gain;
    at.electrical = electrical_situation(services, time_s);
}

void settle_in(Services& services, const Site& site) {
    services.damp = site.damp;
    services.raining = site.rain;
    services.window_open.clear();
    services.fan_on.clear();
    for (const auto& window : site.windows) services.window_open.push_back(window.open ? 1 : 0);
    for (const auto& fan : site.fans) services.fan_on.push_back(fan.on ? 1 : 0);
}

plant::ElectricalSituation electrical_situation(const Services& services, double time_s) {
    const auto flag = [](bool on) { return on ? 1.0 : 0.0; };
    plant::ElectricalSituation s;
    s.main_switch = flag(services.main_switch_on);
    s.breaker = flag(services.breaker_on);
    s.second_source_switch = flag(services.second_source_on);
    s.socket_switch = flag(services.point_switch_on);
    s.plugged = flag(services.plugged_in);
    s.pump_running = pump_runs_at(time_s);
    s.bridge_fitted = flag(services.bridge_fitted);
    s.water_pipe_open = flag(services.water_union_open);
    s.damp = services.raining ? std::max(services.damp, damp_in_rain) : services.damp;
    s.tester_draws = flag(services.safety_switch_tested);
    s.safety_switch_closings = services.safety_switch_closings;
    s.fuses_fitted = services.fuses_fitted;
    for (std::size_t i = 0; i < plant::link_runs; ++i) s.wall_fitted[i] = services.wall[i].fitted;
    return s;
}

double Services::lowest_set_k() const {
    std::optional<double> lowest;
    for (const controller::WallController& one : wall)
        if (one.fitted > 0.5 && one.switched_on > 0.5)
            lowest = std::min(lowest.value_or(one.set_point_k), one.set_point_k);
    return lowest.value_or(set_point_k);
}

void cool_cylinder(Services& services) {
    constexpr double cools_in_s = 600.0, nothing_left_k = 0.05;  // chosen
    services.cylinder_warmed_k *= 1.0 - tick_s / cools_in_s;
    if (services.cylinder_warmed_k < nothing_left_k) services.cylinder_warmed_k = 0.0;
}

void add_to(math::Hash& hash, const Services& s) {
    for (const double opening : s.tap_opening) hash.add(opening);
    for (const auto on : s.appliance_on) add_all(hash, on);
    add_all(hash, s.set_point_k, s.heater_on, s.reset_pressed, s.point_switch_on, s.plugged_in,
            s.plug_locked, s.gas_at_heater, s.gas_at_supply, s.water_at_heater,
            s.cold_draw_m3_per_s, s.wind_pa, s.cylinder_warmed_k, s.restart_asked);
    add_all(hash, s.main_switch_on, s.breaker_on, s.second_source_on, s.board_locked,
            s.safety_switch_closings, s.fuses_fitted, s.bridge_fitted, s.water_union_open, s.damp);
    for (const auto open : s.window_open) add_all(hash, open);
    for (const auto on : s.fan_on) add_all(hash, on);
    add_all(hash, s.raining, s.reserve_first);
    for (const auto& wall : s.wall)
        add_all(hash, wall.fitted, wall.shows_service, wall.set_point_k, wall.switched_on);
}

void add_to(math::Hash& hash, const Fabric& f) {
    for (const bool open : f.point_open) add_all(hash, open);
    for (const double weep : f.weep_m3_per_s) hash.add(weep);
    for (const bool unproved : f.joint_unproved) add_all(hash, unproved);
    for (const bool unplugged : f.alterations.sensor_unplugged) add_all(hash, unplugged);
    for (const auto& stored : f.alterations.stored)
        add_all(hash, stored.has_value(), stored.value_or(0.0));
    add_all(hash, f.cover_on, f.wide_open_joint, f.alterations.limiter_bridged,
            f.alterations.air_proof_bridged, f.alterations.regulator_raised_pa, f.tagged,
            f.alterations.board_harmed, f.alterations.fuse_oversized,
            f.alterations.without_safety_switch, f.alterations.strainer_out, f.alterations.grit,
            f.alterations.other_flow_sensor, f.alterations.tempering_bypassed);
    if (f.alterations.lead_taped) hash.add(std::string_view("tape"));
    if (f.alterations.outlet_sensor_fooled) hash.add(std::string_view("resistor"));
}

void add_to(math::Hash& hash, const Bench& b) {
    add_all(hash, b.manometer_at.value_or(9), b.manometer_offset_pa, b.zeroed_under_pressure,
            b.multimeter_at.value_or(9), b.analyser_on_tick, b.zeroed_in_products, b.probe_in_flue,
            b.readout_open, static_cast<std::uint64_t>(b.listed), b.sure_tick);
    if (b.meter_fuse_gone) hash.add(std::string_view("meter fuse"));
    for (const double zero : b.analyser_zero) hash.add(zero);
    for (const bool spare : b.spare) add_all(hash, spare);
    for (const bool seen : b.label_seen) add_all(hash, seen);
}

void add_to(math::Hash& hash, const Person& p) {
    add_all(hash, p.gloves, p.glasses, p.hurt, static_cast<int>(p.proof), p.last_reset_tick,
            p.hasty_resets, p.tingled);
    if (p.outside) hash.add(std::string_view("outside"));
}

void add_to(math::Hash& hash, const Precautions& p) {
    add_all(hash, p.gas_on_arrival, p.aired, p.people_out, p.kept_away, p.tested_first,
            p.low_checked, p.cylinder_moved, p.looked_around, p.ladder_checked, p.ladder_tied,
            p.declined, p.place_told, p.drained, p.sheet_disturbed, p.wiring_work, p.draught_tested,
            p.draught_kindly);
    add_all(hash, p.air_in_pipe_m3, p.low_gas_m3, p.acid_share, p.most_acid, p.spilt_water_m3,
            p.unscreened_m3, p.child_burn, p.hottest_roof_k, p.in_gas_ticks, p.open_case_ticks);
    if (p.longest_roof_s > 0.0) add_all(hash, p.roof_s, p.longest_roof_s, p.roof_left_tick);
}

void add_to(math::Hash& hash, const Deeds& d) {
    add_all(hash, d.lasting_remedy, d.any_remedy, d.flame_work, d.gas_work, d.leak_test,
            d.combustion_test, d.hot_water, d.clear_display, d.told, d.notice, d.escalated,
            d.running_ticks, d.bodies_told, d.consent);
}

}  // namespace emberpath::worksite
