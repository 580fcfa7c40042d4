// Proves that docs/acts.md and docs/safety.md say what the tables in the program say.

#include <gtest/gtest.h>

#include <fstream>
#include <set>
#include <sstream>

#include "sim/worksite/hazards.hpp"

namespace emberpath::worksite {
namespace {

std::string page(const std::string& name) {
    std::ifstream file(std::string(EMBERPATH_SOURCE_DIR) + "/docs/" + name);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

TEST(Manual, ListsTheActsOfTheProgram) {
    EXPECT_EQ(page("acts.md"), acts_page());
}

TEST(Manual, ListsTheSafetyRulesOfTheProgram) {
    EXPECT_EQ(page("safety.md"), safety_page());
}

TEST(SafetyRules, AreSpeltOnceAndCostSomething) {
    std::set<std::string_view> words;
    for (const auto& row : rules()) {
        EXPECT_TRUE(words.insert(row.word).second) << row.word;
        EXPECT_GT(row.deduction, 0.0);
        EXPECT_LT(row.deduction, 1.0);
        EXPECT_EQ(&rule(row.word), &row);
    }
}

}  // namespace
}  // namespace emberpath::worksite
