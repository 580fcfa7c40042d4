#pragma once
/// What an analyser meets in the flue. Scalar: it does not feed back into the physics.
///
/// Equation  complete combustion of the burnt part, dry, per unit volume of fuel: CO2 = n_C,
///           O2 left = 0.2095 L (lambda - 1), N2 = 0.79 L lambda (L: stoichiometric air)
/// Source    [turns] chapter 2. The carbon monoxide correlation is a plausible shape, not data.
/// Checked   tests/laws/combustion_laws_test.cpp

#include <algorithm>

#include "sim/math/functions.hpp"
#include "sim/plant/algebra.hpp"

namespace emberpath::plant {

struct FlueComposition {
    double excess_air_ratio;
    double o2_share, co2_share, co_share;
};

/// Carbon monoxide of one bank, air-free [-]: rich or badly mixed, quenched, over-fired, sooted.
[[nodiscard]] inline double air_free_co(double ratio, double load, double soot) {
    const double over = std::max(0.0, load - 1.08);
    const double ppm = 20.0 + 60000.0 * math::exp(-(ratio - 0.95) / 0.055) +
                       8.0 * math::exp((ratio - 1.9) / 0.2) + 4000.0 * over * over +
                       soot * (300.0 + 2000.0 * math::exp(-(ratio - 1.0) / 0.2));
    return std::min(ppm, 60000.0) * 1e-6;
}

[[nodiscard]] inline FlueComposition flue_composition(const Parameters<double>& p,
                                                      const State<double>& x,
                                                      const Algebra<double>& a) {
    double burnt = 0.0;
    double co_weighted = 0.0;
    double flow = 0.0;
    for (std::size_t b = 0; b < bank_count; ++b) {
        const double q = a.gas.bank_m3_per_s[b] * x[flame_0 + b];
        burnt += q * std::min(a.air_ratio[b], 1.0);
        co_weighted +=
            q * air_free_co(a.air_ratio[b], a.gas.manifold_pa / p.full_manifold_pa, p.soot);
        flow += q;
    }
    FlueComposition out{0.0, 0.2095, 0.0, 0.0};
    if (flow < 1e-7) return out;
    const double air = a.air_m3_per_s;
    const double oxygen = std::max(0.0, 0.2095 * (air - burnt * p.stoichiometric_air));
    const double carbon = burnt * p.carbon_per_mole;
    const double dry = carbon + 0.79 * air + oxygen;
    out.excess_air_ratio = air / (flow * p.stoichiometric_air);
    out.o2_share = oxygen / dry;
    out.co2_share = carbon / dry;
    out.co_share = std::min(0.06, co_weighted / flow * (out.co2_share / p.co2_max));
    return out;
}

}  // namespace emberpath::plant
