// Proves that causes are pure maps: sound parameters stay untouched, severity 0 and clearing give the same bits,
// each cause moves exactly the parameters it should, in the documented direction, more so at higher severity.

#include "sim/faults/effects.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <cstdint>
#include <iterator>
#include <ostream>
#include <vector>

namespace emberpath::faults {
namespace {

using plant::PlantParameters;

bool same_bits(const PlantParameters& a, const PlantParameters& b) {
    return std::equal(plant::flat(a), plant::flat(a) + plant::parameter_count, plant::flat(b),
                      [](double x, double y) {
                          return std::bit_cast<std::uint64_t>(x) == std::bit_cast<std::uint64_t>(y);
                      });
}

std::size_t changed(const PlantParameters& a, const PlantParameters& b) {
    std::size_t count = 0;
    for (std::size_t i = 0; i < plant::parameter_count; ++i)
        if (plant::flat(a)[i] != plant::flat(b)[i]) ++count;
    return count;
}

/// Causes that live in the controller's settings.
bool of_settings(Cause cause) {
    return cause == Cause::gas_setting_wrong || cause == Cause::priority_elsewhere ||
           cause == Cause::altitude_setting_wrong || cause == Cause::highest_setting_raised;
}

std::vector<PlantParameters> sound_houses() {
    return {plant::natural_gas_parameters(), plant::propane_parameters()};
}

TEST(WithFault, LeavesItsArgumentAloneAndGivesTheSameBitsTwice) {
    for (const PlantParameters& healthy : sound_houses())
        for (const CauseInfo& row : catalogue()) {
            const PlantParameters before = healthy;
            const Fault fault{row.cause, row.greatest_severity};
            const auto once = with_fault(healthy, fault, 0.0);
            const auto twice = with_fault(healthy, fault, 0.0);
            EXPECT_TRUE(same_bits(before, healthy)) << row.word;
            EXPECT_TRUE(same_bits(once, twice)) << row.word;
        }
}

TEST(WithFault, SeverityZeroAndTimeBeforeOnsetChangeNoBit) {
    for (const PlantParameters& healthy : sound_houses())
        for (const CauseInfo& row : catalogue()) {
            EXPECT_TRUE(same_bits(healthy, with_fault(healthy, {row.cause, 0.0}, 100.0)))
                << row.word;
            const Fault later{row.cause, row.greatest_severity, 500.0};
            EXPECT_TRUE(same_bits(healthy, with_fault(healthy, later, 499.9))) << row.word;
        }
}

/// An empty cylinder cannot be emptier, a turbine at rest cannot count wrongly.
bool leaves_nothing_to_move(Cause first, Cause second) {
    return (first == Cause::changeover_stuck && second == Cause::cylinder_low) ||
           (first == Cause::flow_sensor_dragging && second == Cause::flow_sensor_wrong);
}

TEST(WithFaults, TakingOneOfTwoAwayLeavesExactlyTheOther) {
    const PlantParameters healthy = plant::natural_gas_parameters();
    for (const CauseInfo& kept : catalogue())
        for (const CauseInfo& cleared : catalogue()) {
            if (kept.cause == cleared.cause) continue;
            if (leaves_nothing_to_move(kept.cause, cleared.cause)) continue;
            std::vector<Fault> faults{{kept.cause, kept.greatest_severity},
                                      {cleared.cause, cleared.greatest_severity}};
            const auto both = with_faults(healthy, faults, 0.0);
            faults.pop_back();
            const auto one = with_faults(healthy, faults, 0.0);
            EXPECT_TRUE(
                same_bits(one, with_fault(healthy, {kept.cause, kept.greatest_severity}, 0)));
            const bool leaves_plant =
                cleared.cause == Cause::no_fault || of_settings(cleared.cause);
            EXPECT_EQ(same_bits(one, both), leaves_plant) << kept.word << " and " << cleared.word;
        }
}

std::vector<std::size_t> touched_by(const PlantParameters& healthy, const CauseInfo& row) {
    const auto faulty = with_fault(healthy, {row.cause, row.greatest_severity}, 0.0);
    std::vector<std::size_t> touched;
    for (std::size_t i = 0; i < plant::parameter_count; ++i)
        if (plant::flat(healthy)[i] != plant::flat(faulty)[i]) touched.push_back(i);
    return touched;
}

/// Two causes of different parts can come in either order, and each does what it does alone.
TEST(WithFaults, OfDifferentPartsAddUpInEitherOrder) {
    const PlantParameters healthy = plant::propane_parameters();
    std::size_t pairs = 0;
    for (const CauseInfo& a : catalogue())
        for (const CauseInfo& b : catalogue()) {
            if (a.cause >= b.cause) continue;
            const auto of_a = touched_by(healthy, a), of_b = touched_by(healthy, b);
            std::vector<std::size_t> common;
            std::set_intersection(of_a.begin(), of_a.end(), of_b.begin(), of_b.end(),
                                  std::back_inserter(common));
            if (!common.empty()) continue;
            // These read what another part is: the pipe's size, the plate's pressure, the kind of gas.
            const bool reads = a.cause == Cause::propane_in_gas ||
                               b.cause == Cause::propane_in_gas ||
                               (a.cause == Cause::gas_pipe_restriction &&
                                b.cause == Cause::gas_isolator_part_shut);
            if (reads) continue;
            const Fault fa{a.cause, a.greatest_severity}, fb{b.cause, b.greatest_severity};
            const std::vector<Fault> ab{fa, fb}, ba{fb, fa};
            const auto both = with_faults(healthy, ab, 0.0);
            EXPECT_TRUE(same_bits(both, with_faults(healthy, ba, 0.0))) << a.word << " " << b.word;
            const auto alone = with_fault(healthy, fa, 0.0);
            for (const std::size_t i : of_a)
                EXPECT_EQ(plant::flat(both)[i], plant::flat(alone)[i]) << a.word << " " << b.word;
            ++pairs;
        }
    EXPECT_GT(pairs, 2000U);
}

TEST(WithFaults, NoneAtAllGivesBackTheHealthyBits) {
    for (const PlantParameters& healthy : sound_houses())
        EXPECT_TRUE(same_bits(healthy, with_faults(healthy, {}, 1.0e6)));
}

/// One parameter a cause moves, and which way.
struct Effect {
    const char* name;
    Cause cause;
    double severity;
    double (*value)(const PlantParameters& p);
    double sign;            // +1 up, -1 down
    std::size_t moves = 1;  // how many parameters the cause changes in all
};

std::ostream& operator<<(std::ostream& out, const Effect& effect) {
    return out << effect.name;
}

// clang-format off
const Effect effects[] = {
    {"BlockedFlueResistsMore", Cause::flue_blocked, 1.0, [](const PlantParameters& p) { return p.flue_resistance; }, +1},
    {"GustsPush", Cause::wind_gust, 1.0, [](const PlantParameters& p) { return p.gust_amplitude; }, +1},
    {"LowCylinderHoldsLess", Cause::cylinder_low, 0.9, [](const PlantParameters& p) { return p.cylinder_start_kg; }, -1},
    {"NarrowPipeResistsMore", Cause::gas_pipe_restriction, 1.0, [](const PlantParameters& p) { return p.gas_pipe_resistance; }, +1},
    {"RegulatorDroopsMore", Cause::regulator_droop, 1.0, [](const PlantParameters& p) { return p.regulator_droop; }, +1},
    {"OpenSensorHasMegohms", Cause::outlet_sensor_open, 1.0, [](const PlantParameters& p) { return p.outlet_sensor.series_ohm; }, +1},
    {"PositiveDriftReadsCold", Cause::outlet_sensor_drift, 0.5, [](const PlantParameters& p) { return p.outlet_sensor.gain; }, +1},
    {"NegativeDriftReadsHot", Cause::outlet_sensor_drift, -0.5, [](const PlantParameters& p) { return p.outlet_sensor.gain; }, -1},
    {"FouledProbePassesLess", Cause::electrode_fouled, 0.9, [](const PlantParameters& p) { return p.ionisation_gain; }, -1},
    {"DeadIgniterDoesNotWork", Cause::igniter_failed, 1.0, [](const PlantParameters& p) { return p.igniter_works; }, -1},
    {"SootInsulates", Cause::exchanger_sooted, 1.0, [](const PlantParameters& p) { return p.gas_side_ua_factor; }, -1, 3},
    {"SootResistsAir", Cause::exchanger_sooted, 1.0, [](const PlantParameters& p) { return p.air_exchanger_resistance; }, +1, 3},
    {"SootIsSoot", Cause::exchanger_sooted, 1.0, [](const PlantParameters& p) { return p.soot; }, +1, 3},
    {"MissingEarthIsOpen", Cause::earth_missing, 1.0, [](const PlantParameters& p) { return p.electrical.circuit_earth_ohm; }, +1},
    {"SwappedSupplyIsSwapped", Cause::supply_swapped, 1.0, [](const PlantParameters& p) { return p.electrical.swapped; }, +1},
    {"BrokenNeutralIsOpen", Cause::neutral_broken, 1.0, [](const PlantParameters& p) { return p.electrical.street_neutral_ohm; }, +1},
    {"WeakLineResists", Cause::supply_sags, 1.0, [](const PlantParameters& p) { return p.electrical.street_active_ohm; }, +1, 2},
    {"WeakLineFeedsAPump", Cause::supply_sags, 1.0, [](const PlantParameters& p) { return p.electrical.pump_s * p.electrical.street_active_ohm; }, +1, 2},
    {"MoistureConducts", Cause::moisture_in_heater, 1.0, [](const PlantParameters& p) { return p.electrical.moisture_s; }, +1},
    {"ChafedLeadTouchesEarlier", Cause::valve_lead_chafed, 1.0, [](const PlantParameters& p) { return p.electrical.valve_lead_short_s > 0.0 ? 400.0 - p.electrical.valve_lead_touches_above_k : 0.0; }, +1, 2},
    {"OpenCoilHasMegohms", Cause::valve_coil_open, 1.0, [](const PlantParameters& p) { return p.electrical.valve_coil_ohm; }, +1},
    {"CrackedLeadIsCracked", Cause::igniter_lead_cracked, 1.0, [](const PlantParameters& p) { return p.electrical.igniter_lead_crack; }, +1},
    {"BrokenFlameLeadIsOpen", Cause::flame_lead_broken, 1.0, [](const PlantParameters& p) { return p.electrical.flame_lead_ohm; }, +1},
    {"BlockedInjectorIsNarrow", Cause::injector_blocked, 1.0, [](const PlantParameters& p) { return p.injector_m2[0]; }, -1},
    {"StuckLowHoldsTheValve", Cause::gas_valve_stuck_low, 0.6, [](const PlantParameters& p) { return p.gas_valve_stuck; }, +1, 2},
    {"StuckHighHoldsMorePressure", Cause::gas_valve_stuck_high, 1.0, [](const PlantParameters& p) { return p.gas_valve_held_pa; }, +1, 2},
    {"PropaneIsRich", Cause::propane_in_gas, 0.5, [](const PlantParameters& p) { return p.gross_j_per_m3; }, +1, 6},
    {"PropaneIsHeavy", Cause::propane_in_gas, 0.5, [](const PlantParameters& p) { return p.gas_kg_per_m3; }, +1, 6},
    {"PropaneWantsAir", Cause::propane_in_gas, 0.5, [](const PlantParameters& p) { return p.stoichiometric_air; }, +1, 6},
    {"FeltedStrainerResistsMore", Cause::strainer_blocked, 1.0, [](const PlantParameters& p) { return p.strainer_resistance; }, +1},
    {"OpenWaterValveIsHeld", Cause::water_valve_stuck_open, 1.0, [](const PlantParameters& p) { return p.water_valve_stuck; }, +1},
    {"ShutWaterValveIsHeldShut", Cause::water_valve_stuck_shut, 0.8, [](const PlantParameters& p) { return p.water_valve_position; }, -1, 2},
    {"StuckBypassPassesWater", Cause::bypass_stuck, 0.8, [](const PlantParameters& p) { return p.bypass_position; }, +1, 2},
    {"DraggingTurbineReadsLow", Cause::flow_sensor_dragging, 0.5, [](const PlantParameters& p) { return p.flow_sensor_gain; }, -1},
    {"ScaleInsulates", Cause::exchanger_scaled, 0.6, [](const PlantParameters& p) { return p.scale_k_per_w; }, +1, 2},
    {"ScaleNarrows", Cause::exchanger_scaled, 0.6, [](const PlantParameters& p) { return p.exchanger_conductance; }, -1, 2},
    {"ShortOutletSensorIsBridged", Cause::outlet_sensor_short, 1.0, [](const PlantParameters& p) { return p.outlet_sensor.parallel_s; }, +1},
    {"OpenInletSensorHasMegohms", Cause::inlet_sensor_open, 1.0, [](const PlantParameters& p) { return p.inlet_sensor.series_ohm; }, +1},
    {"ShortInletSensorIsBridged", Cause::inlet_sensor_short, 1.0, [](const PlantParameters& p) { return p.inlet_sensor.parallel_s; }, +1},
    {"InletReadsCold", Cause::inlet_sensor_drift, 0.5, [](const PlantParameters& p) { return p.inlet_sensor.gain; }, +1},
    {"InletReadsHot", Cause::inlet_sensor_drift, -0.5, [](const PlantParameters& p) { return p.inlet_sensor.gain; }, -1},
    {"OpenExchangerSensorHasMegohms", Cause::exchanger_sensor_open, 1.0, [](const PlantParameters& p) { return p.exchanger_sensor.series_ohm; }, +1},
    {"ShortExchangerSensorIsBridged", Cause::exchanger_sensor_short, 1.0, [](const PlantParameters& p) { return p.exchanger_sensor.parallel_s; }, +1},
    {"ExchangerReadsCold", Cause::exchanger_sensor_drift, 0.5, [](const PlantParameters& p) { return p.exchanger_sensor.gain; }, +1},
    {"OpenAmbientSensorHasMegohms", Cause::ambient_sensor_open, 1.0, [](const PlantParameters& p) { return p.ambient_sensor.series_ohm; }, +1},
    {"ShortAmbientSensorIsBridged", Cause::ambient_sensor_short, 1.0, [](const PlantParameters& p) { return p.ambient_sensor.parallel_s; }, +1},
    {"AmbientReadsCold", Cause::ambient_sensor_drift, 0.5, [](const PlantParameters& p) { return p.ambient_sensor.gain; }, +1},
    {"WornFanTurnsSlower", Cause::fan_worn, 0.6, [](const PlantParameters& p) { return p.fan_drive; }, -1, 3},
    {"WornFanMovesLess", Cause::fan_worn, 0.6, [](const PlantParameters& p) { return p.fan_head; }, -1, 3},
    {"WornFanRubs", Cause::fan_worn, 0.6, [](const PlantParameters& p) { return p.fan_bearing_a; }, +1, 3},
    {"TachometerReadsLow", Cause::tachometer_low, 0.4, [](const PlantParameters& p) { return p.tachometer_gain; }, -1},
    {"LimiterStaysOpen", Cause::limiter_open, 1.0, [](const PlantParameters& p) { return p.limiter_bad; }, +1},
    {"PartShutValveResists", Cause::gas_isolator_part_shut, 0.9, [](const PlantParameters& p) { return p.gas_isolator_resistance; }, +1},
    {"BlockedScreenResists", Cause::gas_screen_blocked, 0.6, [](const PlantParameters& p) { return p.gas_valve_resistance; }, +1},
    {"CreepingRegulatorCreeps", Cause::regulator_creeps, 0.6, [](const PlantParameters& p) { return p.regulator_creep_pa_per_s; }, +1},
    {"WeepingUnionLetsGasOut", Cause::gas_union_weeps, 0.6, [](const PlantParameters& p) { return p.gas_union_leak_m3_per_s; }, +1},
    {"WrongInjectorsAreTooSmallForNaturalGasAndTooLargeForPropane", Cause::wrong_injectors, 1.0, [](const PlantParameters& p) { return p.stoichiometric_air > 15.0 ? p.injector_m2[0] : -p.injector_m2[0]; }, +1, 3},
    {"OversetValveGivesMore", Cause::high_fire_overset, 0.6, [](const PlantParameters& p) { return p.gas_valve_overset_per_pa; }, +1},
    {"SmallCylinderTakesInLess", Cause::boil_off_small, 0.6, [](const PlantParameters& p) { return p.cylinder_wall_w_per_k; }, -1, 4},
    {"StuckChangeoverIsStuck", Cause::changeover_stuck, 1.0, [](const PlantParameters& p) { return p.changeover_stuck; }, +1, 2},
    {"StuckChangeoverStandsOnAnEmptyCylinder", Cause::changeover_stuck, 1.0, [](const PlantParameters& p) { return p.cylinder_start_kg; }, -1, 2},
    {"PassingStageGivesMoreUnderLoad", Cause::second_stage_passes, 0.6, [](const PlantParameters& p) { return p.gas_no_load_pa; }, +1, 4},
    {"PassingStageGivesMoreAtRest", Cause::second_stage_passes, 0.6, [](const PlantParameters& p) { return p.gas_lock_up_pa; }, +1, 4},
    {"WaterStandsInTheAirTube", Cause::air_tube_water, 0.6, [](const PlantParameters& p) { return p.air_tube_water_pa; }, +1},
    {"LooseLinkIsOpen", Cause::companion_link_open, 1.0, [](const PlantParameters& p) { return p.companion_link_ohm; }, +1},
    {"CorrodedLinkResists", Cause::link_cable_corroded, 0.6, [](const PlantParameters& p) { return p.electrical.link_series_ohm[0]; }, +1, 2},
    {"FeltedIntakeResists", Cause::intake_felted, 0.6, [](const PlantParameters& p) { return p.intake_resistance; }, +1},
    {"ProductsComeBack", Cause::products_drawn_back, 0.6, [](const PlantParameters& p) { return p.recirculated_share; }, +1},
    {"OpenSeamLeaks", Cause::chamber_seam_open, 0.6, [](const PlantParameters& p) { return p.seam_leak_share; }, +1},
    {"BlockedOpenFlueResists", Cause::open_flue_blocked, 0.6, [](const PlantParameters& p) { return p.open_flue_resistance; }, +1},
    {"TightRoomHasSmallGaps", Cause::room_too_tight, 0.6, [](const PlantParameters& p) { return p.room_leak_gain; }, -1, 2},
    {"TightRoomRenewsLessAir", Cause::room_too_tight, 0.6, [](const PlantParameters& p) { return p.room_ventilation_m3_per_s; }, -1, 2},
    {"LateLightUpIsLate", Cause::light_up_late, 0.6, [](const PlantParameters& p) { return p.ignition_delay_s; }, +1},
    {"CloggedOutletPassesLess", Cause::outlet_clogged, 0.6, [](const PlantParameters& p) { return p.tap_opening[1]; }, -1},
    {"StickingTurbineStandsStill", Cause::flow_sensor_sticks, 0.6, [](const PlantParameters& p) { return p.flow_sensor_sticks_m3_per_s; }, +1},
    {"WrongTurbineReadsHigh", Cause::flow_sensor_wrong, 0.6, [](const PlantParameters& p) { return p.flow_sensor_gain; }, +1},
    {"PinholeLeaks", Cause::pinhole_inside, 0.6, [](const PlantParameters& p) { return p.casing_leak_gain; }, +1, 2},
    {"PinholeWets", Cause::pinhole_inside, 0.6, [](const PlantParameters& p) { return p.electrical.moisture_s; }, +1, 2},
    {"NightPressureRises", Cause::night_pressure_high, 0.6, [](const PlantParameters& p) { return p.mains_rise_at_night_pa; }, +1},
    {"MixerLetsColdAcross", Cause::mixer_cross_flow, 0.6, [](const PlantParameters& p) { return p.cross_flow_gain; }, +1},
    {"WornTemperingValveAddsCold", Cause::tempering_valve_worn, 0.6, [](const PlantParameters& p) { return p.tempering_cold_share; }, +1},
    {"SensorOpensAtALowerTemperature", Cause::outlet_sensor_opens_warm, 0.6, [](const PlantParameters& p) { return p.outlet_sensor.opens_above_k; }, -1},
    {"WeakLimiterOpensEarly", Cause::limiter_weak, 0.6, [](const PlantParameters& p) { return p.limiter_opens_early_k; }, +1},
    {"SecondSupplyFeeds", Cause::second_supply, 1.0, [](const PlantParameters& p) { return p.electrical.second_source; }, +1},
    {"BridgedLimiterIsBridged", Cause::limiter_bridged, 1.0, [](const PlantParameters& p) { return p.limiter_bridged; }, +1},
};
// clang-format on

class CauseEffect : public testing::TestWithParam<Effect> {};

TEST_P(CauseEffect, MovesTheRightWayAndNothingElse) {
    const Effect& e = GetParam();
    for (const PlantParameters& healthy : sound_houses()) {
        if (info(e.cause).mains_only && healthy.cylinder_fed > 0.5) continue;
        const auto faulty = with_fault(healthy, {e.cause, e.severity}, 0.0);
        EXPECT_GT(e.sign * (e.value(faulty) - e.value(healthy)), 0.0);
        EXPECT_EQ(changed(healthy, faulty), e.moves);
    }
}

TEST_P(CauseEffect, GrowsWithSeverityOverTheSymptomaticRange) {
    const Effect& e = GetParam();
    const CauseInfo& row = info(e.cause);
    if (row.on_off) return;
    const bool held = e.value(with_fault(plant::natural_gas_parameters(), {e.cause, 0.6}, 0.0)) ==
                      e.value(with_fault(plant::natural_gas_parameters(), {e.cause, 0.7}, 0.0));
    if (held) return;  // held is held, at any severity
    const PlantParameters healthy =
        row.mains_only ? plant::natural_gas_parameters() : plant::propane_parameters();
    double before = e.sign * e.value(healthy);
    for (int i = 0; i <= 10; ++i) {
        const double size =
            row.least_severity + 0.1 * i * (row.greatest_severity - row.least_severity);
        const double severity = e.severity < 0.0 ? -size : size;
        const double now = e.sign * e.value(with_fault(healthy, {e.cause, severity}, 0.0));
        if (e.cause == Cause::cylinder_low && now == 0.0) continue;  // empty is empty
        EXPECT_GT(now, before) << severity;
        before = now;
    }
}

INSTANTIATE_TEST_SUITE_P(Catalogue, CauseEffect, testing::ValuesIn(effects),
                         [](const auto& row) { return row.param.name; });

TEST(CauseEffects, CoverTheWholeCatalogue) {
    for (const CauseInfo& row : catalogue()) {
        bool covered = row.cause == Cause::no_fault || of_settings(row.cause);
        for (const Effect& e : effects) covered = covered || e.cause == row.cause;
        EXPECT_TRUE(covered) << row.word;
    }
}

TEST(FlueBlocked, LossGoesWithTheInverseSquareOfTheFreeArea) {
    const PlantParameters healthy = plant::natural_gas_parameters();
    const auto half = with_fault(healthy, {Cause::flue_blocked, 0.5 / 0.85}, 0.0);
    EXPECT_NEAR(half.flue_resistance, 4.0 * healthy.flue_resistance, 1e-6);
}

TEST(CylinderLow, NeverPutsLiquidIn) {
    PlantParameters healthy = plant::propane_parameters();
    healthy.cylinder_start_kg = 2.0;
    for (const double severity : {0.05, 0.3, 0.6})
        EXPECT_LE(with_fault(healthy, {Cause::cylinder_low, severity}, 0.0).cylinder_start_kg, 2.0);
    EXPECT_EQ(with_fault(healthy, {Cause::cylinder_low, 1.0}, 0.0).cylinder_start_kg, 0.0);
}

TEST(GasSetting, OfTheOtherGasIsStoredAndNothingElseMoves) {
    for (const double plate : {0.0, 1.0}) {
        controller::Settings healthy;
        healthy.plate_gas = healthy.gas = plate;
        const Fault wrong{Cause::gas_setting_wrong, 1.0, 10.0};
        controller::Settings expected = healthy;
        expected.gas = 1.0 - plate;
        EXPECT_EQ(with_fault(healthy, wrong, 10.0), expected);
        EXPECT_EQ(with_fault(healthy, wrong, 9.9), healthy);
        EXPECT_EQ(with_fault(healthy, {Cause::gas_setting_wrong, 0.0}, 10.0), healthy);
    }
}

TEST(Priority, GoesToTheFirstWallControllerOrWhereItHasItToTheSecond) {
    controller::Settings settings;
    const Fault moved{Cause::priority_elsewhere, 1.0};
    EXPECT_EQ(with_fault(settings, moved, 0.0).first_priority, 1.0);
    settings.first_priority = 1.0;
    EXPECT_EQ(with_fault(settings, moved, 0.0).first_priority, 2.0);
}

TEST(LinkCable, CorrodedResistsAndLeaksInItsFirstRunOnly) {
    const auto healthy = plant::natural_gas_parameters();
    const auto faulty = with_fault(healthy, {Cause::link_cable_corroded, 1.0}, 0.0);
    EXPECT_GT(faulty.electrical.link_series_ohm[0], healthy.electrical.link_series_ohm[0]);
    EXPECT_GT(faulty.electrical.link_leak_s[0], healthy.electrical.link_leak_s[0]);
    EXPECT_EQ(faulty.electrical.link_series_ohm[1], healthy.electrical.link_series_ohm[1]);
}

TEST(Altitude, SetTooHighTellsOfThinnerAir) {
    controller::Settings healthy;
    controller::set_altitude(healthy, 300.0);
    const auto faulty = with_fault(healthy, {Cause::altitude_setting_wrong, 0.5}, 0.0);
    EXPECT_DOUBLE_EQ(faulty.altitude_m, 1800.0);
    EXPECT_LT(faulty.air_density_share, healthy.air_density_share);
}

TEST(Altitude, SetTooLowAtAHighSiteTellsOfThickerAir) {
    controller::Settings healthy;
    controller::set_altitude(healthy, 1800.0);
    const auto faulty = with_fault(healthy, {Cause::altitude_setting_wrong, 0.5}, 0.0);
    EXPECT_DOUBLE_EQ(faulty.altitude_m, 300.0);
    EXPECT_GT(faulty.air_density_share, healthy.air_density_share);
}

/// Somebody stored it: between two steps there is nothing to store.
TEST(Altitude, IsMissetByWholeSteps) {
    for (const double severity : {0.1, 0.37, 0.5, 0.83, 1.0}) {
        const auto faulty =
            with_fault(controller::Settings{}, {Cause::altitude_setting_wrong, severity}, 0.0);
        EXPECT_EQ(faulty.altitude_m, controller::nearest_altitude_step_m(faulty.altitude_m));
        EXPECT_NEAR(faulty.altitude_m, 3000.0 * severity, 0.5 * controller::altitude_step_m);
    }
}

TEST(HighestSetting, LetsScaldingValuesIn) {
    const controller::Settings healthy;
    const auto faulty = with_fault(healthy, {Cause::highest_setting_raised, 1.0}, 0.0);
    EXPECT_GT(faulty.maximum_set_k, healthy.maximum_set_k + 10.0);
}

TEST(Settings, AreMovedByNoCauseOfThePlant) {
    const controller::Settings healthy;
    for (const CauseInfo& row : catalogue())
        if (!of_settings(row.cause)) {
            EXPECT_EQ(with_fault(healthy, {row.cause, row.greatest_severity}, 0.0), healthy)
                << row.word;
        }
}

/// Largest share of any parameter's change that is there already at a severity of a millionth.
double share_at_once(const CauseInfo& row) {
    PlantParameters sound = row.cylinder_only
                                ? plant::with_cylinder_pair(plant::propane_parameters())
                                : plant::natural_gas_parameters();
    PlantParameters slight = sound, whole = sound;
    apply(slight, row.cause, 1e-6);
    apply(whole, row.cause, row.greatest_severity);
    // Thresholds that start beyond what a sound heater reaches, what waits behind one, and a load of the house.
    const double* const there_at_once[] = {
        &whole.electrical.valve_lead_touches_above_k, &whole.electrical.valve_lead_short_s,
        &whole.electrical.pump_s, &whole.outlet_sensor.opens_above_k};
    double most = 0.0;
    for (std::size_t i = 0; i < plant::parameter_count; ++i) {
        if (std::ranges::count(there_at_once, &plant::flat(whole)[i]) > 0) continue;
        const double all = plant::flat(whole)[i] - plant::flat(sound)[i];
        if (all != 0.0)
            most = std::max(most, (plant::flat(slight)[i] - plant::flat(sound)[i]) / all);
    }
    return most;
}

/// What a ramp needs: an effect that grows from nothing.
TEST(Effects, GrowFromNothingUnlessTheCatalogueSaysThatTheyBeginWhole) {
    for (const CauseInfo& row : catalogue()) {
        if (row.on_off || row.at_start_only) continue;
        if (row.begins_whole)
            EXPECT_GT(share_at_once(row), 0.5) << row.word;
        else
            EXPECT_LT(share_at_once(row), 0.01) << row.word;
    }
}

}  // namespace
}  // namespace emberpath::faults
