#include "ui/screens/settings.hpp"

#include <array>

#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"
#include "ui/screens/overlays.hpp"

namespace emberpath::screens {

namespace {

using kit::Rect;
using kit::Token;

constexpr double line_h = 30.0;

kit::Choice choice(std::string id, std::string words, kit::Command command, bool selected) {
    return {std::move(id), std::move(words), std::move(command), selected, "", ""};
}

void named(kit::Stage& stage, kit::Slicer& left, std::string_view id, std::string_view name,
           std::span<const kit::Choice> choices) {
    kit::Slicer row(left.top(line_h, 10.0));
    kit::label(stage, row.left(std::min(130.0, row.rest().w * 0.4)), std::string(id) + ".label",
               name, kit::style::body);
    kit::segments(
        stage,
        kit::inset(row.left(std::min(row.rest().w, 62.0 * static_cast<double>(std::max<std::size_t>(
                                                              choices.size(), 4)))),
                   0.0, 1.0),
        id, name, choices);
}

void draw_looks(kit::Stage& stage, const Rect& r, const SettingsView& view) {
    const auto region = stage.region("looks", "Looks and sound", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, 15.0, 8.0));
    kit::panel_heading(stage, left.top(24.0, 10.0), "looks.heading", "Looks and sound",
                       "kept between runs");
    std::vector<kit::Choice> sizes;
    for (const int percent : {100, 125, 150, 175, 200})
        sizes.push_back(
            choice("looks.text." + std::to_string(percent), std::to_string(percent) + " %",
                   {"text size", std::to_string(percent)}, view.text_percent == percent));
    named(stage, left, "looks.text", "Text size", sizes);
    const std::array themes{choice("looks.day", "Day", {"theme", "day"}, !view.night),
                            choice("looks.night", "Night", {"theme", "night"}, view.night)};
    named(stage, left, "looks.theme", "Colours", themes);
    const std::array units{
        choice("looks.kpa", "kPa", {"pressure unit", "kPa"}, view.kilopascal),
        choice("looks.mbar", "mbar", {"pressure unit", "mbar"}, !view.kilopascal)};
    named(stage, left, "looks.units", "Gas pressure", units);
    const auto switch_row = [&](std::string id, std::string name, const char* command, bool on) {
        kit::toggle(stage, left.top(line_h, 4.0),
                    {.id = std::move(id),
                     .name = std::move(name),
                     .command = {command, on ? "off" : "on"},
                     .selected = on});
    };
    switch_row("looks.motion", "Reduce motion", "reduce motion", view.reduce_motion);
    switch_row("looks.sound", "Sounds: fan, spark, flame, alarm", "sound", view.sound);
    stage.paragraph(left.rest(), "Whatever can be heard is also written in the status line.",
                    kit::style::row_quiet);
}

void draw_key(kit::Stage& stage, const Rect& row, const KeyRow& key, bool changing) {
    if (changing) stage.paint().box(row, Token::mark_wash);
    kit::key_cap(stage, {row.x + 6.0, row.centre().y}, key.chord.empty() ? "none" : key.chord);
    const Rect words{row.x + 100.0, row.y, row.w - 106.0, row.h};
    const kit::TextStyle quiet = key.fixed ? kit::style::row_quiet : kit::style::row;
    stage.text_shortened(words, changing ? "press the new key, or Esc to keep it" : key.words,
                         changing ? kit::style::row_bold : quiet);
}

void draw_keys_panel(kit::Stage& stage, const Rect& r, const SettingsView& view) {
    const auto region = stage.region("keys", "Keys", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, 15.0, 8.0));
    kit::panel_heading(stage, left.top(24.0, 6.0), "keys.heading", "Keys",
                       "Enter on a line changes its key");
    kit::Slicer switches(left.top(line_h, 4.0));
    const kit::ButtonSpec reset{
        .id = "keys.reset", .name = "All as at first", .command = {"reset keys"}};
    kit::button(stage, switches.right(kit::button_width(stage, reset), 10.0), reset);
    kit::toggle(stage, switches.rest(),
                {.id = "keys.characters",
                 .name = "Keys of one character",
                 .command = {"character keys", view.character_keys ? "off" : "on"},
                 .selected = view.character_keys});
    if (!view.problem.empty()) {
        const Rect line = left.top(22.0, 4.0);
        stage.text_shortened(line, view.problem, kit::with_ink(kit::style::row, Token::danger));
        stage.add({.id = "keys.problem",
                   .role = kit::Role::status,
                   .name = view.problem,
                   .bounds = line});
    }
    kit::ScrollList list(stage, left.rest(), "keys.list", "Keys",
                         28.0 * static_cast<double>(view.keys.size()));
    for (std::size_t i = 0; i < view.keys.size(); ++i) {
        const KeyRow& key = view.keys[i];
        const Rect row = list.row(28.0 * static_cast<double>(i), 28.0);
        if (list.shows(row)) draw_key(stage, row, key, key.id == view.changing);
        stage.add({.id = "keys.row." + key.id,
                   .role = kit::Role::row,
                   .name = key.words,
                   .value = key.chord.empty() ? "none" : key.chord,
                   .bounds = row,
                   .command = {"change key", key.id},
                   .focusable = !key.fixed});
    }
}

void draw_tabs(kit::Stage& stage, const Rect& r, const SettingsView& view) {
    const auto region = stage.region("tabs", "Parts of the settings", r);
    const std::array choices{
        choice("tabs.looks", "Looks and sound", {"tab", "looks"}, view.compact_tab != "keys"),
        choice("tabs.keys", "Keys", {"tab", "keys"}, view.compact_tab == "keys")};
    kit::tabs(stage, r, "tabs.all", "Parts of the settings", choices);
}

}  // namespace

kit::Frame settings_screen(const Setting& setting, const SettingsView& view) {
    kit::Stage stage(setting.metrics, setting.state, setting.keys, setting.size);
    stage.place("settings");
    stage.paint().box(stage.whole(), Token::desk);
    kit::Slicer left(stage.whole());
    const Rect head = left.top(48.0);
    {
        const auto region = stage.region("head", "Settings", head);
        stage.paint().box(head, Token::paper);
        stage.paint().box({head.x, head.bottom() - 2.0, head.w, 2.0}, Token::ink);
        kit::Slicer bar(kit::inset(head, 16.0, 10.0));
        const kit::ButtonSpec back{.id = "head.back",
                                   .name = "Back",
                                   .command = {"back"},
                                   .caps = stage.keys().caps("back")};
        kit::button(stage, bar.right(kit::button_width(stage, back), 10.0), back);
        kit::label(stage, bar.rest(), "head.title", "Settings", kit::style::title);
    }
    const Rect body = kit::inset(left.rest(), 8.0, 8.0);
    if (body.w >= 900.0) {
        const auto cells = kit::columns(body, 2, 8.0);
        draw_looks(stage, cells[0], view);
        draw_keys_panel(stage, cells[1], view);
    } else {
        kit::Slicer down(body);
        draw_tabs(stage, down.top(34.0, 4.0), view);
        if (view.compact_tab == "keys")
            draw_keys_panel(stage, down.rest(), view);
        else
            draw_looks(stage, down.rest(), view);
    }
    return finished(stage, setting, "settings");
}

}  // namespace emberpath::screens
