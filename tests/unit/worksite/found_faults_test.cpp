// Proves that what years and earlier hands have left shows to eyes, ears and leak fluid on site, that setting it
// right clears it, and that a fault which waits for something begins with it.

#include <gtest/gtest.h>

#include <algorithm>
#include <ostream>

#include "sim/worksite/acts.hpp"
#include "sim/worksite/workplace.hpp"
#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;
using Script = std::vector<std::string>;

bool says(const Attempt& attempt, const std::string& words) {
    return all_shown(attempt).find(words) != std::string::npos;
}

const Script leak_test{"leak test with fluid"};
const Script remake{"shut gas at heater", "remake inlet union", "open gas at heater"};

TEST(WeepingUnion, IsFoundByFluidAndSoundOnceRemade) {
    Attempt attempt(test_job({fault(Cause::gas_union_weeps)}), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, leak_test), "");
    EXPECT_TRUE(says(attempt, "Bubbles at the inlet union."));
    ASSERT_EQ(play(attempt, remake + leak_test), "");
    EXPECT_TRUE(attempt.truth().remaining.empty());
    EXPECT_TRUE(says(attempt, "No bubbles."));
    EXPECT_FALSE(broke(attempt, "gas_open"));
}

TEST(WeepingUnion, LosesPressureThatASoundLineHolds) {
    const Script hold{"shut gas at heater",        "open test point inlet", "zero manometer",
                      "attach manometer to inlet", "open gas at heater",    "shut gas at meter",
                      "leak test by pressure hold"};
    Attempt sound(test_job(), 7, Mode::assessed);
    Attempt weeping(test_job({fault(Cause::gas_union_weeps)}), 7, Mode::assessed);
    ASSERT_EQ(play(sound, hold), "");
    ASSERT_EQ(play(weeping, hold), "");
    EXPECT_NE(sound.log().back().shown.front(), weeping.log().back().shown.front());
}

TEST(WeepingUnion, LeftBehindIsALeakLeftBehind) {
    Attempt left(test_job({fault(Cause::gas_union_weeps)}), 7, Mode::assessed);
    ASSERT_EQ(play(left, {"hand in"}), "");
    EXPECT_TRUE(broke(left, "leak_left"));
    Attempt shut(test_job({fault(Cause::gas_union_weeps)}), 7, Mode::assessed);
    ASSERT_EQ(play(shut, {"shut gas at meter", "tag heater", "hand in"}), "");
    EXPECT_FALSE(broke(shut, "leak_left"));
}

struct Look {
    const char* name;
    Cause cause;
    const char* act;
    const char* sound;
    const char* faulty;
    bool inside = false;
};
std::ostream& operator<<(std::ostream& out, const Look& look) {
    return out << look.name;
}

class CloserLook : public testing::TestWithParam<Look> {};

TEST_P(CloserLook, ShowsTheCauseAndNothingInASoundHouse) {
    const Look& look = GetParam();
    const Script opened{"switch power off", "unplug heater", "take cover off"};
    Attempt sound(test_job(), 7, Mode::assessed);
    Attempt faulty(test_job({fault(look.cause)}), 7, Mode::assessed);
    for (Attempt* attempt : {&sound, &faulty}) {
        if (look.inside) {
            ASSERT_EQ(play(*attempt, opened), "");
        }
        ASSERT_EQ(play(*attempt, {look.act}), "");
    }
    EXPECT_TRUE(says(sound, look.sound)) << all_shown(sound);
    EXPECT_TRUE(says(faulty, look.faulty)) << all_shown(faulty);
    EXPECT_FALSE(says(sound, look.faulty));
}

// clang-format off
INSTANTIATE_TEST_SUITE_P(Things, CloserLook, testing::Values(
    Look{"GasValve", Cause::gas_isolator_part_shut, "look at gas valve", "in line with the pipe", "part way"},
    Look{"AirIntake", Cause::intake_felted, "look at air intake", "clear", "felted"},
    Look{"Chamber", Cause::chamber_seam_open, "look at combustion chamber", "clean", "scorched", true},
    Look{"LimiterLeads", Cause::limiter_bridged, "look at limiter leads", "as made", "bridged", true}),
    [](const auto& row) { return row.param.name; });
// clang-format on

