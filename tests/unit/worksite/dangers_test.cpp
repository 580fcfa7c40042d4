// Proves what the simulation itself makes of a danger: flames that come late, gas that thins and flashes, boards
// that drown, and houses where the right end is to hand the work on.

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/unit/worksite/dangerous_houses.hpp"

namespace emberpath::worksite {
namespace {

using Script = Acts;

/// Seconds from the opened tap to a flame in the window, looked for second by second.
int seconds_to_flame(const Script& before) {
    Attempt attempt(cylinder_job(), 7, Mode::assessed);
    EXPECT_EQ(play(attempt, before + Script{"open bath tap"}), "");
    for (int s = 0; s < 60; ++s) {
        if (attempt.sight().flame_share > 0.0) return s;
        EXPECT_EQ(play(attempt, {"wait 1 s"}), "");
    }
    return 60;
}

TEST(AirInThePipe, DelaysTheFlame) {
    // Four hoses of air, so that a look each second can tell.
    const Script change{"shut gas at cylinder", "change cylinder", "change cylinder",
                        "change cylinder",      "change cylinder", "open gas at cylinder"};
    const int purged = seconds_to_flame(change + Script{"purge gas pipe"});
    const int cooked = seconds_to_flame(change + Script{"turn on cooktop", "wait 10 s"});
    EXPECT_LT(purged, 20);
    EXPECT_LT(cooked, 20) << "another appliance burns the air away as well";
    EXPECT_GT(seconds_to_flame(change), purged);
}

/// The first try ends without a flame, for the pipe holds more air than a try lets through.
TEST(AirInThePipe, OfARemadeUnionFailsTheFirstTryUntilItIsPurged) {
    for (const Script& remade : {Script{"remake inlet union"}, Script{"remake joint inlet union"}})
        for (const bool purged : {false, true}) {
            Attempt attempt(test_job(), 7, Mode::assessed);
            ASSERT_EQ(
                play(attempt, Script{"shut gas at heater"} + remade + Script{"open gas at heater"} +
                                  (purged ? Script{"purge gas pipe"} : Script{})),
                "");
            ASSERT_EQ(play(attempt, {"open bath tap", "wait 30 s"}), "");
            const auto newest = attempt.truth().heater.readout.history[0].event;
            EXPECT_EQ(newest,
                      purged ? controller::Event::none : controller::Event::no_flame_at_light_up);
            EXPECT_GT(attempt.sight().flame_share, 0.0) << "the second try lights";
            EXPECT_EQ(broke(attempt, "not_purged"), !purged);
        }
}

TEST(GasOnArrival, IsThinnedByAirAndEndsWithTheSupply) {
    const auto share = [](const Script& script) {
        Attempt attempt(with(leak), 7, Mode::assessed);
        EXPECT_EQ(play(attempt, script + Script{"read gas detector"}), "");
        return attempt.log().back().observations.front().value;
    };
    const double still = share({"wait 5 min"});
    const double aired = share({"air the place", "wait 5 min"});
    const double shut = share({"air the place", "shut gas at meter", "wait 5 min"});
    EXPECT_GT(still, 0.2);
    EXPECT_LT(aired, 0.5 * still);
    EXPECT_LT(shut, 0.02);
}

TEST(GasOnArrival, IsSmeltAtTheDoor) {
    const Attempt leaking(with(leak), 7, Mode::assessed), sound(test_job(), 7, Mode::assessed);
    ASSERT_EQ(leaking.sight().noticed.size(), 1U);
    EXPECT_EQ(leaking.sight().noticed.front(), "It smells of gas.");
    EXPECT_TRUE(sound.sight().noticed.empty());
}

TEST(GasOnArrival, IsSaidOnceByWhoeverLooksAtTheRoomFirst) {
    Attempt attempt(with(leak), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"look at room", "look at room"}), "");
    const auto times_said = [](const LogEntry& entry) {
        return std::count(entry.shown.begin(), entry.shown.end(), "It smells of gas.");
    };
    EXPECT_EQ(times_said(attempt.log().front()), 1);
    EXPECT_EQ(times_said(attempt.log().back()), 1) << "asked again, it is said again";
}

TEST(GasOnArrival, FlashesWhereASwitchIsWorkedInEnoughOfIt) {
    const Job job = with([](Job& one) { one.site.dangers.leak_m3_per_s = 3.0e-5; });
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"look at room", "switch power off"}), "");
    EXPECT_TRUE(attempt.over());
    EXPECT_TRUE(broke(attempt, "flash"));
    Attempt outside(job, 7, Mode::assessed);
    ASSERT_EQ(play(outside, {"shut gas at meter", "move people out", "air the place", "wait 5 min",
                             "switch power off"}),
              "");
    EXPECT_FALSE(outside.over());
}

