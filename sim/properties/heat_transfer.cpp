#include "sim/properties/heat_transfer.hpp"

#include "sim/properties/hydraulics.hpp"

namespace emberpath::properties {

double crossflow_unmixed_exact_effectiveness(double ntu, double cr) {
    // [1 - P_m(NTU)] [1 - P_m(Cr NTU)] summed over m, P_m the Poisson cumulative probability.
    const double a = ntu, b = cr * ntu;
    double term_a = math::exp(-a), term_b = math::exp(-b);
    double sum_a = term_a, sum_b = term_b, total = 0.0;
    for (int m = 0; m < 150; ++m) {
        total += (1.0 - sum_a) * (1.0 - sum_b);
        term_a *= a / (m + 1.0);
        term_b *= b / (m + 1.0);
        sum_a += term_a;
        sum_b += term_b;
    }
    return total / b;
}

double crossflow_unmixed_exact_ntu(double effectiveness, double cr) {
    double low = 1e-6, high = 20.0;
    for (int i = 0; i < 55; ++i) {
        const double middle = 0.5 * (low + high);
        (crossflow_unmixed_exact_effectiveness(middle, cr) < effectiveness ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

double counterflow_ntu(double effectiveness, double cr) {
    return math::log((1.0 - effectiveness * cr) / (1.0 - effectiveness)) / (1.0 - cr);
}

double shell_and_tube_ntu(double effectiveness, double cr) {
    const double g = math::square_root(1.0 + cr * cr);
    const double e = (2.0 / effectiveness - 1.0 - cr) / g;
    return math::log((e + 1.0) / (e - 1.0)) / g;
}

double log_mean_difference_k(double difference_1_k, double difference_2_k) {
    const double ratio = difference_1_k / difference_2_k;
    // Next to one the logarithm loses its figures; the arithmetic mean is then right to 1e-9.
    if (ratio > 0.9999 && ratio < 1.0001) return 0.5 * (difference_1_k + difference_2_k);
    return (difference_1_k - difference_2_k) / math::log(ratio);
}

double petukhov_friction(double reynolds) {
    const double x = 0.790 * math::log(reynolds) - 1.64;
    return 1.0 / (x * x);
}

double gnielinski_nusselt(double reynolds, double prandtl, double darcy_friction) {
    const double f8 = darcy_friction / 8.0;
    return f8 * (reynolds - 1000.0) * prandtl /
           (1.0 + 12.7 * math::square_root(f8) * (math::power(prandtl, 2.0 / 3.0) - 1.0));
}

double gnielinski_nusselt(double reynolds, double prandtl) {
    return gnielinski_nusselt(reynolds, prandtl, petukhov_friction(reynolds));
}

double petukhov_nusselt(double reynolds, double prandtl, double viscosity_ratio) {
    // [lienhard2008] eq. (7.42) writes the friction factor with common logarithms: 1.82 log10 Re - 1.64.
    const double x = 1.82 * math::log(reynolds) / 2.302585092994045684 - 1.64;
    const double f8 = 1.0 / (x * x) / 8.0;
    return f8 * reynolds * prandtl /
           (1.07 + 12.7 * math::square_root(f8) * (math::power(prandtl, 2.0 / 3.0) - 1.0)) *
           math::power(viscosity_ratio, 0.11);
}

double rough_tube_nusselt(double reynolds, double prandtl, double relative_roughness) {
    const double l = math::log(6.9 / reynolds + math::power(relative_roughness / 3.7, 1.11)) /
                     2.302585092994045684;
    const double root = math::square_root(1.0 / (1.8 * 1.8 * l * l) / 8.0);
    const double roughness_reynolds = reynolds * relative_roughness * root;
    return root * root * reynolds * prandtl /
           (1.0 + root * (4.5 * math::power(roughness_reynolds, 0.2) * math::square_root(prandtl) -
                          8.48));
}

double tube_wall_resistance_k_per_w(double inner_m, double outer_m, double length_m,
                                    double conductivity_w_per_m_k) {
    return math::log(outer_m / inner_m) / (2.0 * pi * conductivity_w_per_m_k * length_m);
}

}  // namespace emberpath::properties
