// Proves the electrical network: currents balance at every node, measuring is reciprocal, protection opens above
// its rating and not below, and each thing that can go wrong in a house raises the terminals it should.

#include "sim/plant/electrical_network.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "sim/plant/electrical_readings.hpp"
#include "sim/plant/safety_switch.hpp"

namespace emberpath::plant {
namespace {

using T = Terminal;

Wiring sound() {
    return {};
}
Wiring earth_missing() {
    Wiring w;
    w.parameters.circuit_earth_ohm = 1.0e9;
    return w;
}
Wiring swapped() {
    Wiring w;
    w.parameters.swapped = 1.0;
    return w;
}
Wiring neutral_lost() {
    Wiring w;
    w.parameters.street_neutral_ohm = 1.0e6;
    return w;
}
Wiring backed_up() {
    Wiring w;
    w.parameters.second_source = 1.0;
    return w;
}

double volts(const Wiring& w, T a, T b) {
    return volts_between(w, a, b, multimeter_input_ohm);
}

struct Named {
    std::string name;
    Wiring wiring;
};
std::vector<Named> all_wirings() {
    Wiring unplugged, driven, dark, open_pipe = neutral_lost(), wet, shorted;
    unplugged.situation.plugged = 0.0;
    driven.drives = {1.0, 1.0, 1.0};
    dark.situation.main_switch = 0.0;
    open_pipe.situation.water_pipe_open = 1.0;
    wet.parameters.moisture_s = 1.0e-3;
    shorted.parameters.valve_lead_short_s = 10.0;
    shorted.latches.lead_touches = 1.0;
    shorted.drives.valve = 1.0;
    return {{"Sound", sound()},        {"EarthMissing", earth_missing()},
            {"Swapped", swapped()},    {"NeutralLost", neutral_lost()},
            {"BackedUp", backed_up()}, {"Unplugged", unplugged},
            {"Driven", driven},        {"Dark", dark},
            {"OpenPipe", open_pipe},   {"Wet", wet},
            {"Shorted", shorted}};
}

TEST(ElectricalNetwork, CurrentsBalanceAtEveryNode) {
    for (const Named& one : all_wirings())
        EXPECT_LT(solve(one.wiring).worst_imbalance_a, 1.0e-6) << one.name;
}

TEST(ElectricalNetwork, ResistanceIsTheSameMeasuredEitherWayRound) {
    for (const Named& one : all_wirings())
        for (std::size_t i = 0; i < reachable_terminal_count; ++i)
            for (std::size_t j = i + 1; j < reachable_terminal_count; ++j) {
                const auto a = static_cast<T>(i), b = static_cast<T>(j);
                const double there = ohms_between(one.wiring, a, b);
                const double back = ohms_between(one.wiring, b, a);
                EXPECT_NEAR(there, back, 1.0e-3 * there + 1.0e-9) << one.name << i << " " << j;
            }
}

/// A current sent in at one pair raises at another pair what it would raise the other way round.
TEST(ElectricalNetwork, IsReciprocal) {
    const Pair pairs[] = {{T::casing, T::true_earth},
                          {T::water_pipe, T::neutral_bar},
                          {T::heater_active, T::heater_neutral},
                          {T::socket_earth, T::water_main},
                          {T::valve_lead, T::low_voltage_rail},
                          {T::incoming_active, T::gas_pipe}};
    for (const Named& one : all_wirings())
        for (const Pair& in : pairs)
            for (const Pair& out : pairs) {
                const double there = transfer_ohm(one.wiring, in, out);
                const double back = transfer_ohm(one.wiring, out, in);
                EXPECT_NEAR(there, back, 1.0e-6 * std::abs(there) + 1.0e-9) << one.name;
            }
    const Pair earth = {T::earth_bar, T::true_earth}, pipe = {T::water_pipe, T::true_earth};
    EXPECT_GT(transfer_ohm(sound(), earth, pipe), 0.1);  // not all of them are nothing
}

TEST(ElectricalNetwork, GivesTheSameBitsEachTime) {
    for (const Named& one : all_wirings()) {
        const auto first = solve(one.wiring), second = solve(one.wiring);
        EXPECT_EQ(first.ac_v, second.ac_v) << one.name;
        EXPECT_EQ(first.dc_v, second.dc_v) << one.name;
    }
}

TEST(ElectricalNetwork, SoundHouseHas230VoltsAtTheHeaterAndItsNeutralNearEarth) {
    EXPECT_NEAR(volts(sound(), T::heater_active, T::heater_neutral), 230.0, 1.0);
    EXPECT_NEAR(volts(sound(), T::heater_active, T::heater_earth), 230.0, 2.0);
    EXPECT_LT(volts(sound(), T::heater_neutral, T::heater_earth), 2.0);
    EXPECT_LT(volts(sound(), T::water_pipe, T::true_earth), 2.0);
    EXPECT_NEAR(volts(sound(), T::low_voltage_rail, T::low_voltage_common), 24.0, 0.5);
}

TEST(ElectricalNetwork, EachSocketContactAnswersAsWiredAndSwitched) {
    EXPECT_NEAR(volts(sound(), T::socket_active, T::socket_neutral), 230.0, 1.0);
    EXPECT_LT(volts(sound(), T::socket_neutral, T::socket_earth), 2.0);
    Wiring off;
    off.situation.socket_switch = 0.0;
    EXPECT_LT(volts(off, T::socket_active, T::socket_neutral), 0.1);
    EXPECT_LT(volts(off, T::heater_neutral, T::true_earth), 2.0);
    Wiring out;
    out.situation.plugged = 0.0;
    EXPECT_NEAR(volts(out, T::socket_active, T::socket_earth), 230.0, 2.0);
    EXPECT_LT(volts(out, T::heater_active, T::heater_neutral), 0.1);
    EXPECT_LT(volts(out, T::heater_active, T::true_earth), 2.0);  // the earth bar's own
}

TEST(ElectricalNetwork, SwappedConductorsLeaveTheHeaterLiveBehindItsSwitch) {
    EXPECT_NEAR(volts(swapped(), T::heater_active, T::heater_neutral), 230.0, 1.0);
    EXPECT_LT(volts(swapped(), T::heater_active, T::heater_earth), 3.0);
    EXPECT_NEAR(volts(swapped(), T::heater_neutral, T::heater_earth), 230.0, 3.0);
    Wiring off = swapped();
    off.situation.socket_switch = 0.0;
    EXPECT_LT(volts(off, T::heater_active, T::heater_neutral), 1.0);
    EXPECT_NEAR(volts(off, T::heater_neutral, T::true_earth), 231.0, 3.0);
    EXPECT_GT(volts(off, T::heater_active, T::true_earth), 200.0);  // through the board's input
    off.situation.plugged = 0.0;
    EXPECT_LT(volts(off, T::heater_neutral, T::true_earth), 2.0);
}

TEST(ElectricalNetwork, LostNeutralRaisesThePipesWithTheLoadOfTheHouse) {
    const double raised = volts(neutral_lost(), T::water_pipe, T::true_earth);
    // 30 ohm stake beside 8 ohm main carry what 32 ohm of household lets through: I = U / (R + Re).
    const double earth = 1.0 / (1.0 / 30.0 + 1.0 / 8.05);
    const double house = 1.0 / (1.0 / 32.0 + 1.0 / 590.0);
    EXPECT_NEAR(raised, 233.0 * earth / (house + earth + 2.0 + 0.2), 1.0);
    EXPECT_GT(raised, 30.0);
    EXPECT_LT(volts(neutral_lost(), T::heater_active, T::heater_neutral), 200.0);
    Wiring light = neutral_lost();
    light.parameters.household_ohm = 500.0;
    EXPECT_LT(volts(light, T::water_pipe, T::true_earth), raised);
}

TEST(ElectricalNetwork, OpeningThePipeOfALostNeutralOpensAVoltageThatABridgeTakesAway) {
    Wiring open = neutral_lost();
    open.situation.water_pipe_open = 1.0;
    EXPECT_GT(volts(open, T::water_pipe, T::water_main), 80.0);
    EXPECT_GT(clamp_a(neutral_lost(), Conductor::water_service), 3.0);
    open.situation.bridge_fitted = 1.0;
    EXPECT_LT(volts(open, T::water_pipe, T::water_main), 1.0);
}

TEST(ElectricalNetwork, BatteryFeedsTheCircuitWhenTheMainSwitchIsOff) {
    Wiring off = backed_up();
    off.situation.main_switch = 0.0;
    EXPECT_NEAR(volts(off, T::heater_active, T::heater_neutral), 230.0, 2.0);
    EXPECT_LT(volts(off, T::incoming_active, T::neutral_bar), 240.0);
    off.situation.second_source_switch = 0.0;
    EXPECT_LT(volts(off, T::heater_active, T::heater_neutral), 0.1);
    Wiring plain;
    plain.situation.main_switch = 0.0;
    EXPECT_LT(volts(plain, T::heater_active, T::heater_neutral), 0.1);
}

TEST(ElectricalNetwork, MissingEarthLetsTheCasingFloatUntilATesterLoadsIt) {
    const double floating = volts(earth_missing(), T::casing, T::true_earth);
    EXPECT_GT(floating, 90.0);
    EXPECT_LT(volts_between(earth_missing(), T::casing, T::true_earth, tester_input_ohm),
              0.66 * floating);
    EXPECT_LT(volts(sound(), T::casing, T::true_earth), 2.0);
    EXPECT_GT(ohms_between(earth_missing(), T::casing, T::earth_bar), 1.0e5);
    EXPECT_LT(ohms_between(sound(), T::casing, T::earth_bar), 1.0);
}

TEST(SafetySwitch, TripsAboveItsRatingAndNotBelowHalfOfIt) {
    for (const double leak_a : {0.001, 0.005, 0.010, 0.014}) {
        Wiring w;
        w.parameters.moisture_s = leak_a / 230.0;
        EXPECT_EQ(settle_protection(w).latches.safety_switch_tripped, 0.0) << leak_a;
    }
    for (const double leak_a : {0.031, 0.06, 0.3}) {
        Wiring w;
        w.parameters.moisture_s = leak_a / 230.0;
        const Settled settled = settle_protection(w);
        EXPECT_EQ(settled.latches.safety_switch_tripped, 1.0) << leak_a;
        EXPECT_LT(std::abs(settled.solution.ac_between(T::heater_active, T::heater_neutral)), 0.1);
    }
}

TEST(SafetySwitch, TakesTheLessTimeTheFurtherTheCurrentIsAboveItsOwn) {
    constexpr double trips_a = 0.024;
    EXPECT_TRUE(std::isinf(safety_switch_break_s(0.0, trips_a)));
    EXPECT_TRUE(std::isinf(safety_switch_break_s(trips_a, trips_a)));
    double longer_s = 0.3;  // the most that is allowed at the rated current
    for (const double residual_a : {0.030, 0.060, 0.150, 0.5}) {
        const double takes_s = safety_switch_break_s(residual_a, trips_a);
        EXPECT_LT(takes_s, longer_s) << residual_a;
        longer_s = takes_s;
    }
    EXPECT_GT(longer_s, 0.010);  // contacts take half a period however much flows
}

TEST(SafetySwitch, DoesNotMindLoadsOrAShortBetweenTheLines) {
    Wiring loaded;
    loaded.parameters.board_ohm = 20.0;
    EXPECT_EQ(settle_protection(loaded).latches, Latches{});
    Wiring shorted;
    shorted.parameters.board_ohm = 0.5;
    EXPECT_EQ(settle_protection(shorted).latches.safety_switch_tripped, 0.0);
    EXPECT_EQ(settle_protection(shorted).latches.breaker_tripped, 1.0);
}

TEST(SafetySwitch, CutsOffAHandOnALiveTerminal) {
    const AddedBranch hand{T::heater_active, T::true_earth, 1.0 / 1725.0};
    EXPECT_EQ(settle_protection(sound(), {&hand, 1}).latches.safety_switch_tripped, 1.0);
    const Touch touched = touch(sound(), T::heater_active, T::true_earth, 1725.0);
    EXPECT_GT(touched.current_a, 0.1);
    EXPECT_LT(touched.cut_after_s, 0.04);
    // From line to line it sees nothing: what goes out comes back.
    const AddedBranch across{T::heater_active, T::heater_neutral, 1.0 / 1725.0};
    EXPECT_EQ(settle_protection(sound(), {&across, 1}).latches.safety_switch_tripped, 0.0);
    EXPECT_TRUE(std::isinf(touch(sound(), across.from, across.to, 1725.0).cut_after_s));
    // Before it, nothing of it goes through the switch.
    EXPECT_TRUE(std::isinf(touch(sound(), T::incoming_active, T::earth_bar, 1725.0).cut_after_s));
}

TEST(BoardFuse, BlowsOnAShortedValveLeadAndHoldsWithEverythingDriven) {
    Wiring driven;
    driven.drives = {1.0, 1.0, 1.0};
    EXPECT_EQ(settle_protection(driven).latches, Latches{});
    driven.parameters.valve_lead_short_s = 5.0;
    driven.latches.lead_touches = 1.0;
    const Settled settled = settle_protection(driven);
    EXPECT_EQ(settled.latches.fuse_blown, 1.0);
    EXPECT_EQ(settled.latches.safety_switch_tripped, 0.0);
    EXPECT_LT(settled.solution.dc_between(T::low_voltage_rail, T::low_voltage_common), 0.1);
    EXPECT_NEAR(settled.solution.dc_between(T::low_voltage_supply, T::low_voltage_common), 24.0,
                0.1);
}

TEST(Clamp, ShowsLoadInOneConductorAndOnlyLeakageAroundBoth) {
    EXPECT_NEAR(clamp_a(sound(), Conductor::lead_active), 230.0 / 590.0, 0.01);
    EXPECT_NEAR(clamp_a(sound(), Conductor::lead_active_and_neutral), 230.0 * 3.14e-6, 2.0e-5);
    Wiring wet;
    wet.parameters.moisture_s = 0.012 / 230.0;
    EXPECT_NEAR(clamp_a(wet, Conductor::lead_active_and_neutral), 0.0127, 5.0e-4);
}

/// Two wall controllers on the link cable.
Wiring two_on_the_link() {
    Wiring w;
    w.situation.wall_fitted = {1.0, 1.0, 0.0};
    return w;
}

TEST(LinkCable, SoundLeavesNearlyTheSupplyAtBothEnds) {
    Wiring w = two_on_the_link();
    const ElectricalReadings r = take_readings(w);
    // Two runs of 603 ohm behind 33 ohm, from the rail as it stands.
    EXPECT_NEAR(r.link_unit_v, r.rail_v * 301.5 / 334.5, 1e-6);
    EXPECT_NEAR(r.link_wall_v[0], r.link_unit_v * 600.0 / 603.0, 1e-6);
    EXPECT_NEAR(r.link_wall_v[1], r.link_wall_v[0], 1e-9);
}

TEST(LinkCable, OpenLeavesTheSupplyAtTheHeaterAndNothingAtTheWall) {
    Wiring w = two_on_the_link();
    w.parameters.link_series_ohm[0] = 5.0e6;
    const ElectricalReadings r = take_readings(w);
    EXPECT_GT(r.link_unit_v, 21.0);
    EXPECT_LT(r.link_wall_v[0], 0.01);
    EXPECT_GT(r.link_wall_v[1], 21.0);
}

TEST(LinkCable, CorrodedJointPullsAllEndsDown) {
    Wiring w = two_on_the_link();
    w.parameters.link_leak_s[0] = 1.0 / 20.0;
    const ElectricalReadings r = take_readings(w);
    EXPECT_NEAR(r.link_unit_v, 9.5, 0.5);
    EXPECT_LT(r.link_wall_v[0], r.link_unit_v);
    EXPECT_LT(r.link_wall_v[1], 15.0);
}

TEST(LinkCable, DiesWithTheBoardsFuse) {
    Wiring w = two_on_the_link();
    w.latches.fuse_blown = 1.0;
    EXPECT_LT(std::abs(take_readings(w).link_unit_v), 0.01);
}

}  // namespace
}  // namespace emberpath::plant
