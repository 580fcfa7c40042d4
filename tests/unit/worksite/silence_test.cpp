// Proves that nothing shown tells a hidden cause: two houses that look the same so far show the same bytes,
// and no shown line names a cause.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "sim/worksite/acts.hpp"
#include "tests/unit/worksite/house.hpp"
#include "tests/unit/worksite/observed.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;
using Script = std::vector<std::string>;

/// Everything that two heaters locked out at light-up have in common: no look at spark, flame or tip.
const Script common_ground{"ask about problem",
                           "ask about when",
                           "ask about painter",
                           "look at display",
                           "look at room",
                           "look at power point",
                           "look at gas pipe run",
                           "look at heater",
                           "look at flue terminal",
                           "look at kitchen tap",
                           "open service readout",
                           "read readout event",
                           "read readout flow",
                           "read readout flame current",
                           "open bath tap",
                           "wait 20 s",
                           "measure temperature at bath tap",
                           "measure flow at bath tap",
                           "close bath tap",
                           "press reset",
                           "wait 30 s",
                           "look at display",
                           "shut gas at heater",
                           "open test point inlet",
                           "zero manometer",
                           "attach manometer to inlet",
                           "open gas at heater",
                           "read manometer",
                           "shut gas at heater",
                           "take manometer off",
                           "close test point inlet",
                           "switch power off",
                           "unplug heater",
                           "lock off plug",
                           "take cover off",
                           "prove tester",
                           "test for dead",
                           "prove tester",
                           "put on gloves",
                           "unplug outlet sensor",
                           "attach multimeter to outlet sensor",
                           "read multimeter",
                           "take multimeter off",
                           "plug in outlet sensor",
                           "look at heat exchanger fins",
                           "replace outlet sensor",
                           "clean heat exchanger",
                           "fit wind guard",
                           "clear flue terminal",
                           "quote larger gas pipe",
                           "escalate regulator to distributor",
                           "explain to customer",
                           "look at multimeter",
                           "check thermometer",
                           "check multimeter",
                           "compare thermometer with spare",
                           "compare manometer with spare",
                           "compare multimeter with spare",
                           "take spare thermometer",
                           "check thermometer",
                           "look around heater",
                           "keep people away",
                           "air the place",
                           "say where you go",
                           "check ladder",
                           "decline climb",
                           "check low places",
                           "shut water at heater",
                           "drain heater",
                           "replace flow sensor",
                           "replace water valve",
                           "open water at heater",
                           "use outlet without safety switch",
                           "use own outlet",
                           "refit cover",
                           "suspect igniter_failed",
                           "doubt electrode_fouled",
                           "tell customer what I did"};

std::string shown_in(const Attempt& attempt) {
    std::string text;
    for (const auto& entry : attempt.log())
        for (const auto& line : entry.shown) text += line + "\n";
    return text;
}

/// A panel without supply is seen by anybody, at rest as well.
bool darkens_the_panel(Cause cause) {
    return cause == Cause::moisture_in_heater || cause == Cause::supply_sags ||
           cause == Cause::pinhole_inside;
}

/// The manometer of the script stands at the inlet, where a creeping regulator shows without a draw; gas that
/// weeps from a union shows there and on the detector.
bool shows_at_rest(Cause cause) {
    return cause == Cause::regulator_creeps || cause == Cause::gas_union_weeps;
}

TEST(Silence, HousesThatLookTheSameShowTheSameBytes) {
    // After two light-up attempts without a flame, both are locked out with the same word.
    for (const auto mode : {Mode::coached, Mode::assessed}) {
        Attempt igniter(test_job({fault(Cause::igniter_failed)}), 5, mode);
        auto late = fault(Cause::igniter_failed, 1.0);
        Job other = test_job({late});
        other.faults.push_back(fault(Cause::electrode_fouled, 1.0));
        Attempt both(other, 5, mode);
        for (const auto& sentence : common_ground) {
            const auto one = igniter.perform(sentence);
            const auto two = both.perform(sentence);
            ASSERT_EQ(one.refusal.text, two.refusal.text);
            ASSERT_TRUE(one.entry != nullptr) << sentence << ": " << one.refusal.text;
            EXPECT_EQ(one.entry->shown, two.entry->shown) << sentence;
            EXPECT_EQ(one.entry->end_tick, two.entry->end_tick);
        }
    }
}

