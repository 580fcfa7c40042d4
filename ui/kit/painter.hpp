#pragma once
/// What drawings are made with. A painter knows the theme, the scale and the target; drawings do not.

#include <span>
#include <string_view>
#include <vector>

#include "ui/kit/geometry.hpp"
#include "ui/kit/text.hpp"
#include "ui/kit/tokens.hpp"

namespace emberpath::kit {

enum class Cap : std::uint8_t { flat, round };

struct Stroke {
    double width = line_width::control;  // [logical px]
    Ink ink{};
    std::vector<double> dash{};  // dash, gap, ... [logical px]; empty: unbroken
    double phase = 0.0;          // where in the dash pattern the path begins [logical px]
    bool closed = false;         // joins the last point to the first
    Cap cap = Cap::flat;
    bool operator==(const Stroke&) const = default;
};

class Painter {
  public:
    virtual ~Painter() = default;
    /// Inside of a simple outline, with a soft edge one window pixel wide.
    virtual void fill(std::span<const Point> outline, Ink ink) = 0;
    /// A line along a path, with soft edges. Level and upright legs are put on whole pixels.
    virtual void stroke(std::span<const Point> path, const Stroke& how) = 0;
    /// An upright box whose edges are put on whole pixels.
    virtual void box(const Rect& r, Ink ink) = 0;
    virtual void disc(Point centre, double radius, Ink ink) = 0;
    /// One line of text; the baseline is put on a whole pixel.
    virtual void text(Point baseline, std::string_view utf8, const TextStyle& style) = 0;
    /// Until the matching pop, nothing outside `r` and outside earlier clips is painted.
    virtual void push_clip(const Rect& r) = 0;
    virtual void pop_clip() = 0;
};

// Shorthands.
inline void line(Painter& p, Point a, Point b, const Stroke& how) {
    const Point both[] = {a, b};
    p.stroke(both, how);
}
inline void outline(Painter& p, std::span<const Point> path, double width, Ink ink) {
    p.stroke(path, {.width = width, .ink = ink, .closed = true});
}
inline void frame(Painter& p, const Rect& r, double width, Ink ink) {
    outline(p, rectangle(r), width, ink);
}
inline void ring(Painter& p, Point centre, double radius, double width, Ink ink) {
    outline(p, circle(centre, radius), width, ink);
}
/// Filled and outlined in one.
inline void shape(Painter& p, std::span<const Point> path, Ink fill, const Stroke& edge) {
    p.fill(path, fill);
    Stroke closed = edge;
    closed.closed = true;
    p.stroke(path, closed);
}

}  // namespace emberpath::kit
