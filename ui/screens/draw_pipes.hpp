#pragma once
/// Services as lines: each with its own line type, letter and arrow heads, so that none is told by colour alone.

#include "ui/screens/house_plan.hpp"
#include "ui/screens/sheet_pen.hpp"

namespace emberpath::screens {

[[nodiscard]] kit::Token ink_of(Service service);
/// Width and dashes of a service's line.
[[nodiscard]] kit::Stroke stroke_of(Service service);

/// Two triangles point to point, with a spindle.
void draw_valve(const SheetPen& pen, kit::Point at, bool upright, Service service);
void draw_arrow_head(kit::Painter& painter, const kit::Station& station, kit::Ink ink);

struct PipeMotion {
    double seconds = 0.0;
    bool still = false;  // reduce motion
};
/// All pipes of the house. Letters and heads keep clear of `placer`, and take their room in it.
void draw_pipes(const SheetPen& pen, const HousePlan& plan, const PipeMotion& motion,
                LabelPlacer& placer);

}  // namespace emberpath::screens
