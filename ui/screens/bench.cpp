#include <cmath>
#include <cstdio>

#include "ui/kit/layout.hpp"
#include "ui/screens/glass.hpp"
#include "ui/screens/job_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Point;
using kit::Rect;
using kit::Token;

/// Belt numbers stand only while they can be typed: after T, or while the bench has the focus.
bool numbers_shown(const kit::Stage& stage) {
    return stage.state().prefix == "tool" || stage.state().focus.starts_with("bench.");
}

void draw_tool(kit::Stage& stage, const Rect& r, const ToolView& tool, std::size_t number) {
    const kit::Token fill = tool.in_hand ? Token::ink : Token::paper;
    const kit::Token ink = tool.in_hand ? Token::paper : Token::ink;
    kit::shape(stage.paint(), kit::rounded_rectangle(r, kit::space::radius), fill,
               {.width = kit::line_width::control, .ink = tool.in_hand ? Token::ink : Token::rule});
    const bool numbered = numbers_shown(stage);
    const Point c{r.centre().x, r.centre().y - (numbered ? 8.0 : 0.0)};
    draw_tool_icon(stage.paint(), c, tool.icon, ink);
    const std::string n = std::to_string(number);
    if (numbered)
        stage.text(
            {r.x, r.bottom() - 18.0, r.w, 16.0}, n,
            {tool.in_hand ? kit::Face::bold : kit::Face::regular, kit::type_size::label, ink},
            kit::Align::centre);
    if (!tool.busy.empty() && !tool.in_hand)
        stage.paint().disc({r.right() - 7.0, r.y + 7.0}, 3.5, Token::mark);
    stage.add({.id = "bench.tool." + n,
               .role = kit::Role::choice,
               .name = tool.name,
               .value = tool.busy,
               .bounds = r,
               .command = {"tool", n},
               .focusable = true,
               .selected = tool.in_hand,
               .shortcut = "tool." + n,
               .drag = "tool " + n});
}

/// Divisions of a scale at round numbers: 4 to 8 numbered ones.
double division(double span) {
    double step = std::pow(10.0, std::floor(std::log10(span / 4.0)));
    for (const double more : {2.0, 2.5, 2.0})
        if (span / step > 6.5) step *= more;
    return step;
}

std::string short_number(double value) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%g", std::round(value * 1000.0) / 1000.0);
    return buffer;
}

void draw_scale(kit::Stage& stage, const Rect& r, const ScaleView& s) {
    kit::Painter& p = stage.paint();
    const kit::TextStyle figures{kit::Face::regular, kit::type_size::label, Token::lcd_ink};
    const auto x_of = [&](double v) { return r.x + (v - s.low) / (s.high - s.low) * r.w; };
    kit::line(p, {r.x, r.y + 8.0}, {r.right(), r.y + 8.0}, {.width = 1.0, .ink = Token::lcd_ink});
    const double step = division(s.high - s.low);
    for (int i = 0; s.low + step / 5.0 * i <= s.high + 1e-9; ++i) {
        const double v = s.low + step / 5.0 * i, x = x_of(v);
        const double tall = i % 5 == 0 ? 8.0 : 4.0;
        kit::line(p, {x, r.y + 8.0 - tall}, {x, r.y + 8.0}, {.width = 1.0, .ink = Token::lcd_ink});
        if (i % 5 == 0)
            stage.text(kit::around({x, r.y + 16.0}, 40.0, 14.0), short_number(v), figures,
                       kit::Align::centre);
    }
    const double x = x_of(std::clamp(s.value, s.low, s.high));
    stage.use(kit::Layer::moving);
    const Point pointer[] = {{x - 5.0, r.y - 5.0}, {x + 5.0, r.y - 5.0}, {x, r.y + 3.0}};
    stage.paint().fill(pointer, Token::lcd_ink);
    stage.use(kit::Layer::still);
}

