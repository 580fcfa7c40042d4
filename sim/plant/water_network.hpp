#pragma once
/// Cold main, heater and hot outlets as one quasi-steady network.
///
/// Equation  every element drops p = R Q^2 (turbulent Darcy-Weisbach); parallel paths add conductances
///           G = 1/sqrt(R); supply carries Q plus the cold water drawn elsewhere. With p the pressure where
///           the hot pipe divides, above the heater's height, and C the cold pressure:
///             p = C - 2 R_s q_c Q - R Q^2
///             Q + G_x sqrt(C - p) = sum G_i sqrt(p - h_i)
///           G_x: cold that a mixer lets into the hot pipe; h_i: head of outlet i
///           Beside a companion heater that takes the share s of the hot water, street and delivery pipe carry
///           Q / (1 - s): their R is divided by (1 - s)^2, q_c's factor by 1 - s; G_x and G_i count by 1 - s
/// Method    Newton's, four steps. Each takes the squared draw as linear in p and solves the quadratic that
///           is left; with outlets at one height and no mixer that is exact after the first, and a pack in
///           which that holds for every lane leaves the others out: no lane's bits change by it. Left over
///           in 20,000 houses by chance: below 3e-4 L/min in 99 of 100, 0.06 in 999 of 1000, at most 0.6
///           where an upper outlet just dribbles.
/// Source    [idelchik] chapters 1 and 2; hydrostatics
/// Range     any opening from 0 (flow below 1e-8 m3/s) upwards; outlets 0 to 12 m above the heater
/// Checked   tests/laws/water_laws_test.cpp, tests/laws/outlet_laws_test.cpp

#include "sim/math/pack.hpp"
#include "sim/plant/opening.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"
#include "sim/plant/surroundings.hpp"

