// Proves the flue gas of the plant: stoichiometry of both gases at every excess air, and that a heater which
// burns nothing shows ambient air.

#include <gtest/gtest.h>

#include <cmath>

#include "sim/plant/flue_composition.hpp"
#include "sim/properties/combustion.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {
namespace {

using FlueComposition = plant::FlueComposition<double>;

/// All banks burning 1 L/s of gas together at one excess-air ratio.
FlueComposition flue_at(const plant::PlantParameters& p, double excess_air_ratio) {
    plant::State<double> x{};
    plant::Algebra<double> a{};
    for (std::size_t b = 0; b < plant::bank_count; ++b) {
        x[plant::flame_0 + b] = 1.0;
        a.gas.bank_m3_per_s[b] = 1e-3 * plant::bank_area_share[b];
        a.air_ratio[b] = excess_air_ratio;
    }
    a.air_m3_per_s = 1e-3 * p.stoichiometric_air * excess_air_ratio;
    return plant::flue_composition(p, x, a);
}

TEST(Stoichiometry, CarbonDioxideAtLambdaOneIsTheGreatestPossible) {
    const FlueComposition methane = flue_at(plant::natural_gas_parameters(), 1.0);
    EXPECT_NEAR(methane.co2_share, 0.117, 0.0005);  // 11.7 %
    EXPECT_NEAR(methane.o2_share, 0.0, 1e-12);
    const FlueComposition propane = flue_at(plant::propane_parameters(), 1.0);
    EXPECT_NEAR(propane.co2_share, 0.137, 0.001);  // 13.7 %
    EXPECT_NEAR(propane.o2_share, 0.0, 1e-12);
    for (int hundredths = 50; hundredths < 400; hundredths += 5) {
        const double ratio = 0.01 * hundredths;
        EXPECT_LE(flue_at(plant::natural_gas_parameters(), ratio).co2_share,
                  methane.co2_share + 1e-12);
        EXPECT_LE(flue_at(plant::propane_parameters(), ratio).co2_share, propane.co2_share + 1e-12);
    }
}

TEST(Stoichiometry, AirDemandAgreesWithTheReactionEquation) {
    // CH4 needs 2 O2, C3H8 needs 5; air is 20.95 % oxygen by volume.
    EXPECT_NEAR(plant::natural_gas_parameters().stoichiometric_air, 2.0 / 0.2095, 0.03);
    EXPECT_NEAR(plant::propane_parameters().stoichiometric_air, 5.0 / 0.2095, 0.05);
}

TEST(Stoichiometry, OxygenAndCarbonDioxideShareOneLine) {
    // Dry products of one fuel lie on the line from (0, CO2max) to (20.95 %, 0), from lambda 1 upwards.
    for (const auto& p : {plant::natural_gas_parameters(), plant::propane_parameters()}) {
        const double most = flue_at(p, 1.0).co2_share;
        for (int hundredths = 105; hundredths < 400; hundredths += 5) {
            const double ratio = 0.01 * hundredths;
            const FlueComposition f = flue_at(p, ratio);
            EXPECT_NEAR(f.co2_share / most + f.o2_share / 0.2095, 1.0, 2e-3) << ratio;
        }
    }
}

TEST(Stoichiometry, ExcessAirFallsOutOfTheComposition) {
    for (const double ratio : {1.0, 1.5, 2.2, 3.7})
        EXPECT_NEAR(flue_at(plant::natural_gas_parameters(), ratio).excess_air_ratio, ratio, 1e-12);
}

TEST(CarbonMonoxide, RisesSteeplyTowardsLackOfAirAndIsCapped) {
    double last = 1.0;
    for (const double ratio : {0.8, 0.95, 1.1, 1.2, 1.3, 1.5}) {
        const double now = plant::air_free_co(ratio, 1.0, 0.0);
        EXPECT_LE(now, last) << ratio;
        EXPECT_LE(now, 0.06);
        last = now;
    }
    EXPECT_GT(plant::air_free_co(1.5, 1.0, 0.5), plant::air_free_co(1.5, 1.0, 0.0));
    EXPECT_GT(plant::air_free_co(2.6, 1.0, 0.0), plant::air_free_co(1.7, 1.0, 0.0));
    EXPECT_GT(plant::air_free_co(1.5, 1.4, 0.0), plant::air_free_co(1.5, 1.0, 0.0));
}

void expect_ambient_air(const plant::Observables& o) {
    EXPECT_EQ(o.o2_share, 0.2095);
    EXPECT_EQ(o.co2_share, 0.0);
    EXPECT_EQ(o.co_share, 0.0);
    EXPECT_EQ(o.excess_air_ratio, 0.0);
    EXPECT_EQ(o.heat_input_w, 0.0);
    EXPECT_EQ(o.flame_lit, 0.0);
}

TEST(StoppedHeater, ShowsAmbientAirInTheFlue) {
    House house;
    expect_ambient_air(house.look().plant);
    house.run(5.0);
    expect_ambient_air(house.look().plant);
    house.open_taps(10.0);
    house.run(60.0);
    EXPECT_LT(house.look().plant.o2_share, 0.1);
    house.open_taps(0.0);
    house.run(30.0);
    expect_ambient_air(house.look().plant);
}

TEST(StoppedHeater, ShowsAmbientAirWhenItsPowerIsCut) {
    House house = warmed_up({"shower", 50.0, 10.0});
    house.inputs.surroundings.power_on = 0.0;
    house.run(5.0);
    const plant::Observables o = house.look().plant;
    expect_ambient_air(o);
    EXPECT_EQ(o.fan_current_a, 0.0);
    EXPECT_EQ(o.manifold_pa, 0.0);
    EXPECT_EQ(o.spark, 0.0);
}

}  // namespace
}  // namespace emberpath::laws