void draw_single(kit::Stage& stage, const Rect& glass, const InstrumentView& tool) {
    const GlassRow& row = tool.rows.front();
    const double note_h = tool.note.empty() ? 0.0 : 15.0, scale_h = tool.has_scale ? 32.0 : 4.0;
    const double room = glass.h - note_h - scale_h - 10.0;
    const kit::TextStyle unit{kit::Face::bold, kit::type_size::heading, Token::lcd_ink};
    const double unit_w = stage.width(row.unit, unit);
    const double size = std::clamp(std::min(room, (glass.w - unit_w - 40.0) / 3.4), 18.0, 110.0);
    const double all = figures_width(stage, row.digits, size) + 12.0 + unit_w;
    const double right = std::min(glass.right() - unit_w - 24.0,
                                  glass.centre().x + all / 2.0 - unit_w - 12.0),
                 foot = glass.y + note_h + 6.0 + room / 2.0 + size / 2.0;
    stage.use(kit::Layer::moving);
    draw_figures(stage, {right, foot}, row.digits, size);
    stage.text({right + 12.0, foot - 18.0, unit_w, 20.0}, row.unit, unit);
    if (!tool.note.empty())
        stage.text_shortened({glass.x + 8.0, glass.y + 4.0, glass.w - 16.0, 15.0}, tool.note,
                             {kit::Face::regular, kit::type_size::label, Token::lcd_ink});
    stage.use(kit::Layer::still);
    if (tool.has_scale)
        draw_scale(stage, {glass.x + 14.0, glass.bottom() - 28.0, glass.w - 28.0, 24.0},
                   tool.scale);
}

constexpr kit::TextStyle small{kit::Face::regular, kit::type_size::label, Token::lcd_ink};

double words_width(const kit::Stage& stage, const GlassRow& row) {
    return stage.width(row.label, small) + stage.width(row.unit, small) + 12.0;
}

void draw_row(kit::Stage& stage, const Rect& c, const GlassRow& row, double size) {
    const double unit_w = stage.width(row.unit, small), label_w = stage.width(row.label, small);
    stage.text({c.x, c.y, label_w, c.h}, row.label, small);
    draw_figures(stage, {c.right() - unit_w - 5.0, c.centre().y + size / 2.0}, row.digits, size, 3);
    stage.text({c.right() - unit_w, c.y, unit_w, c.h}, row.unit, small);
}

/// Several quantities at once: label, figures and unit in each cell.
void draw_several(kit::Stage& stage, const Rect& glass, const InstrumentView& tool) {
    kit::Slicer left(kit::inset(glass, 8.0, 4.0));
    stage.use(kit::Layer::moving);
    if (!tool.note.empty())
        stage.text_shortened(left.top(15.0), tool.note,
                             {kit::Face::regular, kit::type_size::label, Token::lcd_ink});
    const std::size_t n = tool.rows.size(), across = n > 2 ? 2 : 1,
                      down = (n + across - 1) / across;
    constexpr double figures = 3.0 * 0.82, gap = 12.0;  // places, and the advance of one [em]
    std::vector<kit::Part> parts(across, {0.0, 1.0});
    double fixed = gap * static_cast<double>(across - 1);
    for (std::size_t c = 0; c < across; ++c) {
        for (std::size_t i = c; i < n; i += across)
            parts[c].fixed = std::max(parts[c].fixed, words_width(stage, tool.rows[i]));
        fixed += parts[c].fixed;
    }
    const double h = left.rest().h / static_cast<double>(down);
    const double room = (left.rest().w - fixed) / static_cast<double>(across);
    const double size = std::clamp(room / figures, 8.0, std::min(22.0, h - 6.0));
    const auto columns = kit::columns(left.rest(), parts, gap);
    for (std::size_t i = 0; i < n; ++i) {
        const Rect& c = columns[i % across];
        draw_row(stage, {c.x, c.y + h * static_cast<double>(i / across), c.w, h}, tool.rows[i],
                 size);
    }
    stage.use(kit::Layer::still);
}

std::string spoken(const InstrumentView& tool) {
    std::string text;
    for (const GlassRow& row : tool.rows)
        text += (text.empty() ? "" : "; ") + (row.label.empty() ? "" : row.label + " ") +
                row.digits + " " + row.unit;
    if (!tool.note.empty()) text += "; " + tool.note;
    return text + (tool.place.empty() ? "; not connected" : "; " + tool.place);
}

}  // namespace

