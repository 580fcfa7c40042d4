#pragma once
/// The drawing sheet: a frame with zones, and in it the house or the heater.

#include <functional>

#include "ui/kit/stage.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/screens/job_view.hpp"
#include "ui/screens/sheet_pen.hpp"

namespace emberpath::screens {

/// Frame, border and zone letters; returns what is inside the border.
[[nodiscard]] kit::Rect draw_sheet_frame(kit::Stage& stage, const kit::Rect& r, bool paused);
/// The site into `r`. Returns where the thing with a tag stands on the screen; empty when it is not there.
/// Words keep out of a cloud around that thing and of `leader_to` it.
kit::Rect draw_house_sheet(kit::Stage& stage, const kit::Rect& r, const JobView& job,
                           std::string_view tag = "");
/// How far the cloud around a marked thing stands off [px].
inline constexpr double cloud_width = 9.0;
/// Where a line from the top of a sheet comes down to a thing: at its right, so that words at its left can stay.
[[nodiscard]] inline kit::Rect leader_to(const kit::Rect& thing, const kit::Rect& sheet) {
    return {thing.right() - 7.0, sheet.y, 6.0, std::max(0.0, thing.y - sheet.y)};
}
/// The heater into `r`.
void draw_heater_sheet(kit::Stage& stage, const kit::Rect& r, const JobView& job);
/// A plate over the top of the sheet: time stands still.
void draw_paused_plate(kit::Stage& stage, const kit::Rect& sheet, const JobView& job);

/// Below this scale the words of secondary parts are left out; their names stay in the tree.
inline constexpr double least_scale_for_words = 0.84;

/// The point that must be in view: the one that was just selected, else the one in focus; null when there is none.
[[nodiscard]] const PointView* point_to_show(const kit::Stage& stage, const JobView& job);
/// Places a drawing as the camera has it, and brings what is to be shown into view when it is another thing
/// than the camera was moved for. `spot`: where it stands, in units.
[[nodiscard]] Placed place_sheet(
    const kit::Stage& stage, Placing placing, const JobView& job,
    const std::function<std::optional<kit::Point>(const PointView&)>& spot);
/// How far the plate of a replay comes down into what is inside the border of a sheet.
inline constexpr double replay_plate_depth = 22.0;
/// Plate and buttons of a replay over the top of the sheet.
void draw_replay_plate(kit::Stage& stage, const kit::Rect& sheet, const ReplayView& replay);

}  // namespace emberpath::screens
