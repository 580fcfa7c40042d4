// Proves, danger by danger, that a precaution taken and the same precaution skipped end differently: the rule is
// broken only where it was skipped, and what came of it stands in the record.

#include <gtest/gtest.h>

#include "sim/worksite/hazards.hpp"
#include "tests/unit/worksite/dangerous_houses.hpp"

namespace emberpath::worksite {
namespace {

using Script = Acts;

/// One danger, met twice.
struct Danger {
    const char* endangers;  // as a test name
    const char* rule;
    Job job;
    Script taken, skipped;
    const char* recorded;  // what the record holds only where the precaution was skipped
};
void PrintTo(const Danger& danger, std::ostream* out) {
    *out << danger.endangers;
}

/// Breaches of one rule, doses, what was left behind and what was shown.
std::string record_of(const Attempt& attempt, std::string_view rule) {
    std::string text;
    for (const auto& one : attempt.breaches())
        if (one.rule == rule) text += one.text + "\n";
    const auto truth = attempt.truth();
    for (const auto& line : truth.doses) text += line + "\n";
    for (const auto& line : truth.left_behind) text += line + "\n";
    return text + all_shown(attempt);
}

std::vector<Danger> of_current() {
    const Script probe{"measure volts between socket active and socket neutral"};
    const Script part_pipe{"shut water at heater", "undo water union"};
    return {
        {"HandOnMains",
         "live_work",
         test_job(),
         dead + Script{"unplug outlet sensor"},
         {"take cover off", "unplug outlet sensor"},
         "mA from hand to hand"},
        {"LeadsOnLiveTerminals", "live_test", test_job(), dressed + probe, probe,
         "Leads were held at 230 V without insulating gloves"},
        {"BothHalvesOfAPipe", "no_bridge", test_job({fault(Cause::neutral_broken)}),
         Script{"fit bridging conductor"} + part_pipe, part_pipe, "mA go through you"},
        {"HandUnderASecondSupply",
         "live_work",
         with([](Job& job) { job.healthy.electrical.second_source = 1.0; }),
         {"switch main switch off", "switch second supply off", "lock off switchboard",
          "take cover off", "prove tester", "test for dead", "prove tester",
          "unplug outlet sensor"},
         {"switch main switch off", "lock off switchboard", "take cover off",
          "unplug outlet sensor"},
         "mA from hand to hand"},
        {"HandBehindASwappedSwitch",
         "live_work",
         test_job({fault(Cause::supply_swapped)}),
         dead + Script{"unplug outlet sensor"},
         {"switch power off", "take cover off", "unplug outlet sensor"},
         "mA from hand to hand"},
        {"HouseWithoutASafetySwitch",
         "no_safety_switch",
         test_job(),
         {"unplug heater", "test safety switch", "close safety switch", "plug in heater",
          "hand in"},
         {"use outlet without safety switch", "hand in"},
         "the heater is fed from an outlet without a safety switch"},
        {"CasingAfterWorkOnWiring", "not_tested_before_power", test_job(),
         dead + dressed +
             Script{"dry and reseal wiring", "unlock plug", "plug in heater",
                    "measure ohms between casing and earth bar", "unplug heater",
                    "test insulation between heater active and casing", "plug in heater",
                    "switch power on"},
         dead + dressed +
             Script{"dry and reseal wiring", "unlock plug", "plug in heater", "switch power on"},
         "switched on again without a test"},
        {"HandInTheSwitchboard",
         "beyond_scope",
         test_job(),
         dressed + probe,
         {"measure volts between neutral bar and incoming active"},
         "an electrician's work"},
        {"WhoComesNextOverALockedPlug",
         "not_locked",
         test_job(),
         dead + Script{"unplug outlet sensor"},
         {"unplug heater", "take cover off", "prove tester", "test for dead", "prove tester",
          "unplug outlet sensor"},
         "anybody could have switched on again"},
    };
}

std::vector<Danger> of_gas() {
    const Script point{"open test point inlet", "wait 20 s"};
    const Script safe_arrival{"air the place", "shut gas at meter", "move people out",
                              "escalate to distributor"};
    const Script clean{"clean heat exchanger"};
    const Script change{"shut gas at cylinder", "change cylinder", "open gas at cylinder"};
    return {
        {"AirAroundAnOpenJoint", "gas_open", test_job(), Script{"shut gas at heater"} + point,
         point, "Most gas in the air at your hands"},
        {"HouseThatSmellsOfGas",
         "spark_in_gas",
         with(leak),
         safe_arrival + Script{"wait 4 min", "switch power off"},
         {"look at room", "switch power off"},
         "A switch or a flame was worked in air that smelt of gas: "},
        {"WhoStaysInGas",
         "stayed_in_gas",
         with(leak),
         safe_arrival + Script{"wait 2 min"},
         {"look at room", "wait 2 min"},
         "You stayed a minute in air with "},
        {"PeopleOfTheHouse",
         "people_in_gas",
         with(leak),
         safe_arrival + Script{"hand in"},
         {"hand in"},
         "stayed in it while it smelt of gas"},
        {"WhoIsBlamedForAnOldLeak", "no_leak_test_before", with(leak),
         dead + dressed + Script{"leak test with fluid", "shut gas at meter"} + clean,
         dead + dressed + Script{"shut gas at meter"} + clean, "laid to you"},
        {"HouseWithAnOldLeak",
         "leak_left",
         with(leak),
         {"air the place", "leak test with fluid", "shut gas at meter", "remake joint regulator",
          "open gas at meter", "leak test with fluid", "hand in"},
         {"air the place", "hand in"},
         "a gas joint weeps"},
        {"LightUpAfterAnOpenPipe", "not_purged", cylinder_job(),
         change + Script{"purge gas pipe"} + hot_bath, change + hot_bath,
         "lit with air in its gas pipe"},
        {"DrainBelowThePropane",
         "low_gas_left",
         on_cylinder(leak_over_a_drain),
         {"air the place", "shut gas at cylinder", "check low places", "wait 15 min",
          "check low places", "remake joint regulator", "open gas at cylinder",
          "leak test with fluid", "hand in"},
         {"look at room", "hand in"},
         "propane lies in the drain"},
        {"WhoTrustsTheAirAboveADrain",
         "low_unchecked",
         on_cylinder(leak_over_a_drain),
         {"shut gas at cylinder", "check low places", "hand in"},
         {"shut gas at cylinder", "hand in"},
         "nobody held a detector down the drain"},
        {"CylinderInTheFluesOutlet",
         "cylinder_left",
         on_cylinder([](Job& job) { job.site.dangers.cylinder_close = true; }),
         {"look at cylinder", "leak test with fluid", "shut gas at cylinder", "move cylinder",
          "open gas at cylinder", "leak test with fluid", "hand in"},
         {"look at cylinder", "hand in"},
         "2105 kPa at 60.0 °C"},
        {"EveryApplianceOfTheHouse",
         "regulator_raised",
         test_job(),
         {"escalate regulator to distributor", "hand in"},
         {"raise supply regulator", "hand in"},
         "the supply regulator is wound up"},
        {"BurnerOnAnotherGas",
         "off_plate",
         test_job(),
         {"open service readout", "take cover off", "change gas setting to propane",
          "change gas setting to natural gas", "refit cover", "hand in"},
         {"open service readout", "take cover off", "change gas setting to propane", "refit cover",
          "hand in"},
         "another gas than its data plate"},
    };
}

std::vector<Danger> of_fire_and_fumes() {
    const auto sooted = [] { return test_job({fault(Cause::exchanger_sooted, 0.8)}); };
    const Script gusty{"switch on co alarm", "open bath tap a little", "wait 30 min"};
    const Script electrode = dead + dressed +
                             Script{"clean flame electrode", "refit cover", "unlock plug",
                                    "plug in heater", "switch power on"};
    Script hasty{"open bath tap", "wait 30 s"}, patient = hasty;
    for (int i = 0; i < 4; ++i) {
        hasty = hasty + Script{"press reset", "wait 10 s"};
        if (i < 2) patient = patient + Script{"press reset", "wait 2 min"};
    }
    const Script draught{"open bath tap", "wait 60 s", "test draught with smoke", "hand in"};
    return {
        {"RoomWithAnOpenFlueAndAFan",
         "spillage_left",
         open_flue(0.12),
         out_of_use + Script{"hand in"},
         {"hand in"},
         "% of the products"},
        {"DraughtTestedKindly", "draught_untested", open_flue(0.001),
         electrode + Script{"run rangehood"} + draught, electrode + draught, "tested kindly"},
        {"NextFaultBehindABridge", "bridged", test_job(),
         dead + dressed + Script{"look at flame electrode", "hand in"},
         dead + dressed + Script{"bridge limiter", "hand in"}, "the overheat limiter is bridged"},
        {"BloodInARoomWithFumes", "room_co", test_job({fault(Cause::wind_gust, 0.6)}), gusty,
         Script{"take cover off"} + gusty, "Your personal alarm sounds"},
        {"HouseAfterWorkOnTheFlame", "no_combustion_test", test_job(),
         electrode + Script{"switch on analyser", "wait 1 min", "put probe in flue",
                            "combustion test", "take probe out", "hand in"},
         electrode + Script{"hand in"}, "not proved at a small and a full draw"},
        {"HandsBesideALateFlame", "hasty_reset", test_job({fault(Cause::igniter_failed)}), patient,
         hasty, "times with less than a minute between"},
        {"FaceBeforeAnOpenCase", "cover_off_running", test_job(), hot_bath,
         Script{"take cover off"} + hot_bath, "fired with its cover off"},
        {"TimberBesideTheFlue",
         "scorch_left",
         with([](Job& job) { job.site.dangers.scorched = true; }),
         Script{"look around heater"} + out_of_use + Script{"hand in"},
         {"hand in"},
         "browned timber, which gets to "},
        {"WhoeverDrawsWaterTomorrow",
         "left_unsafe",
         sooted(),
         out_of_use + Script{"hand in"},
         {"hand in"},
         "flue gas with CO/CO2 of"},
        {"BareHandOnHotMetal", "hot_parts", test_job(),
         Script{"set temperature to 60 °C"} + hot_bath +
             Script{"close bath tap", "unplug heater", "take cover off", "put on gloves",
                    "unplug outlet sensor"},
         Script{"set temperature to 60 °C"} + hot_bath +
             Script{"take cover off", "close bath tap", "unplug heater", "unplug outlet sensor"},
         "Heat in the skin of your hands"},
        {"SkinUnderTheTap",
         "scald_left",
         test_job({fault(Cause::outlet_sensor_drift, 1.0)}),
         out_of_use + Script{"hand in"},
         {"hand in"},
         "with the panel set to"},
    };
}

std::vector<Danger> of_water_and_places() {
    const Script valve = dead + dressed;
    const Script descale = dead + dressed +
                           Script{"shut water at heater", "drain heater", "descale heat exchanger",
                                  "open water at heater"};
    const auto high = [](Job& job) {
        job.site.dangers.terminal_height_m = 4.0;
        job.site.dangers.soft_ground = true;
    };
    const auto windy = [](Job& job) {
        job.site.dangers.terminal_height_m = 4.0;
        job.site.wind_pa = 45.0;
    };
    return {
        {"BoardUnderWater", "water_not_shut", test_job(),
         valve + Script{"shut water at heater", "drain heater", "replace water valve"},
         valve + Script{"replace water valve"}, "Water over the floor: 17 litres."},
        {"FloorUnderTheHeater", "not_drained", test_job(),
         valve + Script{"shut water at heater", "drain heater", "replace flow sensor"},
         valve + Script{"shut water at heater", "replace flow sensor"},
         "Water over the floor: 1.2 litres."},
        {"DrinkingWater", "acid_to_taps", test_job(),
         descale + Script{"flush heater", "open kitchen tap", "wait 1 min"},
         descale + Script{"open kitchen tap", "wait 1 min"},
         "Most descaling acid in the water of a tap: 100 %"},
        {"WhoClimbsOnSoftGround",
         "fall",
         with(high),
         {"check ladder", "tie ladder", "look at flue terminal"},
         {"check ladder", "look at flue terminal"},
         "you fall 4.0 m and land at 8.9 m/s"},
        {"WhoClimbsUnlooked",
         "ladder_unchecked",
         with(high),
         {"check ladder", "tie ladder", "look at flue terminal"},
         {"look at flue terminal"},
         "without a look at ground, wind and ties"},
        {"WhoClimbsInTheWind",
         "fall",
         with(windy),
         {"check ladder", "decline climb", "escalate to licensed colleague"},
         {"check ladder", "tie ladder", "look at flue terminal"},
         "A gust takes the ladder"},
        {"LungsBesideOldSheet", "fibres", with([](Job& job) { job.site.dangers.old_sheet = true; }),
         Script{"look around heater", "escalate to asbestos assessor"} + out_of_use +
             Script{"hand in"},
         Script{"look around heater", "put on glasses", "clear flue terminal", "hand in"},
         "dust that may hold asbestos lies about"},
        {"WhoCrawlsThroughTheRoof",
         "roof_space",
         with([](Job& job) { job.site.dangers.pipe_in_roof = true; }),
         {"say where you go", "switch main switch off", "look at gas pipe run"},
         {"look at gas pipe run"},
         "nobody knowing where you were, with cables beside you live"},
        {"ChildAtAnOpenHeater", "bystander",
         with([](Job& job) { job.site.dangers.children = true; }),
         Script{"set temperature to 60 °C"} + hot_bath +
             Script{"close bath tap", "keep people away", "unplug heater", "take cover off",
                    "wait 6 min"},
         Script{"set temperature to 60 °C"} + hot_bath +
             Script{"close bath tap", "unplug heater", "take cover off", "wait 6 min"},
         "A child reached into the open heater: metal at"},
        {"WhoTrustsAnOldInstrument", "tool_unchecked", with([](Job& job) {
             job.kit.visited_on = "2026-11-25";
             job.kit.of(Instrument::thermometer).calibrated_on = "2024-05-02";
             job.kit.of(Instrument::thermometer).off_by = 4.0;
         }),
         Script{"look at thermometer", "take spare thermometer"} + hot_bath +
             Script{"measure temperature at bath tap"},
         hot_bath + Script{"measure temperature at bath tap"}, "past the date on its label"},
        {"WhoComesAfterYou",
         "no_record",
         test_job(),
         {"look at display", "write cause no_fault", "write because #1", "write done looked",
          "write told all", "hand in"},
         {"look at display", "hand in"},
         "The record is not complete"},
        {"CustomerWhoWasNotTold",
         "not_told",
         test_job(),
         {"tell customer all", "hand in"},
         {"hand in"},
         "The customer was not told"},
        {"WhoFindsAShutHeater",
         "walked_off",
         test_job(),
         {"shut gas at heater", "tag heater", "issue unsafe notice", "hand in"},
         {"shut gas at heater", "tag heater", "hand in"},
         "without a notice or a report"},
    };
}

std::vector<Danger> every_danger() {
    std::vector<Danger> all = of_current();
    for (auto& group : {of_gas(), of_fire_and_fumes(), of_water_and_places()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

class EachDanger : public testing::TestWithParam<Danger> {};

TEST_P(EachDanger, EndsDifferentlyWhereThePrecautionIsSkipped) {
    const Danger& danger = GetParam();
    Attempt careful(danger.job, 7, Mode::assessed), careless(danger.job, 7, Mode::assessed);
    ASSERT_EQ(play(careful, danger.taken), "");
    const auto refused = play(careless, danger.skipped);
    EXPECT_TRUE(refused.empty() || careless.over()) << refused;
    const std::string good = record_of(careful, danger.rule);
    const std::string bad = record_of(careless, danger.rule);
    EXPECT_FALSE(broke(careful, danger.rule)) << good;
    EXPECT_TRUE(broke(careless, danger.rule)) << bad;
    EXPECT_NE(bad.find(danger.recorded), std::string::npos) << bad;
    EXPECT_EQ(good.find(danger.recorded), std::string::npos) << good;
}

INSTANTIATE_TEST_SUITE_P(Site, EachDanger, testing::ValuesIn(every_danger()),
                         [](const auto& i) { return std::string(i.param.endangers); });

TEST(EveryRule, HasItsRowHereOrItsOwnTest) {
    // Rules with tests of their own in safety, consent, scope, doses and delivery tests.
    const std::vector<std::string> elsewhere{
        "not_proved_dead", "cover_off_live",  "tested_live",    "amps_across_supply",
        "live_pipe",       "fuse_oversized",  "left_live",      "flash",
        "gas_left_open",   "no_leak_test",    "hard_light_up",  "no_gloves",
        "no_glasses",      "cylinder_warmed", "out_of_scope",   "unsupervised",
        "co_ceiling",      "co_poisoning",    "burnt",          "no_consent",
        "delivery_limit",  "set_hot",         "cover_left_off", "tools_left",
        "sensor_left_out", "services_off"};
    for (const auto& row : rules()) {
        bool found = false;
        for (const auto& word : elsewhere) found = found || row.word == word;
        for (const auto& danger : every_danger()) found = found || row.word == danger.rule;
        EXPECT_TRUE(found) << row.word;
    }
}

}  // namespace
}  // namespace emberpath::worksite
