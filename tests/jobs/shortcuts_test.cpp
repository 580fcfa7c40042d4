// Proves that a short cut of a shipped job really seems to work while the trainee is there, and bites in the plant: in
// the day after, as its lines tell, or as a dose while the work is done.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <string_view>

#include "sim/scenario/scenario.hpp"
#include "sim/worksite/attempt.hpp"
#include "sim/worksite/hazards.hpp"
#include "tests/jobs/short_cuts.hpp"
#include "tests/support/branches.hpp"

namespace emberpath {
namespace {

namespace fs = std::filesystem;
using short_cut::takes;
using worksite::Quantity;

const fs::path root = EMBERPATH_SOURCE_DIR;

std::vector<ShortCut> short_cuts() {
    std::vector<ShortCut> all = short_cuts_of_gas_and_flue();
    for (const auto& group : {short_cuts_of_flame_and_sensors(), short_cuts_of_water_and_control()})
        all.insert(all.end(), group.begin(), group.end());
    return all;
}

class EachShortCut : public testing::TestWithParam<ShortCut> {};

double last_reading(const worksite::Attempt& attempt, Quantity quantity) {
    const auto& log = attempt.log();
    for (auto entry = log.rbegin(); entry != log.rend(); ++entry)
        for (const auto& seen : entry->observations)
            if (seen.quantity == quantity) return seen.value;
    ADD_FAILURE() << "nothing read";
    return 0.0;
}

void play(worksite::Attempt& attempt, const Script& acts) {
    for (const auto& act : acts) {
        const auto outcome = attempt.perform(act);
        ASSERT_NE(outcome.entry, nullptr) << act << ": " << outcome.refusal.text;
    }
}

/// What somebody reads afterwards of what was done and what came of it. The day after is lived through once for all of
/// it: that is most of these tests' time.
struct Record {
    std::string text;
    double worst_burn =
        0.0;  // share of a burn that five seconds take in the day after, where a line says so
};

double burn_in(const std::string& line) {
    const auto at = line.find(takes);
    return at == std::string::npos ? 0.0 : 0.01 * std::stod(line.substr(at + std::strlen(takes)));
}

Record record_of(const worksite::Attempt& attempt) {
    Record record;
    std::string& text = record.text;
    for (const auto& one : attempt.breaches()) text += one.text + "\n";
    const auto truth = attempt.truth();
    for (const auto* lines : {&truth.doses, &truth.left_behind})
        for (const auto& line : *lines) text += line + "\n";
    for (const auto& line : attempt.day_after().lines) {
        text += line + "\n";
        record.worst_burn = std::max(record.worst_burn, burn_in(line));
    }
    return record;
}

std::set<std::string> broken_rules(const worksite::Attempt& attempt) {
    std::set<std::string> rules;
    for (const auto& one : attempt.breaches()) rules.insert(one.rule);
    return rules;
}

/// As somebody who believes that it is done: everything is put away, told and written.
void leave_content(worksite::Attempt& attempt, bool told) {
    if (told) play(attempt, {"tell customer it works again"});
    play(attempt, {"write cause no_fault", "write because #1", "write done made it work again",
                   "write told it works again", "hand in"});
}

worksite::Job job_of(const ShortCut& one) {
    const auto loaded = scenario::load(root / "scenarios/jobs" / (std::string(one.job) + ".toml"));
    EXPECT_TRUE(loaded.good());
    return loaded.job;
}

/// Nobody who is locked out of hot water or stands before a dark panel would say that it works.
void expect_hot_water(const worksite::Attempt& attempt) {
    const auto left = testing::PrintToString(attempt.truth().left_behind);
    for (const char* words : {"is locked out", "power, gas or water is off", "out of use"})
        EXPECT_EQ(left.find(words), std::string::npos) << left;
}

TEST_P(EachShortCut, SeemsToWorkAndBites) {
    const ShortCut& one = GetParam();
    worksite::Attempt attempt(job_of(one), one.seed, worksite::Mode::assessed);
    play(attempt, {"ask customer for consent"});
    play(attempt, one.at_first);
    if (!one.at_first.empty()) {
        const double seen = last_reading(attempt, one.reading);
        EXPECT_TRUE(seen < one.well_from || seen > one.well_to) << seen << " looks well already";
    }
    play(attempt, one.taken);
    const double seen = last_reading(attempt, one.reading);
    EXPECT_GE(seen, one.well_from);
    EXPECT_LE(seen, one.well_to);
    play(attempt, one.then);
    ASSERT_EQ(attempt.over(), !one.then.empty());
    if (!attempt.over()) {
        leave_content(attempt, one.told);
        expect_hot_water(attempt);
    }
    EXPECT_FALSE(attempt.truth().remaining.empty()) << "the cause is still there";
    EXPECT_EQ(broken_rules(attempt), std::set<std::string>(one.breaks.begin(), one.breaks.end()));
    const Record record = record_of(attempt);
    for (const auto& words : one.bites)
        EXPECT_NE(record.text.find(words), std::string::npos) << words << "\n" << record.text;
    EXPECT_GE(record.worst_burn, one.burns) << record.text;
    // The gate column of docs/safety.md; whoever is hurt here is hurt by what closes it anyway.
    for (const auto& breach : attempt.breaches())
        EXPECT_EQ(breach.critical, worksite::rule(breach.rule).critical) << breach.rule;
}

bool bubbles_at_inlet(const worksite::Attempt& attempt) {
    const auto& shown = attempt.log().back().shown;
    return std::find(shown.begin(), shown.end(), "Bubbles at the inlet test point.") != shown.end();
}

/// As somebody does who looks at what the fluid shows: where it bubbles, the joint is made again and tested again.
void play_mending(worksite::Attempt& attempt, const Script& acts) {
    constexpr int most_tries = 4;
    for (const auto& act : acts) {
        play(attempt, {act});
        for (int i = 0; i < most_tries && bubbles_at_inlet(attempt); ++i)
            play(attempt, {"shut gas at heater", "remake joint inlet", "open gas at heater",
                           "leak test with fluid"});
    }
}

/// The words are those of the short cut: whoever does the job well is not told them, with the same joints weeping.
TEST_P(EachShortCut, BitesNobodyAfterTheGoodPathOfTheSameJob) {
    const ShortCut& one = GetParam();
    worksite::Attempt attempt(job_of(one), one.seed, worksite::Mode::assessed);
    Script acts;
    std::ifstream in(root / "tests/jobs/paths" / (std::string(one.job) + ".good.acts"));
    for (std::string line; std::getline(in, line);)
        if (!line.empty() && line.front() != '#') acts.push_back(line);
    play_mending(attempt, acts);
    ASSERT_TRUE(attempt.over());
    const Record record = record_of(attempt);
    for (const auto& words : one.bites)
        EXPECT_EQ(record.text.find(words), std::string::npos) << words << "\n" << record.text;
    if (one.burns > 0.0) {
        EXPECT_LT(record.worst_burn, one.burns) << record.text;
    }
    for (const auto& rule : one.breaks) EXPECT_EQ(broken_rules(attempt).count(rule), 0U) << rule;
}

/// What a house brings about that nobody worked at is no bite of a short cut, but where a row says why.
TEST_P(EachShortCut, BitesNobodyWhereTheHouseWasLeftAsItWasFound) {
    const ShortCut& one = GetParam();
    worksite::Attempt attempt(job_of(one), one.seed, worksite::Mode::assessed);
    play(attempt, {"hand in"});
    const Record record = record_of(attempt);
    const auto bites = std::count_if(one.bites.begin(), one.bites.end(), [&](const auto& words) {
        return record.text.find(words) != std::string::npos;
    });
    const double burns = record.worst_burn;
    const bool excepted = std::string_view(one.as_found) != "";
    EXPECT_EQ(excepted, bites > 0 || (one.burns > 0.0 && burns >= one.burns))
        << one.as_found << "\n"
        << record.text;
}

bool closes_a_gate(const ShortCut& one) {
    return std::any_of(one.breaks.begin(), one.breaks.end(),
                       [](const auto& rule) { return worksite::rule(rule).critical; });
}

/// A hand that does what nobody may do, in two houses of every branch.
TEST(EachBranchOfTheWork, HasTwoJobsWithAShortCutThatClosesAGate) {
    std::map<std::string, std::set<std::string>> jobs;
    for (const ShortCut& one : short_cuts())
        if (closes_a_gate(one)) jobs[branch_of(one.job)].insert(one.job);
    for (const Branch& branch : branches_of_the_work())
        EXPECT_GE(jobs[branch.name].size(), 2U) << branch.name;
}

std::string name_of(const testing::TestParamInfo<ShortCut>& one) {
    return one.param.name;
}
INSTANTIATE_TEST_SUITE_P(Jobs, EachShortCut, testing::ValuesIn(short_cuts()), name_of);
}  // namespace
}  // namespace emberpath
