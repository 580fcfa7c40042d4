#pragma once
/// Triangles with soft edges for fills and lines, in window pixels. Coverage falls from 1 to 0 over one
/// pixel across the true edge, so no multisampling is needed.

#include <span>
#include <vector>

#include "ui/kit/geometry.hpp"

namespace emberpath::kit {

struct MeshVertex {
    Point at;
    double coverage = 1.0;
};
/// Three vertices a triangle.
using Mesh = std::vector<MeshVertex>;

/// Inside of a simple outline, convex or not, turning either way.
void add_fill(Mesh& mesh, std::span<const Point> outline);
/// A line of `width` pixels along a path, mitred at gentle corners and rounded at sharp ones.
void add_stroke(Mesh& mesh, std::span<const Point> path, double width, bool closed);
void add_disc(Mesh& mesh, Point centre, double radius);

/// Level and upright legs moved so that a line of `width` pixels has crisp edges: on pixel centres for odd
/// whole widths, on pixel borders for even ones. Width 0 means a fill: on borders.
[[nodiscard]] Path snapped(std::span<const Point> path, double width, bool closed);

}  // namespace emberpath::kit
