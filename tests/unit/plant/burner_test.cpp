// Proves the flame logic: what lights a bank, what keeps it, what puts it out, and what the probe carries.

#include "sim/plant/burner.hpp"

#include <gtest/gtest.h>

#include "tests/unit/plant/open_loop.hpp"

namespace emberpath::plant {
namespace {

using Banks = std::array<double, bank_count>;

const PlantParameters p = natural_gas_parameters();
constexpr Banks none{0.0, 0.0, 0.0}, first{1.0, 0.0, 0.0}, all{1.0, 1.0, 1.0};

GasFlows<double> gas(double manifold_pa, int open = 3) {
    GasFlows<double> g{};
    g.manifold_pa = manifold_pa;
    for (int b = 0; b < open; ++b) g.bank_m3_per_s[static_cast<std::size_t>(b)] = 1e-4;
    return g;
}

Banks after(const Banks& lit, double ratio, double spark_s, double manifold_pa = 360.0,
            int open = 3) {
    return next_lit(p, lit, gas(manifold_pa, open), {ratio, ratio, ratio}, spark_s);
}

TEST(Flame, LightsFourTenthsOfASecondAfterTheSparkBegins) {
    EXPECT_EQ(after(none, 1.5, 0.3, 360.0, 1), none);
    EXPECT_EQ(after(none, 1.5, 0.4, 360.0, 1), first);
}

TEST(Flame, NeedsGasPressureAndAMixtureThatBurns) {
    EXPECT_EQ(after(none, 1.5, 1.0, 30.0), none) << "pressure";
    EXPECT_EQ(after(none, 1.5, 1.0, 360.0, 0), none) << "closed banks";
    EXPECT_EQ(after(none, 0.45, 1.0), none) << "rich";
    EXPECT_EQ(after(none, 2.5, 1.0), none) << "lean";
    EXPECT_EQ(after(none, 1.75, 1.0)[0], 1.0);
}

/// Lit, the first bank draws 1.6 times the air that it found: its lift limit is 2.83 at this pressure.
TEST(Flame, IsNotLitWhereItWouldLiftAtOnce) {
    EXPECT_NEAR(air_ratio_once_lit(none, {1.0, 1.0, 1.0}, 0), 1.6, 1e-12);
    EXPECT_EQ(after(none, 1.8, 1.0), none);
}

TEST(Flame, LitOnTheAirThatItThenDrawsDoesNotGoOutAgain) {
    for (const int open : {1, 2, 3}) {
        for (double air = 1.0e-4; air < 20.0e-3; air += 1.0e-4) {
            const GasFlows<double> g = gas(360.0, open);
            Banks lit = next_lit(p, none, g, bank_air_ratio(p, none, air, g), 1.0);
            for (int tick = 0; tick < 4; ++tick) {
                const Banks before = lit;
                lit = next_lit(p, lit, g, bank_air_ratio(p, lit, air, g), 1.0);
                for (std::size_t b = 0; b < bank_count; ++b)
                    EXPECT_GE(lit[b], before[b]) << "bank " << b << ", air " << air;
            }
        }
    }
}

TEST(Flame, IsNotLitWithoutASpark) {
    EXPECT_EQ(after(none, 1.5, 0.0), none);
}

TEST(Flame, CrossLightsFromItsNeighbourInOrder) {
    EXPECT_EQ(after(first, 1.5, 0.0), all);
    EXPECT_EQ(after(first, 1.5, 0.0, 360.0, 2), (Banks{1.0, 1.0, 0.0}));
    EXPECT_EQ(after(none, 3.0, 1.0), none) << "no neighbour to light from";
}

TEST(Flame, LiftsOffSoonerTheHarderThePortsAreLoaded) {
    // Limit 3.2 - 0.6 sqrt(p / full): 2.6 at full pressure, 3.0 at a ninth of it.
    EXPECT_EQ(after(first, 2.65, 0.0, 950.0, 1), none);
    EXPECT_EQ(after(first, 2.55, 0.0, 950.0, 1), first);
    EXPECT_EQ(after(first, 2.95, 0.0, 950.0 / 9.0, 1), first);
    EXPECT_EQ(after(first, 3.05, 0.0, 950.0 / 9.0, 1), none);
}

TEST(Flame, SmothersWithoutAir) {
    EXPECT_EQ(after(all, 0.43, 0.0), all);
    EXPECT_EQ(after(all, 0.41, 0.0), none);
}

TEST(AirDivision, BurningBankDrawsTwiceItsShare) {
    GasFlows<double> g{};
    for (std::size_t b = 0; b < bank_count; ++b) g.bank_m3_per_s[b] = 1e-4 * bank_area_share[b];
    const Banks dark = bank_air_ratio(p, none, 0.01, g);
    EXPECT_NEAR(dark[0], dark[2], 1e-6 * dark[0]);
    const Banks one = bank_air_ratio(p, first, 0.01, g);
    EXPECT_NEAR(one[0], 2.0 * one[1], 1e-6 * one[0]);
    EXPECT_NEAR(one[0] * 1.25, 2.0 * dark[0], 1e-6 * dark[0]) << "lit quarter: 0.5 of 1.25 shares";
}

TEST(Ionisation, PeaksNearStoichiometricAndFallsWhenLean) {
    EXPECT_NEAR(steady_ionisation_a(p, 1.0, 1.05), 12e-6, 1e-18);
    EXPECT_NEAR(steady_ionisation_a(p, 1.0, 1.9), 2.4e-6, 0.2e-6);
    EXPECT_LT(steady_ionisation_a(p, 1.0, 2.4), 0.7e-6);
    EXPECT_EQ(steady_ionisation_a(p, 0.0, 1.2), 0.0);
    PlantParameters fouled = p;
    fouled.ionisation_gain = 0.05;
    EXPECT_NEAR(steady_ionisation_a(fouled, 1.0, 1.05), 0.6e-6, 1e-18);
}

TEST(Burner, LightsByHandAndShowsFlameOnTheProbe) {
    OpenLoop heater;
    heater.light();
    const Observables o = heater.look();
    EXPECT_NEAR(o.flame_lit, 0.25, 1e-12);
    EXPECT_GT(o.ionisation_a, 4e-6);
    EXPECT_GT(o.co2_share, 0.02);
    EXPECT_GT(o.outlet_water_k, heater.at.inlet_water_k + 1.0);
}

TEST(Burner, DeadIgniterLeavesGasToGatherAndIsNotHeard) {
    PlantParameters dead = p;
    dead.igniter_works = 0.0;
    OpenLoop heater(dead);
    heater.at.hot_tap_conductance = 5.0e-7;
    heater.commands = firing(0, 0.0, 0.27);
    heater.run(4.0);
    heater.commands = firing(1, 360.0, 0.27);
    heater.commands.spark = 1.0;
    heater.run(4.0);
    const Observables o = heater.look();
    EXPECT_EQ(o.flame_lit, 0.0);
    EXPECT_EQ(o.spark, 1.0);
    EXPECT_EQ(o.spark_heard, 0.0);
    EXPECT_GT(o.unburnt_gas_m3, 0.2e-3);
    EXPECT_NEAR(o.manifold_pa, 360.0, 1.0);
    // The purge carries it away.
    heater.commands = firing(0, 0.0, 0.36);
    heater.commands.main_solenoid = 0.0;
    heater.run(20.0);
    EXPECT_LT(heater.look().unburnt_gas_m3, 1e-5);
}

TEST(Burner, LateSparkIntoGatheredGasIsARoughLightUp) {
    OpenLoop heater;
    heater.at.hot_tap_conductance = 5.0e-7;
    heater.commands = firing(0, 0.0, 0.27);
    heater.run(4.0);
    heater.commands = firing(1, 360.0, 0.27);
    heater.run(4.0);
    const double gathered = heater.look().unburnt_gas_m3;
    heater.commands.spark = 1.0;
    heater.run(1.0);
    EXPECT_GT(heater.look().flame_lit, 0.0);
    EXPECT_NEAR(heater.look().rough_light_up_m3, gathered, 0.2 * gathered);
    OpenLoop prompt;
    prompt.light();
    EXPECT_LT(prompt.look().rough_light_up_m3, 0.5 * gathered);
}

TEST(Burner, GoesOutWhenTheGasIsolatorIsClosed) {
    OpenLoop heater;
    heater.light();
    heater.at.gas_isolator = 0.0;
    heater.run(1.0);
    EXPECT_EQ(heater.look().flame_lit, 0.0);
    EXPECT_EQ(heater.look().gas_inlet_pa, 0.0);
    EXPECT_EQ(heater.look().regulator_outlet_pa, heater.plant.parameters.gas_lock_up_pa);
}

}  // namespace
}  // namespace emberpath::plant
