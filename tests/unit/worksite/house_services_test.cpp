// Proves what the house around the heater does to an attempt: taps upstairs and behind a tempering valve, windows
// and fans beside an open flue, a pair of cylinders, the street at night, rain.

#include <gtest/gtest.h>

#include "sim/worksite/site_state.hpp"
#include "sim/worksite/workplace.hpp"
#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;

constexpr double litre_per_min = 1.0 / 60000.0;

double latest(const Attempt& attempt, Quantity quantity) {
    double value = -1.0;
    for (const auto& entry : attempt.log())
        for (const auto& seen : entry.observations)
            if (seen.quantity == quantity) value = seen.value;
    return value;
}

/// Does the acts at a house and gives the latest reading of a quantity.
double reads(const Job& job, const std::vector<std::string>& acts, Quantity quantity) {
    Attempt attempt(job, 7, Mode::assessed);
    EXPECT_EQ(play(attempt, acts), "");
    return latest(attempt, quantity);
}

Job upstairs_job() {
    Job job = test_job();
    job.site.taps[1].height_m = 9.0;
    return job;
}

Job tempered_job() {
    Job job = test_job();
    job.site.taps[1].tempered = true;
    job.panel.set_point_k = 333.15;
    job.healthy.tempering_set_k = 318.15;
    return job;
}

/// An indoor heater with an open flue, a window of 0.4 m2 and a strong fan in a tight room.
Job indoor_job() {
    Job job = test_job();
    job.healthy = plant::with_flue(job.healthy, plant::FlueKind::open_flued);
    job.healthy.room_m3 = 20.0;
    job.healthy.room_leak_gain = 0.02;
    job.site.windows = {{"kitchen window", 0.3, false}};
    job.site.fans = {{"rangehood", 0.12, false}};
    job.site.outdoor_k = 281.15;
    return job;
}

Job pair_job() {
    Job job = cylinder_job();
    job.healthy = plant::with_cylinder_pair(job.healthy);
    return job;
}

TEST(Taps, UpstairsGiveLessThanTheSameTapBeside) {
    const std::vector<std::string> acts{"open shower", "wait 10 s", "measure flow at shower"};
    const double beside = reads(test_job(), acts, Quantity::tap_flow);
    const double upstairs = reads(upstairs_job(), acts, Quantity::tap_flow);
    EXPECT_GT(upstairs, 5.0 * litre_per_min);
    EXPECT_LT(upstairs, 0.93 * beside);
}

TEST(Taps, EachIsMeasuredByItself) {
    const Job job = upstairs_job();
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt,
                   {"open shower", "open kitchen tap", "wait 10 s", "measure flow at kitchen tap"}),
              "");
    const double kitchen = latest(attempt, Quantity::tap_flow);
    ASSERT_EQ(play(attempt, {"measure flow at shower"}), "");
    const double shower = latest(attempt, Quantity::tap_flow);
    EXPECT_LT(shower, 1.2 * kitchen) << "larger, but nine metres up";
    EXPECT_GT(kitchen, litre_per_min);
}

TEST(Taps, OneBehindTheTemperingValveIsMilderThanTheOther) {
    const std::vector<std::string> both{"open shower", "open kitchen tap a little", "wait 90 s"};
    const double plain =
        reads(tempered_job(), both + std::vector<std::string>{"measure temperature at kitchen tap"},
              Quantity::tap_temperature);
    const double mild =
        reads(tempered_job(), both + std::vector<std::string>{"measure temperature at shower"},
              Quantity::tap_temperature);
    EXPECT_NEAR(plain, 333.15, 4.0);
    EXPECT_NEAR(mild, 318.15, 2.5);
}

TEST(Taps, AMixerThatLetsColdThroughRunsOnWithTheHeaterShut) {
    const std::vector<std::string> acts{"shut water at heater", "open kitchen tap", "wait 10 s",
                                        "measure flow at kitchen tap"};
    EXPECT_LT(reads(test_job(), acts, Quantity::tap_flow), 0.3 * litre_per_min);
    Job crossed = test_job();
    crossed.healthy.cross_flow_gain = 1.0e-7;
    EXPECT_GT(reads(crossed, acts, Quantity::tap_flow), litre_per_min);
}

