// Proves that instruments are things: a worn one really reads wrong, its check and its spare show it, batteries
// fail as batteries do, and a label past its date counts only for who has not looked at it.

#include "sim/worksite/kit.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "sim/worksite/acts.hpp"
#include "tests/unit/worksite/kit_in_hand.hpp"

namespace emberpath::worksite {
namespace {

using Script = std::vector<std::string>;
using I = Instrument;
using Q = Quantity;

double read_with(const Job& job, const Script& script, Q quantity) {
    Attempt attempt(job, 7, Mode::assessed);
    EXPECT_EQ(play(attempt, script), "");
    return last_read(attempt, quantity);
}

std::string shown_last(const Attempt& attempt) {
    std::string text;
    for (const auto& line : attempt.log().back().shown) text += line + "\n";
    return text;
}

std::string shown_by(const Job& job, const Script& script) {
    Attempt attempt(job, 7, Mode::assessed);
    EXPECT_EQ(play(attempt, script), "");
    return shown_last(attempt);
}

struct Wear {
    const char* name;
    I instrument;
    Piece piece;
    Quantity quantity;
    Script script;
    double shifts;  // of the reading, SI
    double within;
};
void PrintTo(const Wear& wear, std::ostream* out) {
    *out << wear.name;
}

const Script hot{"open bath tap", "wait 90 s"};

std::vector<Wear> each_wear() {
    Piece hot_tip, tight_line, cup, cell, low, lead, heavy, ring, clock;
    hot_tip.off_by = 3.0;
    tight_line.reads = 0.9;
    cup.reads = 1.2;
    cell.off_by = -0.012;
    low.battery = Battery::low;
    lead.off_by = 40.0;
    heavy.off_by = 2.0;
    ring.off_by = 0.3;
    clock.reads = 1.2;
    const Script line{"shut gas at heater",        "open test point inlet", "zero manometer",
                      "attach manometer to inlet", "open gas at heater",    "read manometer"};
    const Script sensor{"unplug heater", "take cover off", "unplug outlet sensor"};
    return {
        {"ThermometerOffByThreeKelvin", I::thermometer, hot_tip, Q::tap_temperature,
         hot + Script{"measure temperature at bath tap"}, 3.0, 0.11},
        {"ManometerReadingTenPercentLow", I::manometer, tight_line, Q::gas_inlet_pressure, line,
         -235.0, 15.0},
        {"DentedCup", I::flow_cup, cup, Q::tap_flow, hot + Script{"measure flow at bath tap"},
         0.2 * 9.0 / 60000.0, 3.0e-5},
        {"TiredOxygenCell", I::analyser, cell, Q::flue_o2,
         hot + Script{"switch on analyser", "wait 1 min", "put probe in flue", "wait 1 min",
                      "read analyser"},
         -0.012, 0.0011},
        {"OxygenCellInTheCarbonDioxide", I::analyser, cell, Q::flue_co2,
         hot + Script{"switch on analyser", "wait 1 min", "put probe in flue", "wait 1 min",
                      "read analyser"},
         0.57 * 0.012, 0.0011},
        {"LowBatteryOfTheMultimeter",
         I::multimeter,
         low,
         Q::volts_between,
         {"measure volts between socket active and socket neutral"},
         18.4,
         1.0},
        {"BrokenLead",
         I::multimeter,
         lead,
         Q::valve_coil_ohms,
         {"unplug heater", "take cover off",
          "measure ohms between valve lead and low-voltage common"},
         40.0,
         1.0},
        {"ClampThatShowsSomethingAroundNothing",
         I::clamp_meter,
         ring,
         Q::clamp_current,
         {"clamp lead active"},
         0.3,
         0.02},
        {"MillisecondsOfASafetySwitchTesterThatRunsFast",
         I::safety_switch_tester,
         clock,
         Q::break_time,
         {"unplug heater", "time safety switch at rated current"},
         0.018,
         0.0015},
    };
}

class EachWear : public testing::TestWithParam<Wear> {};

TEST(PressureHold, IsShownThroughTheManometerAsItIs) {
    Piece low_line, flat;
    low_line.reads = 0.8;
    flat.battery = Battery::flat;
    Script script{"shut gas at heater",        "open test point inlet",     "zero manometer",
                  "attach manometer to inlet", "open gas at heater",        "wait 5 s",
                  "shut gas at meter",         "leak test by pressure hold"};
    const auto at_start = [](const std::string& line) {
        const auto from = line.find("At the start ");
        EXPECT_NE(from, std::string::npos) << line;
        return std::stod(line.substr(from + 13));
    };
    const double sound = at_start(shown_by(test_job(), script));
    EXPECT_NEAR(at_start(shown_by(job_with(I::manometer, low_line), script)), 0.8 * sound, 0.02);
    Attempt attempt(job_with(I::manometer, flat), 7, Mode::assessed);
    script = {"shut gas at heater",
              "open test point inlet",
              "attach manometer to inlet",
              "open gas at heater",
              "wait 5 s",
              "shut gas at meter"};
    ASSERT_EQ(play(attempt, script), "");
    EXPECT_EQ(attempt.perform("leak test by pressure hold").refusal.text,
              "The manometer stays dark: its battery is flat.");
}

TEST(PressureHold, IsAReadingOfAnInstrumentPastItsDate) {
    Piece old;
    old.calibrated_on = "2020-01-01";
    Attempt attempt(job_with(I::manometer, old), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"shut gas at heater", "open test point inlet", "zero manometer",
                             "attach manometer to inlet", "open gas at heater", "wait 5 s",
                             "shut gas at meter", "leak test by pressure hold"}),
              "");
    EXPECT_TRUE(broke(attempt, "tool_unchecked"));
}

