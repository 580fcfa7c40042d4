#include "ui/screens/draw_points.hpp"

#include <algorithm>
#include <cmath>

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;
using kit::Token;

constexpr double balloon_radius = 9.5;
constexpr kit::Size tool_size{24.0, 32.0};

Path outline_of(const PointView& v, Point c) {
    switch (v.shape) {
        case PointShape::pressure:
            return kit::rectangle(kit::around(c, 24.0, 24.0));
        case PointShape::temperature:
            return kit::circle(c, 12.5);
        case PointShape::electrical:
            return kit::diamond(c, 16.5);
        case PointShape::flow:
            return kit::arrow_box(c, 16.5, 12.0);
        case PointShape::air:
            return kit::hexagon(c, 16.0, 12.5);
        case PointShape::part:
            return {};
    }
    return {};
}

double size_of(PointShape shape) {
    switch (shape) {
        case PointShape::pressure:
            return 12.0;
        case PointShape::temperature:
            return 12.5;
        case PointShape::part:
            return 0.0;
        default:
            return 16.0;
    }
}

std::string value_of(const PointView& v) {
    std::string text;
    if (!v.tool.empty()) text = v.tool + " connected";
    if (v.balloons.empty()) return text;
    text +=
        (text.empty() ? "" : ", ") + std::string(v.balloons.size() == 1 ? "reading" : "readings");
    for (const int n : v.balloons) text += " " + std::to_string(n);
    return text;
}

void draw_leader(kit::Painter& p, const PlacedPoint& point) {
    const PointView& v = *point.view;
    if (kit::distance(point.target, point.mark) < size_of(v.shape) + 1.0) return;
    kit::Stroke how{.width = 1.0, .ink = v.tool.empty() ? Token::ink : Token::mark};
    if (v.out_of_reach) how = {.width = 1.0, .ink = Token::ink2, .dash = {3.0, 2.5}};
    kit::line(p, point.target, point.mark, how);
    if (!v.out_of_reach) p.disc(point.target, 3.0, how.ink);
}

void draw_mark_shape(kit::Stage& stage, const PlacedPoint& point, bool selected) {
    const PointView& v = *point.view;
    kit::Painter& p = stage.paint();
    const Path path = outline_of(v, point.mark);
    if (selected) {
        const Rect r = kit::outset(mark_bounds(v, point.mark), 3.0);
        kit::shape(p, kit::rounded_rectangle(r, 3.0), Token::paper,
                   {.width = 2.4, .ink = Token::ink});
    }
    const bool attached = !v.tool.empty();
    kit::Stroke edge{.width = 1.5,
                     .ink = attached         ? Token::mark
                            : v.out_of_reach ? Token::ink2
                                             : Token::ink};
    if (v.out_of_reach && !attached) edge.dash = {3.0, 2.5};
    kit::shape(p, path, attached ? Token::mark : Token::paper, edge);
    const kit::Ink ink = attached ? Token::paper : v.out_of_reach ? Token::ink2 : Token::ink;
    stage.text(kit::around(point.mark, 40.0, 20.0), v.tag,
               {kit::Face::bold, kit::type_size::label, ink}, kit::Align::centre);
}

bool put_balloons(kit::Stage& stage, const Rect& b, std::span<const int> numbers,
                  LabelPlacer& placer) {
    const double step = 2.0 * balloon_radius + 3.0, h = 2.0 * balloon_radius;
    const double w = step * static_cast<double>(numbers.size()) - 3.0;
    const Point c = b.centre();
    const Rect places[] = {
        {b.left() - w - 5.0, c.y - h / 2.0, w, h},     {c.x - w / 2.0, b.top() - h - 5.0, w, h},
        {b.left() - w - 5.0, b.top() - h - 2.0, w, h}, {c.x - w / 2.0, b.bottom() + 5.0, w, h},
        {b.right() + 5.0, c.y - h / 2.0, w, h},        {b.left() - w - 5.0, b.bottom() + 3.0, w, h},
        {b.right() + 5.0, b.top() - h - 4.0, w, h},    {b.left() - w - 24.0, c.y - h - 8.0, w, h}};
    const Rect r = placer.place(places);
    if (r.empty()) return false;
    for (std::size_t i = 0; i < numbers.size(); ++i)
        kit::balloon(stage, {r.x + balloon_radius + step * static_cast<double>(i), r.centre().y},
                     numbers[i], kit::Balloon::filled, balloon_radius);
    return true;
}

void draw_balloons(kit::Stage& stage, const PlacedPoint& point, LabelPlacer& placer) {
    // All of them where there is room, else the latest; the node names them all.
    std::span<const int> numbers = point.view->balloons;
    while (!numbers.empty() && !put_balloons(stage, point.bounds, numbers, placer))
        numbers = numbers.subspan(1);
}

