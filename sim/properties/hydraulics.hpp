#pragma once
/// Pressure drops in pipes, fittings and valves, for water and gas alike.
/// Checked   tests/reference/hydraulics_reference_test.cpp

#include <span>
#include <string_view>

#include "sim/math/functions.hpp"

namespace emberpath::properties {

inline constexpr double pi = 3.14159265358979323846;
inline constexpr double standard_gravity_m_per_s2 = 9.80665;

[[nodiscard]] inline double bore_area_m2(double bore_m) {
    return 0.25 * pi * bore_m * bore_m;
}

/// Reynolds number of a flow in a round pipe. Equation 4 V / (pi d nu).
[[nodiscard]] inline double pipe_reynolds(double flow_m3_per_s, double bore_m,
                                          double kinematic_viscosity_m2_per_s) {
    return 4.0 * flow_m3_per_s / (pi * bore_m * kinematic_viscosity_m2_per_s);
}

/// Darcy friction factor of laminar flow. Equation 64 / Re.     Range Re below about 2300
[[nodiscard]] inline double laminar_friction(double reynolds) {
    return 64.0 / reynolds;
}

/// Darcy friction factor, smooth to rough.
/// Equation  1/sqrt(f) = -2 log10(e/3.7 + 2.51/(Re sqrt(f))), eight Newton steps      Source [colebrook1939]
/// Range     Re 3000 to 1e8, relative roughness 0 to 0.05
[[nodiscard]] double colebrook_friction(double reynolds, double relative_roughness);

/// Explicit form of the same. Equation 0.25 / log10(e/3.7 + 5.74/Re^0.9)^2     Source [swamee1976]
/// Range     Re 5000 to 1e8, relative roughness 1e-6 to 0.05; within 3 % of Colebrook
[[nodiscard]] double swamee_jain_friction(double reynolds, double relative_roughness);

/// Darcy friction factor: laminar below Re 2300, Colebrook above 3000, a straight line between (nobody knows
/// better: the flow there is unsteady).
[[nodiscard]] double darcy_friction(double reynolds, double relative_roughness);

/// What flows, and through what.
struct Fluid {
    double density_kg_per_m3;
    double viscosity_pa_s;
};
struct Pipe {
    double bore_m;
    double length_m;
    double roughness_m;
};

/// Pressure drop [Pa] along a straight pipe. Equation f (L/d) rho v^2 / 2, Darcy-Weisbach.
[[nodiscard]] double darcy_pressure_drop_pa(const Fluid& fluid, const Pipe& pipe,
                                            double flow_m3_per_s);

/// Flow [m3/s] that this pressure drop drives: the inverse of the above, by bisection.
[[nodiscard]] double darcy_flow_m3_per_s(const Fluid& fluid, const Pipe& pipe,
                                         double pressure_drop_pa);

/// Bore [m] a duct needs for a flow and a head loss [m of the flowing fluid].
/// Equation  0.66 (e^1.25 (L V^2/(g h))^4.75 + nu V^9.4 (L/(g h))^5.2)^0.04     Source [swamee1976]
/// Range     Re 5000 to 3e8; within 2 % of Colebrook
struct DuctDemand {
    double flow_m3_per_s;
    double length_m;
    double head_loss_m;
    double roughness_m;
};
[[nodiscard]] double swamee_jain_bore_m(const DuctDemand& demand,
                                        double kinematic_viscosity_m2_per_s);

/// Pressure drop [Pa] of a fitting. Equation K rho v^2 / 2.
[[nodiscard]] inline double minor_loss_pa(double k, double density_kg_per_m3, double velocity) {
    return 0.5 * k * density_kg_per_m3 * velocity * velocity;
}

/// Loss coefficients of common fittings on the velocity head in the pipe. Catalogues scatter by half.
/// Source    [cengel2010] table 8-4
struct FittingLoss {
    std::string_view fitting;
    double k;
};
[[nodiscard]] std::span<const FittingLoss> fitting_losses();

/// Discharge [m3/s] through a sharp orifice. Equation Cd A sqrt(2 dp / (rho (1 - beta^4))), beta = d/D,
/// 0 for a large upstream pipe.      Source Bernoulli and continuity, [cengel2010] section 8-8
struct Orifice {
    double bore_m;
    double discharge_coefficient;
    double diameter_ratio = 0.0;
};
[[nodiscard]] double orifice_flow_m3_per_s(const Orifice& orifice, double density_kg_per_m3,
                                           double pressure_drop_pa);

/// Flow [m3/s] through a valve of flow coefficient Kv [m3/h at 1 bar, water].
/// Equation  Kv sqrt(dp/bar / (rho/1000))     Source [iec60534]     Range turbulent, no cavitation
template <class Real>
[[nodiscard]] Real valve_flow_m3_per_s(double kv, const Real& pressure_drop_pa,
                                       double density_kg_per_m3 = 1000.0) {
    return kv / 3600.0 * math::square_root(pressure_drop_pa * (1e-5 * 1000.0 / density_kg_per_m3));
}

/// The inverse [Pa].
template <class Real>
[[nodiscard]] Real valve_pressure_drop_pa(double kv, const Real& flow_m3_per_s,
                                          double density_kg_per_m3 = 1000.0) {
    const Real share = flow_m3_per_s * (3600.0 / kv);
    return share * share * (1e5 * density_kg_per_m3 / 1000.0);
}

/// Cv [US gal/min at 1 psi] of a valve of that Kv. From the units' definitions.
[[nodiscard]] inline double cv_from_kv(double kv) {
    constexpr double us_gallon_m3 = 3.785411784e-3, psi_pa = 6894.757293168;
    return kv / 60.0 / us_gallon_m3 * math::square_root(psi_pa * 1e-5 * 1000.0 / 999.0);
}

/// Pressure rise [Pa] when a moving column is stopped at once. Equation rho a dv, Joukowsky.
[[nodiscard]] inline double surge_pressure_pa(double density_kg_per_m3, double wave_speed_m_per_s,
                                              double velocity_change_m_per_s) {
    return density_kg_per_m3 * wave_speed_m_per_s * velocity_change_m_per_s;
}

/// Time [s] a plug needs through a pipe. Equation volume / flow.
[[nodiscard]] inline double transport_delay_s(double bore_m, double length_m,
                                              double flow_m3_per_s) {
    return bore_area_m2(bore_m) * length_m / flow_m3_per_s;
}

}  // namespace emberpath::properties
