#include <algorithm>
#include <cmath>

#include "sim/scenario/build.hpp"

namespace emberpath::scenario {

namespace {

/// Losses between street and tap through the generic heater, water valve wide open [Pa s2/m6].
double heater_resistance() {
    const plant::PlantParameters p = plant::natural_gas_parameters();
    const auto of_conductance = [](double g) { return 1.0 / (g * g); };
    return p.water_supply_resistance + plant::water_inlet_resistance(p) +
           p.water_outlet_resistance + of_conductance(p.water_valve_gain) +
           of_conductance(p.exchanger_conductance);
}

double tap_conductance(double flow_m3_per_s, double height_m) {
    constexpr double street_pa = 400.0e3, head_pa_per_m = 999.0 * 9.80665;
    const double driving_pa = street_pa - head_pa_per_m * height_m;
    const double left = driving_pa / (flow_m3_per_s * flow_m3_per_s) - heater_resistance();
    return 1.0 / std::sqrt(left);
}

/// Conductance of an open window or door [m3/s per sqrt(Pa)].
/// Equation  G = 0.6 A sqrt(2 / rho): a sharp-edged opening, [idelchik], air of 1.2 kg/m3
double opening_gain(double area_m2) {
    return 0.6 * area_m2 * std::sqrt(2.0 / 1.2);
}

/// Taps and appliances are called by name in the same sentences, so no two may share one.
void check_names(const Values& site, Problems& problems) {
    std::vector<std::string> seen;
    for (const char* list : {"tap", "appliance", "wall_controller", "window", "fan"}) {
        for (const Values& thing : site.list(list)) {
            const Item* name = thing.good("name");
            if (name == nullptr) continue;
            if (std::find(seen.begin(), seen.end(), name->text) != seen.end())
                problems.add(name->at, {"name: found " + in_quotes(name->text) +
                                            ", which another tap or appliance has already",
                                        "a name of its own for each tap and appliance",
                                        {}});
            seen.push_back(name->text);
        }
    }
}

/// Keys that mean nothing on this kind of supply.
void check_supply_keys(const Values& site, Problems& problems) {
    if (site.written("flue_height") != nullptr && site.text("flue") != "open flued")
        problems.add(site.written("flue_height")->key_at,
                     {"flue_height: found the height of an open flue that is not there",
                      "flue = \"open flued\", or no such key",
                      {}});
    if (site.good("gas") == nullptr) return;
    const bool propane = burns_propane(site);
    const auto refuse = [&](const char* name, const char* found, const char* expected) {
        if (const Item* item = site.written(name))
            problems.add(item->key_at, {std::string(name) + ": found " + found, expected, {}});
    };
    const bool pair = site.text("cylinders") == "pair";
    if (propane && !pair)
        refuse("reserve_contents", "a second cylinder at a house with one",
               "no such key, or cylinders = \"pair\"");
    if (propane && pair)
        refuse("cylinder_size", "a size at a house with a pair, which holds 45 kg each",
               "no such key");
    if (propane) {
        refuse("upstream_pressure", "a mains pressure at a house with a propane cylinder",
               "no such key: the vapour pressure of the cylinder takes its place");
        return;
    }
    for (const char* name : {"cylinder_size", "cylinder_contents", "cylinders", "reserve_contents"})
        refuse(name, "a cylinder at a house on natural gas",
               "no such key, or gas = \"propane cylinder\"");
}

/// `low` must not exceed `high`; reported at the one that was written.
void check_order(const Values& values, const char* low, const char* high, Problems& problems) {
    const Item* small = values.good(low);
    const Item* large = values.good(high);
    if (small == nullptr || large == nullptr || small->number <= large->number) return;
    problems.add(small->at, {std::string(low) + ": found " + in_quotes(small->text) +
                                 ", more than the " + high + " of " + in_quotes(large->text),
                             "at most the " + std::string(high),
                             {}});
}

}  // namespace

bool burns_propane(const Values& site_or_heater) {
    return site_or_heater.text("gas").starts_with("propane");
}

namespace {

bool flag_of(const Values& values, const char* key) {
    const Item* item = values.good(key);
    return item != nullptr && item->flag;
}

worksite::Tap make_tap(const Values& tap) {
    worksite::Tap made;
    made.name = tap.text("name");
    if (const Item* height = tap.good("height")) made.height_m = height->number;
    if (const Item* flow = tap.good("flow"))
        made.conductance = tap_conductance(flow->number, made.height_m);
    made.mixes_cold = flag_of(tap, "mixes_cold");
    made.washing = flag_of(tap, "washing");
    made.tempered = flag_of(tap, "tempered");
    return made;
}

/// Weather, time of day, windows and fans.
void make_surroundings(const Values& site, worksite::Site& made) {
    made.wind_pa = site.number("wind");
    const Item* outdoor = site.good("outdoor");
    made.outdoor_k = outdoor != nullptr ? outdoor->number : made.ambient_k;
    made.visit_s = site.number("visit");
    made.rain = flag_of(site, "rain");
    made.damp = site.number("damp");
    for (const Values& window : site.list("window"))
        made.windows.push_back(
            {window.text("name"), opening_gain(window.number("area")), flag_of(window, "open")});
    for (const Values& fan : site.list("fan"))
        made.fans.push_back({fan.text("name"), fan.number("flow"), flag_of(fan, "on")});
}

/// The plant tells so many outlets apart.
void check_tap_count(const Values& site, Problems& problems) {
    const auto& taps = site.list("tap");
    if (taps.size() <= plant::tap_count) return;
    problems.add(taps[plant::tap_count].at,
                 {"tap: found one more than a house can have here",
                  "at most " + std::to_string(plant::tap_count) + " taps",
                  {}});
}

}  // namespace

worksite::Site make_site(const Values& site, Problems& problems) {
    check_tap_count(site, problems);
    check_names(site, problems);
    check_supply_keys(site, problems);
    check_order(site, "no_load_pressure", "lock_up_pressure", problems);
    check_order(site, "cylinder_contents", "cylinder_size", problems);
    worksite::Site made;
    made.name = site.text("name");
    made.gas =
        burns_propane(site) ? worksite::GasKind::propane_cylinder : worksite::GasKind::natural_gas;
    made.mains_water_pa = site.number("mains_water_pressure");
    made.inlet_water_k = site.number("inlet_water");
    made.ambient_k = site.number("ambient");
    if (const Item* height = site.good("altitude")) made.altitude_m = height->number;
    make_surroundings(site, made);
    made.gust_period_s = site.number("gust_period");
    made.arrival_s = site.number("arrival");
    for (const Values& tap : site.list("tap")) made.taps.push_back(make_tap(tap));
    const double gross_j_per_m3 = burns_propane(site)
                                      ? plant::propane_parameters().gross_j_per_m3
                                      : plant::natural_gas_parameters().gross_j_per_m3;
    for (const Values& appliance : site.list("appliance"))
        made.appliances.push_back(
            {appliance.text("name"), appliance.number("heat_input") / gross_j_per_m3});
    return made;
}

void fit_wall_controllers(const Values& site, const Values& heater, worksite::Job& job,
                          Problems& problems) {
    const Item* most = heater.good("wall_controllers");
    const std::size_t taken = most != nullptr ? static_cast<std::size_t>(most->number)
                                              : controller::most_wall_controllers;
    const std::string kinds = heater.text("wall_controller_kinds");
    job.settings.accepts_simple = kinds == "service" ? 0.0 : 1.0;
    job.settings.accepts_service = kinds == "simple" ? 0.0 : 1.0;
    std::size_t count = 0;
    for (const Values& wall : site.list("wall_controller")) {
        if (count >= taken) {
            if (const Item* name = wall.good("name"))
                problems.add(name->at, {"wall_controller: found " + in_quotes(name->text) +
                                            ", one more than the heater takes",
                                        "at most " + std::to_string(taken) + " of them",
                                        {}});
            continue;
        }
        const Item* on = wall.good("on");
        job.panel.wall[count] = {1.0, wall.text("kind") == "service" ? 1.0 : 0.0,
                                 wall.number("set_point"), on == nullptr || on->flag ? 1.0 : 0.0};
        job.site.wall_controllers.push_back(wall.text("name"));
        ++count;
    }
    job.settings.wall_controllers = static_cast<double>(count);
}

namespace {

/// Flue and the space around the heater.
void apply_room(const Values& site, plant::PlantParameters& p) {
    const std::string flue = site.text("flue");
    p = plant::with_flue(p, flue == "open flued"    ? plant::FlueKind::open_flued
                            : flue == "room sealed" ? plant::FlueKind::room_sealed
                                                    : plant::FlueKind::outdoor);
    constexpr double half_an_air_change_per_s = 0.5 / 3600.0;
    if (const Item* volume = site.good("room_volume")) {
        p.room_m3 = volume->number;
        p.room_ventilation_m3_per_s = half_an_air_change_per_s * p.room_m3;
    }
    if (const Item* air = site.good("room_ventilation")) p.room_ventilation_m3_per_s = air->number;
    if (const Item* height = site.good("flue_height")) p.open_flue_height_m = height->number;
    p.electrical.second_source = flag_of(site, "second_supply") ? 1.0 : 0.0;
}

/// A companion heater with the supply for it, and a loss of the gas pipe that is given at full heat input: of both
/// heaters, and in thin air of the little less that they then burn.
void fit_gas_pipe(const Values& site, HeaterParts& heater) {
    plant::PlantParameters& p = heater.parameters;
    const double full_w = heater.settings.full_heat_input_w;
    const bool companion = flag_of(site, "companion");
    heater.settings.companion = companion ? 1.0 : 0.0;
    if (companion) p = plant::with_companion(p, full_w);
    const Item* drop = site.good("pipe_drop");
    if (drop == nullptr) return;
    const double gas_m3_per_s = (companion ? 2.0 : 1.0) * full_w / p.gross_j_per_m3;
    p.gas_pipe_resistance = drop->number / (gas_m3_per_s * gas_m3_per_s) / p.air_density_share;
}

}  // namespace

void apply_site(const Values& site, HeaterParts& heater, Problems& problems) {
    plant::PlantParameters& p = heater.parameters;
    if (const Item* height = site.good("altitude")) {
        p = plant::with_altitude(p, height->number);
        controller::set_altitude(heater.settings,
                                 controller::nearest_altitude_step_m(height->number));
    }
    const auto take = [&](const char* name, double& into) {
        if (const Item* item = site.good(name)) into = item->number;
    };
    take("lock_up_pressure", p.gas_lock_up_pa);
    take("no_load_pressure", p.gas_no_load_pa);
    take("upstream_pressure", p.gas_upstream_pa);
    take("cylinder_size", p.cylinder_full_kg);
    if (site.text("cylinders") == "pair" && burns_propane(site)) p = plant::with_cylinder_pair(p);
    take("cylinder_contents", p.cylinder_start_kg);
    take("reserve_contents", p.reserve_start_kg);
    take("tempering", p.tempering_set_k);
    take("night_rise", p.mains_rise_at_night_pa);
    take("pressure_limit", p.mains_limit_pa);
    apply_room(site, p);
    fit_gas_pipe(site, heater);
    if (p.cylinder_start_kg > p.cylinder_full_kg && burns_propane(site)) {
        const Item* item = site.written("cylinder_size");
        if (item != nullptr && site.written("cylinder_contents") == nullptr)
            problems.add(item->at, {"cylinder_size: found " + in_quotes(item->text) +
                                        ", less than the 30 kg it holds unless told otherwise",
                                    "a cylinder_contents key beside it",
                                    {}});
    }
}

}  // namespace emberpath::scenario