TEST(TemperingValve, KeepsTheDeliveryLimitWhereTheHeaterIsSetHigher) {
    const std::vector<std::string> acts{"hand in"};
    Job job = tempered_job();
    job.site.taps[1].washing = true;
    Attempt tempered(job, 7, Mode::assessed);
    ASSERT_EQ(play(tempered, acts), "");
    EXPECT_FALSE(broke(tempered, "delivery_limit"));
    job.site.taps[1].tempered = false;
    Attempt plain(job, 7, Mode::assessed);
    ASSERT_EQ(play(plain, acts), "");
    EXPECT_TRUE(broke(plain, "delivery_limit"));
}

TEST(Windows, AreOpenedAndShutByNameAndSeenInTheRoom) {
    Attempt attempt(indoor_job(), 7, Mode::assessed);
    EXPECT_NE(play(attempt, {"close kitchen window"}), "") << "it is shut already";
    ASSERT_EQ(play(attempt, {"open kitchen window", "run rangehood", "look at room"}), "");
    EXPECT_NE(all_shown(attempt).find("The kitchen window is open."), std::string::npos);
    EXPECT_NE(all_shown(attempt).find("The rangehood runs."), std::string::npos);
    EXPECT_EQ(attempt.sight().window_open, std::vector<std::uint8_t>{1});
    EXPECT_EQ(attempt.sight().fan_on, std::vector<std::uint8_t>{1});
    ASSERT_EQ(play(attempt, {"shut kitchen window", "turn off rangehood"}), "");
    EXPECT_EQ(attempt.sight().window_open, std::vector<std::uint8_t>{0});
}

TEST(Fans, PullProductsIntoATightRoomAndAWindowStopsIt) {
    const std::vector<std::string> fire{"open bath tap", "wait 120 s"};
    const std::vector<std::string> smoke{"test draught with smoke"};
    const std::vector<std::string> fan{"run rangehood"}, window{"open kitchen window"};
    EXPECT_EQ(reads(indoor_job(), fire + smoke, Quantity::diverter_smoke), smoke_drawn_in);
    EXPECT_EQ(reads(indoor_job(), fan + fire + smoke, Quantity::diverter_smoke), smoke_blown_out);
    EXPECT_EQ(reads(indoor_job(), window + fan + fire + smoke, Quantity::diverter_smoke),
              smoke_drawn_in);
}

TEST(Fans, FillTheRoomThatTheAnalyserReads) {
    Job sooty = indoor_job();
    sooty.faults = {fault(Cause::exchanger_sooted, 0.8)};
    Attempt attempt(sooty, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"switch on analyser", "wait 60 s", "read room air"}), "");
    EXPECT_LT(latest(attempt, Quantity::room_co), 4.0e-6);
    ASSERT_EQ(play(attempt, {"run rangehood", "open bath tap", "wait 15 min", "read room air"}),
              "");
    EXPECT_GT(latest(attempt, Quantity::room_co), 10.0e-6);
}

TEST(OpenFlue, ThatSpillsIsADangerLeftBehindUnlessTheGasIsShut) {
    Attempt left(indoor_job(), 7, Mode::assessed);
    ASSERT_EQ(play(left, {"hand in"}), "");
    EXPECT_TRUE(broke(left, "spillage_left"));
    Job quiet = indoor_job();
    quiet.site.fans.clear();
    Attempt sound(quiet, 7, Mode::assessed);
    ASSERT_EQ(play(sound, {"hand in"}), "");
    EXPECT_FALSE(broke(sound, "spillage_left"));
    Attempt safe(indoor_job(), 7, Mode::assessed);
    ASSERT_EQ(play(safe, {"shut gas at heater", "tag heater", "issue unsafe notice", "hand in"}),
              "");
    EXPECT_FALSE(broke(safe, "spillage_left"));
}

TEST(OpenFlue, HasADiverterAndOthersHaveNone) {
    Attempt outdoors(test_job(), 7, Mode::assessed);
    EXPECT_NE(play(outdoors, {"test draught with smoke"}), "");
}

