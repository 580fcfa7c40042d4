#pragma once
/// Fans by the laws of similarity, and what they need at the shaft.
/// Checked   tests/reference/flame_fan_reference_test.cpp
///
/// The plant's own fan (sim/plant/air_path.hpp) obeys the same laws at one diameter; it is stated there by the torque of
/// its motor, so that no efficiency is needed.

namespace emberpath::properties {

/// One point of a fan.
struct FanPoint {
    double flow_m3_per_s;
    double pressure_rise_pa;
    double shaft_power_w;
};

/// A geometrically similar fan at a similar point: new over old.
struct FanRatio {
    double speed = 1.0;
    double diameter = 1.0;
    double density = 1.0;
};

/// Equation  Q ~ n D^3, dp ~ rho n^2 D^2, P ~ rho n^3 D^5      Source [eck]; the fan laws
/// Range     ratios > 0; the same point of the curve, at a Reynolds number that does not matter
[[nodiscard]] constexpr FanPoint scaled(const FanPoint& point, const FanRatio& by) {
    const double tip = by.speed * by.diameter, area = by.diameter * by.diameter;
    return {point.flow_m3_per_s * tip * area, point.pressure_rise_pa * by.density * tip * tip,
            point.shaft_power_w * by.density * tip * tip * tip * area};
}

/// Power at the shaft [W].    Equation  Q dp / eta      Range  efficiency > 0 to 1
[[nodiscard]] constexpr double fan_shaft_power_w(double flow_m3_per_s, double pressure_rise_pa,
                                                 double efficiency) {
    return flow_m3_per_s * pressure_rise_pa / efficiency;
}

/// What a stream carries away as its own motion [Pa].
/// Equation  alpha rho (Q/A)^2 / 2; alpha > 1 where the stream is uneven (kinetic energy correction)
[[nodiscard]] constexpr double kinetic_pressure_pa(double flow_m3_per_s, double area_m2,
                                                   double density_kg_per_m3, double alpha) {
    const double speed_m_per_s = flow_m3_per_s / area_m2;
    return 0.5 * alpha * density_kg_per_m3 * speed_m_per_s * speed_m_per_s;
}

}  // namespace emberpath::properties
