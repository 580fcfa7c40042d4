// Proves that standing there shows what instruments, display and ears would give, and changes nothing.
#include "sim/worksite/sight.hpp"

#include <gtest/gtest.h>

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

std::optional<double> figure(const Sight& sight, Quantity quantity) {
    for (const auto& one : sight.figures)
        if (one.quantity == quantity) return one.value;
    return std::nullopt;
}

Attempt with_manometer_at_inlet(std::vector<faults::Fault> faults = {}) {
    Attempt attempt(test_job(std::move(faults)), 3, Mode::coached);
    EXPECT_EQ(play(attempt, {"zero manometer", "shut gas at heater", "open test point inlet",
                             "attach manometer to inlet", "open gas at heater"}),
              "");
    return attempt;
}

TEST(Sight, ShowsNoFigureUntilSomethingIsConnected) {
    const Attempt attempt(test_job(), 1, Mode::coached);
    EXPECT_TRUE(attempt.sight().figures.empty());
}

TEST(Sight, ShowsOnTheManometerWhatIsReadFromItButForTheRepeatError) {
    Attempt attempt = with_manometer_at_inlet();
    attempt.run(50);
    const auto shown = figure(attempt.sight(), Quantity::gas_inlet_pressure);
    ASSERT_TRUE(shown.has_value());
    const auto* entry = attempt.perform("read manometer").entry;
    ASSERT_NE(entry, nullptr);
    EXPECT_NEAR(*shown, entry->observations.front().value, 100.0);
    EXPECT_GT(*shown, 1500.0);
}

TEST(Sight, ShowsAClosedTestPointAsNothing) {
    Attempt attempt(test_job(), 1, Mode::coached);
    EXPECT_EQ(play(attempt, {"zero manometer", "attach manometer to inlet"}), "");
    EXPECT_NEAR(figure(attempt.sight(), Quantity::gas_inlet_pressure).value_or(999.0), 0.0, 30.0);
}

TEST(Sight, ShowsTheReadoutOnlyWhileItIsOpenAndLit) {
    Attempt attempt(test_job(), 1, Mode::coached);
    EXPECT_EQ(play(attempt, {"open service readout"}), "");
    EXPECT_TRUE(figure(attempt.sight(), Quantity::readout_fan).has_value());
    EXPECT_EQ(play(attempt, {"switch power off"}), "");
    EXPECT_FALSE(figure(attempt.sight(), Quantity::readout_fan).has_value());
    EXPECT_FALSE(attempt.sight().panel_lit);
}

TEST(Sight, HearsFanAndFlameOnceWaterRuns) {
    Attempt attempt(test_job(), 1, Mode::coached);
    EXPECT_EQ(attempt.sight().flame_share, 0.0);
    EXPECT_EQ(play(attempt, {"open kitchen tap fully", "wait 20 s"}), "");
    const Sight sight = attempt.sight();
    EXPECT_GT(sight.fan_rev_per_s, 10.0);
    EXPECT_GT(sight.flame_share, 0.0);
    EXPECT_TRUE(sight.water_runs);
    EXPECT_EQ(sight.tap_opening.front(), 1.0);
}

TEST(Sight, ChangesNothing) {
    Attempt looked = with_manometer_at_inlet(), left_alone = with_manometer_at_inlet();
    looked.keep_trail();
    for (int i = 0; i < 20; ++i) {
        (void)looked.sight();
        looked.run(7);
        left_alone.run(7);
    }
    EXPECT_EQ(looked.state_hash(), left_alone.state_hash());
    looked.perform("read manometer");
    left_alone.perform("read manometer");
    EXPECT_EQ(looked.log().back().observations.front().value,
              left_alone.log().back().observations.front().value);
}

TEST(Trail, HasOnePointForEachSecondOfActsAndWaits) {
    Attempt attempt(test_job(), 1, Mode::coached);
    attempt.keep_trail();
    EXPECT_EQ(play(attempt, {"open service readout", "wait 30 s"}), "");
    attempt.run(100);
    EXPECT_EQ(attempt.trail().size(), 50U);
    EXPECT_TRUE(attempt.trail().front().figures.empty());
    EXPECT_FALSE(attempt.trail().back().figures.empty());
}

TEST(Trail, ForgetsTheOldest) {
    Attempt attempt(test_job(), 1, Mode::coached);
    attempt.keep_trail();
    attempt.run(10 * (static_cast<std::int64_t>(longest_trail) + 100));
    EXPECT_EQ(attempt.trail().size(), longest_trail);
    EXPECT_EQ(attempt.trail().back().tick, attempt.tick());
}

/// Gas escapes from an open point until the burner of the cooktop lights it.
Attempt in_danger() {
    Attempt attempt(test_job(), 1, Mode::coached);
    EXPECT_EQ(play(attempt, {"open test point inlet", "turn on cooktop"}), "");
    return attempt;
}

TEST(FreeRunning, ThatEndsTheJobIsKeptAsTheWaitItWas) {
    Attempt attempt = in_danger();
    const LogEntry* entry = nullptr;
    for (int i = 0; i < 20000 && !attempt.over(); ++i) entry = attempt.run(3);
    ASSERT_TRUE(attempt.over());
    ASSERT_NE(entry, nullptr);
    EXPECT_EQ(entry->words, "wait 1 s");
    Attempt again = in_danger();
    again.run(entry->begin_tick - again.tick());
    const auto* replayed = again.perform(entry->words).entry;
    ASSERT_NE(replayed, nullptr);
    EXPECT_EQ(replayed->end_tick, entry->end_tick);
    EXPECT_EQ(replayed->shown, entry->shown);
    EXPECT_EQ(again.state_hash(), attempt.state_hash());
}

}  // namespace
}  // namespace emberpath::worksite
