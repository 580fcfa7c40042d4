// The network built branch by branch, and its solution by Gaussian elimination in a fixed order.
#include "sim/plant/electrical_network.hpp"

#include <algorithm>
#include <cmath>

#include "sim/plant/safety_switch.hpp"

namespace emberpath::plant {
namespace {

constexpr std::size_t unknowns = terminal_count - 1;  // true earth is 0 V
constexpr double air_s = 1.0e-11;
constexpr double open_s = 1.0e-10;   // a switch or a break that is open
constexpr double contact_s = 1.0e3;  // a switch that is closed
constexpr double test_a = 1.0e-3;    // an ohmmeter's current
constexpr double greatest_ohm = 1.0e12;
constexpr std::size_t unnamed = conductor_count;

struct Branch {
    Terminal from = Terminal::true_earth;
    Terminal to = Terminal::true_earth;
    double siemens = 0.0;     // for direct current, and at 50 Hz with the next
    double extra_ac_s = 0.0;  // capacitors
    double ac_emf_v = 0.0;    // pushes from `from` to `to`
    double dc_emf_v = 0.0;
    std::size_t name = unnamed;
};

/// The branches of one wiring.
class Branches {
  public:
    void add(const Branch& branch) { list_[count_++] = branch; }
    void add(Terminal from, Terminal to, double siemens) { add({from, to, siemens}); }
    void add(Terminal from, Terminal to, double siemens, Conductor name) {
        add({from, to, siemens, 0.0, 0.0, 0.0, static_cast<std::size_t>(name)});
    }
    [[nodiscard]] std::span<const Branch> all() const { return {list_.data(), count_}; }
    void silence_sources() {
        for (Branch& branch : list_) branch.ac_emf_v = branch.dc_emf_v = 0.0;
    }

