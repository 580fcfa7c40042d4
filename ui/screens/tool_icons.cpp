#include "ui/screens/job_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;

struct Icon {
    kit::Painter& p;
    Point c;
    kit::Ink ink;

    void line(std::initializer_list<Point> points, double width = 1.5) const {
        Path path;
        for (const Point q : points) path.push_back(c + q);
        p.stroke(path, {.width = width, .ink = ink});
    }
    void box(double x, double y, double w, double h, double radius = 2.0) const {
        kit::outline(p, kit::rounded_rectangle({c.x + x, c.y + y, w, h}, radius), 1.5, ink);
    }
    void ring(double x, double y, double r) const { kit::ring(p, c + Point{x, y}, r, 1.5, ink); }
    void dot(double x, double y, double r) const { p.disc(c + Point{x, y}, r, ink); }
    void arc(double x, double y, double r, double from, double to) const {
        p.stroke(kit::arc(c + Point{x, y}, r, from, to), {.width = 1.5, .ink = ink});
    }
};

void manometer(const Icon& i) {  // a box with two hose stubs
    i.box(-6.0, -9.0, 12.0, 14.0);
    i.line({{-3.0, -5.0}, {3.0, -5.0}});
    i.line({{-3.0, 5.0}, {-3.0, 9.5}});
    i.line({{3.0, 5.0}, {3.0, 9.5}});
}
void multimeter(const Icon& i) {  // a meter with a dial and leads
    i.box(-5.5, -9.5, 11.0, 19.0, 2.5);
    i.line({{-2.5, -5.5}, {2.5, -5.5}}, 2.0);
    i.ring(0.0, 2.5, 2.8);
    i.line({{0.0, 2.5}, {1.8, 0.8}});
}
void voltage_tester(const Icon& i) {  // two probes joined by a lead
    i.line({{-5.0, 9.0}, {-5.0, -2.0}}, 3.0);
    i.line({{-5.0, -2.0}, {-5.0, -9.0}}, 1.2);
    i.line({{5.0, 9.0}, {5.0, -2.0}}, 3.0);
    i.line({{5.0, -2.0}, {5.0, -9.0}}, 1.2);
    i.arc(0.0, 9.0, 5.0, 20.0, 160.0);
}
void analyser(const Icon& i) {  // a body with a long probe
    i.box(-8.0, -4.0, 9.0, 13.0);
    i.line({{-5.5, 0.0}, {-1.5, 0.0}});
    i.line({{-3.5, -4.0}, {-3.5, -8.0}, {2.0, -8.0}});
    i.line({{2.0, -8.0}, {9.0, -1.0}}, 2.2);
}
void thermometer(const Icon& i) {
    i.line({{-2.2, 3.5}, {-2.2, -7.0}});
    i.line({{2.2, 3.5}, {2.2, -7.0}});
    i.arc(0.0, -7.0, 2.2, 180.0, 360.0);
    i.ring(0.0, 6.0, 3.6);
    i.dot(0.0, 6.0, 1.8);
    i.line({{0.0, 5.0}, {0.0, -2.0}}, 1.6);
}
void flow_cup(const Icon& i) {  // a measuring cup with marks
    i.line({{-7.0, -8.0}, {-5.0, 9.0}, {5.0, 9.0}, {7.0, -8.0}});
    i.line({{-6.0, 0.0}, {6.0, 0.0}});
    i.line({{1.5, -4.0}, {6.2, -4.0}}, 1.1);
    i.line({{2.0, 4.5}, {5.4, 4.5}}, 1.1);
}
void scale(const Icon& i) {  // a platform with a dial under it
    i.line({{-8.0, -5.0}, {8.0, -5.0}}, 2.2);
    i.line({{0.0, -5.0}, {0.0, -1.0}});
    i.ring(0.0, 4.5, 5.0);
    i.line({{0.0, 4.5}, {2.6, 1.8}});
}
void leak_fluid(const Icon& i) {  // a bottle and bubbles
    i.box(-7.0, -2.0, 8.0, 11.5);
    i.line({{-4.5, -2.0}, {-4.5, -6.0}, {-1.5, -6.0}, {-1.5, -2.0}});
    i.ring(5.0, 5.5, 2.8);
    i.ring(6.0, -1.0, 2.0);
    i.ring(3.5, -6.5, 1.5);
}

}  // namespace

void draw_tool_icon(kit::Painter& painter, kit::Point centre, ToolIcon icon, kit::Ink ink) {
    const Icon i{painter, centre, ink};
    switch (icon) {
        case ToolIcon::manometer:
            return manometer(i);
        case ToolIcon::multimeter:
            return multimeter(i);
        case ToolIcon::voltage_tester:
            return voltage_tester(i);
        case ToolIcon::analyser:
            return analyser(i);
        case ToolIcon::thermometer:
            return thermometer(i);
        case ToolIcon::flow_cup:
            return flow_cup(i);
        case ToolIcon::scale:
            return scale(i);
        case ToolIcon::leak_fluid:
            return leak_fluid(i);
    }
}

}  // namespace emberpath::screens
