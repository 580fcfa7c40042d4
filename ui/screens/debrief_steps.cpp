#include <algorithm>
#include <array>
#include <cmath>

#include "ui/kit/layout.hpp"
#include "ui/screens/debrief_parts.hpp"
#include "ui/screens/job_parts.hpp"
#include "ui/screens/sheet_pen.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;
using kit::Token;

double most_bits(const DebriefView& view) {
    double most = 1.0;
    for (const StepView& s : view.steps) most = std::max(most, s.bits);
    return most;
}

Chart chart_in(kit::Stage& stage, const Rect& r, const DebriefView& view) {
    const Rect plot{r.x + steps_left, r.y, r.w - steps_left - steps_right, r.h - 20.0};
    kit::Slicer down(plot);
    const double lane_h = std::min(23.0, plot.h * 0.09);
    std::vector<Rect> lanes;
    const double lanes_h = lane_h * static_cast<double>(view.services.size());
    kit::Slicer foot(down.bottom(lanes_h, 8.0));
    for (std::size_t i = 0; i < view.services.size(); ++i) lanes.push_back(foot.top(lane_h));
    const Rect left = down.bottom(down.rest().h * (charts_causes(view) ? 0.55 : 0.37));
    return {stage, view, plot, down.rest(), left, lanes};
}

void draw_hazards(const Chart& c) {
    kit::Painter& p = c.stage.paint();
    for (const SpanView& h : c.view.hazards) {
        const Rect r{c.x(h.from), c.plot.y, std::max(4.0, c.x(h.to) - c.x(h.from)), c.plot.h};
        p.box(r, Token::danger_wash);
        draw_hatch(p, r, 6.0, {Token::danger, 0.45});
        for (const double x : {r.x, r.right()})
            kit::line(p, {x, r.y}, {x, r.bottom()}, {.width = 1.6, .ink = Token::danger});
        kit::draw_mark(p, {r.centre().x, r.y + 9.0}, kit::Mark::hazard, 8.0);
    }
}

void draw_time_axis(const Chart& c) {
    const double step = c.view.minutes > 60.0 ? 10.0 : c.view.minutes > 24.0 ? 5.0 : 2.0;
    c.stage.text({c.plot.x - 40.0, c.plot.bottom() + 4.0, 28.0, 15.0}, "min", kit::style::label,
                 kit::Align::end);
    for (double m = 0.0; m <= c.view.minutes + 1e-9; m += step) {
        kit::line(c.stage.paint(), {c.x(m), c.plot.y}, {c.x(m), c.plot.bottom()},
                  {.width = 1.0, .ink = Token::hair});
        c.stage.text(kit::around({c.x(m), c.plot.bottom() + 11.0}, 36.0, 15.0),
                     std::to_string(static_cast<int>(m)), kit::style::label, kit::Align::centre);
    }
}

Point balloon_at(const Chart& c, const StepView& s) {
    const double base = c.bits.bottom() - 6.0, room = c.bits.h - 30.0;
    return {c.x(s.minute), base - s.bits / most_bits(c.view) * room - 9.0};
}

void draw_chosen_line(const Chart& c) {
    if (c.view.step >= c.view.steps.size()) return;
    const double x = c.x(c.view.steps[c.view.step].minute);
    kit::line(c.stage.paint(), {x, c.plot.y + 4.0}, {x, c.plot.bottom()},
              {.width = 1.4, .ink = Token::ink});
}

