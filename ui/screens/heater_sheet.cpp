#include "ui/screens/draw_heater.hpp"
#include "ui/screens/draw_pipes.hpp"
#include "ui/screens/draw_points.hpp"
#include "ui/screens/heater_plan.hpp"
#include "ui/screens/house_plan.hpp"
#include "ui/screens/sheet.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;
using kit::Token;
using namespace heater_plan;

// Room around the case for words and pipes [units].
constexpr double beside = 140.0, above = 42.0, below = 40.0;
constexpr double least_scale = 1.0;  // below it the drawing is moved about instead

void draw_connections(const SheetPen& pen, const Rect& r) {
    const double foot = (r.bottom() - pen.at(Point{0.0, 0.0}).y) / pen.scale();
    const auto down = [&](Service service, double x) {
        pen.line({x, heater_units.h}, {x, foot}, stroke_of(service));
    };
    down(Service::gas, gas_x);
    down(Service::cold, cold_x);
    down(Service::hot, hot_x);
    draw_valve(pen, {gas_x, 236.0}, true, Service::gas);
    draw_valve(pen, {cold_x, 236.0}, true, Service::cold);
    pen.line({-beside * 0.6, terminal_y}, {0.0, terminal_y}, stroke_of(Service::power));
}

void draw_flue_stub(const SheetPen& pen, const Rect& r) {
    const double left = (r.x - pen.at(Point{0.0, 0.0}).x) / pen.scale();
    const kit::Stroke edge{.width = kit::line_width::part, .ink = Token::flue};
    pen.line(Path{{100.0, 0.0}, {100.0, -34.0}, {left, -34.0}}, edge);
    pen.line(Path{{80.0, 0.0}, {80.0, -14.0}, {left, -14.0}}, edge);
    pen.line(Path{{90.0, 0.0}, {90.0, -24.0}, {left, -24.0}},
             {.width = 1.0, .ink = Token::flue, .dash = {10.0, 3.0, 2.0, 3.0}});
}

const SheetMark* mark_of(Spot spot) {
    for (const SheetMark& m : sheet_marks)
        if (m.spot == spot) return &m;
    return nullptr;
}

/// A part's words are what is pressed; its leader ends on the part.
PlacedPoint place_part(kit::Stage& stage, const PointView& v, const SheetMark& m,
                       const SheetPen& pen) {
    const Point target = pen.at(m.target), mark = pen.at(m.mark);
    const double w = stage.width(v.note, kit::style::body) + 16.0, h = 26.0;
    if (kit::distance(target, mark) < 1.0)
        return {&v, target, mark, kit::around(mark, 26.0, 26.0), false};
    const Rect r = m.words_left ? Rect{mark.x - w, mark.y - h / 2.0, w, h}
                                : Rect{mark.x, mark.y - h / 2.0, w, h};
    return {&v, target, mark, r, m.words_left};
}

std::vector<PlacedPoint> place_points(const SheetPen& pen, const SiteView& site,
                                      LabelPlacer& placer) {
    std::vector<PlacedPoint> placed;
    for (const bool marks : {false, true})  // words of parts stand where they stand; marks make way
        for (const PointView& v : site.points) {
            const SheetMark* m = mark_of(v.spot);
            if (m == nullptr || (v.shape != PointShape::part) != marks) continue;
            PlacedPoint p = marks ? place_mark(v, pen.at(m->target), pen.at(m->mark), placer)
                                  : place_part(pen.stage(), v, *m, pen);
            p.words_left = m->words_left;
            placer.occupy(p.bounds);
            placed.push_back(p);
        }
    in_reading_order(placed);
    return placed;
}

