#pragma once
/// The burner's flames as seen through the window: height, unrest, yellow tips, sparks.

#include "ui/screens/sheet_pen.hpp"
#include "ui/screens/site_view.hpp"

namespace emberpath::screens {

struct FlameMotion {
    double seconds = 0.0;
    bool still = false;
};
void draw_flames(const SheetPen& pen, const FlameView& flame, const FlameMotion& motion);

}  // namespace emberpath::screens
