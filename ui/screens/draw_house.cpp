#include "ui/screens/draw_house.hpp"

#include "ui/screens/draw_pipes.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;
using kit::Token;

constexpr double hatch_step = 7.0;

/// Cut material: hatched, with a thin outline.
void draw_cut(const SheetPen& pen, const Rect& r) {
    const Rect placed = pen.at(r);
    kit::Painter& p = pen.stage().paint();
    p.box(placed, Token::paper);
    draw_hatch(p, placed, hatch_step, Token::rule);
    kit::frame(p, placed, kit::line_width::divider, Token::ink);
}

void draw_ground(const SheetPen& pen, const HousePlan& plan) {
    const double from = 30.0, to = plan.house.x;
    pen.line({from, plan.ground_y}, {to, plan.ground_y}, {.width = 1.6, .ink = Token::ink});
    const Rect below = pen.at(Rect{from, plan.ground_y + 2.0, to - from, 5.0});
    draw_hatch(pen.stage().paint(), below, hatch_step, Token::rule);
}

/// On one line, else on two: a small room does not borrow from the next one.
void room_name(const SheetPen& pen, const Rect& room, const std::string& name,
               LabelPlacer& placer) {
    kit::Stage& stage = pen.stage();
    const Rect r = pen.at(room);
    constexpr double margin = 7.0, step = 17.0;
    auto lines = kit::wrapped(stage.metrics(), kit::style::absent, name, r.w - 2.0 * margin);
    double w = 0.0;
    for (const std::string& line : lines) w = std::max(w, stage.width(line, kit::style::absent));
    const double h = step * static_cast<double>(lines.size()) + 1.0;
    const Rect places[] = {{r.x + margin, r.y + 3.0, w, h},
                           {r.right() - w - margin, r.y + 3.0, w, h}};
    const Rect box = placer.place(places);
    if (box.empty() || !stage.shows_whole(box)) return;
    for (std::size_t i = 0; i < lines.size(); ++i)
        stage.text({box.x, box.y + step * static_cast<double>(i), box.w, step + 1.0}, lines[i],
                   kit::style::absent);
}

void draw_meter(const SheetPen& pen, const Rect& r, const SiteView& site) {
    pen.box(r, Token::paper, kit::line_width::control, Token::ink);
    pen.line({r.x, r.y + 36.0}, {r.x + 14.0, r.y + 36.0}, stroke_of(Service::gas));
    pen.line({r.x + 14.0, r.y + 36.0}, {r.right(), r.y + 36.0}, stroke_of(Service::gas));
    const Point regulator{r.x + 15.0, r.y + 36.0};
    kit::shape(pen.stage().paint(), kit::circle(pen.at(regulator), 9.5 * pen.scale()), Token::paper,
               {.width = 1.6, .ink = Token::gas});
    const Path dome{{regulator.x - 6.0, regulator.y + 3.0},
                    {regulator.x, regulator.y - 5.0},
                    {regulator.x + 6.0, regulator.y + 3.0}};
    pen.line(dome, {.width = 1.4, .ink = Token::gas});
    const Rect dial{r.x + 29.0, r.y + 12.0, 42.0, 48.0};
    pen.box(dial, Token::paper, kit::line_width::part, Token::ink, 5.0);
    pen.box({dial.x + 7.0, dial.y + 7.0, 28.0, 12.0}, Token::wash, 0.8, Token::ink);
    pen.circle({dial.centre().x, dial.y + 33.0}, 8.0, 1.2, Token::ink);
    pen.line({dial.centre().x, dial.y + 33.0}, {dial.centre().x + 4.0, dial.y + 28.0},
             {.width = 1.2, .ink = Token::ink});
    (void)site;
}

void draw_cylinder(const SheetPen& pen, const Rect& r) {
    const Rect body{r.x, r.y + 18.0, r.w, r.h - 18.0};
    pen.box(body, Token::paper, kit::line_width::heater_case, Token::ink, 16.0 * pen.scale());
    const double neck = r.centre().x;
    pen.line({neck - 12.0, r.y + 19.0}, {neck - 12.0, r.y + 6.0},
             {.width = 1.6, .ink = Token::ink});
    pen.line({neck + 12.0, r.y + 19.0}, {neck + 12.0, r.y + 6.0},
             {.width = 1.6, .ink = Token::ink});
    pen.line({neck, r.y + 18.0}, {neck, r.y - 12.0}, stroke_of(Service::gas));
    kit::shape(pen.stage().paint(), kit::circle(pen.at(Point{neck, r.y - 12.0}), 8.0 * pen.scale()),
               Token::paper, {.width = 1.6, .ink = Token::gas});
    for (const double y : {r.y + 52.0, r.bottom() - 22.0})
        pen.line({r.x, y}, {r.right(), y}, {.width = 1.0, .ink = Token::rule});
}

