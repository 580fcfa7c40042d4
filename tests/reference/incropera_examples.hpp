#pragma once
/// Worked examples of Incropera, DeWitt, Bergman & Lavine (2007), chapters 8 and 11, for the heat-transfer
/// reference test.

#include <vector>

#include "sim/properties/heat_transfer.hpp"
#include "sim/properties/hydraulics.hpp"
#include "tests/support/reference_rows.hpp"

namespace emberpath::properties::incropera {

using reference::after;
using reference::before;
using reference::Check;
using reference::from;
using reference::Row;
using reference::rows;

inline double reynolds_by_mass(double kg_per_s, double bore_m, double viscosity_pa_s) {
    return 4.0 * kg_per_s / (pi * bore_m * viscosity_pa_s);
}

// Incropera example 11.1: oil in the annulus heats water in the inner tube.
struct ConcentricTube {
    double oil_w, water_out_k, reynolds, length_m;
};
inline ConcentricTube concentric_tube(const Row& row) {
    const double oil_in = after(row, "kg/s "), oil_out = after(row, "->");
    const double water = after(row, "water "), water_in = after(row, "from ");
    const double bore = after(row, "inner tube D ") * 1e-3,
                 outer = after(row, "outer tube D ") * 1e-3;
    const Row inner = from(row, "in inner tube");
    ConcentricTube out{};
    out.oil_w = after(row, "oil ") * after(row, "cp ") * (oil_in - oil_out);
    out.water_out_k = water_in + out.oil_w / (water * after(inner, "cp "));
    out.reynolds = reynolds_by_mass(water, bore, after(inner, "mu "));
    const double inside =
        dittus_boelter_nusselt(out.reynolds, after(inner, "Pr ")) * after(inner, "k ") / bore;
    const double outside = after(row, "annulus Nu ") * after(row, "k ") / (outer - bore);
    const double overall = 1.0 / (1.0 / inside + 1.0 / outside);
    const double mean = log_mean_difference_k(oil_in - out.water_out_k, oil_out - water_in);
    out.length_m = out.oil_w / (overall * pi * bore * mean);
    return out;
}

// Incropera examples 11.3 and 11.4: finned crossflow, both fluids unmixed.
struct Crossflow {
    double capacity_ratio, area_m2, heat_w, water_out;
};
inline Crossflow crossflow_sizing(const Row& row) {
    const Row gas_side = from(row, "gas ");
    const double water = after(row, "cp ") * after(row, "water "), in = before(row, "->");
    const double heat = water * (after(row, "->") - in);
    const double gas = heat / (before(gas_side, "->") - after(gas_side, "->"));
    Crossflow out{};
    out.capacity_ratio = gas / water;
    const double effectiveness = heat / (gas * (before(gas_side, "->") - in));
    out.area_m2 =
        crossflow_unmixed_exact_ntu(effectiveness, out.capacity_ratio) * gas / after(row, "U_h ");
    return out;
}
inline Crossflow crossflow_rating(const Row& row) {
    constexpr double water_cp = 4197.0;  // of the example before
    const Row gas_side = from(row, "gas ");
    const double gas = after(gas_side, "gas ") * after(gas_side, "(cp ");
    const double water = after(row, "water ") * water_cp;
    const double water_in = after(row, "kg/s from ");
    const double gas_in = after(gas_side, "from ");
    const double transfer = after(row, "U ") * after(row, "A ") / gas;
    Crossflow out{};
    out.capacity_ratio = gas / water;
    out.heat_w =
        crossflow_unmixed_exact_effectiveness(transfer, gas / water) * gas * (gas_in - water_in);
    out.water_out = water_in + out.heat_w / water;
    return out;
}

inline std::vector<Check> exchanger_checks() {
    return {
        {"example 11.1", rows("H077"), [](const Row& row) { return concentric_tube(row).oil_w; }},
        {"example 11.1", rows("H078"),
         [](const Row& row) { return concentric_tube(row).water_out_k; }},
        {"example 11.1", rows("H079"),
         [](const Row& row) { return concentric_tube(row).reynolds; }},
        {"log_mean_difference_k", rows("H080"),
         [](const Row& row) { return concentric_tube(row).length_m; }},
        {"example 11.3", rows("H082"),
         [](const Row& row) { return crossflow_sizing(row).capacity_ratio; }},
        {"crossflow_unmixed_exact_ntu", rows("H083"),
         [](const Row& row) { return crossflow_sizing(row).area_m2; }},
        {"crossflow_unmixed_exact_effectiveness", rows("H084"),
         [](const Row& row) { return crossflow_rating(row).heat_w; }},
        {"crossflow_unmixed_exact_effectiveness", rows("H086"),
         [](const Row& row) { return crossflow_rating(row).water_out; }},
        {"dittus_boelter_nusselt", rows("H087"),
         [](const Row& row) {
             const double re =
                 reynolds_by_mass(after(row, "water "), after(row, "D ") * 1e-3, after(row, "mu "));
             return dittus_boelter_nusselt(re, after(row, "Pr "));
         }},
        {"example 11.5", rows("H088"),
         [](const Row& row) {
             return after(row, "from ") +
                    before(row, " GW") * 1e9 / (after(row, "cooling water ") * after(row, "cp "));
         }},
    };
}

// Incropera chapter 8: flow in tubes.
inline double generating_tube_length(const Row& row) {
    const double inner = after(row, "D_i ") * 1e-3, outer = after(row, "D_o ") * 1e-3;
    const double heat =
        after(row, "water ") * after(row, "(cp ") * (after(row, "->") - before(row, "->"));
    return heat / (after(row, "generation ") * (bore_area_m2(outer) - bore_area_m2(inner)));
}

inline double log_mean_coefficient(const Row& row) {
    const double in = before(row, "->"), out = after(row, "->"), wall = after(row, "wall ");
    const double heat = after(row, "water ") * after(row, "(cp ") * (out - in);
    const double area = pi * after(row, "D ") * 1e-3 * after(row, "L ");
    return heat / (area * log_mean_difference_k(wall - in, wall - out));
}

inline double solar_tube_length(const Row& row) {
    return after(row, "water ") * after(row, "(cp ") * (after(row, "->") - before(row, "->")) /
           (after(row, "flux ") * pi * after(row, "D ") * 1e-3);
}

inline double solar_wall(const Row& row) {
    const double film = after(row, "Nu ") * after(row, "k ") / (after(row, "D ") * 1e-3);
    return after(row, "->") + after(row, "flux ") / film;
}

/// Incropera example 8.6: an air duct that loses heat to a cold room; flux and wall at its end.
inline double duct_flux(const Row& row) {
    const double bore = after(row, "D "),
                 reynolds = reynolds_by_mass(after(row, "duct "), bore, after(row, "mu "));
    const double inside =
        dittus_boelter_nusselt(reynolds, after(row, "Pr "), 0.3) * after(row, "k ") / bore;
    return (after(row, "->") - after(row, "surroundings ")) /
           (1.0 / inside + 1.0 / after(row, "outside h "));
}

inline double duct_wall(const Row& row) {
    return after(row, "surroundings ") + duct_flux(row) / after(row, "outside h ");
}

inline std::vector<Check> tube_checks() {
    return {
        {"bore_area_m2", rows("H089"), generating_tube_length},
        {"log_mean_difference_k", rows("H091"), log_mean_coefficient},
        {"example 8.4", rows("H092"), solar_tube_length},
        {"laminar_nusselt_constant_flux", rows("H093"), solar_wall},
        {"dittus_boelter_nusselt", rows("H095"), duct_flux},
        {"dittus_boelter_nusselt", rows("H096"), duct_wall},
    };
}

}  // namespace emberpath::properties::incropera