void draw_bits(const Chart& c) {
    kit::Painter& p = c.stage.paint();
    draw_row_name(c, c.bits, "Information", "bits gained");
    const double base = c.bits.bottom() - 6.0, most = most_bits(c.view), room = c.bits.h - 30.0;
    for (const double tick : {0.5, 1.0}) {
        if (tick < 1.0 && room * 0.5 / most < 18.0) continue;  // too low for both labels
        const double y = base - tick / most * room;
        kit::line(p, {c.plot.x, y}, {c.plot.right(), y}, {.width = 1.0, .ink = Token::hair});
        c.stage.text({c.plot.x - 40.0, y - 8.0, 30.0, 16.0}, tick == 1.0 ? "1.0" : "0.5",
                     kit::style::label, kit::Align::end);
    }
    kit::line(p, {c.plot.x, base}, {c.plot.right(), base}, {.width = 1.2, .ink = Token::ink});
    for (std::size_t i = 0; i < c.view.steps.size(); ++i) {
        const StepView& s = c.view.steps[i];
        const double x = c.x(s.minute), top = base - s.bits / most * room;
        const bool chosen = i == c.view.step;
        if (s.bits > 0.02)
            p.box({x - 3.5, top, 7.0, base - top}, s.balloon > 0 ? Token::mark : Token::rule);
        if (s.balloon > 0) {
            if (chosen) kit::ring(p, {x, top - 9.0}, 13.0, 2.0, Token::ink);
            kit::balloon(c.stage, {x, top - 9.0}, s.balloon,
                         s.cited ? kit::Balloon::filled : kit::Balloon::open, 9.5);
        } else if (s.bits <= 0.02) {
            p.disc({x, base}, chosen ? 5.0 : 3.0, Token::ink);
        }
    }
}

/// A staircase through the left points; the last value holds to the end.
Path staircase(const Chart& c, int LeftView::*which) {
    Path path;
    const double scale = (c.left.h - 8.0) / std::max(1, c.view.causes);
    const auto y = [&](const LeftView& l) { return c.left.bottom() - scale * (l.*which); };
    for (const LeftView& l : c.view.left) {
        if (!path.empty()) path.push_back({c.x(l.minute), path.back().y});
        path.push_back({c.x(l.minute), y(l)});
    }
    if (!path.empty()) path.push_back({c.plot.right(), path.back().y});
    return path;
}

void draw_legend(const Chart& c) {
    kit::Painter& p = c.stage.paint();
    const std::string a = "what the evidence allowed", b = "what you still held";
    const double wa = c.stage.width(a, kit::style::row), wb = c.stage.width(b, kit::style::row);
    double x = c.plot.right() - wa - wb - 90.0;
    if (x < c.plot.x + c.plot.w * 0.35) return;
    const double y = c.left.y + 12.0;
    p.box({x - 6.0, y - 10.0, c.plot.right() - x + 6.0, 20.0}, Token::paper);
    kit::line(p, {x, y}, {x + 22.0, y}, {.width = 2.0, .ink = Token::mark});
    c.stage.text({x + 28.0, y - 9.0, wa, 18.0}, a, kit::with_ink(kit::style::row, Token::mark));
    x += wa + 46.0;
    kit::line(p, {x, y}, {x + 22.0, y}, {.width = 1.4, .ink = Token::ink, .dash = {5.0, 3.0}});
    c.stage.text({x + 28.0, y - 9.0, wb, 18.0}, b, kit::style::row);
}

void draw_left(const Chart& c) {
    kit::Painter& p = c.stage.paint();
    draw_row_name(c, c.left, "Remedies left", "of " + std::to_string(c.view.causes));
    const Path allowed = staircase(c, &LeftView::by_evidence), held = staircase(c, &LeftView::held);
    if (!allowed.empty()) {
        Path area = allowed;
        area.push_back({c.plot.right(), c.left.bottom()});
        area.push_back({allowed.front().x, c.left.bottom()});
        p.fill(area, {Token::mark, 0.12});
        p.stroke(allowed, {.width = 2.0, .ink = Token::mark});
        p.stroke(held, {.width = 1.4, .ink = Token::ink, .dash = {5.0, 3.0}});
    }
    kit::line(p, {c.plot.x, c.left.bottom()}, {c.plot.right(), c.left.bottom()},
              {.width = 1.2, .ink = Token::ink});
    draw_legend(c);
}

void draw_services(const Chart& c) {
    kit::Painter& p = c.stage.paint();
    for (std::size_t i = 0; i < c.lanes.size(); ++i) {
        const ServiceLane& lane = c.view.services[i];
        const Rect& r = c.lanes[i];
        const Token ink = trace_ink(lane.ink);
        const double y = r.centre().y;
        c.stage.text({c.plot.x - steps_left + 2.0, r.y, 80.0, r.h}, lane.name,
                     kit::style::row_bold);
        c.stage.text({c.plot.x - 50.0, r.y, 40.0, r.h}, lane.rest, kit::style::label,
                     kit::Align::end);
        if (!lane.rest.empty())
            kit::line(p, {c.plot.x, y}, {c.plot.right(), y}, {.width = 2.4, .ink = ink});
        for (const SpanView& s : lane.spans) {
            const Rect box{c.x(s.from), y - 7.5, std::max(8.0, c.x(s.to) - c.x(s.from)), 15.0};
            kit::shape(p, kit::rounded_rectangle(box, 3.0),
                       lane.rest.empty() ? Token::wash : Token::paper, {.width = 1.4, .ink = ink});
            if (c.stage.width(s.words, kit::style::label) + 6.0 <= box.w)
                c.stage.text(box, s.words, kit::with_ink(kit::style::label, Token::ink),
                             kit::Align::centre);
        }
    }
}