void draw_power_point(const SheetPen& pen, const HousePlan& plan) {
    const double x = plan.house.x + 27.0;
    pen.box({x - 10.0, 150.0, 20.0, 32.0}, Token::paper, kit::line_width::part, Token::power, 2.0);
    for (const double y : {158.0, 172.0}) {
        pen.dot({x - 3.5, y}, 1.4, Token::power);
        pen.dot({x + 3.5, y}, 1.4, Token::power);
    }
    pen.line({x - 10.0, 165.0}, {x + 10.0, 165.0}, {.width = 1.0, .ink = Token::power});
    pen.box({x - 11.0, 72.0, 22.0, 34.0}, Token::paper, kit::line_width::part, Token::power);
    for (int i = 0; i < 3; ++i)
        pen.fill(kit::rectangle({x - 7.0, 78.0 + 9.0 * i, 14.0, 4.0}), Token::power);
}

}  // namespace

void draw_building(const SheetPen& pen, const HousePlan& plan, const SiteView& site,
                   LabelPlacer& placer) {
    const Rect& h = plan.house;
    draw_ground(pen, plan);
    draw_cut(pen, {h.x, h.y + 8.0, wall, h.h - 16.0});
    draw_cut(pen, {h.right() - wall, h.y + 8.0, wall, h.h - 16.0});
    draw_cut(pen, {h.x, h.y, h.w, 8.0});
    draw_cut(pen, {h.x, h.bottom() - 8.0, h.w, 8.0});
    for (std::size_t i = 1; i < plan.rooms.size(); ++i) {
        const Rect& r = plan.rooms[i].r;
        draw_cut(pen, {r.x - 5.0, r.y, 5.0, r.h});
    }
    room_name(pen, {30.0, 108.0, h.x - 30.0, 40.0}, site.outside, placer);
    for (const PlacedRoom& room : plan.rooms) {
        // The heater's room has its supply at the left, so its name stands at the right.
        const bool first = &room == plan.rooms.data();
        room_name(pen, first ? Rect{room.r.right() - 90.0, room.r.y, 90.0, room.r.h} : room.r,
                  room.name, placer);
    }
}

void draw_flue(const SheetPen& pen, const HousePlan& plan) {
    const Point from = plan.flue[0], elbow = plan.flue[1], end = plan.flue[2];
    constexpr double half = 9.0;
    const Path outer{
        {from.x + half, from.y}, {elbow.x + half, elbow.y - half}, {end.x + 4.0, end.y - half}};
    const Path inner{
        {from.x - half, from.y}, {elbow.x - half, elbow.y + half}, {end.x + 4.0, end.y + half}};
    const Rect across{end.x, elbow.y - half, elbow.x - end.x + half, 2.0 * half};
    kit::Painter& p = pen.stage().paint();
    p.box(pen.at(across), Token::paper);
    p.box(pen.at(Rect{from.x - half, elbow.y, 2.0 * half, from.y - elbow.y}), Token::paper);
    const kit::Stroke edge{.width = kit::line_width::part, .ink = Token::flue};
    pen.line(Path{outer[0], {outer[0].x, outer[1].y}, outer[2]}, edge);
    pen.line(Path{inner[0], {inner[0].x, inner[1].y}, inner[2]}, edge);
    pen.line(plan.flue, {.width = 1.0, .ink = Token::flue, .dash = {10.0, 3.0, 2.0, 3.0}});
    const Path hood{{end.x + 4.0, end.y - 9.0},
                    {end.x - 15.0, end.y - 13.0},
                    {end.x - 15.0, end.y + 13.0},
                    {end.x + 4.0, end.y + 9.0}};
    pen.shape(hood, Token::paper, kit::line_width::part, Token::flue);
    for (const double x : {end.x - 9.0, end.x - 3.0})
        pen.line({x, end.y - 10.0}, {x, end.y + 10.0}, {.width = 1.0, .ink = Token::flue});
}

void draw_supplies(const SheetPen& pen, const HousePlan& plan, const SiteView& site) {
    if (site.gas == GasSource::meter)
        draw_meter(pen, plan.source, site);
    else
        draw_cylinder(pen, plan.source);
    draw_power_point(pen, plan);
}

}  // namespace emberpath::screens