/// At rest, before anybody has drawn water, causes that put the same word on the display cannot be told
/// apart, and most show none.
TEST(Silence, HousesAtRestThatShowTheSameWordShowTheSameBytes) {
    const Script at_rest{"ask about problem",
                         "look at display",
                         "look at room",
                         "look at heater",
                         "look at gas pipe run",
                         "look at power point",
                         "open service readout",
                         "read readout flow",
                         "read readout event",
                         "read readout fan speed",
                         "look at multimeter",
                         "check multimeter",
                         "check clamp meter",
                         "check gas detector",
                         "compare analyser with spare",
                         "look around heater",
                         "check low places",
                         "read gas detector",
                         "shut gas at heater",
                         "open test point inlet",
                         "attach manometer to inlet",
                         "open gas at heater",
                         "purge gas pipe",
                         "read manometer",
                         "listen",
                         "look at burner window",
                         "wait 5 min",
                         "measure temperature of inlet pipe",
                         "switch on analyser",
                         "wait 1 min",
                         "put probe in flue",
                         "read analyser",
                         "read room air",
                         "watch display for 30 s",
                         "wait until something changes at most 30 s"};
    std::map<std::string, std::string> first;
    std::map<std::string, int> houses;
    for (const auto& cause : faults::catalogue()) {
        if (cause.cylinder_only || darkens_the_panel(cause.cause) || shows_at_rest(cause.cause))
            continue;
        Job job = test_job({fault(cause.cause, cause.greatest_severity)});
        job.site.events.clear();
        Attempt attempt(job, 5, Mode::coached);
        ASSERT_EQ(play(attempt, at_rest), "");
        const auto& looked = attempt.log()[1].shown;
        ASSERT_FALSE(looked.empty());
        const std::string shown = all_shown(attempt);
        EXPECT_EQ(shown, first.emplace(looked.front(), shown).first->second) << cause.word;
        ++houses[looked.front()];
    }
    const auto most =
        std::max_element(houses.begin(), houses.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    EXPECT_NE(most->first.find("REST"), std::string::npos) << most->first;
}

/// A whole visit: what is at rest, a draw, the wiring, the water side, the kit and the dangers of the house.
const Script whole_visit{"ask about problem",
                         "look around heater",
                         "look at display",
                         "press list",
                         "press list",
                         "open service readout",
                         "read readout all",
                         "read event history",
                         "look at switchboard",
                         "test safety switch",
                         "look at burner window",
                         "read gas detector",
                         "check low places",
                         "look at analyser",
                         "check multimeter",
                         "compare thermometer with spare",
                         "clamp whole lead",
                         "measure volts between socket active and socket neutral",
                         "measure volts between socket neutral and socket earth",
                         "leak test with fluid",
                         "open kitchen tap",
                         "watch burner window for 10 s",
                         "listen",
                         "wait 40 s",
                         "look at display",
                         "measure temperature at kitchen tap",
                         "measure flow at kitchen tap",
                         "measure temperature of inlet pipe",
                         "take spare thermometer",
                         "measure temperature at kitchen tap",
                         "read readout all",
                         "close kitchen tap",
                         "press reset",
                         "wait 2 min",
                         "ask customer for consent",
                         "keep people away",
                         "switch power off",
                         "unplug heater",
                         "lock off plug",
                         "take cover off",
                         "prove tester",
                         "test for dead",
                         "prove tester",
                         "put on gloves",
                         "look at flame electrode",
                         "look at heat exchanger fins",
                         "look at board fuse",
                         "measure ohms between valve lead and low-voltage common",
                         "measure ohms between casing and earth bar",
                         "test insulation between heater active and casing",
                         "unplug inlet sensor",
                         "attach multimeter to inlet sensor",
                         "read multimeter",
                         "take multimeter off",
                         "plug in inlet sensor",
                         "shut water at heater",
                         "drain heater",
                         "clean inlet strainer",
                         "open water at heater",
                         "shut gas at meter",
                         "open test point regulator",
                         "close test point regulator",
                         "open gas at meter",
                         "purge gas pipe",
                         "leak test with fluid",
                         "refit cover",
                         "unlock plug",
                         "plug in heater",
                         "switch power on",
                         "tell customer what I saw"};

/// What has been observed so far, and what was said beside it.
struct SoFar {
    std::string observed, said;
    void add(const Attempt::Outcome& outcome) {
        if (outcome.entry == nullptr) {
            observed += outcome.refusal.text + "\n";  // a dark panel refuses in words
            return;
        }
        for (const auto& line : outcome.entry->shown)
            (line.starts_with("#") || is_sensed(line) ? observed : said) += line + "\n";
    }
};

TEST(Silence, TheSameObservationsSoFarMeanTheSameWordsUnderEveryPairOfCauses) {
    std::vector<std::map<std::string, std::string>> said_after(whole_visit.size());
    std::size_t pairs = 0;
    for (const auto& cause : faults::catalogue()) {
        if (cause.cylinder_only) continue;
        Attempt attempt(test_job({fault(cause.cause, cause.greatest_severity)}), 5, Mode::coached);
        SoFar so_far;
        for (std::size_t i = 0; i < whole_visit.size(); ++i) {
            so_far.add(attempt.perform(whole_visit[i]));
            const auto [first, fresh] = said_after[i].emplace(so_far.observed, so_far.said);
            EXPECT_EQ(first->second, so_far.said) << cause.word << ": " << whole_visit[i];
            if (!fresh) ++pairs;
        }
    }
    EXPECT_GT(pairs, 400U) << "causes that cannot be told apart yet";
    EXPECT_GT(said_after.back().size(), 20U) << "and in the end most can";
}

TEST(Silence, RefusalsAreTheSameUnderEveryCause) {
    const Job sound = test_job();
    std::vector<std::string> told;
    for (const auto& cause : faults::catalogue()) {
        if (cause.cylinder_only || darkens_the_panel(cause.cause)) continue;
        Attempt attempt(test_job({fault(cause.cause, cause.greatest_severity)}), 5, Mode::assessed);
        std::string all;
        for (const auto& sentence : all_sentences(sound))
            all += attempt.check(sentence).text + "\n";
        told.push_back(all);
    }
    for (const auto& one : told) EXPECT_EQ(one, told.front());
}

TEST(Silence, NoLineNamesACause) {
    for (const auto& cause : faults::catalogue()) {
        const std::vector faults{fault(cause.cause, cause.greatest_severity)};
        Attempt attempt(cause.cylinder_only ? cylinder_job(faults) : test_job(faults), 5,
                        Mode::coached);
        for (const auto& sentence : common_ground) (void)attempt.perform(sentence);
        (void)attempt.perform("hand in");
        const auto shown = shown_in(attempt);
        for (const auto& any : faults::catalogue()) {
            EXPECT_EQ(shown.find(any.word), std::string::npos) << any.word;
            EXPECT_EQ(shown.find(any.title), std::string::npos) << any.title;
        }
    }
}

}  // namespace
}  // namespace emberpath::worksite
