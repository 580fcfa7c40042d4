// Proves that soft-edged triangles cover the area of the shape they stand for, and that level lines are crisp.

#include "ui/kit/mesh.hpp"

#include <gtest/gtest.h>

#include <numbers>

namespace emberpath::kit {
namespace {

/// Coverage summed over the plane [px2]: exact for coverage that is linear over each triangle.
double covered(const Mesh& mesh) {
    double sum = 0.0;
    for (std::size_t i = 0; i + 2 < mesh.size(); i += 3) {
        const Point a = mesh[i].at, b = mesh[i + 1].at, c = mesh[i + 2].at;
        const double area = std::abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / 2.0;
        sum += area * (mesh[i].coverage + mesh[i + 1].coverage + mesh[i + 2].coverage) / 3.0;
    }
    return sum;
}

TEST(Fills, CoverTheAreaOfABox) {
    Mesh mesh;
    add_fill(mesh, rectangle({10, 10, 30, 20}));
    EXPECT_NEAR(covered(mesh), 600.0, 0.5);
}

TEST(Fills, DoNotCareWhichWayTheOutlineTurns) {
    Path path = rectangle({10, 10, 30, 20});
    std::reverse(path.begin(), path.end());
    Mesh mesh;
    add_fill(mesh, path);
    EXPECT_NEAR(covered(mesh), 600.0, 0.5);
}

TEST(Fills, CoverAnOutlineWithAnInwardCorner) {
    Mesh mesh;
    add_fill(mesh, Path{{0, 0}, {40, 0}, {40, 40}, {20, 10}, {0, 40}});
    EXPECT_NEAR(covered(mesh), 1600.0 - 600.0, 12.0);
}

TEST(Fills, CoverADisc) {
    Mesh mesh;
    add_disc(mesh, {50, 50}, 20.0);
    EXPECT_NEAR(covered(mesh), std::numbers::pi * 400.0, 12.0);
}

TEST(Strokes, CoverLengthTimesWidthAtAnyAngle) {
    for (const Point to : {Point{100, 0}, Point{0, 100}, Point{80, 60}}) {
        Mesh mesh;
        add_stroke(mesh, Path{{0, 0}, to}, 3.0, false);
        EXPECT_NEAR(covered(mesh), 300.0, 1.5) << to.x << "," << to.y;
    }
}

TEST(Strokes, ThinnerThanAPixelGetFainterNotWider) {
    Mesh mesh;
    add_stroke(mesh, Path{{0, 0}, {100, 0}}, 0.5, false);
    EXPECT_NEAR(covered(mesh), 50.0, 1.0);
}

TEST(Strokes, KeepTheirWidthAroundAMitredCorner) {
    Mesh mesh;
    add_stroke(mesh, Path{{0, 0}, {50, 0}, {50, 50}}, 4.0, false);
    EXPECT_NEAR(covered(mesh), 100.0 * 4.0, 3.0);
}

TEST(Strokes, CloseUpWithoutASeam) {
    Mesh mesh;
    add_stroke(mesh, rectangle({0, 0, 60, 40}), 2.0, true);
    EXPECT_NEAR(covered(mesh), 200.0 * 2.0, 2.0);
}

TEST(Strokes, OfASinglePointDrawNothing) {
    Mesh mesh;
    add_stroke(mesh, Path{{5, 5}}, 2.0, false);
    add_stroke(mesh, Path{{5, 5}, {5, 5}}, 2.0, true);
    EXPECT_TRUE(mesh.empty());
}

TEST(Snapping, PutsOddLinesOnPixelCentresAndEvenOnesOnBorders) {
    const Path level{{0.0, 10.3}, {50.0, 10.3}};
    EXPECT_DOUBLE_EQ(snapped(level, 1.2, false)[0].y, 10.5);
    EXPECT_DOUBLE_EQ(snapped(level, 2.0, false)[0].y, 10.0);
    EXPECT_DOUBLE_EQ(snapped(level, 0.0, false)[1].y, 10.0);
}

TEST(Snapping, LeavesSlopingLinesAlone) {
    const Path sloping{{0.2, 0.3}, {10.2, 7.3}};
    EXPECT_EQ(snapped(sloping, 1.0, false), sloping);
}

TEST(Snapping, KeepsABoxABox) {
    const Path box = snapped(rectangle({0.3, 0.4, 20.2, 10.1}), 1.0, true);
    EXPECT_EQ(box[0].y, box[1].y);
    EXPECT_EQ(box[1].x, box[2].x);
    EXPECT_EQ(box[0].x, box[3].x);
}

}  // namespace
}  // namespace emberpath::kit
