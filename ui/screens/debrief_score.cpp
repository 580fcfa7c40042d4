#include <algorithm>
#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/debrief_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

/// An area, a heading, or a paragraph of a section.
struct Item {
    double height = 0.0;
    const AreaView* area = nullptr;
    std::string text{};
    bool heading = false;
};

constexpr double heading_h = 34.0, paragraph_gap = 6.0;

std::vector<Item> items_of(const kit::Stage& stage, const DebriefView& view, double width) {
    std::vector<Item> items;
    for (const AreaView& area : view.areas)
        items.push_back({48.0 + stage.paragraph_height(width, area.reason, kit::style::row_quiet),
                         &area, "", 0});
    for (const SectionView& section : view.sections) {
        if (section.lines.empty()) continue;
        items.push_back({heading_h, nullptr, section.heading, true});
        for (const std::string& line : section.lines)
            items.push_back(
                {stage.paragraph_height(width, line, kit::style::row_quiet) + paragraph_gap,
                 nullptr, line});
    }
    return items;
}

void draw_area(kit::Stage& stage, const Rect& r, const AreaView& area) {
    kit::Painter& p = stage.paint();
    const Rect first{r.x, r.y + 4.0, r.w, 20.0};
    stage.text(first, area.name, kit::style::body_bold);
    stage.text(
        first, area.figure,
        area.below_floor ? kit::with_ink(kit::style::body_bold, Token::danger) : kit::style::body,
        kit::Align::end);
    const Rect bar{r.x, r.y + 26.0, r.w, 7.0};
    kit::shape(p, kit::rectangle(bar), Token::wash, {.width = 1.0, .ink = Token::ink2});
    p.box({bar.x, bar.y, bar.w * std::clamp(area.share, 0.0, 1.0), bar.h},
          area.below_floor ? Token::danger : Token::ink);
    for (int i = 0; i <= 4; ++i) {
        const double x = bar.x + bar.w * i / 4.0;
        kit::line(p, {x, bar.bottom()}, {x, bar.bottom() + 4.0},
                  {.width = 1.0, .ink = Token::ink2});
    }
    stage.paragraph({r.x, r.y + 39.0, r.w, r.h}, area.reason, kit::style::row_quiet);
}

void draw_item(kit::Stage& stage, const Rect& row, const Item& item) {
    if (item.area != nullptr) return draw_area(stage, row, *item.area);
    if (!item.heading) {
        stage.paragraph(row, item.text, kit::style::row_quiet);
        return;
    }
    const Rect head{row.x, row.y + 10.0, row.w, 22.0};
    const double w = stage.text(head, item.text, kit::style::body_bold) + 10.0;
    kit::line(stage.paint(), {head.x + w, head.centre().y}, {head.right(), head.centre().y},
              {.width = 1.0, .ink = Token::hair});
}

constexpr double figure_h = 50.0;  // of the score itself; the proposal stands below

void draw_figure(kit::Stage& stage, const Rect& r, const DebriefView& view) {
    const kit::TextStyle large{kit::Face::bold, kit::type_size::score, Token::ink};
    const double w = stage.text({r.x, r.y, r.w, figure_h}, view.score, large);
    const Rect beside{r.x + w + 8.0, r.y, r.w - w - 8.0, figure_h};
    stage.text({beside.x, beside.bottom() - 20.0, beside.w, 20.0}, view.of, kit::style::body_quiet);
    stage.text({beside.x, beside.y, beside.w, 18.0}, view.verdict,
               kit::with_ink(kit::style::body_bold, view.passed ? Token::ok : Token::danger),
               kit::Align::end);
    stage.paragraph({r.x, r.y + figure_h + 2.0, r.w, r.h - figure_h}, view.floor,
                    kit::style::row_quiet);
    stage.add({.id = "score.figure",
               .role = kit::Role::reading,
               .name = "Score",
               .value = view.score + " " + view.of + ", " + view.verdict + ", " + view.floor,
               .bounds = r});
}

}  // namespace

