#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/compact_job.hpp"
#include "ui/screens/job_parts.hpp"
#include "ui/screens/overlays.hpp"
#include "ui/screens/screens.hpp"
#include "ui/screens/sheet.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;

constexpr double gap = 8.0, rail_height = 54.0, status_height = 30.0, folded_height = 60.0;

struct Sizes {
    double bench_w, recorder_h, strip_h, bench_h;
};
Sizes sizes_of(Form form) {
    if (form == Form::wide) return {392.0, 300.0, 120.0, 290.0};
    return {356.0, 206.0, 110.0, 216.0};
}

/// Wide and normal need room for the text too, not only pixels.
Form form_for(kit::Size size) {
    if (size.w >= 1700.0 && size.h >= 950.0) return Form::wide;
    return size.w >= 1200.0 && size.h >= 700.0 ? Form::normal : Form::compact;
}

void draw_sheet(kit::Stage& stage, const Rect& r, const JobView& job, double strip_h) {
    Rect inner, strip;
    {
        const auto region = stage.region(
            "sheet", job.sheet == SheetShown::house ? "Sheet, the house" : "Sheet, the heater", r);
        kit::Slicer inside(draw_sheet_frame(stage, r, job.rail.paused));
        strip = inside.bottom(strip_h);
        if (job.replay) inside.top(replay_plate_depth);
        inner = inside.rest();
        if (job.sheet == SheetShown::house)
            draw_house_sheet(stage, inner, job);
        else
            draw_heater_sheet(stage, inner, job);
        if (job.sample)
            stage.text({inner.right() - 190.0, inner.bottom() - 17.0, 180.0, 15.0},
                       "sample figures", kit::style::absent, kit::Align::end);
        if (job.rail.paused && !job.replay) draw_paused_plate(stage, r, job);
    }
    if (job.replay) draw_replay_plate(stage, r, *job.replay);
    draw_title_strip(stage, strip, job);
}

void draw_right_column(kit::Stage& stage, const Rect& r, const JobView& job, double bench_h) {
    kit::Slicer left(r);
    draw_bench(stage, left.top(bench_h, gap), job.bench);
    const double causes = std::min(causes_height(job.causes.size()), left.rest().h * 0.46);
    const Rect below = left.bottom(causes, gap);
    draw_evidence(stage, left.rest(), job);
    draw_causes(stage, below, job);
}

void draw_wide(kit::Stage& stage, const JobView& job, Form form) {
    const Sizes sizes = sizes_of(form);
    kit::Slicer left(stage.whole());
    draw_rail(stage, left.top(rail_height), job.rail, form);
    const Rect status = left.bottom(status_height);
    kit::Slicer body(
        {left.rest().x + gap, left.rest().y + gap, left.rest().w - 2.0 * gap, left.rest().h - gap});
    const Rect column = body.right(sizes.bench_w, gap);
    const bool folded = job.sheet == SheetShown::heater;
    const Rect recorder = body.bottom(folded ? folded_height : sizes.recorder_h, gap);
    draw_sheet(stage, body.rest(), job, sizes.strip_h);
    draw_right_column(stage, column, job, sizes.bench_h);
    if (folded)
        draw_folded_recorder(stage, recorder, job.recorder);
    else
        draw_recorder(stage, recorder, job.recorder);
    const std::array hints{
        KeyHint{"go to", "go to a point"},
        KeyHint{"other sheet", job.sheet == SheetShown::house ? "heater" : "house"},
        KeyHint{"job card", "job card"},
        job.rail.time_is_up ? KeyHint{"write-up", "write-up"}
                            : KeyHint{"pause", job.rail.paused ? "run" : "pause"},
        KeyHint{"help", "all keys"}};
    static const std::array replay_hints{
        KeyHint{"step back", "step back"}, KeyHint{"step on", "step on"},
        KeyHint{"mark on", "next marked one"}, KeyHint{"help", "all keys"}};
    draw_status(stage, status, job.status_time, job.status,
                job.replay ? std::span<const KeyHint>(replay_hints) : hints);
}

}  // namespace

kit::Frame job_screen(const Setting& setting, const JobView& job, InFront front) {
    kit::Stage stage(setting.metrics, setting.state, setting.keys, setting.size);
    const char* place = job.replay ? "replay" : "job";
    stage.place(place);
    stage.paint().box(stage.whole(), kit::Token::desk);
    const Form form = form_for(setting.size);
    if (form == Form::compact)
        draw_compact_job(stage, job);
    else
        draw_wide(stage, job, form);
    draw_in_front(stage, job, front);
    return finished(stage, setting, place);
}

}  // namespace emberpath::screens