TEST(FlatBattery, KeepsTheInstrumentsOfASecondHeaterAndCylinderDark) {
    Piece flat;
    flat.battery = Battery::flat;
    const auto refused = [&](I instrument, void (*fit)(Job&), const char* act) {
        Job job = job_with(instrument, flat);
        fit(job);
        Attempt attempt(job, 7, Mode::assessed);
        EXPECT_EQ(play(attempt, {"unplug heater", "take cover off"}), "");
        const auto outcome = attempt.perform(act);
        EXPECT_EQ(outcome.entry, nullptr) << act;
        return outcome.refusal.text;
    };
    const auto companion = [](Job& job) { job.settings.companion = 1.0; };
    const auto pair = [](Job& job) { job.healthy.reserve_fitted = 1.0; };
    const std::string dark = " stays dark: its battery is flat.";
    EXPECT_EQ(refused(I::thermometer, companion, "measure companion outlet pipe"),
              "The thermometer" + dark);
    EXPECT_EQ(refused(I::multimeter, companion, "measure link between heaters"),
              "The multimeter" + dark);
    EXPECT_EQ(refused(I::scale, pair, "weigh second cylinder"), "The scale" + dark);
    EXPECT_EQ(refused(
                  I::manometer, [](Job& job) { job.settings.air_by_tube = 1.0; },
                  "measure air tube pressure"),
              "The manometer" + dark);
}

TEST_P(EachWear, ShiftsTheReadingByWhatItIsAndNotTheSpares) {
    const Wear& wear = GetParam();
    const Job worn = job_with(wear.instrument, wear.piece);
    const Script& script = wear.script;
    const double sound = read_with(test_job(), script, wear.quantity);
    EXPECT_NEAR(read_with(worn, script, wear.quantity) - sound, wear.shifts, wear.within);
    const Script fetch{"take spare " + std::string(info(wear.instrument).word)};
    // The fetch takes three minutes, so the same is asked of a sound kit with its spare.
    EXPECT_EQ(read_with(worn, fetch + script, wear.quantity),
              read_with(test_job(), fetch + script, wear.quantity));
}

INSTANTIATE_TEST_SUITE_P(Kit, EachWear, testing::ValuesIn(each_wear()),
                         [](const auto& i) { return std::string(i.param.name); });

TEST(WornInstrument, IsShownByItsCheckAndByTheSpare) {
    Piece tip;
    tip.off_by = 3.0;
    EXPECT_NEAR(std::stod(shown_by(test_job(), {"check thermometer"}).substr(24)), 0.0, 1.2)
        << "a sound one stays near its class of half a kelvin";
    const Job job = job_with(I::thermometer, tip);
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"check thermometer"}), "");
    const double ice_c = std::stod(shown_last(attempt).substr(24));
    EXPECT_GT(ice_c, 1.5);
    ASSERT_EQ(play(attempt, {"compare thermometer with spare"}), "");
    const std::string both = shown_last(attempt);
    const double own = std::stod(both.substr(both.find("shows") + 6));
    const double spare = std::stod(both.substr(both.find("spare") + 6));
    EXPECT_GT(own - spare, 1.0) << both;
    Piece leads, cup;
    leads.off_by = 2.0;
    cup.reads = 1.1;
    EXPECT_NE(shown_by(job_with(I::multimeter, leads), {"check multimeter"}).find("2."),
              std::string::npos);
    EXPECT_NE(shown_by(job_with(I::flow_cup, cup), {"check flow cup"}).find("0.9"),
              std::string::npos);
}

