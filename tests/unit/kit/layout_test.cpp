// Proves that places are cut from the screen without gaps, overlaps or negative sizes.

#include "ui/kit/layout.hpp"

#include <gtest/gtest.h>

namespace emberpath::kit {
namespace {

TEST(Slicer, GivesSlicesFromEachEdgeAndKeepsTheRest) {
    Slicer s({0, 0, 100, 80});
    EXPECT_EQ(s.top(10, 2), (Rect{0, 0, 100, 10}));
    EXPECT_EQ(s.bottom(8), (Rect{0, 72, 100, 8}));
    EXPECT_EQ(s.left(20, 5), (Rect{0, 12, 20, 60}));
    EXPECT_EQ(s.right(15, 5), (Rect{85, 12, 15, 60}));
    EXPECT_EQ(s.rest(), (Rect{25, 12, 55, 60}));
}

TEST(Slicer, NeverGivesMoreThanIsThere) {
    Slicer s({0, 0, 10, 10});
    EXPECT_EQ(s.top(25), (Rect{0, 0, 10, 10}));
    EXPECT_TRUE(s.rest().empty());
    EXPECT_EQ(s.left(5).h, 0.0);
}

TEST(Columns, ShareWhatFixedOnesLeave) {
    const Part parts[] = {{20, 0}, {0, 1}, {0, 3}};
    const auto cells = columns({0, 0, 104, 10}, parts, 2.0);
    EXPECT_EQ(cells[0], (Rect{0, 0, 20, 10}));
    EXPECT_EQ(cells[1], (Rect{22, 0, 20, 10}));
    EXPECT_EQ(cells[2], (Rect{44, 0, 60, 10}));
}

TEST(Rows, OfEqualHeightFillTheWhole) {
    const auto cells = rows({5, 5, 10, 32}, 3, 1.0);
    EXPECT_DOUBLE_EQ(cells[2].bottom(), 37.0);
    EXPECT_DOUBLE_EQ(cells[0].h, 10.0);
}

TEST(Grids, FillInReadingOrder) {
    const auto cells = grid({0, 0, 21, 11}, 3, 2, {1, 1});
    ASSERT_EQ(cells.size(), 3U);
    EXPECT_EQ(cells[1], (Rect{11, 0, 10, 5}));
    EXPECT_EQ(cells[2], (Rect{0, 6, 10, 5}));
}

TEST(WrappedRows, GoOnInANewLineWhereTheWidthEnds) {
    const double widths[] = {40, 40, 40, 150};
    const auto boxes = wrapped_row({0, 0, 100, 100}, widths, 24, {8, 4});
    EXPECT_EQ(boxes[1], (Rect{48, 0, 40, 24}));
    EXPECT_EQ(boxes[2], (Rect{0, 28, 40, 24}));
    EXPECT_EQ(boxes[3], (Rect{0, 56, 150, 24})) << "wider than the row: alone in its line";
}

}  // namespace
}  // namespace emberpath::kit
