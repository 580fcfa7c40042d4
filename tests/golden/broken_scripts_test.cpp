// Proves that each broken script of tests/golden/broken_scripts is refused with exactly the text beside it.
// EMBERPATH_REGENERATE=1 tests/golden rewrites the texts; read every change of them.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

namespace fs = std::filesystem;

const fs::path folder = fs::path(EMBERPATH_SOURCE_DIR) / "tests/golden/broken_scripts";

std::string bytes_of(const fs::path& path) {
    std::ifstream stream(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

std::vector<std::string> broken_files() {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.path().extension() == ".acts") names.push_back(entry.path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
}

class BrokenScript : public testing::TestWithParam<std::string> {};

TEST_P(BrokenScript, IsRefusedWithItsText) {
    const std::string name = GetParam() + ".acts";
    const auto script = read_script(bytes_of(folder / name), name, test_job());
    EXPECT_FALSE(script.problems.empty());
    const auto text = diagnostics::to_text(script.problems, "nothing was done");
    const fs::path expected = folder / (GetParam() + ".txt");
    if (std::getenv("EMBERPATH_REGENERATE") != nullptr)
        std::ofstream(expected, std::ios::binary) << text;
    EXPECT_EQ(text, bytes_of(expected));
}

INSTANTIATE_TEST_SUITE_P(Files, BrokenScript, testing::ValuesIn(broken_files()), [](const auto& i) {
    std::string name = i.param;
    std::erase(name, '-');
    return name;
});

TEST(BrokenScripts, AreThirtyOrMore) {
    EXPECT_GE(broken_files().size(), 30U);
}

TEST(SoundScript, ReadsWithoutProblemsAndKeepsItsLines) {
    const auto script = read_script(
        "\xEF\xBB\xBF# a visit\r\n\r\nLook at the display   # first\r\nwrite because #1 #2\r\nhand "
        "in",
        "visit.acts", test_job());
    EXPECT_TRUE(script.problems.empty());
    ASSERT_EQ(script.lines.size(), 3U);
    EXPECT_EQ(script.lines[0].number, 3);
    EXPECT_EQ(script.lines[0].sentence, "Look at the display");
    EXPECT_EQ(script.lines[1].sentence, "write because #1 #2");
}

}  // namespace
}  // namespace emberpath::worksite
