// Proves that the display has one distinct four-letter word for every state and event, that docs/display.md
// lists exactly these, and that the readout decodes sensors by the beta formula.

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>
#include <string>

#include "tests/unit/controller/bench.hpp"

namespace emberpath::controller {
namespace {

TEST(DisplayWords, AreFourCapitalsWithAVowelAndAllDifferent) {
    std::set<std::string_view> seen;
    EXPECT_EQ(display_word_at(0), "    ");
    for (std::size_t i = 1; i < display_word_count; ++i) {
        const std::string_view word = display_word_at(i);
        EXPECT_EQ(word.size(), 4u);
        EXPECT_TRUE(std::all_of(word.begin(), word.end(), [](char c) {
            return c >= 'A' && c <= 'Z';
        })) << word;
        EXPECT_NE(word.find_first_of("AEIOU"), std::string_view::npos) << word;
        EXPECT_TRUE(seen.insert(word).second) << word;
        EXPECT_EQ(display_index(word), i);
    }
}

TEST(DisplayWords, EveryPhaseAndEveryEventHasItsOwn) {
    std::set<std::string_view> shown;
    const Panel panel;
    Readout r{};
    for (const Phase phase : {Phase::standby, Phase::pre_purge, Phase::light_up, Phase::run,
                              Phase::post_purge, Phase::restart}) {
        r.phase = phase;
        EXPECT_TRUE(shown.insert(display_word(r, panel)).second);
    }
    r.phase = Phase::lockout;
    for (std::size_t e = 1; e < event_count; ++e) {
        r.event = static_cast<Event>(e);
        EXPECT_TRUE(shown.insert(display_word(r, panel)).second) << event_name(r.event);
    }
    EXPECT_EQ(shown.size() + 2, display_word_count) << "with the blank and the switched-off word";
}

TEST(DisplayWords, ProvingLooksLikeLightingToTheHousehold) {
    Readout r{};
    r.phase = Phase::light_up;
    const auto lighting = display_word(r, Panel{});
    r.phase = Phase::prove;
    EXPECT_EQ(display_word(r, Panel{}), lighting);
}

TEST(DisplayWords, BlankWithoutPowerAndALockoutOutlivesTheSwitch) {
    Readout r{};
    Panel panel;
    r.phase = Phase::standby;
    panel.switched_on = 0.0;
    EXPECT_EQ(display_word(r, panel), "SHUT");
    r.phase = Phase::lockout;
    r.event = Event::flame_lost;
    EXPECT_EQ(display_word(r, panel), "FADE");
    panel.powered = 0.0;
    EXPECT_EQ(display_word(r, panel), "    ");
}

TEST(DisplayWords, UnknownWordIsRefused) {
    EXPECT_THROW((void)display_index("NOPE"), std::invalid_argument);
    EXPECT_THROW((void)display_word_at(display_word_count), std::out_of_range);
}

TEST(DisplayWords, ManualListsEachWithTheEventsName) {
    std::ifstream file(std::string(EMBERPATH_SOURCE_DIR) + "/docs/display.md");
    ASSERT_TRUE(file) << "docs/display.md";
    std::stringstream text;
    text << file.rdbuf();
    const std::string manual = text.str();
    Readout r{};
    r.phase = Phase::lockout;
    for (std::size_t e = 1; e < event_count; ++e) {
        r.event = static_cast<Event>(e);
        const std::string row = "| " + std::string(display_word(r, Panel{})) + " | " +
                                std::string(event_name(r.event)) + " |";
        EXPECT_NE(manual.find(row), std::string::npos) << row;
    }
    for (std::size_t i = 1; i < display_word_count; ++i)
        EXPECT_NE(manual.find("| " + std::string(display_word_at(i)) + " |"), std::string::npos)
            << display_word_at(i);
}

TEST(Readout, DecodesThermistorsWithinAHundredthOfAKelvin) {
    for (const double c : {5.0, 14.0, 25.0, 50.0, 75.0}) {
        Bench bench;
        bench.inlet_c = c;
        bench.tick();
        EXPECT_NEAR(bench.now().inlet_k, c + celsius, 0.01);
    }
    Bench bench;
    bench.inlet_ohm = 15548.0;
    bench.tick();
    EXPECT_NEAR(bench.now().inlet_k, 14.0 + celsius, 0.05);
}

TEST(Readout, NamesEveryPhaseAndEvent) {
    std::set<std::string_view> names;
    for (std::size_t e = 0; e < event_count; ++e)
        EXPECT_TRUE(names.insert(event_name(static_cast<Event>(e))).second);
    for (int p = 0; p <= static_cast<int>(Phase::restart); ++p)
        EXPECT_TRUE(names.insert(phase_name(static_cast<Phase>(p))).second);
}

}  // namespace
}  // namespace emberpath::controller
