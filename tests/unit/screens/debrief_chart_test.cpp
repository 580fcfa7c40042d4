// Proves that the debrief's chart of causes can be read without colour, and tells in words what it draws.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "tests/unit/screens/every_screen.hpp"
#include "ui/screens/sample.hpp"

namespace emberpath::screens {
namespace {

using testing::HasSubstr;

kit::Frame drawn(const DebriefView& view, kit::Size size = {1280.0, 800.0}) {
    static const kit::State state;
    return debrief_screen({typeface(), state, keys(), size}, view);
}

std::string said(const DebriefView& view) {
    return drawn(view).tree.get("steps.chart")->value;
}

TEST(DebriefChart, TellsHowLikelyEachCauseWasOnceTheChosenStepWasDone) {
    DebriefView view = sample_debrief();
    view.step = 0;
    EXPECT_THAT(said(view), HasSubstr("on arrival: gas pipe too small (what it was) 10 %"));
    view.step = 6;
    EXPECT_THAT(said(view), HasSubstr("gas pipe too small (what it was) 45 %, gas regulator 51 %"));
    view.step = 10;
    EXPECT_THAT(said(view), HasSubstr("all others under 1 %")) << "as the reading before left them";
}

TEST(DebriefChart, TellsHowManyRemediesWereLeftWhereItHoldsThose) {
    DebriefView view = sample_debrief();
    view.causes_shown = false;
    view.step = 6;
    EXPECT_THAT(said(view), HasSubstr("of 8 remedies the evidence allowed 2, you still held 6"));
    EXPECT_THAT(said(view), testing::Not(HasSubstr("gas regulator")));
}

TEST(DebriefChart, GivesEachCauseALineOfItsOwnWhateverItsColour) {
    const DebriefView view = sample_debrief();
    const kit::Frame frame = drawn(view);
    std::set<std::pair<double, std::vector<double>>> lines;
    for (std::size_t i = 0; i < view.likely.size(); ++i) {
        const kit::Node* entry = frame.tree.get("steps.cause." + std::to_string(i));
        ASSERT_NE(entry, nullptr) << i;
        for (const auto& layer : frame.layers)
            for (const auto& command : layer.commands())
                if (const auto* stroke = std::get_if<kit::StrokeCommand>(&command);
                    stroke != nullptr && entry->bounds.contains(stroke->path.front()))
                    lines.insert({stroke->how.width, stroke->how.dash});
    }
    EXPECT_EQ(lines.size(), view.likely.size());
}

TEST(DebriefChart, WritesItsLettersOnTheLinesThatStandClearOfTheOthers) {
    DebriefView view = sample_debrief();
    const kit::Frame frame = drawn(view, {1920.0, 1080.0});
    const kit::Rect chart = frame.tree.get("steps.chart")->bounds;
    std::string letters;
    for (const auto& text : frame.texts)
        if (text.text.size() == 1 && text.text >= "a" && text.text <= "e" &&
            chart.contains(text.box.centre()))
            letters += text.text;
    EXPECT_EQ(letters, "abcde");
}

TEST(DebriefChart, OffersNoChoiceWhereNothingWasWeighed) {
    DebriefView view = sample_debrief();
    view.stands.clear();
    const kit::Frame frame = drawn(view);
    EXPECT_EQ(frame.tree.get("steps.lane.causes"), nullptr);
    EXPECT_EQ(frame.tree.get("steps.cause.0"), nullptr);
    EXPECT_THAT(said(view), HasSubstr("remedies the evidence allowed"));
}

}  // namespace
}  // namespace emberpath::screens
