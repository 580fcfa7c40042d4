// Proves that the licence decides: the same fault is a repair for one person and to be handed on for another,
// and only a whole handing on counts as the end.

#include <gtest/gtest.h>

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

using faults::Cause;
using faults::Remedy;
using Script = std::vector<std::string>;

const Script isolate{"switch power off", "unplug heater", "lock off plug",
                     "take cover off",   "prove tester",  "test for dead",
                     "prove tester",     "put on gloves", "put on glasses"};

Licence without(Remedy remedy) {
    Licence licence;
    licence.name = "gasfitter";
    licence.remedies.at(static_cast<std::size_t>(remedy)) = 0;
    return licence;
}

Job igniter_job(const Licence& licence) {
    Job job = test_job({fault(Cause::igniter_failed)});
    job.practice.licence = licence;
    return job;
}

TEST(Scope, TheUsualLicenceCoversEveryRemedyAndWork) {
    const Licence licence;
    for (const auto& info : faults::remedies) EXPECT_TRUE(licence.covers(info.remedy)) << info.word;
    for (std::size_t i = 0; i < work_count; ++i)
        EXPECT_TRUE(licence.covers(static_cast<Work>(i))) << work_word(static_cast<Work>(i));
}

TEST(Scope, WordsAreOpenToEverybody) {
    Licence nothing;
    std::fill(nothing.remedies.begin(), nothing.remedies.end(), std::uint8_t{0});
    EXPECT_TRUE(nothing.covers(Remedy::explain_to_customer));
    EXPECT_TRUE(nothing.covers(Remedy::quote_larger_gas_pipe));
    EXPECT_FALSE(nothing.covers(Remedy::change_cylinder));
}

TEST(Scope, TheSameRepairIsRightWithTheLicenceAndABreachWithoutIt) {
    Attempt covered(igniter_job({}), 7, Mode::assessed);
    ASSERT_EQ(play(covered, isolate + Script{"replace igniter"}), "");
    EXPECT_TRUE(covered.breaches().empty());
    EXPECT_TRUE(covered.truth().remaining.empty());

    Attempt outside(igniter_job(without(Remedy::replace_igniter)), 7, Mode::assessed);
    ASSERT_EQ(play(outside, isolate + Script{"replace igniter"}), "");
    EXPECT_TRUE(broke(outside, "out_of_scope"));
    EXPECT_TRUE(outside.breaches().front().critical);
}

TEST(Scope, HandingOnEndsTheJobOnlyWithIsolationTagNoticeWordsAndCall) {
    const Script whole{"shut gas at heater",
                       "switch power off",
                       "unplug heater",
                       "tag heater",
                       "issue unsafe notice",
                       "tell customer what is to be done",
                       "escalate to licensed colleague"};
    Attempt right(igniter_job(without(Remedy::replace_igniter)), 7, Mode::assessed);
    ASSERT_EQ(play(right, whole), "");
    EXPECT_TRUE(right.truth().remaining.empty());
    for (std::size_t missing : {3U, 4U, 5U, 6U}) {
        Script part = whole;
        part.erase(part.begin() + static_cast<std::ptrdiff_t>(missing));
        Attempt attempt(igniter_job(without(Remedy::replace_igniter)), 7, Mode::assessed);
        ASSERT_EQ(play(attempt, part), "");
        EXPECT_EQ(attempt.truth().remaining.size(), 1U) << "without: " << whole[missing];
    }
    Attempt wrong(igniter_job(without(Remedy::replace_igniter)), 7, Mode::assessed);
    Script elsewhere = whole;
    elsewhere.back() = "escalate to distributor";
    ASSERT_EQ(play(wrong, elsewhere), "");
    EXPECT_EQ(wrong.truth().remaining.size(), 1U);
}

/// A licence of the shipped kind that covers the water side alone.
Licence water_side() {
    Licence licence;
    licence.name = "plumber";
    for (auto& covered : licence.remedies) covered = 0;
    for (auto& covered : licence.works) covered = 0;
    for (const Remedy remedy :
         {Remedy::clean_strainer, Remedy::replace_water_valve, Remedy::replace_bypass_valve,
          Remedy::replace_flow_sensor, Remedy::descale_exchanger})
        licence.remedies.at(static_cast<std::size_t>(remedy)) = 1;
    return licence;
}

