// Proves what a heater that proves its air by a tube does when water stands in it, and what two heaters on one hot
// pipe give with their link whole and open.

#include <gtest/gtest.h>

#include "sim/plant/water_network.hpp"
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

/// Gas of the companion [m3/s]: what the pipe carries beyond this heater's.
double companion_gas_m3_per_s(const FaultyHouse& house) {
    const worksite::HeaterView seen = house.look();
    const plant::Observables& o = seen.plant;
    const double loss_pa = o.regulator_outlet_pa - o.before_gas_isolator_pa;
    return std::sqrt(loss_pa / seen.parameters.gas_pipe_resistance) - o.gas_m3_per_s;
}

TEST(PairedHeaters, OnOneCylinderAreBothFed) {
    FaultyHouse linked(Cause::no_fault, 0.0, Premises{true, Needs::companion});
    linked.open_taps(16.0);
    linked.run(600.0);
    const worksite::HeaterView seen = linked.look();
    EXPECT_FALSE(linked.first_event_s());
    EXPECT_NEAR(seen.plant.companion_share, 0.5, 0.01);
    EXPECT_NEAR(seen.plant.tap_k[shower], 50.0 + celsius, 1.5);
    EXPECT_GT(seen.plant.gas_inlet_pa, 2400.0) << "of 3 kPa without flow";
}

TEST(PairedHeaters, HeatToTheValueThatIsSet) {
    for (const double set_c : {40.0, 45.0, 55.0}) {
        House house = furnished(pair, set_c);
        draw(house.inputs, house.heater.plant.parameters, pair, 22.0);
        house.run(180.0);
        const plant::Observables seen = house.look().plant;
        ASSERT_NEAR(seen.companion_share, 0.5, 0.01) << set_c;
        EXPECT_NEAR(seen.companion_outlet_k, set_c + celsius, 0.1);
        EXPECT_NEAR(seen.tap_k[shower], set_c + celsius, 1.5);
    }
}

TEST(PairedHeaters, BothCoolWhereTheirGasIsShort) {
    FaultyHouse house(Cause::gas_pipe_restriction, 1.0, pair);
    house.open_taps(16.0);
    house.run(180.0);
    const plant::Observables seen = house.look().plant;
    const double lost_pa = house.look().parameters.gas_no_load_pa - seen.regulator_outlet_pa;
    EXPECT_GT(lost_pa, 0.0);
    EXPECT_LT(seen.companion_outlet_k, 47.0 + celsius);
    EXPECT_LT(seen.outlet_water_k, 47.0 + celsius);
    EXPECT_NEAR(companion_gas_m3_per_s(house) / seen.gas_m3_per_s, 1.0, 0.15)
        << "two alike burners at one pressure";
}

TEST(PairedHeaters, TheCompanionDoesNotHearThisHeatersDraggingTurbine) {
    FaultyHouse sound(Cause::no_fault, 0.0, pair), drags(Cause::flow_sensor_dragging, 0.15, pair);
    for (FaultyHouse* house : {&sound, &drags}) {
        house->open_taps(19.0);
        house->run(180.0);
        const plant::Observables seen = house->look().plant;
        ASSERT_NEAR(seen.companion_share, 0.5, 0.01);
        const double heat_w = seen.hot_water_m3_per_s * 4.15e6 * (50.0 - 14.0) / 0.84;
        EXPECT_NEAR(companion_gas_m3_per_s(*house) * house->look().parameters.gross_j_per_m3,
                    heat_w, 0.02 * heat_w);
    }
}

TEST(PairedHeaters, LoseThePressureOfTheirCommonWaterPipeTogether) {
    plant::Surroundings at;
    at.hot_tap_conductance = 2.0e-6;
    plant::State<double> x{};
    x[plant::water_valve] = 1.0;
    for (std::size_t i = plant::pipe_0; i < plant::pipe_0 + plant::cell_count; ++i) x[i] = 323.15;
    const plant::PlantParameters p = plant::with_companion(plant::natural_gas_parameters(), 41.5e3);
    const plant::WaterFlows<double> alone = plant::water_flows(p, x, at);
    x[plant::companion_share] = 0.5;
    const plant::WaterFlows<double> half = plant::water_flows(p, x, at);
    // The street's pipe carries both: what stands before the isolating valves says how much.
    const double q = half.heater_m3_per_s;
    const double street_pa = half.inlet_pa + p.isolating_valve_resistance * q * q;
    EXPECT_NEAR(at.mains_water_pa - street_pa, p.water_supply_resistance * 4.0 * q * q,
                1e-6 * street_pa);
    EXPECT_LT(2.0 * q, 2.0 * alone.heater_m3_per_s) << "two heaters do not double the street";
    EXPECT_GT(2.0 * q, 1.05 * alone.heater_m3_per_s);
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
