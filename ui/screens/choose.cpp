#include "ui/screens/choose.hpp"

#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"
#include "ui/screens/overlays.hpp"
#include "ui/screens/sheet.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

constexpr double row_height = 38.0;

struct Columns {
    std::vector<Rect> cells;  // title, house, call-out, gas, last
};

/// What does not fit is left out from the right end of what matters least; the card below says it all.
Columns columns_of(const Rect& r) {
    const bool wide = r.w > 900.0, middling = r.w > 640.0;
    const std::array parts{kit::Part{84.0, 0.0}, kit::Part{150.0, 0.4},
                           kit::Part{0.0, middling ? 1.4 : 0.0}, kit::Part{wide ? 172.0 : 0.0, 0.0},
                           kit::Part{170.0, 0.2}};
    return {kit::columns(kit::inset(r, 14.0, 0.0), parts, 8.0)};
}

void cell_text(kit::Stage& stage, const Rect& cell, std::string_view words,
               const kit::TextStyle& style) {
    if (cell.w > 30.0) stage.text_shortened(cell, words, style);
}

void draw_table_head(kit::Stage& stage, const Rect& r) {
    const auto [cells] = columns_of(r);
    static constexpr std::array<const char*, 5> titles{"Sheet", "House", "The office wrote", "Gas",
                                                       "Last time"};
    for (std::size_t i = 0; i < cells.size(); ++i)
        cell_text(stage, cells[i], titles[i], kit::style::row_quiet);
    kit::line(stage.paint(), {r.x, r.bottom()}, {r.right(), r.bottom()},
              {.width = 1.6, .ink = Token::ink});
}

void draw_row(kit::Stage& stage, const Rect& r, const JobRow& job, bool selected) {
    kit::Painter& p = stage.paint();
    if (selected) {
        p.box(r, Token::wash);
        p.box({r.x, r.y, 4.0, r.h}, Token::ink);
    }
    const auto [cells] = columns_of(r);
    cell_text(stage, cells[0], job.title, kit::style::body_bold);
    cell_text(stage, cells[1], job.address, selected ? kit::style::body_bold : kit::style::body);
    cell_text(stage, cells[2], job.call_out, kit::style::row_quiet);
    cell_text(stage, cells[3], job.gas, kit::style::row_quiet);
    const kit::TextStyle last = job.broken ? kit::with_ink(kit::style::row_bold, Token::danger)
                                : job.can_resume ? kit::style::row_bold
                                                 : kit::style::row_quiet;
    cell_text(stage, cells[4], job.last, last);
    kit::line(p, {r.x, r.bottom()}, {r.right(), r.bottom()}, {.width = 1.0, .ink = Token::hair});
}

void draw_jobs(kit::Stage& stage, const Rect& r, const ChooseView& view) {
    kit::Slicer left(r);
    Rect head = left.top(28.0);
    const double all = row_height * static_cast<double>(view.jobs.size());
    // Above the columns, which end before the scroll bar.
    if (all > left.rest().h + 0.5) head.w -= kit::ScrollList::bar_width;
    draw_table_head(stage, head);
    kit::ScrollList list(stage, left.rest(), list_of_jobs, "Jobs",
                         row_height * static_cast<double>(view.jobs.size()));
    for (std::size_t i = 0; i < view.jobs.size(); ++i) {
        const JobRow& job = view.jobs[i];
        const bool selected = job.id == view.selected;
        const Rect row = list.row(row_height * static_cast<double>(i), row_height);
        if (list.shows(row)) draw_row(stage, row, job, selected);
        stage.add({.id = "jobs." + job.id,
                   .role = kit::Role::row,
                   .name = job.title + ", " + job.address,
                   .value = job.call_out + ", " + job.gas + ", " + job.last,
                   .bounds = row,
                   .command = {"choose", job.id},
                   .focusable = true,
                   .selected = selected});
    }
}

const JobRow* selected_job(const ChooseView& view) {
    for (const JobRow& job : view.jobs)
        if (job.id == view.selected) return &job;
    return nullptr;
}

void draw_mode(kit::Stage& stage, const Rect& r, const ChooseView& view) {
    const std::array modes{
        kit::Choice{"start.coached", "Coached", {"mode", "coached"}, !view.assessed, "", ""},
        kit::Choice{"start.assessed", "Assessed", {"mode", "assessed"}, view.assessed, "", ""}};
    kit::Slicer left(r);
    kit::segments(stage, left.top(28.0, 6.0), "start.mode", "Mode", modes);
    const std::string words = view.assessed
                                  ? "Facts only until you hand in. The attempt is kept as evidence."
                                  : "Says at once when something is dangerous.";
    stage.paragraph(left.rest(), words, kit::style::row_quiet);
}

