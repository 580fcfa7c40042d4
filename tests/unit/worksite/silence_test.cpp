// Proves that nothing shown tells a hidden cause: two houses that look the same so far show the same bytes,
// and no shown line names a cause.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "sim/worksite/acts.hpp"
#include "tests/unit/worksite/house.hpp"

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

/// The manometer of the script stands at the inlet, where a creeping regulator shows without a draw.
bool shows_at_rest(Cause cause) {
    return cause == Cause::regulator_creeps;
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
                         "shut gas at heater",
                         "open test point inlet",
                         "attach manometer to inlet",
                         "open gas at heater",
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
