#include "sim/properties/hydraulics.hpp"

#include <array>

namespace emberpath::properties {

namespace {

constexpr double ln10 = 2.302585092994045684;

double log10(double x) {
    return math::log(x) / ln10;
}

// clang-format off
constexpr std::array fitting_table{
    FittingLoss{"sharp-edged entrance", 0.5},
    FittingLoss{"well-rounded entrance", 0.03},
    FittingLoss{"exit", 1.06},
    FittingLoss{"90 deg elbow, flanged", 0.3},
    FittingLoss{"90 deg elbow, threaded", 0.9},
    FittingLoss{"tee, line flow, threaded", 0.9},
    FittingLoss{"tee, branch flow, threaded", 2.0},
    FittingLoss{"gate valve, fully open, flanged", 0.2},
    FittingLoss{"globe valve, fully open", 10.0},
    FittingLoss{"ball valve, fully open", 0.05},
};
// clang-format on

}  // namespace

double colebrook_friction(double reynolds, double relative_roughness) {
    const double a = relative_roughness / 3.7, b = 2.51 / reynolds;
    double x = -2.0 * log10(a + 5.02 * b);  // 1/sqrt(f), first guess with f = 0.04
    for (int i = 0; i < 8; ++i) {
        const double inside = a + b * x;
        const double residual = x + 2.0 * log10(inside);
        x -= residual / (1.0 + 2.0 * b / (inside * ln10));
    }
    return 1.0 / (x * x);
}

double swamee_jain_friction(double reynolds, double relative_roughness) {
    const double l = log10(relative_roughness / 3.7 + 5.74 / math::power(reynolds, 0.9));
    return 0.25 / (l * l);
}

double darcy_friction(double reynolds, double relative_roughness) {
    constexpr double laminar_end = 2300.0, turbulent_start = 3000.0;
    if (reynolds <= laminar_end) return laminar_friction(reynolds);
    if (reynolds >= turbulent_start) return colebrook_friction(reynolds, relative_roughness);
    const double share = (reynolds - laminar_end) / (turbulent_start - laminar_end);
    return (1.0 - share) * laminar_friction(laminar_end) +
           share * colebrook_friction(turbulent_start, relative_roughness);
}

double darcy_pressure_drop_pa(const Fluid& fluid, const Pipe& pipe, double flow_m3_per_s) {
    if (flow_m3_per_s <= 0.0) return 0.0;
    const double velocity = flow_m3_per_s / bore_area_m2(pipe.bore_m);
    const double reynolds =
        pipe_reynolds(flow_m3_per_s, pipe.bore_m, fluid.viscosity_pa_s / fluid.density_kg_per_m3);
    const double friction = darcy_friction(reynolds, pipe.roughness_m / pipe.bore_m);
    return minor_loss_pa(friction * pipe.length_m / pipe.bore_m, fluid.density_kg_per_m3, velocity);
}

double darcy_flow_m3_per_s(const Fluid& fluid, const Pipe& pipe, double pressure_drop_pa) {
    double low = 0.0, high = bore_area_m2(pipe.bore_m) * 300.0;  // 300 m/s: beyond any house pipe
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (darcy_pressure_drop_pa(fluid, pipe, middle) < pressure_drop_pa ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

double swamee_jain_bore_m(const DuctDemand& demand, double kinematic_viscosity_m2_per_s) {
    const double gradient = demand.length_m / (standard_gravity_m_per_s2 * demand.head_loss_m);
    const double flow = demand.flow_m3_per_s;
    const double smooth =
        kinematic_viscosity_m2_per_s * math::power(flow, 9.4) * math::power(gradient, 5.2);
    const double rough = demand.roughness_m > 0.0 ? math::power(demand.roughness_m, 1.25) *
                                                        math::power(gradient * flow * flow, 4.75)
                                                  : 0.0;
    return 0.66 * math::power(rough + smooth, 0.04);
}

std::span<const FittingLoss> fitting_losses() {
    return fitting_table;
}

double orifice_flow_m3_per_s(const Orifice& orifice, double density_kg_per_m3,
                             double pressure_drop_pa) {
    const double beta2 = orifice.diameter_ratio * orifice.diameter_ratio;
    return orifice.discharge_coefficient * bore_area_m2(orifice.bore_m) *
           math::square_root(2.0 * pressure_drop_pa / (density_kg_per_m3 * (1.0 - beta2 * beta2)));
}

}  // namespace emberpath::properties
