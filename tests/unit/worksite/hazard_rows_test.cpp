// Proves, danger by danger, that a precaution taken and the same precaution skipped end differently: the rule is
// broken only where it was skipped, and what came of it stands in the record. docs/dangers.md is made from the
// same table.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include "sim/worksite/hazards.hpp"
#include "tests/unit/worksite/danger_pairs.hpp"

namespace emberpath::worksite {
namespace {

/// What the record holds of one visit: breaches of one rule, doses, what was left behind and what was shown; the
/// day after where it is asked for.
std::string record_of(const Attempt& attempt, const Danger& danger) {
    std::string text;
    for (const auto& one : attempt.breaches())
        if (one.rule == danger.rule) text += one.text + "\n";
    const auto truth = attempt.truth();
    for (const auto& line : truth.doses) text += line + "\n";
    for (const auto& line : truth.left_behind) text += line + "\n";
    if (danger.day_after)
        for (const auto& line : attempt.day_after().lines) text += line + "\n";
    return text + all_shown(attempt);
}

/// Broken in a visit that keeps its own rule. What both visits break says nothing of the precaution: they differ in
/// it and in nothing else, and the test holds them to that. The rest has a reason of its own.
struct Beside {
    std::string_view visit, rule, reason;
};
constexpr std::array beside{
    Beside{"H07CasingWithAnEarthThatWasMeasuredAndTrusted", "services_off",
           "the precaution is to leave it off, and the visit ends there, before a tag"},
    Beside{"H07HandOnACasingWhoseEarthNobodyMeasured", "services_off",
           "the precaution is to leave it off, and the visit ends there, before a tag"},
    Beside{"H10PeopleOfTheHouse", "services_off",
           "the gas is shut, and the visit ends there, before a tag"},
    Beside{"H14DrainBelowThePropane", "no_leak_test_before",
           "the gas is shut first, and without it a leak test shows nothing"},
    Beside{"H14WhoTrustsTheAirAboveADrain", "stayed_in_gas",
           "the drain is searched and the room not aired: the visit is about the drain"},
    Beside{"H17BurnerLeftAboveItsPlate", "live_work",
           "the hose comes off under power: the visit is about the flame"},
    Beside{"H17BurnerLeftAboveItsPlate", "no_leak_test", "the visit ends once the flame is set"},
    Beside{"H17BurnerLeftAboveItsPlate", "no_combustion_test",
           "the visit ends once the flame is set"},
};

bool has_reason(const Danger& danger, std::string_view rule) {
    return std::any_of(beside.begin(), beside.end(), [&](const Beside& one) {
        return one.visit == danger.name() && one.rule == rule && !one.reason.empty();
    });
}

/// Every rule broken where the precaution was taken, but for what was broken without it too.
std::string broken_beside(const Attempt& careful, const Attempt& careless, const Danger& danger) {
    std::string broken;
    for (const auto& one : careful.breaches()) {
        const bool own = one.rule == danger.rule;
        if (own || (!broke(careless, one.rule) && !has_reason(danger, one.rule)))
            broken += one.rule + ": " + one.text + "\n";
    }
    return broken;
}

class PrecautionTaken : public testing::TestWithParam<Danger> {};
class PrecautionSkipped : public testing::TestWithParam<Danger> {};

TEST_P(PrecautionTaken, AddsNoBreachAndNothingComesOfIt) {
    const Danger& danger = GetParam();
    Attempt careful(danger.job, danger.seed, Mode::assessed);
    ASSERT_EQ(play(careful, danger.taken), "");
    const std::string record = record_of(careful, danger);
    Attempt careless(danger.job, danger.seed, Mode::assessed);
    (void)play(careless, danger.skipped);
    EXPECT_EQ(broken_beside(careful, careless, danger), "") << record;
    for (const Beside& one : beside) {
        if (one.visit != danger.name()) continue;
        const std::string rule(one.rule);
        EXPECT_TRUE(broke(careful, rule) && !broke(careless, rule)) << rule << " needs no reason";
    }
    EXPECT_EQ(record.find(danger.recorded), std::string::npos) << record;
}

TEST_P(PrecautionSkipped, BreaksTheRuleAndWhatCameOfItIsRecorded) {
    const Danger& danger = GetParam();
    Attempt careless(danger.job, danger.seed, Mode::assessed);
    const auto refused = play(careless, danger.skipped);
    EXPECT_TRUE(refused.empty() || careless.over()) << refused;
    const std::string record = record_of(careless, danger);
    EXPECT_TRUE(broke(careless, danger.rule)) << record;
    EXPECT_NE(record.find(danger.recorded), std::string::npos) << record;
}

std::string name_of(const testing::TestParamInfo<Danger>& info) {
    return info.param.name();
}
INSTANTIATE_TEST_SUITE_P(Site, PrecautionTaken, testing::ValuesIn(every_danger()), name_of);
INSTANTIATE_TEST_SUITE_P(Site, PrecautionSkipped, testing::ValuesIn(every_danger()), name_of);

TEST(EveryDanger, IsMetWithAndWithoutItsPrecaution) {
    const auto all = every_danger();
    for (const auto& row : hazard_rows())
        EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const Danger& danger) {
            return std::string_view(danger.row) == row.number;
        })) << row.number;
    EXPECT_EQ(hazard_rows().size(), 35U);
}

TEST(EveryRule, IsBrokenInOneVisitAndKeptInItsTwin) {
    const auto all = every_danger();
    for (const auto& one : rules())
        EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const Danger& danger) {
            return one.word == danger.rule;
        })) << one.word;
}

constexpr const char* opening = R"(# Dangers, and the visits that show them

<!-- Made from tests/unit/worksite/danger_rows.cpp and the visits beside it; a test compares. -->

Thirty-five dangers of the trade. Each is met at least twice in the tests, in the same house by the same
hand: once with the precaution (`PrecautionTaken`), once without (`PrecautionSkipped`). With it the rule is
kept and the last column is not in the record; without it the rule is broken and it is. The rules, their
weights and the figures behind what follows: safety.md. What somebody does who believes a neglected instrument
(H34: overdue, low battery, not zeroed, zeroed in products, coarse range): tests/unit/worksite/wrong_readings_test.cpp.

| danger | what threatens | what is to be done | what follows otherwise |
|---|---|---|---|
)";

constexpr const char* visits = R"(
## The visits

The tests are `Site/PrecautionTaken.AddsNoBreachAndNothingComesOfIt/NAME` and
`Site/PrecautionSkipped.BreaksTheRuleAndWhatCameOfItIsRecorded/NAME` in
tests/unit/worksite/hazard_rows_test.cpp. Dots stand for the figures of the visit.

| NAME | rule | recorded where it was skipped |
|---|---|---|
)";

std::string dangers_page() {
    std::string text = opening;
    for (const auto& row : hazard_rows())
        text += std::string("| ") + row.number + " | " + row.hazard + " | " + row.precaution +
                " | " + row.follows + " |\n";
    text += visits;
    for (const auto& one : every_danger())
        text += "| " + one.name() + " | " + one.rule + " | ..." + one.recorded + "... |\n";
    return text;
}

TEST(Manual, ListsTheDangersAndTheirVisits) {
    const std::string path = std::string(EMBERPATH_SOURCE_DIR) + "/docs/dangers.md";
    if (std::getenv("EMBERPATH_REGENERATE") != nullptr) std::ofstream(path) << dangers_page();
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    EXPECT_EQ(text.str(), dangers_page());
}

}  // namespace
}  // namespace emberpath::worksite
