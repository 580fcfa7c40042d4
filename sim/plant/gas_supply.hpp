#pragma once
/// Regulator, pipe, proportional valve and injectors as one quasi-steady network in closed form.
///
/// Equation  p_in = p_set - kd (q+qo) - Rp (q+qo)^2, at most p_up (1 - ((q+qo)/q_cap)^2) - Rp (q+qo)^2;
///           p_m = p_in - Rv q^2; q = G sqrt(p_m), G = sum of CdA sqrt(2/rho) of the open banks.
///           With s = sqrt(p_m) both limits are quadratics; the valve target is a third limit.
/// Source    injector: Bernoulli, gas data [en437]; pipe exponent 2: [pole]; linear regulator droop:
///           common practice
/// Range     all openings, including none (finite for G = 0)
/// Checked   tests/laws/gas_laws_test.cpp

#include "sim/math/pack.hpp"
#include "sim/plant/companion.hpp"
#include "sim/plant/cylinder.hpp"
#include "sim/plant/opening.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"
#include "sim/plant/surroundings.hpp"
#include "sim/signals/signals.hpp"

namespace emberpath::plant {

template <class Real>
struct GasFlows {
    Real manifold_pa;
    std::array<Real, bank_count> bank_m3_per_s;
    Real total_m3_per_s;
    Real pipe_m3_per_s;  // with other appliances, a companion heater and any escape
    Real companion_m3_per_s;
    Real upstream_pa;        // before the regulator
    Real capacity_m3_per_s;  // of the regulator at this upstream pressure
    Real pipe_resistance;    // with the meter valve
    Real branch_resistance;  // heater isolator
    Real reserve_share;      // of the draw, from the reserve cylinder
    Real set_pa;             // regulator outlet extrapolated to no flow, with what has crept in
};

/// Positive root s of a s^2 + b s = c, zero when c is not positive.
template <class Real>
[[nodiscard]] Real positive_root(const Real& a, const Real& b, const Real& c) {
    const Real floor_c = math::maximum(c, Real(0.0));
    return (math::square_root(b * b + 4.0 * a * floor_c) - b) / (2.0 * a);
}

/// Flow per square root of manifold pressure through each bank [m3/s per sqrt(Pa)], 0 when shut.
/// Equation  G = CdA sqrt(2 s / rho), s: thin gas of a high site
/// Source    Bernoulli, [en437] gas densities
template <class Real>
[[nodiscard]] std::array<Real, bank_count> injector_conductance(
    const Parameters<Real>& p, const signals::ActuatorCommands<Real>& commands) {
    const Real open = commands.main_solenoid * p.main_valve_works *
                      math::square_root(2.0 * p.air_density_share / p.gas_kg_per_m3);
    std::array<Real, bank_count> conductance;
    for (std::size_t b = 0; b < bank_count; ++b)
        conductance[b] =
            open * commands.bank_solenoid[b] * p.bank_valve_works[b] * p.injector_m2[b];
    return conductance;
}

/// What stands before the heater: pressure and capacity of the source, resistances up to the valve.
template <class Real>
void describe_supply(const Parameters<Real>& p, const State<Real>& x, const Surroundings& at,
                     GasFlows<Real>& out) {
    constexpr double stop_valve =
        2.0e6;  // Pa s2/m6 open; shutting it divides by the opening squared
    const auto fed = p.cylinder_fed > Real(0.5);
    const CylinderSupply<Real> cylinders = cylinder_supply(p, x, at);
    const Real vapour_pa =
        math::select(p.first_stage_pa > Real(0.0),
                     math::minimum(cylinders.gauge_pa, p.first_stage_pa), cylinders.gauge_pa);
    out.upstream_pa = math::select(fed, vapour_pa, p.gas_upstream_pa);
    out.capacity_m3_per_s =
        math::select(fed, p.gas_capacity_m3_per_s * (cylinders.absolute_pa / 7.3e5) + 1e-12,
                     p.gas_capacity_m3_per_s);
    out.reserve_share = cylinders.reserve_share;
    out.set_pa = p.gas_no_load_pa + x[regulator_creep];
    out.pipe_resistance =
        p.gas_pipe_resistance + valve_resistance(Real(stop_valve), at.gas_meter_valve) - stop_valve;
    out.branch_resistance = valve_resistance(Real(stop_valve), at.gas_isolator) - stop_valve +
                            p.gas_isolator_resistance;
}

/// Pressure [Pa] that the proportional valve holds behind itself: its target, and above its rated inlet
/// pressure a quarter of the surplus passes as well (not through a valve that is all but shut).
/// Equation  p = p_target + 0.25 max(0, p_in - p_rated), p_in at the flow of the target alone
/// Source    chosen; the direction is common practice
template <class Real>
[[nodiscard]] Real valve_outlet_pressure(const Parameters<Real>& p, const State<Real>& x,
                                         const GasFlows<Real>& supply, const Real& g,
                                         const Real& qo) {
    constexpr double passes = 0.25;
    const Real target = math::maximum(x[valve_pressure], Real(0.0));
    const Real own = g * math::square_root(target);
    const Real q = own + qo;
    const Real inlet = supply.set_pa - (p.regulator_droop + supply.pipe_resistance * q) * q -
                       supply.branch_resistance * own * own;
    const Real surplus = math::maximum(
        math::minimum(inlet, supply.upstream_pa) - p.gas_valve_rated_inlet_pa, Real(0.0));
    return target + passes * surplus * math::minimum(target * (1.0 / 50.0), Real(1.0));
}

/// sqrt(manifold pressure) that regulator, upstream pressure and valve allow, whichever is least, for
/// open banks of conductance g and a draw qo of others.
template <class Real>
[[nodiscard]] Real manifold_root(const Parameters<Real>& p, const State<Real>& x,
                                 const GasFlows<Real>& supply, const Real& g, const Real& qo) {
    const Real rp = supply.pipe_resistance;
    const Real rv = p.gas_valve_resistance + supply.branch_resistance;
    const Real g2 = g * g;
    const Real by_regulator =
        positive_root(1.0 + (rp + rv) * g2, (p.regulator_droop + 2.0 * rp * qo) * g,
                      supply.set_pa - p.regulator_droop * qo - rp * (qo * qo));
    const Real capacity = supply.capacity_m3_per_s;
    const Real k = supply.upstream_pa / (capacity * capacity) + rp;
    const Real by_upstream =
        positive_root(1.0 + (k + rv) * g2, 2.0 * k * qo * g, supply.upstream_pa - k * (qo * qo));
    const Real by_valve = math::square_root(valve_outlet_pressure(p, x, supply, g, qo));
    return math::minimum(math::minimum(by_regulator, by_upstream), by_valve);
}

/// Rate [Pa/s] at which a regulator's outlet creeps above lock-up: up to its limit while nothing flows,
/// gone within a second or so once gas is drawn.
/// Equation  dp/dt = r (1 - p / p_limit) (1 - f) - f p / 1.5 s, f = q / 1e-5 m3/s from 0 to 1
/// Source    chosen; that a leaking seat lets the pressure rise at rest is common practice
template <class Real>
[[nodiscard]] Real creep_rate(const Parameters<Real>& p, const Real& crept_pa,
                              const Real& drawn_m3_per_s) {
    const Real drawing = math::clamp(drawn_m3_per_s * 1.0e5, Real(0.0), Real(1.0));
    const Real rises = p.regulator_creep_pa_per_s * (1.0 - crept_pa / p.regulator_creep_limit_pa);
    return rises * (1.0 - drawing) - drawing * crept_pa * (1.0 / 1.5);
}

/// What other appliances draw and what escapes [m3/s]: their flow at nominal pressure, none from a valve that is
/// shut, and fading with the last kilopascal of the source (chosen: their own regulators are not modelled).
template <class Real>
[[nodiscard]] Real others_draw(const Surroundings& at, const Real& upstream_pa) {
    const double asked =
        at.gas_meter_valve > 1e-3 ? at.other_gas_m3_per_s + at.test_nipple_leak_m3_per_s : 0.0;
    return asked * math::clamp(upstream_pa * 1.0e-3, Real(0.0), Real(1.0));
}

/// Gas [m3/s] of a companion heater: what its own water asks for, at most what the supply gives each of two alike
/// heaters that stand wide open side by side, qo being drawn by others.
///
/// Equation  p_set - kd (2q+qo) - Rp (2q+qo)^2 = Rc q^2, and the same from upstream; Rc: full manifold pressure and
///           the loss of its valve at its full rate
/// Source    as manifold_root(); the even division is exact where both are wide open and short of what the
///           companion could have where this heater burns low, which it then does not ask for
template <class Real>
[[nodiscard]] Real companion_gas(const Parameters<Real>& p, const State<Real>& x,
                                 const Surroundings& at, const CompanionAsks<Real>& asks,
                                 const GasFlows<Real>& supply) {
    if (math::all(p.companion_fitted == Real(0.0)) || at.gas_meter_valve <= 1e-3) return Real(0.0);
    constexpr double valve_loss_pa =
        250.0;  // wide open at full rate, as this heater's on either gas
    const Real full = p.companion_full_w / p.gross_j_per_m3;
    const Real rc = (p.full_manifold_pa + valve_loss_pa) / (full * full);
    const Real qo = others_draw(at, supply.upstream_pa);
    const Real rp = supply.pipe_resistance;
    const Real by_regulator = positive_root(4.0 * rp + rc, 2.0 * p.regulator_droop + 4.0 * rp * qo,
                                            supply.set_pa - (p.regulator_droop + rp * qo) * qo);
    const Real capacity = supply.capacity_m3_per_s;
    const Real k = supply.upstream_pa / (capacity * capacity) + rp;
    const Real by_upstream =
        positive_root(4.0 * k + rc, 4.0 * k * qo, supply.upstream_pa - k * (qo * qo));
    const Real wanted = companion_wants(p, x, at, asks);
    return math::minimum(wanted, math::minimum(by_regulator, by_upstream));
}

template <class Real>
[[nodiscard]] GasFlows<Real> gas_flows(const Parameters<Real>& p, const State<Real>& x,
                                       const Surroundings& at,
                                       const signals::ActuatorCommands<Real>& commands,
                                       const Real& heater_water_m3_per_s) {
    GasFlows<Real> out;
    describe_supply(p, x, at, out);
    const std::array<Real, bank_count> conductance = injector_conductance(p, commands);
    Real g = Real(0.0);
    for (const Real& bank : conductance) g += bank;
    out.companion_m3_per_s =
        companion_gas(p, x, at, {heater_water_m3_per_s, commands.companion_set_k}, out);
    const Real qo = others_draw(at, out.upstream_pa) + out.companion_m3_per_s;
    Real s = Real(0.0);
    if (!math::all(g == Real(0.0))) s = manifold_root(p, x, out, g, qo);

    out.manifold_pa = s * s * commands.main_solenoid * p.main_valve_works;
    out.total_m3_per_s = Real(0.0);
    for (std::size_t b = 0; b < bank_count; ++b) {
        out.bank_m3_per_s[b] = conductance[b] * s;
        out.total_m3_per_s += out.bank_m3_per_s[b];
    }
    out.pipe_m3_per_s = out.total_m3_per_s + qo;
    return out;
}

}  // namespace emberpath::plant
