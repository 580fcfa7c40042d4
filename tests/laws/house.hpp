#pragma once
/// A heater in a plain house, for laws and nominal values: taps that give an asked flow, named operating
/// points, runs to a time.

#include <cmath>
#include <ostream>
#include <string>

#include "sim/plant/water_network.hpp"
#include "sim/worksite/heater.hpp"

namespace emberpath::laws {

inline constexpr double litre_per_minute = 1.0 / 60000.0;  // m3/s
inline constexpr double celsius = 273.15;                  // K at 0 degC

using Heater = worksite::Heater<double>;

/// A place on the map of set point and draw, on one gas.
struct OperatingPoint {
    std::string name;
    double set_c;
    double asked_lpm;  // what the taps would give with the water valve open
    bool propane = false;
};

inline std::ostream& operator<<(std::ostream& out, const OperatingPoint& point) {
    return out << point.name;
}

/// Total conductance of the open taps [m3/s per sqrt(Pa)] that lets `asked_lpm` through a heater whose water
/// valve is open and whose bypass stands where it rests for this set point.
inline double taps_for(const plant::PlantParameters& p, double set_c, double asked_lpm) {
    plant::State<double> x{};
    x[plant::water_valve] = 1.0;
    x[plant::bypass_valve] = 0.02 * (60.0 - set_c);
    plant::Surroundings at;
    double low = 0.0, high = 1e-4;
    for (int i = 0; i < 60; ++i) {
        at.hot_tap_conductance = 0.5 * (low + high);
        const double flow = plant::water_flows(p, x, at).heater_m3_per_s;
        (flow < asked_lpm * litre_per_minute ? low : high) = at.hot_tap_conductance;
    }
    return 0.5 * (low + high);
}

/// A heater with what acts on it.
struct House {
    Heater heater;
    worksite::TickInputs inputs;

    explicit House(bool propane = false, double set_c = 50.0) {
        heater.plant.parameters =
            propane ? plant::propane_parameters() : plant::natural_gas_parameters();
        heater.settings.full_manifold_pa = heater.plant.parameters.full_manifold_pa;
        inputs.panel.set_point_k = set_c + celsius;
        plant::settle_cold(heater.plant, inputs.surroundings);
    }
    void open_taps(double asked_lpm) {
        const double set_c = inputs.panel.set_point_k - celsius;
        inputs.surroundings.hot_tap_conductance =
            asked_lpm > 0.0 ? taps_for(heater.plant.parameters, set_c, asked_lpm) : 0.0;
    }
    void run(double seconds) {
        const auto ticks = std::lround(seconds / signals::tick_s);
        for (long i = 0; i < ticks; ++i) heater.tick(inputs);
    }
    [[nodiscard]] worksite::HeaterView look() const { return worksite::view(heater, 0, inputs); }
};

/// The house five minutes after its taps were opened on a cold heater.
inline House warmed_up(const OperatingPoint& point) {
    House house(point.propane, point.set_c);
    house.run(2.0);
    house.open_taps(point.asked_lpm);
    house.run(300.0);
    return house;
}

/// One place for each firing stage and both gases.
inline const OperatingPoint operating_points[] = {
    {"OneBankBasin", 38.0, 2.6},         {"TwoBanksBasin", 45.0, 3.5},
    {"ThreeBanksShower", 50.0, 10.0},    {"AllBanksAtFullFire", 60.0, 16.0},
    {"PropaneShower", 45.0, 10.0, true}, {"PropaneAtFullFire", 50.0, 16.0, true},
};

}  // namespace emberpath::laws
