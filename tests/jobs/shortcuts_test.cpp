// Proves that a short cut of a shipped job really seems to work while the trainee is there, and bites in the plant: in
// the day after, as its lines tell, or as a dose while the work is done.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <string_view>

#include "sim/scenario/scenario.hpp"
#include "sim/worksite/attempt.hpp"

namespace emberpath {
namespace {

namespace fs = std::filesystem;
using Script = std::vector<std::string>;

const fs::path root = EMBERPATH_SOURCE_DIR;
using worksite::Quantity;

Script operator+(Script one, const Script& other) {
    one.insert(one.end(), other.begin(), other.end());
    return one;
}

struct ShortCut {
    const char* name;
    const char* job;
    Script
        at_first;  // takes the reading that shows what is wrong; empty where nothing does at first
    Script taken;  // takes the same reading, which now looks well
    Quantity reading;
    double well_from, well_to;  // SI
    const char* bites;          // words of the day after
    std::uint64_t seed = 1;     // decides which joints weep
};
void PrintTo(const ShortCut& one, std::ostream* out) {
    *out << one.name;
}

const Script isolate{"switch power off", "unplug heater", "lock off plug", "put on gloves",
                     "take cover off",   "prove tester",  "test for dead", "prove tester"};
const Script restore{"refit cover", "unlock plug", "plug in heater", "switch power on",
                     "wait 10 s"};
const Script restart{"press list", "press list", "press list",
                     "press take", "press take", "wait 90 s"};
constexpr double celsius = 273.15;
constexpr double hot = celsius + 48.0, hotter = celsius + 60.0;
constexpr double litres_a_minute(double litres) {
    return litres / 60.0e3;
}

Script draw(const std::string& tap) {
    return {"open " + tap, "wait 2 min", "measure temperature at " + tap};
}

/// Two of each group of the trade: gas, cylinders, air and flue, ignition and flame, water, sensors, controller and
/// settings, electricity, combined, no fault and use.
std::vector<ShortCut> of_gas_air_and_flame() {
    const Script bath = draw("bath tap"), kitchen = draw("kitchen tap");
    const Script up{"raise supply regulator", "raise supply regulator"};
    const Script again{"wait 60 s", "measure temperature at bath tap"};
    const auto warm = Quantity::tap_temperature;
    const char* pressure = "an open burner takes";
    constexpr std::uint64_t joint_weeps =
        20;  // a seed whose first joint is one of the one in eight
    const Script pressure_read{"shut gas at heater",     "open test point inlet",
                               "zero manometer",         "attach manometer to inlet",
                               "open gas at heater",     "read manometer",
                               "shut gas at heater",     "take manometer off",
                               "close test point inlet", "open gas at heater"};
    const Script analysed{"switch on analyser", "wait 60 s",  "put probe in flue",
                          "open bath tap",      "wait 2 min", "read analyser"};
    return {
        {"RegulatorRaisedForAThinPipe", "sorrel", bath, up + up + again, warm, hot, hotter,
         pressure},
        {"RegulatorRaisedForAWeakSupply", "heron", bath, up + again, warm, hot, hotter, pressure},
        {"HotWaterOverTheCylinder", "quarry", bath,
         Script{"close bath tap", "warm cylinder", "wait 5 min", "press reset"} + kitchen, warm,
         hot, hotter, " cold"},
        {"RegulatorRaisedAtTheCylinder", "sedge", bath, up + again, warm, hot, hotter, pressure},
        {"ResetOnAWindyDay", "harrier", kitchen,
         Script{"close kitchen tap", "press reset"} + kitchen, warm, hot, hotter,
         "The heater locked out"},
        {"ResetAndWashedHandsUnderABlockedFlue", "linnet", bath,
         Script{"close bath tap", "press reset"} + draw("basin tap"), warm, hot, hotter,
         "The heater locked out"},
        {"PressureMeasuredAndTheJointNotTested",
         "heron",
         {},
         pressure_read,
         Quantity::gas_inlet_pressure,
         1500.0,
         2600.0,
         "Gas escaped: ",
         joint_weeps},
        {"HeightStoredForAFlameThatIsSetTooHigh", "basalt", analysed,
         Script{"close bath tap"} + isolate +
             Script{"unlock plug", "plug in heater", "switch power on", "wait 10 s",
                    "open service readout", "change altitude setting to 1800 m", "refit cover",
                    "open bath tap", "wait 2 min", "read analyser"},
         Quantity::flue_co, 0.0, 100.0e-6, "The flue gas had a CO/CO2 of up to"},
        {"ResetOnADryMorning", "sundew", kitchen,
         Script{"close kitchen tap", "press reset"} + kitchen, warm, hot, hotter,
         "The heater locked out"},
    };
}

std::vector<ShortCut> of_water_and_sensors() {
    const Script bath = draw("bath tap"), kitchen = draw("kitchen tap");
    const Script flow{"measure flow at bath tap"};
    const auto warm = Quantity::tap_temperature;
    const Script without_screen{"close bath tap", "shut water at heater", "drain heater",
                                "leave inlet strainer out", "open water at heater"};
    return {
        {"InletWithoutItsScreen", "teasel", bath + flow, without_screen + bath + flow,
         Quantity::tap_flow, litres_a_minute(12.0), litres_a_minute(20.0), "not hot enough"},
        {"FlowSensorOfAnotherCount", "pumice", draw("upstairs shower"),
         Script{"close upstairs shower"} + isolate +
             Script{"shut water at heater", "drain heater", "fit flow sensor of another count",
                    "open water at heater"} +
             restore + draw("upstairs shower"),
         warm, hot, hotter, "of a burn"},
        {"AnotherTapRunBesideADeadShower",
         "pumice",
         draw("upstairs shower"),
         {"open kitchen tap", "wait 2 min", "measure temperature at upstairs shower"},
         warm,
         hot,
         hotter,
         " cold"},
        {"SetLowerForASensorThatReadsLow",
         "fennel",
         kitchen,
         {"set temperature to 43 °C", "wait 60 s", "measure temperature at kitchen tap"},
         warm,
         celsius + 48.0,
         celsius + 52.0,
         "% of a burn"},
        {"SetLowerForASensorThatOpensWarm", "avocet", kitchen,
         Script{"close kitchen tap", "wait 5 min", "set temperature to 44 °C", "press reset"} +
             kitchen,
         warm, celsius + 42.0, celsius + 46.0, "The heater locked out"},
    };
}

std::vector<ShortCut> of_control_and_current() {
    const Script kitchen = draw("kitchen tap"), bath = draw("bath tap");
    const auto warm = Quantity::tap_temperature;
    const Script bridge = isolate + Script{"bridge limiter"} + restore + restart + kitchen;
    return {
        {"SetLowerForTheBoyAndNobodyTold",
         "lupin",
         draw("basin tap"),
         {"set temperature to 50 °C", "wait 60 s", "measure temperature at basin tap"},
         warm,
         celsius + 47.0,
         celsius + 53.0,
         "found it set lower than they had it and set it back"},
        {"KitchenTurnedDownForTheBathroom",
         "plover",
         draw("shower"),
         {"set kitchen controller to 41 °C", "wait 60 s", "measure temperature at shower"},
         warm,
         celsius + 39.0,
         celsius + 43.0,
         "% of a burn"},
        {"LimiterBridgedOverAWrongSetting", "marigold", kitchen,
         Script{"close kitchen tap"} + bridge, warm, hot, hotter, "% of a burn"},
        {"OutletWithoutASafetySwitch", "willow", kitchen,
         Script{"close kitchen tap", "use outlet without safety switch", "close safety switch",
                "press reset"} +
             kitchen,
         warm, hot, hotter, "leaked to earth, and no safety switch opened"},
        {"LimiterBridgedOverScale", "rowan", kitchen, Script{"close kitchen tap"} + bridge, warm,
         hot, hotter, "it was bridged and stopped nothing"},
        {"RegulatorRaisedForTheSecondOfTwoCauses", "clover", kitchen,
         Script{"close kitchen tap"} + isolate + Script{"replace outlet sensor"} + restore +
             Script{"press reset", "raise supply regulator", "raise supply regulator",
                    "raise supply regulator", "raise supply regulator"} +
             draw("bath tap"),
         warm, hot, hotter, "an open burner takes"},
        {"HeaterTurnedUpForATiredTemperingValve",
         "osier",
         bath,
         {"set temperature to 60 °C", "wait 60 s", "measure temperature at bath tap"},
         warm,
         celsius + 45.0,
         hotter,
         "Water of 6"},
        {"TemperingValveBypassed", "osier", bath,
         Script{"close bath tap", "shut water at heater", "drain heater", "put on gloves",
                "fit bridging conductor", "bypass tempering valve", "take bridging conductor off",
                "open water at heater"} +
             bath,
         warm, celsius + 46.0, hotter, " at the shower: a hand held in it for five seconds"},
        {"SetLowerForTwoShowers",
         "juniper",
         {"open upstairs shower", "open downstairs shower", "wait 2 min",
          "measure flow at upstairs shower"},
         {"set temperature to 40 °C", "wait 2 min", "measure flow at upstairs shower"},
         Quantity::tap_flow,
         litres_a_minute(6.5),
         litres_a_minute(20.0),
         "found it set lower than they had it and set it back"},
    };
}

std::vector<ShortCut> short_cuts() {
    std::vector<ShortCut> all = of_gas_air_and_flame();
    for (const auto& group : {of_water_and_sensors(), of_control_and_current()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

class EachShortCut : public testing::TestWithParam<ShortCut> {};

double last_reading(const worksite::Attempt& attempt, Quantity quantity) {
    const auto& log = attempt.log();
    for (auto entry = log.rbegin(); entry != log.rend(); ++entry)
        for (const auto& seen : entry->observations)
            if (seen.quantity == quantity) return seen.value;
    ADD_FAILURE() << "nothing read";
    return 0.0;
}

void play(worksite::Attempt& attempt, const Script& acts) {
    for (const auto& act : acts) {
        const auto outcome = attempt.perform(act);
        ASSERT_NE(outcome.entry, nullptr) << act << ": " << outcome.refusal.text;
    }
}

bool bitten(const worksite::Attempt& attempt, const std::string& by) {
    for (const auto& line : attempt.day_after().lines)
        if (line.find(by) != std::string::npos) return true;
    return false;
}

worksite::Job job_of(const ShortCut& one) {
    const auto loaded = scenario::load(root / "scenarios/jobs" / (std::string(one.job) + ".toml"));
    EXPECT_TRUE(loaded.good());
    return loaded.job;
}

TEST_P(EachShortCut, SeemsToWorkAndBites) {
    const ShortCut& one = GetParam();
    worksite::Attempt attempt(job_of(one), one.seed, worksite::Mode::assessed);
    play(attempt, one.at_first);
    if (!one.at_first.empty()) {
        const double seen = last_reading(attempt, one.reading);
        EXPECT_TRUE(seen < one.well_from || seen > one.well_to) << seen << " looks well already";
    }
    play(attempt, one.taken);
    const double seen = last_reading(attempt, one.reading);
    EXPECT_GE(seen, one.well_from);
    EXPECT_LE(seen, one.well_to);
    play(attempt, {"hand in"});
    EXPECT_FALSE(attempt.truth().remaining.empty()) << "the cause is still there";
    EXPECT_TRUE(bitten(attempt, one.bites)) << testing::PrintToString(attempt.day_after().lines);
}

bool bubbles_at_inlet(const worksite::Attempt& attempt) {
    const auto& shown = attempt.log().back().shown;
    return std::find(shown.begin(), shown.end(), "Bubbles at the inlet test point.") != shown.end();
}

/// As somebody does who looks at what the fluid shows: where it bubbles, the joint is made again and tested again.
void play_mending(worksite::Attempt& attempt, const Script& acts) {
    constexpr int most_tries = 4;
    for (const auto& act : acts) {
        play(attempt, {act});
        for (int i = 0; i < most_tries && bubbles_at_inlet(attempt); ++i)
            play(attempt, {"shut gas at heater", "remake joint inlet", "open gas at heater",
                           "leak test with fluid"});
    }
}

/// The words are those of the short cut: whoever does the job well is not told them, with the same joints weeping.
TEST_P(EachShortCut, BitesNobodyAfterTheGoodPathOfTheSameJob) {
    const ShortCut& one = GetParam();
    worksite::Attempt attempt(job_of(one), one.seed, worksite::Mode::assessed);
    Script acts;
    std::ifstream in(root / "tests/jobs/paths" / (std::string(one.job) + ".good.acts"));
    for (std::string line; std::getline(in, line);)
        if (!line.empty() && line.front() != '#') acts.push_back(line);
    play_mending(attempt, acts);
    ASSERT_TRUE(attempt.over());
    EXPECT_FALSE(bitten(attempt, one.bites)) << testing::PrintToString(attempt.day_after().lines);
}

/// Where the fault alone does not bite so, the short cut is what does.
class ShortCutThatDoesHarmItself : public testing::TestWithParam<ShortCut> {};

TEST_P(ShortCutThatDoesHarmItself, BitesNobodyWhereTheHouseWasLeftAsItWasFound) {
    const ShortCut& one = GetParam();
    worksite::Attempt attempt(job_of(one), one.seed, worksite::Mode::assessed);
    play(attempt, {"hand in"});
    EXPECT_FALSE(bitten(attempt, one.bites)) << testing::PrintToString(attempt.day_after().lines);
}

std::vector<ShortCut> harmful_themselves() {
    constexpr std::array<std::string_view, 8> jobs{"clover", "sorrel",  "heron", "sedge",
                                                   "willow", "juniper", "rowan", "lupin"};
    constexpr std::array<std::string_view, 2> names{"FlowSensorOfAnotherCount",
                                                    "TemperingValveBypassed"};
    std::vector<ShortCut> all;
    for (const ShortCut& one : short_cuts())
        if (std::find(jobs.begin(), jobs.end(), one.job) != jobs.end() ||
            std::find(names.begin(), names.end(), one.name) != names.end())
            all.push_back(one);
    return all;
}

/// The panel goes dark, so the switch seems to have done it; where the conductors are swapped it broke the neutral.
TEST(ShortCutOfASwitchThatIsTrusted, SeemsToWorkAndBitesAtTheTerminals) {
    const auto file = fs::path(EMBERPATH_SOURCE_DIR) / "scenarios/jobs/flint.toml";
    worksite::Attempt attempt(scenario::load(file).job, 1, worksite::Mode::assessed);
    play(attempt, {"switch power off", "look at display"});
    const auto shown = attempt.log().back().shown;
    EXPECT_NE(testing::PrintToString(shown).find("dark"), std::string::npos)
        << testing::PrintToString(shown);
    (void)attempt.perform("take cover off");
    (void)attempt.perform("unplug outlet sensor");
    EXPECT_TRUE(attempt.over());
    const auto& breaches = attempt.breaches();
    EXPECT_TRUE(std::any_of(breaches.begin(), breaches.end(), [](const auto& one) {
        return one.text.find("mA from hand to hand") != std::string::npos;
    }));
}

std::string name_of(const testing::TestParamInfo<ShortCut>& one) {
    return one.param.name;
}
INSTANTIATE_TEST_SUITE_P(Jobs, EachShortCut, testing::ValuesIn(short_cuts()), name_of);
INSTANTIATE_TEST_SUITE_P(Jobs, ShortCutThatDoesHarmItself, testing::ValuesIn(harmful_themselves()),
                         name_of);

}  // namespace
}  // namespace emberpath