void draw_chosen(const Chart& c) {
    if (c.view.step >= c.view.steps.size()) return;
    const StepView& s = c.view.steps[c.view.step];
    kit::Painter& p = c.stage.paint();
    const double x = c.x(s.minute);
    const std::string title = "Step " + std::to_string(c.view.step + 1) + "  " + s.title;
    const double w = std::min(std::max(c.stage.width(title, kit::style::body_bold),
                                       c.stage.width(s.detail, kit::style::row)) +
                                  22.0,
                              c.plot.w * 0.5);
    const double h = 24.0 + c.stage.paragraph_height(w - 20.0, s.detail, kit::style::row_quiet);
    LabelPlacer placer(c.plot);
    for (const StepView& other : c.view.steps)
        if (other.balloon > 0) placer.occupy(kit::around(balloon_at(c, other), 24.0, 24.0));
    const double top = c.plot.y + 2.0;
    const Rect places[] = {{x + 24.0, top, w, h},
                           {x - 24.0 - w, top, w, h},
                           {c.plot.right() - w, top, w, h},
                           {c.plot.x + 4.0, top, w, h},
                           {x + 24.0, c.left.y + 26.0, w, h}};
    const bool causes = charts_causes(c.view);
    if (causes) placer.occupy(c.left);
    Rect r = placer.place(places);
    if (r.empty()) {
        r = places[x + 24.0 + w < c.plot.right() ? 0 : 1];
        // What it told is seen in the causes' lines: sooner the services are covered than those.
        if (causes) r.y = c.plot.bottom() - h;
    }
    p.box(r, Token::paper);
    kit::frame(p, r, 1.2, Token::ink);
    c.stage.use(kit::Layer::over);
    c.stage.text_shortened({r.x + 10.0, r.y + 2.0, r.w - 20.0, 20.0}, title, kit::style::body_bold);
    c.stage.paragraph({r.x + 10.0, r.y + 21.0, r.w - 20.0, h}, s.detail, kit::style::row_quiet);
    c.stage.use(kit::Layer::still);
}

/// How many remedies were left once the chosen step was done.
std::string left_spoken(const DebriefView& view) {
    const LeftView* now = nullptr;
    for (const LeftView& l : view.left)
        if (l.minute <= view.steps[view.step].minute) now = &l;
    if (now == nullptr) return "";
    return "; of " + std::to_string(view.causes) + " remedies the evidence allowed " +
           std::to_string(now->by_evidence) + ", you still held " + std::to_string(now->held);
}

std::string spoken(const DebriefView& view) {
    if (view.step >= view.steps.size()) return "";
    const StepView& s = view.steps[view.step];
    return "Step " + std::to_string(view.step + 1) + " of " + std::to_string(view.steps.size()) +
           ", " + s.title + ", " + s.detail +
           (charts_causes(view) ? causes_spoken(view) : left_spoken(view));
}

/// What the lower lane holds; nothing to choose where nothing was weighed.
void draw_lane_choice(kit::Stage& stage, kit::Slicer& bar, const DebriefView& view) {
    if (view.stands.empty()) return;
    const std::array choices{kit::Choice{"steps.lane.causes",
                                         "Causes",
                                         {"lane", "causes"},
                                         view.causes_shown,
                                         "",
                                         "Causes, how likely"},
                             kit::Choice{"steps.lane.left",
                                         "Remedies left",
                                         {"lane", "remedies left"},
                                         !view.causes_shown,
                                         "",
                                         ""}};
    const double w = 2.0 * (stage.width("Remedies left", kit::style::row_bold) + 20.0);
    const Rect place = bar.right(w, 14.0);
    kit::segments(stage, {place.x, place.y, place.w, 26.0}, "steps.lane",
                  "What the lower lane holds", choices);
}

