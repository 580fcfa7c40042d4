#include "ui/kit/mesh.hpp"

namespace emberpath::kit {

namespace {

constexpr double half_feather = 0.5;

Point unit(Point a) {
    const double l = length(a);
    return l > 0.0 ? a * (1.0 / l) : Point{};
}
Point left_of(Point direction) {
    return {direction.y, -direction.x};
}
double dot(Point a, Point b) {
    return a.x * b.x + a.y * b.y;
}
double cross(Point a, Point b) {
    return a.x * b.y - a.y * b.x;
}

void triangle(Mesh& mesh, const MeshVertex& a, const MeshVertex& b, const MeshVertex& c) {
    mesh.push_back(a);
    mesh.push_back(b);
    mesh.push_back(c);
}

void quad(Mesh& mesh, const MeshVertex& a, const MeshVertex& b, const MeshVertex& c,
          const MeshVertex& d) {
    triangle(mesh, a, b, c);
    triangle(mesh, a, c, d);
}

Path without_repeats(std::span<const Point> path, bool closed) {
    Path clean;
    for (const Point p : path)
        if (clean.empty() || distance(clean.back(), p) > 1e-4) clean.push_back(p);
    while (closed && clean.size() > 1 && distance(clean.front(), clean.back()) <= 1e-4)
        clean.pop_back();
    return clean;
}

double doubled_area(std::span<const Point> p) {
    double sum = 0.0;
    for (std::size_t i = 0; i < p.size(); ++i) sum += cross(p[i], p[(i + 1) % p.size()]);
    return sum;
}

/// The vector by which corner b moves when both legs move out by 1, capped for needle corners.
Point mitre(Point a, Point b, Point c) {
    const Point n1 = left_of(unit(b - a)), n2 = left_of(unit(c - b));
    const Point sum = n1 + n2;
    const double size = dot(sum, sum);
    if (size < 0.5) return unit(sum + n1 * 1e-6) * 2.0;
    return sum * (2.0 / size);
}

bool inside(Point p, Point a, Point b, Point c) {
    return cross(b - a, p - a) >= 0.0 && cross(c - b, p - b) >= 0.0 && cross(a - c, p - c) >= 0.0;
}

bool is_ear(const Path& p, const std::vector<std::size_t>& left, std::size_t i) {
    const std::size_t n = left.size();
    const std::size_t before = left[(i + n - 1) % n], at = left[i], after = left[(i + 1) % n];
    if (cross(p[at] - p[before], p[after] - p[at]) <= 0.0) return false;
    for (const std::size_t k : left)
        if (k != before && k != at && k != after && inside(p[k], p[before], p[at], p[after]))
            return false;
    return true;
}

/// Ear clipping of a clockwise-on-screen outline (positive doubled area).
void add_interior(Mesh& mesh, const Path& p) {
    std::vector<std::size_t> left(p.size());
    for (std::size_t i = 0; i < p.size(); ++i) left[i] = i;
    std::size_t i = 0, misses = 0;
    while (left.size() > 2 && misses <= left.size()) {
        const std::size_t n = left.size();
        i %= n;
        if (n > 3 && !is_ear(p, left, i)) {
            ++i;
            ++misses;
            continue;
        }
        triangle(mesh, {p[left[(i + n - 1) % n]]}, {p[left[i]]}, {p[left[(i + 1) % n]]});
        left.erase(left.begin() + static_cast<std::ptrdiff_t>(i));
        misses = 0;
    }
}

/// One cut across a line: offsets to the left (positive) and the coverage there.
struct Profile {
    double inner, outer, coverage;
    explicit Profile(double width)
        : inner(std::max(0.0, width / 2.0 - half_feather)),
          outer(std::max(width / 2.0 + half_feather, 2.0 * half_feather)),
          coverage(std::min(1.0, width)) {}
};

struct Cut {
    Point at, across;
    double strength = 1.0;
};

void join_cuts(Mesh& mesh, const Cut& a, const Cut& b, const Profile& line) {
    const auto on = [&](const Cut& cut, double offset, bool core) {
        return MeshVertex{cut.at + cut.across * offset, core ? line.coverage * cut.strength : 0.0};
    };
    quad(mesh, on(a, line.outer, false), on(b, line.outer, false), on(b, line.inner, true),
         on(a, line.inner, true));
    if (line.inner > 0.0)
        quad(mesh, on(a, line.inner, true), on(b, line.inner, true), on(b, -line.inner, true),
             on(a, -line.inner, true));
    quad(mesh, on(a, -line.inner, true), on(b, -line.inner, true), on(b, -line.outer, false),
         on(a, -line.outer, false));
}

/// The end of a line fades over one pixel, half of it beyond the end.
void add_end(Mesh& mesh, Cut end, Point outwards, const Profile& line) {
    Cut beyond = end;
    end.at = end.at - outwards * half_feather;
    beyond.at = beyond.at + outwards * half_feather;
    beyond.strength = 0.0;
    join_cuts(mesh, end, beyond, line);
}

constexpr double sharpest_mitre = 0.2;  // cosine of the turn beyond which a corner is rounded

void add_open_stroke(Mesh& mesh, const Path& path, double width) {
    const Profile line(width);
    const std::size_t last = path.size() - 1;
    Cut from{path[0], left_of(unit(path[1] - path[0]))};
    add_end(mesh, from, unit(path[0] - path[1]), line);
    from.at = from.at + unit(path[1] - path[0]) * half_feather;
    for (std::size_t i = 1; i <= last; ++i) {
        const Point direction = unit(path[i] - path[i - 1]);
        if (i == last) {
            const Cut end{path[i], left_of(direction)};
            Cut before = end;
            before.at = before.at - direction * half_feather;
            join_cuts(mesh, from, before, line);
            add_end(mesh, end, direction, line);
        } else if (dot(direction, unit(path[i + 1] - path[i])) > -sharpest_mitre) {
            const Cut corner{path[i], mitre(path[i - 1], path[i], path[i + 1])};
            join_cuts(mesh, from, corner, line);
            from = corner;
        } else {
            join_cuts(mesh, from, {path[i], left_of(direction)}, line);
            add_disc(mesh, path[i], width / 2.0);
            from = {path[i], left_of(unit(path[i + 1] - path[i]))};
        }
    }
}

void add_closed_stroke(Mesh& mesh, const Path& path, double width) {
    const Profile line(width);
    const std::size_t n = path.size();
    std::vector<Cut> cuts(n);
    for (std::size_t i = 0; i < n; ++i)
        cuts[i] = {path[i], mitre(path[(i + n - 1) % n], path[i], path[(i + 1) % n])};
    for (std::size_t i = 0; i < n; ++i) join_cuts(mesh, cuts[i], cuts[(i + 1) % n], line);
}

double on_grid(double value, double width) {
    const bool odd = static_cast<long>(std::lround(width)) % 2 != 0;
    return odd ? std::floor(value) + 0.5 : std::round(value);
}

}  // namespace

void add_fill(Mesh& mesh, std::span<const Point> outline) {
    Path path = without_repeats(outline, true);
    if (path.size() < 3) return;
    if (doubled_area(path) < 0.0) std::reverse(path.begin(), path.end());
    const std::size_t n = path.size();
    Path inner(n), outer(n);
    for (std::size_t i = 0; i < n; ++i) {
        const Point out = mitre(path[(i + n - 1) % n], path[i], path[(i + 1) % n]) * half_feather;
        inner[i] = path[i] - out;
        outer[i] = path[i] + out;
    }
    if (doubled_area(inner) <= 0.0) inner.assign(n, bounds_of(path).centre());
    add_interior(mesh, inner);
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t j = (i + 1) % n;
        quad(mesh, {outer[i], 0.0}, {outer[j], 0.0}, {inner[j], 1.0}, {inner[i], 1.0});
    }
}

void add_stroke(Mesh& mesh, std::span<const Point> points, double width, bool closed) {
    const Path path = without_repeats(points, closed);
    if (path.size() < 2) return;
    if (closed && path.size() > 2)
        add_closed_stroke(mesh, path, width);
    else
        add_open_stroke(mesh, path, width);
}

void add_disc(Mesh& mesh, Point centre, double radius) {
    add_fill(mesh, circle(centre, radius));
}

Path snapped(std::span<const Point> path, double width, bool closed) {
    Path moved(path.begin(), path.end());
    const std::size_t n = path.size();
    const std::size_t legs = n < 2 ? 0 : closed ? n : n - 1;
    for (std::size_t i = 0; i < legs; ++i) {
        const std::size_t j = (i + 1) % n;
        const Point d = path[j] - path[i];
        if (std::abs(d.x) < 1e-3 && std::abs(d.y) > 1.5)
            moved[i].x = moved[j].x = on_grid(path[i].x, width);
        if (std::abs(d.y) < 1e-3 && std::abs(d.x) > 1.5)
            moved[i].y = moved[j].y = on_grid(path[i].y, width);
    }
    return moved;
}

}  // namespace emberpath::kit