TEST(LateLightUp, IsHeardAsAThump) {
    const Script draw{"open bath tap", "listen to light-up"};
    Attempt sound(test_job(), 7, Mode::assessed);
    Attempt late(test_job({fault(Cause::light_up_late, 0.8)}), 7, Mode::assessed);
    ASSERT_EQ(play(sound, draw), "");
    ASSERT_EQ(play(late, draw), "");
    EXPECT_TRUE(says(sound, "soft or none"));
    EXPECT_TRUE(says(late, "a thump"));
}

TEST(InstallerSettings, OfAWrongHeightAreReadAndPutRight) {
    Attempt attempt(test_job({fault(Cause::altitude_setting_wrong, 0.5)}), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"open service readout", "take cover off", "read installer settings",
                             "change altitude setting to 0 m"}),
              "");
    EXPECT_TRUE(says(attempt, "1500 m"));
    EXPECT_TRUE(attempt.truth().remaining.empty());
}

/// Why a limiter is proved by its leads and by running, and is not made to open (docs/safety.md).
TEST(Limiter, StaysFarBelowItsTemperatureAtEveryDrawOfASoundHeaterAtItsHighestSetting) {
    Job job = test_job();
    job.panel.set_point_k = 333.15;
    Workplace house(job, 7, Mode::assessed, nullptr);
    double hottest_k = 0.0;
    for (const double opening : {1.0, 0.0, 0.5, 0.25, 0.15, 0.0, 1.0, 0.15, 0.0}) {
        house.services.tap_opening.at(2) = opening;
        house.changed();
        for (int tick = 0; tick < 1800; ++tick) {
            house.step();
            hottest_k = std::max(hottest_k, house.heater.plant.state[plant::limiter_element]);
        }
    }
    RecordProperty("hottest_k", std::to_string(hottest_k));
    EXPECT_GT(hottest_k, 330.0) << "it was drawn hot";
    EXPECT_LT(hottest_k, plant::limiter_opens_k - 10.0);
}

/// The new valve is proved where it serves; the kitchen comes straight from the heater.
TEST(TemperingValve, IsProvedAtATapThatItServesAndAtNoOther) {
    Job job = test_job({fault(Cause::tempering_valve_worn, 0.6)});
    job.panel.set_point_k = 327.15;
    job.site.taps.at(2).tempered = true;
    const Script replaced{"shut water at heater",        "drain heater",
                          "fit bridging conductor",      "replace tempering valve",
                          "take bridging conductor off", "open water at heater"};
    for (const std::string tap : {"kitchen tap", "bath tap"}) {
        Attempt attempt(job, 7, Mode::assessed);
        ASSERT_EQ(play(attempt, replaced), "");
        ASSERT_EQ(play(attempt, {"open " + tap, "wait 90 s", "measure temperature at " + tap,
                                 "look at display", "close " + tap, "hand in"}),
                  "");
        const bool serves = tap == "bath tap";
        EXPECT_EQ(broke(attempt, "not_proved"), !serves) << all_shown(attempt);
        const auto verified = attempt.truth().verified;
        const bool hot = std::find(verified.begin(), verified.end(),
                                   "hot water measured at the set temperature") != verified.end();
        EXPECT_EQ(hot, serves) << all_shown(attempt);
    }
}

/// The kitchen tap of the history lit the burner once; the next draw is the one it waits for.
TEST(WaitingFault, BeginsWithTheLightUpItWaitsFor) {
    auto after_two = fault(Cause::limiter_open);
    after_two.after_light_ups = 2;
    Attempt attempt(test_job({after_two}), 7, Mode::assessed);
    EXPECT_EQ(attempt.truth().heater.parameters.limiter_bad, 0.0);
    ASSERT_EQ(play(attempt, {"open bath tap", "wait 30 s"}), "");
    EXPECT_EQ(attempt.truth().heater.parameters.limiter_bad, 1.0);
}

TEST(WaitingFault, ComesWithTheWarmthOfTheCaseAndGoesWithIt) {
    auto when_hot = fault(Cause::outlet_sensor_open);
    when_hot.present_while = faults::While::hot;
    Attempt attempt(test_job({when_hot}), 7, Mode::assessed);
    EXPECT_LT(attempt.truth().heater.parameters.outlet_sensor.series_ohm, 1.0);
    ASSERT_EQ(play(attempt, {"open bath tap", "wait 15 min", "look at display"}), "");
    EXPECT_TRUE(says(attempt, "TAPS"));
}

}  // namespace
}  // namespace emberpath::worksite
