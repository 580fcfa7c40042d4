// Proves that equilibrium keeps every atom and the pressure, and turns into complete combustion in the cold.

#include "sim/properties/equilibrium.hpp"

#include <gtest/gtest.h>

namespace emberpath::properties {
namespace {

constexpr double atmosphere_pa = 101325.0;

Atoms of(const Mixture& mixture) {
    Atoms sum;
    for (std::size_t i = 0; i < species_count; ++i) {
        const Atoms one = atoms(static_cast<Species>(i));
        sum.carbon += mixture.moles[i] * one.carbon;
        sum.hydrogen += mixture.moles[i] * one.hydrogen;
        sum.oxygen += mixture.moles[i] * one.oxygen;
        sum.nitrogen += mixture.moles[i] * one.nitrogen;
    }
    return sum;
}

/// Methane in a fifth of excess air.
const Atoms charge{1.0, 4.0, 4.8, 18.1};

TEST(Equilibrium, KeepsEveryAtom) {
    for (const double kelvin : {1200.0, 1800.0, 2400.0, 3000.0}) {
        const Atoms found = of(equilibrium_products(charge, 0.1, kelvin, atmosphere_pa));
        EXPECT_NEAR(found.carbon, charge.carbon, 1e-9) << kelvin;
        EXPECT_NEAR(found.hydrogen, charge.hydrogen, 1e-9) << kelvin;
        EXPECT_NEAR(found.oxygen, charge.oxygen, 1e-9) << kelvin;
        EXPECT_NEAR(found.nitrogen, charge.nitrogen, 1e-9) << kelvin;
    }
}

TEST(Equilibrium, IsCompleteCombustionWhereNothingDissociates) {
    const Mixture cold = equilibrium_products(charge, 0.0, 1000.0, atmosphere_pa);
    EXPECT_NEAR(cold[Species::carbon_dioxide], 1.0, 1e-6);
    EXPECT_NEAR(cold[Species::water], 2.0, 1e-4);
    EXPECT_NEAR(cold[Species::oxygen], 0.4, 1e-3);
    EXPECT_LT(cold[Species::carbon_monoxide], 1e-6);
}

TEST(Equilibrium, FallsApartWithHeatAndHoldsTogetherUnderPressure) {
    const auto monoxide = [](double kelvin, double pascal) {
        return equilibrium_products(charge, 0.0, kelvin, pascal)[Species::carbon_monoxide];
    };
    EXPECT_GT(monoxide(2400.0, atmosphere_pa), 3.0 * monoxide(2100.0, atmosphere_pa));
    EXPECT_LT(monoxide(2400.0, 10.0 * atmosphere_pa), 0.5 * monoxide(2400.0, atmosphere_pa));
}

TEST(Equilibrium, MattersLittleForTheFlameOfTheHeater) {
    for (const Species fuel : {Species::methane, Species::propane}) {
        const EquilibriumFlame flame = equilibrium_flame(fuel, 1.5);
        EXPECT_NEAR(flame.temperature_k, complete_flame_temperature_k(fuel, 1.5), 10.0);
        EXPECT_LT(flame.products[Species::carbon_monoxide] / flame.products.total(), 1e-4);
    }
}

}  // namespace
}  // namespace emberpath::properties
