#include <algorithm>
#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"

namespace emberpath::screens {

namespace {

/// Keys that move the focus mean nothing to a pointer; all others can be pressed where they are named.
bool for_pointers(std::string_view command) {
    constexpr std::array<std::string_view, 3> of_the_focus{"next region", "next thing", "activate"};
    return std::find(of_the_focus.begin(), of_the_focus.end(), command) == of_the_focus.end();
}

}  // namespace

void draw_status(kit::Stage& stage, const kit::Rect& r, std::string_view time,
                 std::string_view sentence, std::span<const KeyHint> hints) {
    const auto region = stage.region("status", "Last thing that happened", r);
    kit::Slicer left(kit::inset(r, kit::space::panel, 0.0));
    std::vector<kit::Node> pressed;
    for (std::size_t i = hints.size(); i-- > 0;) {
        const std::string caps = stage.caps(hints[i].command);
        if (caps.empty()) continue;
        const double words_w = stage.width(hints[i].words, kit::style::row),
                     cap_w = kit::key_cap_width(stage, caps);
        if (left.rest().w < 260.0 + words_w + cap_w) break;
        const kit::Rect words = left.right(words_w, 6.0), cap = left.right(cap_w, 16.0);
        stage.text(words, hints[i].words, kit::style::row_quiet);
        kit::key_cap(stage, {cap.x, r.centre().y}, caps);
        if (!for_pointers(hints[i].command)) continue;
        const double h = std::min(r.h, 28.0);
        pressed.push_back(
            {.id = "status." + hints[i].command,
             .role = kit::Role::button,
             .name = hints[i].words,
             .bounds = {cap.x - 4.0, r.centre().y - h / 2.0, words.right() - cap.x + 8.0, h},
             .command = {hints[i].command},
             .focusable = true});
    }
    if (!time.empty())
        stage.text(left.left(stage.width(time, kit::style::row), 10.0), time,
                   kit::style::row_quiet);
    stage.text_shortened(left.rest(), sentence, kit::style::row_quiet);
    stage.add({.id = "status.line",
               .role = kit::Role::status,
               .name = std::string(sentence),
               .value = std::string(time),
               .bounds = r});
    std::reverse(pressed.begin(), pressed.end());
    for (kit::Node& node : pressed) stage.add(std::move(node));
}

}  // namespace emberpath::screens
