#pragma once
/// Checks of a finished frame that every screen must pass, at every size: used by tests.

#include <string>
#include <vector>

#include "ui/kit/stage.hpp"

namespace emberpath::kit {

/// Each problem as a sentence; empty when there is none.
[[nodiscard]] std::vector<std::string> names_missing_or_repeated(const Frame& frame);
/// Tab from any thing comes round through all stops, backwards too; arrows reach the rest; F6 visits every
/// region and comes round.
[[nodiscard]] std::vector<std::string> unreachable(const Frame& frame);
/// No text wider than its box, none over another in the same layer, none outside the window.
[[nodiscard]] std::vector<std::string> crowded_texts(const Frame& frame);
/// Everything that scrolls can be scrolled by keys: it holds something that takes the focus, takes it itself,
/// or is the first list of what is in front of all else.
[[nodiscard]] std::vector<std::string> scrolled_by_pointer_only(const Frame& frame);
/// Everything that can be pressed is at least 24 by 24, and two such things do not cover each other.
[[nodiscard]] std::vector<std::string> small_targets(const Frame& frame);
/// Characters that no face has.
[[nodiscard]] std::vector<std::string> missing_characters(const Frame& frame,
                                                          const TextMetrics& metrics);
/// Texts whose contrast with what is painted behind them is under 4.5 by day or by night.
[[nodiscard]] std::vector<std::string> faint_texts(const Frame& frame);
/// A text that was cut with "…".
struct CutText {
    std::string text;   // as it is drawn
    std::string place;  // id of the thing it stands in
    bool whole =
        false;  // that thing's name, value or hint begins so and goes on: the whole can be had
};
[[nodiscard]] std::vector<CutText> cut_texts(const Frame& frame);

}  // namespace emberpath::kit
