#include "ui/screens/debrief_screen.hpp"

#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/debrief_parts.hpp"
#include "ui/screens/job_parts.hpp"
#include "ui/screens/overlays.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;

void draw_tabs(kit::Stage& stage, const Rect& r, const DebriefView& view) {
    const auto region = stage.region("tabs", "Parts of the debrief", r);
    const auto tab = [&](const char* id, const char* words) {
        return kit::Choice{std::string("tabs.") + id, words, {"tab", id},
                           view.compact_tab == id,    "",    ""};
    };
    const std::array choices{tab("outcome", "Score"), tab("steps", "Steps"),
                             tab("table", "Other remedies")};
    kit::tabs(stage, r, "tabs.all", "Parts of the debrief", choices);
}

void draw_compact(kit::Stage& stage, const Rect& r, const DebriefView& view) {
    kit::Slicer left(r);
    draw_tabs(stage, left.top(34.0, 4.0), view);
    if (view.compact_tab == "steps") return draw_steps(stage, left.rest(), view);
    if (view.compact_tab == "table") return draw_comparison(stage, left.rest(), view);
    draw_score(stage, left.rest(), view);
}

}  // namespace

std::size_t marked_step(const DebriefView& view, bool after) {
    const auto marked = [&](std::size_t i) {
        return view.steps[i].balloon > 0 || view.steps[i].unsafe;
    };
    if (after) {
        for (std::size_t i = view.step + 1; i < view.steps.size(); ++i)
            if (marked(i)) return i;
    } else {
        for (std::size_t i = std::min(view.step, view.steps.size()); i-- > 0;)
            if (marked(i)) return i;
    }
    return view.step;
}

kit::Frame debrief_screen(const Setting& setting, const DebriefView& view) {
    kit::Stage stage(setting.metrics, setting.state, setting.keys, setting.size);
    stage.place("debrief");
    stage.paint().box(stage.whole(), kit::Token::desk);
    kit::Slicer left(stage.whole());
    draw_outcome(stage, left.top(54.0), view);
    const Rect status = left.bottom(30.0);
    kit::Slicer body(
        {left.rest().x + 8.0, left.rest().y + 8.0, left.rest().w - 16.0, left.rest().h - 8.0});
    if (setting.size.w < 1100.0 || setting.size.h < 640.0) {
        draw_compact(stage, body.rest(), view);
    } else {
        draw_score(stage, body.left(setting.size.w > 1700.0 ? 340.0 : 276.0, 8.0), view);
        // What the lines of the causes mean stands under them.
        const double share = charts_causes(view) ? 0.52 : 0.46;
        draw_steps(stage, body.top(body.rest().h * share, 8.0), view);
        draw_comparison(stage, body.rest(), view);
    }
    static const std::array hints{KeyHint{"step back", "step back"}, KeyHint{"step on", "step on"},
                                  KeyHint{"table", "table"}, KeyHint{"help", "all keys"}};
    draw_status(stage, status, "", view.status, hints);
    return finished(stage, setting, "debrief");
}

}  // namespace emberpath::screens