void draw_start(kit::Stage& stage, const Rect& r, const ChooseView& view) {
    const auto region = stage.region("start", "Start", r);
    kit::line(stage.paint(), {r.x, r.y}, {r.right(), r.y}, {.width = 2.0, .ink = Token::ink});
    const JobRow* job = selected_job(view);
    if (job == nullptr) {
        kit::label(stage, kit::inset(r, 16.0, 8.0), "start.none", "Pick a house above.",
                   kit::style::body_quiet);
        return;
    }
    kit::Slicer left(kit::inset(r, 16.0, 10.0));
    Rect buttons = left.right(210.0, 16.0);
    draw_mode(stage, left.right(std::min(230.0, left.rest().w * 0.45), 16.0), view);
    const Rect title = left.top(22.0, 2.0);
    stage.text_shortened(title, job->title + "  " + job->address, kit::style::body_bold);
    stage.paragraph(left.rest(), job->call_out, kit::style::quote);
    stage.add({.id = "start.card",
               .role = kit::Role::label,
               .name = job->title + ", " + job->address,
               .value = job->call_out,
               .bounds = title});
    kit::Slicer down(buttons);
    if (job->broken) {
        kit::button(stage, down.top(34.0, 8.0),
                    {.id = "start.go",
                     .name = "What is wrong with it",
                     .command = {"start", job->id},
                     .primary = true});
        return;
    }
    const std::string begin = job->can_resume ? "Go on where you left" : "Go to the house";
    kit::button(stage, down.top(34.0, 8.0),
                {.id = "start.go",
                 .name = begin,
                 .command = {job->can_resume ? "resume" : "start", job->id},
                 .primary = true});
    if (job->can_resume)
        kit::button(stage, down.top(28.0),
                    {.id = "start.afresh", .name = "Start afresh", .command = {"start", job->id}});
    else if (job->can_debrief)
        kit::button(stage, down.top(28.0),
                    {.id = "start.debrief",
                     .name = "Debrief of last time",
                     .command = {"debrief", job->id}});
}

void draw_head(kit::Stage& stage, const Rect& r, const ChooseView& view) {
    const auto region = stage.region("head", "Emberpath", r);
    kit::Painter& p = stage.paint();
    p.box(r, Token::paper);
    p.box({r.x, r.bottom() - 2.0, r.w, 2.0}, Token::ink);
    kit::Slicer left(kit::inset(r, 16.0, 0.0));
    const kit::ButtonSpec settings{.id = "head.settings",
                                   .name = "Settings",
                                   .command = {"settings"},
                                   .caps = stage.keys().caps("settings"),
                                   .shortcut = "settings"};
    const double w = kit::button_width(stage, settings);
    const Rect place = left.right(w, 12.0);
    const double mid = r.centre().y;
    double buttons_w = w + 40.0;
    if (view.author) {
        const kit::ButtonSpec preview{.id = "head.preview",
                                      .name = "Author's preview",
                                      .command = {"preview"},
                                      .caps = stage.caps("preview"),
                                      .shortcut = "preview"};
        const Rect box = left.right(kit::button_width(stage, preview), 12.0);
        kit::button(stage, {box.x, mid - 14.0, box.w, 28.0}, preview);
        buttons_w += box.w + 12.0;
    }
    const double title_w =
        stage.text({left.rest().x, r.y, 200.0, r.h}, "Emberpath", kit::style::title);
    const std::string words =
        view.notice.empty()
            ? "Choose a house. Something is wrong with its water heater: find out what, safely."
            : view.notice;
    const Rect sentence{left.rest().x + title_w + 20.0, r.y + 3.0, left.rest().w - title_w - 20.0,
                        r.h};
    stage.text_shortened(sentence, words, kit::style::body_quiet);
    stage.add({.id = "head.title",
               .role = kit::Role::heading,
               .name = "Emberpath",
               .value = words,
               .bounds = {r.x, r.y, r.w - buttons_w, r.h}});
    kit::button(stage, {place.x, mid - 14.0, place.w, 28.0}, settings);
}

}  // namespace

double scroll_to_selected(const ChooseView& view) {
    constexpr std::size_t above = 2;
    for (std::size_t i = above; i < view.jobs.size(); ++i)
        if (view.jobs[i].id == view.selected) return row_height * static_cast<double>(i - above);
    return 0.0;
}

kit::Frame choose_screen(const Setting& setting, const ChooseView& view) {
    kit::Stage stage(setting.metrics, setting.state, setting.keys, setting.size);
    stage.place("choose");
    stage.paint().box(stage.whole(), Token::desk);
    kit::Slicer left(stage.whole());
    draw_head(stage, left.top(54.0), view);
    static const std::array hints{KeyHint{"next region", "next region"},
                                  KeyHint{"activate", "choose"}, KeyHint{"help", "all keys"}};
    const Rect status = left.bottom(30.0);
    const Rect sheet = kit::inset(left.rest(), 8.0, 8.0);
    Rect strip;
    {
        const auto region = stage.region("jobs", "Jobs", sheet);
        kit::Slicer inside(draw_sheet_frame(stage, sheet, false));
        strip = inside.bottom(96.0);
        draw_jobs(stage, inside.rest(), view);
    }
    draw_start(stage, strip, view);
    draw_status(stage, status, "",
                "Up and down to look through the list, Enter to choose, Enter again to go there.",
                hints);
    return finished(stage, setting, "choose");
}

}  // namespace emberpath::screens
