#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/glass.hpp"
#include "ui/screens/job_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;
using kit::Token;

enum class PanelKey { power, reset, readout, up, down };

void draw_panel_picture(kit::Painter& p, Point c, PanelKey key) {
    const kit::Stroke line{.width = 1.8, .ink = Token::plate_ink};
    switch (key) {
        case PanelKey::power:
            p.stroke(kit::arc(c, 5.5, -50.0, 230.0), line);
            kit::line(p, {c.x, c.y - 8.0}, {c.x, c.y}, line);
            return;
        case PanelKey::reset: {
            p.stroke(kit::arc(c, 5.5, -30.0, 240.0), line);
            const Point head[] = {
                {c.x + 8.0, c.y - 5.5}, {c.x + 1.5, c.y - 4.0}, {c.x + 6.5, c.y + 1.0}};
            p.fill(head, Token::plate_ink);
            return;
        }
        case PanelKey::readout:
            p.disc({c.x, c.y - 5.5}, 1.6, Token::plate_ink);
            kit::line(p, {c.x, c.y - 2.0}, {c.x, c.y + 6.5},
                      {.width = 2.4, .ink = Token::plate_ink});
            return;
        case PanelKey::up:
        case PanelKey::down: {
            const double s = key == PanelKey::up ? 1.0 : -1.0;
            p.stroke(
                Path{{c.x - 6.0, c.y + 3.0 * s}, {c.x, c.y - 3.0 * s}, {c.x + 6.0, c.y + 3.0 * s}},
                line);
            return;
        }
    }
}

void panel_key(kit::Stage& stage, const Rect& r, PanelKey key) {
    struct Words {
        const char *id, *name, *argument;
    };
    static constexpr std::array<Words, 5> words{{{"power", "Heater on or off", "power"},
                                                 {"reset", "Reset", "reset"},
                                                 {"readout", "Service readout", "readout"},
                                                 {"up", "Warmer", "up"},
                                                 {"down", "Cooler", "down"}}};
    const Words& w = words[static_cast<std::size_t>(key)];
    kit::shape(stage.paint(), kit::rounded_rectangle(kit::inset(r, 1.0), 4.0), Token::plate,
               {.width = 1.2, .ink = Token::plate_ink});
    draw_panel_picture(stage.paint(), r.centre(), key);
    stage.add({.id = std::string("panel.") + w.id,
               .role = kit::Role::button,
               .name = w.name,
               .bounds = r,
               .command = {"panel", w.argument},
               .focusable = true});
}

void draw_panel_keys(kit::Stage& stage, const Rect& r) {
    const auto cells = kit::grid(r, 6, 3, {3.0, 3.0});
    panel_key(stage, cells[0], PanelKey::power);
    panel_key(stage, cells[1], PanelKey::readout);
    panel_key(stage, cells[2], PanelKey::up);
    panel_key(stage, cells[3], PanelKey::reset);
    panel_key(stage, cells[5], PanelKey::down);
}

/// Lines of actions that fit, and how many stand side by side.
struct ActionGrid {
    std::size_t across = 2, down = 2;
};
ActionGrid grid_for(std::size_t n, const Rect& r) {
    const auto rows = static_cast<std::size_t>(std::max(1.0, (r.h + 3.0) / 27.0));
    const std::size_t across = std::max<std::size_t>(r.w > 620.0   ? 3
                                                     : r.w > 300.0 ? 2
                                                                   : 1,
                                                     (n + rows - 1) / rows);
    return {across, std::max<std::size_t>(1, std::min(rows, (n + across - 1) / across))};
}

/// A line that ends in "…" after a whole word.
std::string with_more_to_come(const kit::Stage& stage, std::string words, double width) {
    while (stage.width(words + " …", kit::style::quote) > width &&
           words.find(' ') != std::string::npos)
        words.resize(words.rfind(' '));
    return words + " …";
}

/// The largest size in which all of the words have room; the least one where none is small enough.
kit::TextStyle style_for(const kit::Stage& stage, std::string_view words, const Rect& r,
                         bool spoken) {
    kit::TextStyle style = spoken ? kit::style::quote : kit::style::body;
    while (style.size > kit::type_size::label && stage.paragraph_height(r.w, words, style) > r.h)
        style.size -= 1.0;
    return style;
}

