#pragma once
/// The electrical network of house and heater: any two terminals can be measured.
///
/// Equation  Kirchhoff's current law at every node, Ohm's law in every branch:
///           sum over branches of s (V_from - V_to + emf) = 0; dense elimination with partial pivoting
/// Range     conductances 0 to 1e3 S. Every node also reaches true earth through 1e-11 S, the insulation of
///           air and plastic, so that a wire that hangs free has a potential
/// Model     50 Hz as magnitudes of one phase and direct current apart; capacitors count as conductances at
///           50 Hz and as nothing at direct current. No angles, no transients (docs/physics/electrics.md)
/// Errors    none: all branches are positive, so the matrix is regular
/// Checked   tests/unit/plant/electrical_network_test.cpp
///
/// Never part of the right-hand side: it is solved when a switch moves, a fault changes or somebody measures.

#include <array>
#include <cstddef>
#include <limits>
#include <span>

#include "sim/plant/electrical_parameters.hpp"

namespace emberpath::plant {

/// Where leads can be put, up to the gas pipe; the last ones cannot be reached, or only by measuring the link.
enum class Terminal : std::size_t {
    true_earth,  // a stake in the garden, away from everything: 0 V
    incoming_active,
    neutral_bar,
    earth_bar,
    circuit_active,  // at the switchboard, behind safety switch and breaker
    circuit_neutral,
    socket_active,
    socket_neutral,
    socket_earth,
    heater_active,  // supply terminals of the heater
    heater_neutral,
    heater_earth,
    casing,
    low_voltage_supply,  // before the board's fuse
    low_voltage_rail,    // behind it
    low_voltage_common,
    valve_output,  // of the board
    valve_lead,    // at the coil
    fan_lead,
    igniter_lead,
    flame_input,  // of the board
    flame_lead,   // at the probe
    link_heater_end,
    link_wall_end,  // at the first wall controller
    link_wall_return,
    trace_heating_lead,
    water_pipe,
    water_main,
    gas_pipe,
    star_point,
    socket_line,
    link_wall_2_end,
    link_wall_2_return,
    link_wall_3_end,
    link_wall_3_return,
};
inline constexpr std::size_t terminal_count = 35;
inline constexpr std::size_t reachable_terminal_count = 29;

/// Conductors a clamp meter can close around.
enum class Conductor : std::size_t {
    street_active,
    street_neutral,
    earth_link,
    stake,
    lead_active,
    lead_neutral,
    lead_earth,
    water_service,
    lead_active_and_neutral,  // both together: what does not come back
};
inline constexpr std::size_t conductor_count = 9;

/// What people and the household have switched; the same for the house and for every shadow. 0 or 1.
struct ElectricalSituation {
    double main_switch = 1.0;
    double breaker = 1.0;
    double second_source_switch = 1.0;
    double socket_switch = 1.0;
    double plugged = 1.0;
    double pump_running = 0.0;
    double bridge_fitted = 0.0;    // a conductor across the place where a water pipe is opened
    double water_pipe_open = 0.0;  // house pipe and street main apart
    double tester_draws = 0.0;     // a tester at the socket draws 60 mA from active to earth
    double damp = 0.5;             // of the air at the heater: 0 dry, 1 rain
    double safety_switch_closings = 0.0;  // how often somebody has closed it: each clears its trip
    double fuses_fitted = 0.0;            // how often a new fuse was put in
    std::array<double, link_runs> wall_fitted{};  // wall controllers that hang on the link cable
    bool operator==(const ElectricalSituation&) const = default;
};

/// What the heater drives at the moment. 0 or 1.
struct Drives {
    double valve = 0.0, fan = 0.0, trace_heating = 0.0;
    bool operator==(const Drives&) const = default;
};

/// What protection has opened, and what weather and heat make of the wiring. 0 or 1 but for wetness.
struct Latches {
    double safety_switch_tripped = 0.0;
    double breaker_tripped = 0.0;
    double fuse_blown = 0.0;
    double wetness = 1.0;       // of moisture_s: 1 as it came, 0 dry
    double lead_touches = 0.0;  // the chafed valve lead lies on metal
    bool operator==(const Latches&) const = default;
};

/// All that decides what stands on the terminals.
struct Wiring {
    ElectricalParameters<double> parameters;
    ElectricalSituation situation;
    Latches latches;
    Drives drives;
};

/// A branch that somebody adds: a meter, a bridge, a body.
struct AddedBranch {
    Terminal from = Terminal::true_earth;
    Terminal to = Terminal::true_earth;
    double siemens = 0.0;
};

struct NetworkSolution {
    std::array<double, terminal_count> ac_v{};  // against true earth, signed: one phase
    std::array<double, terminal_count> dc_v{};
    std::array<double, conductor_count> ac_a{};  // signed, in the direction of the conductor's name
    std::array<double, conductor_count> dc_a{};
    double fuse_a = 0.0;      // direct current through the board's fuse
    double breaker_a = 0.0;   // through the heater's circuit
    double residual_a = 0.0;  // what the safety switch sees go out and not come back
    double worst_imbalance_a =
        0.0;  // largest sum of currents at any node: what Kirchhoff wants zero

    [[nodiscard]] double ac_between(Terminal a, Terminal b) const;
    [[nodiscard]] double dc_between(Terminal a, Terminal b) const;
};

[[nodiscard]] NetworkSolution solve(const Wiring& wiring, std::span<const AddedBranch> added = {});

/// Lets protection act until nothing more opens: returns the latches and the solution under them.
struct Settled {
    Latches latches;
    NetworkSolution solution;
};
[[nodiscard]] Settled settle_protection(Wiring wiring, std::span<const AddedBranch> added = {});

/// What a voltmeter of this input resistance shows between two terminals [V]: the larger of the
/// alternating and the direct voltage, without sign.
inline constexpr double multimeter_input_ohm = 1.0e7;
inline constexpr double tester_input_ohm =
    2.0e5;  // two-pole tester: loads away what is only coupled
[[nodiscard]] double volts_between(const Wiring& wiring, Terminal a, Terminal b, double meter_ohm);

struct Pair {
    Terminal a = Terminal::true_earth;
    Terminal b = Terminal::true_earth;
};
/// Volts at one pair for each ampere sent through another, every source at rest, direct current [ohm].
[[nodiscard]] double transfer_ohm(const Wiring& wiring, const Pair& in, const Pair& out);

/// Resistance between two terminals with every source at rest [ohm], by direct current; at most 1e12.
[[nodiscard]] double ohms_between(const Wiring& wiring, Terminal a, Terminal b);

/// Would an ohmmeter or an insulation tester meet a voltage here? Above one volt.
[[nodiscard]] bool live_between(const Wiring& wiring, Terminal a, Terminal b);

/// Current in a conductor [A], without sign: a clamp meter shows alternating current.
[[nodiscard]] double clamp_a(const Wiring& wiring, Conductor conductor);

/// A body between two terminals.
struct Touch {
    double current_a = 0.0;  // through it
    double cut_after_s =
        std::numeric_limits<double>::infinity();  // by the safety switch; infinite: by nothing
};
[[nodiscard]] Touch touch(const Wiring& wiring, Terminal a, Terminal b, double body_ohm);

}  // namespace emberpath::plant
