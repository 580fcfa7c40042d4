#include "sim/properties/lpg.hpp"

#include <array>
#include <span>

namespace emberpath::properties {

namespace {

struct Term {
    double n, exponent;
};

// clang-format off
struct Fluid {
    double critical_k, critical_pa, critical_kg_per_m3;
    std::array<Term, 5> pressure;
    std::array<Term, 4> liquid;   // rho'/rho_c = 1 + sum
    std::array<Term, 6> vapour;   // ln(rho''/rho_c) = sum, times Tc/T for the butanes
};
/// Unused places hold {0, 1}. Order of Liquefied.
constexpr std::array<Fluid, 3> fluids{{
    {369.89, 4.2512e6, 220.478,
     {{{-6.7722, 1.0}, {1.6938, 1.5}, {-1.3341, 2.2}, {-3.1876, 4.8}, {0.94937, 6.2}}},
     {{{1.82205, 0.345}, {0.65802, 0.74}, {0.21109, 2.6}, {0.083973, 7.2}}},
     {{{-2.4887, 0.3785}, {-5.1069, 1.07}, {-12.174, 2.7}, {-30.495, 5.5}, {-52.192, 10.0},
       {-134.89, 20.0}}}},
    {425.125, 3.796e6, 228.0,
     {{{-7.17616903, 1.0}, {2.53635336, 1.5}, {-2.07532869, 2.0}, {-2.82241113, 4.5}, {0.0, 1.0}}},
     {{{1.97874515, 0.345}, {0.856799510, 1.0}, {-0.341871887, 1.5}, {0.304337558, 3.0}}},
     {{{-2.07770057, 0.345}, {-3.08362490, 5.0 / 6.0}, {-0.485645266, 19.0 / 6.0},
       {-3.83167519, 25.0 / 6.0}, {0.0, 1.0}, {0.0, 1.0}}}},
    {407.81, 3.629e6, 225.5,
     {{{-6.85093103, 1.0}, {1.36543198, 1.5}, {-1.32542691, 2.5}, {-2.56190994, 4.5}, {0.0, 1.0}}},
     {{{2.04025104, 0.355}, {0.850874089, 1.0}, {-0.479052281, 4.0 / 3.0}, {0.348201252, 7.0 / 3.0}}},
     {{{-2.12933323, 0.355}, {-2.93790085, 5.0 / 6.0}, {-0.89441086, 19.0 / 6.0},
       {-3.46343707, 26.0 / 6.0}, {0.0, 1.0}, {0.0, 1.0}}}},
}};
// clang-format on

double sum_of(std::span<const Term> terms, double theta) {
    double sum = 0.0;
    for (const Term& term : terms) sum += term.n * math::power(theta, term.exponent);
    return sum;
}

}  // namespace

SaturatedLpg saturated_lpg(Liquefied fluid, double temperature_k) {
    const Fluid& f = fluids[static_cast<std::size_t>(fluid)];
    const double theta = 1.0 - temperature_k / f.critical_k;
    const double exponent = f.critical_k / temperature_k * sum_of(f.pressure, theta);
    double derivative = 0.0;  // of the sum, by theta
    for (const Term& term : f.pressure)
        derivative += term.n * term.exponent * math::power(theta, term.exponent - 1.0);
    SaturatedLpg out{};
    out.pressure_pa = f.critical_pa * math::exp(exponent);
    out.liquid_kg_per_m3 = f.critical_kg_per_m3 * (1.0 + sum_of(f.liquid, theta));
    // The two publications write the vapour density with and without the factor Tc/T.
    const double scale = fluid == Liquefied::propane ? 1.0 : f.critical_k / temperature_k;
    out.vapour_kg_per_m3 = f.critical_kg_per_m3 * math::exp(scale * sum_of(f.vapour, theta));
    // T dp/dT = -p (exponent + derivative)
    out.latent_heat_j_per_kg = -out.pressure_pa * (exponent + derivative) *
                               (1.0 / out.vapour_kg_per_m3 - 1.0 / out.liquid_kg_per_m3);
    return out;
}

double boiling_temperature_k(Liquefied fluid, double pressure_pa) {
    double low = 150.0, high = 0.99 * fluids[static_cast<std::size_t>(fluid)].critical_k;
    for (int i = 0; i < 45; ++i) {
        const double middle = 0.5 * (low + high);
        (saturated_lpg(fluid, middle).pressure_pa < pressure_pa ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

double propane_butane_pressure_pa(double propane_mole_fraction, double temperature_k) {
    const double propane = saturated_lpg(Liquefied::propane, temperature_k).pressure_pa;
    const double butane = saturated_lpg(Liquefied::n_butane, temperature_k).pressure_pa;
    return propane_mole_fraction * propane + (1.0 - propane_mole_fraction) * butane;
}

}  // namespace emberpath::properties
