// Proves what instruments and senses show of a heater: lags, holds, ranges, words, trade units.

#include "sim/worksite/observation.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace emberpath::worksite {
namespace {

HeaterView burning() {
    HeaterView heater{};
    heater.plant.gas_inlet_pa = 1820.0;
    heater.plant.regulator_outlet_pa = 1900.0;
    heater.plant.manifold_pa = 920.0;
    heater.plant.o2_share = 0.076;
    heater.plant.co2_share = 0.075;
    heater.plant.co_share = 15.0e-6;
    heater.plant.flue_k = 400.15;
    heater.plant.flame_lit = 1.0;
    heater.plant.excess_air_ratio = 1.55;
    heater.plant.fan_rev_per_s = 79.0;
    heater.plant.ionisation_a = 9.0e-6;
    heater.plant.outlet_ohm = 4101.0;
    heater.plant.hot_water_m3_per_s = 10.0 / 60000.0;
    heater.plant.cylinder_liquid_k = 280.0;
    return heater;
}

ToolSetup with_manometer(Quantity at) {
    ToolSetup tools;
    tools.manometer = at;
    return tools;
}

void step_for(Senses& senses, const HeaterView& heater, const ToolSetup& tools, double seconds) {
    for (int i = 0; i < static_cast<int>(seconds * 10.0); ++i) senses.step(heater, tools);
}

double read(Quantity quantity, const HeaterView& heater, const Senses& senses,
            const ToolSetup& tools, Hold hold = Hold::now) {
    return value_of(quantity, hold, heater, senses, TickInputs{}, tools);
}

TEST(QuantityTable, SpellsEachQuantityOnce) {
    std::set<std::string> words;
    for (std::size_t i = 0; i < quantity_count; ++i) {
        const QuantityInfo& row = info(static_cast<Quantity>(i));
        EXPECT_TRUE(words.insert(std::string(row.word)).second) << row.word;
        EXPECT_EQ(find_quantity(row.word), &row);
        EXPECT_FALSE(row.title.empty());
    }
    EXPECT_EQ(find_quantity("no_such_quantity"), nullptr);
}

TEST(QuantityTable, GivesEveryNumberAnErrorAndEveryWordItsCategories) {
    for (std::size_t i = 0; i < quantity_count; ++i) {
        const QuantityInfo& row = info(static_cast<Quantity>(i));
        EXPECT_GT(row.minutes, 0.0) << row.word;
        if (row.categorical) {
            EXPECT_GE(row.category_count, 2) << row.word;
            for (int k = 0; k < row.category_count; ++k)
                EXPECT_NE(category_word(row.quantity, static_cast<std::size_t>(k)), "unknown");
            EXPECT_EQ(category_word(row.quantity, static_cast<std::size_t>(row.category_count)),
                      "unknown");
        } else {
            EXPECT_GT(row.error_absolute + row.error_relative, 0.0) << row.word;
            EXPECT_GT(row.resolution, 0.0) << row.word;
            EXPECT_GT(row.model_floor, 0.0) << row.word;
        }
    }
}

TEST(Gauge, ShowsTheFirstValueAtOnceAndThenLags) {
    Gauge gauge;
    gauge.follow(10.0, 1.0);
    EXPECT_DOUBLE_EQ(gauge.shown, 10.0);
    gauge.follow(20.0, 1.0);
    EXPECT_NEAR(gauge.shown, 10.0 + 10.0 * 0.1 / 1.1, 1e-12);
    for (int i = 0; i < 200; ++i) gauge.follow(20.0, 1.0);
    EXPECT_NEAR(gauge.shown, 20.0, 1e-6);
}

TEST(Gauge, HoldsExtremesUntilCleared) {
    Gauge gauge;
    for (const double x : {5.0, 9.0, 1.0, 5.0}) gauge.follow(x, 0.0);
    EXPECT_DOUBLE_EQ(gauge.highest, 9.0);
    EXPECT_DOUBLE_EQ(gauge.lowest, 1.0);
    gauge.clear_hold();
    EXPECT_DOUBLE_EQ(gauge.highest, 5.0);
    EXPECT_DOUBLE_EQ(gauge.lowest, 5.0);
}

TEST(Manometer, FollowsWithinTwoSecondsAndHoldsTheHighest) {
    Senses senses;
    const ToolSetup tools = with_manometer(Quantity::manifold_pressure);
    HeaterView heater = burning();
    heater.plant.manifold_pa = 0.0;
    senses.step(heater, tools);
    heater.plant.manifold_pa = 360.0;
    step_for(senses, heater, tools, 2.0);
    EXPECT_NEAR(read(Quantity::manifold_pressure, heater, senses, tools), 360.0, 12.0);
    heater.plant.manifold_pa = 0.0;
    step_for(senses, heater, tools, 10.0);
    EXPECT_NEAR(read(Quantity::manifold_pressure, heater, senses, tools), 0.0, 1.0);
    EXPECT_GT(read(Quantity::manifold_pressure, heater, senses, tools, Hold::highest), 345.0);
}

TEST(Manometer, ForgetsTheOldPointWhenItIsMoved) {
    Senses senses;
    const HeaterView heater = burning();
    step_for(senses, heater, with_manometer(Quantity::gas_inlet_pressure), 5.0);
    const ToolSetup moved = with_manometer(Quantity::manifold_pressure);
    senses.step(heater, moved);
    EXPECT_DOUBLE_EQ(read(Quantity::manifold_pressure, heater, senses, moved, Hold::highest),
                     920.0);
}

TEST(Analyser, NeedsAboutTenSecondsForTwoThirdsOfTheChange) {
    Senses senses;
    ToolSetup tools;
    tools.analyser_sampling = true;
    const HeaterView heater = burning();
    step_for(senses, heater, tools, 10.0);
    const double co2 = read(Quantity::flue_co2, heater, senses, tools);
    EXPECT_GT(co2, 0.6 * 0.075);
    EXPECT_LT(co2, 0.7 * 0.075);
    step_for(senses, heater, tools, 90.0);
    EXPECT_NEAR(read(Quantity::flue_co2, heater, senses, tools), 0.075, 1e-4);
    EXPECT_NEAR(read(Quantity::flue_o2, heater, senses, tools), 0.076, 1e-4);
}

TEST(Analyser, ShowsCleanAirOutsideTheFlue) {
    const Senses senses;
    EXPECT_DOUBLE_EQ(read(Quantity::flue_o2, burning(), senses, {}), 0.2095);
    EXPECT_DOUBLE_EQ(read(Quantity::flue_co, burning(), senses, {}), 0.0);
}

TEST(Analyser, SaysOverRangeAboveTenThousandPpm) {
    Senses senses;
    ToolSetup tools;
    tools.analyser_sampling = true;
    HeaterView heater = burning();
    heater.plant.co_share = 0.06;
    step_for(senses, heater, tools, 200.0);
    const double co = read(Quantity::flue_co, heater, senses, tools);
    EXPECT_DOUBLE_EQ(co, 0.01);
    EXPECT_EQ(text_of(Quantity::flue_co, co), "over range");
}

TEST(Multimeter, SaysOverRangeOnAnOpenSensor) {
    HeaterView heater = burning();
    heater.plant.outlet_ohm = 1.0e9;
    EXPECT_EQ(text_of(Quantity::outlet_ohms, read(Quantity::outlet_ohms, heater, {}, {})),
              "over range");
}

TEST(FlowCup, MeasuresTheShareOfTheOneTap) {
    ToolSetup tools;
    tools.tap_opening_share = 0.4;
    EXPECT_NEAR(read(Quantity::tap_flow, burning(), {}, tools), 4.0 / 60000.0, 1e-12);
}

TEST(Eyes, RememberASparkAndAFlameThatWentOut) {
    Senses senses;
    ToolSetup tools;
    tools.watching = true;
    HeaterView heater = burning();
    senses.start_watching();
    heater.plant.spark_heard = 1.0;
    senses.step(heater, tools);
    heater.plant.spark_heard = 0.0;
    heater.plant.flame_lit = 0.0;
    step_for(senses, heater, tools, 3.0);
    EXPECT_EQ(read(Quantity::spark, heater, senses, tools), 1.0);
    EXPECT_EQ(read(Quantity::flame, heater, senses, tools), double{flame_lit_then_out});
    senses.start_watching();
    senses.step(heater, tools);
    EXPECT_EQ(read(Quantity::spark, heater, senses, tools), 0.0);
    EXPECT_EQ(read(Quantity::flame, heater, senses, tools), double{flame_none});
}

TEST(Eyes, CallAFlameInSwingingAirRestlessAndOneShortOfAirYellow) {
    Senses senses;
    ToolSetup tools;
    tools.watching = true;
    HeaterView heater = burning();
    senses.start_watching();
    step_for(senses, heater, tools, 10.0);
    EXPECT_EQ(read(Quantity::flame, heater, senses, tools), double{flame_steady});
    for (int i = 0; i < 200; ++i) {
        heater.plant.excess_air_ratio = i % 80 < 20 ? 1.2 : 1.55;
        senses.step(heater, tools);
    }
    EXPECT_EQ(read(Quantity::flame, heater, senses, tools), double{flame_restless});
    heater.plant.excess_air_ratio = 1.0;
    EXPECT_EQ(read(Quantity::flame, heater, senses, tools), double{flame_yellow_tipped});
}

TEST(Ears, KeepTheLoudestFanTheyHeard) {
    Senses senses;
    ToolSetup tools;
    tools.listening = true;
    HeaterView heater = burning();
    heater.plant.fan_rev_per_s = 96.0;
    senses.step(heater, tools);
    heater.plant.fan_rev_per_s = 0.0;
    senses.step(heater, tools);
    EXPECT_EQ(read(Quantity::fan_sound, heater, senses, tools, Hold::highest), double{fan_loud});
    EXPECT_EQ(read(Quantity::fan_sound, heater, senses, tools), double{fan_silent});
}

TEST(Inspection, FindsWhatTheParametersOfTheHouseSay) {
    HeaterView heater = burning();
    EXPECT_EQ(read(Quantity::flue_terminal, heater, {}, {}), double{terminal_clear});
    EXPECT_EQ(read(Quantity::exchanger_fins, heater, {}, {}), double{fins_clean});
    EXPECT_EQ(read(Quantity::electrode_tip, heater, {}, {}), double{tip_clean});
    EXPECT_EQ(read(Quantity::cylinder_frost, heater, {}, {}), double{frost_no_cylinder});
    heater.parameters.flue_resistance *= 4.0;
    heater.parameters.soot = 0.6;
    heater.parameters.ionisation_gain = 0.5;
    EXPECT_EQ(read(Quantity::flue_terminal, heater, {}, {}), double{terminal_partly_covered});
    EXPECT_EQ(read(Quantity::exchanger_fins, heater, {}, {}), double{fins_heavily_sooted});
    EXPECT_EQ(read(Quantity::electrode_tip, heater, {}, {}), double{tip_coated});
}

TEST(Inspection, SeesFrostOnACylinderAsHighAsItsLiquid) {
    HeaterView heater = burning();
    heater.parameters.cylinder_fed = 1.0;
    heater.plant.cylinder_kg = 30.0;
    EXPECT_EQ(read(Quantity::cylinder_frost, heater, {}, {}), double{frost_none});
    heater.plant.cylinder_liquid_k = 265.0;
    EXPECT_EQ(read(Quantity::cylinder_frost, heater, {}, {}), double{frost_line_high});
    heater.plant.cylinder_kg = 5.0;
    EXPECT_EQ(read(Quantity::cylinder_frost, heater, {}, {}), double{frost_line_low});
}

TEST(Senses, AToolPutAwayGoesBackToRest) {
    Senses senses;
    ToolSetup tools = with_manometer(Quantity::gas_inlet_pressure);
    tools.analyser_sampling = tools.meter_in_flame_lead = true;
    step_for(senses, burning(), tools, 5.0);
    EXPECT_FALSE(at_rest(tools));
    EXPECT_TRUE(at_rest({}));
    senses.step(burning(), {});
    EXPECT_FALSE(senses.manometer.primed);
    EXPECT_FALSE(senses.o2.primed);
    EXPECT_FALSE(senses.flame_current.primed);
}

TEST(TextOf, WritesTradeUnits) {
    EXPECT_EQ(text_of(Quantity::gas_inlet_pressure, 1824.0), "1.82 kPa");
    EXPECT_EQ(text_of(Quantity::tap_temperature, 321.05), "47.9 °C");
    EXPECT_EQ(text_of(Quantity::tap_flow, 13.8 / 60000.0), "13.8 L/min");
    EXPECT_EQ(text_of(Quantity::flue_co2, 0.0752), "7.5 %");
    EXPECT_EQ(text_of(Quantity::flue_co, 15.2e-6), "15 ppm");
    EXPECT_EQ(text_of(Quantity::flame_current, 9.04e-6), "9.0 µA");
    EXPECT_EQ(text_of(Quantity::outlet_ohms, 4101.4), "4101 ohm");
    EXPECT_EQ(text_of(Quantity::readout_fan, 79.2), "4752 rpm");
    EXPECT_EQ(text_of(Quantity::readout_firing_rate, 41500.0), "149 MJ/h");
    EXPECT_EQ(text_of(Quantity::readout_correction, -4.44), "-4.4 K");
    EXPECT_EQ(text_of(Quantity::flue_terminal, double{terminal_covered}), "covered");
}

}  // namespace
}  // namespace emberpath::worksite