void draw_outcome(kit::Stage& stage, const Rect& r, const DebriefView& view) {
    const auto region = stage.region("outcome", "Outcome", r);
    kit::Painter& p = stage.paint();
    p.box(r, Token::paper);
    p.box({r.x, r.bottom() - 2.0, r.w, 2.0}, Token::ink);
    kit::Slicer left(kit::inset(r, 14.0, 0.0));
    const double mid = r.centre().y;
    const auto button_at = [&](const kit::ButtonSpec& spec) {
        const Rect place = left.right(kit::button_width(stage, spec), 8.0);
        kit::button(stage, {place.x, mid - 14.0, place.w, 28.0}, spec);
    };
    const bool narrow = r.w < 1000.0;
    button_at({.id = "outcome.again",
               .name = narrow ? "Another" : "Try another house",
               .command = {"another"},
               .primary = true});
    button_at({.id = "outcome.save",
               .name = narrow ? "Save" : "Save report",
               .command = {"save report"}});
    if (!narrow)
        button_at({.id = "outcome.replay",
                   .name = "Replay",
                   .command = {"replay"},
                   .shortcut = "replay"});
    const auto lines = [&](const Rect& c, std::string_view first, std::string_view second,
                           const kit::TextStyle& bold) {
        stage.text_shortened({c.x, mid - 20.0, c.w, 20.0}, first, bold);
        stage.text_shortened({c.x, mid, c.w, 18.0}, second,
                             kit::fitting(stage, second, kit::style::row_quiet, c.w));
    };
    const double job_w = stage.width(view.job, kit::style::heading) + 10.0;
    lines(left.left(std::max(narrow ? 84.0 : 112.0, job_w)), view.job, "Debrief",
          kit::style::heading);
    const bool safe = view.unsafe.empty();
    const std::string unsafe = safe ? "No unsafe act" : view.unsafe;
    // By content, so that both can be read; what is still too long is cut.
    const double first_w = std::max(stage.width(view.outcome, kit::style::body_bold),
                                    stage.width(view.outcome_detail, kit::style::row)) +
                           46.0;
    const double second_w = std::max(stage.width(unsafe, kit::style::body_bold),
                                     stage.width(view.unsafe_detail, kit::style::row)) +
                            40.0;
    const bool fits = first_w + second_w <= left.rest().w;
    const double take = fits   ? first_w
                        : safe ? left.rest().w - second_w
                               : left.rest().w * first_w / (first_w + second_w);
    kit::Slicer halves(left.rest());
    const Rect first_cell = halves.left(take);
    const std::array cells{first_cell, halves.rest()};
    kit::draw_mark(p, {cells[0].x + 14.0, mid},
                   view.outcome_good ? kit::Mark::tick : kit::Mark::cross, 10.0);
    lines({cells[0].x + 30.0, r.y, cells[0].w - 36.0, r.h}, view.outcome, view.outcome_detail,
          kit::style::body_bold);
    stage.add({.id = "outcome.words",
               .role = kit::Role::heading,
               .name = view.outcome,
               .value = view.outcome_detail,
               .bounds = cells[0]});
    kit::draw_mark(p, {cells[1].x + 14.0, mid}, safe ? kit::Mark::tick : kit::Mark::hazard,
                   safe ? 10.0 : 9.0);
    lines({cells[1].x + 32.0, r.y, cells[1].w - 36.0, r.h}, unsafe, view.unsafe_detail,
          safe ? kit::style::body_bold : kit::with_ink(kit::style::body_bold, Token::danger));
    stage.add({.id = "outcome.unsafe",
               .role = kit::Role::heading,
               .name = unsafe,
               .value = view.unsafe_detail,
               .bounds = cells[1]});
}

void draw_score(kit::Stage& stage, const Rect& r, const DebriefView& view) {
    const auto region = stage.region("score", "Score", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, 15.0, 6.0));
    kit::panel_heading(stage, left.top(24.0, 4.0), "score.heading", "Score", "");
    const double proposal_h =
        stage.paragraph_height(left.rest().w, view.floor, kit::style::row_quiet);
    draw_figure(stage, left.top(figure_h + proposal_h + 4.0, 6.0), view);
    const Rect place{left.rest().x, left.rest().y, left.rest().w + 11.0, left.rest().h};
    const double width = left.rest().w - 4.0;
    const auto items = items_of(stage, view, width);
    double all = 0.0;
    for (const Item& item : items) all += item.height;
    kit::ScrollList list(stage, place, "score.list", "Areas, and what else there is to say", all);
    double y = 0.0;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const Item& item = items[i];
        Rect row = list.row(y, item.height);
        row.w = width;
        y += item.height;
        if (list.shows(row)) draw_item(stage, row, item);
        stage.add(
            {.id = "score." + std::to_string(i),
             .role = item.heading ? kit::Role::heading : kit::Role::row,
             .name = item.area != nullptr ? item.area->name : item.text,
             .value = item.area != nullptr ? item.area->figure + ", " + item.area->reason : "",
             .bounds = row,
             .focusable = !item.heading});
    }
}

}  // namespace emberpath::screens