TEST(Scope, APlumberMendsTheWaterSideAndHandsOnTheFlame) {
    Job water = test_job({fault(Cause::strainer_blocked, 0.95)});
    water.practice.licence = water_side();
    Attempt mends(water, 7, Mode::assessed);
    ASSERT_EQ(play(mends, {"shut water at heater", "drain heater", "clean inlet strainer",
                           "open water at heater"}),
              "");
    EXPECT_FALSE(broke(mends, "out_of_scope"));
    EXPECT_TRUE(mends.truth().remaining.empty());
    Attempt meddles(igniter_job(water_side()), 7, Mode::assessed);
    ASSERT_EQ(play(meddles, isolate + Script{"replace igniter"}), "");
    EXPECT_TRUE(broke(meddles, "out_of_scope"));
}

TEST(Scope, SomebodyWhoMayRepairDoesNotEndTheJobByCallingAColleague) {
    Attempt attempt(igniter_job({}), 7, Mode::assessed);
    ASSERT_EQ(play(attempt, {"shut gas at heater", "tag heater", "issue unsafe notice",
                             "tell customer what is to be done", "escalate to licensed colleague"}),
              "");
    EXPECT_EQ(attempt.truth().remaining.size(), 1U);
}

TEST(Scope, KindsOfWorkCountAsTheRemediesDo) {
    Licence licence;
    licence.name = "plumber";
    std::fill(licence.works.begin(), licence.works.end(), std::uint8_t{0});
    const std::array scripts{
        Script{"shut gas at heater", "open test point inlet"},
        isolate + Script{"unplug outlet sensor"},
        Script{"put on gloves", "take cover off", "attach multimeter to supply terminals"}};
    for (const Script& script : scripts) {
        Attempt attempt(igniter_job(licence), 7, Mode::assessed);
        ASSERT_EQ(play(attempt, script), "");
        EXPECT_TRUE(broke(attempt, "out_of_scope")) << script.back();
    }
    Attempt looking(igniter_job(licence), 7, Mode::assessed);
    ASSERT_EQ(
        play(looking, {"look at display", "open bath tap", "measure temperature at bath tap"}), "");
    EXPECT_TRUE(looking.breaches().empty());
}

TEST(Scope, AnApprenticeAsksFirst) {
    Licence apprentice;
    apprentice.name = "apprentice";
    apprentice.supervised = true;
    Attempt alone(igniter_job(apprentice), 7, Mode::assessed);
    ASSERT_EQ(play(alone, isolate + Script{"replace igniter"}), "");
    EXPECT_TRUE(broke(alone, "unsupervised"));
    Attempt asked(igniter_job(apprentice), 7, Mode::assessed);
    ASSERT_EQ(play(asked, Script{"escalate to supervisor"} + isolate + Script{"replace igniter"}),
              "");
    EXPECT_TRUE(asked.breaches().empty());
}

TEST(Scope, IsPartOfTheStateThatARecordProves) {
    const Attempt covered(igniter_job({}), 7, Mode::assessed);
    const Attempt outside(igniter_job(without(Remedy::replace_igniter)), 7, Mode::assessed);
    EXPECT_NE(covered.state_hash(), outside.state_hash());
}

TEST(Scope, IsTakenUpByNameAndAnUnknownNameChangesNothing) {
    Practice practice;
    practice.licences = {without(Remedy::replace_igniter)};
    EXPECT_FALSE(take_licence(practice, "gasfiter"));
    EXPECT_TRUE(practice.licence.name.empty());
    EXPECT_TRUE(take_licence(practice, ""));
    EXPECT_TRUE(practice.licence.name.empty());
    EXPECT_TRUE(take_licence(practice, "gasfitter"));
    EXPECT_FALSE(practice.licence.covers(Remedy::replace_igniter));
}

}  // namespace
}  // namespace emberpath::worksite