TEST(WornInstrument, IsToldToScoringAndToNobodyElse) {
    struct Listener : Follower {
        void tick(const TickInputs&) override {}
        void tools(const ToolSetup&, bool) override {}
        void remedied(faults::Remedy) override {}
        void cylinder_changed() override {}
        void arrived() override {}
        void observed(const Observation& seen) override { heard.push_back(seen); }
        std::vector<Observation> heard;
    };
    Piece tip;
    tip.off_by = 3.0;
    Listener listener;
    Attempt attempt(job_with(I::thermometer, tip), 7, Mode::assessed, &listener);
    ASSERT_EQ(
        play(attempt, hot + Script{"measure temperature at bath tap", "take spare thermometer",
                                   "measure temperature at bath tap"}),
        "");
    ASSERT_EQ(listener.heard.size(), 2U);
    EXPECT_DOUBLE_EQ(listener.heard[0].beyond_class, 3.0);
    EXPECT_FALSE(listener.heard[0].condition.spare);
    EXPECT_DOUBLE_EQ(listener.heard[1].beyond_class, 0.0);
    EXPECT_TRUE(listener.heard[1].condition.spare);
    for (const auto& entry : attempt.log())
        for (const auto& seen : entry.observations) EXPECT_DOUBLE_EQ(seen.beyond_class, 0.0);
}

TEST(Label, OfAnOverdueInstrumentCountsForWhoHasNotLooked) {
    Piece old;
    old.calibrated_on = "2025-11-01";
    const Job job = job_with(I::thermometer, old);
    const Script use = hot + Script{"measure temperature at bath tap"};
    Attempt unseen(job, 7, Mode::assessed), seen(job, 7, Mode::assessed),
        spare(job, 7, Mode::assessed);
    ASSERT_EQ(play(unseen, use), "");
    EXPECT_TRUE(broke(unseen, "tool_unchecked"));
    ASSERT_EQ(play(seen, {"look at thermometer"}), "");
    EXPECT_NE(shown_last(seen).find("Calibrated on 1 November 2025, good for 12 months: overdue."),
              std::string::npos)
        << shown_last(seen);
    ASSERT_EQ(play(seen, use), "");
    EXPECT_FALSE(broke(seen, "tool_unchecked"));
    ASSERT_EQ(play(spare, Script{"take spare thermometer"} + use), "");
    EXPECT_FALSE(broke(spare, "tool_unchecked"));
    old.calibrated_on = "2025-12-01";
    Attempt in_date(job_with(I::thermometer, old), 7, Mode::assessed);
    ASSERT_EQ(play(in_date, use), "");
    EXPECT_FALSE(broke(in_date, "tool_unchecked"));
}

TEST(Label, OfLeakFluidIsOfItsUseAndNotOfACalibration) {
    Piece bottle;
    Attempt fresh(job_with(I::leak_fluid, bottle), 7, Mode::assessed);
    ASSERT_EQ(play(fresh, {"look at leak fluid"}), "");
    EXPECT_NE(shown_last(fresh).find("Its use-by date has not passed."), std::string::npos);
    bottle.calibrated_on = "2024-11-01";
    Attempt old(job_with(I::leak_fluid, bottle), 7, Mode::assessed);
    ASSERT_EQ(play(old, {"look at leak fluid"}), "");
    EXPECT_NE(shown_last(old).find("Filled on 1 November 2024, good for 12 months: overdue."),
              std::string::npos)
        << shown_last(old);
    for (const Attempt* attempt : {&fresh, &old})
        EXPECT_EQ(shown_last(*attempt).find("alibrated"), std::string::npos);
}

TEST(Battery, ThatIsFlatLeavesTheInstrumentDark) {
    Piece flat, low;
    flat.battery = Battery::flat;
    low.battery = Battery::low;
    Attempt meter(job_with(I::multimeter, flat), 7, Mode::assessed);
    EXPECT_EQ(meter.check("measure volts between socket active and socket neutral").text,
              "The multimeter stays dark: its battery is flat.");
    ASSERT_EQ(play(meter, {"take spare multimeter",
                           "measure volts between socket active and socket neutral"}),
              "");
    Attempt analyser(job_with(I::analyser, low), 7, Mode::assessed);
    EXPECT_EQ(analyser.check("switch on analyser").text,
              "The analyser shows that its battery is low and switches itself off.");
    EXPECT_TRUE(analyser.check("take spare analyser").text.empty());
}

