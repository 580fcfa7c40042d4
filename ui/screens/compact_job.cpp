#include "ui/screens/compact_job.hpp"

#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"
#include "ui/screens/overlays.hpp"
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

/// At the right end of the tabs, where they leave room: the other of the two sheets.
void draw_other_sheet(kit::Stage& stage, const Rect& r, const JobView& job) {
    kit::ButtonSpec spec{.id = "tabs.other",
                         .name = job.sheet == SheetShown::house ? "Heater" : "House",
                         .command = {"other sheet"},
                         .caps = stage.caps("other sheet"),
                         .shortcut = "other sheet"};
    double taken = 0.0;
    for (const Tab& t : tabs_of(job)) taken += stage.width(t.words, kit::style::body_bold) + 24.0;
    if (taken + kit::button_width(stage, spec) > r.w) spec.caps.clear();
    const double w = kit::button_width(stage, spec);
    if (taken + w <= r.w) kit::button(stage, {r.right() - w, r.y + 1.0, w, r.h - 4.0}, spec);
}

void draw_tabs(kit::Stage& stage, const Rect& r, const JobView& job) {
    const auto region = stage.region("tabs", "Regions", r);
    std::vector<kit::Choice> choices;
    for (const Tab& t : tabs_of(job))
        choices.push_back(
            {"tabs." + t.id, t.words, {"tab", t.id}, job.compact_tab == t.id, "", ""});
    kit::tabs(stage, r, "tabs.all", "Regions", choices);
    if (job.compact_tab == "sheet") draw_other_sheet(stage, r, job);
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
        if (job.replay) inside.top(replay_plate_depth);
        if (job.sheet == SheetShown::house)
            draw_house_sheet(stage, inside.rest(), job);
        else
            draw_heater_sheet(stage, inside.rest(), job);
        if (job.rail.paused && !job.replay) draw_paused_plate(stage, r, job);
    }
    if (job.replay) draw_replay_plate(stage, r, *job.replay);
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
        kit::Slicer card(r);
        draw_job_card(stage, card.top(std::min(90.0, r.h)), job.card);
        return draw_card_entries(stage, kit::inset(card.rest(), 13.0, 4.0), job.card);
    }
    draw_sheet_tab(stage, r, job);
}

std::vector<kit::ButtonSpec> foot_buttons(const kit::Stage& stage, const JobView& job) {
    const bool ready = job.record_refusal.empty();
    // Where another region already holds the same button, its key belongs there.
    const bool evidence = job.compact_tab == "evidence";
    std::vector<kit::ButtonSpec> specs{{.id = "foot.record",
                                        .name = "Record reading",
                                        .command = {"record"},
                                        .shortcut = evidence ? "" : "record",
                                        .hint = job.record_refusal,
                                        .primary = ready,
                                        .enabled = ready},
                                       {.id = "foot.pause",
                                        .name = job.rail.paused ? "Run" : "Pause",
                                        .command = {"pause"},
                                        .shortcut = "pause"},
                                       {.id = "foot.speed",
                                        .name = "Speed " + std::to_string(job.rail.speed) + "×",
                                        .command = {"speed"},
                                        .shortcut = "speed"},
                                       {.id = "foot.wait",
                                        .name = "Wait " + job.rail.wait,
                                        .command = {"wait"},
                                        .shortcut = "wait"},
                                       {.id = "foot.write-up",
                                        .name = "Write-up",
                                        .command = {"write-up"},
                                        .shortcut = evidence ? "" : "write-up"}};
    if (job.rail.time_is_up)  // no time is left to stop, to hurry or to wait for
        specs = {specs.front(), specs.back()};
    if (job.replay) specs = {{.id = "foot.debrief", .name = "Debrief", .command = {"back"}}};
    specs.push_back({.id = "foot.help", .name = "Keys", .command = {"help"}});
    for (kit::ButtonSpec& spec : specs) spec.caps = stage.caps(spec.command.name);
    return specs;
}

constexpr double foot_line = 32.0, foot_gap = 8.0;

/// The main actions in one line: with their keys where there is room, else their names alone, else short
/// ones; in two lines only where even those have no room.
struct Foot {
    std::vector<kit::ButtonSpec> buttons;
    std::vector<Rect> boxes;  // from the corner of the foot
    double height = 0.0;
};
Foot lay_out_foot(const kit::Stage& stage, const JobView& job) {
    Foot foot{foot_buttons(stage, job), {}, 0.0};
    const double room = stage.size().w - 2.0 * foot_gap;
    const auto fits = [&](bool with_hint) {
        std::vector<double> widths;
        for (kit::ButtonSpec spec : foot.buttons) {
            if (!with_hint) spec.hint.clear();
            widths.push_back(kit::button_width(stage, spec));
        }
        foot.boxes = kit::wrapped_row({0.0, 0.0, room, 2.0 * foot_line + foot_gap}, widths,
                                      foot_line, {foot_gap, foot_gap});
        return foot.boxes.back().y < foot_line;
    };
    bool one_line = fits(true);
    if (!one_line) {
        for (kit::ButtonSpec& spec : foot.buttons) spec.caps.clear();
        one_line = fits(true);
    }
    if (!one_line) {
        if (!job.replay) foot.buttons.front().name = "Record";
        one_line = fits(false);
    }
    if (one_line) foot.boxes.back().x = room - foot.boxes.back().w;
    foot.height = foot.boxes.back().bottom();
    return foot;
}

void draw_foot(kit::Stage& stage, const Rect& r, const Foot& foot) {
    const auto region = stage.region("foot", "Main actions", r);
    for (std::size_t i = 0; i < foot.buttons.size(); ++i) {
        const Rect& box = foot.boxes[i];
        kit::button(stage, {r.x + box.x, r.y + box.y, box.w, box.h}, foot.buttons[i]);
    }
}

}  // namespace

void draw_compact_job(kit::Stage& stage, const JobView& job) {
    kit::Slicer left(stage.whole());
    draw_rail(stage, left.top(52.0), job.rail, Form::compact);
    draw_tabs(stage, kit::inset(left.top(38.0), 8.0, 4.0), job);
    draw_status(stage, left.bottom(24.0), job.status_time, job.status, {});
    const Foot foot = lay_out_foot(stage, job);
    draw_foot(stage, kit::inset(left.bottom(foot.height + 8.0), foot_gap, 4.0), foot);
    draw_tab(stage, kit::inset(left.rest(), 8.0, 0.0), job);
}

}  // namespace emberpath::screens
