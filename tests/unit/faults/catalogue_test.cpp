// Proves that the catalogue is complete and consistent, that its words lead back to its causes, and that
// docs/causes.md prints exactly what the table holds.

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>

#include "sim/faults/faults.hpp"
#include "sim/units/units.hpp"

namespace emberpath::faults {
namespace {

TEST(Catalogue, ListsEveryCauseAtItsOwnIndex) {
    ASSERT_EQ(catalogue().size(), cause_count);
    for (std::size_t i = 0; i < cause_count; ++i) {
        EXPECT_EQ(static_cast<std::size_t>(catalogue()[i].cause), i);
        EXPECT_EQ(&info(catalogue()[i].cause), &catalogue()[i]);
    }
}

TEST(Catalogue, WordsAreDistinctAndFound) {
    std::set<std::string_view> words, titles;
    for (const CauseInfo& row : catalogue()) {
        EXPECT_TRUE(words.insert(row.word).second);
        EXPECT_TRUE(titles.insert(row.title).second);
        EXPECT_EQ(find_cause(row.word), &row);
    }
    EXPECT_EQ(find_cause("flue_blockd"), nullptr);
    EXPECT_EQ(find_cause(""), nullptr);
}

TEST(Catalogue, RangesFrequenciesAndFlagsMakeSense) {
    for (const CauseInfo& row : catalogue()) {
        EXPECT_GT(row.frequency, 0.0) << row.word;
        EXPECT_GE(row.least_severity, 0.0) << row.word;
        EXPECT_LE(row.least_severity, row.greatest_severity) << row.word;
        EXPECT_FALSE(row.cylinder_only && row.mains_only) << row.word;
        EXPECT_EQ(row.on_off, row.least_severity == row.greatest_severity) << row.word;
        EXPECT_FALSE(row.effect.empty());
        EXPECT_EQ(row.effect.back(), '.') << row.word;
    }
}

TEST(Catalogue, CausesActOnlyWhereTheirPartIs) {
    const auto acts = [](Cause cause, const SiteTraits& site) {
        return can_act(info(cause), site);
    };
    const SiteTraits plain{.outlets = 2}, cylinder{.cylinder = true};
    EXPECT_TRUE(acts(Cause::no_fault, plain));
    EXPECT_TRUE(acts(Cause::gas_isolator_part_shut, cylinder));
    EXPECT_FALSE(acts(Cause::cylinder_low, plain));
    EXPECT_FALSE(acts(Cause::gas_setting_wrong, cylinder));
    EXPECT_FALSE(acts(Cause::changeover_stuck, cylinder));
    EXPECT_FALSE(acts(Cause::changeover_stuck, {.cylinder_pair = true}));  // no cylinder at all
    EXPECT_TRUE(acts(Cause::changeover_stuck, {.cylinder = true, .cylinder_pair = true}));
    EXPECT_FALSE(acts(Cause::open_flue_blocked, plain));
    EXPECT_TRUE(acts(Cause::open_flue_blocked, {.open_flue = true}));
    EXPECT_TRUE(acts(Cause::outlet_clogged, plain));
    EXPECT_FALSE(acts(Cause::outlet_clogged, {.outlets = 1}));
    EXPECT_FALSE(acts(Cause::tempering_valve_worn, plain));
    EXPECT_TRUE(acts(Cause::tempering_valve_worn, {.tempering_valve = true}));
    EXPECT_FALSE(acts(Cause::night_pressure_high, plain));
    EXPECT_TRUE(acts(Cause::night_pressure_high, {.night = true}));
    EXPECT_FALSE(acts(Cause::link_cable_corroded, plain));
    EXPECT_TRUE(acts(Cause::link_cable_corroded, {.wall_controllers = 1}));
    EXPECT_FALSE(acts(Cause::priority_elsewhere, {.wall_controllers = 1}));
    EXPECT_TRUE(acts(Cause::priority_elsewhere, {.wall_controllers = 2}));
    EXPECT_FALSE(acts(Cause::highest_setting_raised, plain));
    EXPECT_TRUE(acts(Cause::highest_setting_raised, {.high_set_value = true}));
    EXPECT_TRUE(acts(Cause::air_tube_water, {.air_tube = true}));
    EXPECT_FALSE(acts(Cause::air_tube_water, {}));
    EXPECT_TRUE(acts(Cause::companion_link_open, {.companion = true}));
    EXPECT_FALSE(acts(Cause::companion_link_open, {}));
}

TEST(Remedies, EachHasItsOwnWordAndSetsSomethingRight) {
    std::set<std::string_view> words;
    std::set<Remedy> used;
    for (std::size_t i = 0; i < remedy_count; ++i) {
        EXPECT_TRUE(words.insert(remedy_word(static_cast<Remedy>(i))).second);
        EXPECT_FALSE(remedy_title(static_cast<Remedy>(i)).empty());
    }
    for (const CauseInfo& row : catalogue()) used.insert(row.remedy);
    EXPECT_EQ(used.size(), remedy_count);
}

/// Causes that one remedy sets right are parts of one thing: nobody has to tell them apart.
TEST(Remedies, AreSharedOnlyByCausesOfOnePart) {
    std::map<Remedy, std::set<std::string_view>> parts;
    for (const CauseInfo& row : catalogue()) {
        const std::string_view word = row.word;
        const auto part = word.substr(0, word.find('_', word.find('_') + 1));
        parts[row.remedy].insert(part);
    }
    for (const auto& [remedy, names] : parts) {
        // The fan brings its speed sensor, the gas valve its coil; what is handed on is its owner's to find.
        if (remedy == Remedy::replace_fan || remedy == Remedy::replace_gas_valve) continue;
        // The limiter is one small part; the settings are one list, read and put right together.
        if (remedy == Remedy::replace_limiter || remedy == Remedy::correct_settings) continue;
        if (!works_at_once(remedy)) continue;
        EXPECT_EQ(names.size(), 1U) << remedy_word(remedy);
    }
}

TEST(Remedies, SayToWhomTheyGoExactlyWhereTheyAreHandedOn) {
    for (const RemedyInfo& row : remedies) {
        const bool asks_whom = row.sentence.find("{body}") != std::string_view::npos;
        EXPECT_EQ(asks_whom, row.whom != Whom::nobody) << row.word;
        if (asks_whom) {
            EXPECT_EQ(row.reach, Reach::words) << row.word;
        }
        EXPECT_GT(row.minutes, 0.0) << row.word;
        EXPECT_TRUE(row.joint == GasJoint::none || row.reach != Reach::words) << row.word;
    }
}

std::string catalogue_table() {
    const auto number = [](double x) { return units::fixed(x, 2); };
    std::string text =
        "| word | title | what it does | symptomatic range | gas | set right by | frequency |\n"
        "|---|---|---|---|---|---|---|\n";
    for (const CauseInfo& row : catalogue()) {
        std::string range =
            row.on_off ? "on or off"
                       : number(row.least_severity) + " to " + number(row.greatest_severity);
        if (row.has_sign) range += ", either sign";
        if (row.noticed == Noticed::by_measuring_first) range += "; by measuring first";
        if (row.noticed == Noticed::at_any_severity) range += "; at any severity";
        std::string gas = row.cylinder_only ? "cylinder" : row.mains_only ? "mains" : "both";
        if (row.needs != Needs::nothing) gas += "; needs " + std::string(title(row.needs));
        text.append("| `").append(row.word).append("` | ").append(row.title).append(" | ");
        text.append(row.effect).append(" | ").append(range).append(" | ").append(gas);
        text.append(" | ").append(remedy_title(row.remedy)).append(" | ");
        text.append(units::fixed(row.frequency, 1)).append(" |\n");
    }
    return text;
}

std::string_view whose(Whom whom) {
    switch (whom) {
        case Whom::nobody:
            return "gasfitter";
        case Whom::owner_of_the_gas:
            return "gas distributor, on cylinders gas supplier";
        case Whom::electrician:
            return "electrician";
        case Whom::electricity_distributor:
            return "electricity distributor";
    }
    return {};
}

std::string_view place(const RemedyInfo& row) {
    switch (row.reach) {
        case Reach::words:
            return "in words";
        case Reach::outside:
            return row.joint == GasJoint::none ? "outside" : "outside; a gas joint is undone";
        case Reach::inside:
            return row.joint == GasJoint::none ? "inside" : "inside; a gas joint is undone";
    }
    return {};
}

std::string remedies_table() {
    std::string text =
        "| remedy | sentence | whose | skill | where | minutes | part, minutes of work | cheap and "
        "reversible | combustion to be proved |\n|---|---|---|---|---|---|---|---|---|\n";
    for (const RemedyInfo& row : remedies)
        text += "| " + std::string(row.title) + " | " + std::string(row.sentence) + " | " +
                std::string(whose(row.whom)) + " | " + std::string(skill_title(row.skill)) + " | " +
                std::string(place(row)) + " | " + units::fixed(row.minutes, 0) + " | " +
                units::fixed(row.part_minutes, 0) + " | " + (row.reversible ? "yes" : "no") +
                " | " + (row.touches_flame ? "yes" : "no") + " |\n";
    return text;
}

/// The text of a page with what stands between two marks replaced.
std::string with_table(std::string page, const std::string& name, const std::string& table) {
    const std::string begin = "<!-- " + name + ": made from the tables in sim/faults -->\n";
    const std::string end = "<!-- end of " + name + " -->";
    const auto from = page.find(begin);
    const auto to = page.find(end);
    if (from == std::string::npos || to == std::string::npos) return {};
    return page.replace(from + begin.size(), to - from - begin.size(), table);
}

/// EMBERPATH_REGENERATE=1 rewrites both tables of the page.
TEST(Catalogue, IsPrintedOnItsPage) {
    const std::string name = std::string(EMBERPATH_SOURCE_DIR) + "/docs/causes.md";
    std::stringstream text;
    text << std::ifstream(name).rdbuf();
    const std::string page = text.str();
    const std::string wanted =
        with_table(with_table(page, "catalogue", catalogue_table()), "remedies", remedies_table());
    ASSERT_FALSE(wanted.empty()) << "the marks of a table are missing";
    if (std::getenv("EMBERPATH_REGENERATE") != nullptr) {
        std::ofstream(name) << wanted;
        return;
    }
    EXPECT_TRUE(page == wanted) << "docs/causes.md is out of date; EMBERPATH_REGENERATE=1 "
                                   "rewrites its tables";
}

}  // namespace
}  // namespace emberpath::faults
