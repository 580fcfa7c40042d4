// Proves what the panels of the author's preview say when there is something to say, and when there is not.
#include <gtest/gtest.h>

#include "tests/unit/screens/every_screen.hpp"
#include "ui/screens/sample.hpp"

namespace emberpath::screens {
namespace {

kit::Frame preview_of(const AuthorView& view) {
    const kit::State state;
    return author_screen({typeface(), state, keys(), {1280.0, 800.0}}, view);
}

TEST(AuthorPanels, ListWhatStandsOutBelowWhatIsSet) {
    AuthorView view = sample_author();
    view.quirks = {"Laundry window stands open"};
    const kit::Frame frame = preview_of(view);
    const kit::Node* quirk = frame.tree.get("facts.quirk.0");
    const kit::Node* last = frame.tree.get("facts." + std::to_string(view.facts.size() - 1));
    ASSERT_NE(quirk, nullptr);
    ASSERT_NE(last, nullptr);
    EXPECT_EQ(quirk->name, "Laundry window stands open");
    EXPECT_TRUE(quirk->focusable);
    EXPECT_GE(quirk->bounds.y, last->bounds.bottom());
}

TEST(AuthorPanels, SayNothingOfQuirksWhereNothingStandsOut) {
    AuthorView view = sample_author();
    view.quirks.clear();
    const kit::Frame frame = preview_of(view);
    EXPECT_EQ(frame.tree.get("facts.quirk.0"), nullptr);
    for (const auto& layer : frame.layers)
        EXPECT_EQ(layer.as_text().find("Stands out"), std::string::npos);
}

}  // namespace
}  // namespace emberpath::screens
