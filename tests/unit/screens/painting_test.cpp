// Proves that screens are painted as they were when somebody last looked at them: what the painter is told,
// as text against text. No driver, display or theme has a part in it.
// EMBERPATH_WRITE_GOLDEN=1 writes the texts anew; look at docs/make_pictures' output before they are kept.

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "tests/unit/screens/every_screen.hpp"

namespace emberpath::screens {
namespace {

std::string painting_of(const kit::Frame& frame) {
    std::string text;
    const char* names[] = {"still", "moving", "over"};
    for (std::size_t i = 0; i < kit::layer_count; ++i)
        text += std::string("layer ") + names[i] + "\n" + frame.layers[i].as_text();
    return text;
}

std::string first_difference(const std::string& now, const std::string& then) {
    std::istringstream a(now), b(then);
    std::string x, y;
    for (int line = 1;; ++line) {
        const bool more_a = !std::getline(a, x).fail(), more_b = !std::getline(b, y).fail();
        if (!more_a && !more_b) return "";
        if (!more_a || !more_b || x != y)
            return "line " + std::to_string(line) + " is \"" + (more_a ? x : "missing") +
                   "\", was \"" + (more_b ? y : "missing") + "\"";
    }
}

class Painting : public testing::TestWithParam<const char*> {};

TEST_P(Painting, IsToldToThePainterAsItWas) {
    const std::string name = GetParam();
    const std::string file =
        std::string(EMBERPATH_SOURCE_DIR) + "/tests/golden/paintings/" + name + ".txt";
    std::string now;
    for (const NamedScreen& screen : sample_screens())
        if (screen.name == name) now = painting_of(draw(screen, {1280.0, 800.0, 1.0}));
    ASSERT_FALSE(now.empty());
    if (std::getenv("EMBERPATH_WRITE_GOLDEN") != nullptr) {
        std::ofstream(file, std::ios::binary) << now;
        return;
    }
    std::ostringstream then;
    then << std::ifstream(file, std::ios::binary).rdbuf();
    EXPECT_EQ(first_difference(now, then.str()), "") << name;
}

// The house, the heater, a plate in front, and a screen of words.
INSTANTIATE_TEST_SUITE_P(Of, Painting, testing::Values("arrival", "heater", "waits", "error"),
                         [](const auto& one) { return std::string(one.param); });

}  // namespace
}  // namespace emberpath::screens
