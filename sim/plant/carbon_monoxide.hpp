#pragma once
/// Carbon monoxide that the banks make. **A plausible shape, not data**: it points the right way only.
/// Checked   tests/laws/combustion_laws_test.cpp

#include "sim/math/functions.hpp"
#include "sim/plant/burner.hpp"

namespace emberpath::plant {

/// Carbon monoxide of one bank, air-free [-]: rich or badly mixed, quenched, over-fired, sooted.
template <class Real>
[[nodiscard]] Real air_free_co(const Real& ratio, const Real& load, const Real& soot) {
    const Real over = math::maximum(load - 1.08, Real(0.0));
    const Real ppm = 20.0 + 60000.0 * math::exp(-(ratio - 0.95) / 0.055) +
                     8.0 * math::exp((ratio - 1.9) / 0.2) + 4000.0 * over * over +
                     soot * (300.0 + 2000.0 * math::exp(-(ratio - 1.0) / 0.2));
    return math::minimum(ppm, Real(60000.0)) * 1e-6;
}

/// Flow [m3/s] of what the flames make: carbon dioxide, oxygen used, carbon monoxide.
template <class Real>
struct MadeByFlame {
    Real burning_m3_per_s;  // gas at the ports of burning banks
    Real burnt_m3_per_s;    // of it, what the air allows
    Real air_free_co;       // mean over the gas [-]
};
template <class Real>
[[nodiscard]] MadeByFlame<Real> made_by_flame(const Parameters<Real>& p, const State<Real>& x,
                                              const GasFlows<Real>& gas,
                                              const std::array<Real, bank_count>& ratio) {
    const Real load = gas.manifold_pa / p.full_manifold_pa;
    MadeByFlame<Real> made{Real(0.0), Real(0.0), Real(0.0)};
    Real weighted = Real(0.0);
    for (std::size_t b = 0; b < bank_count; ++b) {
        const Real q = gas.bank_m3_per_s[b] * x[flame_0 + b];
        if (math::all(q == Real(0.0))) continue;
        made.burning_m3_per_s += q;
        made.burnt_m3_per_s += q * math::minimum(ratio[b], Real(1.0));
        weighted += q * air_free_co(ratio[b], load, p.soot);
    }
    made.air_free_co = weighted / (made.burning_m3_per_s + 1e-12);
    return made;
}

/// Carbon monoxide [m3/s] in the products: its air-free share of the dry products at no excess air.
template <class Real>
[[nodiscard]] Real carbon_monoxide_m3_per_s(const Parameters<Real>& p,
                                            const MadeByFlame<Real>& made) {
    return made.air_free_co * (made.burnt_m3_per_s * p.carbon_per_mole / p.co2_max);
}

}  // namespace emberpath::plant
