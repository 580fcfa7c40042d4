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

TEST(AuthorPanels, SayOfEachCauseHowItIsToldFromThoseBeforeIt) {
    AuthorView view = sample_author();
    view.causes = {"This job", "Gas regulator droops", "Outlet sensor drifts"};
    view.pairs = {{}, {{1, ""}}, {{0, ""}, {2, "P3"}}};
    const kit::Frame frame = preview_of(view);
    const kit::Node* first = frame.tree.get("checks.pair.1");
    const kit::Node* second = frame.tree.get("checks.pair.2");
    ASSERT_NE(first, nullptr);
    ASSERT_NE(second, nullptr);
    EXPECT_EQ(first->name, "Gas regulator droops");
    EXPECT_EQ(first->value, "1 reading from This job");
    EXPECT_EQ(second->value,
              "by no reading here from This job; only by P3 from Gas regulator droops");
}

TEST(AuthorPanels, DoNotTurnAPlaceWithALongNameIntoANumber) {
    AuthorView view = sample_author();
    view.causes = {"This job", "Gas regulator droops"};
    view.pairs = {{}, {{2, "Service readout"}}};
    const kit::Frame frame = preview_of(view);
    bool dot = false;
    for (const auto& text : frame.texts) dot = dot || text.text == "·";
    EXPECT_TRUE(dot);
    EXPECT_EQ(frame.tree.get("checks.pair.1")->value, "only by Service readout from This job");
}

TEST(AuthorPanels, ScrollWordsOfTheCustomerThatAreLongerThanTheirPlace) {
    AuthorView view = sample_author();
    for (int i = 0; i < 5; ++i) view.customer += " " + view.customer.substr(0, 120);
    const kit::Frame frame = preview_of(view);
    const kit::Node* words = frame.tree.get("facts.customer");
    ASSERT_NE(words, nullptr);
    EXPECT_EQ(words->value, view.customer);
    EXPECT_TRUE(words->focusable);
    EXPECT_GT(words->bounds.h, words->visible.h);
}

}  // namespace
}  // namespace emberpath::screens
