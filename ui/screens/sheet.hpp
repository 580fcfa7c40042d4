#pragma once
/// The drawing sheet: a frame with zones, and in it the house or the heater.

#include "ui/kit/stage.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/screens/job_view.hpp"

namespace emberpath::screens {

/// Frame, border and zone letters; returns what is inside the border.
[[nodiscard]] kit::Rect draw_sheet_frame(kit::Stage& stage, const kit::Rect& r, bool paused);
/// The site into `r`. Returns where the thing with a tag stands on the screen; empty when it is not there.
kit::Rect draw_house_sheet(kit::Stage& stage, const kit::Rect& r, const JobView& job,
                           std::string_view tag = "");
/// The heater into `r`.
void draw_heater_sheet(kit::Stage& stage, const kit::Rect& r, const JobView& job);
/// A plate over the top of the sheet: time stands still.
void draw_paused_plate(kit::Stage& stage, const kit::Rect& sheet, const JobView& job);

/// Below this scale the words of secondary parts are left out; their names stay in the tree.
inline constexpr double least_scale_for_words = 0.84;

/// The point that must be in view: the one in focus, else the selected one; null when there is none.
[[nodiscard]] const PointView* point_to_show(const kit::Stage& stage, const JobView& job);

}  // namespace emberpath::screens