TEST(Battery, OfTheVoltageTesterIsFoundOnlyOnItsProvingUnit) {
    Piece flat;
    flat.battery = Battery::flat;
    Attempt attempt(job_with(I::voltage_tester, flat), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"put on gloves", "take cover off", "test for dead"}), "");
    EXPECT_EQ(attempt.log().back().shown.front(),
              "The tester shows no voltage on any pair of terminals.");
    ASSERT_EQ(play(attempt, {"prove tester"}), "");
    EXPECT_EQ(attempt.log().back().shown.front(), "The tester stays dark on its proving unit.");
    ASSERT_EQ(play(attempt, {"take spare voltage tester", "prove tester", "test for dead"}), "");
    EXPECT_TRUE(attempt.log().back().shown.front().starts_with("The tester shows 230 V"));
}

TEST(Battery, OfThePersonalAlarmMakesItSilent) {
    Piece flat;
    flat.battery = Battery::flat;
    const Script gas{"switch on co alarm", "take cover off", "open bath tap a little",
                     "wait 30 min"};
    for (const bool silent : {false, true}) {
        Job job = silent ? job_with(I::co_alarm, flat) : test_job();
        job.faults = {fault(faults::Cause::wind_gust, 0.6)};
        Attempt attempt(job, 7, Mode::assessed);
        ASSERT_EQ(play(attempt, gas), "");
        EXPECT_EQ(all_shown(attempt).find("alarm sounds") == std::string::npos, silent);
        EXPECT_NE(attempt.truth().doses.at(1).find("carbon monoxide in the air"), std::string::npos)
            << "the air is the same";
    }
}

TEST(LeakFluid, ThatIsStaleFindsNoLeak) {
    Piece stale;
    stale.reads = 0.3;
    const Script leak{"shut gas at heater", "open test point regulator", "leak test with fluid"};
    EXPECT_NE(shown_by(job_with(I::leak_fluid, stale), leak).find("No bubbles."),
              std::string::npos);
    EXPECT_NE(shown_by(test_job(), leak).find("Bubbles at"), std::string::npos);
    EXPECT_EQ(shown_by(job_with(I::leak_fluid, stale), {"check leak fluid"}),
              "It runs off like water.\n");
}

TEST(Kit, HasEveryInstrumentOfTheTradeWithALabelAndACheck) {
    for (std::size_t i = 0; i < instrument_count; ++i) {
        const auto& row = info(static_cast<I>(i));
        EXPECT_EQ(find_instrument(row.word), static_cast<I>(i));
        EXPECT_FALSE(row.check.empty());
        EXPECT_GT(row.check_s, 0.0);
        Attempt attempt(test_job(), 7, Mode::assessed);
        ASSERT_EQ(play(attempt, {"look at " + std::string(row.word)}), "");
        EXPECT_TRUE(attempt.log().back().shown.front().starts_with("Range: "));
    }
    for (std::size_t i = 0; i < quantity_count; ++i) {
        const auto& row = info(static_cast<Q>(i));
        const bool shown_by_a_thing = !row.categorical && row.tool != Tool::readout;
        EXPECT_EQ(instrument_of(row.quantity).has_value(), shown_by_a_thing) << row.word;
    }
}

TEST(Dates, CountDaysAsTheCalendarDoes) {
    EXPECT_EQ(*days_of("2026-03-01") - *days_of("2026-02-28"), 1);
    EXPECT_EQ(*days_of("2024-03-01") - *days_of("2024-02-28"), 2);
    EXPECT_EQ(*days_of("2100-03-01") - *days_of("2100-02-28"), 1);
    EXPECT_EQ(*days_of("2027-01-01") - *days_of("2026-01-01"), 365);
    for (const char* wrong : {"2026-13-01", "2026-02-29", "2026-2-1", "26-02-01", "yesterday"})
        EXPECT_FALSE(days_of(wrong)) << wrong;
}

TEST(Manual, DescribesTheInstrumentsOfTheProgram) {
    const std::string path = std::string(EMBERPATH_SOURCE_DIR) + "/docs/instruments.md";
    if (std::getenv("EMBERPATH_REGENERATE") != nullptr) std::ofstream(path) << instruments_page();
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    EXPECT_EQ(text.str(), instruments_page());
}

}  // namespace
}  // namespace emberpath::worksite
