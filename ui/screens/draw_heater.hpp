#pragma once
/// The heater as a drawing, open or closed, small in the house or large on its own sheet.

#include "ui/screens/sheet_pen.hpp"
#include "ui/screens/site_view.hpp"

namespace emberpath::screens {

struct HeaterMotion {
    double seconds = 0.0;
    bool still = false;  // reduce motion
};

/// `pen`: units of heater_plan. What moves goes to the moving layer.
void draw_heater(const SheetPen& pen, const HeaterView& heater, const HeaterMotion& motion);

}  // namespace emberpath::screens
