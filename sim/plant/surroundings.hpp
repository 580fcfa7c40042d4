#pragma once
/// What the rest of the world does to the heater during one tick. The same for the trainee's heater and
/// for every shadow: everybody knows the weather, the taps and the isolations.

#include <array>
#include <cstddef>

#include "sim/plant/electrical_network.hpp"
#include "sim/plant/parameters.hpp"

namespace emberpath::plant {

/// One open hot outlet.
struct Outlet {
    std::size_t tap = 0;       // which of the house's, for what belongs to it alone (tap_opening)
    double conductance = 0.0;  // as far as it is open [m3/s per sqrt(Pa)]
    double head_pa = 0.0;      // static head of its height above the heater
    double tempered = 0.0;     // 1: behind the tempering valve
};

struct Surroundings {
    double time_s = 0.0;  // since the start of the simulated history
    double mains_water_pa = 400.0e3;
    double inlet_water_k = 287.15;
    double ambient_k = 288.15;  // air at the heater
    double cylinder_ambient_k = 288.15;
    double water_isolator = 1.0;       // 0 shut, 1 open (cold isolating valve at the heater)
    double hot_tap_conductance = 0.0;  // open outlets at the heater's height that are not listed
                                       // below [m3/s per sqrt(Pa)]
    std::array<Outlet, tap_count> outlets{};  // open outlets, the first outlet_count of them
    std::size_t outlet_count = 0;
    double cold_draw_m3_per_s = 0.0;       // cold water drawn elsewhere in the house
    double gas_isolator = 1.0;             // at the heater, 0 shut to 1 open
    double gas_meter_valve = 1.0;          // at meter or cylinder
    double reserve_first = 0.0;            // 1: changeover lever points at the reserve cylinder
    double other_gas_m3_per_s = 0.0;       // other appliances, at nominal pressure
    double test_nipple_leak_m3_per_s = 0;  // gas escaping from an opened union or test point
    double steady_wind_pa = 0.0;           // at the flue terminal, against the flow when positive
    double extraction_m3_per_s = 0.0;      // fans that draw air out of the heater's room
    double cover_spill = 0.0;   // share of the products that an open case lets into that room
    double room_opening = 0.0;  // open windows and doors [m3/s per sqrt(Pa)], 0.3: a window
    double outdoor_k = 288.15;
    double rain = 0.0;                 // 1 while it rains (nothing here feels it; people see it)
    double gust_shape = 0.0;           // [-] common gust pattern, 0 to 1
    double night = 0.0;                // 1 when the street draws little water
    double power_on = 1.0;             // 1 when plug and socket switch let mains through
    ElectricalSituation electrical{};  // what else is switched, and the damp
};

}  // namespace emberpath::plant
