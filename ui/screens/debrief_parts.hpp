#pragma once
/// The panels of the debrief.

#include "ui/kit/widgets.hpp"
#include "ui/screens/debrief_screen.hpp"

namespace emberpath::screens {

void draw_outcome(kit::Stage& stage, const kit::Rect& r, const DebriefView& view);
void draw_score(kit::Stage& stage, const kit::Rect& r, const DebriefView& view);
void draw_steps(kit::Stage& stage, const kit::Rect& r, const DebriefView& view);
void draw_comparison(kit::Stage& stage, const kit::Rect& r, const DebriefView& view);

/// What is charted over the minutes, and its lanes from top to bottom.
struct Chart {
    kit::Stage& stage;
    const DebriefView& view;
    kit::Rect plot, bits, left;  // left: remedies left, or causes
    std::vector<kit::Rect> lanes;

    [[nodiscard]] double x(double minute) const { return plot.x + minute / view.minutes * plot.w; }
};
void draw_row_name(const Chart& chart, const kit::Rect& lane, std::string_view name,
                   std::string_view unit);

// The causes: their lane, letters on their lines over all else that is drawn there, and what the lines mean.
void draw_causes(const Chart& chart);
void draw_cause_letters(const Chart& chart);
[[nodiscard]] double cause_legend_height(const kit::Stage& stage, const DebriefView& view,
                                         double width);
void draw_cause_legend(kit::Stage& stage, const kit::Rect& r, const DebriefView& view);
/// How likely each was once the chosen step was done, in words; empty where nothing was weighed.
[[nodiscard]] std::string causes_spoken(const DebriefView& view);

/// Room of the chart's plot inside its node: from its left edge, and before its right edge.
inline constexpr double steps_left = 132.0, steps_right = 14.0;

}  // namespace emberpath::screens
