#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"

namespace emberpath::screens {

void draw_status(kit::Stage& stage, const kit::Rect& r, std::string_view time,
                 std::string_view sentence, std::span<const KeyHint> hints) {
    const auto region = stage.region("status", "Last thing that happened", r);
    kit::Slicer left(kit::inset(r, kit::space::panel, 0.0));
    for (std::size_t i = hints.size(); i-- > 0;) {
        const std::string caps = stage.caps(hints[i].command);
        if (caps.empty()) continue;
        const double words_w = stage.width(hints[i].words, kit::style::row),
                     cap_w = kit::key_cap_width(stage, caps);
        if (left.rest().w < 260.0 + words_w + cap_w) break;
        stage.text(left.right(words_w, 6.0), hints[i].words, kit::style::row_quiet);
        kit::key_cap(stage, {left.right(cap_w, 16.0).x, r.centre().y}, caps);
    }
    const double w = time.empty() ? 0.0
                                  : stage.text(left.left(stage.width(time, kit::style::row), 10.0),
                                               time, kit::style::row_quiet);
    (void)w;
    stage.text_shortened(left.rest(), sentence, kit::style::row_quiet);
    stage.add({.id = "status.line",
               .role = kit::Role::status,
               .name = std::string(sentence),
               .value = std::string(time),
               .bounds = r});
}

}  // namespace emberpath::screens
