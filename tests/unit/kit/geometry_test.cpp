// Proves that paths are measured, cut into dashes and rounded as drawings need it.

#include "ui/kit/geometry.hpp"

#include <gtest/gtest.h>

#include <numbers>

namespace emberpath::kit {
namespace {

TEST(Rects, ShareOnlyWhatBothCover) {
    EXPECT_EQ(intersection({0, 0, 10, 10}, {6, 4, 10, 2}), (Rect{6, 4, 4, 2}));
    EXPECT_TRUE(intersection({0, 0, 10, 10}, {20, 0, 5, 5}).empty());
    EXPECT_EQ(united({0, 0, 1, 1}, {4, 5, 1, 1}), (Rect{0, 0, 5, 6}));
}

TEST(Rects, OwnTheirLeftAndTopEdgesOnly) {
    const Rect r{2, 2, 4, 4};
    EXPECT_TRUE(r.contains(Point{2, 2}));
    EXPECT_FALSE(r.contains(Point{6, 3}));
}

TEST(Dashes, RunOnAroundACorner) {
    const Path path{{0, 0}, {10, 0}, {10, 10}};
    const double pattern[] = {6.0, 2.0};
    const auto found = dashes(path, pattern);
    ASSERT_EQ(found.size(), 3U);
    EXPECT_EQ(found[0], (Path{{0, 0}, {6, 0}}));
    EXPECT_EQ(found[1], (Path{{8, 0}, {10, 0}, {10, 4}}));
    EXPECT_EQ(found[2], (Path{{10, 6}, {10, 10}}));
}

TEST(Dashes, ShiftWithThePhase) {
    const Path path{{0, 0}, {10, 0}};
    const double pattern[] = {4.0, 2.0};
    const auto found = dashes(path, pattern, 5.0);
    ASSERT_EQ(found.size(), 2U);
    EXPECT_EQ(found[0], (Path{{1, 0}, {5, 0}}));
    EXPECT_EQ(found[1], (Path{{7, 0}, {10, 0}}));
}

TEST(Dashes, CoverTheSameShareOfAnyPath) {
    const Path path = circle({50, 50}, 40.0);
    const double pattern[] = {3.0, 2.0};
    double drawn = 0.0;
    for (const Path& dash : dashes(path, pattern)) drawn += length_of(dash);
    EXPECT_NEAR(drawn / length_of(path), 0.6, 0.01);
}

TEST(Corners, AreReplacedByArcsThatTouchBothLegs) {
    const Path rounded = with_rounded_corners(Path{{0, 0}, {20, 0}, {20, 20}}, 5.0);
    EXPECT_EQ(rounded.front(), (Point{0, 0}));
    EXPECT_EQ(rounded.back(), (Point{20, 20}));
    for (const Point p : rounded)
        EXPECT_GE(distance(p, {20, 0}), 5.0 * (std::numbers::sqrt2 - 1.0) - 1e-9);
    EXPECT_NEAR(length_of(rounded), 40.0 - 10.0 + 5.0 * std::numbers::pi / 2.0, 0.05);
}

TEST(Corners, ShrinkTheArcWhereALegIsShort) {
    const Path rounded = with_rounded_corners(Path{{0, 0}, {2, 0}, {2, 20}}, 5.0);
    EXPECT_LE(bounds_of(rounded).right(), 2.0 + 1e-9);
    EXPECT_GT(rounded.size(), 3U);
}

TEST(Stations, LieOnThePathAtTheirDistance) {
    const Path path{{0, 0}, {10, 0}, {10, 10}};
    EXPECT_EQ(station_at(path, 4.0).at, (Point{4, 0}));
    EXPECT_EQ(station_at(path, 13.0).at, (Point{10, 3}));
    EXPECT_EQ(station_at(path, 13.0).direction, (Point{0, 1}));
    EXPECT_EQ(station_at(path, 99.0).at, (Point{10, 10}));
}

}  // namespace
}  // namespace emberpath::kit
