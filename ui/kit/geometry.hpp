#pragma once
/// Plane geometry of the screen. Lengths are logical pixels: window pixels divided by the text scale.
/// x grows to the right, y downwards.

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

namespace emberpath::kit {

struct Point {
    double x = 0.0, y = 0.0;
    bool operator==(const Point&) const = default;
};
[[nodiscard]] constexpr Point operator+(Point a, Point b) {
    return {a.x + b.x, a.y + b.y};
}
[[nodiscard]] constexpr Point operator-(Point a, Point b) {
    return {a.x - b.x, a.y - b.y};
}
[[nodiscard]] constexpr Point operator*(Point a, double k) {
    return {a.x * k, a.y * k};
}
[[nodiscard]] inline double length(Point a) {
    return std::sqrt(a.x * a.x + a.y * a.y);
}
[[nodiscard]] inline double distance(Point a, Point b) {
    return length(b - a);
}
/// `share` 0 gives a, 1 gives b.
[[nodiscard]] constexpr Point between(Point a, Point b, double share) {
    return a + (b - a) * share;
}

struct Size {
    double w = 0.0, h = 0.0;
    bool operator==(const Size&) const = default;
};

struct Rect {
    double x = 0.0, y = 0.0, w = 0.0, h = 0.0;
    bool operator==(const Rect&) const = default;
    [[nodiscard]] constexpr double left() const { return x; }
    [[nodiscard]] constexpr double top() const { return y; }
    [[nodiscard]] constexpr double right() const { return x + w; }
    [[nodiscard]] constexpr double bottom() const { return y + h; }
    [[nodiscard]] constexpr Point centre() const { return {x + w / 2.0, y + h / 2.0}; }
    [[nodiscard]] constexpr bool empty() const { return w <= 0.0 || h <= 0.0; }
    /// Left and top edges belong to it, right and bottom edges do not.
    [[nodiscard]] constexpr bool contains(Point p) const {
        return p.x >= x && p.x < right() && p.y >= y && p.y < bottom();
    }
    [[nodiscard]] constexpr bool contains(const Rect& r) const {
        return r.x >= x && r.y >= y && r.right() <= right() && r.bottom() <= bottom();
    }
};
/// Smaller by `dx` at the left and right, by `dy` at top and bottom; never of negative size.
[[nodiscard]] constexpr Rect inset(const Rect& r, double dx, double dy) {
    return {r.x + dx, r.y + dy, std::max(0.0, r.w - 2.0 * dx), std::max(0.0, r.h - 2.0 * dy)};
}
[[nodiscard]] constexpr Rect inset(const Rect& r, double d) {
    return inset(r, d, d);
}
[[nodiscard]] constexpr Rect outset(const Rect& r, double d) {
    return {r.x - d, r.y - d, r.w + 2.0 * d, r.h + 2.0 * d};
}
[[nodiscard]] constexpr Rect moved(const Rect& r, double dx, double dy) {
    return {r.x + dx, r.y + dy, r.w, r.h};
}
[[nodiscard]] constexpr Rect around(Point centre, double w, double h) {
    return {centre.x - w / 2.0, centre.y - h / 2.0, w, h};
}
/// What two rectangles share; of size 0 when they share nothing.
[[nodiscard]] Rect intersection(const Rect& a, const Rect& b);
/// The smallest rectangle around both.
[[nodiscard]] Rect united(const Rect& a, const Rect& b);

using Path = std::vector<Point>;

[[nodiscard]] Rect bounds_of(std::span<const Point> path);
[[nodiscard]] double length_of(std::span<const Point> path);
/// The point `along` the path, measured from its start, and the unit direction there.
struct Station {
    Point at, direction;
};
[[nodiscard]] Station station_at(std::span<const Point> path, double along);

// Closed outlines; the last point is joined to the first.
[[nodiscard]] Path rectangle(const Rect& r);
[[nodiscard]] Path rounded_rectangle(const Rect& r, double radius);
[[nodiscard]] Path circle(Point centre, double radius);
[[nodiscard]] Path diamond(Point centre, double half);
/// Flat top and bottom, pointed at left and right.
[[nodiscard]] Path hexagon(Point centre, double half_w, double half_h);
/// A box whose right end is an arrow head.
[[nodiscard]] Path arrow_box(Point centre, double half_w, double half_h);

/// Part of a circle as an open path; angles in degrees, 0 to the right, growing clockwise on screen.
[[nodiscard]] Path arc(Point centre, double radius, double from_deg, double to_deg);
/// Corners of an open path replaced by arcs of `radius`, where both legs are long enough.
[[nodiscard]] Path with_rounded_corners(std::span<const Point> path, double radius);
/// Smooth curve through control points (cubic Bezier), in `pieces` straight pieces.
[[nodiscard]] Path bezier(Point from, Point a, Point b, Point to);

/// Dashes of a path: `pattern` is dash, gap, dash, gap ...; the phase runs on around corners, so a dash
/// may contain a corner. An empty pattern gives the path itself.
[[nodiscard]] std::vector<Path> dashes(std::span<const Point> path, std::span<const double> pattern,
                                       double phase = 0.0);

}  // namespace emberpath::kit
