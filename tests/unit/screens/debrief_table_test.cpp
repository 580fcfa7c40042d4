// Proves that the debrief's table says what its columns stand for, also where a head does not fit.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/screens/every_screen.hpp"
#include "ui/kit/audit.hpp"
#include "ui/screens/sample.hpp"

namespace emberpath::screens {
namespace {

kit::Frame debrief_at(kit::Size pixels) {
    for (const NamedScreen& screen : sample_screens())
        if (screen.name == "debrief") return draw(screen, {pixels.w, pixels.h, 1.0});
    return {};
}

TEST(DebriefTable, SaysThatALongHeadGoesOnAndReadsItOutInFull) {
    const kit::Frame frame = debrief_at({1280.0, 800.0});
    const std::string whole = sample_debrief().columns.back();
    std::vector<std::string> cut;
    for (const auto& text : kit::cut_texts(frame))
        if (text.place.starts_with("table.column.")) {
            EXPECT_TRUE(text.whole) << text.text;
            cut.push_back(text.place);
        }
    ASSERT_EQ(cut, std::vector<std::string>{"table.column.5"});
    ASSERT_NE(frame.tree.get(cut.front()), nullptr);
    EXPECT_EQ(frame.tree.get(cut.front())->name, whole);
}

TEST(DebriefTable, CallsItsColumnsRemediesAndNotCauses) {
    const kit::Frame frame = debrief_at({1280.0, 800.0});
    std::string all;
    for (const auto& node : frame.tree.nodes())
        if (node.id.starts_with("table") && !node.id.starts_with("table.column"))
            all += node.name + "\n";
    EXPECT_THAT(all, testing::HasSubstr("where another remedy is due"));
    EXPECT_THAT(all, testing::Not(testing::HasSubstr("cause")));
}

TEST(DebriefTable, CallsTheFirstColumnWhatIsSoWhetherItIsACauseOrARemedy) {
    const kit::Frame frame = debrief_at({1280.0, 800.0});
    const kit::Node* head = frame.tree.get("table.column.0");
    ASSERT_NE(head, nullptr);
    EXPECT_EQ(head->value, "what is so in this house");
}

TEST(DebriefOutcome, SaysAboveTheNumberThatNothingWasUnsafe) {
    DebriefView view = sample_debrief();
    view.unsafe.clear();
    view.unsafe_detail.clear();
    const kit::State state;
    const kit::Frame frame = debrief_screen({typeface(), state, keys(), {1280.0, 800.0}}, view);
    const kit::Node* words = frame.tree.get("outcome.unsafe");
    const kit::Node* score = frame.tree.get("score.heading");
    ASSERT_NE(words, nullptr);
    ASSERT_NE(score, nullptr);
    EXPECT_EQ(words->name, "No unsafe act");
    EXPECT_LE(words->bounds.bottom(), score->bounds.y);
}

}  // namespace
}  // namespace emberpath::screens
