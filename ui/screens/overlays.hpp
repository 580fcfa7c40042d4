#pragma once
/// What stands in front of a screen until it is answered or left with Esc.

#include "ui/screens/screens.hpp"

namespace emberpath::screens {

/// A plate in front of everything, dimmed behind; returns its inside below the title.
[[nodiscard]] kit::Rect draw_plate(kit::Stage& stage, const kit::Rect& r, std::string_view id,
                                   std::string_view title);
/// At the top right of a plate: what Esc does, for the pointer.
void close_button(kit::Stage& stage, const kit::Rect& plate, std::string_view id);
/// What the office wrote and all that the customer said, in a list.
void draw_card_entries(kit::Stage& stage, const kit::Rect& r, const CardView& card);
void draw_in_front(kit::Stage& stage, const JobView& job, InFront front);
/// All keys of a place, for any screen.
void draw_keys(kit::Stage& stage, std::string_view where);

struct Question {
    std::string title, words;
    std::string yes, no;       // what the buttons say
    kit::Command yes_command;  // the other one is "back"
    bool grave = false;        // it ends a real job
};
void draw_question(kit::Stage& stage, const Question& question);

/// Draws what the setting puts in front, and gives the frame away: the last thing every screen does.
[[nodiscard]] kit::Frame finished(kit::Stage& stage, const Setting& setting,
                                  std::string_view where);

}  // namespace emberpath::screens
