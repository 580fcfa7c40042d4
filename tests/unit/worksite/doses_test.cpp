// Proves that harm comes as a dose: carbon monoxide into the blood, heat into the skin, gas into the air at the
// work; that the precaution keeps it away, and that only the dose ends a job.

#include "sim/worksite/doses.hpp"

#include <gtest/gtest.h>

#include <utility>

#include "sim/worksite/workplace.hpp"
#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;
using Script = std::vector<std::string>;

/// Gusts and no cover: the room fills with products.
const Script smoky{"take cover off", "open bath tap a little", "wait 30 min"};

Job gusty_job() {
    return test_job({fault(Cause::wind_gust, 0.5)});
}

bool says(const Attempt& attempt, const std::string& text) {
    return all_shown(attempt).find(text) != std::string::npos;
}

bool has_line(const Attempt& attempt, const std::string& begin) {
    for (const auto& line : attempt.truth().doses)
        if (line.starts_with(begin)) return true;
    return false;
}

TEST(Blood, IsAsOnArrivalInCleanAir) {
    Doses doses;
    for (int i = 0; i < 36000; ++i) breathe(doses, 0.0, 0.1, Limits{});
    EXPECT_EQ(doses.blood_co, exposure::blood_on_arrival);
    EXPECT_EQ(doses.most_blood_co, exposure::blood_on_arrival);
}

/// Tick by tick it is the equation of the whole spell.
TEST(Blood, TakesUpWhatTheEquationSays) {
    Doses doses;
    for (int i = 0; i < 18000; ++i) breathe(doses, 200.0e-6, 0.1, Limits{});
    const double whole = exposure::carboxyhaemoglobin_after(exposure::blood_on_arrival, 200.0e-6,
                                                            1800.0, exposure::light_work());
    EXPECT_NEAR(doses.blood_co, whole, 1.0e-8);
    EXPECT_GT(doses.blood_co, 0.03);
}

TEST(Blood, RecoversInCleanAirAndTheMostIsKept) {
    Doses doses;
    for (int i = 0; i < 18000; ++i) breathe(doses, 200.0e-6, 0.1, Limits{});
    const double most = doses.blood_co;
    for (int i = 0; i < 36000; ++i) breathe(doses, 0.0, 0.1, Limits{});
    EXPECT_LT(doses.blood_co, most);
    EXPECT_EQ(doses.most_blood_co, most);
}

/// An exposure limit is a mean over eight hours, with an hour above 60 ppm, half of one above 100 ppm and a
/// quarter above 200 ppm.
TEST(ExposureLimit, IsReachedByTimeAndShareTogether) {
    const auto minutes_at = [](double share) {
        Doses doses;
        for (int minute = 1; minute <= 600; ++minute) {
            for (int i = 0; i < 60; ++i) breathe(doses, share, 1.0, Limits{});
            if (!co_limit_reached(doses, Limits{}).empty()) return minute;
        }
        return -1;
    };
    EXPECT_EQ(minutes_at(29.0e-6), 497) << "just under it for more than a day's work";
    EXPECT_EQ(minutes_at(30.0e-6), 481);
    EXPECT_EQ(minutes_at(61.0e-6), 61);
    EXPECT_EQ(minutes_at(99.0e-6), 61);
    EXPECT_EQ(minutes_at(101.0e-6), 31);
    EXPECT_EQ(minutes_at(199.0e-6), 31);
    EXPECT_EQ(minutes_at(201.0e-6), 16);
}

TEST(HandOnATap, FeelsHotWaterThatRunsAndTakesItsShareOfABurn) {
    const auto touched = [](const Script& acts) {
        Job job = test_job();
        job.panel.set_point_k = 333.15;
        Attempt attempt(job, 7, Mode::assessed);
        EXPECT_EQ(play(attempt, acts), "");
        return std::pair(says(attempt, "The water feels hot."),
                         has_line(attempt, "Heat in the skin of your hands: "));
    };
    const std::pair felt(true, true), nothing(false, false);
    const Script hot{"open bath tap", "wait 60 s"}, touch{"touch bath tap"};
    EXPECT_EQ(touched(hot + touch), felt);
    EXPECT_EQ(touched(hot + Script{"put on gloves"} + touch), nothing);
    EXPECT_EQ(touched(hot + Script{"close bath tap"} + touch), nothing) << "no water runs";
    EXPECT_EQ(touched(hot + Script{"touch shower"}), nothing) << "that one is closed";
    EXPECT_EQ(touched(touch), nothing);
}