  private:
    std::array<Branch, 80> list_{};
    std::size_t count_ = 0;
};

double switched(double closed, double ohm) {
    return closed > 0.5 ? 1.0 / ohm : open_s;
}
double contact(double closed) {
    return closed > 0.5 ? contact_s : open_s;
}

using T = Terminal;

void add_street(Branches& b, const Wiring& w) {
    const auto& p = w.parameters;
    const auto active = static_cast<std::size_t>(Conductor::street_active);
    b.add({T::star_point, T::incoming_active, 1.0 / p.street_active_ohm, 0.0, p.source_v, 0.0,
           active});
    b.add(T::star_point, T::neutral_bar, 1.0 / p.street_neutral_ohm, Conductor::street_neutral);
    b.add(T::star_point, T::true_earth, 1.0 / p.street_earth_ohm);
}

void add_switchboard(Branches& b, const Wiring& w) {
    const auto& p = w.parameters;
    const auto& s = w.situation;
    const double untripped = 1.0 - w.latches.safety_switch_tripped;
    const double closed = s.main_switch * s.breaker * (1.0 - w.latches.breaker_tripped) * untripped;
    b.add(T::incoming_active, T::circuit_active, contact(closed));
    b.add(T::neutral_bar, T::circuit_neutral, contact(untripped));
    b.add(T::neutral_bar, T::earth_bar, 1.0 / p.earth_link_ohm, Conductor::earth_link);
    b.add(T::earth_bar, T::true_earth, 1.0 / p.stake_ohm, Conductor::stake);
    b.add(T::incoming_active, T::neutral_bar, switched(s.main_switch, p.household_ohm));
    b.add(T::incoming_active, T::neutral_bar, p.pump_s * s.pump_running * s.main_switch);
    // The inverter takes over where the mains is missing (common practice for backed-up circuits).
    const double takes_over = p.second_source * s.second_source_switch * (1.0 - closed);
    const double inverter_s = takes_over > 0.5 ? 2.0 : 0.0;
    b.add({T::circuit_neutral, T::circuit_active, inverter_s, 0.0, 230.0, 0.0, unnamed});
}

void add_outlet(Branches& b, const Wiring& w) {
    const auto& p = w.parameters;
    const auto& s = w.situation;
    const double right = p.swapped > 0.5 ? open_s : 1.0;
    const double wrong = p.swapped > 0.5 ? 1.0 : open_s;
    b.add(T::circuit_active, T::socket_line, right / p.circuit_active_ohm);
    b.add(T::circuit_neutral, T::socket_neutral, right / p.circuit_neutral_ohm);
    b.add(T::circuit_active, T::socket_neutral, wrong / p.circuit_active_ohm);
    b.add(T::circuit_neutral, T::socket_line, wrong / p.circuit_neutral_ohm);
    b.add(T::earth_bar, T::socket_earth, 1.0 / p.circuit_earth_ohm);
    b.add(T::socket_line, T::socket_active, contact(s.socket_switch));
    b.add(T::socket_active, T::socket_earth, s.tester_draws * 0.060 / 230.0);
    b.add(T::socket_active, T::heater_active, switched(s.plugged, p.lead_active_ohm),
          Conductor::lead_active);
    b.add(T::socket_neutral, T::heater_neutral, switched(s.plugged, p.lead_neutral_ohm),
          Conductor::lead_neutral);
    b.add(T::socket_earth, T::heater_earth, switched(s.plugged, p.lead_earth_ohm),
          Conductor::lead_earth);
}

void add_heater_mains(Branches& b, const Wiring& w) {
    const auto& p = w.parameters;
    b.add(T::heater_earth, T::casing, 1.0 / p.casing_strap_ohm);
    b.add(T::heater_active, T::heater_neutral, 1.0 / p.board_ohm);
    b.add({T::heater_active, T::casing, p.insulation_s + p.moisture_s * w.latches.wetness,
           p.filter_s});
    b.add({T::heater_neutral, T::casing, p.insulation_s, p.filter_s});
    b.add(T::trace_heating_lead, T::heater_neutral, 1.0 / p.trace_heating_ohm);
    b.add(T::heater_active, T::trace_heating_lead, contact(w.drives.trace_heating));
}

/// From the heater's link terminals a core pair to each wall controller.
void add_link(Branches& b, const Wiring& w) {
    const auto& p = w.parameters;
    constexpr std::array<Terminal, link_runs> out{T::link_wall_end, T::link_wall_2_end,
                                                  T::link_wall_3_end};
    constexpr std::array<Terminal, link_runs> back{T::link_wall_return, T::link_wall_2_return,
                                                   T::link_wall_3_return};
    b.add(T::low_voltage_rail, T::link_heater_end, 1.0 / p.link_source_ohm);
    for (std::size_t i = 0; i < link_runs; ++i) {
        const double core_s = 2.0 / p.link_series_ohm[i];
        b.add(T::link_heater_end, out[i], core_s);
        b.add(out[i], back[i],
              p.link_leak_s[i] + w.situation.wall_fitted[i] / p.wall_controller_ohm);
        b.add(back[i], T::low_voltage_common, core_s);
    }
}

/// The low-voltage supply gives nothing while its own mains side is dead; a share of it when it sags.
void add_low_voltage(Branches& b, const Wiring& w, double supply_share) {
    const auto& p = w.parameters;
    b.add({T::low_voltage_common, T::low_voltage_supply, 1.0 / p.low_voltage_source_ohm, 0.0, 0.0,
           p.low_voltage_v * supply_share});
    b.add(T::low_voltage_supply, T::low_voltage_rail, contact(1.0 - w.latches.fuse_blown));
    b.add(T::low_voltage_common, T::casing, contact_s);
    b.add(T::low_voltage_rail, T::low_voltage_common, 1.0 / p.logic_ohm);
    b.add(T::low_voltage_rail, T::fan_lead, contact(w.drives.fan));
    b.add(T::fan_lead, T::low_voltage_common, 1.0 / p.fan_ohm);
    b.add(T::low_voltage_rail, T::valve_output, contact(w.drives.valve));
    b.add(T::valve_output, T::valve_lead, 1.0 / p.valve_lead_ohm);
    b.add(T::valve_lead, T::low_voltage_common, 1.0 / p.valve_coil_ohm);
    b.add(T::valve_lead, T::casing, p.valve_lead_short_s * w.latches.lead_touches);
    b.add(T::igniter_lead, T::casing,
          p.igniter_lead_s + 1.0e-4 * p.igniter_lead_crack * w.situation.damp);
    b.add(T::flame_input, T::flame_lead, 1.0 / p.flame_lead_ohm);
    b.add(T::flame_lead, T::casing, p.flame_lead_s);
}

void add_pipes(Branches& b, const Wiring& w) {
    const auto& p = w.parameters;
    const auto& s = w.situation;
    b.add(T::casing, T::water_pipe, 1.0 / p.water_column_ohm);
    b.add(T::casing, T::gas_pipe, 1.0 / p.gas_joint_ohm);
    b.add(T::earth_bar, T::water_pipe, 1.0 / p.water_bond_ohm);
    b.add(T::earth_bar, T::gas_pipe, 1.0 / p.gas_bond_ohm);
    b.add(T::water_pipe, T::water_main, switched(1.0 - s.water_pipe_open, p.water_service_ohm),
          Conductor::water_service);
    b.add(T::water_pipe, T::water_main, s.bridge_fitted > 0.5 ? 50.0 : 0.0);
    b.add(T::water_main, T::true_earth, 1.0 / p.water_main_ohm);
}

Branches mains_of(const Wiring& w) {
    Branches b;
    add_street(b, w);
    add_switchboard(b, w);
    add_outlet(b, w);
    add_heater_mains(b, w);
    add_pipes(b, w);
    return b;
}

using Vector = std::array<double, unknowns>;
using Matrix = std::array<Vector, unknowns>;

constexpr std::size_t row_of(Terminal terminal) {  // true earth has none: it wraps to the largest
    return static_cast<std::size_t>(terminal) - 1;
}
constexpr bool has_row(Terminal terminal) {
    return terminal != Terminal::true_earth;
}

void stamp(Matrix& g, const Branch& b, double siemens) {
    const std::size_t i = row_of(b.from), j = row_of(b.to);
    if (has_row(b.from)) g[i][i] += siemens;
    if (has_row(b.to)) g[j][j] += siemens;
    if (!has_row(b.from) || !has_row(b.to)) return;
    g[i][j] -= siemens;
    g[j][i] -= siemens;
}

void inject(Vector& into, Terminal terminal, double ampere) {
    if (has_row(terminal)) into[row_of(terminal)] += ampere;
}

/// Solves g x = y in place, partial pivoting, always in the same order.
void eliminate(Matrix& g, Vector& y) {
    for (std::size_t k = 0; k < unknowns; ++k) {
        std::size_t pivot = k;
        for (std::size_t i = k + 1; i < unknowns; ++i)
            if (std::abs(g[i][k]) > std::abs(g[pivot][k])) pivot = i;
        std::swap(g[k], g[pivot]);
        std::swap(y[k], y[pivot]);
        for (std::size_t i = k + 1; i < unknowns; ++i) {
            if (g[i][k] == 0.0) continue;
            const double factor = g[i][k] / g[k][k];
            for (std::size_t j = k; j < unknowns; ++j) g[i][j] -= factor * g[k][j];
            y[i] -= factor * y[k];
        }
    }
    for (std::size_t k = unknowns; k-- > 0;) {
        for (std::size_t j = k + 1; j < unknowns; ++j) y[k] -= g[k][j] * y[j];
        y[k] /= g[k][k];
    }
}

enum class Kind { ac, dc };

double siemens_of(const Branch& b, Kind kind) {
    return kind == Kind::ac ? b.siemens + b.extra_ac_s : b.siemens;
}
double emf_of(const Branch& b, Kind kind) {
    return kind == Kind::ac ? b.ac_emf_v : b.dc_emf_v;
}

/// Node voltages, with `injected` amperes entering each node from outside.
std::array<double, terminal_count> node_voltages(std::span<const Branch> branches, Kind kind,
                                                 const Vector& injected) {
    Matrix g{};
    Vector y = injected;
    for (std::size_t i = 0; i < unknowns; ++i) g[i][i] = air_s;
    for (const Branch& b : branches) {
        const double siemens = siemens_of(b, kind);
        stamp(g, b, siemens);
        inject(y, b.from, -siemens * emf_of(b, kind));
        inject(y, b.to, siemens * emf_of(b, kind));
    }
    eliminate(g, y);
    std::array<double, terminal_count> volts{};
    std::copy(y.begin(), y.end(), volts.begin() + 1);
    return volts;
}

double current_of(const Branch& b, Kind kind, const std::array<double, terminal_count>& v) {
    const double across = v[static_cast<std::size_t>(b.from)] - v[static_cast<std::size_t>(b.to)];
    return siemens_of(b, kind) * (across + emf_of(b, kind));
}

double imbalance(std::span<const Branch> branches, Kind kind,
                 const std::array<double, terminal_count>& v) {
    std::array<double, terminal_count> sum{};
    for (std::size_t i = 1; i < terminal_count; ++i) sum[i] = air_s * v[i];
    for (const Branch& b : branches) {
        const double ampere = current_of(b, kind, v);
        sum[static_cast<std::size_t>(b.from)] += ampere;
        sum[static_cast<std::size_t>(b.to)] -= ampere;
    }
    double worst = 0.0;
    for (std::size_t i = 1; i < terminal_count; ++i) worst = std::max(worst, std::abs(sum[i]));
    return worst;
}

bool joins(const Branch& b, Terminal from, Terminal to) {
    return b.from == from && b.to == to;
}

void take_currents(NetworkSolution& out, std::span<const Branch> branches) {
    double back_a = 0.0;
    for (const Branch& b : branches) {
        if (b.name < conductor_count) {
            out.ac_a[b.name] = current_of(b, Kind::ac, out.ac_v);
            out.dc_a[b.name] = current_of(b, Kind::dc, out.dc_v);
        }
        if (joins(b, T::low_voltage_supply, T::low_voltage_rail))
            out.fuse_a = current_of(b, Kind::dc, out.dc_v);
        if (joins(b, T::incoming_active, T::circuit_active))
            out.breaker_a = current_of(b, Kind::ac, out.ac_v);
        if (joins(b, T::neutral_bar, T::circuit_neutral))
            back_a = current_of(b, Kind::ac, out.ac_v);
    }
    out.residual_a = std::abs(out.breaker_a + back_a);
    constexpr auto both = static_cast<std::size_t>(Conductor::lead_active_and_neutral);
    constexpr auto active = static_cast<std::size_t>(Conductor::lead_active);
    constexpr auto neutral = static_cast<std::size_t>(Conductor::lead_neutral);
    out.ac_a[both] = out.ac_a[active] + out.ac_a[neutral];
    out.dc_a[both] = out.dc_a[active] + out.dc_a[neutral];
}

Branches all_branches(const Wiring& wiring, std::span<const AddedBranch> added,
                      double supply_share) {
    Branches b = mains_of(wiring);
    add_low_voltage(b, wiring, supply_share);
    add_link(b, wiring);
    for (const AddedBranch& one : added) b.add(one.from, one.to, one.siemens);
    return b;
}

constexpr double works_from_v = 100.0;  // the board's power supply regulates down to here

}  // namespace

double NetworkSolution::ac_between(Terminal a, Terminal b) const {
    return ac_v[static_cast<std::size_t>(a)] - ac_v[static_cast<std::size_t>(b)];
}

double NetworkSolution::dc_between(Terminal a, Terminal b) const {
    return dc_v[static_cast<std::size_t>(a)] - dc_v[static_cast<std::size_t>(b)];
}

NetworkSolution solve(const Wiring& wiring, std::span<const AddedBranch> added) {
    NetworkSolution out;
    const Branches quiet = all_branches(wiring, added, 0.0);
    out.ac_v = node_voltages(quiet.all(), Kind::ac, {});
    const double mains_v = std::abs(out.ac_between(T::heater_active, T::heater_neutral));
    const Branches branches = all_branches(wiring, added, std::min(1.0, mains_v / works_from_v));
    out.dc_v = node_voltages(branches.all(), Kind::dc, {});
    take_currents(out, branches.all());
    out.worst_imbalance_a = std::max(imbalance(branches.all(), Kind::ac, out.ac_v),
                                     imbalance(branches.all(), Kind::dc, out.dc_v));
    return out;
}

Settled settle_protection(Wiring wiring, std::span<const AddedBranch> added) {
    constexpr int most_openings = 3;  // fuse, safety switch, breaker: each opens once
    Settled out{wiring.latches, solve(wiring, added)};
    for (int i = 0; i < most_openings; ++i) {
        const auto& p = wiring.parameters;
        Latches& l = wiring.latches;
        if (std::abs(out.solution.fuse_a) > p.fuse_blows_a && l.fuse_blown < 0.5)
            l.fuse_blown = 1.0;
        else if (l.safety_switch_tripped < 0.5 &&
                 std::isfinite(
                     safety_switch_break_s(out.solution.residual_a, p.safety_switch_trips_a)))
            l.safety_switch_tripped = 1.0;
        else if (std::abs(out.solution.breaker_a) > p.breaker_trips_a && l.breaker_tripped < 0.5)
            l.breaker_tripped = 1.0;
        else
            break;
        out = {l, solve(wiring, added)};
    }
    return out;
}

double volts_between(const Wiring& wiring, Terminal a, Terminal b, double meter_ohm) {
    const AddedBranch meter{a, b, 1.0 / meter_ohm};
    const NetworkSolution loaded = solve(wiring, {&meter, 1});
    return std::max(std::abs(loaded.ac_between(a, b)), std::abs(loaded.dc_between(a, b)));
}

double transfer_ohm(const Wiring& wiring, const Pair& in, const Pair& out) {
    Branches branches = all_branches(wiring, {}, 0.0);
    branches.silence_sources();
    Vector injected{};
    inject(injected, in.a, test_a);
    inject(injected, in.b, -test_a);
    const auto v = node_voltages(branches.all(), Kind::dc, injected);
    return (v[static_cast<std::size_t>(out.a)] - v[static_cast<std::size_t>(out.b)]) / test_a;
}

double ohms_between(const Wiring& wiring, Terminal a, Terminal b) {
    return std::min(greatest_ohm, std::abs(transfer_ohm(wiring, {a, b}, {a, b})));
}

bool live_between(const Wiring& wiring, Terminal a, Terminal b) {
    return volts_between(wiring, a, b, multimeter_input_ohm) > 1.0;
}

double clamp_a(const Wiring& wiring, Conductor conductor) {
    return std::abs(solve(wiring).ac_a[static_cast<std::size_t>(conductor)]);
}

Touch touch(const Wiring& wiring, Terminal a, Terminal b, double body_ohm) {
    const AddedBranch body{a, b, 1.0 / body_ohm};
    const NetworkSolution solved = solve(wiring, {&body, 1});
    return {std::abs(solved.ac_between(a, b)) / body_ohm,
            safety_switch_break_s(solved.residual_a, wiring.parameters.safety_switch_trips_a)};
}

}  // namespace emberpath::plant
