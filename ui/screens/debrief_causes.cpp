// The debrief's chart of causes: how likely the leading ones were, over the minutes.

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "ui/kit/layout.hpp"
#include "ui/screens/debrief_parts.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;
using kit::Token;

/// The cause of this house is strong; the others are told apart by their dashes and letters, not by colour.
kit::Stroke line_of(const DebriefView& view, std::size_t cause) {
    static const std::array<std::vector<double>, 3> dashes{
        {{9.0, 4.0}, {9.0, 3.0, 2.0, 3.0}, {2.0, 3.0}}};
    if (cause == 0) return {.width = 3.0, .ink = Token::mark};
    if (cause + 1 == view.likely.size()) return {.width = 1.2, .ink = Token::ink2};
    return {.width = 1.6, .ink = Token::ink, .dash = dashes.at((cause - 1) % dashes.size())};
}

kit::TextStyle words_of(std::size_t cause) {
    return cause == 0 ? kit::with_ink(kit::style::row_bold, Token::mark) : kit::style::row;
}

std::string letter_of(std::size_t cause) {
    return std::string(1, static_cast<char>('a' + cause));
}

std::string name_of(const DebriefView& view, std::size_t cause) {
    return (cause == 0 ? "what it was: " : "") + view.likely[cause];
}

/// How they stood once the chosen step was done.
const StandView& stand_now(const DebriefView& view) {
    const StandView* now = &view.stands.front();
    for (const StandView& stand : view.stands)
        if (stand.steps <= view.step + 1) now = &stand;
    return *now;
}

double y_of(const Chart& c, double share) {
    constexpr double head = 8.0;
    return c.left.bottom() - std::clamp(share, 0.0, 1.0) * (c.left.h - head);
}

/// Until when stand `i` held.
double right_end(const Chart& c, std::size_t i) {
    return i + 1 < c.view.stands.size() ? c.x(c.view.stands[i + 1].minute) : c.plot.right();
}

Path staircase(const Chart& c, std::size_t cause) {
    Path path;
    for (std::size_t i = 0; i < c.view.stands.size(); ++i) {
        const double y = y_of(c, c.view.stands[i].shares[cause]);
        path.push_back({c.x(c.view.stands[i].minute), y});
        path.push_back({right_end(c, i), y});
    }
    return path;
}

void draw_scale(const Chart& c) {
    constexpr double apart = 15.0;  // closer labels would touch
    for (const int per_cent : {0, 50, 100}) {
        const double y = y_of(c, per_cent / 100.0);
        kit::line(c.stage.paint(), {c.plot.x, y}, {c.plot.right(), y},
                  {.width = 1.0, .ink = Token::hair});
        if (per_cent == 50 && c.left.bottom() - y < apart) continue;
        c.stage.text({c.plot.x - 40.0, y - 8.0, 30.0, 16.0}, std::to_string(per_cent),
                     kit::style::label, kit::Align::end);
    }
}

/// How far the line is from the nearest other one during a stand [px].
double clear_of_others(const Chart& c, std::size_t cause, std::size_t stand) {
    const auto& shares = c.view.stands[stand].shares;
    double least = c.left.h;
    for (std::size_t other = 0; other < shares.size(); ++other)
        if (other != cause)
            least = std::min(least, std::abs(y_of(c, shares[other]) - y_of(c, shares[cause])));
    return least;
}

/// Where a line stands clearest of the others, off the chosen step; nowhere when it never does.
std::optional<Point> letter_place(const Chart& c, std::size_t cause, double chosen_x) {
    constexpr double room = 22.0, aside = 10.0;
    double clearest = 9.0;
    std::optional<Point> place;
    for (std::size_t i = 0; i < c.view.stands.size(); ++i) {
        const double from = c.x(c.view.stands[i].minute), w = right_end(c, i) - from;
        const double clear = clear_of_others(c, cause, i);
        if (w < room || clear <= clearest) continue;
        clearest = clear;
        const bool crossed = std::abs(from + w / 2.0 - chosen_x) < aside;
        place = {from + w / (crossed ? 4.0 : 2.0), y_of(c, c.view.stands[i].shares[cause])};
    }
    return place;
}

struct Entry {
    std::size_t cause;
    Rect place;  // from the legend's corner
};

constexpr double line_h = 20.0, letter_w = 13.0, sample_w = 28.0, entry_gap = 20.0;

