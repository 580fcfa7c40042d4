#include <algorithm>

#include "ui/kit/layout.hpp"
#include "ui/screens/debrief_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

constexpr double reading_w = 232.0, least_column = 92.0, head_h = 58.0;
/// A column stands for one cause, or for all causes that one remedy sets right.
constexpr const char* title = "The same readings where another remedy is due";

/// Which remedies have a column: that of this house first, then as many others as there is room for.
std::vector<std::size_t> shown_columns(const DebriefView& view, double width) {
    std::vector<std::size_t> shown{view.true_column};
    const auto room = static_cast<std::size_t>(std::max(1.0, (width - reading_w) / least_column));
    std::vector<std::size_t> others;
    for (std::size_t i = 0; i < view.columns.size(); ++i)
        if (i != view.true_column) others.push_back(i);
    const std::size_t most = room > 1 ? room - 1 : 1;
    const std::size_t first =
        others.size() > most ? std::min(view.first_column, others.size() - most) : 0;
    for (std::size_t i = first; i < others.size() && shown.size() <= most; ++i)
        shown.push_back(others[i]);
    return shown;
}

struct Table {
    std::vector<std::size_t> shown;
    std::vector<Rect> columns;  // the reading's, then one for each remedy; of full height
};

Table table_in(const Rect& r, const DebriefView& view) {
    Table t{shown_columns(view, r.w), {}};
    std::vector<kit::Part> parts(t.shown.size() + 1, {0.0, 1.0});
    parts[0] = {std::min(reading_w, r.w * 0.5), 0.0};
    t.columns = kit::columns(r, parts);
    return t;
}

/// On three lines at most; dots say that it goes on, and the tree has all of it.
void draw_column_head(kit::Stage& stage, const Rect& cell, const std::string& words, bool is_true,
                      std::size_t column) {
    constexpr double step = 17.0;
    constexpr std::size_t most = 3;
    const kit::TextStyle style = is_true ? kit::style::row_bold : kit::style::row;
    auto lines = kit::wrapped(stage.metrics(), style, words, cell.w);
    for (std::size_t k = most; k < lines.size(); ++k) lines[most - 1] += " " + lines[k];
    lines.resize(std::min(lines.size(), most));
    const double top = cell.bottom() - 6.0 - step * static_cast<double>(lines.size());
    for (std::size_t k = 0; k < lines.size(); ++k) {
        const double w = std::min(cell.w, stage.width(lines[k], style));
        stage.text_shortened(
            {cell.centre().x - w / 2.0, top + step * static_cast<double>(k), w, step}, lines[k],
            style);
    }
    stage.add({.id = "table.column." + std::to_string(column),
               .role = kit::Role::label,
               .name = words,
               .value = is_true ? "what is so in this house" : "",
               .bounds = cell});
}

void draw_heads(kit::Stage& stage, const Table& t, const Rect& head, const DebriefView& view) {
    const Rect first{t.columns[0].x, head.y, t.columns[0].w, head.h};
    stage.text({first.x, first.bottom() - 22.0, 80.0, 18.0}, "Reading", kit::style::row_quiet);
    stage.text({first.right() - 70.0, first.bottom() - 22.0, 60.0, 18.0}, "yours",
               kit::style::row_quiet, kit::Align::end);
    for (std::size_t i = 0; i < t.shown.size(); ++i)
        draw_column_head(stage,
                         {t.columns[i + 1].x + 6.0, head.y, t.columns[i + 1].w - 12.0, head.h},
                         view.columns[t.shown[i]], i == 0, t.shown[i]);
}

/// On one line, else in smaller type on two; what is longer still is cut.
void draw_fitted(kit::Stage& stage, const Rect& r, const std::string& words, kit::TextStyle style,
                 kit::Align align) {
    if (stage.width(words, style) <= r.w) {
        stage.text(r, words, style, align);
        return;
    }
    style.size = kit::type_size::label;
    auto lines = kit::wrapped(stage.metrics(), style, words, r.w);
    constexpr double step = 16.0;
    constexpr std::size_t most = 2;
    const std::size_t n = std::min(lines.size(), most);
    for (std::size_t i = 0; i < n; ++i) {
        if (i + 1 == most && lines.size() > most)
            for (std::size_t k = most; k < lines.size(); ++k) lines[i] += " " + lines[k];
        const double y =
            r.centre().y + step * (static_cast<double>(i) - static_cast<double>(n) / 2.0);
        const double w = std::min(r.w, stage.width(lines[i], style));
        const double x = align == kit::Align::centre ? r.centre().x - w / 2.0 : r.x;
        stage.text_shortened({x, y, w, step}, lines[i], style);
    }
}

void draw_cell(kit::Stage& stage, const Rect& cell, const ComparedCell& c, bool is_true) {
    if (c.ruled_out) stage.paint().box(kit::inset(cell, 0.5), Token::wash);
    const kit::TextStyle style = is_true       ? kit::style::body_bold
                                 : c.ruled_out ? kit::style::body_quiet
                                               : kit::style::body;
    const double mark = c.ruled_out ? 22.0 : 0.0;
    draw_fitted(stage, {cell.x + 2.0, cell.y, cell.w - mark - 4.0, cell.h}, c.predicted, style,
                kit::Align::centre);
    if (c.ruled_out)
        kit::draw_mark(stage.paint(), {cell.right() - 16.0, cell.centre().y}, kit::Mark::cross,
                       8.0);
}