/// What it is, for how long, what the lower lane holds, and the way from step to step.
void draw_head(kit::Stage& stage, const Rect& r, const DebriefView& view) {
    const std::string at = view.steps.empty() ? ""
                                              : std::to_string(view.step + 1) + " of " +
                                                    std::to_string(view.steps.size());
    const double at_w = stage.width("000 of 000", kit::style::row);
    kit::Slicer bar(r);
    const Rect next = bar.right(28.0, 2.0), middle = bar.right(at_w, 2.0),
               back = bar.right(28.0, 12.0);
    draw_lane_choice(stage, bar, view);
    const std::string title = "What each step told you",
                      note = std::to_string(static_cast<int>(view.minutes)) + " minutes on site";
    const bool fits =
        stage.width(title, kit::style::body_bold) + stage.width(note, kit::style::row) + 40.0 <
        bar.rest().w;
    kit::panel_heading(stage, bar.rest(), "steps.heading", title, fits ? note : "");
    kit::button(stage, back,
                {.id = "steps.back",
                 .name = "Previous step",
                 .command = {"step back"},
                 .shortcut = "step back",
                 .picture_only = true});
    kit::button(stage, next,
                {.id = "steps.on",
                 .name = "Next step",
                 .command = {"step on"},
                 .shortcut = "step on",
                 .picture_only = true});
    stage.text(middle, at, kit::style::row, kit::Align::centre);
    for (const auto& [box, way] : {std::pair{back, -1.0}, std::pair{next, 1.0}}) {
        const Point c = box.centre();
        stage.paint().stroke(
            Path{
                {c.x - 3.0 * way, c.y - 5.0}, {c.x + 3.0 * way, c.y}, {c.x - 3.0 * way, c.y + 5.0}},
            {.width = 1.8, .ink = Token::ink});
    }
}

}  // namespace

bool charts_causes(const DebriefView& view) {
    return view.causes_shown && !view.stands.empty();
}

void draw_row_name(const Chart& c, const Rect& lane, std::string_view name, std::string_view unit) {
    const double x = c.plot.x - steps_left + 2.0;
    c.stage.text({x, lane.y + 2.0, 96.0, 18.0}, name, kit::style::row_bold);
    if (!unit.empty() && lane.h >= 38.0)
        c.stage.text({x, lane.y + 20.0, 96.0, 18.0}, unit, kit::style::row_quiet);
}

void draw_steps(kit::Stage& stage, const Rect& r, const DebriefView& view) {
    const auto region = stage.region("steps", "What each step told you", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, 14.0, 6.0));
    draw_head(stage, left.top(26.0, 8.0), view);
    const bool causes = charts_causes(view);
    Rect legend{};
    if (causes) legend = left.bottom(cause_legend_height(stage, view, left.rest().w), 4.0);
    const Chart chart = chart_in(stage, left.rest(), view);
    stage.add({.id = "steps.chart",
               .role = kit::Role::picture,
               .name = "Steps",
               .value = spoken(view),
               .bounds = left.rest(),
               .command = {"step at"},
               .focusable = true});
    draw_time_axis(chart);
    draw_hazards(chart);
    if (causes)
        draw_causes(chart);
    else
        draw_left(chart);
    draw_chosen_line(chart);
    if (causes) draw_cause_letters(chart);
    draw_services(chart);
    draw_bits(chart);
    draw_chosen(chart);
    if (causes) draw_cause_legend(stage, legend, view);
}

std::size_t step_near(const kit::Frame& frame, const DebriefView& view, Point at) {
    const kit::Node* chart = frame.tree.get("steps.chart");
    if (chart == nullptr || view.steps.empty()) return view.step;
    const double w = chart->bounds.w - steps_left - steps_right;
    const double minute = (at.x - chart->bounds.x - steps_left) / w * view.minutes;
    std::size_t best = 0;
    for (std::size_t i = 1; i < view.steps.size(); ++i)
        if (std::abs(view.steps[i].minute - minute) < std::abs(view.steps[best].minute - minute))
            best = i;
    return best;
}

}  // namespace emberpath::screens
