// Proves that the limits which close a gate or count as harm are those of the rules: with the limit moved beyond
// what the visit meets, the same careless visit no longer breaks the rule.

#include <gtest/gtest.h>

#include <algorithm>

#include "sim/worksite/doses.hpp"
#include "tests/unit/worksite/danger_pairs.hpp"

namespace emberpath::worksite {
namespace {

struct Moved {
    const char* name;
    const char* visit;  // of docs/dangers.md
    double Limits::*limit;
    double beyond;
};
void PrintTo(const Moved& one, std::ostream* out) {
    *out << one.name;
}

class LimitOfThePlace : public testing::TestWithParam<Moved> {};

TEST_P(LimitOfThePlace, DecidesWhetherTheVisitBreaksTheRule) {
    const Moved& moved = GetParam();
    const auto all = every_danger();
    const auto danger = std::find_if(all.begin(), all.end(),
                                     [&](const Danger& one) { return one.name() == moved.visit; });
    ASSERT_NE(danger, all.end()) << moved.visit;
    for (const bool general : {true, false}) {
        Job job = danger->job;
        if (!general) job.practice.limits.*moved.limit = moved.beyond;
        Attempt careless(job, danger->seed, Mode::assessed);
        const auto refused = play(careless, danger->skipped);
        ASSERT_TRUE(refused.empty() || careless.over()) << refused;
        EXPECT_EQ(broke(careless, danger->rule), general) << all_shown(careless);
    }
}

INSTANTIATE_TEST_SUITE_P(
    Each, LimitOfThePlace,
    testing::Values(
        Moved{"ScaldWater", "H26SkinUnderTheTap", &Limits::scald_water_k, 400.0},
        Moved{"Spillage", "H21RoomWithAnOpenFlueAndAFan", &Limits::spillage, 1.0},
        Moved{"BareHandMetal", "H25BareHandOnHotMetal", &Limits::bare_hand_metal_k, 600.0},
        Moved{"DangerousVoltage", "H02LeadsOnLiveTerminals", &Limits::dangerous_v, 400.0},
        Moved{"DangerousPipeVoltage", "H03HouseholdWhoseElectricianWasTold",
              &Limits::dangerous_pipe_v, 400.0},
        Moved{"BloodUnfit", "H19WhoWorksOnUntilItIsTooMuch", &Limits::blood_unfit, 1.0},
        Moved{"StoredCharge", "H04HandThatDoesNotWait", &Limits::stored_charge_v, 400.0},
        Moved{"RoofStay", "H31WhoStaysTooLong", &Limits::roof_stay_s, 3600.0},
        Moved{"LadderHeight", "H29WhoClimbsUnlooked", &Limits::ladder_height_m, 10.0},
        Moved{"LadderWind", "H29WhoClimbsInTheWind", &Limits::ladder_wind_pa, 500.0}),
    [](const auto& one) { return std::string(one.param.name); });

TEST(LimitsOfThePlace, NameTheShareOfBloodWhereHeadacheBegins) {
    Limits limits;
    limits.blood_headache = 0.07;
    EXPECT_NE(dose_lines(Doses{}, limits).front().find("headache begins near 7 %"),
              std::string::npos);
}

}  // namespace
}  // namespace emberpath::worksite
