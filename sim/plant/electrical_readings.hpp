#pragma once
/// What the network comes to for one heater: the values instruments ask for most, worked out once whenever a
/// switch, a fault or the protection has changed, and what of it the rest of the plant needs.

#include "sim/plant/electrical_network.hpp"

namespace emberpath::plant {

struct ElectricalReadings {
    // With everything at rest as it is switched; volts without sign.
    double terminal_v = 0.0;        // active to neutral at the heater's terminals
    double active_earth_v = 0.0;    // active to earth terminal
    double neutral_earth_v = 0.0;   // neutral to earth terminal
    double worst_terminal_v = 0.0;  // active or neutral terminal to true earth, the larger
    double casing_v = 0.0;          // to true earth
    double pipe_v = 0.0;            // house water pipe to true earth
    double rail_v = 0.0;            // extra-low voltage behind the fuse
    double valve_drive_v = 0.0;     // at the board's valve output while it drives
    double valve_a = 0.0;           // through the coil while it is driven
    double link_unit_v = 0.0;       // at the heater's link terminals
    std::array<double, link_runs> link_wall_v{};  // at each wall end of the link cable
    double leakage_a = 0.0;  // leaves in the lead's active and does not return in its neutral
    double safety_switch_a =
        0.0;                     // leakage to earth at which the safety switch of the circuit opens
    double spark_arrives = 1.0;  // at the burner; 0: it jumps from the lead to the frame
    // Isolated: plug out, the lead in question pulled off.
    double earth_ohm = 0.0;       // casing to the earth bar, plugged in
    double insulation_ohm = 0.0;  // supply terminals to casing
    double valve_coil_ohm = 0.0;
    double valve_lead_ohm = 0.0;    // lead to casing while it is moved by hand
    double igniter_lead_ohm = 0.0;  // insulation to the frame
    double flame_lead_ohm = 0.0;    // end to end
};

/// The wiring as protection leaves it, with all the heater's drives on; fills in the latches.
[[nodiscard]] ElectricalReadings take_readings(Wiring& wiring);

/// Share of the flame current that the board still sees [-], 0 to 1. The flame amplifier of this heater
/// takes the neutral as its zero: hum on the casing swamps it (chosen: half at 12 V, nothing at mains).
[[nodiscard]] double flame_signal_share(const ElectricalReadings& readings);
/// 1 where the spark crosses the burner's gap, 0 where it takes the cracked lead's way to the frame.
[[nodiscard]] double spark_at_burner(const Wiring& wiring);
/// 1 where the main valve's coil is pulled in while driven: 60 % of its rated current (chosen).
[[nodiscard]] double valve_pulls_in(const Wiring& wiring, const ElectricalReadings& readings);

/// Wetness after one tick: dries with a time constant of 8 h in a cold casing, 40 min in one 30 K above the
/// air (chosen); rain keeps it wet. Explicit Euler.
[[nodiscard]] double dried(double wetness, double casing_above_air_k, double damp);

}  // namespace emberpath::plant
