// Proves that docs/window.md lists the keys as the program has them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "ui/screens/screens.hpp"

namespace emberpath::screens {
namespace {

constexpr std::string_view begin_mark = "<!-- keys: made from ui/screens/key_table.cpp -->\n",
                           end_mark = "<!-- end of keys -->\n";

TEST(WindowManual, ListsTheKeysOfTheProgram) {
    const std::string file = std::string(EMBERPATH_SOURCE_DIR) + "/docs/window.md";
    std::ostringstream read;
    read << std::ifstream(file).rdbuf();
    std::string text = read.str();
    const auto begin = text.find(begin_mark), end = text.find(end_mark);
    ASSERT_NE(begin, std::string::npos);
    ASSERT_NE(end, std::string::npos);
    const auto from = begin + begin_mark.size();
    if (std::getenv("EMBERPATH_REGENERATE") != nullptr) {
        text.replace(from, end - from, key_page());
        std::ofstream(file) << text;
        return;
    }
    EXPECT_EQ(text.substr(from, end - from), key_page());
}

TEST(KeyTable, HasAKeyThatCanBePressedForEveryRow) {
    for (const auto& binding : key_table())
        EXPECT_TRUE(kit::parse_chord(binding.chord).has_value()) << binding.chord;
}

}  // namespace
}  // namespace emberpath::screens
