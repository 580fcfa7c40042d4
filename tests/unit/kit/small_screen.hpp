#pragma once
/// A screen of two regions with one thing of each kind, for tests.

#include <array>

#include "tests/unit/kit/plain_metrics.hpp"
#include "ui/kit/interaction.hpp"
#include "ui/kit/widgets.hpp"

namespace emberpath::kit {

inline constexpr int small_list_rows = 8;

inline const KeyMap& small_keys() {
    static const std::array<Binding, 8> table{{
        {"back", "", "Esc", "one level back"},
        {"record", "small", "R", "record"},
        {"pause", "small", "Space", "pause or run"},
        {"prefix.tool", "small", "T", "take a tool"},
        {"answer", "dialog", "Y", "yes"},
        {"pan left", "small", "Shift Left", "further left"},
        {"pan up", "small", "Shift Up", "further up"},
        {"text larger", "", "Ctrl +", "larger"},
    }};
    static const KeyMap keys(table);
    return keys;
}

inline constexpr double page_length = 400.0;  // of what scrolls in the page in front

/// A page to be read in front of a screen: a button, and lines that cannot be pressed unless asked for.
inline Frame page_in_front(const State& state, bool lines_to_press) {
    static const PlainMetrics metrics;
    Stage stage(metrics, state, small_keys(), {400, 300});
    stage.place("small");
    {
        const auto front = stage.inside({.id = "page",
                                         .role = Role::region,
                                         .name = "Page",
                                         .bounds = {50, 50, 300, 200},
                                         .modal = true});
        button(stage, {260, 60, 80, 28},
               {.id = "page.close", .name = "Close", .command = {"back"}});
        ScrollList list(stage, {60, 100, 280, 140}, "page.list", "Lines", page_length);
        for (int i = 0; i < 10; ++i)
            stage.add({.id = "page.line." + std::to_string(i + 1),
                       .role = Role::row,
                       .name = "line " + std::to_string(i + 1),
                       .bounds = list.row(i * 40.0, 40.0),
                       .focusable = lines_to_press});
    }
    return stage.finish();
}

/// Left: a button, one that needs something first, a switch of three. Right: a list, a point group, a field.
inline Frame small_screen(const State& state, bool with_dialog = false) {
    static const PlainMetrics metrics;
    Stage stage(metrics, state, small_keys(), {400, 300});
    stage.place("small");
    {
        const auto left = stage.region("left", "Left", {0, 0, 200, 300});
        button(stage, {10, 10, 120, 28},
               {.id = "left.record",
                .name = "Record",
                .command = {"record", "1"},
                .shortcut = "record"});
        button(stage, {10, 50, 120, 28},
               {.id = "left.open",
                .name = "Open",
                .command = {"open"},
                .hint = "needs the cover off",
                .enabled = false});
        const Choice speeds[] = {{"left.1", "1", {"speed", "1"}, true},
                                 {"left.5", "5", {"speed", "5"}},
                                 {"left.20", "20", {"speed", "20"}}};
        segments(stage, {10, 90, 120, 28}, "left.speed", "Speed", speeds);
        stage.add({.id = "left.tool",
                   .role = Role::button,
                   .name = "Gauge",
                   .bounds = {10, 130, 40, 40},
                   .command = {"take", "3"},
                   .focusable = true,
                   .shortcut = "tool.3",
                   .drag = "gauge"});
    }
    {
        const auto right = stage.region("right", "Right", {200, 0, 200, 300});
        {
            ScrollList list(stage, {210, 10, 180, 100}, "right.list", "Rows",
                            small_list_rows * 30.0);
            for (int i = 0; i < small_list_rows; ++i) {
                const Rect r = list.row(i * 30.0, 30.0);
                const std::string n = std::to_string(i + 1);
                if (list.shows(r)) stage.text(r, "row " + n, style::row);
                stage.add({.id = "right.row." + n,
                           .role = Role::row,
                           .name = "row " + n,
                           .bounds = r,
                           .command = {"row", n},
                           .focusable = true});
            }
        }
        {
            const auto points = stage.inside({.id = "right.points",
                                              .role = Role::group,
                                              .name = "Points",
                                              .bounds = {210, 120, 180, 90},
                                              .moves = Moves::nearest,
                                              .roam = Roam{10.0, 30.0, 0.0, 500.0}});
            const Point places[] = {{230, 140}, {300, 140}, {232, 190}};
            for (int i = 0; i < 3; ++i)
                stage.add({.id = "right.P" + std::to_string(i + 1),
                           .role = Role::point,
                           .name = "P" + std::to_string(i + 1),
                           .bounds = around(places[i], 26, 26),
                           .command = {"select", "P" + std::to_string(i + 1)},
                           .focusable = true,
                           .accepts_drop = true});
        }
        text_field(stage, {210, 220, 180, 60},
                   {.id = "right.note",
                    .name = "Note",
                    .text = "abc",
                    .many_lines = true,
                    .last_reading = 6});
    }
    if (with_dialog) {
        stage.use(Layer::over);
        const auto front = stage.inside({.id = "ask",
                                         .role = Role::region,
                                         .name = "Question",
                                         .bounds = {100, 100, 200, 100},
                                         .modal = true});
        button(stage, {110, 150, 80, 28},
               {.id = "ask.yes", .name = "Yes", .command = {"yes"}, .shortcut = "answer"});
        button(stage, {200, 150, 80, 28}, {.id = "ask.no", .name = "No", .command = {"no"}});
    }
    return stage.finish();
}

}  // namespace emberpath::kit
