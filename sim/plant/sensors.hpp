#pragma once
/// What the sensors make of the state, faults in the ohm domain.
///
/// Equation  R(T) = 10 kohm exp(3435 K (1/T - 1/298.15 K)); R' = 1 / (1/(R gain + series) + parallel)
/// Source    [iec60539], B-formula
/// Checked   tests/reference (thermistor tables), tests/unit/plant/sensors_test.cpp

#include "sim/plant/parameters.hpp"
#include "sim/properties/thermistor.hpp"

namespace emberpath::plant {

template <class Real>
[[nodiscard]] Real thermistor_ohm(const Real& kelvin) {
    return properties::beta_resistance_ohm(properties::BetaThermistor{}, kelvin);
}

template <class Real>
[[nodiscard]] Real seen_ohm(const Real& kelvin,
                            const typename Parameters<Real>::Thermistor& sensor) {
    constexpr double broken_ohm = 5.0e6;
    const Real contact = math::select(kelvin > sensor.opens_above_k, Real(broken_ohm), Real(0.0));
    const Real lead = thermistor_ohm(kelvin) * sensor.gain + sensor.series_ohm + contact;
    return 1.0 / (1.0 / lead + sensor.parallel_s);
}

}  // namespace emberpath::plant
