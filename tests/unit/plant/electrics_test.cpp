// Proves what the electrical side does to a heater: when its board lets go, what protection remembers, how damp
// and heat come and go, what the flame amplifier and the coil still do; and that a pack does as one heater.

#include "sim/plant/electrics.hpp"

#include <gtest/gtest.h>

#include "sim/math/pack.hpp"
#include "tests/unit/plant/open_loop.hpp"

namespace emberpath::plant {
namespace {

using Pack = math::Pack<8, math::Baseline>;

OpenLoop with(const ElectricalParameters<double>& electrical) {
    PlantParameters p = natural_gas_parameters();
    p.electrical = electrical;
    OpenLoop heater;
    set_parameters(heater.plant, 0, p);
    update_electrics(heater.plant, heater.at);
    return heater;
}
double supply_v(const OpenLoop& heater) {
    return sense(heater.plant, heater.at).supply_v;
}
void switched(OpenLoop& heater) {
    update_electrics(heater.plant, heater.at);
}

TEST(Electrics, SoundHouseChangesNothingBitForBit) {
    const OpenLoop sound = with({});
    EXPECT_NEAR(supply_v(sound), 230.0, 1.0);
    EXPECT_EQ(sound.plant.electrics.flame_signal, 1.0);
    EXPECT_EQ(sound.plant.electrics.spark_arrives, 1.0);
    EXPECT_EQ(sound.plant.electrics.valve_pulls, 1.0);
}

TEST(Electrics, BoardLetsGoWhileAWeakLineSagsUnderAPump) {
    OpenLoop weak = with({.street_active_ohm = 3.0, .street_neutral_ohm = 3.0, .pump_s = 0.11});
    EXPECT_GT(supply_v(weak), signals::board_drops_out_v);
    weak.at.electrical.pump_running = 1.0;
    switched(weak);
    EXPECT_LT(supply_v(weak), signals::board_drops_out_v);
    weak.commands = firing(3, 500.0, 0.5);
    weak.run(1.0);
    EXPECT_EQ(weak.plant.commands.main_solenoid, 0.0);
    weak.at.electrical.pump_running = 0.0;
    switched(weak);
    weak.run(1.0);
    EXPECT_EQ(weak.plant.commands.main_solenoid, 1.0);
}

TEST(Electrics, SafetySwitchStaysOpenUntilSomebodyClosesIt) {
    OpenLoop wet = with({.moisture_s = 2.0e-4});
    EXPECT_LT(supply_v(wet), 1.0);
    PlantParameters dry = wet.plant.parameters;
    dry.electrical.moisture_s = 0.0;
    set_parameters(wet.plant, 0, dry);
    switched(wet);
    EXPECT_LT(supply_v(wet), 1.0);
    wet.at.electrical.safety_switch_closings = 1.0;
    switched(wet);
    EXPECT_NEAR(supply_v(wet), 230.0, 1.0);
}

TEST(Electrics, MoistureDriesSoThatTheSwitchHoldsAgain) {
    OpenLoop wet = with({.moisture_s = 1.3e-4});
    wet.at.electrical.safety_switch_closings = 1.0;
    switched(wet);
    EXPECT_LT(supply_v(wet), 1.0);  // still wet: trips at once
    const double before = wet.plant.electrics.lane[0].latches.wetness;
    for (int i = 0; i < 36000 * 3; ++i) update_electrics(wet.plant, wet.at);  // three hours, cold
    EXPECT_LT(wet.plant.electrics.lane[0].latches.wetness, 0.75 * before);
    wet.at.electrical.safety_switch_closings = 2.0;
    switched(wet);
    EXPECT_NEAR(supply_v(wet), 230.0, 1.0);
    EXPECT_GT(observe_one(wet.plant, wet.at).electrical.leakage_a, 0.015);
}

TEST(Electrics, RainKeepsMoistureWet) {
    EXPECT_GT(dried(0.5, 20.0, 1.0), 0.5);
    EXPECT_LT(dried(0.5, 20.0, 0.5), 0.5);
    EXPECT_LT(dried(0.5, 30.0, 0.5), dried(0.5, 0.0, 0.5));
}

TEST(Electrics, ChafedLeadBlowsTheFuseOnlyHotAndDriven) {
    OpenLoop chafed = with({.valve_lead_short_s = 5.0, .valve_lead_touches_above_k = 310.0});
    chafed.commands = firing(3, 500.0, 0.5);
    chafed.run(1.0);
    switched(chafed);
    EXPECT_NEAR(supply_v(chafed), 230.0, 1.0);
    chafed.plant.state[casing_air] = 320.0;
    switched(chafed);
    EXPECT_EQ(supply_v(chafed), 0.0);
    chafed.plant.state[casing_air] = 290.0;
    chafed.at.electrical.fuses_fitted = 1.0;
    switched(chafed);
    EXPECT_NEAR(supply_v(chafed), 230.0, 1.0);
}

TEST(Electrics, OpenCoilKeepsTheValveShutThoughItIsDriven) {
    OpenLoop open = with({.valve_coil_ohm = 1.0e9});
    open.commands = firing(3, 500.0, 0.5);
    open.run(1.0);
    EXPECT_EQ(open.plant.commands.main_solenoid, 0.0);
    EXPECT_NEAR(observe_one(open.plant, open.at).electrical.valve_drive_v, 24.0, 1.0);
    EXPECT_GT(observe_one(open.plant, open.at).electrical.valve_coil_ohm, 1.0e8);
}

TEST(Electrics, FlameIsUnseenWithoutEarthOrWithSwappedConductors) {
    EXPECT_LT(with({.circuit_earth_ohm = 1.0e9}).plant.electrics.flame_signal, 0.01);
    EXPECT_LT(with({.swapped = 1.0}).plant.electrics.flame_signal, 0.01);
    EXPECT_EQ(with({.circuit_earth_ohm = 200.0}).plant.electrics.flame_signal, 1.0);
    EXPECT_LT(with({.flame_lead_ohm = 1.0e9}).plant.electrics.flame_signal, 0.01);
}

TEST(Electrics, CrackedLeadSendsTheSparkToTheFrameWhenDamp) {
    OpenLoop cracked = with({.igniter_lead_crack = 0.4});
    EXPECT_EQ(cracked.plant.electrics.spark_arrives, 1.0);
    cracked.at.electrical.damp = 1.0;
    switched(cracked);
    EXPECT_EQ(cracked.plant.electrics.spark_arrives, 0.0);
}

TEST(Electrics, OfAPackAreThoseOfEachHeaterAlone) {
    const ElectricalParameters<double> kinds[8] = {
        {},
        {.swapped = 1.0},
        {.moisture_s = 1.3e-4},
        {.circuit_earth_ohm = 1.0e9},
        {.valve_lead_short_s = 5.0, .valve_lead_touches_above_k = 280.0},
        {.street_neutral_ohm = 1.0e6},
        {.street_active_ohm = 5.0, .pump_s = 0.11},
        {}};
    Plant<Pack> pack;
    Surroundings at;
    for (std::size_t i = 0; i < 8; ++i) {
        PlantParameters p = natural_gas_parameters();
        p.electrical = kinds[i];
        set_parameters(pack, i, p);
    }
    settle_cold(pack, at);
    signals::ActuatorCommands<Pack> c;
    c.main_solenoid = Pack(1.0);
    for (int i = 0; i < 100; ++i) {
        at.electrical.pump_running = i > 50 ? 1.0 : 0.0;
        update_electrics(pack, at);
        advance(pack, at, c);
    }
    for (std::size_t lane = 0; lane < 8; ++lane) {
        PlantParameters p = natural_gas_parameters();
        p.electrical = kinds[lane];
        OpenLoop alone;
        set_parameters(alone.plant, 0, p);
        alone.commands.main_solenoid = 1.0;
        for (int i = 0; i < 100; ++i) {
            alone.at.electrical.pump_running = i > 50 ? 1.0 : 0.0;
            update_electrics(alone.plant, alone.at);
            advance(alone.plant, alone.at, alone.commands);
        }
        EXPECT_EQ(state_hash(alone.plant, 0), state_hash(pack, lane)) << lane;
        EXPECT_EQ(supply_v(alone), math::lane(sense(pack, at).supply_v, lane)) << lane;
        EXPECT_EQ(alone.plant.electrics.flame_signal,
                  math::lane(pack.electrics.flame_signal, lane));
    }
}

}  // namespace
}  // namespace emberpath::plant
