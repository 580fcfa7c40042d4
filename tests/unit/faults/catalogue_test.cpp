// Proves that the catalogue is complete and consistent, that its words lead back to its causes, and that
// docs/causes.md prints exactly what the table holds.

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
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

TEST(Remedies, OnlySensorsAndWhatIsHandedOnShareOne) {
    for (const CauseInfo& a : catalogue())
        for (const CauseInfo& b : catalogue())
            if (a.cause < b.cause && a.remedy == b.remedy) {
                const bool handed_on = !works_at_once(a.remedy);
                EXPECT_TRUE(handed_on || a.remedy == Remedy::replace_outlet_sensor)
                    << a.word << " and " << b.word;
            }
}

std::string printed(const CauseInfo& row) {
    const auto number = [](double x) { return units::fixed(x, 2); };
    std::string range = row.on_off
                            ? "on or off"
                            : number(row.least_severity) + " to " + number(row.greatest_severity);
    if (row.has_sign) range += ", either sign";
    const std::string gas = row.cylinder_only ? "cylinder" : row.mains_only ? "mains" : "both";
    return "| `" + std::string(row.word) + "` | " + std::string(row.title) + " | " +
           std::string(row.effect) + " | " + range + " | " + gas + " | " +
           std::string(remedy_title(row.remedy)) + " | " + units::fixed(row.frequency, 1) + " |";
}

TEST(Catalogue, IsPrintedRowByRowOnItsPage) {
    std::ifstream file(std::string(EMBERPATH_SOURCE_DIR) + "/docs/causes.md");
    ASSERT_TRUE(file) << "docs/causes.md";
    std::stringstream text;
    text << file.rdbuf();
    const std::string page = text.str();
    for (const CauseInfo& row : catalogue())
        EXPECT_NE(page.find(printed(row)), std::string::npos) << printed(row);
}

}  // namespace
}  // namespace emberpath::faults
