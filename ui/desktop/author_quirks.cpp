#include "ui/desktop/author_quirks.hpp"

#include <algorithm>
#include <cmath>

#include "sim/units/units.hpp"
#include "ui/kit/text.hpp"

namespace emberpath::desktop {

namespace {

using worksite::HouseholdEvent;
using worksite::Job;
using Quirks = std::vector<std::string>;

constexpr double weak_main_pa = 350.0e3, strong_main_pa = 450.0e3;
constexpr double cold_water_k = 281.15, warm_water_k = 293.15;  // 8 and 20 °C
constexpr double cold_place_k = 281.15, hot_place_k = 303.15;   // 8 and 30 °C
constexpr double high_m = 300.0;
constexpr double usual_damp = 0.5;

void add_supplies(Quirks& quirks, const worksite::Site& site) {
    const auto range = [&quirks](double value, double low, double high, const std::string& what,
                                 const char* below, const char* above) {
        if (value < low) quirks.push_back(what + ", " + below);
        if (value > high) quirks.push_back(what + ", " + above);
    };
    range(site.mains_water_pa, weak_main_pa, strong_main_pa,
          "Water main " + units::format_pressure(site.mains_water_pa), "weak", "strong");
    range(site.inlet_water_k, cold_water_k, warm_water_k,
          "Cold water " + units::format_temperature(site.inlet_water_k), "very cold",
          "warm already");
    range(site.ambient_k, cold_place_k, hot_place_k,
          "Around the heater " + units::format_temperature(site.ambient_k), "cold", "hot");
    if (site.altitude_m > high_m)
        quirks.push_back("The house stands " + units::fixed(site.altitude_m, 0) + " m high");
}

void add_weather(Quirks& quirks, const worksite::Site& site) {
    if (site.wind_pa != 0.0) quirks.emplace_back("Wind stands on the flue terminal");
    if (site.rain) quirks.emplace_back("It rains as the history begins");
    if (site.damp != usual_damp)
        quirks.emplace_back(site.damp > usual_damp ? "Damp air at the heater"
                                                   : "Very dry air at the heater");
    for (const auto& window : site.windows)
        if (window.open) quirks.push_back(kit::capitalised(window.name) + " stands open");
    for (const auto& fan : site.fans)
        quirks.push_back(kit::capitalised(fan.name) + " draws air out of the heater's room" +
                         (fan.on ? ", and is on" : ""));
}

void add_fixtures(Quirks& quirks, const Job& job) {
    const worksite::Site& site = job.site;
    for (const auto& tap : site.taps) {
        if (tap.tempered)
            quirks.push_back(kit::capitalised(tap.name) + " is behind a tempering valve");
        if (tap.height_m > 0.0)
            quirks.push_back(kit::capitalised(tap.name) + " is " + units::fixed(tap.height_m, 0) +
                             " m above the heater");
    }
    if (site.appliances.size() > 1) {
        std::string names;
        for (const auto& one : site.appliances) names += (names.empty() ? "" : ", ") + one.name;
        quirks.push_back("Several on the same gas: " + names);
    }
    if (!site.wall_controllers.empty())
        quirks.emplace_back("The temperature can be set at a wall as well");
    if (job.healthy.companion_fitted > 0.0)
        quirks.emplace_back("A second heater on the same hot pipe");
}

void add_household(Quirks& quirks, const worksite::Site& site) {
    using Kind = HouseholdEvent::Kind;
    const auto times = [&](auto is_so) {
        return std::count_if(site.events.begin(), site.events.end(), is_so);
    };
    if (times([](const auto& e) { return e.kind == Kind::cold_draw && e.value > 0.0; }) > 0)
        quirks.emplace_back("Others draw cold water from the same main");
    if (times([](const auto& e) { return e.kind == Kind::set_point; }) > 0)
        quirks.emplace_back("Somebody has changed the set temperature");
    if (times([](const auto& e) { return e.kind == Kind::reset; }) > 0)
        quirks.emplace_back("Somebody has pressed reset before");
    if (times([&](const auto& e) { return e.at_s > site.arrival_s; }) > 0)
        quirks.emplace_back("The household goes on while you work");
}

/// "battery low, reads 5 % high": what is wrong with a piece; empty: nothing.
std::string wrong_with(worksite::Instrument instrument, const worksite::Piece& piece,
                       const std::string& visited_on) {
    std::string words;
    const auto add = [&words](const std::string& one) {
        words += (words.empty() ? "" : ", ") + one;
    };
    if (piece.battery == worksite::Battery::low) add("battery low");
    if (piece.battery == worksite::Battery::flat) add("battery flat");
    const std::string off = units::fixed(100.0 * std::abs(piece.reads - 1.0), 0);
    if (off != "0")  // less than half a per cent is as good as right
        add("reads " + off + " % " + (piece.reads > 1.0 ? "high" : "low"));
    if (piece.off_by != 0.0) add("does not start from zero");
    if (worksite::overdue(instrument, piece, visited_on)) add("its calibration is overdue");
    return words;
}

void add_kit(Quirks& quirks, const worksite::Kit& pieces) {
    for (std::size_t i = 0; i < worksite::instrument_count; ++i) {
        const auto instrument = static_cast<worksite::Instrument>(i);
        const std::string words = wrong_with(instrument, pieces.of(instrument), pieces.visited_on);
        if (!words.empty())
            quirks.push_back(kit::capitalised(std::string(worksite::info(instrument).word)) + ": " +
                             words);
    }
}

}  // namespace

std::vector<std::string> quirks_of(const Job& job) {
    Quirks quirks;
    add_kit(quirks, job.kit);
    add_supplies(quirks, job.site);
    add_weather(quirks, job.site);
    add_fixtures(quirks, job);
    add_household(quirks, job.site);
    return quirks;
}

}  // namespace emberpath::desktop
