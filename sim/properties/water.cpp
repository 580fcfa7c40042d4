#include "sim/properties/water.hpp"

#include <array>

#include "sim/math/functions.hpp"

namespace emberpath::properties {

namespace {

// clang-format off
struct Term { int i, j; double n; };
/// [iapws-if97] table 2.
constexpr std::array region_1{
    Term{0, -2, 0.14632971213167}, Term{0, -1, -0.84548187169114}, Term{0, 0, -0.37563603672040e1},
    Term{0, 1, 0.33855169168385e1}, Term{0, 2, -0.95791963387872}, Term{0, 3, 0.15772038513228},
    Term{0, 4, -0.16616417199501e-1}, Term{0, 5, 0.81214629983568e-3},
    Term{1, -9, 0.28319080123804e-3}, Term{1, -7, -0.60706301565874e-3},
    Term{1, -1, -0.18990068218419e-1}, Term{1, 0, -0.32529748770505e-1},
    Term{1, 1, -0.21841717175414e-1}, Term{1, 3, -0.52838357969930e-4},
    Term{2, -3, -0.47184321073267e-3}, Term{2, 0, -0.30001780793026e-3},
    Term{2, 1, 0.47661393906987e-4}, Term{2, 3, -0.44141845330846e-5},
    Term{2, 17, -0.72694996297594e-15},
    Term{3, -4, -0.31679644845054e-4}, Term{3, 0, -0.28270797985312e-5},
    Term{3, 6, -0.85205128120103e-9},
    Term{4, -5, -0.22425281908000e-5}, Term{4, -2, -0.65171222895601e-6},
    Term{4, 10, -0.14341729937924e-12},
    Term{5, -8, -0.40516996860117e-6},
    Term{8, -11, -0.12734301741641e-8}, Term{8, -6, -0.17424871230634e-9},
    Term{21, -29, -0.68762131295531e-18}, Term{23, -31, 0.14478307828521e-19},
    Term{29, -38, 0.26335781662795e-22}, Term{30, -39, -0.11947622640071e-22},
    Term{31, -40, 0.18228094581404e-23}, Term{32, -41, -0.93537087292458e-25},
};

/// [iapws-if97] table 34.
constexpr std::array region_4{
    0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5,
    -0.32325550322333e7, 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6,
    -0.23855557567849, 0.65017534844798e3,
};

/// [iapws-r12] tables 1 and 2.
constexpr std::array viscosity_0{1.67752, 2.20462, 0.6366564, -0.241605};
constexpr std::array viscosity_1{
    Term{0, 0, 5.20094e-1}, Term{1, 0, 8.50895e-2}, Term{2, 0, -1.08374}, Term{3, 0, -2.89555e-1},
    Term{0, 1, 2.22531e-1}, Term{1, 1, 9.99115e-1}, Term{2, 1, 1.88797}, Term{3, 1, 1.26613},
    Term{5, 1, 1.20573e-1},
    Term{0, 2, -2.81378e-1}, Term{1, 2, -9.06851e-1}, Term{2, 2, -7.72479e-1},
    Term{3, 2, -4.89837e-1}, Term{4, 2, -2.57040e-1},
    Term{0, 3, 1.61913e-1}, Term{1, 3, 2.57399e-1},
    Term{0, 4, -3.25372e-2}, Term{3, 4, 6.98452e-2},
    Term{4, 5, 8.72102e-3}, Term{3, 6, -4.35673e-3}, Term{5, 6, -5.93264e-4},
};

/// [iapws-r15] tables 1 and 2.
constexpr std::array conductivity_0{2.443221e-3, 1.323095e-2, 6.770357e-3, -3.454586e-3, 4.096266e-4};
constexpr double conductivity_1[5][6] = {
    {1.60397357, -0.646013523, 0.111443906, 0.102997357, -0.0504123634, 0.00609859258},
    {2.33771842, -2.78843778, 1.53616167, -0.463045512, 0.0832827019, -0.00719201245},
    {2.19650529, -4.54580785, 3.55777244, -1.40944978, 0.275418278, -0.0205938816},
    {-1.21051378, 1.60812989, -0.621178141, 0.0716373224, 0.0, 0.0},
    {-2.7203370, 4.57586331, -3.18369245, 1.1168348, -0.19268305, 0.012913842},
};
// clang-format on

constexpr double critical_k = 647.096;
constexpr double critical_pa = 22.064e6;
constexpr double critical_kg_per_m3 = 322.0;

double integer_power(double x, int n) {
    double result = 1.0;
    for (int k = n < 0 ? -n : n; k > 0; --k) result *= x;
    return n < 0 ? 1.0 / result : result;
}

/// gamma(pi, tau) and its derivatives, named by the variables derived to.
struct Gibbs {
    double g = 0.0, p = 0.0, pp = 0.0, t = 0.0, tt = 0.0, pt = 0.0;
};

Gibbs region_1_gibbs(double pi, double tau) {
    const double a = 7.1 - pi, b = tau - 1.222;
    Gibbs sum;
    for (const Term& term : region_1) {
        const double i = term.i, j = term.j;
        const double value = term.n * integer_power(a, term.i) * integer_power(b, term.j);
        sum.g += value;
        sum.p -= value * i / a;
        sum.pp += value * i * (i - 1.0) / (a * a);
        sum.t += value * j / b;
        sum.tt += value * j * (j - 1.0) / (b * b);
        sum.pt -= value * i * j / (a * b);
    }
    return sum;
}

/// [wagner1993]: saturation pressure and its slope, and the two saturated densities.
struct Saturation {
    double pressure_pa, slope_pa_per_k, liquid_kg_per_m3, vapour_kg_per_m3;
};

Saturation saturation(double temperature_k) {
    const double tau = 1.0 - temperature_k / critical_k;
    const double root = math::square_root(tau);
    const double third = math::power(tau, 1.0 / 3.0), sixth = math::power(tau, 1.0 / 6.0);
    const double t3 = tau * tau * tau;
    constexpr double a[] = {-7.85951783, 1.84408259,  -11.7866497,
                            22.6807411,  -15.9618719, 1.80122502};
    const double sum = a[0] * tau + a[1] * tau * root + a[2] * t3 + a[3] * t3 * root +
                       a[4] * t3 * tau + a[5] * t3 * t3 * tau * root;
    const double derivative = a[0] + 1.5 * a[1] * root + 3.0 * a[2] * tau * tau +
                              3.5 * a[3] * tau * tau * root + 4.0 * a[4] * t3 +
                              7.5 * a[5] * t3 * t3 * root;
    Saturation out{};
    const double exponent = critical_k / temperature_k * sum;
    out.pressure_pa = critical_pa * math::exp(exponent);
    out.slope_pa_per_k = -out.pressure_pa / temperature_k * (exponent + derivative);
    const double t5 = t3 * tau * tau;
    out.liquid_kg_per_m3 =
        critical_kg_per_m3 *
        (1.0 + 1.99274064 * third + 1.09965342 * third * third - 0.510839303 * tau * third * third -
         1.75493479 * t5 * third - 45.5170352 * integer_power(tau, 14) * third -
         6.74694450e5 * integer_power(tau, 36) * third * third);
    out.vapour_kg_per_m3 =
        critical_kg_per_m3 *
        math::exp(-2.03150240 * third - 2.68302940 * third * third - 5.38626492 * tau * third -
                  17.2991605 * t3 - 44.7586581 * integer_power(tau, 6) * sixth -
                  63.9201063 * integer_power(tau, 11) * third * root);
    return out;
}

}  // namespace

LiquidWater liquid_water(double temperature_k, double pressure_pa) {
    constexpr double gas_constant = 461.526;  // J/(kg K), [iapws-if97] eq. (1)
    const double pi = pressure_pa / 16.53e6, tau = 1386.0 / temperature_k;
    const Gibbs g = region_1_gibbs(pi, tau);
    const double rt = gas_constant * temperature_k;
    const double mixed = g.p - tau * g.pt;
    LiquidWater out{};
    out.density_kg_per_m3 = pressure_pa / (rt * pi * g.p);
    out.enthalpy_j_per_kg = rt * tau * g.t;
    out.entropy_j_per_kg_k = gas_constant * (tau * g.t - g.g);
    out.heat_capacity_j_per_kg_k = -gas_constant * tau * tau * g.tt;
    out.speed_of_sound_m_per_s =
        math::square_root(rt * g.p * g.p / (mixed * mixed / (tau * tau * g.tt) - g.pp));
    return out;
}

double water_viscosity_pa_s(double temperature_k, double density_kg_per_m3) {
    const double t = temperature_k / critical_k, rho = density_kg_per_m3 / critical_kg_per_m3;
    double dilute = 0.0;
    for (std::size_t i = viscosity_0.size(); i-- > 0;) dilute = dilute / t + viscosity_0[i];
    double sum = 0.0;
    for (const Term& term : viscosity_1)
        sum += term.n * integer_power(1.0 / t - 1.0, term.i) * integer_power(rho - 1.0, term.j);
    return 1e-6 * 100.0 * math::square_root(t) / dilute * math::exp(rho * sum);
}

double water_conductivity_w_per_m_k(double temperature_k, double density_kg_per_m3) {
    const double t = temperature_k / critical_k, rho = density_kg_per_m3 / critical_kg_per_m3;
    double dilute = 0.0;
    for (std::size_t i = conductivity_0.size(); i-- > 0;) dilute = dilute / t + conductivity_0[i];
    double sum = 0.0;
    for (int i = 4; i >= 0; --i) {
        double row = 0.0;
        for (int j = 5; j >= 0; --j) row = row * (rho - 1.0) + conductivity_1[i][j];
        sum = sum * (1.0 / t - 1.0) + row;
    }
    return 1e-3 * math::square_root(t) / dilute * math::exp(rho * sum);
}

double water_saturation_pressure_pa(double temperature_k) {
    const auto& n = region_4;
    const double x = temperature_k + n[8] / (temperature_k - n[9]);
    const double a = x * x + n[0] * x + n[1];
    const double b = n[2] * x * x + n[3] * x + n[4];
    const double c = n[5] * x * x + n[6] * x + n[7];
    const double root = 2.0 * c / (-b + math::square_root(b * b - 4.0 * a * c));
    return 1e6 * integer_power(root, 4);
}

double water_saturation_temperature_k(double pressure_pa) {
    const auto& n = region_4;
    const double beta = math::square_root(math::square_root(pressure_pa * 1e-6));
    const double e = beta * beta + n[2] * beta + n[5];
    const double f = n[0] * beta * beta + n[3] * beta + n[6];
    const double g = n[1] * beta * beta + n[4] * beta + n[7];
    const double d = 2.0 * g / (-f - math::square_root(f * f - 4.0 * e * g));
    const double sum = n[9] + d;
    return 0.5 * (sum - math::square_root(sum * sum - 4.0 * (n[8] + n[9] * d)));
}

double water_latent_heat_j_per_kg(double temperature_k) {
    const Saturation s = saturation(temperature_k);
    return temperature_k * s.slope_pa_per_k * (1.0 / s.vapour_kg_per_m3 - 1.0 / s.liquid_kg_per_m3);
}

}  // namespace emberpath::properties