/// The instrument stands near its point, joined by a hose or lead.
void draw_tool(kit::Stage& stage, const PlacedPoint& point, LabelPlacer& placer) {
    if (point.view->tool.empty()) return;
    const Point c = point.mark;
    const kit::Size s = tool_size;
    std::vector<Rect> places;
    for (const double far : {44.0, 52.0, 60.0, 68.0, 76.0, 90.0, 106.0, 124.0})
        for (const double angle :
             {180.0, 200.0, 160.0, 220.0, 140.0, 90.0, 240.0, 0.0, 270.0, 320.0, 40.0})
            places.push_back(kit::around(kit::arc(c, far, angle, angle + 1.0).front(), s.w, s.h));
    const Rect r = placer.place(places);
    if (r.empty()) return;  // the mark is filled, and its node says what is connected
    const Point d = r.centre() - c;
    const bool beside = std::abs(d.x) > std::abs(d.y);
    const double way = beside ? (d.x < 0.0 ? 1.0 : -1.0) : (d.y < 0.0 ? 1.0 : -1.0);
    const Point from = beside ? Point{d.x < 0.0 ? r.right() : r.left(), r.bottom() - 6.0}
                              : Point{r.centre().x, d.y < 0.0 ? r.bottom() : r.top()};
    const Point pull = beside ? Point{12.0 * way, 0.0} : Point{0.0, 12.0 * way};
    stage.paint().stroke(kit::bezier(from, from + pull, c - pull * 1.4, c),
                         {.width = 2.2, .ink = Token::mark});
    draw_small_tool(stage.paint(), r);
}

void add_node(kit::Stage& stage, const PlacedPoint& point, bool selected) {
    const PointView& v = *point.view;
    const bool part = v.shape == PointShape::part;
    stage.add({.id = "sheet." + v.tag,
               .role = part ? kit::Role::part : kit::Role::point,
               .name = part ? v.name : v.tag + " " + v.name,
               .value = value_of(v),
               .hint = v.out_of_reach ? "under the cover" : "",
               .bounds = point.bounds,
               .command = {"select", v.tag},
               .focusable = true,
               .selected = selected,
               .accepts_drop = true});
}

}  // namespace

Rect mark_bounds(const PointView& view, Point mark) {
    switch (view.shape) {
        case PointShape::electrical:
            return kit::around(mark, 33.0, 33.0);
        case PointShape::flow:
            return kit::around(mark, 33.0, 24.0);
        case PointShape::air:
            return kit::around(mark, 32.0, 25.0);
        case PointShape::part:
            return kit::around(mark, 26.0, 26.0);
        default:
            return kit::around(mark, 25.0, 25.0);
    }
}

PlacedPoint place_mark(const PointView& view, Point target, Point best, LabelPlacer& placer) {
    std::vector<Rect> places{mark_bounds(view, best)};
    for (const double far : {9.0, 18.0, 28.0, 40.0, 54.0, 70.0})
        for (int i = 0; i < 12; ++i)
            places.push_back(
                mark_bounds(view, kit::arc(best, far, 30.0 * i, 30.0 * i + 1.0).front()));
    Rect r = placer.place(places);
    if (r.empty()) r = places.front();
    return {&view, target, r.centre(), r, false};
}

void in_reading_order(std::vector<PlacedPoint>& points) {
    std::sort(points.begin(), points.end(),
              [](const PlacedPoint& a, const PlacedPoint& b) { return a.view < b.view; });
}

void draw_small_tool(kit::Painter& p, const Rect& r) {
    kit::shape(p, kit::rounded_rectangle(r, 4.0), Token::paper, {.width = 1.8, .ink = Token::mark});
    kit::shape(p, kit::rectangle({r.x + 4.0, r.y + 5.0, r.w - 8.0, 8.0}), Token::mark_wash,
               {.width = 1.0, .ink = Token::mark});
    for (int i = 0; i < 3; ++i) p.disc({r.x + 6.0 + 6.0 * i, r.y + 20.0}, 1.8, Token::mark);
}

void draw_points(kit::Stage& stage, std::span<const PlacedPoint> points, std::string_view selected,
                 LabelPlacer& placer) {
    const auto has_mark = [](const PlacedPoint& p) { return p.view->shape != PointShape::part; };
    for (const PlacedPoint& p : points)
        if (has_mark(p)) draw_leader(stage.paint(), p);
    for (const PlacedPoint& p : points) draw_balloons(stage, p, placer);
    for (const PlacedPoint& p : points) draw_tool(stage, p, placer);
    for (const PlacedPoint& p : points) {
        const bool chosen = p.view->tag == selected;
        if (has_mark(p))
            draw_mark_shape(stage, p, chosen);
        else if (chosen)
            kit::outline(stage.paint(), kit::rounded_rectangle(p.bounds, 3.0), 2.4, Token::ink);
        add_node(stage, p, chosen);
    }
}

}  // namespace emberpath::screens
