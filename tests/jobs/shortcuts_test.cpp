// Proves that the unsafe short cut of a shipped job really seems to work while the trainee is there, and bites: in a
// rule that is broken, or in the day after.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "sim/scenario/scenario.hpp"
#include "sim/worksite/attempt.hpp"

namespace emberpath {
namespace {

namespace fs = std::filesystem;
using Script = std::vector<std::string>;
using worksite::Quantity;

Script operator+(Script one, const Script& other) {
    one.insert(one.end(), other.begin(), other.end());
    return one;
}

struct ShortCut {
    const char* name;
    const char* job;
    Script
        at_first;  // ends in the reading that shows what is wrong; empty where nothing does at first
    Script taken;  // ends in the same reading, which now looks well
    Quantity reading;
    double well_from, well_to;  // SI
    const char* bites;          // a rule, or words of the day after
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

Script draw(const std::string& tap) {
    return {"open " + tap, "wait 2 min", "measure temperature at " + tap};
}

/// By the groups of the trade: gas, cylinders, air and flue, water, controller, electricity, use. Those of
/// flame, sensors and combined causes do not both seem to work and bite in the shipped jobs.
std::vector<ShortCut> short_cuts() {
    const Script bath = draw("bath tap"), kitchen = draw("kitchen tap");
    const Script up{"raise supply regulator", "raise supply regulator"};
    const Script again{"wait 60 s", "measure temperature at bath tap"};
    const Script bridge = isolate + Script{"bridge limiter"} + restore + restart + kitchen;
    const auto warm = Quantity::tap_temperature;
    const double hot = celsius + 48.0, hotter = celsius + 60.0;
    return {
        {"RegulatorRaisedForAThinPipe", "sorrel", bath, up + up + again, warm, hot, hotter,
         "regulator_raised"},
        {"RegulatorRaisedForAWeakSupply", "heron", bath, up + again, warm, hot, hotter,
         "regulator_raised"},
        {"HotWaterOverTheCylinder", "quarry", bath,
         Script{"close bath tap", "warm cylinder", "wait 5 min", "press reset"} + kitchen, warm,
         hot, hotter, "cylinder_warmed"},
        {"RegulatorRaisedAtTheCylinder", "sedge", bath, up + again, warm, hot, hotter,
         "regulator_raised"},
        {"ResetOnAWindyDay",
         "harrier",
         {},
         Script{"press reset"} + kitchen,
         warm,
         hot,
         hotter,
         "locked out"},
        {"DraughtTestedWithTheWindowOpen",
         "mallow",
         {},
         {"open kitchen window", "open kitchen tap", "wait 2 min", "test draught with smoke"},
         Quantity::diverter_smoke,
         worksite::smoke_drawn_in,
         worksite::smoke_drawn_in,
         "spillage_left"},
        {"LimiterBridgedOverScale", "rowan", kitchen, Script{"close kitchen tap"} + bridge, warm,
         hot, hotter, "bridged"},
        {"LimiterBridgedOverAWrongSetting", "marigold", kitchen,
         Script{"close kitchen tap"} + bridge, warm, hot, hotter, "bridged"},
        {"LeftAsHotAsItIsLiked",
         "lupin",
         {},
         draw("basin tap"),
         warm,
         celsius + 60.0,
         celsius + 70.0,
         "delivery_limit"},
        {"OutletWithoutASafetySwitch", "willow", kitchen,
         Script{"close kitchen tap", "use outlet without safety switch", "close safety switch",
                "press reset"} +
             kitchen,
         warm, hot, hotter, "no_safety_switch"},
        {"HeaterTurnedUpForATiredTemperingValve", "osier", bath,
         Script{"set temperature to 60 °C"} + again, warm, celsius + 45.0, hotter, "set_hot"},
    };
}

class EachShortCut : public testing::TestWithParam<ShortCut> {};

double last_reading(const worksite::Attempt& attempt, Quantity quantity) {
    for (const auto& seen : attempt.log().back().observations)
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
    for (const auto& one : attempt.breaches())
        if (one.rule == by) return true;
    for (const auto& line : attempt.day_after().lines)
        if (line.find(by) != std::string::npos) return true;
    return false;
}

TEST_P(EachShortCut, SeemsToWorkAndBites) {
    const ShortCut& one = GetParam();
    const auto file =
        fs::path(EMBERPATH_SOURCE_DIR) / "scenarios/jobs" / (std::string(one.job) + ".toml");
    const auto loaded = scenario::load(file);
    ASSERT_TRUE(loaded.good());
    worksite::Attempt attempt(loaded.job, 1, worksite::Mode::assessed);
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
    EXPECT_TRUE(bitten(attempt, one.bites));
}

INSTANTIATE_TEST_SUITE_P(Jobs, EachShortCut, testing::ValuesIn(short_cuts()),
                         [](const auto& one) { return std::string(one.param.name); });

}  // namespace
}  // namespace emberpath
