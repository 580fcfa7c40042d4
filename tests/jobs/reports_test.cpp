// Proves of two shipped jobs who has to be told beside the customer: the landlord of a tenant, and the regulator where
// the customer refuses; and what becomes of the heater when they are not.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "sim/scenario/scenario.hpp"
#include "sim/worksite/attempt.hpp"

namespace emberpath {
namespace {

namespace fs = std::filesystem;

worksite::Job job_of(const std::string& name) {
    const auto loaded =
        scenario::load(fs::path(EMBERPATH_SOURCE_DIR) / "scenarios/jobs" / (name + ".toml"));
    EXPECT_TRUE(loaded.good());
    return loaded.job;
}

/// The good path of the job, without the acts that begin so.
worksite::Attempt good_path(const std::string& name, const std::string& left_out = "nothing") {
    worksite::Attempt attempt(job_of(name), 1, worksite::Mode::assessed);
    std::ifstream in(fs::path(EMBERPATH_SOURCE_DIR) / "tests/jobs/paths" / (name + ".good.acts"));
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line.front() == '#' || line.starts_with(left_out)) continue;
        const auto outcome = attempt.perform(line);
        EXPECT_NE(outcome.entry, nullptr) << line << ": " << outcome.refusal.text;
    }
    return attempt;
}

std::string breach_of(const worksite::Attempt& attempt, const std::string& rule) {
    for (const auto& one : attempt.breaches())
        if (one.rule == rule) return one.text;
    return {};
}

bool day_says(const worksite::Attempt& attempt, const std::string& words) {
    const auto lines = attempt.day_after().lines;
    return std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
        return line.find(words) != std::string::npos;
    });
}

TEST(RentedHouse, HasItsOwnerToldBesideTheElectrician) {
    ASSERT_TRUE(job_of("wren").customer.tenant);
    const auto told = good_path("wren"), untold = good_path("wren", "escalate to owner");
    EXPECT_EQ(breach_of(told, "not_reported"), "");
    EXPECT_EQ(breach_of(untold, "not_reported"),
              "Of a dangerous heater in a rented house, whom to tell was the owner; you told the "
              "electrician.");
    EXPECT_TRUE(told.truth().made_safe);
}

TEST(RefusingCustomer, HasTheHeaterShutOnceTheDangerHasShownAndTheRegulatorTold) {
    ASSERT_EQ(job_of("mallow").customer.agrees, worksite::Consent::never);
    const auto told = good_path("mallow");
    EXPECT_EQ(breach_of(told, "no_consent"), "");
    EXPECT_EQ(breach_of(told, "not_reported"), "");
    EXPECT_TRUE(told.truth().made_safe);
    EXPECT_FALSE(day_says(told, "turned it on again"));
    const auto& log = told.log();
    EXPECT_TRUE(std::any_of(log.begin(), log.end(), [](const auto& entry) {
        return !entry.shown.empty() &&
               entry.shown.front().find("will not sign") != std::string::npos;
    }));
}

TEST(RefusingCustomer, TurnsTheHeaterOnAgainWhereNobodyElseWasTold) {
    const auto untold = good_path("mallow", "escalate to technical regulator");
    EXPECT_EQ(
        breach_of(untold, "not_reported"),
        "Of an unsafe heater that the customer will have neither shut nor mended, whom to tell "
        "was the distributor or the technical regulator; you told nobody.");
    EXPECT_FALSE(untold.truth().made_safe);
    EXPECT_TRUE(
        day_says(untold, "They turned it on again themselves, whatever tag and notice say."));
    EXPECT_TRUE(day_says(untold, "of the products of combustion entered the room"));
}

TEST(RefusingCustomer, IsNotOverruledBeforeADangerHasShown) {
    const auto hasty = good_path("mallow", "test draught");
    EXPECT_NE(breach_of(hasty, "no_consent"), "");
}

}  // namespace
}  // namespace emberpath