TEST(GasInTheRoom, MeetsASparkOfEverySwitchAtTheBoardToo) {
    const Script unplugged{"unplug heater"};  // the tester needs its socket
    const Script smelling = unplugged + Script{"open test point inlet", "wait 1 min"};
    for (const char* act : {"switch main switch off", "close safety switch", "test safety switch",
                            "time safety switch at rated current"}) {
        Attempt sound(test_job(), 7, Mode::assessed), gassed(test_job(), 7, Mode::assessed);
        EXPECT_EQ(play(sound, unplugged + Script{act}), "");
        EXPECT_FALSE(broke(sound, "spark_in_gas")) << act;
        EXPECT_EQ(play(gassed, smelling), "");
        EXPECT_FALSE(broke(gassed, "spark_in_gas")) << "before " << act;
        EXPECT_EQ(play(gassed, {act}), "");
        EXPECT_TRUE(broke(gassed, "spark_in_gas")) << act;
    }
}

TEST(GasOnArrival, IsMetAgainByTheHouseholdWhereItIsLeft) {
    Attempt left(with(leak), 7, Mode::assessed), mended(with(leak), 7, Mode::assessed);
    ASSERT_EQ(play(left, {"hand in"}), "");
    ASSERT_EQ(play(mended, {"air the place", "shut gas at meter", "remake joint regulator",
                            "open gas at meter", "leak test with fluid", "hand in"}),
              "");
    const auto text = [](const Attempt& attempt) {
        std::string all;
        for (const auto& line : attempt.day_after().lines) all += line + "\n";
        return all;
    };
    EXPECT_NE(text(left).find("Gas escaped: "), std::string::npos);
    EXPECT_EQ(text(mended).find("Gas escaped: "), std::string::npos) << text(mended);
}

/// Found and left is worse than never found, and the record says which it was.
TEST(GasOnArrival, LeftIsToldApartByWhetherFluidHadFoamed) {
    const auto said = [](const Script& script) {
        Attempt attempt(with(leak), 7, Mode::assessed);
        EXPECT_EQ(play(attempt, script + Script{"hand in"}), "");
        for (const auto& one : attempt.breaches())
            if (one.rule == "leak_left") return one.text;
        return std::string();
    };
    EXPECT_EQ(said({"air the place"}), "A gas joint weeps and was not found.");
    EXPECT_EQ(said({"air the place", "leak test with fluid"}),
              "A gas joint weeps: fluid had foamed there, and it was left.");
    EXPECT_EQ(said({"air the place", "leak test with fluid", "shut gas at meter",
                    "remake joint regulator", "open gas at meter", "leak test with fluid"}),
              "");
}

TEST(WetBoard, LeavesTheHeaterDark) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt,
                   dead + dressed +
                       Script{"replace water valve", "refit cover", "unlock plug", "plug in heater",
                              "switch power on", "open bath tap", "wait 40 s", "look at display"}),
              "");
    EXPECT_DOUBLE_EQ(attempt.sight().flame_share, 0.0);
}

TEST(OldSheet, MakesHandingOnTheRightEndForABlockedFlue) {
    Job job = test_job({fault(Cause::flue_blocked, 0.8)});
    job.site.dangers.old_sheet = true;
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, Script{"look around heater", "look at flue terminal",
                                   "escalate to asbestos assessor"} +
                                out_of_use),
              "");
    EXPECT_TRUE(attempt.truth().remaining.empty());
    job.site.dangers.old_sheet = false;
    Attempt needless(job, 7, Mode::assessed);
    ASSERT_EQ(play(needless, Script{"escalate to asbestos assessor"} + out_of_use), "");
    EXPECT_EQ(needless.truth().remaining.size(), 1U);
}

TEST(Climb, DeclinedIsTheRightEndForAFlueNobodyCanReachToday) {
    Job job = test_job({fault(Cause::flue_blocked, 0.8)});
    job.site.dangers.terminal_height_m = 5.0;
    job.site.wind_pa = 45.0;
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(
        play(attempt, Script{"check ladder", "decline climb", "escalate to licensed colleague"} +
                          out_of_use),
        "");
    EXPECT_TRUE(attempt.truth().remaining.empty());
}

std::string text_of_breach(const Attempt& attempt, const std::string& rule) {
    for (const Breach& one : attempt.breaches())
        if (one.rule == rule) return one.text;
    return {};
}

TEST(StoredSettings, LeftWrongAreAllNamedInOneBreach) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(
        play(attempt, {"open service readout", "take cover off", "change gas setting to propane",
                       "change altitude setting to 1800 m", "refit cover", "hand in"}),
        "");
    EXPECT_EQ(
        text_of_breach(attempt, "off_plate"),
        "Left set to another gas than its data plate names. Left set to a height of 1800 m; the "
        "house lies at 0 m.");
}

/// The rules of a place may name nobody for a matter; then a report cures nothing.
TEST(CylinderAtTheFlue, IsLeftThereWhereTheRulesNameNobodyWhoWouldMoveIt) {
    for (const bool named : {true, false}) {
        Job job = on_cylinder([](Job& one) { one.site.dangers.cylinder_close = true; });
        if (!named) job.practice.tell.at(static_cast<std::size_t>(Matter::cylinder_place)) = 0;
        Attempt attempt(job, 7, Mode::assessed);
        ASSERT_EQ(play(attempt, {"look at display", "escalate to gas supplier",
                                 "tell customer the cylinder has to go", "hand in"}),
                  "");
        EXPECT_EQ(broke(attempt, "cylinder_left"), !named);
    }
}

}  // namespace
}  // namespace emberpath::worksite
