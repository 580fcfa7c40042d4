// Proves that each broken scenario of tests/golden/broken_scenarios is refused with exactly the text
// beside it. EMBERPATH_REGENERATE=1 tests/golden rewrites the texts; read every change of them.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "sim/scenario/scenario.hpp"

namespace emberpath::scenario {
namespace {

namespace fs = std::filesystem;

const fs::path folder = "tests/golden/broken_scenarios";

std::string bytes_of(const fs::path& path) {
    std::ifstream stream(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

/// Messages name files as they were given; from the source folder they are the same everywhere.
class BrokenScenario : public testing::TestWithParam<fs::path> {
  protected:
    void SetUp() override {
        before_ = fs::current_path();
        fs::current_path(EMBERPATH_SOURCE_DIR);
    }
    void TearDown() override { fs::current_path(before_); }

  private:
    fs::path before_;
};

TEST_P(BrokenScenario, IsRefusedWithItsText) {
    const fs::path file = folder / GetParam();
    const Loaded loaded = load(file);
    EXPECT_FALSE(loaded.good());
    const std::string text = diagnostics::to_text(loaded.problems, "nothing was loaded.");
    const fs::path expected = fs::path(file).replace_extension(".txt");
    if (std::getenv("EMBERPATH_REGENERATE") != nullptr)
        std::ofstream(expected, std::ios::binary) << text;
    EXPECT_EQ(text, bytes_of(expected));
}

TEST_P(BrokenScenario, ProblemsStandInFileOrder) {
    const Loaded loaded = load(folder / GetParam());
    for (std::size_t at = 1; at < loaded.problems.size(); ++at) {
        const auto& before = loaded.problems[at - 1];
        const auto& here = loaded.problems[at];
        if (before.file != here.file) continue;
        EXPECT_LE(std::pair(before.line, before.column), std::pair(here.line, here.column));
    }
}

std::vector<fs::path> broken_files() {
    std::vector<fs::path> names;
    for (const fs::path& file : list_jobs(fs::path(EMBERPATH_SOURCE_DIR) / folder))
        names.push_back(file.filename());
    return names;
}

std::string camel_case(const testing::TestParamInfo<fs::path>& info) {
    std::string name;
    bool capital = true;
    for (const char c : info.param.stem().string()) {
        if (c == '-') {
            capital = true;
            continue;
        }
        name += capital && c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
        capital = false;
    }
    return name;
}

INSTANTIATE_TEST_SUITE_P(Files, BrokenScenario, testing::ValuesIn(broken_files()), camel_case);

TEST(BrokenScenarios, AreThirtyOrMoreAndNoTwoSayTheSame) {
    std::set<std::string> texts;
    const std::vector<fs::path> files = broken_files();
    EXPECT_GE(files.size(), 30U);
    for (const fs::path& name : files) {
        const fs::path file = fs::path(EMBERPATH_SOURCE_DIR) / folder / name;
        const std::string text = bytes_of(fs::path(file).replace_extension(".txt"));
        ASSERT_NE(text, "") << name;
        EXPECT_TRUE(texts.insert(text.substr(text.find(": "))).second) << name;
    }
}

}  // namespace
}  // namespace emberpath::scenario
