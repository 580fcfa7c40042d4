#include "ui/kit/geometry.hpp"

#include <numbers>

namespace emberpath::kit {

namespace {

constexpr double radians = std::numbers::pi / 180.0;

/// Straight pieces that keep a circle round to a fifth of a pixel, at twice the size too.
int pieces_for(double radius, double sweep_deg) {
    const double per_turn = 8.0 + 4.0 * std::sqrt(std::max(0.0, radius));
    return std::max(2, static_cast<int>(std::ceil(per_turn * std::abs(sweep_deg) / 360.0)));
}

Point on_circle(Point centre, double radius, double deg) {
    return {centre.x + radius * std::cos(deg * radians),
            centre.y + radius * std::sin(deg * radians)};
}

void append(Path& path, const Path& more) {
    path.insert(path.end(), more.begin(), more.end());
}

double angle_of(Point from, Point to) {
    return std::atan2(to.y - from.y, to.x - from.x) / radians;
}

/// The arc that touches both legs of the corner a-b-c; b itself where there is no room for it.
Path corner(Point a, Point b, Point c, double radius) {
    const double leg_in = distance(a, b), leg_out = distance(b, c);
    if (leg_in <= 0.0 || leg_out <= 0.0) return {b};
    const Point in = (b - a) * (1.0 / leg_in), out = (c - b) * (1.0 / leg_out);
    const double cross = in.x * out.y - in.y * out.x, dot = in.x * out.x + in.y * out.y;
    if (std::abs(cross) < 1e-6) return {b};
    const double tangent = std::abs(cross) / (1.0 + dot);  // of half the turn
    const double cut = std::min({radius * tangent, leg_in / 2.0, leg_out / 2.0});
    const double r = cut / tangent;
    const Point start = b - in * cut, end = b + out * cut;
    const double side = cross > 0.0 ? 1.0 : -1.0;
    const Point centre = start + Point{-in.y, in.x} * (side * r);
    double from = angle_of(centre, start), to = angle_of(centre, end);
    if (side > 0.0 && to < from) to += 360.0;
    if (side < 0.0 && to > from) to -= 360.0;
    return arc(centre, r, from, to);
}

}  // namespace

Rect intersection(const Rect& a, const Rect& b) {
    const double x = std::max(a.x, b.x), y = std::max(a.y, b.y);
    const double right = std::min(a.right(), b.right()), bottom = std::min(a.bottom(), b.bottom());
    return {x, y, std::max(0.0, right - x), std::max(0.0, bottom - y)};
}

Rect united(const Rect& a, const Rect& b) {
    if (a.empty()) return b;
    if (b.empty()) return a;
    const double x = std::min(a.x, b.x), y = std::min(a.y, b.y);
    return {x, y, std::max(a.right(), b.right()) - x, std::max(a.bottom(), b.bottom()) - y};
}

Rect bounds_of(std::span<const Point> path) {
    if (path.empty()) return {};
    Point low = path[0], high = path[0];
    for (const Point p : path) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    return {low.x, low.y, high.x - low.x, high.y - low.y};
}

double length_of(std::span<const Point> path) {
    double sum = 0.0;
    for (std::size_t i = 1; i < path.size(); ++i) sum += distance(path[i - 1], path[i]);
    return sum;
}

Station station_at(std::span<const Point> path, double along) {
    for (std::size_t i = 1; i < path.size(); ++i) {
        const double leg = distance(path[i - 1], path[i]);
        if (leg <= 0.0) continue;
        const Point direction = (path[i] - path[i - 1]) * (1.0 / leg);
        if (along <= leg || i + 1 == path.size())
            return {path[i - 1] + direction * std::min(along, leg), direction};
        along -= leg;
    }
    return {path.empty() ? Point{} : path.back(), {1.0, 0.0}};
}

Path rectangle(const Rect& r) {
    return {{r.x, r.y}, {r.right(), r.y}, {r.right(), r.bottom()}, {r.x, r.bottom()}};
}

Path rounded_rectangle(const Rect& r, double radius) {
    radius = std::min({radius, r.w / 2.0, r.h / 2.0});
    if (radius <= 0.0) return rectangle(r);
    Path path;
    append(path, arc({r.x + radius, r.y + radius}, radius, 180.0, 270.0));
    append(path, arc({r.right() - radius, r.y + radius}, radius, 270.0, 360.0));
    append(path, arc({r.right() - radius, r.bottom() - radius}, radius, 0.0, 90.0));
    append(path, arc({r.x + radius, r.bottom() - radius}, radius, 90.0, 180.0));
    return path;
}

Path circle(Point centre, double radius) {
    Path path = arc(centre, radius, 0.0, 360.0);
    path.pop_back();
    return path;
}

Path diamond(Point c, double half) {
    return {{c.x, c.y - half}, {c.x + half, c.y}, {c.x, c.y + half}, {c.x - half, c.y}};
}

Path hexagon(Point c, double half_w, double half_h) {
    const double shoulder = half_w * 0.52;
    return {{c.x - shoulder, c.y - half_h}, {c.x + shoulder, c.y - half_h}, {c.x + half_w, c.y},
            {c.x + shoulder, c.y + half_h}, {c.x - shoulder, c.y + half_h}, {c.x - half_w, c.y}};
}

Path arrow_box(Point c, double half_w, double half_h) {
    const double neck = c.x + half_w - half_h * 0.8;
    return {{c.x - half_w, c.y - half_h},
            {neck, c.y - half_h},
            {c.x + half_w, c.y},
            {neck, c.y + half_h},
            {c.x - half_w, c.y + half_h}};
}

Path arc(Point centre, double radius, double from_deg, double to_deg) {
    const int pieces = pieces_for(radius, to_deg - from_deg);
    Path path;
    path.reserve(static_cast<std::size_t>(pieces) + 1);
    for (int i = 0; i <= pieces; ++i)
        path.push_back(on_circle(centre, radius, from_deg + (to_deg - from_deg) * i / pieces));
    return path;
}

Path with_rounded_corners(std::span<const Point> path, double radius) {
    if (path.size() < 3 || radius <= 0.0) return {path.begin(), path.end()};
    Path rounded{path.front()};
    for (std::size_t i = 1; i + 1 < path.size(); ++i)
        append(rounded, corner(path[i - 1], path[i], path[i + 1], radius));
    rounded.push_back(path.back());
    return rounded;
}

Path bezier(Point from, Point a, Point b, Point to) {
    const int pieces =
        4 + static_cast<int>((distance(from, a) + distance(a, b) + distance(b, to)) / 6.0);
    Path path;
    for (int i = 0; i <= pieces; ++i) {
        const double t = static_cast<double>(i) / pieces, u = 1.0 - t;
        path.push_back(from * (u * u * u) + a * (3.0 * u * u * t) + b * (3.0 * u * t * t) +
                       to * (t * t * t));
    }
    return path;
}

std::vector<Path> dashes(std::span<const Point> path, std::span<const double> pattern,
                         double phase) {
    if (pattern.empty()) return {Path(path.begin(), path.end())};
    std::size_t part = 0;
    double left = pattern[0] - phase;
    while (left <= 0.0) left += pattern[part = (part + 1) % pattern.size()];
    std::vector<Path> found;
    Path dash;
    const auto begin = [&](Point p) {
        if (part % 2 == 0) dash = {p};
    };
    const auto finish = [&] {
        if (dash.size() > 1) found.push_back(dash);
        dash.clear();
    };
    if (!path.empty()) begin(path[0]);
    for (std::size_t i = 1; i < path.size(); ++i) {
        const double leg = distance(path[i - 1], path[i]);
        double done = 0.0;
        while (leg - done > left) {
            done += left;
            const Point at = between(path[i - 1], path[i], done / leg);
            if (part % 2 == 0) dash.push_back(at);
            finish();
            part = (part + 1) % pattern.size();
            left = pattern[part];
            begin(at);
        }
        left -= leg - done;
        if (part % 2 == 0) dash.push_back(path[i]);
    }
    finish();
    return found;
}

}  // namespace emberpath::kit
