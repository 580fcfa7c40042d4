#pragma once
/// Negative-temperature-coefficient thermistors: the beta formula the heater and its controller use, the
/// three-constant formula for comparison, and the divider that reads them.
/// Templates on Real: the beta formula runs every tick, one heater or eight at once.
/// Checked   tests/reference/thermistor_reference_test.cpp, tests/unit/properties/thermistor_test.cpp

#include <array>

#include "sim/math/functions.hpp"

namespace emberpath::properties {

inline constexpr double thermistor_reference_k = 298.15;  // 25 degC

/// One thermistor of the beta formula. Default: the heater's own, 10 kohm at 25 degC, beta 3435 K.
struct BetaThermistor {
    double reference_ohm = 10000.0;
    double beta_k = 3435.0;
};

/// Resistance [ohm].
/// Equation  R25 exp(B (1/T - 1/298.15))      Source [iec60539]
/// Range     0 to 110 degC within 5 % of the published tables; 14 % high at -20 degC
/// Errors    none: runs in every RK4 stage
template <class Real>
[[nodiscard]] Real beta_resistance_ohm(const BetaThermistor& thermistor,
                                       const Real& temperature_k) {
    const Real difference = 1.0 / temperature_k - Real(1.0 / thermistor_reference_k);
    return thermistor.reference_ohm * math::exp(thermistor.beta_k * difference);
}

/// Temperature [K] that the beta formula reads from a resistance: its exact inverse.
/// Range     resistance_ohm > 0 and normal
template <class Real>
[[nodiscard]] Real beta_temperature_k(const BetaThermistor& thermistor,
                                      const Real& resistance_ohm) {
    const Real logarithm = math::log(resistance_ohm * (1.0 / thermistor.reference_ohm));
    return 1.0 / (Real(1.0 / thermistor_reference_k) + logarithm * (1.0 / thermistor.beta_k));
}

/// Relative change of resistance per kelvin [1/K]. Equation -B / T^2.
[[nodiscard]] inline double temperature_coefficient_per_k(const BetaThermistor& thermistor,
                                                          double temperature_k) {
    return -thermistor.beta_k / (temperature_k * temperature_k);
}

/// Beta [K] from two points of a table. Equation ln(R1/R2) / (1/T1 - 1/T2).     Source [iec60539]
[[nodiscard]] inline double beta_from_two_points(double resistance_1_ohm, double temperature_1_k,
                                                 double resistance_2_ohm, double temperature_2_k) {
    return math::log(resistance_1_ohm / resistance_2_ohm) /
           (1.0 / temperature_1_k - 1.0 / temperature_2_k);
}

/// 1/T = A + B ln R + C (ln R)^3, R in ohm.     Source [steinhart1968]
struct SteinhartHart {
    double a, b, c;
    [[nodiscard]] double temperature_k(double resistance_ohm) const {
        const double x = math::log(resistance_ohm);
        return 1.0 / (a + b * x + c * x * x * x);
    }
    /// Through three points of a table. Range: three different resistances.
    [[nodiscard]] static SteinhartHart through(const std::array<double, 3>& ohm,
                                               const std::array<double, 3>& kelvin) {
        const double x0 = math::log(ohm[0]), x1 = math::log(ohm[1]), x2 = math::log(ohm[2]);
        const double g1 = (1.0 / kelvin[1] - 1.0 / kelvin[0]) / (x1 - x0);
        const double g2 = (1.0 / kelvin[2] - 1.0 / kelvin[0]) / (x2 - x0);
        const double c = (g2 - g1) / (x2 - x1) / (x0 + x1 + x2);
        const double b = g1 - c * (x0 * x0 + x0 * x1 + x1 * x1);
        return {1.0 / kelvin[0] - (b + c * x0 * x0) * x0, b, c};
    }
};

/// Share of the supply voltage across a thermistor to ground with a pull-up resistor. Ohm's law.
/// An open circuit reads 1, a short circuit 0: both outside what any temperature gives.
template <class Real>
[[nodiscard]] Real divider_share(const Real& thermistor_ohm, double pull_up_ohm) {
    return thermistor_ohm / (thermistor_ohm + pull_up_ohm);
}

}  // namespace emberpath::properties
