// Proves that the heater, its controller taken away, comes to rest at eighteen points (three firing rates, three
// flows, two gases), and writes them down for the independent calculation of steady_points.py.

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <iomanip>
#include <vector>

#include "sim/plant/plant.hpp"

namespace emberpath::validation {
namespace {

/// A firing rate: which banks burn, the share of full manifold pressure, the fan's duty.
struct Rate {
    const char* name;
    double bank_2, bank_3;
    double manifold_share, fan_duty;
};
constexpr Rate rates[] = {
    {"two banks", 1.0, 0.0, 0.46, 0.36},  // as the controller fires 16 kW
    {"three banks, low", 1.0, 1.0, 0.36, 0.40},
    {"three banks, full", 1.0, 1.0, 1.0, 0.66},
};
constexpr double tap_conductances[] = {2.8e-7, 4.2e-7, 7.0e-7};  // m3/s per sqrt(Pa)

struct Point {
    bool propane;
    Rate rate;
    double taps;
};

std::vector<Point> points() {
    std::vector<Point> all;
    for (const bool propane : {false, true})
        for (const Rate& rate : rates)
            for (const double taps : tap_conductances) all.push_back({propane, rate, taps});
    return all;
}

plant::PlantParameters parameters_of(const Point& point) {
    plant::PlantParameters p =
        point.propane ? plant::propane_parameters() : plant::natural_gas_parameters();
    p.cylinder_full_kg = p.cylinder_start_kg = 5000.0;  // stays at air temperature
    return p;
}

signals::ActuatorCommands<double> commands_of(const Point& point, const plant::PlantParameters& p) {
    signals::ActuatorCommands<double> c;
    c.fan_duty = point.rate.fan_duty;
    c.main_solenoid = 1.0;
    c.bank_solenoid = {1.0, point.rate.bank_2, point.rate.bank_3};
    c.manifold_pressure_pa = point.rate.manifold_share * p.full_manifold_pa;
    c.bypass = 0.2;
    return c;
}

constexpr double settling_s = 2.0 * 3600.0;  // the casing's air has a time constant of ten minutes

struct Rest {
    plant::Observables now;
    signals::ActuatorCommands<double> commands;
};

Rest come_to_rest(const Point& point) {
    plant::Plant<double> plant;
    plant.parameters = parameters_of(point);
    plant::Surroundings at;
    at.hot_tap_conductance = point.taps;
    plant::settle_cold(plant, at);
    auto commands = commands_of(point, plant.parameters);
    const auto ticks = std::lround(settling_s / signals::tick_s);
    for (long i = 0; i < ticks; ++i) {
        at.time_s = static_cast<double>(i) * signals::tick_s;
        commands.spark = i > 50 && i < 100 ? 1.0 : 0.0;
        commands.main_solenoid = i > 50 ? 1.0 : 0.0;
        plant::advance(plant, at, commands);
    }
    return {plant::observe(plant, 0, at), commands};
}

std::ofstream results_file(const char* name) {
    const std::filesystem::path folder =
        std::filesystem::path(EMBERPATH_BINARY_DIR) / "validation_results";
    std::filesystem::create_directories(folder);
    std::ofstream out(folder / name);
    out << std::setprecision(10);
    return out;
}

/// The installation's own numbers: what the independent calculation may know of the heater.
void write_sheet(std::ofstream& out, const char* gas, const plant::PlantParameters& p) {
    const auto line = [&](const char* name, double value) {
        out << gas << ',' << name << ',' << value << '\n';
    };
    line("water_fixed_resistance",
         plant::water_inlet_resistance(p) + p.water_outlet_resistance + p.water_supply_resistance);
    line("exchanger_conductance", p.exchanger_conductance);
    line("water_valve_gain", p.water_valve_gain);
    line("bypass_gain", p.bypass_gain);
    line("gas_no_load_pa", p.gas_no_load_pa);
    line("regulator_droop", p.regulator_droop);
    line("gas_pipe_resistance", p.gas_pipe_resistance);
    line("gas_valve_resistance", p.gas_valve_resistance);
    line("injector_1_m2", p.injector_m2[0]);
    line("injector_2_m2", p.injector_m2[1]);
    line("injector_3_m2", p.injector_m2[2]);
    line("fan_head", p.fan_head);
    line("fan_internal_resistance", p.fan_internal_resistance);
    line("air_cold_resistance", p.air_cold_resistance);
    line("air_warm_resistance", p.air_exchanger_resistance + p.flue_resistance);
}

void write_point(std::ofstream& out, const Point& point, const Rest& rest) {
    const plant::Observables& now = rest.now;
    const signals::ActuatorCommands<double>& c = rest.commands;
    out << (point.propane ? "propane" : "natural gas") << ",\"" << point.rate.name << "\",";
    for (const double input : {point.taps, c.bypass, c.bank_solenoid[1], c.bank_solenoid[2],
                               c.manifold_pressure_pa, c.fan_duty})
        out << input << ',';
    for (const double value : {now.hot_water_m3_per_s, now.gas_m3_per_s, now.heat_input_w,
                               now.gas_inlet_pa, now.outlet_water_k, now.air_m3_per_s,
                               now.fan_rev_per_s, now.o2_share, now.co2_share, now.flue_k})
        out << value << ',';
    out << now.ionisation_a << '\n';
}

TEST(SteadyPoints, ComeToRestAndAreWrittenDown) {
    std::ofstream sheet = results_file("heater_sheet.csv");
    sheet << "gas,name,value\n";
    write_sheet(sheet, "natural gas", plant::natural_gas_parameters());
    write_sheet(sheet, "propane", plant::propane_parameters());
    std::ofstream out = results_file("simulated_points.csv");
    out << "gas,rate,taps,bypass,bank_2,bank_3,manifold_pa,fan_duty,water_m3_per_s,gas_m3_per_s,"
           "input_w,gas_inlet_pa,outlet_k,air_m3_per_s,fan_rev_per_s,o2_share,co2_share,flue_k,"
           "ionisation_a\n";
    for (const Point& point : points()) {
        SCOPED_TRACE(std::string(point.propane ? "propane, " : "natural gas, ") + point.rate.name);
        const Rest rest = come_to_rest(point);
        const double area = 0.25 + 0.30 * point.rate.bank_2 + 0.45 * point.rate.bank_3;
        EXPECT_NEAR(rest.now.flame_lit, area, 1e-12);
        EXPECT_EQ(rest.now.limiter_closed, 1.0);
        EXPECT_LT(std::abs(rest.now.storage_w), 0.1);
        EXPECT_LT(rest.now.outlet_water_k, 273.15 + 90.0);
        write_point(out, point, rest);
    }
}

}  // namespace
}  // namespace emberpath::validation
