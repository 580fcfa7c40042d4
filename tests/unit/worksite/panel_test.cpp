// Proves what a person reaches at the heater's panel and at wall controllers: the list of words and the
// deliberate restart behind it, the event history, installer settings, set values, the link cable.

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using controller::Phase;

/// A kitchen and a bathroom controller; the panel itself stands at 55 degC.
Job two_rooms() {
    Job job = test_job();
    job.site.wall_controllers = {"kitchen controller", "bathroom controller"};
    job.panel.set_point_k = 328.15;
    job.panel.wall[0] = {1.0, 1.0, 323.15, 1.0};
    job.panel.wall[1] = {1.0, 0.0, 315.15, 1.0};
    job.settings.wall_controllers = 2.0;
    return job;
}

/// The terminal is blocked so far that even the light-ups in between end in a lockout.
Job stifled() {
    return test_job({fault(faults::Cause::flue_blocked, 0.95)});
}

std::string last_lines(const Attempt& attempt) {
    std::string text;
    for (const auto& line : attempt.log().back().shown) text += line + "\n";
    return text;
}

controller::Readout readout(const Attempt& attempt) {
    return attempt.truth().heater.readout;
}

/// Draws and resets until the heater accepts reset no more; empty when it never refuses.
std::string wear_out_resets(Attempt& attempt) {
    if (auto refused = play(attempt, {"open bath tap", "wait 2 min"}); !refused.empty())
        return refused;
    for (int i = 0; i < 4 && readout(attempt).restart_needed < 0.5; ++i)
        if (auto refused = play(attempt, {"press reset", "wait 90 s"}); !refused.empty())
            return refused;
    return readout(attempt).restart_needed > 0.5 ? "" : "reset is never refused";
}

TEST(Panel, ListLeadsThroughItsWordsAndBack) {
    Attempt attempt(test_job(), 1, Mode::coached);
    for (const std::string word : {"READ", "PAST", "BACK", "READ"}) {
        EXPECT_EQ(play(attempt, {"press list"}), "");
        EXPECT_NE(last_lines(attempt).find(word), std::string::npos) << last_lines(attempt);
    }
    EXPECT_EQ(play(attempt, {"press take", "read readout flow"}), "");
}

TEST(Panel, OffersNothingWithoutMains) {
    Attempt attempt(test_job(), 1, Mode::coached);
    EXPECT_EQ(play(attempt, {"switch power off"}), "");
    EXPECT_NE(play(attempt, {"press list"}), "");
}

TEST(Panel, RefusedResetSaysThatARestartIsWanted) {
    Attempt attempt(stifled(), 1, Mode::coached);
    ASSERT_EQ(wear_out_resets(attempt), "");
    EXPECT_EQ(play(attempt, {"press reset"}), "");
    EXPECT_NE(last_lines(attempt).find("wants a restart"), std::string::npos);
    EXPECT_EQ(readout(attempt).phase, Phase::lockout);
}

TEST(Panel, RestartIsAskedForByWordsAndProvesTheAir) {
    Attempt attempt(stifled(), 1, Mode::coached);
    ASSERT_EQ(wear_out_resets(attempt), "");
    ASSERT_EQ(play(attempt, {"close bath tap", "clear flue terminal", "press list", "press list",
                             "press list", "press take"}),
              "");
    EXPECT_NE(last_lines(attempt).find("SURE"), std::string::npos);
    ASSERT_EQ(play(attempt, {"press take", "wait 5 s"}), "");
    EXPECT_EQ(readout(attempt).phase, Phase::restart);
    ASSERT_EQ(play(attempt, {"wait 70 s"}), "");
    EXPECT_EQ(readout(attempt).phase, Phase::standby);
}

TEST(Panel, RestartInABlockedPathLocksOutAgain) {
    Attempt attempt(stifled(), 1, Mode::coached);
    ASSERT_EQ(wear_out_resets(attempt), "");
    ASSERT_EQ(play(attempt, {"close bath tap", "press list", "press list", "press list",
                             "press take", "press take", "wait 70 s"}),
              "");
    EXPECT_EQ(readout(attempt).phase, Phase::lockout);
    EXPECT_EQ(readout(attempt).event, controller::Event::air_path_restricted);
}

TEST(Panel, RestartConfirmedTooLateDoesNotBegin) {
    Attempt attempt(stifled(), 1, Mode::coached);
    ASSERT_EQ(wear_out_resets(attempt), "");
    ASSERT_EQ(play(attempt, {"press list", "press list", "press list", "press take", "wait 40 s",
                             "press take", "wait 5 s"}),
              "");
    EXPECT_EQ(readout(attempt).phase, Phase::lockout);
}

TEST(EventHistory, IsReadOnTheServiceReadoutAndOutlivesTheMains) {
    Attempt attempt(stifled(), 1, Mode::coached);
    ASSERT_EQ(play(attempt, {"open bath tap", "wait 2 min", "close bath tap", "switch power off",
                             "wait 10 s", "switch power on", "wait 1 s", "open service readout",
                             "read event history"}),
              "");
    EXPECT_NE(last_lines(attempt).find("air path restricted"), std::string::npos);
    EXPECT_NE(last_lines(attempt).find("The mains came back 1 time."), std::string::npos);
}

