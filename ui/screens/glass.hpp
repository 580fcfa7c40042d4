#pragma once
/// Segment displays: the glass of instruments and of the heater.

#include "ui/kit/stage.hpp"

namespace emberpath::screens {

/// A pane of glass with a thin frame.
void draw_glass(kit::Stage& stage, const kit::Rect& r);
/// Figures on seven-segment glass, ending at `right`; unlit segments show faintly. Words that seven segments
/// cannot show are written as text. `baseline` is the foot of the figures.
void draw_figures(kit::Stage& stage, kit::Point right, std::string_view digits, double size,
                  std::size_t places = 4);
[[nodiscard]] double figures_width(const kit::Stage& stage, std::string_view digits, double size,
                                   std::size_t places = 4);
/// A word on fourteen-segment glass, beginning at `left`.
void draw_display_word(kit::Stage& stage, kit::Point left, std::string_view word, double size);

}  // namespace emberpath::screens
