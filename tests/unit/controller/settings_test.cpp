// Proves what an installer can store and what follows from it: gas, altitude, highest set value, frost
// protection; and that wrong settings are possible.

#include "sim/controller/settings.hpp"

#include <gtest/gtest.h>

#include <set>

#include "tests/unit/controller/bench.hpp"

namespace emberpath::controller {
namespace {

TEST(InstallerSettings, AreStoredAndReadBack) {
    Settings s;
    const double values[setting_count] = {1.0, 1200.0, 323.15, 0.0, 2.0, 1.0};
    std::set<std::string_view> titles;
    for (std::size_t i = 0; i < setting_count; ++i) {
        const auto setting = static_cast<Setting>(i);
        EXPECT_NE(stored(s, setting), values[i]) << setting_title(setting);
        store(s, setting, values[i]);
        EXPECT_EQ(stored(s, setting), values[i]) << setting_title(setting);
        EXPECT_TRUE(titles.insert(setting_title(setting)).second);
    }
}

TEST(InstallerSettings, AreHeldToWhatTheHeaterTakes) {
    Settings s;
    store(s, Setting::altitude, 9000.0);
    EXPECT_EQ(s.altitude_m, 3000.0);
    store(s, Setting::wall_controllers, 7.0);
    EXPECT_EQ(s.wall_controllers, 3.0);
    store(s, Setting::highest_set_point, 500.0);
    EXPECT_EQ(s.maximum_set_k, 348.15);
    store(s, Setting::highest_set_point, 280.0);
    EXPECT_EQ(s.maximum_set_k, s.minimum_set_k);
}

TEST(Altitude, FollowsTheStandardAtmosphere) {
    Settings s;
    set_altitude(s, 0.0);
    EXPECT_EQ(s.air_density_share, 1.0);
    // ICAO standard atmosphere, from memory: 1.1117 and 0.9093 kg/m3 against 1.225 at sea level.
    set_altitude(s, 1000.0);
    EXPECT_NEAR(s.air_density_share, 1.1117 / 1.225, 3e-4);
    set_altitude(s, 3000.0);
    EXPECT_NEAR(s.air_density_share, 0.9093 / 1.225, 3e-4);
}

TEST(Altitude, LowersTheFullRateAndRaisesTheFanSoThatTheExcessAirStays) {
    Settings s;
    set_altitude(s, 1500.0);
    const auto high = ratings(s), low = ratings(Settings{});
    const double root = std::sqrt(s.air_density_share);
    EXPECT_NEAR(high.full_heat_input_w / low.full_heat_input_w, root, 1e-12);
    EXPECT_NEAR(high.fan_full_rev_per_s / low.fan_full_rev_per_s, 1.0 / root, 1e-12);
    // Air by mass over gas by mass: speed x density over root of density x manifold.
    const double air = high.fan_full_rev_per_s / low.fan_full_rev_per_s * s.air_density_share;
    EXPECT_NEAR(air / root, 1.0, 1e-12);
}

TEST(Altitude, StoredAtSeaLevelLeavesLessHeatForALargeDraw) {
    Bench sea, mountain;
    set_altitude(mountain.settings, 2400.0);
    for (Bench* bench : {&sea, &mountain}) {
        bench->flow_lpm = 16.0;
        bench->run(60.0);
    }
    EXPECT_LT(mountain.now().heat_demand_w, 0.92 * sea.now().heat_demand_w);
}

TEST(GasSetting, OfTheOtherGasCommandsItsManifoldPressure) {
    Bench bench;
    store(bench.settings, Setting::gas, 1.0);
    bench.flow_lpm = 16.0;
    bench.run(60.0);
    EXPECT_GT(bench.now().manifold_command_pa, 950.0) << "more than the plate allows";
    store(bench.settings, Setting::gas, 0.0);
    bench.run(60.0);
    EXPECT_LE(bench.now().manifold_command_pa, 950.0);
}

TEST(FrostProtection, HeatsFromThreeDegreesUntilSix) {
    Bench bench;
    bench.ambient_c = 4.0;
    bench.run(1.0);
    EXPECT_EQ(bench.commands.trace_heating, 0.0);
    bench.ambient_c = 2.5;
    bench.run(1.0);
    EXPECT_EQ(bench.commands.trace_heating, 1.0);
    bench.ambient_c = 5.0;
    bench.run(1.0);
    EXPECT_EQ(bench.commands.trace_heating, 1.0);
    bench.ambient_c = 6.5;
    bench.run(1.0);
    EXPECT_EQ(bench.commands.trace_heating, 0.0);
}

TEST(FrostProtection, IsLostWithoutAWordWhenTheAmbientSensorIsOpen) {
    Bench bench;
    bench.ambient_c = -5.0;
    bench.ambient_ohm = 5.0e6;
    bench.run(10.0);
    EXPECT_EQ(bench.commands.trace_heating, 0.0);
    EXPECT_EQ(bench.now().phase, Phase::standby);
    EXPECT_EQ(display_word(bench.now(), bench.panel), "REST");
    EXPECT_EQ(bench.now().history[0].event, Event::none);
}

TEST(FrostProtection, IsLostWhenItIsSwitchedOffAndWithoutMains) {
    Bench bench;
    bench.ambient_c = -5.0;
    bench.run(1.0);
    EXPECT_EQ(bench.commands.trace_heating, 1.0);
    store(bench.settings, Setting::frost_protection, 0.0);
    bench.run(1.0);
    EXPECT_EQ(bench.commands.trace_heating, 0.0);
    store(bench.settings, Setting::frost_protection, 1.0);
    bench.panel.powered = 0.0;
    bench.run(1.0);
    EXPECT_EQ(bench.commands.trace_heating, 0.0);
}

}  // namespace
}  // namespace emberpath::controller