TEST(InstallerSettings, AreBehindTheCover) {
    Attempt attempt(test_job(), 1, Mode::coached);
    EXPECT_NE(play(attempt, {"open service readout", "read installer settings"}), "");
    EXPECT_NE(play(attempt, {"change gas setting to propane"}), "");
    EXPECT_EQ(play(attempt, {"take cover off", "read installer settings", "read data plate"}), "");
    EXPECT_NE(last_lines(attempt).find("Set values from 37.0 °C to 60.0 °C."), std::string::npos)
        << last_lines(attempt);
}

TEST(InstallerSettings, WrongGasIsPossibleAndRaisesTheManifoldPressure) {
    Attempt attempt(test_job(), 1, Mode::coached);
    ASSERT_EQ(play(attempt, {"open service readout", "take cover off",
                             "change gas setting to propane", "open bath tap", "wait 60 s"}),
              "");
    EXPECT_GT(readout(attempt).manifold_command_pa, 950.0);
    EXPECT_EQ(attempt.truth().heater.settings.gas, 1.0);
    ASSERT_EQ(play(attempt, {"change gas setting to natural gas", "wait 60 s"}), "");
    EXPECT_LE(readout(attempt).manifold_command_pa, 950.0);
}

TEST(InstallerSettings, AreNumberedReadingsThatAWriteUpCanName) {
    Attempt attempt(test_job(), 1, Mode::coached);
    ASSERT_EQ(play(attempt, {"open service readout", "take cover off", "read installer settings"}),
              "");
    const std::string shown = last_lines(attempt);
    for (const char* line :
         {"#1  gas setting  natural gas", "#2  altitude",
          "#3  highest set temperature stored  60.0 °C", "#4  priority of the wall controllers  "})
        EXPECT_NE(shown.find(line), std::string::npos) << line << " in\n" << shown;
}

/// Gas and altitude feed the flame; a limit and a priority do not.
TEST(InstallerSettings, AskForACombustionTestOnlyWhereTheyMoveTheFlame) {
    using faults::Cause;
    const auto asked = [](const std::vector<faults::Fault>& faults, const std::string& act) {
        Job job = test_job(faults);
        job.settings.wall_controllers = 2.0;
        Attempt attempt(job, 1, Mode::assessed);
        EXPECT_EQ(play(attempt, {"open service readout", "take cover off", act, "hand in"}), "");
        return broke(attempt, "no_combustion_test");
    };
    EXPECT_TRUE(asked({fault(Cause::gas_setting_wrong)}, "correct installer settings"));
    EXPECT_TRUE(asked({fault(Cause::altitude_setting_wrong)}, "correct installer settings"));
    EXPECT_TRUE(asked({}, "change altitude setting to 1500 m"));
    EXPECT_FALSE(asked({fault(Cause::highest_setting_raised)}, "correct installer settings"));
    EXPECT_FALSE(asked({fault(Cause::priority_elsewhere)}, "correct installer settings"));
    EXPECT_FALSE(asked({}, "change highest temperature to 50 °C"));
    EXPECT_FALSE(asked({}, "correct installer settings")) << "nothing was stored anew";
}

TEST(InstallerSettings, FoundWrongAreCuredByStoringWhatThePlateSays) {
    Attempt attempt(test_job({fault(faults::Cause::gas_setting_wrong)}), 1, Mode::coached);
    ASSERT_EQ(play(attempt, {"open service readout", "take cover off", "read installer settings"}),
              "");
    EXPECT_NE(last_lines(attempt).find("gas setting  propane"), std::string::npos)
        << last_lines(attempt);
    EXPECT_EQ(attempt.truth().remaining.size(), 1U);
    ASSERT_EQ(play(attempt, {"change gas setting to natural gas"}), "");
    EXPECT_TRUE(attempt.truth().remaining.empty());
    EXPECT_EQ(attempt.truth().heater.settings.gas, 0.0);
}

/// Heights are offered in steps: at 1700 m the nearest puts it right, and the plate says which that is.
TEST(InstallerSettings, OfAHeightBetweenTwoStepsArePutRightByTheNearer) {
    for (const auto& [height_m, said, act] :
         {std::tuple{1700.0, "1800 m", "change altitude setting to 1800 m"},
          std::tuple{2950.0, "3000 m", "change altitude setting to 3000 m"},
          std::tuple{2650.0, "2700 m", "change altitude setting to 2700 m"}}) {
        worksite::Job job = test_job({fault(faults::Cause::altitude_setting_wrong)});
        job.site.altitude_m = height_m;
        job.healthy = plant::with_altitude(job.healthy, height_m);
        controller::set_altitude(job.settings, controller::nearest_altitude_step_m(height_m));
        Attempt attempt(job, 1, Mode::coached);
        ASSERT_EQ(play(attempt, {"open service readout", "take cover off", "read data plate"}), "");
        EXPECT_NE(last_lines(attempt).find(said), std::string::npos) << last_lines(attempt);
        EXPECT_EQ(attempt.truth().remaining.size(), 1U);
        ASSERT_EQ(play(attempt, {act}), "");
        EXPECT_TRUE(attempt.truth().remaining.empty()) << act;
    }
}