void draw_instrument(kit::Stage& stage, const Rect& r, const InstrumentView& tool) {
    kit::shape(stage.paint(), kit::rounded_rectangle(r, 9.0), Token::wash,
               {.width = 2.0, .ink = Token::ink});
    kit::Slicer left(kit::inset(r, 12.0));
    const Rect keys = tool.keys.empty() ? Rect{} : left.right(64.0, 10.0);
    const Rect glass = left.rest();
    draw_glass(stage, glass);
    if (tool.rows.size() == 1) draw_single(stage, glass, tool);
    if (tool.rows.size() > 1) draw_several(stage, glass, tool);
    stage.add({.id = "bench.glass",
               .role = kit::Role::reading,
               .name = tool.name,
               .value = spoken(tool),
               .bounds = glass});
    const double h = std::min(40.0, (keys.h - 6.0 * static_cast<double>(tool.keys.size() - 1)) /
                                        static_cast<double>(tool.keys.size()));
    for (std::size_t i = 0; i < tool.keys.size(); ++i) {
        const ToolKey& k = tool.keys[i];
        const Rect cell{keys.x,
                        keys.y + static_cast<double>(i) * (keys.h + 6.0) /
                                     static_cast<double>(tool.keys.size()),
                        keys.w, h};
        kit::button(stage, cell,
                    {.id = "bench.key." + std::to_string(i + 1),
                     .name = k.name,
                     .command = {"act", k.sentence},
                     .hint = k.needs,
                     .value = k.on ? "on" : "",
                     .enabled = k.needs.empty(),
                     .selected = k.on,
                     .default_one = k.on});
    }
}

namespace {

/// The belt has pictures; here stands what they mean, and how one is taken.
void draw_empty_hands(kit::Stage& stage, const Rect& r, const BenchView& bench) {
    kit::Slicer left(r);
    const std::string caps = stage.keys().caps("prefix.tool");
    const std::string how = bench.only_look ? "Pick a tool to see what stood on its glass."
                            : caps.empty()
                                ? "Pick a tool above."
                                : "Pick a tool above, or press " + caps + " and its number.";
    const double h = stage.paragraph_height(r.w, how, kit::style::row_quiet);
    stage.paragraph(left.top(h, 6.0), how, kit::style::row_quiet);
    constexpr double line = 19.0;
    const std::size_t lines = (bench.tools.size() + 1) / 2;
    if (left.rest().h < line * static_cast<double>(lines)) return;
    const auto across = kit::columns(left.rest(), 2, 10.0);
    for (std::size_t i = 0; i < bench.tools.size(); ++i) {
        const Rect& column = across[i / lines];
        const Rect row{column.x, column.y + line * static_cast<double>(i % lines), column.w, line};
        const ToolView& tool = bench.tools[i];
        stage.text({row.x, row.y, 16.0, row.h}, std::to_string(i + 1), kit::style::row_bold);
        const std::string words = tool.busy.empty() ? tool.name : tool.name + ", " + tool.busy;
        stage.text_shortened({row.x + 18.0, row.y, row.w - 18.0, row.h}, words,
                             kit::fitting(stage, words, kit::style::row, row.w - 18.0));
    }
}

}  // namespace

void draw_bench(kit::Stage& stage, const Rect& r, const BenchView& bench) {
    const auto region = stage.region("bench", "Bench", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, kit::space::panel, 6.0));
    const InstrumentView& tool = bench.in_hand;
    std::string note = !tool.name.empty() ? tool.name
                       : bench.only_look  ? "nothing connected"
                                          : "nothing in hand";
    if (!tool.name.empty()) note += tool.place.empty() ? ", not connected" : ", " + tool.place;
    kit::panel_heading(stage, left.top(24.0, 6.0), "bench.heading", "Bench", note);
    const Rect belt = left.top(46.0, 12.0);
    {
        const auto group = stage.inside({.id = "bench.belt",
                                         .role = kit::Role::group,
                                         .name = "Tool belt",
                                         .bounds = belt,
                                         .moves = kit::Moves::row});
        const auto cells = kit::columns(belt, bench.tools.size(), 5.0);
        for (std::size_t i = 0; i < cells.size(); ++i)
            draw_tool(stage, cells[i], bench.tools[i], i + 1);
    }
    Rect rest = left.rest();
    rest.h -= 6.0;
    if (!tool.name.empty()) {
        draw_instrument(stage, rest, tool);
        return;
    }
    draw_empty_hands(stage, rest, bench);
}

}  // namespace emberpath::screens
