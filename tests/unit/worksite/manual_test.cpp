// Proves that docs/acts.md and docs/safety.md say what the tables in the program say.

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <set>
#include <sstream>

#include "sim/worksite/acts.hpp"
#include "sim/worksite/hazards.hpp"

namespace emberpath::worksite {
namespace {

/// The page on disk; EMBERPATH_REGENERATE=1 writes it first.
std::string page(const std::string& name, const std::string& made) {
    const std::string path = std::string(EMBERPATH_SOURCE_DIR) + "/docs/" + name;
    if (std::getenv("EMBERPATH_REGENERATE") != nullptr) std::ofstream(path) << made;
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

TEST(Manual, ListsTheActsOfTheProgram) {
    EXPECT_EQ(page("acts.md", acts_page()), acts_page());
}

TEST(Manual, ListsTheSafetyRulesOfTheProgram) {
    EXPECT_EQ(page("safety.md", safety_page()), safety_page());
}

/// Such a sentence takes what it says, so that no time of the table can be true of it.
TEST(Manual, GivesNoTimeOfItsOwnToASentenceThatSaysHowLong) {
    const std::string all = acts_page();
    int found = 0;
    for (const auto& row : phrase_rows()) {
        const std::string pattern(row.phrase.pattern);
        if (pattern.find("{duration}") == std::string::npos) continue;
        ++found;
        const std::string line = "| " + pattern + " | " + std::string(row.phrase.help) +
                                 " | as said |  | " + std::string(row.phrase.skill) + " |\n";
        EXPECT_NE(all.find(line), std::string::npos) << line;
        Act act;
        act.verb = row.verb;
        for (const double said_s : {20.0, 130.0}) {
            act.number = said_s;
            EXPECT_EQ(seconds_of(act), said_s) << pattern;
        }
    }
    EXPECT_EQ(found, 5);
}

/// The page names the price of a part and the kind of work beside the time.
TEST(Manual, ListsPartAndSkillOfAnActBesideItsTime) {
    const std::string all = acts_page();
    for (const char* row : {"| new part | 10 min | 25 min | electrical work |",
                            "| screen out, rinsed, back; water shut | 10 min |  | plumbing |",
                            "| pull its connector, so that it can be measured alone | 10 s |  | "
                            "work behind the heater's cover |"})
        EXPECT_NE(all.find(row), std::string::npos) << row;
}

/// The row of docs/safety.md that begins with this remedy.
std::string row_of(const std::string& title) {
    const std::string all = safety_page();
    const auto at = all.find("| " + title + " |");
    return at == std::string::npos ? std::string() : all.substr(at, all.find('\n', at) - at);
}

TEST(Manual, AsksForARunningBurnerWhereTheManifoldIsSetAndForProofOfDeadWhereAPartIsReplaced) {
    const auto has = [](const std::string& row, const char* words) {
        return row.find(words) != std::string::npos;
    };
    const std::string manifold = row_of("set the manifold pressure to the plate");
    EXPECT_TRUE(has(manifold, "prove dead, gloves")) << manifold;
    EXPECT_TRUE(has(manifold, "burner on, hands clear of live parts")) << manifold;
    EXPECT_TRUE(has(manifold, "while cover, point and hose are handled; then power")) << manifold;
    EXPECT_TRUE(has(row_of("replace the igniter"), "prove dead")) << row_of("replace the igniter");
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