TEST(InstallerSettings, OfEveryKindCanBeChanged) {
    Attempt attempt(two_rooms(), 1, Mode::coached);
    ASSERT_EQ(
        play(attempt, {"open service readout", "take cover off", "change altitude setting to 900 m",
                       "change highest temperature to 50 °C", "change frost protection to off",
                       "change number of wall controllers to 1", "change priority to first"}),
        "");
    const controller::Settings now = attempt.truth().heater.settings;
    EXPECT_EQ(now.altitude_m, 900.0);
    EXPECT_NEAR(now.maximum_set_k, 323.15, 1e-9);
    EXPECT_EQ(now.frost_protection, 0.0);
    EXPECT_EQ(now.wall_controllers, 1.0);
    EXPECT_EQ(now.first_priority, 1.0);
}

TEST(InstallerSettings, OutsideWhatTheReadoutTakesAreRefusedAndNothingIsStored) {
    Attempt attempt(test_job(), 1, Mode::coached);
    ASSERT_EQ(play(attempt, {"open service readout", "take cover off"}), "");
    const double before = attempt.truth().heater.settings.maximum_set_k;
    for (const char* sentence :
         {"change highest temperature to 90 °C", "change highest temperature to 20 °C"}) {
        const std::string refused = play(attempt, {sentence});
        EXPECT_NE(refused.find("37.0 °C to 75.0 °C"), std::string::npos) << refused;
        EXPECT_EQ(attempt.truth().heater.settings.maximum_set_k, before);
    }
    ASSERT_EQ(play(attempt, {"change highest temperature to 75 °C"}), "");
    EXPECT_NEAR(attempt.truth().heater.settings.maximum_set_k, 348.15, 1e-9);
}

TEST(WallControllers, ALowSetValueWinsUntilItIsRaised) {
    Attempt attempt(two_rooms(), 1, Mode::coached);
    ASSERT_EQ(play(attempt, {"open bath tap", "wait 60 s"}), "");
    EXPECT_NEAR(attempt.truth().heater.plant.outlet_water_k, 315.15, 0.5);
    ASSERT_EQ(play(attempt, {"look at bathroom controller", "set bathroom controller to 50 °C",
                             "wait 60 s"}),
              "");
    EXPECT_NEAR(attempt.truth().heater.plant.outlet_water_k, 323.15, 0.5);
}

TEST(WallControllers, ShowTheReadoutOnlyWhereTheirKindDoes) {
    Attempt attempt(two_rooms(), 1, Mode::coached);
    EXPECT_NE(play(attempt, {"open service readout at bathroom controller"}), "");
    EXPECT_EQ(play(attempt, {"open service readout at kitchen controller", "read readout flow"}),
              "");
}

TEST(WallControllers, BrokenCableLeavesADarkScreenAndThePanelsSetValue) {
    Job job = two_rooms();
    for (double& ohm : job.healthy.electrical.link_series_ohm) ohm = 5.0e6;
    Attempt attempt(job, 1, Mode::coached);
    ASSERT_EQ(
        play(attempt, {"look at bathroom controller", "measure link cable at bathroom controller",
                       "open bath tap", "wait 60 s"}),
        "");
    EXPECT_NE(all_shown(attempt).find("dark"), std::string::npos);
    EXPECT_NE(play(attempt, {"set bathroom controller to 45 °C"}), "");
    EXPECT_NEAR(readout(attempt).set_point_k, 328.15, 1e-9);
    EXPECT_EQ(play(attempt, {"take cover off", "measure link cable at heater"}), "");
    EXPECT_GT(attempt.log().back().observations.front().value, 21.0);
}

TEST(HighestTemperature, IsWhatThePanelOffersOnceItIsStored) {
    Attempt attempt(test_job(), 1, Mode::coached);
    const auto refusal = [&](const char* act) { return attempt.perform(act).refusal.text; };
    EXPECT_EQ(refusal("set temperature to 70 °C"), "The panel offers 37.0 °C to 60.0 °C.");
    ASSERT_EQ(play(attempt, {"take cover off", "open service readout",
                             "change highest temperature to 75 °C"}),
              "");
    EXPECT_EQ(refusal("set temperature to 76 °C"), "The panel offers 37.0 °C to 75.0 °C.");
    EXPECT_EQ(play(attempt, {"set temperature to 70 °C"}), "");
    ASSERT_EQ(play(attempt, {"change highest temperature to 45 °C"}), "");
    EXPECT_EQ(refusal("set temperature to 50 °C"), "The panel offers 37.0 °C to 45.0 °C.");
}

}  // namespace
}  // namespace emberpath::worksite
