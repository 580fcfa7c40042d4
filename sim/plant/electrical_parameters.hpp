#pragma once
/// The electrical installation of one house and its heater, from the street to the last lead. Ohms unless
/// the name says otherwise; `_s` is a conductance [S]. All numbers of the heater are chosen; those of the
/// house are of the size common practice meets. docs/physics/electrics.md draws the network.

#include <array>
#include <cstddef>

namespace emberpath::plant {

inline constexpr std::size_t link_runs = 3;  // core pairs to wall controllers

/// Real is double for one heater or Pack<8> for eight at once, as in Parameters.
template <class Real>
struct ElectricalParameters {
    // Street: 233 V behind its impedance leaves 230 V at the heater (nominal 230 V, AS 60038).
    Real source_v{233.0};
    Real street_active_ohm{0.2};
    Real street_neutral_ohm{0.2};
    Real street_earth_ohm{2.0};  // star point of the street's transformer to true earth
    // Switchboard and what else hangs on it.
    Real earth_link_ohm{0.01};          // neutral bar to earth bar
    Real stake_ohm{30.0};               // earth bar to true earth through the house's own electrode
    Real household_ohm{32.0};           // everything else that is switched on, about 1.7 kW
    Real pump_s{0.0};                   // a heavy motor on the same line, while it runs
    Real safety_switch_trips_a{0.024};  // residual current; between half and all of its rated 30 mA
    Real breaker_trips_a{23.0};         // a 16 A circuit breaker, 1.45 times its rating
    Real second_source{0.0};            // 1: a battery inverter feeds the heater's circuit as well
    // Final circuit, socket outlet, plug lead.
    Real circuit_active_ohm{0.15};
    Real circuit_neutral_ohm{0.15};
    Real circuit_earth_ohm{0.2};
    Real swapped{0.0};  // 1: active and neutral change places behind the socket outlet
    Real lead_active_ohm{0.05};
    Real lead_neutral_ohm{0.05};
    Real lead_earth_ohm{0.05};
    Real casing_strap_ohm{0.02};  // earth terminal to casing
    // Mains side of the heater.
    Real board_ohm{590.0};          // power supply of the board, 90 W
    Real filter_s{3.14e-6};         // 10 nF from each line to the casing at 50 Hz; carries no DC
    Real insulation_s{2.0e-8};      // each line to the casing: 50 megohm when sound
    Real moisture_s{0.0};           // active to casing when wet through; dries
    Real trace_heating_ohm{880.0};  // 60 W
    // Extra-low voltage: direct current, its common tied to the casing.
    Real low_voltage_v{24.0};
    Real low_voltage_source_ohm{0.4};
    Real fuse_blows_a{4.0};     // a 2 A fuse at twice its rating
    Real logic_ohm{120.0};      // controller and sensors, about 5 W
    Real fan_ohm{42.0};         // 0.57 A at full speed, as in air_path.hpp
    Real valve_coil_ohm{96.0};  // 6 W
    Real valve_lead_ohm{0.2};
    Real valve_lead_short_s{0.0};          // lead to casing, while it touches
    Real valve_lead_touches_above_k{0.0};  // casing air temperature from which it does
    Real link_source_ohm{33.0};            // of the rail at the heater's link terminals
    // Of each core pair of the link cable: both cores together (a broken one: megohms), and what corrosion
    // conducts between them at the far joint.
    std::array<Real, link_runs> link_series_ohm{Real(3.0), Real(3.0), Real(3.0)};
    std::array<Real, link_runs> link_leak_s{Real(0.0), Real(0.0), Real(0.0)};
    Real wall_controller_ohm{600.0};  // 1 W
    // Ignition and flame sensing.
    Real igniter_lead_s{1.0e-9};  // insulation of the high-voltage lead to the frame
    Real igniter_lead_crack{
        0.0};  // 0 whole to 1: how readily the spark jumps to the frame when damp
    Real flame_lead_ohm{1.0};
    Real flame_lead_s{1.0e-9};  // insulation of flame lead and probe to the frame
    // Metal pipework. The heater hangs on plastic pipe: only the water in it conducts.
    Real water_column_ohm{7.5e5};  // casing to house pipework, 5 m of 13 mm bore at 20 ohm m
    Real gas_joint_ohm{1.0e9};     // casing to gas pipework over an insulating joint
    Real water_bond_ohm{0.1};      // earth bar to house water pipe
    Real gas_bond_ohm{0.1};        // earth bar to house gas pipe
    Real water_service_ohm{0.05};  // house water pipe to the street's metal main
    Real water_main_ohm{8.0};      // the main to true earth

    bool operator==(const ElectricalParameters&) const = default;
};

}  // namespace emberpath::plant
