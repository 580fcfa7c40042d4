// Proves that the headings of the list of jobs stand over their columns, in every window and however long it is.

#include "ui/screens/choose.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/unit/screens/every_screen.hpp"

namespace emberpath::screens {
namespace {

ChooseView jobs(int n) {
    ChooseView view;
    for (int i = 1; i <= n; ++i) {
        JobRow row;
        row.id = "job" + std::to_string(i);
        row.title = "Job " + std::to_string(i);
        row.address = std::to_string(i) + " Long Lane";
        row.call_out = "Cold since yesterday, " + std::to_string(i);
        row.gas = "natural gas";
        row.last = "not tried";
        view.jobs.push_back(row);
    }
    view.selected = "job2";
    return view;
}

/// The first text that says so, be it cut short.
const kit::TextBox* text_of(const kit::Frame& frame, std::string_view words) {
    constexpr std::string_view cut = "…";
    const auto found = std::find_if(frame.texts.begin(), frame.texts.end(), [&](const auto& text) {
        const std::string_view drawn = text.text;
        const bool begins = text.shortened && drawn.size() > cut.size() &&
                            words.starts_with(drawn.substr(0, drawn.size() - cut.size()));
        return (drawn == words || begins) && !text.visible.empty();
    });
    return found == frame.texts.end() ? nullptr : &*found;
}

struct Column {
    const char *heading, *cell;
    bool always;
};
constexpr Column columns[] = {{"Sheet", "Job 1", true},
                              {"House", "1 Long Lane", true},
                              {"The office wrote", "Cold since yesterday, 1", false},
                              {"Gas", "natural gas", false},
                              {"Last time", "not tried", true}};

TEST(ListOfJobs, ShowsTheChosenHouseWhereverItStands) {
    for (const char* chosen : {"job1", "job2", "job17", "job40"})
        for (const Window& window : every_window()) {
            ChooseView view = jobs(40);
            view.selected = chosen;
            kit::State state;
            state.scroll[list_of_jobs] = scroll_to_selected(view);
            const kit::Frame frame =
                choose_screen({typeface(), state, keys(), window.logical()}, view);
            const kit::Node* row = frame.tree.get(std::string("jobs.") + chosen);
            ASSERT_NE(row, nullptr);
            EXPECT_NEAR(row->visible.h, row->bounds.h, 0.01)
                << chosen << " at " << window.logical().w;
        }
}

TEST(ListOfJobs, HasEachHeadingOverItsColumn) {
    for (const int n : {3, 40})  // it fits, and it scrolls
        for (const Window& window : every_window()) {
            const kit::Frame frame =
                choose_screen({typeface(), {}, keys(), window.logical()}, jobs(n));
            for (const Column& column : columns) {
                const auto* heading = text_of(frame, column.heading);
                const auto* cell = text_of(frame, column.cell);
                const std::string where = std::string(column.heading) + ", " + std::to_string(n) +
                                          " jobs at " + std::to_string(window.logical().w);
                ASSERT_EQ(heading == nullptr, cell == nullptr) << where;
                EXPECT_TRUE(heading != nullptr || !column.always) << where;
                if (heading == nullptr) continue;
                EXPECT_NEAR(heading->box.x, cell->box.x, 0.01) << where;
                EXPECT_LE(heading->ink.bottom(), cell->ink.top()) << where;
                EXPECT_NEAR(heading->box.w, cell->box.w, 0.01) << where;
            }
        }
}

}  // namespace
}  // namespace emberpath::screens