TEST(CarbonMonoxideAlarm, SoundsOnlyWhenItIsSwitchedOn) {
    Attempt worn(gusty_job(), 7, Mode::assessed), forgotten(gusty_job(), 7, Mode::assessed);
    ASSERT_EQ(play(worn, Script{"switch on co alarm"}), "");
    ASSERT_EQ(play(worn, smoky), "");
    ASSERT_EQ(play(forgotten, smoky), "");
    EXPECT_TRUE(says(worn, "Your personal alarm sounds"));
    EXPECT_FALSE(says(forgotten, "alarm sounds"));
    EXPECT_FALSE(broke(forgotten, "room_co")) << "minutes of it are no mean over eight hours";
    EXPECT_TRUE(worn.sight().alarm);
    EXPECT_FALSE(forgotten.sight().alarm);
    EXPECT_TRUE(has_line(forgotten, "Most carbon monoxide in the air"));
}

TEST(CarbonMonoxideAlarm, IsSwitchedOnOnce) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    EXPECT_NE(play(attempt, {"switch off co alarm"}), "");
    EXPECT_EQ(play(attempt, {"switch on co alarm"}), "");
    EXPECT_NE(play(attempt, {"switch on co alarm"}), "");
}

TEST(CarbonMonoxide, EndsTheJobWhenTheBloodHoldsAFifthAndNotBefore) {
    Attempt attempt(gusty_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"take cover off", "open bath tap a little"}), "");
    for (int hour = 0; hour < 12 && !attempt.over(); ++hour) (void)attempt.perform("wait 60 min");
    ASSERT_TRUE(attempt.over()) << all_shown(attempt);
    EXPECT_TRUE(broke(attempt, "co_poisoning"));
    EXPECT_TRUE(broke(attempt, "room_co"));
    EXPECT_TRUE(has_line(attempt, "Most carbon monoxide in your blood: 20."))
        << attempt.truth().doses.front();
}

TEST(CarbonMonoxide, StaysAwayWithTheCoverOn) {
    Attempt attempt(gusty_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"open bath tap a little", "wait 30 min"}), "");
    EXPECT_FALSE(broke(attempt, "room_co"));
    EXPECT_TRUE(has_line(attempt, "Most carbon monoxide in your blood: 0.8 %;"));
    EXPECT_FALSE(has_line(attempt, "Most carbon monoxide in the air"));
}

TEST(CarbonMonoxide, AboveTheCeilingOfThePlaceIsABreachAtOnce) {
    Job strict = gusty_job();
    strict.practice.limits.co_ceiling = 35.0e-6;
    Attempt attempt(strict, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, smoky), "");
    EXPECT_TRUE(broke(attempt, "co_ceiling"));
    EXPECT_FALSE(attempt.over());
    Attempt usual(gusty_job(), 7, Mode::assessed);
    ASSERT_EQ(play(usual, {"take cover off", "open bath tap a little", "wait 10 min"}), "");
    EXPECT_FALSE(broke(usual, "co_ceiling"));
}

TEST(EscapedGas, IsAShareOfWhatCanBurnAndPropaneNeedsLess) {
    EXPECT_NEAR(flammable_share(GasKind::natural_gas, 3.0e-3), 1.0, 1e-12);
    EXPECT_NEAR(flammable_share(GasKind::propane_cylinder, 1.26e-3), 1.0, 1e-12);
}

