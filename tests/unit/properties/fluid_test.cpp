// Proves how water, air, LPG and gases behave: derivatives agree, inverses close, ranges join smoothly.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/properties/air.hpp"
#include "sim/properties/fuel_gas.hpp"
#include "sim/properties/ideal_gas.hpp"
#include "sim/properties/lpg.hpp"
#include "sim/properties/water.hpp"

namespace emberpath::properties {
namespace {

TEST(Water, HeatCapacityIsTheSlopeOfEnthalpy) {
    for (double t = 278.15; t < 370.0; t += 5.0) {
        const double slope = (liquid_water(t + 0.05, 3e5).enthalpy_j_per_kg -
                              liquid_water(t - 0.05, 3e5).enthalpy_j_per_kg) /
                             0.1;
        const double cp = liquid_water(t, 3e5).heat_capacity_j_per_kg_k;
        EXPECT_NEAR(slope, cp, 1e-5 * cp);
    }
}

TEST(Water, IsDensestNearFourDegrees) {
    double densest = 0.0, at = 0.0;
    for (double t = 273.15; t < 300.0; t += 0.05) {
        const double density = liquid_water(t, 101325.0).density_kg_per_m3;
        if (density > densest) densest = density, at = t;
    }
    EXPECT_NEAR(at - 273.15, 4.0, 0.2);
}

TEST(Water, BoilingPressureAndTemperatureInvertEachOther) {
    for (double t = 275.0; t < 600.0; t += 7.0)
        EXPECT_NEAR(water_saturation_temperature_k(water_saturation_pressure_pa(t)), t, 1e-7);
}

TEST(Water, LatentHeatFallsToNothingAtTheCriticalPoint) {
    EXPECT_GT(water_latent_heat_j_per_kg(280.0), water_latent_heat_j_per_kg(370.0));
    EXPECT_LT(water_latent_heat_j_per_kg(646.0), 0.2 * water_latent_heat_j_per_kg(280.0));
}

TEST(IdealGas, HeatCapacityIsTheSlopeOfEnthalpy) {
    for (std::size_t i = 0; i < species_count; ++i) {
        const auto s = static_cast<Species>(i);
        for (double t = 320.0; t < 3000.0; t += 90.0) {
            const double slope =
                (enthalpy_j_per_mol(s, t + 0.1) - enthalpy_j_per_mol(s, t - 0.1)) / 0.2;
            EXPECT_NEAR(slope, heat_capacity_j_per_mol_k(s, t), 1e-5 * slope);
        }
    }
}

TEST(IdealGas, TheTwoRangesMeetAtAThousandKelvin) {
    for (std::size_t i = 0; i < species_count; ++i) {
        const auto s = static_cast<Species>(i);
        const double below = std::nextafter(1000.0, 0.0);
        EXPECT_NEAR(heat_capacity_j_per_mol_k(s, below), heat_capacity_j_per_mol_k(s, 1000.0),
                    0.02);
        EXPECT_NEAR(enthalpy_j_per_mol(s, below), enthalpy_j_per_mol(s, 1000.0), 3.0);
        EXPECT_NEAR(entropy_j_per_mol_k(s, below), entropy_j_per_mol_k(s, 1000.0), 0.01);
    }
}

TEST(IdealGas, EntropyOfOxygenIsTheTabulatedOne) {
    // [codata1989]: S(298.15 K, 1 bar) of O2 205.152, N2 191.609, H2O 188.835 J/(mol K)
    EXPECT_NEAR(entropy_j_per_mol_k(Species::oxygen, 298.15), 205.15, 0.05);
    EXPECT_NEAR(entropy_j_per_mol_k(Species::nitrogen, 298.15), 191.61, 0.05);
    EXPECT_NEAR(entropy_j_per_mol_k(Species::water, 298.15), 188.83, 0.05);
}

TEST(Air, CompositionAddsUpToOneMoleOfAir) {
    EXPECT_NEAR(dry_air().total(), 1.0, 1e-9);
    EXPECT_NEAR(mass_kg(dry_air()), iso6976_air_kg_per_mol, 1e-4 * iso6976_air_kg_per_mol);
}

TEST(Air, MoistAirIsLighterThanDryAir) {
    const double dry = dry_air_density_kg_per_m3(293.15, standard_pressure_pa);
    EXPECT_NEAR(moist_air_density_kg_per_m3(293.15, standard_pressure_pa, 0.0), dry, 1e-12);
    EXPECT_LT(moist_air_density_kg_per_m3(293.15, standard_pressure_pa, 0.8), dry);
    EXPECT_NEAR(water_per_mole_of_dry_air(293.15, standard_pressure_pa, 1.0), 0.0236, 2e-4);
}

TEST(FuelGas, PropertiesDoNotDependOnTheScaleOfTheAmounts) {
    GasComposition percent;
    percent[GasComponent::methane] = 90.0;
    percent[GasComponent::ethane] = 10.0;
    GasComposition share;
    share[GasComponent::methane] = 0.9;
    share[GasComponent::ethane] = 0.1;
    EXPECT_NEAR(gas_properties(percent).gross_j_per_m3, gas_properties(share).gross_j_per_m3, 1e-3);
}

TEST(FuelGas, InertGasLowersCalorificValueAndWobbeIndex) {
    const GasProperties pure = gas_properties(*test_gas("G20")),
                        inert = gas_properties(*test_gas("G25"));
    EXPECT_LT(inert.gross_j_per_m3, pure.gross_j_per_m3);
    EXPECT_LT(inert.gross_wobbe_j_per_m3, pure.gross_wobbe_j_per_m3);
    EXPECT_FALSE(test_gas("G999").has_value());
    EXPECT_FALSE(flammability(Species::nitrogen).has_value());
}

// The heater's parameters for its two gases are the test gases G20 and G31.
TEST(FuelGas, TheHeatersGasesAreTheTestGases) {
    const GasProperties natural = gas_properties(*test_gas("G20")),
                        propane = gas_properties(*test_gas("G31"));
    EXPECT_NEAR(natural.gross_j_per_m3 / 1e6, 37.78, 0.01);
    EXPECT_NEAR(natural.net_j_per_m3 / natural.gross_j_per_m3, 0.9007, 5e-4);
    EXPECT_NEAR(natural.density_kg_per_m3, 0.680, 1e-3);
    EXPECT_NEAR(propane.gross_j_per_m3 / 1e6, 95.65, 0.03);
    EXPECT_NEAR(propane.net_j_per_m3 / propane.gross_j_per_m3, 0.920, 5e-4);
    EXPECT_NEAR(propane.density_kg_per_m3, 1.899, 1e-3);
}

TEST(Lpg, BoilingTemperatureInvertsThePressure) {
    for (const Liquefied fluid : {Liquefied::propane, Liquefied::n_butane, Liquefied::isobutane})
        for (double t = 220.0; t < 340.0; t += 11.0)
            EXPECT_NEAR(boiling_temperature_k(fluid, saturated_lpg(fluid, t).pressure_pa), t, 1e-6);
}

TEST(Lpg, MixturePressureLiesBetweenThePureOnes) {
    const double propane = saturated_lpg(Liquefied::propane, 288.15).pressure_pa;
    const double butane = saturated_lpg(Liquefied::n_butane, 288.15).pressure_pa;
    EXPECT_DOUBLE_EQ(propane_butane_pressure_pa(1.0, 288.15), propane);
    EXPECT_DOUBLE_EQ(propane_butane_pressure_pa(0.0, 288.15), butane);
    EXPECT_NEAR(propane_butane_pressure_pa(0.5, 288.15), 0.5 * (propane + butane), 1e-6);
}

TEST(Lpg, SaturationPressureLanesHaveTheBitsOfTheScalar) {
    math::Pack<8> t;
    for (std::size_t i = 0; i < 8; ++i) math::set_lane(t, i, 240.0 + 9.7 * static_cast<double>(i));
    const math::Pack<8> p = propane_saturation_pressure_pa(t);
    for (std::size_t i = 0; i < 8; ++i)
        EXPECT_EQ(math::lane(p, i), propane_saturation_pressure_pa(math::lane(t, i)));
}

}  // namespace
}  // namespace emberpath::properties
