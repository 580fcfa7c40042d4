#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

constexpr double row_height = 40.0;

void draw_row(kit::Stage& stage, const Rect& r, const ReadingView& reading, bool newest) {
    kit::Painter& p = stage.paint();
    if (newest) p.box(r, Token::mark_wash);
    kit::balloon(stage, {r.x + 24.0, r.centre().y}, reading.number, kit::Balloon::filled, 10.0);
    const Rect first{r.x, r.y + 3.0, r.w, 18.0}, second{r.x, r.y + 20.0, r.w, 17.0};
    const double time_w = stage.width(reading.time, kit::style::row), right = r.right() - 12.0;
    stage.text({right - time_w, first.y, time_w, first.h}, reading.time, kit::style::row_quiet);
    stage.text_shortened({r.x + 44.0, first.y, 44.0, first.h}, reading.where, kit::style::row_bold);
    const double x = r.x + 92.0;
    draw_reading_words(stage, {x, first.y, right - time_w - 8.0 - x, first.h},
                       {x, second.y, right - x, second.h}, reading);
    kit::line(p, {r.x + 14.0, r.bottom()}, {r.right() - 12.0, r.bottom()},
              {.width = 1.0, .ink = Token::hair});
}

void draw_rows(kit::Stage& stage, const Rect& r, const std::vector<ReadingView>& readings) {
    kit::ScrollList list(stage, r, "evidence.list", "Readings, newest first",
                         row_height * static_cast<double>(readings.size()));
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const ReadingView& reading = readings[i];
        const Rect row = list.row(row_height * static_cast<double>(i), row_height);
        if (list.shows(row)) draw_row(stage, row, reading, i == 0);
        const std::string n = std::to_string(reading.number);
        stage.add({.id = "evidence.reading." + n,
                   .role = kit::Role::row,
                   .name = "Reading " + n + ", " + reading.where + " " + reading.quantity,
                   .value = reading.value + ", " + what_and_when(reading) + ", at " + reading.time,
                   .bounds = row,
                   .command = {"reading", n},
                   .focusable = true});
    }
}

/// Nothing recorded yet: what will come, and how to begin.
void draw_empty(kit::Stage& stage, const Rect& r) {
    const kit::Point c{r.centre().x, r.y + r.h * 0.3};
    kit::balloon(stage, c, 1, kit::Balloon::expected, std::min(20.0, r.h * 0.16));
    const double below = c.y + std::min(20.0, r.h * 0.16) + 8.0;
    stage.text({r.x, below, r.w, 22.0}, "No readings yet", kit::style::body_bold,
               kit::Align::centre);
    const std::string caps = stage.keys().caps("record");
    const std::string how = "Pick a tool, connect it to a point, then " +
                            (caps.empty() ? std::string("record.") : "press " + caps + ".");
    stage.text({r.x, below + 21.0, r.w, 20.0}, how, kit::style::row_quiet, kit::Align::centre);
    const kit::ButtonSpec go{.id = "evidence.go",
                             .name = "Go to a point",
                             .command = {"go to"},
                             .caps = stage.keys().caps("go to")};
    const double w = kit::button_width(stage, go);
    kit::button(stage, {c.x - w / 2.0, below + 46.0, w, 28.0}, go);
}

}  // namespace

std::string what_and_when(const ReadingView& reading) {
    return reading.what.empty() ? reading.condition : reading.what + ", " + reading.condition;
}

void draw_reading_words(kit::Stage& stage, const Rect& first, const Rect& second,
                        const ReadingView& reading) {
    const double w = stage.text_shortened(first, reading.value, kit::style::row_bold) + 8.0;
    const Rect beside{first.x + w, first.y, first.w - w, first.h};
    const bool room = stage.width(reading.what, kit::style::row_quiet) <= beside.w;
    if (room) stage.text(beside, reading.what, kit::style::row_quiet);
    const std::string words = room ? reading.condition : what_and_when(reading);
    stage.text_shortened(second, words, kit::style::row_quiet);
}

void draw_evidence(kit::Stage& stage, const Rect& r, const JobView& job) {
    const auto region = stage.region("evidence", "Evidence", r);
    kit::panel(stage, r);
    kit::Slicer left(r);
    const std::size_t n = job.readings.size();
    const std::string note = n == 0   ? "nothing yet"
                             : n == 1 ? "1 reading"
                                      : std::to_string(n) + " readings, newest first";
    left.top(6.0);
    kit::panel_heading(stage, kit::inset(left.top(24.0, 2.0), kit::space::panel, 0.0),
                       "evidence.heading", "Evidence", note);
    const Rect foot = left.bottom(42.0);
    if (n == 0)
        draw_empty(stage, kit::inset(left.rest(), 1.0, 0.0));
    else
        draw_rows(stage, kit::inset(left.rest(), 1.0, 0.0), job.readings);
    kit::line(stage.paint(), {foot.x, foot.y}, {foot.right(), foot.y},
              {.width = 1.0, .ink = Token::rule});
    kit::Slicer bar(kit::inset(foot, kit::space::panel, 8.0));
    const bool ready = job.record_refusal.empty();
    kit::button(stage, bar.left(std::min(230.0, foot.w * 0.66)),
                {.id = "evidence.record",
                 .name = ready ? "Record reading" : "Record",
                 .command = {"record"},
                 .caps = stage.keys().caps("record"),
                 .shortcut = "record",
                 .hint = job.record_refusal,
                 .primary = ready,
                 .enabled = ready});
    if (job.replay) return;
    kit::link(stage, bar.right(80.0),
              {.id = "evidence.write-up",
               .name = "Write-up…",
               .command = {"write-up"},
               .shortcut = "write-up"});
}

}  // namespace emberpath::screens