std::string spoken(const ComparedRow& row, const DebriefView& view) {
    std::string text = "yours " + row.yours;
    for (std::size_t i = 0; i < view.columns.size() && i < row.cells.size(); ++i)
        text += "; " + view.columns[i] + " " + row.cells[i].predicted +
                (row.cells[i].ruled_out ? ", ruled out" : "");
    return text;
}

void draw_row(kit::Stage& stage, const Rect& r, const ComparedRow& row, const Table& t) {
    const Rect first{t.columns[0].x, r.y, t.columns[0].w, r.h};
    kit::balloon(stage, {first.x + 10.0, r.centre().y}, row.balloon, kit::Balloon::filled, 9.5);
    const double yours_w = stage.width(row.yours, kit::style::body_bold);
    const double w = stage.text({first.x + 28.0, r.y, 50.0, r.h}, row.where, kit::style::row_bold);
    const double from = first.x + 28.0 + (row.where.empty() ? 0.0 : std::max(w + 8.0, 34.0));
    const double room = first.right() - 18.0 - yours_w - from;
    if (room > 24.0)  // else the value alone; the tree says the rest
        draw_fitted(stage, {from, r.y, room, r.h}, row.condition, kit::style::row_quiet,
                    kit::Align::start);
    stage.text({first.x, r.y, first.w - 10.0, r.h}, row.yours, kit::style::body_bold,
               kit::Align::end);
    for (std::size_t i = 0; i < t.shown.size(); ++i)
        if (t.shown[i] < row.cells.size()) {
            const Rect& column = t.columns[i + 1];
            draw_cell(stage, {column.x, r.y, column.w, r.h}, row.cells[t.shown[i]], i == 0);
        }
    kit::line(stage.paint(), {first.x, r.bottom()}, {t.columns.back().right(), r.bottom()},
              {.width = 1.0, .ink = Token::hair});
}

}  // namespace

void draw_comparison(kit::Stage& stage, const Rect& r, const DebriefView& view) {
    const auto region = stage.region("table", title, r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, 14.0, 6.0));
    if (view.columns.empty()) {
        kit::panel_heading(stage, left.top(26.0, 4.0), "table.heading", "Nothing was read", "");
        return;
    }
    const Rect head_row = left.top(26.0, 4.0);
    const Table t =
        table_in({left.rest().x, left.rest().y, left.rest().w - 14.0, left.rest().h}, view);
    kit::Slicer bar(head_row);
    if (t.shown.size() < view.columns.size()) {
        const kit::ButtonSpec more{
            .id = "table.more", .name = "Other columns", .command = {"other remedies"}};
        kit::button(stage, bar.right(kit::button_width(stage, more), 10.0), more);
    }
    const std::string note = std::to_string(t.shown.size()) + " of " +
                             std::to_string(view.columns.size()) +
                             " columns · crossed: your reading rules it out";
    const double title_w = stage.width(title, kit::style::body_bold);
    kit::panel_heading(
        stage, bar.rest(), "table.heading", title,
        title_w + stage.width(note, kit::style::row) + 40.0 < bar.rest().w ? note : "");
    const Rect head = left.top(head_h);
    kit::Painter& p = stage.paint();
    const Rect truth{t.columns[1].x, head.y, t.columns[1].w, head.h + left.rest().h};
    p.box(truth, Token::mark_wash);
    draw_heads(stage, t, head, view);
    kit::line(p, {head.x, head.bottom()}, {t.columns.back().right(), head.bottom()},
              {.width = 1.2, .ink = Token::ink});
    const auto n = static_cast<double>(view.rows.size());
    const double row_h = std::clamp(n > 0.0 ? left.rest().h / n : 34.0, 34.0, 52.0);
    {
        kit::ScrollList list(stage, left.rest(), "table.list", "Readings", row_h * n);
        for (std::size_t i = 0; i < view.rows.size(); ++i) {
            const ComparedRow& row = view.rows[i];
            const Rect cell = list.row(row_h * static_cast<double>(i), row_h);
            if (list.shows(cell)) draw_row(stage, cell, row, t);
            stage.add({.id = "table.reading." + std::to_string(row.balloon),
                       .role = kit::Role::row,
                       .name = "Reading " + std::to_string(row.balloon) + ", " + row.where + " " +
                               row.condition,
                       .value = spoken(row, view),
                       .bounds = cell,
                       .command = {"step of reading", std::to_string(row.balloon)},
                       .focusable = true});
        }
    }
    for (std::size_t i = 1; i < t.columns.size(); ++i)
        kit::line(p, {t.columns[i].x, head.y}, {t.columns[i].x, truth.bottom()},
                  {.width = 1.0, .ink = Token::hair});
    kit::frame(p, truth, 2.0, Token::mark);
}

}  // namespace emberpath::screens
