// Proves what a heater that proves its air by a tube does when water stands in it, and what two heaters on one hot
// pipe give with their link whole and open.

#include <gtest/gtest.h>

#include "tests/laws/faulty_house.hpp"

namespace emberpath::laws {
namespace {

using controller::Event;
using faults::Cause;
using faults::Needs;

const Premises tube{false, Needs::air_tube}, pair{false, Needs::companion};

TEST(AirByTube, SoundRunsAsWithTheFansCurrent) {
    FaultyHouse by_tube(Cause::no_fault, 0.0, tube), by_current(Cause::no_fault, 0.0);
    for (FaultyHouse* house : {&by_tube, &by_current}) {
        house->open_taps(10.0);
        house->run(120.0);
        EXPECT_EQ(house->look().readout.phase, controller::Phase::run);
    }
    EXPECT_NEAR(by_tube.look().plant.excess_air_ratio, by_current.look().plant.excess_air_ratio,
                0.08);
}

TEST(AirByTube, SeesABlockedFlueAsTheCurrentDoes) {
    FaultyHouse house(Cause::flue_blocked, 1.0, tube);
    house.open_taps(16.0);
    house.run(60.0);
    EXPECT_TRUE(house.first_event_s());
}

TEST(AirByTube, WaterInTheTubeMakesTheFanHurryAndAtLowFireLocksOut) {
    FaultyHouse sound(Cause::no_fault, 0.0, tube), little(Cause::air_tube_water, 0.4, tube);
    for (FaultyHouse* house : {&sound, &little}) {
        house->open_taps(16.0);
        house->run(120.0);
    }
    EXPECT_GT(little.look().plant.fan_rev_per_s, 1.02 * sound.look().plant.fan_rev_per_s);
    EXPECT_GT(little.look().plant.o2_share, sound.look().plant.o2_share);
    EXPECT_FALSE(little.first_event_s());
    little.open_taps(3.5);
    little.run(120.0);
    EXPECT_EQ(little.latest_event(), Event::air_path_restricted);
}

TEST(PairedHeaters, ShareADrawThatOneAloneWouldThrottle) {
    FaultyHouse linked(Cause::no_fault, 0.0, pair), loose(Cause::companion_link_open, 1.0, pair);
    for (FaultyHouse* house : {&linked, &loose}) {
        house->open_taps(16.0);
        house->run(180.0);
    }
    const plant::Observables both = linked.look().plant, alone = loose.look().plant;
    EXPECT_NEAR(both.companion_share, 0.5, 0.01);
    EXPECT_NEAR(both.tap_k[shower], 50.0 + celsius, 1.5);
    EXPECT_EQ(alone.companion_share, 0.0);
    EXPECT_NEAR(alone.tap_k[shower], 50.0 + celsius, 1.5);
    EXPECT_LT(alone.tap_m3_per_s[shower], 0.85 * both.tap_m3_per_s[shower]);
    EXPECT_LT(loose.look().readout.water_valve, 0.9) << "the first heater throttles";
    EXPECT_GT(both.companion_outlet_k, alone.companion_outlet_k + 20.0);
}

TEST(PairedHeaters, DrawTheirGasThroughOnePipe) {
    FaultyHouse linked(Cause::no_fault, 0.0, pair), loose(Cause::companion_link_open, 1.0, pair);
    for (FaultyHouse* house : {&linked, &loose}) {
        house->open_taps(16.0);
        house->run(180.0);
    }
    const auto& p = linked.look().parameters;
    const double water_w = linked.look().plant.tap_m3_per_s[shower] * 4.144e6 * 36.0;
    const double pipe_loss =
        linked.look().plant.regulator_outlet_pa - linked.look().plant.before_gas_isolator_pa;
    const double gas_w = std::sqrt(pipe_loss / p.gas_pipe_resistance) * p.gross_j_per_m3;
    EXPECT_NEAR(water_w / gas_w, 0.84, 0.05) << "heat of both, against gas of both";
    EXPECT_LT(linked.look().plant.regulator_outlet_pa, loose.look().plant.regulator_outlet_pa);
}

TEST(PairedHeaters, OneAloneIsEnoughForASmallDraw) {
    FaultyHouse linked(Cause::no_fault, 0.0, pair);
    linked.open_taps(3.5);
    linked.run(120.0);
    EXPECT_EQ(linked.look().plant.companion_share, 0.0);
}

TEST(HighSite, SetForItsHeightBurnsAsCleanlyAsAtTheSeaAndWithLess) {
    House sea, high;
    high.heater.plant.parameters = plant::with_altitude(high.heater.plant.parameters, 1800.0);
    controller::set_altitude(high.heater.settings, 1800.0);
    for (House* house : {&sea, &high}) {
        house->open_taps(16.0);
        house->run(240.0);
    }
    const auto low = sea.look().plant, up = high.look().plant;
    EXPECT_NEAR(up.excess_air_ratio, low.excess_air_ratio, 0.06);
    const double root = std::sqrt(high.heater.plant.parameters.air_density_share);
    EXPECT_NEAR(up.heat_input_w / low.heat_input_w, root, 0.02);
}

/// Its current tells it of less air than at the sea, though the volume is right: it hurries to the limit of its trim.
TEST(HighSite, SetForTheSeaHurriesTheFanAndAtLastLocksOut) {
    House right, wrong;
    for (House* house : {&right, &wrong})
        house->heater.plant.parameters =
            plant::with_altitude(house->heater.plant.parameters, 1800.0);
    controller::set_altitude(right.heater.settings, 1800.0);
    for (House* house : {&right, &wrong}) {
        house->open_taps(16.0);
        house->run(240.0);
    }
    EXPECT_NEAR(wrong.look().readout.air_trim, 1.2, 0.02);
    EXPECT_NEAR(right.look().readout.air_trim, 1.0, 0.02);
    EXPECT_GT(wrong.look().plant.o2_share, right.look().plant.o2_share + 0.01);
    House higher;
    higher.heater.plant.parameters = plant::with_altitude(higher.heater.plant.parameters, 2400.0);
    higher.open_taps(16.0);
    higher.run(120.0);
    EXPECT_EQ(higher.look().readout.event, Event::air_path_restricted);
}

}  // namespace
}  // namespace emberpath::laws
