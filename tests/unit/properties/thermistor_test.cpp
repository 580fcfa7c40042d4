// Proves the heater's thermistor formula: its known points, its exact inverse, and the same bits in a pack.

#include "sim/properties/thermistor.hpp"

#include <gtest/gtest.h>

namespace emberpath::properties {
namespace {

constexpr BetaThermistor heater_sensor{};

TEST(Thermistor, ReadsTenKiloOhmAt25Degrees) {
    EXPECT_DOUBLE_EQ(beta_resistance_ohm(heater_sensor, 298.15), 10000.0);
    EXPECT_DOUBLE_EQ(beta_temperature_k(heater_sensor, 10000.0), 298.15);
}

TEST(Thermistor, HasTheReferencePointsOfTheHeater) {
    EXPECT_NEAR(beta_resistance_ohm(heater_sensor, 287.15), 15548.0, 10.0);
    EXPECT_NEAR(beta_resistance_ohm(heater_sensor, 323.15), 4100.0, 20.0);
    EXPECT_NEAR(beta_resistance_ohm(heater_sensor, 333.15), 2980.0, 10.0);
}

TEST(Thermistor, ResistanceFallsAsTemperatureRises) {
    double last = beta_resistance_ohm(heater_sensor, 250.0);
    for (double t = 251.0; t < 420.0; t += 1.0) {
        const double now = beta_resistance_ohm(heater_sensor, t);
        EXPECT_LT(now, last);
        // The slope is the coefficient of the formula.
        const double middle = beta_resistance_ohm(heater_sensor, t - 0.5);
        EXPECT_NEAR((now - last) / middle, temperature_coefficient_per_k(heater_sensor, t - 0.5),
                    2e-4);
        last = now;
    }
}

TEST(Thermistor, ReadingUndoesTheFormula) {
    for (double t = 250.0; t < 420.0; t += 0.7)
        EXPECT_NEAR(beta_temperature_k(heater_sensor, beta_resistance_ohm(heater_sensor, t)), t,
                    1e-10);
}

TEST(Thermistor, OpenAndShortCircuitsReadFarOutsideAnyWater) {
    EXPECT_LT(beta_temperature_k(heater_sensor, 1e7), 220.0);   // open
    EXPECT_GT(beta_temperature_k(heater_sensor, 10.0), 500.0);  // short
    EXPECT_NEAR(divider_share(1e7, 10000.0), 1.0, 1e-2);
    EXPECT_EQ(divider_share(0.0, 10000.0), 0.0);
}

TEST(Thermistor, EveryLaneHasTheBitsOfTheScalar) {
    math::Pack<8> t;
    for (std::size_t i = 0; i < 8; ++i) math::set_lane(t, i, 270.0 + 17.3 * static_cast<double>(i));
    const math::Pack<8> ohm = beta_resistance_ohm(heater_sensor, t);
    const math::Pack<8> back = beta_temperature_k(heater_sensor, ohm);
    const math::Pack<8> share = divider_share(ohm, 10000.0);
    for (std::size_t i = 0; i < 8; ++i) {
        EXPECT_EQ(math::lane(ohm, i), beta_resistance_ohm(heater_sensor, math::lane(t, i)));
        EXPECT_EQ(math::lane(back, i), beta_temperature_k(heater_sensor, math::lane(ohm, i)));
        EXPECT_EQ(math::lane(share, i), divider_share(math::lane(ohm, i), 10000.0));
    }
}

TEST(Thermistor, ThreePointFitPassesThroughItsPoints) {
    const std::array<double, 3> ohm{22050.0, 4911.0, 1451.0}, kelvin{278.15, 318.15, 358.15};
    const SteinhartHart fit = SteinhartHart::through(ohm, kelvin);
    for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(fit.temperature_k(ohm[i]), kelvin[i], 1e-9);
}

}  // namespace
}  // namespace emberpath::properties