/// One after the other, on as many lines as it takes; the same whatever step is chosen.
std::vector<Entry> entries_in(const kit::Stage& stage, const DebriefView& view, double width) {
    const double figure_w = stage.width("100 %", kit::style::row_bold);
    std::vector<Entry> entries;
    double x = 0.0, y = 0.0;
    for (std::size_t i = 0; i < view.likely.size(); ++i) {
        const double w = std::min(width, letter_w + sample_w + 12.0 + figure_w +
                                             stage.width(name_of(view, i), words_of(i)) + 1.0);
        if (x > 0.0 && x + w > width) {
            x = 0.0;
            y += line_h;
        }
        entries.push_back({i, {x, y, w, line_h}});
        x += w + entry_gap;
    }
    return entries;
}

/// "<1 %" as it is said.
std::string said(const std::string& figure) {
    if (figure.starts_with("<")) return "under " + figure.substr(1);
    if (figure.starts_with(">")) return "over " + figure.substr(1);
    return figure;
}

}  // namespace

void draw_causes(const Chart& c) {
    kit::Painter& p = c.stage.paint();
    draw_row_name(c, c.left, "Causes", "per cent");
    draw_scale(c);
    Path area = staircase(c, 0);
    area.push_back({area.back().x, c.left.bottom()});
    area.push_back({area.front().x, c.left.bottom()});
    p.fill(area, {Token::mark, 0.12});
    for (std::size_t cause = c.view.likely.size(); cause-- > 0;)
        p.stroke(staircase(c, cause), line_of(c.view, cause));
    kit::line(p, {c.plot.x, c.left.bottom()}, {c.plot.right(), c.left.bottom()},
              {.width = 1.2, .ink = Token::ink});
}

void draw_cause_letters(const Chart& c) {
    const bool chosen = c.view.step < c.view.steps.size();
    const double chosen_x = chosen ? c.x(c.view.steps[c.view.step].minute) : -1.0;
    for (std::size_t cause = 0; cause < c.view.likely.size(); ++cause) {
        const auto at = letter_place(c, cause, chosen_x);
        if (!at) continue;
        const Rect box = kit::around(*at, 13.0, 14.0);
        c.stage.paint().box(box, Token::paper);
        kit::TextStyle style = words_of(cause);
        style.size = kit::type_size::label;
        c.stage.text(box, letter_of(cause), style, kit::Align::centre);
    }
}

double cause_legend_height(const kit::Stage& stage, const DebriefView& view, double width) {
    const auto entries = entries_in(stage, view, width);
    return entries.empty() ? 0.0 : entries.back().place.bottom();
}

void draw_cause_legend(kit::Stage& stage, const Rect& r, const DebriefView& view) {
    const StandView& now = stand_now(view);
    for (const auto& [cause, place] : entries_in(stage, view, r.w)) {
        const Rect row = {r.x + place.x, r.y + place.y, place.w, place.h};
        kit::Slicer left(row);
        const kit::TextStyle style = words_of(cause);
        stage.text(left.left(letter_w), letter_of(cause), style);
        const Rect sample = left.left(sample_w, 6.0);
        kit::line(stage.paint(), {sample.x, sample.centre().y}, {sample.right(), sample.centre().y},
                  line_of(view, cause));
        const double figure_w = stage.width("100 %", kit::style::row_bold);
        const double room = left.rest().w - figure_w - 6.0;
        const double w =
            stage.text_shortened({left.rest().x, row.y, room, row.h}, name_of(view, cause), style);
        stage.text({left.rest().x + w + 6.0, row.y, figure_w, row.h}, now.figures[cause], style);
        stage.add({.id = "steps.cause." + std::to_string(cause),
                   .role = kit::Role::label,
                   .name = name_of(view, cause),
                   .value = said(now.figures[cause]),
                   .bounds = row});
    }
}

std::string causes_spoken(const DebriefView& view) {
    if (view.stands.empty()) return "";
    const StandView& now = stand_now(view);
    std::string text = now.steps == 0 ? "; on arrival" : "; likely then";
    for (std::size_t i = 0; i < view.likely.size(); ++i)
        text += (i == 0 ? ": " : ", ") + view.likely[i] + (i == 0 ? " (what it was) " : " ") +
                said(now.figures[i]);
    return text;
}

}  // namespace emberpath::screens