TEST(CylinderPair, ServesFromTheOneThatTheLeverPointsAt) {
    const std::vector<std::string> look{"open bath tap", "wait 30 s", "look at changeover"};
    EXPECT_EQ(reads(pair_job(), look, Quantity::changeover_indicator), change_first);
    EXPECT_EQ(reads(pair_job(),
                    std::vector<std::string>{"turn changeover lever to second cylinder"} + look,
                    Quantity::changeover_indicator),
              change_reserve);
    EXPECT_NEAR(reads(pair_job(), {"weigh second cylinder"}, Quantity::reserve_mass), 45.0, 0.5);
    Attempt single(cylinder_job(), 7, Mode::assessed);
    EXPECT_NE(play(single, {"turn changeover lever to second cylinder"}), "");
}

TEST(WaterPressure, RisesAtNightWhereTheStreetIsSo) {
    Job hill = test_job();
    hill.healthy.mains_rise_at_night_pa = 350.0e3;
    EXPECT_NEAR(reads(hill, {"measure water pressure"}, Quantity::water_pressure), 400.0e3, 20.0e3);
    EXPECT_NEAR(reads(hill, {"log water pressure overnight"}, Quantity::night_water_pressure),
                750.0e3, 30.0e3);
    EXPECT_EQ(reads(hill, {"look at relief drain"}, Quantity::relief_drain), relief_dry);
    hill.site.visit_s = 0.0;
    EXPECT_EQ(reads(hill, {"look at relief drain"}, Quantity::relief_drain), relief_drips);
}

TEST(Night, LastsFromHalfPastElevenToFive) {
    EXPECT_EQ(night_at(12.0 * 3600.0), 0.0);
    EXPECT_EQ(night_at(21.9 * 3600.0), 0.0);
    EXPECT_NEAR(night_at(22.75 * 3600.0), 0.5, 1.0e-12);
    EXPECT_EQ(night_at(23.6 * 3600.0), 1.0);
    EXPECT_EQ(night_at(26.0 * 3600.0), 1.0);
    EXPECT_NEAR(night_at(5.75 * 3600.0), 0.5, 1.0e-12);
    EXPECT_EQ(night_at(7.0 * 3600.0), 0.0);
}

TEST(Rain, MakesTheAirDampAndIsHeard) {
    Services services;
    Site site;
    site.damp = 0.3;
    settle_in(services, site);
    EXPECT_DOUBLE_EQ(electrical_situation(services, 0.0).damp, 0.3);
    services.raining = true;
    EXPECT_GT(electrical_situation(services, 0.0).damp, 0.9);
    Job job = test_job();
    job.site.events.push_back({200.0, HouseholdEvent::Kind::rain, 0, 1.0});
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"wait 60 s", "look at room"}), "");
    EXPECT_NE(all_shown(attempt).find("It begins to rain."), std::string::npos);
    EXPECT_NE(all_shown(attempt).find("It rains outside."), std::string::npos);
}

TEST(Household, MovesItsOwnWindowsAndFans) {
    Job job = indoor_job();
    job.site.events.push_back({190.0, HouseholdEvent::Kind::window, 0, 1.0});
    job.site.events.push_back({200.0, HouseholdEvent::Kind::fan, 0, 1.0});
    Attempt attempt(job, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"wait 60 s"}), "");
    EXPECT_EQ(attempt.sight().window_open, std::vector<std::uint8_t>{1});
    EXPECT_NE(all_shown(attempt).find("Somebody opens the kitchen window."), std::string::npos);
    EXPECT_NE(all_shown(attempt).find("Somebody turns the rangehood on."), std::string::npos);
}

TEST(Air, OfIntakeAndCaseIsReadByTheAnalyser) {
    Job hood = test_job();
    hood.healthy.recirculated_share = 0.3;
    hood.healthy.seam_leak_share = 0.02;
    const std::vector<std::string> on{"switch on analyser", "wait 60 s", "open bath tap",
                                      "wait 60 s"};
    EXPECT_LT(reads(hood, on + std::vector<std::string>{"read intake air"}, Quantity::intake_o2),
              0.18);
    EXPECT_NEAR(
        reads(test_job(), on + std::vector<std::string>{"read intake air"}, Quantity::intake_o2),
        0.2095, 0.006);
    EXPECT_GT(reads(hood, on + std::vector<std::string>{"read case air"}, Quantity::case_co),
              5.0e-6);
    Attempt off(test_job(), 7, Mode::assessed);
    EXPECT_NE(play(off, {"read case air"}), "") << "the analyser is off";
}

}  // namespace
}  // namespace emberpath::worksite
