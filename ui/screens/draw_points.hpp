#pragma once
/// Marks of the points of a sheet: their shapes say what is measured there, a leader shows where.

#include "ui/screens/sheet_pen.hpp"
#include "ui/screens/site_view.hpp"

namespace emberpath::screens {

/// A point put on a sheet [logical px].
struct PlacedPoint {
    const PointView* view = nullptr;
    kit::Point target, mark;
    kit::Rect bounds;  // what is pressed: of the mark, or of the part itself
    bool words_left = false;
};

/// Room a mark takes [logical px].
[[nodiscard]] kit::Rect mark_bounds(const PointView& view, kit::Point mark);
/// Puts a mark at its best place, or at the nearest free one around it.
[[nodiscard]] PlacedPoint place_mark(const PointView& view, kit::Point target, kit::Point best,
                                     LabelPlacer& placer);

/// As the view lists them, not as they were placed: the order of reading.
void in_reading_order(std::vector<PlacedPoint>& points);
/// Leaders, marks, balloons, attached tools and nodes. `selected`: tag of the selected one.
void draw_points(kit::Stage& stage, std::span<const PlacedPoint> points, std::string_view selected,
                 LabelPlacer& placer);
/// The small instrument in the trainee's green.
void draw_small_tool(kit::Painter& painter, const kit::Rect& r);

}  // namespace emberpath::screens
