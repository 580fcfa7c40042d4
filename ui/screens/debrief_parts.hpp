#pragma once
/// The panels of the debrief.

#include "ui/kit/widgets.hpp"
#include "ui/screens/debrief_screen.hpp"

namespace emberpath::screens {

void draw_outcome(kit::Stage& stage, const kit::Rect& r, const DebriefView& view);
void draw_score(kit::Stage& stage, const kit::Rect& r, const DebriefView& view);
void draw_steps(kit::Stage& stage, const kit::Rect& r, const DebriefView& view);
void draw_comparison(kit::Stage& stage, const kit::Rect& r, const DebriefView& view);

/// Room of the chart's plot inside its node: from its left edge, and before its right edge.
inline constexpr double steps_left = 132.0, steps_right = 14.0;

}  // namespace emberpath::screens
