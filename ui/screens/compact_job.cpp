#include "ui/screens/compact_job.hpp"

#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"
#include "ui/screens/sheet.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;

struct Tab {
    std::string id, words;
};

std::vector<Tab> tabs_of(const JobView& job) {
    std::size_t held = 0;
    for (const CauseView& c : job.causes) held += c.belief == Belief::struck ? 0 : 1;
    return {{"sheet", "Sheet"},
            {"bench", "Bench"},
            {"panel", "Panel"},
            {"evidence", "Evidence " + std::to_string(job.readings.size())},
            {"causes", "Causes " + std::to_string(held)},
            {"recorder", "Recorder"},
            {"card", "Job card"}};
}

void draw_tabs(kit::Stage& stage, const Rect& r, const JobView& job) {
    const auto region = stage.region("tabs", "Regions", r);
    std::vector<kit::Choice> choices;
    for (const Tab& t : tabs_of(job))
        choices.push_back(
            {"tabs." + t.id, t.words, {"tab", t.id}, job.compact_tab == t.id, "", ""});
    kit::tabs(stage, r, "tabs.all", "Regions", choices);
}

/// The selected thing and its actions under the sheet: as many columns as there is width for.
void draw_sheet_tab(kit::Stage& stage, const Rect& r, const JobView& job) {
    Rect strip;
    {
        const auto region = stage.region(
            "sheet", job.sheet == SheetShown::house ? "Sheet, the house" : "Sheet, the heater", r);
        kit::Slicer inside(draw_sheet_frame(stage, r, job.rail.paused));
        const double lines = job.selection.actions.size() > 3 ? 2.0 : 1.0;
        strip = inside.bottom(33.0 + 28.0 * lines);
        if (job.sheet == SheetShown::house)
            draw_house_sheet(stage, inside.rest(), job);
        else
            draw_heater_sheet(stage, inside.rest(), job);
        if (job.rail.paused) draw_paused_plate(stage, r, job);
    }
    kit::line(stage.paint(), {strip.x, strip.y}, {strip.right(), strip.y},
              {.width = 2.0, .ink = kit::Token::ink});
    draw_selection(stage, strip, job.selection);
}

void draw_tab(kit::Stage& stage, const Rect& r, const JobView& job) {
    const std::string& tab = job.compact_tab;
    if (tab == "bench") return draw_bench(stage, r, job.bench);
    if (tab == "evidence") return draw_evidence(stage, r, job);
    if (tab == "causes") return draw_causes(stage, r, job);
    if (tab == "recorder") return draw_recorder(stage, r, job.recorder);
    if (tab == "panel") {
        kit::panel(stage, r);
        return draw_front_panel(stage, {r.x, r.y, std::min(r.w, 420.0), std::min(r.h, 140.0)},
                                job.panel);
    }
    if (tab == "card") {
        const auto region = stage.region("card", "Job card", r);
        kit::panel(stage, r);
        return draw_job_card(stage, r, job.card);
    }
    draw_sheet_tab(stage, r, job);
}

void draw_foot(kit::Stage& stage, const Rect& r, const JobView& job) {
    const auto region = stage.region("foot", "Main actions", r);
    const kit::KeyMap& keys = stage.keys();
    const bool ready = job.record_refusal.empty();
    // Where another region already holds the same button, its key belongs there.
    const std::array specs{
        kit::ButtonSpec{.id = "foot.record",
                        .name = "Record reading",
                        .command = {"record"},
                        .caps = keys.caps("record"),
                        .shortcut = job.compact_tab == "evidence" ? "" : "record",
                        .hint = job.record_refusal,
                        .primary = ready,
                        .enabled = ready},
        kit::ButtonSpec{.id = "foot.pause",
                        .name = job.rail.paused ? "Run" : "Pause",
                        .command = {"pause"},
                        .caps = keys.caps("pause"),
                        .shortcut = "pause"},
        kit::ButtonSpec{.id = "foot.speed",
                        .name = "Speed " + std::to_string(job.rail.speed) + "×",
                        .command = {"speed"},
                        .caps = keys.caps("speed"),
                        .shortcut = "speed"},
        kit::ButtonSpec{.id = "foot.wait",
                        .name = "Wait " + job.rail.wait,
                        .command = {"wait"},
                        .caps = keys.caps("wait"),
                        .shortcut = "wait"},
        kit::ButtonSpec{.id = "foot.write-up",
                        .name = "Write-up",
                        .command = {"write-up"},
                        .caps = keys.caps("write-up"),
                        .shortcut = job.compact_tab == "evidence" ? "" : "write-up"}};
    kit::Slicer left(r);
    const kit::ButtonSpec help{
        .id = "foot.help", .name = "Keys", .command = {"help"}, .caps = keys.caps("help")};
    kit::button(stage, left.right(kit::button_width(stage, help), 8.0), help);
    for (const kit::ButtonSpec& spec : specs) {
        const double w = kit::button_width(stage, spec);
        if (w <= left.rest().w) kit::button(stage, left.left(w, 8.0), spec);
    }
}

}  // namespace

void draw_compact_job(kit::Stage& stage, const JobView& job) {
    kit::Slicer left(stage.whole());
    draw_rail(stage, left.top(52.0), job.rail, Form::compact);
    draw_tabs(stage, kit::inset(left.top(38.0), 8.0, 4.0), job);
    draw_status(stage, left.bottom(24.0), job.status_time, job.status, {});
    draw_foot(stage, kit::inset(left.bottom(40.0), 8.0, 4.0), job);
    draw_tab(stage, kit::inset(left.rest(), 8.0, 0.0), job);
}

}  // namespace emberpath::screens
