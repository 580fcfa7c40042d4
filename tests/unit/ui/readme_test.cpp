// Proves that the session printed in README.md is what the program really prints.

#include <gtest/gtest.h>

#include "tests/unit/ui/program.hpp"

namespace emberpath::app {
namespace {

std::string trimmed(const std::string& line) {
    const auto end = line.find_last_not_of(' ');
    return end == std::string::npos ? std::string() : line.substr(0, end + 1);
}

/// Lines of the first fenced block after "A short session"; a line of dots stands for lines left out.
std::vector<std::string> session_lines(const std::string& readme) {
    std::vector<std::string> lines;
    std::istringstream in(readme.substr(readme.find("## A short session")));
    bool inside = false;
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with("```")) {
            if (inside) break;
            inside = true;
        } else if (inside && !trimmed(line).empty() && trimmed(line) != "...") {
            lines.push_back(trimmed(line));
        }
    }
    return lines;
}

TEST(Readme, TheSessionIsRealOutputInItsOrder) {
    Program program;
    ASSERT_EQ(program({}), 0) << program.talk;
    const auto promised =
        session_lines(records::sample::contents(std::string(EMBERPATH_SOURCE_DIR) + "/README.md"));
    ASSERT_GE(promised.size(), 25U);
    std::istringstream in(program.output);
    std::size_t found = 0;
    for (std::string line; found < promised.size() && std::getline(in, line);)
        if (trimmed(line) == promised[found]) ++found;
    EXPECT_EQ(found, promised.size())
        << "not printed, or out of order: "
        << (found < promised.size() ? promised[found] : std::string());
}

}  // namespace
}  // namespace emberpath::app