TEST(GasDetector, ReadsNothingInCleanAirAndTheShareWhereGasEscapes) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"read gas detector", "open test point inlet", "wait 60 s",
                             "read gas detector"}),
              "");
    const auto& clean = attempt.log().front().observations.front();
    const auto& gassy = attempt.log().back().observations.front();
    EXPECT_NEAR(clean.value, 0.0, 0.02);
    EXPECT_GT(gassy.value, 0.1);
    EXPECT_TRUE(has_line(attempt, "Most gas in the air at your hands"));
}

TEST(GasDetector, ReadsNothingWhereTheGasWasShutFirst) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"shut gas at heater", "open test point inlet", "wait 60 s",
                             "read gas detector"}),
              "");
    EXPECT_NEAR(attempt.log().back().observations.front().value, 0.0, 0.02);
    EXPECT_FALSE(has_line(attempt, "Most gas"));
}

TEST(Hands, AreScaldedByCupsOfHotWaterUnlessGloved) {
    Job hot = test_job();
    hot.panel.set_point_k = 333.15;
    Script cups{"open bath tap", "wait 60 s"};
    for (int i = 0; i < 8; ++i) cups.push_back("measure flow at bath tap");
    Attempt bare(hot, 7, Mode::assessed), gloved(hot, 7, Mode::assessed);
    ASSERT_EQ(play(bare, cups), "");
    EXPECT_TRUE(broke(bare, "burnt"));
    EXPECT_FALSE(bare.over()) << "it hurts, it does not end the job";
    EXPECT_TRUE(has_line(bare, "Heat in the skin of your hands"));
    ASSERT_EQ(play(gloved, {"put on gloves"}), "");
    ASSERT_EQ(play(gloved, cups), "");
    EXPECT_FALSE(broke(gloved, "burnt"));
    EXPECT_FALSE(has_line(gloved, "Heat in the skin"));
}

TEST(Hands, AreNotHurtByOneCupOfWarmWater) {
    Attempt attempt(test_job(), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"open bath tap", "wait 60 s", "measure flow at bath tap"}), "");
    EXPECT_FALSE(broke(attempt, "burnt"));
}

TEST(DeliveryLimit, HoldsAtFixturesForWashingAndIsLowerInCare) {
    for (const auto dwellers : {Dwellers::home, Dwellers::care}) {
        Job job = test_job();
        job.panel.set_point_k = 321.15;  // 48 °C
        job.site.taps.at(1).washing = true;
        job.practice.dwellers = dwellers;
        Attempt attempt(job, 7, Mode::assessed);
        ASSERT_EQ(play(attempt, {"hand in"}), "");
        EXPECT_EQ(broke(attempt, "delivery_limit"), dwellers == Dwellers::care);
    }
    Job kitchen_only = test_job();
    kitchen_only.panel.set_point_k = 333.15;
    Attempt attempt(kitchen_only, 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"hand in"}), "");
    EXPECT_FALSE(broke(attempt, "delivery_limit"));
}

/// Every dose is part of the state: no two houses that differ in one are called the same.
TEST(Doses, AreAllInTheStateHash) {
    const auto hash_of = [](void (*change)(Doses&)) {
        Doses doses;
        change(doses);
        math::Hash hash;
        add_to(hash, doses);
        return hash.value();
    };
    const auto untouched = hash_of([](Doses&) {});
    EXPECT_NE(hash_of([](Doses& d) { d.most_current_a = 0.002; }), untouched);
    EXPECT_NE(hash_of([](Doses& d) { d.current_path = ShockPath::hand_to_foot; }), untouched);
    EXPECT_NE(hash_of([](Doses& d) { d.current_cut_after_s = 0.013; }), untouched);
    EXPECT_NE(hash_of([](Doses& d) { d.outside_s = 1.0; }), untouched);
    EXPECT_NE(hash_of([](Doses& d) { d.hand_burn = 0.1; }), untouched);
    EXPECT_NE(hash_of([](Doses& d) { d.co_quarter_s = 1.0; }), untouched);
}

}  // namespace
}  // namespace emberpath::worksite
