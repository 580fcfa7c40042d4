// Proves the exact text of problems: position, caret, remedy, suggestion, count and closing words.

#include "sim/diagnostics/diagnostic.hpp"

#include <gtest/gtest.h>

namespace emberpath::diagnostics {
namespace {

Diagnostic bare_number() {
    Diagnostic problem;
    problem.file = "scenarios/jobs/long_thin_line.toml";
    problem.line = 9;
    problem.column = 19;
    problem.found = "static_pressure: found 2.35, a number without a unit";
    problem.expected = "a pressure from 0 to 7 kPa, such as \"2.35 kPa\" or \"23.5 mbar\"";
    problem.source_line = "static_pressure = 2.35";
    return problem;
}

Diagnostic misspelt_cause() {
    Diagnostic problem;
    problem.file = "scenarios/jobs/long_thin_line.toml";
    problem.line = 14;
    problem.column = 9;
    problem.found = "cause: found \"gas_pipe_restricion\", not a known cause";
    problem.expected = "a cause from docs/scenarios.md";
    problem.source_line = "cause = \"gas_pipe_restricion\"";
    problem.suggestion = "gas_pipe_restriction";
    return problem;
}

TEST(DiagnosticText, ShowsPositionLineCaretAndRemedy) {
    EXPECT_EQ(
        to_text(bare_number()),
        "scenarios/jobs/long_thin_line.toml:9:19: static_pressure: found 2.35, a number without "
        "a unit\n"
        "    9 | static_pressure = 2.35\n"
        "      |                   ^\n"
        "  expected a pressure from 0 to 7 kPa, such as \"2.35 kPa\" or \"23.5 mbar\"\n");
}

TEST(DiagnosticText, AddsTheNearestWordToTheRemedy) {
    EXPECT_EQ(
        to_text(misspelt_cause()),
        "scenarios/jobs/long_thin_line.toml:14:9: cause: found \"gas_pipe_restricion\", not a "
        "known cause\n"
        "   14 | cause = \"gas_pipe_restricion\"\n"
        "      |         ^\n"
        "  expected a cause from docs/scenarios.md; did you mean \"gas_pipe_restriction\"?\n");
}

TEST(DiagnosticText, CountsProblemsAndSaysWhatFollowed) {
    const std::vector<Diagnostic> two{bare_number(), misspelt_cause()};
    EXPECT_EQ(to_text(two, "nothing was loaded"),
              to_text(two[0]) + to_text(two[1]) + "2 problems; nothing was loaded.\n");
    const std::vector<Diagnostic> one{bare_number()};
    EXPECT_EQ(to_text(one, "nothing was loaded."),
              to_text(one[0]) + "1 problem; nothing was loaded.\n");
    EXPECT_EQ(to_text(one, ""), to_text(one[0]) + "1 problem.\n");
    EXPECT_EQ(to_text(std::vector<Diagnostic>{}, "nothing was loaded"), "");
}

TEST(DiagnosticText, LeavesOutWhatIsNotKnown) {
    Diagnostic problem;
    problem.file = "missing.toml";
    problem.found = "found no such file";
    EXPECT_EQ(to_text(problem), "missing.toml: found no such file\n");
    problem.file = "";
    problem.line = 3;
    EXPECT_EQ(to_text(problem), "3: found no such file\n");
    problem.line = 0;
    problem.suggestion = "house.toml";
    EXPECT_EQ(to_text(problem), "found no such file\n  did you mean \"house.toml\"?\n");
}

TEST(DiagnosticText, PutsTheCaretUnderTheCharacterAfterTabsAndAccents) {
    Diagnostic problem;
    problem.file = "a.toml";
    problem.line = 123456;
    problem.column = 6;
    problem.found = "x";
    problem.source_line =
        "\t\xc3\xa9"
        "a = 5";
    EXPECT_EQ(to_text(problem),
              "a.toml:123456:6: x\n"
              "123456 | \t\xc3\xa9"
              "a = 5\n"
              "       | \t    ^\n");
    problem.column = 40;  // past the end: under the place after the last character
    EXPECT_EQ(to_text(problem),
              "a.toml:123456:40: x\n"
              "123456 | \t\xc3\xa9"
              "a = 5\n"
              "       | \t      ^\n");
}

TEST(DiagnosticText, NeverPassesControlCharactersOn) {
    Diagnostic problem;
    problem.file = "a.toml";
    problem.line = 1;
    problem.column = 1;
    problem.found = "found \"\x1b[2J\"";
    problem.source_line = "\x1b[2J";
    EXPECT_EQ(to_text(problem), "a.toml:1:1: found \"?[2J\"\n    1 | ?[2J\n      | ^\n");
}

TEST(NearestWord, IsAtMostAThirdOfTheWordAway) {
    const std::vector<std::string> words{"kPa", "gas_pipe_restriction", "regulator_droop"};
    EXPECT_EQ(nearest_word("gas_pipe_restricion", words), "gas_pipe_restriction");
    EXPECT_EQ(nearest_word("regulator_dorop", words), "regulator_droop");
    EXPECT_EQ(nearest_word("KPA", words), "kPa");
    EXPECT_EQ(nearest_word("kPb", words), "kPa");
    EXPECT_EQ(nearest_word("bar", words), "");
    EXPECT_EQ(nearest_word("", words), "");
    EXPECT_EQ(nearest_word("soot", words), "");
    EXPECT_EQ(nearest_word(std::string(1000, 'x'), words), "");
}

TEST(NearestWord, TakesTheFirstOfEquallyNearWords) {
    const std::vector<std::string> words{"tap_a", "tap_b"};
    EXPECT_EQ(nearest_word("tap_c", words), "tap_a");
}

}  // namespace
}  // namespace emberpath::diagnostics
