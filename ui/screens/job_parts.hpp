#pragma once
/// The regions of the job screen, one function each. Each draws into its rectangle and adds its region.

#include "ui/kit/widgets.hpp"
#include "ui/screens/job_view.hpp"

namespace emberpath::screens {

enum class Form { normal, wide, compact };

void draw_rail(kit::Stage& stage, const kit::Rect& r, const RailView& rail, Form form);

// The title strip along the foot of the sheet, and its parts for the compact layout.
void draw_title_strip(kit::Stage& stage, const kit::Rect& r, const JobView& job);
void draw_front_panel(kit::Stage& stage, const kit::Rect& r, const PanelView& panel);
void draw_selection(kit::Stage& stage, const kit::Rect& r, const SelectionView& selection);
void draw_job_card(kit::Stage& stage, const kit::Rect& r, const CardView& card);

void draw_bench(kit::Stage& stage, const kit::Rect& r, const BenchView& bench);
void draw_instrument(kit::Stage& stage, const kit::Rect& r, const InstrumentView& tool);
void draw_tool_icon(kit::Painter& painter, kit::Point centre, ToolIcon icon, kit::Ink ink);

void draw_evidence(kit::Stage& stage, const kit::Rect& r, const JobView& job);
/// "outlet temperature, burner running": what it is of, where value and place do not say it, and the conditions.
[[nodiscard]] std::string what_and_when(const ReadingView& reading);
/// Of a row of a list of readings: the value and what it is of, and below it under what conditions. Where the
/// value leaves no room beside it, what it is of stands before the conditions.
void draw_reading_words(kit::Stage& stage, const kit::Rect& first, const kit::Rect& second,
                        const ReadingView& reading);
void draw_causes(kit::Stage& stage, const kit::Rect& r, const JobView& job);
void draw_recorder(kit::Stage& stage, const kit::Rect& r, const RecorderView& recorder);
void draw_folded_recorder(kit::Stage& stage, const kit::Rect& r, const RecorderView& recorder);
void draw_status(kit::Stage& stage, const kit::Rect& r, std::string_view time,
                 std::string_view sentence, std::span<const KeyHint> hints);

/// Height the causes ask for.
[[nodiscard]] double causes_height(std::size_t count);
[[nodiscard]] kit::Token trace_ink(char ink);

}  // namespace emberpath::screens
