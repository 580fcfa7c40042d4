#include <algorithm>

#include "ui/kit/layout.hpp"
#include "ui/screens/author_parts.hpp"
#include "ui/screens/lanes.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

/// Ends at the right edge; what is longer than the place is cut. Returns the width drawn.
double text_to_the_right(kit::Stage& stage, const Rect& r, const std::string& words,
                         const kit::TextStyle& style) {
    const double w = std::min(r.w, stage.width(words, style));
    stage.text_shortened({r.right() - w, r.y, w, r.h}, words, style);
    return w;
}

/// Too long for one line: the sound house below, in smaller type.
void draw_tall_cell(kit::Stage& stage, const Rect& r, const PreviewCell& cell, kit::TextStyle style,
                    const std::string& sound) {
    constexpr double step = 15.0;
    style.size = kit::type_size::label;
    kit::TextStyle below = kit::style::row_quiet;
    below.size = kit::type_size::label;
    const double mid = r.centre().y;
    const double w = text_to_the_right(stage, {r.x, mid - step, r.w, step}, cell.faulty, style);
    text_to_the_right(stage, {r.x, mid, r.w, step}, sound, below);
    if (cell.changed)
        stage.paint().box({r.right() - w - 1.0, mid - 1.0, w + 2.0, 1.5}, Token::mark);
}

void draw_cell(kit::Stage& stage, const Rect& r, const PreviewCell& cell) {
    const std::string sound = "[" + cell.sound + "]";
    const double sound_w = stage.width(sound, kit::style::row);
    const kit::TextStyle style = cell.changed ? kit::style::body_bold : kit::style::body;
    const double w = stage.width(cell.faulty, style), right = r.right() - sound_w - 7.0;
    if (w + 7.0 + sound_w > r.w) return draw_tall_cell(stage, r, cell, style, sound);
    stage.text({r.right() - sound_w, r.y, sound_w, r.h}, sound, kit::style::row_quiet);
    stage.text({right - w, r.y, w, r.h}, cell.faulty, style);
    if (cell.changed)
        stage.paint().box({right - w - 1.0, r.centre().y + 8.0, w + 2.0, 2.0}, Token::mark);
}

std::vector<kit::Part> parts_of(double width, const AuthorView& view) {
    std::vector<kit::Part> parts{{width < 560.0 ? 130.0 : 210.0, 0.8}};
    for (std::size_t i = 0; i < view.columns.size(); ++i) parts.push_back({0.0, 1.0});
    return parts;
}

/// Conditions above their columns, on two lines where they are long; returns the height used.
double draw_heads(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    constexpr double step = 16.0, most_lines = 2.0;
    const auto cells = kit::columns({r.x, r.y, r.w - 14.0, 20.0}, parts_of(r.w, view), 10.0);
    std::vector<std::vector<std::string>> words;
    double lines = 1.0;
    for (std::size_t i = 0; i < view.columns.size(); ++i) {
        words.push_back(kit::wrapped(stage.metrics(), kit::style::row_quiet,
                                     view.columns[i].condition, cells[i + 1].w));
        lines = std::clamp(static_cast<double>(words.back().size()), lines, most_lines);
    }
    const double h = lines * step + 10.0;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const double n = std::min(lines, static_cast<double>(words[i].size()));
        for (std::size_t k = 0; static_cast<double>(k) < n; ++k) {
            const double y = r.y + h - 4.0 - step * (n - static_cast<double>(k));
            text_to_the_right(stage, {cells[i + 1].x, y, cells[i + 1].w, step}, words[i][k],
                              kit::style::row_quiet);
        }
    }
    kit::line(stage.paint(), {r.x, r.y + h}, {r.right() - 14.0, r.y + h},
              {.width = 1.2, .ink = Token::ink});
    return h;
}

std::string spoken(const PreviewLine& line, const std::vector<PreviewColumn>& columns) {
    std::string text;
    for (std::size_t i = 0; i < line.cells.size() && i < columns.size(); ++i)
        text += (i == 0 ? "" : "; ") + columns[i].condition + " " + line.cells[i].faulty +
                ", sound " + line.cells[i].sound + (line.cells[i].changed ? ", changed" : "");
    return text;
}

/// What stands here, and the way to the other thing that can.
void draw_preview_head(kit::Stage& stage, const Rect& r, const AuthorView& view, bool loop) {
    kit::Slicer bar(r);
    if (!view.loop.traces.lanes.empty()) {
        const kit::ButtonSpec other{.id = "preview.switch",
                                    .name = loop ? "Readings" : "Control loop",
                                    .command = {"show", loop ? "readings" : "loop"}};
        kit::button(stage, bar.right(kit::button_width(stage, other), 10.0), other);
    }
    const std::string title = loop ? "Control loop" : "Readings this fault produces";
    const std::string note = loop ? view.loop.words + " · sound house dotted and in brackets"
                                  : "sound house in brackets";
    const bool fits =
        stage.width(title, kit::style::body_bold) + stage.width(note, kit::style::row) + 40.0 <
        bar.rest().w;
    kit::panel_heading(stage, bar.rest(), "preview.heading", title, fits ? note : "");
}

void draw_loop(kit::Stage& stage, const Rect& r, const LoopView& loop) {
    kit::Slicer left(r);
    left.top(16.0);
    left.bottom(18.0);
    draw_lanes(stage, left.rest(), loop.traces,
               {.id = "loop", .from_start = true, .focusable = true, .beside = loop.sound});
}

void draw_readings(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    kit::Slicer left(r);
    const Rect head = left.top(draw_heads(stage, left.rest(), view));
    const auto parts = parts_of(head.w, view);
    constexpr double h = 32.0;
    kit::ScrollList list(stage, left.rest(), "preview.list", "Readings",
                         h * static_cast<double>(view.lines.size()));
    for (std::size_t i = 0; i < view.lines.size(); ++i) {
        const PreviewLine& line = view.lines[i];
        const Rect row = list.row(h * static_cast<double>(i), h);
        if (list.shows(row)) {
            const auto cells = kit::columns({row.x, row.y, head.w - 14.0, row.h}, parts, 10.0);
            const double w = stage.text(cells[0], line.tag, kit::style::row_bold);
            const double from = cells[0].x + std::max(30.0, w + 8.0);
            stage.text_shortened({from, row.y, cells[0].right() - from, row.h}, line.title,
                                 kit::style::row_quiet);
            for (std::size_t c = 0; c < line.cells.size() && c + 1 < cells.size(); ++c)
                draw_cell(stage, cells[c + 1], line.cells[c]);
            kit::line(stage.paint(), {row.x, row.bottom()}, {head.right() - 14.0, row.bottom()},
                      {.width = 1.0, .ink = Token::hair});
        }
        stage.add({.id = "preview." + std::to_string(i),
                   .role = kit::Role::row,
                   .name = line.tag + " " + line.title,
                   .value = spoken(line, view.columns),
                   .bounds = row,
                   .focusable = true});
    }
}

}  // namespace

void draw_preview(kit::Stage& stage, const Rect& r, const AuthorView& view) {
    const bool loop = view.shown == "loop" && !view.loop.traces.lanes.empty();
    const auto region =
        stage.region("preview", loop ? "Control loop" : "Readings this fault produces", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, 14.0, 6.0));
    draw_preview_head(stage, left.top(26.0, 2.0), view, loop);
    if (loop) return draw_loop(stage, left.rest(), view.loop);
    draw_readings(stage, left.rest(), view);
}

}  // namespace emberpath::screens
