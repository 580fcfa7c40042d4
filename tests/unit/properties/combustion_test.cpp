// Proves the laws of combustion: atoms and energy are conserved, relations invert, and limits are as known.

#include "sim/properties/combustion.hpp"

#include <gtest/gtest.h>

#include "sim/properties/flue_analysis.hpp"
#include "sim/properties/fuel_gas.hpp"
#include "sim/properties/water.hpp"

namespace emberpath::properties {
namespace {

constexpr std::array fuels{Species::methane,  Species::ethane,    Species::propane,
                           Species::n_butane, Species::isobutane, Species::carbon_monoxide,
                           Species::hydrogen};
constexpr std::array ratios{1.0, 1.1, 1.5, 2.2, 3.7};

TEST(Combustion, ConservesEveryAtomAndTheMass) {
    for (const Species fuel : fuels)
        for (const double ratio : ratios) {
            const Atoms a = atoms(fuel);
            const Products p = complete_combustion(a, ratio);
            const double air = ratio * stoichiometric_air(a);
            EXPECT_NEAR(p.carbon_dioxide, a.carbon, 1e-12);
            EXPECT_NEAR(2.0 * p.water, a.hydrogen, 1e-12);
            EXPECT_NEAR(2.0 * p.carbon_dioxide + p.water + 2.0 * p.oxygen,
                        a.oxygen + 2.0 * air * oxygen_in_air, 1e-11);
            EXPECT_NEAR(p.nitrogen, air * (1.0 - oxygen_in_air), 1e-11);
            Mixture supplied;
            supplied[fuel] = 1.0;
            supplied[Species::oxygen] += air * oxygen_in_air;
            supplied[Species::nitrogen] += air * (1.0 - oxygen_in_air);
            EXPECT_NEAR(mass_kg(p.mixture()), mass_kg(supplied), 1e-5 * mass_kg(supplied));
        }
}

TEST(Combustion, MoistureOfTheAirGoesStraightThrough) {
    const CombustionAir moist{oxygen_in_air, 0.02};
    const Products dry = complete_combustion(atoms(Species::methane), 1.5);
    const Products wet = complete_combustion(atoms(Species::methane), 1.5, moist);
    EXPECT_NEAR(wet.water - dry.water, 0.02 * 1.5 * stoichiometric_air(atoms(Species::methane)),
                1e-12);
    EXPECT_EQ(wet.dry(), dry.dry());
    EXPECT_GT(dew_point_k(wet, standard_pressure_pa), dew_point_k(dry, standard_pressure_pa));
}

TEST(Combustion, MaximumCarbonDioxideIs117ForMethaneAnd137ForPropane) {
    EXPECT_NEAR(maximum_carbon_dioxide(atoms(Species::methane)), 0.117, 5e-4);
    EXPECT_NEAR(maximum_carbon_dioxide(atoms(Species::propane)), 0.137, 1e-3);
}

TEST(Combustion, OxygenTellsTheExcessAirExactly) {
    for (const Species fuel : fuels)
        for (const double ratio : ratios) {
            const Products p = complete_combustion(atoms(fuel), ratio);
            EXPECT_NEAR(excess_air_ratio_from_oxygen(atoms(fuel), p.dry_oxygen_share()), ratio,
                        1e-12);
        }
}

TEST(Combustion, DryAnalysisGivesTheAirBack) {
    constexpr CombustionAir air{1.0 / 4.76, 0.0};
    for (const double ratio : ratios) {
        const Products p = complete_combustion(atoms(Species::propane), ratio, air);
        const DryAnalysis analysis{p.carbon_dioxide, 0.0, p.oxygen, p.nitrogen};
        EXPECT_NEAR(air_per_mole_of_fuel(atoms(Species::propane), analysis),
                    ratio * stoichiometric_air(atoms(Species::propane), air), 1e-10);
    }
}

TEST(Combustion, FlameTemperatureFallsWithExcessAirAndRisesWithPreheat) {
    double last = 5000.0;
    for (const double ratio : ratios) {
        const double t = complete_flame_temperature_k(Species::methane, ratio);
        EXPECT_LT(t, last);
        EXPECT_GT(complete_flame_temperature_k(Species::methane, ratio, 298.15, 400.0), t);
        last = t;
    }
}

TEST(Combustion, AnAdiabaticFlameLosesItsWholeHeatInput) {
    for (const double ratio : ratios) {
        const double flame = complete_flame_temperature_k(Species::methane, ratio, 293.15, 293.15);
        const FlueLoss loss = flue_loss(Species::methane, ratio, 293.15, flame);
        EXPECT_NEAR(loss.gross_share, 1.0, 1e-9);
        EXPECT_NEAR(loss.net_share, 1.0, 2e-3);  // the net heat is stated at 25 degC
    }
}

TEST(Combustion, GrossLessNetIsTheLatentHeatOfTheWater) {
    const double difference = gross_j_per_mol(Species::propane) - net_j_per_mol(Species::propane);
    const double latent =
        water_latent_heat_j_per_kg(298.15) * molar_mass_kg_per_mol(Species::water);
    EXPECT_NEAR(difference, 4.0 * latent, 2e-3 * difference);
    // Two independent sets of constants agree: formation enthalpies, and the gas standard at 15 degC.
    EXPECT_NEAR(gross_j_per_mol(Species::methane),
                gas_component(GasComponent::methane).gross_j_per_mol, 2e-3 * 891510.0);
}

TEST(FlueAnalysis, InstrumentFormulasAgreeAmongThemselves) {
    for (double o2 = 0.0; o2 < 0.18; o2 += 0.01) {
        const double co2 = co2_from_oxygen(0.117, o2);
        EXPECT_NEAR(0.117 / co2, instrument_excess_air_ratio(o2), 1e-12);
        // The CO/CO2 ratio does not care how much air dilutes the sample.
        EXPECT_NEAR(co_to_co2_ratio(air_free_co(80e-6, o2), 0.117), co_to_co2_ratio(80e-6, co2),
                    1e-15);
    }
}

TEST(FlueAnalysis, BothFormsOfTheLossFormulaAgreeRoughly) {
    for (double o2 = 0.03; o2 < 0.12; o2 += 0.01) {
        const double by_oxygen = siegert_flue_loss(siegert_natural_gas, 110.0, o2);
        const double by_co2 =
            siegert_flue_loss_from_co2(siegert_natural_gas, 110.0, co2_from_oxygen(0.118, o2));
        EXPECT_NEAR(by_oxygen, by_co2, 0.03 * by_oxygen);
    }
}

}  // namespace
}  // namespace emberpath::properties
