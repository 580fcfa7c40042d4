#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/sheet.hpp"

namespace emberpath::screens {

namespace {

using kit::Point;
using kit::Rect;
using kit::Token;

struct Way {
    const char *id, *name, *command;
    bool back, to_mark;
};
constexpr std::array ways{Way{"replay.mark-back", "Marked moment before", "mark back", true, true},
                          Way{"replay.back", "Step before", "step back", true, false},
                          Way{"replay.on", "Next step", "step on", false, false},
                          Way{"replay.mark-on", "Next marked moment", "mark on", false, true}};

bool open(const Way& way, const ReplayView& v) {
    if (way.to_mark) return way.back ? v.mark_before : v.mark_after;
    return way.back ? v.before : v.after;
}

/// A triangle to one side; to a marked moment, with a balloon's disc before its point.
void draw_way(kit::Painter& p, Point c, const Way& way, kit::Ink ink) {
    const double side = way.back ? -1.0 : 1.0;
    const double from = way.to_mark ? -7.0 : -4.0;
    const Point triangle[] = {{c.x + side * from, c.y - 6.0},
                              {c.x + side * (from + 9.0), c.y},
                              {c.x + side * from, c.y + 6.0}};
    p.fill(triangle, ink);
    if (way.to_mark) p.disc({c.x + side * 6.0, c.y}, 3.5, ink);
}

}  // namespace

void draw_replay_plate(kit::Stage& stage, const Rect& sheet, const ReplayView& replay) {
    stage.use(kit::Layer::moving);  // over the drawing, under what stands in front
    const double w = std::min(sheet.w - 24.0, 620.0);
    const Rect r{sheet.centre().x - w / 2.0, sheet.y + 1.0, w, 36.0};
    const auto region = stage.region("replay", "Replay", r);
    kit::Painter& p = stage.paint();
    p.box(r, Token::plate);
    kit::frame(p, r, 1.0, Token::ink);
    kit::Slicer left(kit::inset(r, 8.0, 4.0));
    std::array<Rect, ways.size()> boxes;
    for (std::size_t i = ways.size(); i-- > 0;) boxes[i] = left.right(34.0, 6.0);
    left.right(4.0);
    const kit::TextStyle bold{kit::Face::bold, kit::type_size::body, Token::plate_ink};
    const std::string where = "Replay  " + replay.where;
    stage.text(left.left(std::min(left.rest().w, stage.width(where, bold)), 12.0), where, bold);
    if (left.rest().w > 30.0)
        stage.text_shortened(left.rest(), replay.title,
                             {kit::Face::regular, kit::type_size::row, Token::plate_ink});
    stage.add({.id = "replay.where",
               .role = kit::Role::status,
               .name = where,
               .value = replay.title,
               .bounds = r});
    for (std::size_t i = 0; i < ways.size(); ++i) {
        const bool can = open(ways[i], replay);
        kit::button(stage, boxes[i],
                    {.id = ways[i].id,
                     .name = ways[i].name,
                     .command = {ways[i].command},
                     .shortcut = ways[i].command,
                     .hint = can ? "" : "there is none",
                     .enabled = can,
                     .picture_only = true});
        draw_way(p, boxes[i].centre(), ways[i], can ? Token::ink : Token::ink2);
    }
    stage.use(kit::Layer::still);
}

}  // namespace emberpath::screens