/// Words of parts, with a leader to the part.
void draw_part_words(kit::Stage& stage, std::span<const PlacedPoint> points) {
    for (const PlacedPoint& p : points) {
        if (p.view->shape != PointShape::part || kit::distance(p.target, p.mark) < 1.0) continue;
        kit::Stroke how{.width = 1.0, .ink = Token::ink};
        if (p.view->out_of_reach) how = {.width = 1.0, .ink = Token::ink2, .dash = {3.0, 2.5}};
        kit::line(stage.paint(), p.mark, p.target, how);
        if (!p.view->out_of_reach) stage.paint().disc(p.target, 3.0, Token::ink);
        stage.paint().box(p.bounds, Token::paper);
        stage.text(kit::inset(p.bounds, 8.0, 0.0), p.view->note, kit::style::body);
    }
}

/// Short words beside marks, where there is room outside the case.
void draw_notes(kit::Stage& stage, std::span<const PlacedPoint> points, LabelPlacer& placer) {
    for (const PlacedPoint& p : points) {
        if (p.view->note.empty() || p.view->shape == PointShape::part) continue;
        const Rect& b = p.bounds;
        const double w = stage.width(p.view->note, kit::style::body_quiet) + 2.0;
        const Rect left{b.x - w - 8.0, b.centre().y - 9.0, w, 18.0};
        const Rect right{b.right() + 8.0, b.centre().y - 9.0, w, 18.0};
        const Rect both[] = {p.words_left ? left : right, p.words_left ? right : left};
        const Rect r = placer.place(both);
        if (!r.empty()) stage.text(r, p.view->note, kit::style::body_quiet);
    }
}

void draw_title(kit::Stage& stage, const Rect& r, const JobView& job) {
    const std::string state = job.site.heater.cover_off ? "Heater, cover off" : "Heater, cover on";
    const Rect first{r.right() - 314.0, r.y + 8.0, 300.0, 20.0};
    const double w = stage.width(state, kit::style::body_bold);
    stage.text(first, state, kit::style::body_bold, kit::Align::end);
    stage.text({first.x, first.y, first.w - w - 10.0, first.h}, "Sheet 2", kit::style::body_bold,
               kit::Align::end);
    const std::string caps = stage.keys().caps("other sheet");
    if (!caps.empty())
        stage.text({first.x, first.y + 20.0, first.w, 18.0}, caps + " goes back to the house",
                   kit::style::row_quiet, kit::Align::end);
    stage.add({.id = "sheet.title",
               .role = kit::Role::heading,
               .name = "Sheet 2, " + state,
               .bounds = first});
}

}  // namespace

void draw_heater_sheet(kit::Stage& stage, const Rect& r, const JobView& job) {
    const Rect drawing{-beside, -above, heater_units.w + 2.0 * beside,
                       heater_units.h + above + below};
    const double fit = std::min((r.w - 20.0) / drawing.w, (r.h - 10.0) / drawing.h);
    const double k = std::max(fit, least_scale) * job.camera.zoom;
    const Placed placed =
        place_sheet(stage, {r, drawing, k}, job, [](const PointView& v) -> std::optional<Point> {
            const SheetMark* m = mark_of(v.spot);
            if (m == nullptr) return std::nullopt;
            return m->mark;
        });
    const SheetPen pen(stage, placed.origin, k);
    const bool still = job.reduce_motion || job.rail.paused;
    stage.clip(r);
    LabelPlacer placer(kit::united(r, pen.at(drawing)));
    placer.occupy({r.right() - 320.0, r.y, 320.0, 48.0});
    const std::vector<PlacedPoint> points = place_points(pen, job.site, placer);
    draw_flue_stub(pen, r);
    draw_connections(pen, r);
    draw_heater(pen, job.site.heater, {job.site.seconds, still});
    draw_title(stage, r, job);
    placer.occupy(pen.at(Rect{0.0, 0.0, heater_units.w, heater_units.h}));
    draw_part_words(stage, points);
    const auto group = stage.inside({.id = "sheet.points",
                                     .role = kit::Role::group,
                                     .name = "Heater, points and parts",
                                     .bounds = r,
                                     .moves = kit::Moves::nearest,
                                     .roam = placed.roam});
    draw_points(stage, points, job.selected, placer);
    draw_notes(stage, points, placer);
    stage.unclip();
}

}  // namespace emberpath::screens
