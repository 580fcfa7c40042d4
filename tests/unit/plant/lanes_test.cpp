// Proves the lanes of a pack: own parameters each, the bits of the heater alone, and views of one lane.

#include <gtest/gtest.h>

#include "sim/math/pack.hpp"
#include "tests/unit/plant/open_loop.hpp"

namespace emberpath::plant {
namespace {

using Pack = math::Pack<8, math::Baseline>;

Plant<Pack> eight() {
    Plant<Pack> pack;
    for (std::size_t i = 0; i < 8; ++i) {
        PlantParameters p = natural_gas_parameters();
        p.gas_pipe_resistance *= 1.0 + static_cast<double>(i);
        p.outlet_sensor.gain = 1.0 + 0.01 * static_cast<double>(i);
        set_parameters(pack, i, p);
    }
    return pack;
}

TEST(Lanes, KeepTheirOwnParameters) {
    const Plant<Pack> pack = eight();
    for (std::size_t i = 0; i < 8; ++i) {
        const PlantParameters p = one_lane(pack, i).parameters;
        EXPECT_EQ(p.gas_pipe_resistance, 1e8 * (1.0 + static_cast<double>(i)));
        EXPECT_EQ(p.outlet_sensor.gain, 1.0 + 0.01 * static_cast<double>(i));
        EXPECT_EQ(p.full_manifold_pa, 950.0);
    }
}

TEST(Lanes, HaveTheBitsOfTheHeaterAloneUnderTheSameCommands) {
    Plant<Pack> pack = eight();
    const Surroundings at{.hot_tap_conductance = 5.0e-7};
    settle_cold(pack, at);
    signals::ActuatorCommands<Pack> c;
    c.fan_duty = Pack(0.5);
    c.main_solenoid = Pack(1.0);
    for (Pack& bank : c.bank_solenoid) bank = Pack(1.0);
    c.manifold_pressure_pa = Pack(500.0);
    c.spark = Pack(1.0);
    for (int i = 0; i < 200; ++i) advance(pack, at, c);
    for (std::size_t lane = 0; lane < 8; ++lane) {
        OpenLoop alone(one_lane(pack, lane).parameters);
        alone.at = at;
        alone.commands = firing(3, 500.0, 0.5);
        alone.commands.spark = 1.0;
        alone.run(20.0);
        EXPECT_EQ(state_hash(alone.plant, 0), state_hash(pack, lane)) << lane;
        EXPECT_EQ(alone.look().heat_input_w, observe(pack, lane, at).heat_input_w) << lane;
        EXPECT_GT(alone.look().flame_lit, 0.9);
    }
}

/// Lanes that leave work out by themselves beside lanes that need it: mixer, spill, cylinders, main valve shut.
Plant<Pack> unlike_neighbours() {
    Plant<Pack> pack;
    for (std::size_t i = 0; i < 8; ++i) {
        PlantParameters p = i < 5 ? natural_gas_parameters() : propane_parameters();
        if (i == 1) p.cross_flow_gain = 1.0e-7;
        if (i == 2) p.spill_into_room = 0.2;
        if (i == 4 || i == 5) p.intake_from_room = 1.0;
        if (i == 5) p.seam_leak_share = 0.1;
        if (i == 3) p = with_flue(p, FlueKind::open_flued);
        if (i == 4) p.main_valve_works = 0.0;
        if (i == 6) p = with_cylinder_pair(p);
        if (i == 7) p.strainer_resistance *= 1.0e6;
        set_parameters(pack, i, p);
    }
    return pack;
}

TEST(Lanes, KeepTheirBitsBesideNeighboursThatNeedMoreWork) {
    Plant<Pack> pack = unlike_neighbours();
    std::array<OpenLoop, 8> alone;
    Surroundings at;
    settle_cold(pack, at);
    for (std::size_t lane = 0; lane < 8; ++lane)
        alone[lane] = OpenLoop(one_lane(pack, lane).parameters);
    for (const double open : {5.0e-7, 0.0, 2.0e-7}) {
        at.hot_tap_conductance = open;
        signals::ActuatorCommands<Pack> c;
        c.fan_duty = Pack(0.5);
        c.main_solenoid = Pack(open > 0.0 ? 1.0 : 0.0);
        for (Pack& bank : c.bank_solenoid) bank = Pack(1.0);
        c.manifold_pressure_pa = Pack(500.0);
        c.spark = Pack(1.0);
        for (int i = 0; i < 100; ++i) advance(pack, at, c);
        for (std::size_t lane = 0; lane < 8; ++lane) {
            OpenLoop& one = alone[lane];
            one.at = at;
            one.commands = firing(3, 500.0, 0.5);
            one.commands.main_solenoid = math::lane(c.main_solenoid, lane);
            one.commands.spark = 1.0;
            one.run(10.0);
            EXPECT_EQ(state_hash(one.plant, 0), state_hash(pack, lane)) << lane << " at " << open;
        }
    }
}

TEST(Lanes, SensorsOfOneLaneAreThoseOfItsHeater) {
    Plant<Pack> pack = eight();
    const Surroundings at;
    settle_cold(pack, at);
    const signals::SensorSignals<Pack> all = sense(pack, at);
    for (std::size_t lane = 0; lane < 8; ++lane) {
        const auto alone = sense(one_lane(pack, lane), at);
        EXPECT_EQ(math::lane(all.outlet_ohm, lane), alone.outlet_ohm);
        EXPECT_EQ(math::lane(all.fan_current_a, lane), alone.fan_current_a);
    }
}

TEST(StateHash, TellsStatesApart) {
    OpenLoop a, b;
    EXPECT_EQ(state_hash(a.plant, 0), state_hash(b.plant, 0));
    b.plant.state[casing_air] += 1e-13;
    EXPECT_NE(state_hash(a.plant, 0), state_hash(b.plant, 0));
    b = a;
    b.plant.flame.lit[2] = 1.0;
    EXPECT_NE(state_hash(a.plant, 0), state_hash(b.plant, 0));
}

TEST(FlatParameters, ListsEveryMemberOnce) {
    PlantParameters p = natural_gas_parameters();
    EXPECT_EQ(flat(p)[0], p.isolating_valve_resistance);
    EXPECT_EQ(flat(p)[parameter_count - 1], p.limiter_bridged);
    flat(p)[parameter_count - 1] = 1.0;
    EXPECT_EQ(p.limiter_bridged, 1.0);
}

}  // namespace
}  // namespace emberpath::plant
