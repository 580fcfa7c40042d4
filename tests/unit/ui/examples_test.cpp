// Proves that the debriefs under docs/examples are what the program prints of those paths now. Only the lines that
// name the build and what is chained to it may differ: they change with every build.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "tests/unit/ui/program.hpp"

namespace emberpath::app {
namespace {

namespace fs = std::filesystem;
const fs::path source = EMBERPATH_SOURCE_DIR;

std::vector<std::string> examples() {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(source / "docs/examples"))
        if (entry.path().extension() == ".txt") names.push_back(entry.path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
}

bool names_the_build(const std::string& line) {
    return line.find("program build") != std::string::npos ||
           line.find("record chain") != std::string::npos;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);)
        if (!names_the_build(line)) lines.push_back(line);
    return lines;
}

constexpr std::string_view assessors_copy = ".assessor";

std::string path_of(const std::string& name) {
    return name.ends_with(assessors_copy) ? name.substr(0, name.size() - assessors_copy.size())
                                          : name;
}

class Example : public testing::TestWithParam<std::string> {};

TEST_P(Example, IsWhatTheProgramPrintsOfItsPath) {
    const std::string name = GetParam(), path = path_of(name);
    std::string job = path.substr(0, path.find('.'));
    fs::path acts = source / "tests/jobs/paths" / (path + ".acts");
    if (const auto own = source / "tests/jobs/unscored" / (job + ".toml"); fs::exists(own)) {
        job = own.string();
        acts = source / "tests/jobs/unscored" / (path + ".acts");
    }
    Program program;
    const std::string record = program.file(path + ".record");
    ASSERT_EQ(program({"work", job, "--assessed", "--script", acts.string(), "--record", record}),
              0)
        << program.talk;
    std::vector<std::string> call{"debrief", record};
    if (name != path) call.emplace_back("--assessor");
    ASSERT_EQ(program(call), 0) << program.talk;
    const auto now = lines_of(program.output);
    const auto kept =
        lines_of(records::sample::contents((source / "docs/examples" / (name + ".txt")).string()));
    const auto at = std::mismatch(now.begin(), now.end(), kept.begin(), kept.end());
    EXPECT_TRUE(at.first == now.end() && at.second == kept.end())
        << "docs/make_examples makes them anew. Now:  "
        << (at.first == now.end() ? "the end" : *at.first)
        << "\nKept: " << (at.second == kept.end() ? "the end" : *at.second);
}

INSTANTIATE_TEST_SUITE_P(EachOf, Example, testing::ValuesIn(examples()), [](const auto& one) {
    std::string name = one.param;
    std::replace(name.begin(), name.end(), '.', '_');
    return name;
});

TEST(Examples, AreTwelve) {
    EXPECT_EQ(examples().size(), 12U);
}

TEST(Examples, ShowEachKindOfDebrief) {
    std::string all;
    for (const auto& name : examples())
        for (const auto& line : lines_of(records::sample::contents(
                 (source / "docs/examples" / (name + ".txt")).string()))) {
            const auto begin = line.find_first_not_of(' ');
            if (begin != std::string::npos) all += line.substr(begin) + " ";
        }
    for (const char* kind :
         {"nothing stands against it", "Suggested: not yet", "Critical. ",
          "Not scored: ", "You said ", "write possible cause", "no reading on this job tells it",
          "For the assessor", "minutes of work charged, because the evidence gave only"})
        EXPECT_NE(all.find(kind), std::string::npos) << kind;
}

}  // namespace
}  // namespace emberpath::app