/// The name of the selected thing; or, while an action that cannot be done is pointed at, what it needs.
void draw_subtitle(kit::Stage& stage, const Rect& r, const SelectionView& s, bool part) {
    for (std::size_t i = 0; i < s.actions.size(); ++i) {
        const std::string id = "actions." + std::to_string(i + 1);
        const bool pointed_at = stage.is_focused(id) || stage.state().hovered == id;
        if (!pointed_at || s.actions[i].needs.empty()) continue;
        const std::string words = std::to_string(i + 1) + ": " + s.actions[i].needs;
        stage.text_shortened(r, words, kit::fitting(stage, words, kit::style::absent, r.w));
        return;
    }
    if (!part) stage.text_shortened(r, s.name, kit::fitting(stage, s.name, kit::style::body, r.w));
}

}  // namespace

void draw_front_panel(kit::Stage& stage, const Rect& r, const PanelView& panel) {
    const auto region = stage.region("panel", "Heater front panel", r);
    kit::Slicer left(kit::inset(r, 10.0, 3.0));
    const Rect title = left.top(22.0);
    stage.text(title, "Heater front panel", kit::style::body_bold);
    if (panel.balloon > 0)
        kit::balloon(stage, {title.right() - 12.0, title.centre().y}, panel.balloon,
                     kit::Balloon::filled, 9.5);
    const Rect plate{left.rest().x, left.rest().y + 1.0, left.rest().w,
                     std::min(60.0, left.rest().h - 2.0)};
    kit::shape(stage.paint(), kit::rounded_rectangle(plate, 5.0), Token::plate,
               {.width = 1.0, .ink = Token::ink});
    kit::Slicer inside(kit::inset(plate, 6.0, 4.5));
    const Rect keys = inside.right(std::min(90.0, inside.rest().w * 0.44), 6.0);
    const Rect glass = kit::inset(inside.rest(), 0.0, 3.0);
    draw_glass(stage, glass);
    const kit::TextStyle set{kit::Face::bold, kit::type_size::row, Token::lcd_ink};
    const double set_w = stage.width("100 °C", set) + 12.0;
    const double size = std::min(kit::type_size::display, (glass.w - set_w - 8.0) / 3.3);
    stage.use(kit::Layer::moving);
    if (!panel.word.empty()) {
        draw_display_word(stage, {glass.x + 8.0, glass.centre().y + size * 0.5}, panel.word, size);
        const double w = stage.width(panel.set_point, set);
        stage.text({glass.right() - w - 5.0, glass.y + 3.0, w, glass.h * 0.45}, "set",
                   {kit::Face::regular, 12.0, Token::lcd_ink});
        stage.text({glass.right() - w - 5.0, glass.centre().y - 1.0, w, glass.h * 0.45},
                   panel.set_point, set);
    }
    stage.use(kit::Layer::still);
    stage.add({.id = "panel.display",
               .role = kit::Role::button,
               .name = "Display",
               .value = panel.word.empty() ? "dark" : panel.word + ", set " + panel.set_point,
               .bounds = glass,
               .command = {"select", "panel"},
               .focusable = true});
    draw_panel_keys(stage, keys);
}

