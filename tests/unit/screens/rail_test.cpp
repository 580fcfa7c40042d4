// Proves that the rail shortens as few cells as it must, the longest first.

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/unit/screens/every_screen.hpp"

namespace emberpath::screens {
namespace {

bool says(const kit::Frame& frame, std::string_view words) {
    return std::any_of(frame.texts.begin(), frame.texts.end(),
                       [&](const auto& text) { return text.text == words; });
}

JobView with_gas_words(const std::string& words) {
    JobView view = sample_arrival();
    view.rail.cells.front().words = words;
    view.rail.cells.front().short_words = "Brief";
    return view;
}

kit::Frame at(double width, const JobView& view) {
    return job_screen({typeface(), {}, keys(), {width, 800.0}}, view);
}

TEST(Rail, SaysAllWhereThereIsRoom) {
    EXPECT_TRUE(says(at(1280.0, with_gas_words("Open at the meter")), "Open at the meter"));
    EXPECT_TRUE(says(at(1280.0, with_gas_words("Open at the meter")), "Not checked"));
}

TEST(Rail, ShortensTheLongestCellAndLeavesTheOthers) {
    const auto frame =
        at(1280.0, with_gas_words("Tested at the terminals: see the log of the job"));
    EXPECT_TRUE(says(frame, "Brief"));
    EXPECT_TRUE(says(frame, "Not checked"));
    EXPECT_FALSE(says(frame, "Unknown"));
}

TEST(Rail, SaysEverythingInItsNodesHoweverNarrowItIs) {
    const auto frame = at(640.0, with_gas_words("Open at the meter"));
    ASSERT_NE(frame.tree.get("rail.gas"), nullptr);
    EXPECT_EQ(frame.tree.get("rail.gas")->value, "Open at the meter");
}

}  // namespace
}  // namespace emberpath::screens
