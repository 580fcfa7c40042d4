// Proves that a TOML file becomes a tree in file order, with the place of every key and value.
#include "sim/scenario/document.hpp"

#include <gtest/gtest.h>

#include "sim/scenario/stray.hpp"

namespace emberpath::scenario {
namespace {

struct Parsed {
    Problems problems;
    std::optional<Node> root;
};

Parsed parse(std::string text) {
    Parsed parsed;
    const std::size_t source = parsed.problems.add_source("f.toml", std::move(text));
    parsed.root = parse_document(source, parsed.problems);
    return parsed;
}

TEST(Document, KeepsTheOrderOfTheFile) {
    const Parsed parsed = parse("zebra = 1\napple = 2\n[middle]\nb = 1\na = 2\n");
    ASSERT_TRUE(parsed.root);
    ASSERT_EQ(parsed.root->entries.size(), 3U);
    EXPECT_EQ(parsed.root->entries[0].key, "zebra");
    EXPECT_EQ(parsed.root->entries[1].key, "apple");
    EXPECT_EQ(parsed.root->entries[2].node.entries[0].key, "b");
}

TEST(Document, SaysWhereKeysAndValuesStand) {
    const Parsed parsed = parse("\n  size = \"45 kg\"\n");
    ASSERT_TRUE(parsed.root);
    const Entry& entry = parsed.root->entries.front();
    EXPECT_EQ(entry.at, (Position{0, 2, 3}));
    EXPECT_EQ(entry.node.at, (Position{0, 2, 10}));
    EXPECT_EQ(entry.node.text, "45 kg");
    EXPECT_EQ(entry.node.raw, "\"45 kg\"");
}

TEST(Document, CountsColumnsInCharacters) {
    const Parsed parsed = parse("\"°°\" = 2.50 # °\n");
    ASSERT_TRUE(parsed.root);
    const Node& node = parsed.root->entries.front().node;
    EXPECT_EQ(node.at.column, 8);
    EXPECT_EQ(node.raw, "2.50");
}

TEST(Document, KnowsEveryKindOfValue) {
    const Parsed parsed =
        parse("a = 'x'\nb = 1\nc = 1.5\nd = true\ne = 2024-05-01\nf = [1, 2]\ng = {h = 1}\n");
    ASSERT_TRUE(parsed.root);
    using enum Node::Kind;
    const std::vector expected{text, whole_number, decimal_number, flag, moment, list, table};
    for (std::size_t at = 0; at < expected.size(); ++at)
        EXPECT_EQ(parsed.root->entries[at].node.kind, expected[at]) << at;
    EXPECT_EQ(parsed.root->entries[5].node.items.size(), 2U);
}

TEST(Document, TurnsSyntaxErrorsIntoProblemsWithPosition) {
    const Parsed parsed = parse("a = 1\nb = \n");
    EXPECT_FALSE(parsed.root);
    const auto problems = parsed.problems.sorted();
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].line, 2);
    EXPECT_EQ(problems[0].column, 5);
    EXPECT_EQ(problems[0].expected, "a value");
}

TEST(Document, ReadsWindowsLineEnds) {
    const Parsed parsed = parse("a = 1\r\nb = oops\r\n");
    const auto problems = parsed.problems.sorted();
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].source_line, "b = oops");
}

TEST(Document, RefusesDeepNestingWithoutFalling) {
    const Parsed parsed = parse("a = " + std::string(100000, '['));
    EXPECT_FALSE(parsed.root);
    EXPECT_EQ(parsed.problems.sorted().size(), 1U);
}

TEST(Document, SurvivesWhatBreaksTheLibrarysOwnAssumptions) {
    const Parsed parsed = parse("a = 1\nb = 2\n[.[tap]]\nc = 3\n[d]\n");
    EXPECT_FALSE(parsed.root);
    const auto problems = parsed.problems.sorted();
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].line, 3);
    EXPECT_EQ(problems[0].source_line, "[.[tap]]");
}

TEST(Document, NamesUnitsWrittenWithoutQuotationMarks) {
    const Parsed parsed = parse("# °\na = \"°\"\nb = 14 °C\n");
    EXPECT_FALSE(parsed.root);
    const auto problems = parsed.problems.sorted();
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].line, 3);
    EXPECT_EQ(problems[0].column, 8);
    EXPECT_EQ(problems[0].found, "found ° outside quotation marks");
}

TEST(Stray, IsNotFoundInsideTextsAndComments) {
    for (const char* text : {"a = '°'", "a = \"\\\"°\"", "a = \"\"\"\n°\n\"\"\" # °", "'°' = 1",
                             "a = '''\n°'\n'''", "# °\n", ""})
        EXPECT_FALSE(find_stray(text)) << text;
}

TEST(Stray, IsFoundAfterTextsThatEnd) {
    const auto column = [](const char* text) { return find_stray(text).value_or(Stray{}).column; };
    EXPECT_EQ(column("a = \"x\\\\\" °"), 11);
    EXPECT_EQ(column("a = '\\' °"), 9);
    EXPECT_EQ(column("a = \"\"\"x\"\"\" °"), 13);
    EXPECT_EQ(find_stray("a = \"unclosed\n°").value_or(Stray{}).line, 2);
}

TEST(Document, SurvivesWhatTheLibraryTakesForWhiteSpace) {
    const Parsed parsed = parse("a = 1e400\"..°s\"\n");
    EXPECT_FALSE(parsed.root);
    EXPECT_EQ(parsed.problems.sorted().size(), 1U);
}

TEST(Document, AllowsAByteOrderMark) {
    const Parsed parsed = parse(
        "\xef\xbb\xbf"
        "a = \"14 °C\"\n");
    ASSERT_TRUE(parsed.root);
    EXPECT_EQ(parsed.root->entries.front().node.text, "14 °C");
}

TEST(Problems, ComeInFileOrderAndOnlyOnce) {
    Problems problems;
    problems.add_source("one", "a\nb\n");
    problems.add_source("two", "c\n");
    problems.add({1, 1, 1}, {"third", "", ""});
    problems.add({0, 2, 1}, {"second", "", ""});
    problems.add({0, 0, 0}, {"first", "", ""});
    problems.add({0, 2, 1}, {"second", "", ""});
    const auto sorted = problems.sorted();
    ASSERT_EQ(sorted.size(), 3U);
    EXPECT_EQ(sorted[0].found, "first");
    EXPECT_EQ(sorted[1].source_line, "b");
    EXPECT_EQ(sorted[2].file, "two");
}

TEST(Problems, CutLongTextsAtACharacter) {
    const std::string text = std::string(59, 'x') + "°°°";
    EXPECT_EQ(in_quotes(text), "\"" + std::string(59, 'x') + "...\"");
}

}  // namespace
}  // namespace emberpath::scenario
