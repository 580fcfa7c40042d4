#include "sim/exposure/scald.hpp"

#include <array>
#include <cstddef>
#include <span>

#include "sim/math/functions.hpp"

namespace emberpath::exposure {
namespace {

struct Point {
    double celsius, seconds;
};
// clang-format off
constexpr std::array second_degree{Point{45.0, 7200.0}, Point{47.0, 1200.0}, Point{48.0, 900.0},
                                   Point{49.0, 480.0},  Point{51.0, 120.0},  Point{55.0, 17.0},
                                   Point{60.0, 3.0}};
constexpr std::array third_degree{Point{47.0, 2700.0}, Point{49.0, 600.0}, Point{55.0, 30.0},
                                  Point{60.0, 5.0},    Point{65.6, 2.0}};
// clang-format on

std::span<const Point> table(Burn burn) {
    return burn == Burn::second_degree ? std::span<const Point>(second_degree)
                                       : std::span<const Point>(third_degree);
}

}  // namespace

double time_to_burn_s(Burn burn, double water_k) {
    const std::span<const Point> points = table(burn);
    const double celsius = water_k - 273.15;
    std::size_t i = 0;
    while (i + 2 < points.size() && celsius > points[i + 1].celsius) ++i;
    const Point& a = points[i];
    const Point& b = points[i + 1];
    const double slope = math::log(b.seconds / a.seconds) / (b.celsius - a.celsius);
    return a.seconds * math::exp(slope * (celsius - a.celsius));
}

double burn_share(Burn burn, double water_k, double seconds) {
    return seconds / time_to_burn_s(burn, water_k);
}

double skin_damage_per_s(double basal_skin_k) {
    constexpr double gas_constant_j_per_mol_k = 8.314;  // as the source's figures were found
    return math::exp(math::log(necrosis_factor_per_s) -
                     necrosis_energy_j_per_mol / (gas_constant_j_per_mol_k * basal_skin_k));
}

}  // namespace emberpath::exposure
