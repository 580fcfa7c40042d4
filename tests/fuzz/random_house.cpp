#include "tests/fuzz/random_house.hpp"

#include <array>
#include <cmath>
#include <iterator>
#include <sstream>

namespace emberpath::fuzz {

namespace {

constexpr double zero_celsius_k = 273.15;

}  // namespace

RandomHouse::RandomHouse(const worksite::Job& job, std::uint64_t seed)
    : job_(job), random_(seed, "random house") {
    auto& at = inputs_.surroundings;
    at.mains_water_pa = job.site.mains_water_pa;
    at.inlet_water_k = job.site.inlet_water_k;
    at.ambient_k = at.outdoor_k = at.cylinder_ambient_k = job.site.ambient_k;
    inputs_.panel = job.panel;
    furnish();
    for (auto left = random_.next() % 4; left > 0; --left) add_cause();
    install();
    plant::settle_cold(heater_.plant, at);
}

/// What no cause brings about and no hand turns: it belongs to the house.
void RandomHouse::furnish() {
    plant::PlantParameters& p = job_.healthy;
    if (chance(0.4)) {
        const double height_m = between(0.0, 3000.0);
        p = plant::with_altitude(p, height_m);
        controller::set_altitude(job_.settings, controller::nearest_altitude_step_m(height_m));
    }
    if (chance(0.3)) {
        p = plant::with_air_tube(p);
        job_.settings.air_by_tube = 1.0;
    }
    if (chance(0.3))
        p = plant::with_flue(
            p, chance(0.5) ? plant::FlueKind::open_flued : plant::FlueKind::room_sealed);
    if (chance(0.3) && p.companion_fitted < 0.5) {
        p = plant::with_companion(p, job_.settings.full_heat_input_w);
        job_.settings.companion = 1.0;
    }
}

double RandomHouse::between(double low, double high) {
    return low + (high - low) * random_.uniform();
}

bool RandomHouse::chance(double share) {
    return random_.uniform() < share;
}

double RandomHouse::opening() {
    return chance(0.4) ? 0.0 : chance(0.6) ? 1.0 : random_.uniform();
}

std::uint64_t RandomHouse::act() {
    constexpr std::uint64_t moment = 60, lights_up_and_runs = 400;
    const std::uint64_t kind = random_.next() % 9;
    const std::array what{&RandomHouse::act_on_water,   &RandomHouse::act_on_gas,
                          &RandomHouse::act_on_weather, &RandomHouse::act_on_electricity,
                          &RandomHouse::act_on_panel,   &RandomHouse::act_on_alterations,
                          &RandomHouse::act_on_causes};
    if (kind < what.size())
        (this->*what[kind])();
    else
        set_right();
    return 1 + random_.next() % (kind < what.size() ? moment : lights_up_and_runs);
}

/// Everything a heater needs to run, and a tap open: without it most houses would stand still.
void RandomHouse::set_right() {
    auto& at = inputs_.surroundings;
    at.gas_isolator = at.gas_meter_valve = at.water_isolator = at.power_on = 1.0;
    at.test_nipple_leak_m3_per_s = at.cold_draw_m3_per_s = 0.0;
    at.steady_wind_pa = between(-5.0, 20.0);
    at.mains_water_pa = between(2.5e5, 6.0e5);
    at.outlet_count = 0;
    at.hot_tap_conductance = job_.site.taps.front().conductance * between(0.2, 2.5);
    auto& e = at.electrical;
    e.main_switch = e.breaker = e.socket_switch = e.plugged = 1.0;
    e.safety_switch_closings += 1.0;
    if (chance(0.3)) e.fuses_fitted += 1.0;
    inputs_.panel.switched_on = inputs_.panel.reset_pressed = 1.0;
    for (auto& wall : inputs_.panel.wall) wall.switched_on = 1.0;
    alterations_.sensor_unplugged = {};
    alterations_.regulator_raised_pa = 0.0;
    alterations_.board_harmed = false;
    if (chance(0.4)) faults_.clear();
    install();
}

void RandomHouse::act_on_water() {
    auto& at = inputs_.surroundings;
    switch (random_.next() % 6) {
        case 0:
        case 1:
            at.hot_tap_conductance = 0.0;
            for (const auto& tap : job_.site.taps)
                at.hot_tap_conductance += opening() * tap.conductance;
            break;
        case 2:
            at.outlet_count = random_.next() % (plant::tap_count + 1);
            for (std::size_t i = 0; i < at.outlet_count; ++i)
                at.outlets[i] = {i, between(0.0, 1.0e-6), between(0.0, 9.0e4),
                                 chance(0.3) ? 1.0 : 0.0};
            break;
        case 3:
            at.cold_draw_m3_per_s = chance(0.5) ? 0.0 : between(0.0, 8.0e-4);
            break;
        case 4:
            at.water_isolator = opening();
            break;
        default:
            at.mains_water_pa = chance(0.1) ? 0.0 : between(2.0e4, 9.0e5);
            at.night = chance(0.5) ? 1.0 : 0.0;
    }
}

void RandomHouse::act_on_gas() {
    auto& at = inputs_.surroundings;
    switch (random_.next() % 6) {
        case 0:
            at.gas_isolator = opening();
            break;
        case 1:
            at.gas_meter_valve = opening();
            break;
        case 2:
            at.other_gas_m3_per_s = chance(0.4) ? 0.0 : between(0.0, 6.0e-4);
            break;
        case 3:
            at.test_nipple_leak_m3_per_s = chance(0.6) ? 0.0 : between(0.0, 2.0e-4);
            break;
        case 4:
            at.reserve_first = chance(0.5) ? 1.0 : 0.0;
            break;
        default:
            plant::change_cylinder(heater_.plant, at);
            if (chance(0.5)) plant::change_reserve(heater_.plant, at);
    }
}

void RandomHouse::act_on_weather() {
    auto& at = inputs_.surroundings;
    at.gust_shape = random_.uniform();
    at.steady_wind_pa = chance(0.3) ? 0.0 : between(-30.0, 120.0);
    if (chance(0.3)) {
        at.outdoor_k = zero_celsius_k + between(-15.0, 45.0);
        at.ambient_k = chance(0.5) ? at.outdoor_k : zero_celsius_k + between(5.0, 40.0);
        at.cylinder_ambient_k = at.outdoor_k;
        at.inlet_water_k = zero_celsius_k + between(2.0, 30.0);
    }
    at.extraction_m3_per_s = chance(0.6) ? 0.0 : between(0.0, 0.15);
    at.room_opening = chance(0.5) ? 0.0 : between(0.0, 0.6);
    at.rain = chance(0.3) ? 1.0 : 0.0;
}

void RandomHouse::act_on_electricity() {
    auto& e = inputs_.surroundings.electrical;
    double* const switches[] = {&inputs_.surroundings.power_on,
                                &e.main_switch,
                                &e.breaker,
                                &e.second_source_switch,
                                &e.socket_switch,
                                &e.plugged,
                                &e.pump_running,
                                &e.bridge_fitted,
                                &e.water_pipe_open,
                                &e.tester_draws};
    double& one = *switches[random_.next() % std::size(switches)];
    one = 1.0 - one;
    e.damp = random_.uniform();
    if (chance(0.4)) e.safety_switch_closings += 1.0;
    if (chance(0.2)) e.fuses_fitted += 1.0;
}

void RandomHouse::act_on_panel() {
    auto& panel = inputs_.panel;
    panel.set_point_k = zero_celsius_k + between(30.0, 80.0);
    panel.switched_on = chance(0.85) ? 1.0 : 0.0;
    panel.reset_pressed = chance(0.5) ? 1.0 : 0.0;
    panel.restart_asked = chance(0.3) ? 1.0 : 0.0;
    for (auto& wall : panel.wall) {
        wall.fitted = chance(0.5) ? 1.0 : 0.0;
        wall.shows_service = chance(0.5) ? 1.0 : 0.0;
        wall.switched_on = chance(0.9) ? 1.0 : 0.0;
        wall.set_point_k = zero_celsius_k + between(30.0, 80.0);
    }
}

void RandomHouse::act_on_alterations() {
    switch (random_.next() % 5) {
        case 0:
            for (bool& unplugged : alterations_.sensor_unplugged) unplugged = chance(0.2);
            break;
        case 1:
            alterations_.regulator_raised_pa = chance(0.5) ? 0.0 : between(-1500.0, 4000.0);
            break;
        case 2:
            alterations_.limiter_bridged = chance(0.3);
            alterations_.fuse_oversized = chance(0.3);
            alterations_.board_harmed = chance(0.05);
            break;
        default: {
            constexpr double least[] = {0.0, -100.0, 300.0, 0.0, 0.0, 0.0};
            constexpr double most[] = {1.0, 4000.0, 360.0, 1.0, 4.0, 4.0};
            const std::size_t i = random_.next() % controller::setting_count;
            alterations_.stored[i] = between(least[i], most[i]);
            if (i != 1 && i != 2) alterations_.stored[i] = std::round(*alterations_.stored[i]);
            if (chance(0.5)) alterations_.stored[i].reset();
        }
    }
    install();
}

void RandomHouse::act_on_causes() {
    if (faults_.size() < 3 && chance(0.6))
        add_cause();
    else
        faults_.clear();
    install();
}

void RandomHouse::add_cause() {
    const auto catalogue = faults::catalogue();
    const faults::CauseInfo& row = catalogue[random_.next() % catalogue.size()];
    const bool cylinder = job_.site.gas == worksite::GasKind::propane_cylinder;
    if ((row.cylinder_only && !cylinder) || (row.mains_only && cylinder)) return;
    faults::Fault fault{row.cause, row.greatest_severity};
    if (!row.on_off) fault.severity = between(0.0, row.greatest_severity);
    if (row.has_sign && chance(0.5)) fault.severity = -fault.severity;
    fault.onset_s = inputs_.surroundings.time_s + (chance(0.5) ? 0.0 : between(0.0, 30.0));
    fault.ramp_s = chance(0.6) ? 0.0 : between(0.0, 60.0);
    if (chance(0.2)) {
        fault.period_s = between(2.0, 40.0);
        fault.present_s = fault.period_s * random_.uniform();
    }
    faults_.push_back(fault);
}

void RandomHouse::install() {
    heater_.install(
        0, worksite::installation_of(job_, faults_, inputs_.surroundings.time_s, alterations_));
}

void RandomHouse::tick() {
    inputs_.surroundings.time_s = static_cast<double>(ticks_) * signals::tick_s;
    if (faults::changes_after(faults_, inputs_.surroundings.time_s)) install();
    heater_.tick(inputs_);
    if (alterations_.limiter_bridged) heater_.plant.flame.limiter_tripped = 0.0;
    ++ticks_;
    inputs_.panel.reset_pressed = inputs_.panel.restart_asked = 0.0;
}

std::string RandomHouse::describe() const {
    std::ostringstream out;
    const auto& at = inputs_.surroundings;
    out << job_.name << " after " << at.time_s << " s; causes:";
    for (const auto& fault : faults_)
        out << " " << faults::info(fault.cause).word << " " << fault.severity;
    out << "; mains water " << at.mains_water_pa << " Pa at " << at.inlet_water_k << " K, taps "
        << at.hot_tap_conductance << " + " << at.outlet_count << ", cold draw "
        << at.cold_draw_m3_per_s << ", isolator " << at.water_isolator << "; gas valves "
        << at.gas_meter_valve << " " << at.gas_isolator << ", others " << at.other_gas_m3_per_s
        << " + " << at.test_nipple_leak_m3_per_s << "; air " << at.ambient_k << " K, wind "
        << at.steady_wind_pa << " Pa x gust " << at.gust_shape << "; regulator raised "
        << alterations_.regulator_raised_pa;
    return out.str();
}

}  // namespace emberpath::fuzz
