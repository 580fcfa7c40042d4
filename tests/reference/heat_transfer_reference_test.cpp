// Proves exchanger effectiveness, tube heat transfer and worked examples of five textbooks.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/properties/air.hpp"
#include "sim/properties/heat_transfer.hpp"
#include "sim/properties/hydraulics.hpp"
#include "tests/reference/incropera_examples.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::properties {
namespace {

using reference::after;
using reference::before;
using reference::Check;
using reference::from;
using reference::mentions;
using reference::quantity;
using reference::Row;
using reference::rows;
using reference::Skip;

double ntu(const Row& row) {
    return after(row, "NTU=");
}
double cr(const Row& row) {
    return after(row, "Cr=");
}

std::vector<Check> effectiveness_checks() {
    return {
        {"counterflow_effectiveness", quantity("effectiveness, counterflow"),
         [](const Row& row) { return counterflow_effectiveness(ntu(row), cr(row)); }},
        {"parallel_flow_effectiveness", quantity("effectiveness, parallel"),
         [](const Row& row) { return parallel_flow_effectiveness(ntu(row), cr(row)); }},
        {"crossflow_unmixed_exact_effectiveness",
         quantity("effectiveness, crossflow, both fluids unmixed (exact)"),
         [](const Row& row) { return crossflow_unmixed_exact_effectiveness(ntu(row), cr(row)); }},
        {"crossflow_unmixed_effectiveness", quantity("effectiveness, crossflow, both unmixed, app"),
         [](const Row& row) { return crossflow_unmixed_effectiveness(ntu(row), cr(row)); }},
        {"crossflow_cmin_mixed_effectiveness", quantity("effectiveness, crossflow, Cmin mixed"),
         [](const Row& row) { return crossflow_cmin_mixed_effectiveness(ntu(row), cr(row)); }},
        {"crossflow_cmax_mixed_effectiveness", quantity("effectiveness, crossflow, Cmax mixed"),
         [](const Row& row) { return crossflow_cmax_mixed_effectiveness(ntu(row), cr(row)); }},
        {"constant_temperature_effectiveness", quantity("effectiveness, one fluid at constant"),
         [](const Row& row) { return constant_temperature_effectiveness(ntu(row)); }},
    };
}

// Cengel chapter 11.
double double_pipe_reynolds(const Row& row) {
    const double flow = after(row, "water ") / after(row, "(rho ");
    return pipe_reynolds(flow, after(row, "in D ") * 1e-3, after(row, "nu "));
}

double tube_resistance(const Row& row) {
    const double inner = after(row, "D ") * 1e-3, outer = after(row, "/") * 1e-3;
    const double length = after(row, "L ");
    const double inner_area = pi * inner * length, outer_area = pi * outer * length;
    return 1.0 / (after(row, "h_i ") * inner_area) + after(row, "fouling ") / inner_area +
           tube_wall_resistance_k_per_w(inner, outer, length, after(row, "k ")) +
           before(row, " m2K/W outside") / outer_area + 1.0 / (after(row, "h_o ") * outer_area);
}

double overall_inside(const Row& row) {
    return 1.0 / (tube_resistance(row) * pi * after(row, "D ") * 1e-3 * after(row, "L "));
}

double condenser_mean(const Row& row) {
    const double steam = after(row, "condenser ");
    return log_mean_difference_k(steam - after(row, "water "), steam - after(row, "->"));
}

double condenser_heat(const Row& row) {
    return after(row, "U ") * after(row, "A ") * condenser_mean(row);
}

double condenser_water(const Row& row) {
    return condenser_heat(row) / (after(row, "cp ") * (after(row, "->") - after(row, "water ")));
}

struct Geothermal {
    double cold, hot, heat, hot_out, mean, area, effectiveness;
};
Geothermal geothermal(const Row& row) {
    Geothermal g{};
    const Row ground = from(row, "geothermal");
    g.cold = after(row, "water ") * after(row, "(") * 1e3;
    g.hot = after(ground, "water ") * after(ground, "(") * 1e3;
    const double in = before(row, "->"), out = after(row, "->"), hot_in = after(row, "at ");
    g.heat = g.cold * (out - in);
    g.hot_out = hot_in - g.heat / g.hot;
    g.mean = log_mean_difference_k(hot_in - out, g.hot_out - in);
    g.area = g.heat / (after(row, "U ") * g.mean);
    g.effectiveness = g.heat / (std::min(g.cold, g.hot) * (hot_in - in));
    return g;
}

double geothermal_length(const Row& row) {
    const Geothermal g = geothermal(row);
    const double transfer = counterflow_ntu(g.effectiveness, g.cold / g.hot);
    return transfer * g.cold / after(row, "U ") / (pi * after(row, "tube D ") * 1e-3);
}

double radiator_heat(const Row& row) {
    return after(row, "water ") * after(row, "kg/s (") * (before(row, "->") - after(row, "->"));
}

double radiator_coefficient(const Row& row) {
    const double in = before(row, "->"), out = after(row, "->");
    const Row air = from(row, "air ");
    const double air_in = before(air, "->"), air_out = after(air, "->");
    const double area =
        before(row, " tubes") * pi * after(row, "tubes D ") * 1e-3 * after(row, "L ");
    return radiator_heat(row) /
           (area * after(row, "F ") * log_mean_difference_k(in - air_out, out - air_in));
}

std::vector<Check> cengel_checks() {
    return {
        {"dittus_boelter_nusselt", rows("H097"),
         [](const Row& row) {
             return dittus_boelter_nusselt(double_pipe_reynolds(row), after(row, "Pr "));
         }},
        {"pipe_reynolds", rows("H099"), double_pipe_reynolds},
        {"tube_wall_resistance_k_per_w", rows("H100"), tube_resistance},
        {"tube_wall_resistance_k_per_w", rows("H101"), overall_inside},
        {"log_mean_difference_k", rows("H103"), condenser_mean},
        {"log_mean_difference_k", rows("H104"), condenser_heat},
        {"log_mean_difference_k", rows("H105"), condenser_water},
        {"example 11-4", rows("H107"), [](const Row& row) { return geothermal(row).hot_out; }},
        {"log_mean_difference_k", rows("H108"),
         [](const Row& row) { return geothermal(row).mean; }},
        {"log_mean_difference_k", rows("H109"),
         [](const Row& row) { return geothermal(row).area; }},
        {"example 11-8", rows("H111"),
         [](const Row& row) { return geothermal(row).effectiveness; }},
        {"counterflow_ntu", rows("H112"), geothermal_length},
        {"example 11-6", rows("H113"), [](const Row& row) { return radiator_heat(row) / 1e3; }},
        {"log_mean_difference_k", rows("H115"), radiator_coefficient},
    };
}

// Holman chapter 10.
double holman_heat(const Row& row) {
    return before(row, " kg/min") / 60.0 * after(row, "(") * (after(row, "->") - before(row, "->"));
}

double holman_area(const Row& row) {
    const double in = before(row, "->"), out = after(row, "->");
    const Row oil = from(row, "oil ");
    const double oil_in = before(oil, "->"), oil_out = after(oil, "->");
    return holman_heat(row) /
           (after(row, "U ") * log_mean_difference_k(oil_in - out, oil_out - in));
}

/// Steam is the mixed stream and, with the oil flow halved, the larger one.
double halved_oil_reduction(const Row& row) {
    const Row oil_side = from(row, "oil ");
    const double oil = after(oil_side, "oil ") * after(oil_side, "(");
    const double steam = after(row, "steam ") * after(row, "(");
    const double transfer = after(row, "U ") * after(row, "A ") / oil;
    const double heat = crossflow_cmax_mixed_effectiveness(transfer, oil / steam) * oil *
                        (after(row, "from ") - after(oil_side, "from "));
    return 100.0 * (1.0 - heat / (after(row, "design heat rate ") * 1e3));
}

double warmed_air_heat(const Row& row) {
    const double in = after(row, "from "), out = after(row, "to ");
    const double density = dry_air_density_kg_per_m3(in + 273.15, before(row, " kPa") * 1e3);
    return before(row, " m3/s") * density * dry_air_heat_capacity_j_per_kg_k(in + 273.15) *
           (out - in);
}

/// The water flow is what makes this exchanger warm the air so: found by bisection on it.
double warming_water_exit(const Row& row) {
    const double heat = warmed_air_heat(row), water_in = after(row, "inlet "),
                 air_in = after(row, "from ");
    const double air = heat / (after(row, "to ") - air_in);
    const double ua = after(row, "U ") * after(row, "A ");
    double low = 0.02, high = 1.0;  // water is the smaller stream
    for (int i = 0; i < 60; ++i) {
        const double ratio = 0.5 * (low + high);
        const double effectiveness =
            crossflow_unmixed_exact_effectiveness(ua / (ratio * air), ratio);
        (effectiveness * ratio * air * (water_in - air_in) < heat ? low : high) = ratio;
    }
    return water_in - heat / (low * air);
}

double shell_and_tube_area(const Row& row) {
    const Row oil_side = from(row, "oil ");
    const double air = after(row, "air ") * after(row, "(");
    const double oil = after(oil_side, "oil ") * after(oil_side, "(");
    const double air_in = before(row, "->"), air_out = after(row, "->"),
                 oil_in = after(row, "from ");
    const double effectiveness = (air_out - air_in) / (oil_in - air_in);
    return shell_and_tube_ntu(effectiveness, air / oil) * air / after(row, "U ");
}

std::vector<Check> holman_checks() {
    return {
        {"log_mean_difference_k", rows("H116"), holman_area},
        {"example 10-4", rows("H117"), [](const Row& row) { return holman_heat(row) / 1e3; }},
        {"crossflow_cmax_mixed_effectiveness", rows("H120"), halved_oil_reduction},
        {"dry_air_density_kg_per_m3", rows("H121"),
         [](const Row& row) { return warmed_air_heat(row) / 1e3; }},
        {"crossflow_unmixed_exact_effectiveness", rows("H122"), warming_water_exit},
        {"shell_and_tube_ntu", rows("H123"), shell_and_tube_area},
    };
}

// Lienhard, Sukhatme and a user guide.
double lienhard_effectiveness(const Row& row) {
    const double hot = after(row, "Ch "), cold = after(row, "Cc ");
    return parallel_flow_effectiveness(after(row, "U ") * after(row, "A ") / hot, hot / cold);
}

double lienhard_heat(const Row& row) {
    const double hot = after(row, "Ch ");
    return lienhard_effectiveness(row) * hot *
           (after(from(row, "Ch "), "from ") - after(row, "from ")) / 1e3;
}

double large_pipe_reynolds(const Row& row) {
    const double flow = after(row, "water ") / after(row, "rho ");
    return pipe_reynolds(flow, after(row, "D "), after(row, "nu "));
}

double petukhov_film(const Row& row) {
    const double ratio = after(row, "mu_b/mu_w ") / after(from(row, "mu_b/mu_w"), "/");
    return petukhov_nusselt(large_pipe_reynolds(row), after(row, "Pr "), ratio) * after(row, "k ") /
           after(row, "D ");
}

double rough_film(const Row& row) {
    return rough_tube_nusselt(large_pipe_reynolds(row), after(row, "Pr "),
                              after(row, "roughness ") * 1e-3 / after(row, "D ")) *
           after(row, "k ") / after(row, "D ") / 1e3;
}

double sukhatme_length(const Row& row) {
    const double bore = after(row, "D ") * 1e-3, speed = after(row, "water ");
    const double in = before(row, "->"), out = after(row, "->"), wall = after(row, "wall ");
    // The mass flow is fixed at the inlet; the mean velocity follows from the mean density.
    const double mass = after(row, "inlet rho ") * speed * bore_area_m2(bore);
    const double mean_speed = mass / (after(from(row, "wall "), "rho ") * bore_area_m2(bore));
    const double reynolds = mean_speed * bore / after(row, "nu ");
    const double friction = 4.0 * after(row, "f ") * std::pow(reynolds, -0.25);
    const double film =
        gnielinski_nusselt(reynolds, after(row, "Pr "), friction) * after(row, "k ") / bore;
    const double heat = mass * after(row, "cp ") * (out - in);
    return heat / (film * pi * bore * log_mean_difference_k(wall - in, wall - out));
}

double guide_heat(const Row& row) {
    const Row hot_side = from(row, "hot ");
    const double cold = after(row, "cold ") * after(row, "(");
    const double hot = after(hot_side, "hot ") * after(hot_side, "(");
    const double small = std::min(cold, hot), large = std::max(cold, hot);
    return parallel_flow_effectiveness(after(row, "U ") * after(row, "A ") / small, small / large) *
           small * (after(hot_side, "from ") - after(row, "from "));
}

std::vector<Check> other_checks() {
    return {
        {"parallel_flow_effectiveness", rows("H125"), lienhard_effectiveness},
        {"parallel_flow_effectiveness", rows("H126"), lienhard_heat},
        {"petukhov_nusselt", rows("H127"), petukhov_film},
        {"rough_tube_nusselt", rows("H129"), rough_film},
        {"gnielinski_nusselt", rows("H130"), sukhatme_length},
        {"laminar_nusselt_constant_flux", rows("H131"),
         [](const Row& row) {
             return laminar_nusselt_constant_flux * after(row, "k ") / (after(row, "D ") * 1e-3);
         }},
        {"parallel_flow_effectiveness", rows("H133"), guide_heat},
        {"laminar_nusselt_constant_wall", rows("H134"),
         [](const Row&) { return laminar_nusselt_constant_wall; }},
        {"laminar_nusselt_constant_flux", rows("H135"),
         [](const Row&) { return laminar_nusselt_constant_flux; }},
        {"gnielinski_nusselt", quantity("Nusselt number, Gnielinski"),
         [](const Row& row) { return gnielinski_nusselt(after(row, "Re="), after(row, "Pr=")); }},
        {"dittus_boelter_nusselt", quantity("Nusselt number, Dittus-Boelter"),
         [](const Row& row) {
             return dittus_boelter_nusselt(after(row, "Re="), after(row, "Pr="));
         }},
    };
}

TEST(HeatTransferReference, MatchesEveryPublishedRow) {
    std::vector<Check> checks;
    for (auto part : {effectiveness_checks(), incropera::exchanger_checks(),
                      incropera::tube_checks(), cengel_checks(), holman_checks(), other_checks()})
        for (Check& check : part) checks.push_back(std::move(check));
    const std::vector<Skip> skips{
        {rows("H084"),
         "the book reads effectiveness 0.82 from a chart; the exact series gives 0.836", true},
    };
    reference::check_file("06_heat_transfer", checks, skips);
}

}  // namespace
}  // namespace emberpath::properties
