// Proves that the same fault in the same house is a repair under one place's rules and is handed on under another's:
// what ends the job well under the one ends it badly under the other, both ways.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "sim/scenario/scenario.hpp"
#include "sim/worksite/attempt.hpp"

namespace emberpath {
namespace {

namespace fs = std::filesystem;

const fs::path scenarios = fs::path(EMBERPATH_SOURCE_DIR) / "scenarios";

worksite::Job loaded(const fs::path& file) {
    auto from = scenario::load(scenarios / file);
    EXPECT_TRUE(from.good()) << file;
    return from.job;
}

/// The acts of a job's good path.
std::vector<std::string> repair(const std::string& name) {
    std::ifstream in(fs::path(EMBERPATH_SOURCE_DIR) / "tests/jobs/paths" / (name + ".good.acts"));
    std::vector<std::string> acts;
    for (std::string line; std::getline(in, line);)
        if (!line.empty() && line.front() != '#') acts.push_back(line);
    return acts;
}

/// Found in the same way, then made safe and left to somebody who may.
std::vector<std::string> handing_on() {
    auto acts = repair("willow");
    acts.erase(std::find(acts.begin(), acts.end(), "dry and reseal wiring"), acts.end());
    for (const char* act :
         {"refit cover", "shut gas at heater", "tag heater", "issue unsafe notice",
          "tell customer rain ran into the wiring; leave it off until my colleague has been",
          "escalate to licensed colleague", "write because #2 #3 #4",
          "write done found the damp wiring, isolated and tagged the heater, sent for a colleague",
          "write told it stays off until a colleague has dried the wiring", "hand in"})
        acts.emplace_back(act);
    return acts;
}

struct Ended {
    bool settled = false;
    std::set<std::string> gates;  // rules broken that close one
};

Ended work(const worksite::Job& job, const std::vector<std::string>& acts) {
    worksite::Attempt attempt(job, 1, worksite::Mode::assessed);
    for (const auto& act : acts) {
        const auto outcome = attempt.perform(act);
        EXPECT_NE(outcome.entry, nullptr) << act << ": " << outcome.refusal.text;
    }
    EXPECT_TRUE(attempt.over());
    Ended ended{attempt.truth().remaining.empty(), {}};
    for (const auto& one : attempt.breaches())
        if (one.critical) ended.gates.insert(one.rule);
    return ended;
}

const std::set<std::string> no_gate{}, outside{"out_of_scope"};

TEST(UnderOtherRules, TheRepairOfOnePlaceIsABreachInTheOther) {
    const Ended here = work(loaded("jobs/willow.toml"), repair("willow"));
    EXPECT_TRUE(here.settled);
    EXPECT_EQ(here.gates, no_gate);
    EXPECT_EQ(work(loaded("elsewhere/willow.toml"), repair("willow")).gates, outside);
}

TEST(UnderOtherRules, HandingOnEndsTheJobOnlyWhereTheRepairIsSomebodyElses) {
    const Ended there = work(loaded("elsewhere/willow.toml"), handing_on());
    EXPECT_TRUE(there.settled);
    EXPECT_EQ(there.gates, no_gate);
    const Ended here = work(loaded("jobs/willow.toml"), handing_on());
    EXPECT_FALSE(here.settled) << "who may dry the wiring has to";
}

/// One job of each kind that the other place keeps for specialists, and two that it does not.
TEST(UnderOtherRules, FaultsOfGasWaterFlameAndSettingsFlipAndOthersStayAsTheyAre) {
    const worksite::Practice upland = loaded("elsewhere/willow.toml").practice;
    for (const char* name : {"saltmarsh", "rowan", "basalt", "plover"}) {
        worksite::Job job = loaded("jobs/" + std::string(name) + ".toml");
        EXPECT_EQ(work(job, repair(name)).gates, no_gate) << name;
        job.practice = upland;
        EXPECT_EQ(work(job, repair(name)).gates, outside) << name;
    }
    for (const char* name : {"tanager", "teasel"}) {
        worksite::Job job = loaded("jobs/" + std::string(name) + ".toml");
        job.practice = upland;
        EXPECT_EQ(work(job, repair(name)).gates, no_gate) << name;
    }
}

/// The other place changes who may do what, and no limit.
TEST(UnderOtherRules, EveryLicenceOfTheOtherPlaceIsNamedAndTheLimitsAreTheSame) {
    const auto here = loaded("jobs/willow.toml").practice;
    const auto there = loaded("elsewhere/willow.toml").practice;
    EXPECT_EQ(there.name, "Upland practice");
    EXPECT_EQ(
        worksite::licence_names(there),
        (std::vector<std::string>{"gasfitter with electrical licence", "gasfitter", "apprentice"}));
    EXPECT_EQ(there.limits.co_eight_hours, here.limits.co_eight_hours);
    EXPECT_EQ(there.limits.bathroom_water_k, here.limits.bathroom_water_k);
}

}  // namespace
}  // namespace emberpath