namespace emberpath::plant {

template <class Real>
struct WaterFlows {
    Real heater_m3_per_s;     // through the heater
    Real exchanger_m3_per_s;  // of that, through the exchanger
    Real bypass_m3_per_s;
    Real cross_m3_per_s;  // cold into the hot pipe through a mixer
    Real cold_pa;         // cold pressure at the house with this draw elsewhere
    Real dividing_pa;     // where the hot pipe divides, at the heater's height
    Real inlet_pa;        // at the heater's inlet, behind its isolating valve
};

/// Pressure [Pa] of the street behind the limiting valve, if there is one.
template <class Real>
[[nodiscard]] Real mains_pressure(const Parameters<Real>& p, const Surroundings& at) {
    return math::minimum(p.mains_rise_at_night_pa * at.night + at.mains_water_pa, p.mains_limit_pa);
}

/// Share of cold water [-] that the tempering valve adds, pipe water at `hot_k`.
/// Equation  mixing of equal heat capacities; never less than a worn valve lets in
/// Range     0 to 0.95
template <class Real>
[[nodiscard]] Real tempering_cold_share(const Parameters<Real>& p, const Real& hot_k,
                                        double cold_k) {
    const Real above = hot_k - p.tempering_set_k;
    const Real span = math::maximum(hot_k - cold_k, Real(1.0));
    return math::clamp(above / span, p.tempering_cold_share, Real(0.95));
}

/// Conductance of one open outlet for hot water [m3/s per sqrt(Pa)].
template <class Real>
[[nodiscard]] Real hot_conductance(const Parameters<Real>& p, const Outlet& outlet,
                                   const Real& cold_share) {
    return p.tap_opening[outlet.tap] * outlet.conductance * (1.0 - cold_share * outlet.tempered);
}

/// The network as seen from the hot pipe: p = cold - (2 half_b + a Q) Q against the outlets.
template <class Real>
struct WaterBalance {
    Real a, half_b, cold_pa, cross_gain, heater_level;  // the last: outlets not listed one by one
    std::array<Real, tap_count> outlet;
};

/// Root of Pa: the slope of a drier outlet is taken there, lest the steps stall.
inline constexpr double dribbles = 60.0;

/// Flow [m3/s] on the hypothesis that the squared draw of all outlets is linear in the pressure, as it is
/// for one height, with value and slope taken at `pressure_pa`; `mixed` is the draw per heater flow.
/// Equation  (mixed Q)^2 = S (p - h), S = 2 F F', h = p0 - F / (2 F'), p = cold - (2 half_b + a Q) Q
template <class Real>
[[nodiscard]] Real flow_near(const WaterBalance<Real>& w, const Surroundings& at,
                             const Real& pressure_pa, const Real& mixed) {
    Real draw = Real(1e-20);  // all shut: 1e-17 m3/s
    Real slope = Real(1e-23);
    const auto add = [&](const Real& gain, const Real& difference) {
        const Real root = math::square_root(math::maximum(difference, Real(0.0)));
        draw += gain * root;
        slope += gain * (0.5 / math::maximum(root, Real(dribbles)));
    };
    add(w.heater_level, pressure_pa);
    for (std::size_t i = 0; i < at.outlet_count; ++i)
        add(w.outlet[i], pressure_pa - at.outlets[i].head_pa);
    const Real a = w.a + mixed * mixed / (2.0 * draw * slope);
    const Real head = pressure_pa - 0.5 * draw / slope;
    const Real c = math::maximum(w.cold_pa - math::maximum(head, Real(0.0)), Real(0.0));
    return (math::square_root(w.half_b * w.half_b + a * c) - w.half_b) / a;
}

/// Where the first step is the solution: every open outlet at one height, well below the cold pressure, and no
/// mixer that lets cold water into the hot pipe.
template <class Real>
[[nodiscard]] math::Mask<Real> solved_at_once(const WaterBalance<Real>& w, const Surroundings& at) {
    const bool at_heater = at.hot_tap_conductance > 0.0;
    const double head_pa = at.outlet_count > 0 && !at_heater ? at.outlets[0].head_pa : 0.0;
    bool one_height = true;
    for (std::size_t i = 0; i < at.outlet_count; ++i)
        one_height = one_height && at.outlets[i].head_pa == head_pa;
    const Real least = Real(one_height ? head_pa + dribbles * dribbles : 1e30);
    return math::both(w.cross_gain == Real(0.0), w.cold_pa > least);
}

/// Heater flow [m3/s] of the balance, in a fixed number of steps.
template <class Real>
[[nodiscard]] Real balanced_flow(const WaterBalance<Real>& w, const Surroundings& at) {
    constexpr int steps = 4;
    Real pressure = w.cold_pa;
    Real mixed = 1.0 + w.cross_gain * math::square_root(w.a);
    const Real first = flow_near(w, at, pressure, mixed);
    const auto done = solved_at_once(w, at);
    if (math::all(done)) return first;
    Real q = first;
    for (int i = 1; i < steps; ++i) {
        const Real fall = (2.0 * w.half_b + w.a * q) * q;
        pressure = math::maximum(w.cold_pa - fall, Real(0.0));
        mixed = 1.0 + w.cross_gain * math::square_root(fall) / (q + 1e-30);
        q = flow_near(w, at, pressure, mixed);
    }
    return math::select(done, first, q);
}

/// Resistance [Pa s2/m6] from the heater's inlet, behind its isolating valve, to where the hot pipe
/// divides; the delivery pipe counts `pipe_share` times, for what else flows in it.
template <class Real>
[[nodiscard]] Real heater_path_resistance(const Parameters<Real>& p, const Real& valve,
                                          const Real& parallel, const Real& pipe_share) {
    return p.strainer_resistance + p.flow_sensor_resistance +
           p.water_outlet_resistance * pipe_share + 1.0 / (valve * valve) +
           1.0 / (parallel * parallel);
}

template <class Real>
[[nodiscard]] WaterFlows<Real> water_flows(const Parameters<Real>& p, const State<Real>& x,
                                           const Surroundings& at) {
    const Real y = x[water_valve];
    const Real b = x[bypass_valve];
    const Real valve = p.water_valve_gain * (0.03 + 0.97 * y * y);
    const Real parallel = p.exchanger_conductance + p.bypass_gain * b * b;
    const double qc = at.cold_draw_m3_per_s;
    WaterBalance<Real> w;
    const Real keeps = 1.0 - x[companion_share];  // this heater, of every outlet's draw
    const Real carries = 1.0 / keeps;             // a shared pipe, of this heater's flow
    const Real path = heater_path_resistance(p, valve, parallel, carries * carries);
    w.a = p.water_supply_resistance * (carries * carries) +
          valve_resistance(p.isolating_valve_resistance, at.water_isolator) + path;
    w.half_b = p.water_supply_resistance * qc * carries;
    w.cold_pa =
        math::maximum(mains_pressure(p, at) - p.water_supply_resistance * (qc * qc), Real(0.0));
    w.cross_gain = keeps * p.cross_flow_gain;
    w.heater_level = keeps * at.hot_tap_conductance;
    const Real cold = tempering_cold_share(p, x[pipe_0 + cell_count - 1], at.inlet_water_k);
    for (std::size_t i = 0; i < at.outlet_count; ++i)
        w.outlet[i] = keeps * hot_conductance(p, at.outlets[i], cold);
    const Real q = balanced_flow(w, at);
    WaterFlows<Real> out;
    out.heater_m3_per_s = q;
    out.exchanger_m3_per_s = q * p.exchanger_conductance / parallel;
    out.bypass_m3_per_s = q - out.exchanger_m3_per_s;
    out.cold_pa = w.cold_pa;
    out.dividing_pa = math::maximum(w.cold_pa - (2.0 * w.half_b + w.a * q) * q, Real(0.0));
    out.cross_m3_per_s = p.cross_flow_gain *
                         math::square_root(math::maximum(w.cold_pa - out.dividing_pa, Real(0.0)));
    out.inlet_pa = out.dividing_pa + path * q * q;
    return out;
}

/// Water [m3/s] that a pinhole in the casing and the relief valve let out at a pressure.
/// Equation  pinhole: G sqrt(p); relief valve: linear above its opening pressure, chosen
template <class Real>
[[nodiscard]] Real casing_leak(const Parameters<Real>& p, const Real& pressure_pa) {
    return p.casing_leak_gain * math::square_root(math::maximum(pressure_pa, Real(0.0)));
}
template <class Real>
[[nodiscard]] Real relief_weep(const Parameters<Real>& p, const Real& pressure_pa) {
    return p.relief_gain * math::maximum(pressure_pa - p.relief_opens_pa, Real(0.0));
}

}  // namespace emberpath::plant
