#pragma once
/// Three burner banks: how the air divides, which banks burn, what the flame probe carries.
///
/// The ionisation curve is a plausible shape (largest near stoichiometric, falling when lean:
/// [calcote1957], [fialkov1997]), not data. Lift limit falls as port loading rises: [lewis].
/// Checked   tests/unit/plant/burner_test.cpp

#include "sim/math/pack.hpp"
#include "sim/plant/gas_supply.hpp"
#include "sim/plant/parameters.hpp"
#include "sim/plant/state.hpp"

namespace emberpath::plant {

inline constexpr std::array<double, bank_count> bank_area_share{0.25, 0.30, 0.45};

/// Excess-air ratio of each bank [-]: air by port area, a burning bank drawing twice its share.
template <class Real>
[[nodiscard]] std::array<Real, bank_count> bank_air_ratio(const Parameters<Real>& p,
                                                          const std::array<Real, bank_count>& lit,
                                                          const Real& air_m3_per_s,
                                                          const GasFlows<Real>& gas) {
    std::array<Real, bank_count> weight;
    Real sum = Real(0.0);
    for (std::size_t b = 0; b < bank_count; ++b) {
        weight[b] = bank_area_share[b] * (1.0 + lit[b]);
        sum += weight[b];
    }
    std::array<Real, bank_count> ratio;
    for (std::size_t b = 0; b < bank_count; ++b)
        ratio[b] =
            air_m3_per_s * weight[b] / (sum * gas.bank_m3_per_s[b] * p.stoichiometric_air + 1e-12);
    return ratio;
}

/// The same, were bank `b` burning: what its flame finds once it is lit. An unlit bank gets less air than it then
/// draws, and one lit on that air alone would lift at once, go out and light again.
template <class Real>
[[nodiscard]] Real air_ratio_once_lit(const std::array<Real, bank_count>& lit,
                                      const std::array<Real, bank_count>& ratio, std::size_t b) {
    Real sum = Real(0.0);
    for (std::size_t i = 0; i < bank_count; ++i) sum += bank_area_share[i] * (1.0 + lit[i]);
    const Real more = bank_area_share[b] * (1.0 - lit[b]);
    return ratio[b] * (2.0 / (1.0 + lit[b])) * sum / (sum + more);
}

/// Gas burnt [m3/s].
template <class Real>
[[nodiscard]] Real burnt_gas(const State<Real>& x, const GasFlows<Real>& gas,
                             const std::array<Real, bank_count>& ratio) {
    Real burnt = Real(0.0);
    for (std::size_t b = 0; b < bank_count; ++b)
        burnt += gas.bank_m3_per_s[b] * x[flame_0 + b] * math::minimum(ratio[b], Real(1.0));
    return burnt;
}

/// Net heat set free [W]: what burns is limited by air below stoichiometric.
template <class Real>
[[nodiscard]] Real net_heat_w(const Parameters<Real>& p, const State<Real>& x,
                              const GasFlows<Real>& gas,
                              const std::array<Real, bank_count>& ratio) {
    return burnt_gas(x, gas, ratio) * p.gross_j_per_m3 * p.net_to_gross;
}

/// Gas leaving the ports unburnt for want of flame [m3/s]; it collects in the chamber.
template <class Real>
[[nodiscard]] Real unburnt_flow(const State<Real>& x, const GasFlows<Real>& gas) {
    Real flow = Real(0.0);
    for (std::size_t b = 0; b < bank_count; ++b)
        flow += gas.bank_m3_per_s[b] * (1.0 - x[flame_0 + b]);
    return flow;
}

/// Ionisation current the probe would carry in steady state [A]; the probe stands in bank 1.
template <class Real>
[[nodiscard]] Real steady_ionisation_a(const Parameters<Real>& p, const Real& flame,
                                       const Real& ratio) {
    const Real offset = (ratio - 1.05) * (1.0 / 0.6);
    const Real squared = offset * offset;
    return 12.0e-6 * p.ionisation_gain * flame / (1.0 + squared * squared);
}

/// Which banks burn during the coming tick.
template <class Real>
[[nodiscard]] std::array<Real, bank_count> next_lit(const Parameters<Real>& p,
                                                    const std::array<Real, bank_count>& lit,
                                                    const GasFlows<Real>& gas,
                                                    const std::array<Real, bank_count>& ratio,
                                                    const Real& spark_s) {
    using math::both;
    using math::either;
    constexpr double least_flow = 1e-7;  // m3/s: the bank is open
    const Real one(1.0), zero(0.0);
    const Real loading = math::square_root(gas.manifold_pa / p.full_manifold_pa);
    const auto pressure = gas.manifold_pa > Real(40.0);
    const Real lift = 3.2 - 0.6 * loading;
    std::array<Real, bank_count> next;
    const auto mixture = both(both(ratio[0] > Real(0.5), ratio[0] < Real(2.4)),
                              air_ratio_once_lit(lit, ratio, 0) < lift);
    const auto ignites = both(spark_s > p.ignition_delay_s + 0.35, mixture);
    const auto holds = both(lit[0] > Real(0.5), both(ratio[0] > Real(0.42), ratio[0] < lift));
    next[0] = math::select(
        both(both(pressure, gas.bank_m3_per_s[0] > Real(least_flow)), either(ignites, holds)), one,
        zero);
    for (std::size_t b = 1; b < bank_count; ++b) {
        const auto neighbour = next[b - 1] > Real(0.5);
        const auto crosses = both(
            neighbour, both(ratio[b] > Real(0.42), air_ratio_once_lit(lit, ratio, b) < Real(3.6)));
        const auto stays = both(lit[b] > Real(0.5), both(ratio[b] > Real(0.42), ratio[b] < lift));
        next[b] = math::select(
            both(both(pressure, gas.bank_m3_per_s[b] > Real(least_flow)), either(crosses, stays)),
            one, zero);
    }
    return next;
}

}  // namespace emberpath::plant