void draw_selection(kit::Stage& stage, const Rect& r, const SelectionView& s) {
    const auto region =
        stage.region("actions", s.tag.empty() ? "Actions" : "Actions at " + s.tag, r);
    kit::Slicer left(kit::inset(r, 10.0, 3.0));
    const Rect title = left.top(22.0);
    if (s.tag.empty()) {
        stage.text(title, "Nothing selected", kit::style::body_bold);
        const std::string caps = stage.keys().caps("go to");
        const std::string how = caps.empty() ? "Pick a point or part on the sheet."
                                             : "Pick a point or part on the sheet, or press " +
                                                   caps + " and type its name.";
        stage.paragraph(left.rest(), how, kit::style::row_quiet);
        stage.add({.id = "actions.none",
                   .role = kit::Role::label,
                   .name = "Nothing selected",
                   .value = how,
                   .bounds = r});
        return;
    }
    // A point goes by its tag, a part by its name.
    const bool part = s.tag.front() >= 'a' && s.tag.front() <= 'z';
    const std::string& called = part && !s.name.empty() ? s.name : s.tag;
    const double w = stage.text(title, kit::capitalised(called), kit::style::body_bold);
    draw_subtitle(stage, {title.x + w + 10.0, title.y, title.w - w - 10.0, title.h}, s, part);
    stage.add({.id = "actions.what",
               .role = kit::Role::heading,
               .name = s.tag,
               .value = s.name,
               .bounds = title});
    const ActionGrid grid = grid_for(s.actions.size(), left.rest());
    const double gap = 3.0,
                 h = std::min(26.0, (left.rest().h - gap * static_cast<double>(grid.down - 1)) /
                                        static_cast<double>(grid.down));
    const Rect area{left.rest().x, left.rest().y, left.rest().w,
                    h * static_cast<double>(grid.down) + gap * static_cast<double>(grid.down - 1)};
    const auto cells =
        kit::grid(area, std::min<std::size_t>(grid.across * grid.down, 9), grid.across, {8.0, gap});
    for (std::size_t i = 0; i < s.actions.size() && i < cells.size(); ++i) {
        const ActionView& a = s.actions[i];
        const std::string n = std::to_string(i + 1);
        kit::button(stage, cells[i],
                    {.id = "actions." + n,
                     .name = a.name,
                     .command = {a.command, a.sentence},
                     .number = n,
                     .shortcut = "action." + n,
                     .hint = a.needs,
                     .enabled = a.needs.empty(),
                     .default_one = i == 0 && a.needs.empty(),
                     .cost = a.cost});
    }
}

void draw_job_card(kit::Stage& stage, const Rect& r, const CardView& card) {
    kit::Slicer left(kit::inset(r, 13.0, 3.0));
    const Rect title = left.top(22.0, 2.0);
    const double w =
        stage.text(title, card.spoken ? "Customer" : "Job card", kit::style::body_bold);
    const Rect note{title.x + w + 12.0, title.y, title.w - w - 12.0, title.h};
    if (stage.width(card.gas, kit::style::row_quiet) <= note.w)
        stage.text(note, card.gas, kit::style::row_quiet, kit::Align::end);
    const std::string words = card.spoken ? "“" + card.words + "”" : card.words;
    const kit::TextStyle style = style_for(stage, words, left.rest(), card.spoken);
    const double step = kit::line_height(style.size);
    const auto lines = kit::wrapped(stage.metrics(), style, words, left.rest().w);
    const auto room = static_cast<std::size_t>(left.rest().h / step);
    Rect line{left.rest().x, left.rest().y, left.rest().w, step};
    for (std::size_t i = 0; i < lines.size() && i < room; ++i) {
        const bool more = i + 1 == room && lines.size() > room;  // the rest is on the card itself
        stage.text(line, more ? with_more_to_come(stage, lines[i], line.w) : lines[i], style);
        line.y += step;
    }
    stage.add({.id = "card.words",
               .role = kit::Role::button,
               .name = "The customer and the job card",
               .value = card.words + " " + card.gas,
               .bounds = kit::inset(r, 3.0),
               .command = {"select", "customer"},
               .focusable = true});
}

void draw_title_strip(kit::Stage& stage, const Rect& r, const JobView& job) {
    kit::Painter& p = stage.paint();
    kit::line(p, {r.x, r.y}, {r.right(), r.y}, {.width = 2.0, .ink = Token::ink});
    const bool many = job.selection.actions.size() > 6;
    kit::Slicer left({r.x, r.y + 1.0, r.w, r.h - 1.0});
    const Rect panel = left.left(std::clamp(r.w * 0.288, 246.0, 330.0));
    const Rect card = many ? Rect{} : left.right(std::clamp(r.w * 0.225, 196.0, 330.0));
    draw_front_panel(stage, panel, job.panel);
    draw_selection(stage, left.rest(), job.selection);
    const kit::Stroke rule{.width = 1.2, .ink = Token::ink};
    kit::line(p, {panel.right(), r.y}, {panel.right(), r.bottom()}, rule);
    if (many) return;  // nine actions need the room; the card is one key away
    kit::line(p, {card.x, r.y}, {card.x, r.bottom()}, rule);
    const auto region = stage.region("card", "Job card", card);
    draw_job_card(stage, card, job.card);
}

}  // namespace emberpath::screens
