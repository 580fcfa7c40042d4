// Proves what a list does where nothing burns, and that the looks beyond every list leave the house as they found it.

#include "sim/trainees/ways.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "sim/trainees/rating.hpp"
#include "tests/unit/trainees/small_house.hpp"

namespace emberpath::trainees {
namespace {

using faults::Cause;
using ::testing::Contains;
using ::testing::IsSupersetOf;
using ::testing::Not;
using worksite::Quantity;

std::vector<std::string> said_by(const Visit& visit) {
    std::vector<std::string> said;
    for (const auto& act : visit.acts()) said.push_back(act.sentence);
    return said;
}

std::vector<std::string> checklist_of(Cause cause) {
    Visit visit(small_house(cause), 1);
    Hands hands(visit, {});
    (void)find_by_checklist(hands);
    return said_by(visit);
}

TEST(Checklist, PassesOverWhatABurnerThatRunsWouldShowWhereNoneRuns) {
    const auto said = checklist_of(Cause::flame_lead_broken);
    EXPECT_THAT(said, Contains("read readout flow"));  // after the burner rows: it did come so far
    for (const char* row :
         {"read readout correction", "read readout air trim", "measure temperature of outlet pipe"})
        EXPECT_THAT(said, Not(Contains(row)));
}

TEST(Checklist, ReadsABurnerThatRuns) {
    EXPECT_THAT(checklist_of(Cause::gas_pipe_restriction),
                IsSupersetOf({"measure temperature at bath tap", "read readout flow",
                              "measure temperature of outlet pipe"}));
}

TEST(GuesserWithAToken, NeverLooksWhereTheGuessedFaultWouldShow) {
    auto job = small_house(Cause::no_fault);
    job.customer.complaint = worksite::Complaint::goes_cold_after_a_while;
    bool has_taken_another = false;
    for (std::uint64_t seed = 1; seed <= 8; ++seed) {
        const Played played = play(Policy::token_guesser, job, seed);
        ASSERT_EQ(played.named, Cause::flue_blocked) << "by the complaint";
        for (const auto& act : played.acts) {
            EXPECT_NE(act.sentence, "look at flue terminal");
            has_taken_another = has_taken_another || act.sentence == "read readout fan current" ||
                                act.sentence == "read readout inlet temperature" ||
                                act.sentence == "measure temperature of inlet pipe";
        }
    }
    EXPECT_TRUE(has_taken_another);
}

TEST(HandingEverythingOn, IsSafeAndListsAllCausesAndIsProposedForNothing) {
    const auto job = small_house(Cause::igniter_failed);
    const Played played = play(Policy::hands_all_on, job, 1);
    const auto told = [&](const char* sentence) {
        return std::any_of(played.acts.begin(), played.acts.end(),
                           [&](const auto& act) { return act.sentence == sentence; });
    };
    EXPECT_TRUE(told("tag heater"));
    EXPECT_TRUE(told("write possible cause flue_blocked"));
    EXPECT_FALSE(told("write possible cause no_fault"));
    const Scored scored = score(job, 1, played);
    EXPECT_TRUE(scored.gates_met);
    EXPECT_FALSE(scored.unopposed);
    EXPECT_LT(scored.areas[1], 50.0) << "evidence";
    EXPECT_LE(scored.areas[3], 60.0) << "remedy";
}

TEST(Hands, WatchTheLockUpForTenMinutesAndTakeTheManometerAway) {
    Visit visit(small_house(Cause::no_fault), 1);
    Hands hands(visit, {});
    hands.watch_lock_up();
    const auto said = said_by(visit);
    EXPECT_THAT(said, IsSupersetOf({"wait 10 min", "close test point inlet"}));
    ASSERT_NE(hands.latest(Quantity::gas_inlet_pressure), nullptr);
    EXPECT_GT(hands.latest(Quantity::gas_inlet_pressure)->value, 2000.0);  // Pa, locked up
    EXPECT_EQ(hands.latest(Quantity::gas_inlet_pressure)->condition.phase,
              controller::Phase::standby);
}

TEST(Hands, TryAnOpenFlueWithTheWindowsOpenAndLeaveThemShutAndTheFanOff) {
    Visit visit(open_flued_house(0.15), 1);
    Hands hands(visit, {});
    hands.test_draught_with_air();
    const auto said = said_by(visit);
    const auto place = [&](const char* s) { return std::find(said.begin(), said.end(), s); };
    ASSERT_NE(place("test draught with smoke"), said.end());
    EXPECT_LT(place("run range hood"), place("test draught with smoke"));
    EXPECT_LT(place("open kitchen window"), place("test draught with smoke"));
    EXPECT_NE(std::find(place("test draught with smoke"), said.end(), "close kitchen window"),
              said.end());
    EXPECT_NE(std::find(place("test draught with smoke"), said.end(), "stop range hood"),
              said.end());
    EXPECT_NE(hands.latest(Quantity::flue_co), nullptr);
}

TEST(Hands, TryNoWindowsWhereTheFlueIsSealedFromTheRoom) {
    Visit visit(small_house(Cause::no_fault), 1);
    Hands hands(visit, {});
    hands.test_draught_with_air();
    EXPECT_TRUE(visit.acts().empty());
}

}  // namespace
}  // namespace emberpath::trainees
