// Proves that every scenario that ships loads, and that its house, customer and fault are sane.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <set>
#include <string_view>

#include "tests/support/branches.hpp"
#include "tests/unit/scenario/written.hpp"

namespace emberpath::scenario {
namespace {

const std::filesystem::path source_folder = EMBERPATH_SOURCE_DIR;

std::vector<Loaded> shipped() {
    std::vector<Loaded> all;
    for (const auto& file : list_jobs(source_folder / "scenarios/jobs")) all.push_back(load(file));
    return all;
}

TEST(ShippedScenarios, HaveNoProblems) {
    for (const Loaded& loaded : shipped()) EXPECT_EQ(problems_of(loaded), "") << loaded.job.name;
}

TEST(ShippedScenarios, CoverTheCausesListedHere) {
    using enum faults::Cause;
    std::set<faults::Cause> causes;
    for (const Loaded& loaded : shipped()) {
        ASSERT_GE(loaded.job.faults.size(), 1U) << loaded.job.name;
        ASSERT_LE(loaded.job.faults.size(), 2U) << loaded.job.name;
        for (const auto& fault : loaded.job.faults) causes.insert(fault.cause);
    }
    const std::set<faults::Cause> expected{no_fault,
                                           flue_blocked,
                                           wind_gust,
                                           cylinder_low,
                                           gas_setting_wrong,
                                           outlet_sensor_open,
                                           outlet_sensor_drift,
                                           electrode_fouled,
                                           flame_lead_broken,
                                           valve_coil_open,
                                           exchanger_scaled,
                                           strainer_blocked,
                                           earth_missing,
                                           moisture_in_heater,
                                           gas_pipe_restriction,
                                           highest_setting_raised,
                                           priority_elsewhere,
                                           companion_link_open,
                                           supply_swapped,
                                           neutral_broken,
                                           tempering_valve_worn,
                                           altitude_setting_wrong,
                                           regulator_droop,
                                           exchanger_sooted,
                                           high_fire_overset,
                                           outlet_clogged,
                                           changeover_stuck,
                                           second_stage_passes,
                                           room_too_tight,
                                           regulator_creeps,
                                           gas_union_weeps,
                                           limiter_bridged,
                                           outlet_sensor_opens_warm,
                                           igniter_lead_cracked,
                                           flow_sensor_sticks};
    EXPECT_EQ(causes, expected);
}

/// Ten branches of the work; no job stands in two of them.
TEST(ShippedScenarios, CoverEveryBranchOfTheWork) {
    std::multiset<std::string> listed, present;
    for (const Branch& branch : branches_of_the_work())
        listed.insert(branch.jobs.begin(), branch.jobs.end());
    for (const Loaded& loaded : shipped()) present.insert(loaded.job.name);
    EXPECT_EQ(listed, present);
}

/// What stands on the lines of docs/jobs.md that hold a mark.
std::string lines_with(const std::string& mark) {
    std::ifstream page(source_folder / "docs/jobs.md");
    std::string text;
    for (std::string line; std::getline(page, line);)
        if (line.find(mark) != std::string::npos) text += line + "\n";
    return text;
}

TEST(ShippedScenarios, StandOnThePageOfJobsInTheirBranch) {
    for (const Branch& branch : branches_of_the_work()) {
        const std::string row = lines_with("| " + branch.name + " |");
        for (const auto& job : branch.jobs) {
            const bool listed = row.find(" " + job + " (") != std::string::npos;
            EXPECT_TRUE(listed) << branch.name << ": " << job << "\n" << row;
        }
        EXPECT_EQ(std::count(row.begin(), row.end(), '('), std::ssize(branch.jobs)) << row;
    }
}

/// Somebody may ask why a cause is no job: each has a job or a reason, and none has both.
TEST(ShippedScenarios, HaveEveryCauseOrThePageOfJobsSaysWhyNot) {
    std::set<faults::Cause> in_jobs;
    for (const Loaded& loaded : shipped())
        for (const auto& fault : loaded.job.faults) in_jobs.insert(fault.cause);
    for (const auto& row : faults::catalogue()) {
        const bool has_a_reason = !lines_with("`" + std::string(row.word) + "`").empty();
        EXPECT_NE(in_jobs.count(row.cause) > 0, has_a_reason) << row.word;
    }
}

TEST(ShippedScenarios, StandAtFiveOrMoreSites) {
    std::set<std::string> names;
    for (const Loaded& loaded : shipped()) names.insert(loaded.job.site.name);
    EXPECT_GE(names.size(), 5U);
}

TEST(ShippedScenarios, HaveShortHistoriesWithAHouseholdThatUsesWater) {
    for (const Loaded& loaded : shipped()) {
        const worksite::Site& site = loaded.job.site;
        EXPECT_LE(site.arrival_s, 2400.0) << loaded.job.name;
        const auto draws_before = [&](const worksite::HouseholdEvent& event) {
            return event.kind == worksite::HouseholdEvent::Kind::tap && event.at_s < site.arrival_s;
        };
        EXPECT_TRUE(std::any_of(site.events.begin(), site.events.end(), draws_before))
            << loaded.job.name;
    }
}

/// Nobody arrives at a house with the bath running, and no event names what is not there.
TEST(ShippedScenarios, LeaveEveryTapShutAtArrival) {
    for (const Loaded& loaded : shipped()) {
        const worksite::Site& site = loaded.job.site;
        std::vector<double> opening(site.taps.size(), 0.0);
        for (const worksite::HouseholdEvent& event : site.events) {
            if (event.kind != worksite::HouseholdEvent::Kind::tap) continue;
            ASSERT_LT(event.index, site.taps.size());
            if (event.at_s <= site.arrival_s) opening[event.index] = event.value;
        }
        for (const double tap : opening) EXPECT_EQ(tap, 0.0) << loaded.job.name;
    }
}

TEST(ShippedScenarios, TapsAreOfHouseholdSize) {
    for (const Loaded& loaded : shipped()) {
        double widest = 0.0;
        for (const worksite::Tap& tap : loaded.job.site.taps) {
            EXPECT_GT(tap.conductance, 0.2 * 5.270463e-7) << loaded.job.name << " " << tap.name;
            widest = std::max(widest, tap.conductance);
        }
        // Some tap must be able to ask for more than the heater can heat.
        EXPECT_GT(widest, 0.9 * 5.270463e-7) << loaded.job.name;
        EXPECT_LT(widest, 2.0 * 5.270463e-7) << loaded.job.name;
    }
}

TEST(ShippedScenarios, CustomersAnswerEveryTopic) {
    for (const Loaded& loaded : shipped()) {
        EXPECT_EQ(loaded.job.customer.answers.size(), 8U) << loaded.job.name;
    }
}

/// Dangers of a house that stand in its file, not only in the houses that tests make up; two at most, for a visit is
/// about its heater.
TEST(ShippedScenarios, HoldEveryDangerOfAHouseSomewhereAndTwoAtMostEach) {
    constexpr std::array<std::string_view, 8> kinds{
        "smell of gas (H10)",     "propane lies low (H14)", "cylinder badly placed (H15)",
        "scorch marks (H24)",     "ladder (H29)",           "old sheet (H30)",
        "through the roof (H31)", "children (H32)"};
    std::array<int, kinds.size()> jobs{};
    for (const Loaded& loaded : shipped()) {
        const worksite::Dangers& d = loaded.job.site.dangers;
        const bool propane = loaded.job.site.gas == worksite::GasKind::propane_cylinder;
        const std::array<bool, kinds.size()> holds{d.leak_m3_per_s > 0.0,
                                                   propane && d.low_place && d.leak_m3_per_s > 0.0,
                                                   propane && d.cylinder_close,
                                                   d.scorched,
                                                   d.terminal_height_m >= 2.0,
                                                   d.old_sheet,
                                                   d.pipe_in_roof,
                                                   d.children};
        EXPECT_LE(std::count(holds.begin(), holds.end(), true), 2) << loaded.job.name;
        for (std::size_t i = 0; i < kinds.size(); ++i) jobs.at(i) += holds.at(i) ? 1 : 0;
    }
    for (std::size_t i = 0; i < kinds.size(); ++i) EXPECT_GE(jobs.at(i), 1) << kinds.at(i);
}

std::string lower(std::string text) {
    for (char& c : text) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return text;
}

TEST(ShippedScenarios, NeverNameTheCause) {
    constexpr std::array telling{"flue",  "sensor",    "thermistor", "electrode", "regulator",
                                 "gust",  "blocked",   "igniter",    "soot ",     "empty",
                                 "fault", "undersize", "fouled",     "drift",     "capacity"};
    for (const Loaded& loaded : shipped()) {
        const worksite::Job& job = loaded.job;
        std::string said =
            job.name + " " + job.title + " " + job.call_out + " " + job.customer.words;
        for (const auto& [topic, answer] : job.customer.answers) said += " " + answer;
        for (const char* word : telling)
            EXPECT_EQ(lower(said).find(word), std::string::npos) << job.name << ": " << word;
    }
}

TEST(ShippedScenarios, HeatersGiveTheirRatedHeatInput) {
    for (const Loaded& loaded : shipped()) {
        const plant::PlantParameters& p = loaded.job.healthy;
        const double area = p.injector_m2[0] + p.injector_m2[1] + p.injector_m2[2];
        const double gas = area * std::sqrt(2.0 * p.full_manifold_pa / p.gas_kg_per_m3);
        EXPECT_NEAR(gas * p.gross_j_per_m3 / loaded.job.settings.full_heat_input_w, 1.0, 0.005)
            << loaded.job.name;
    }
}

TEST(ShippedScenarios, HashIsTheSameTwice) {
    const std::vector<Loaded> first = shipped();
    const std::vector<Loaded> second = shipped();
    std::set<std::string> hashes;
    for (std::size_t at = 0; at < first.size(); ++at) {
        EXPECT_EQ(first[at].hash, second[at].hash);
        hashes.insert(first[at].hash);
    }
    EXPECT_EQ(hashes.size(), first.size());
}

}  // namespace
}  // namespace emberpath::scenario
