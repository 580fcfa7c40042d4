#include <cmath>
#include <cstdio>

#include "ui/kit/layout.hpp"
#include "ui/screens/job_parts.hpp"
#include "ui/screens/lanes.hpp"
#include "ui/screens/sheet_pen.hpp"

namespace emberpath::screens {

namespace {

using kit::Path;
using kit::Point;
using kit::Rect;
using kit::Token;

constexpr const char* not_seen_now = "not seen now";
constexpr double names_w = 124.0, values_w = 104.0;

struct Plot {
    Rect r;
    double minutes;
    [[nodiscard]] double x(double minutes_ago) const {
        return r.right() - minutes_ago / minutes * r.w;
    }
};

std::string plain(double value) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%g", value);
    return buffer;
}

double y_in(const Rect& lane, const LaneView& view, double value) {
    const Rect inner = kit::inset(lane, 0.0, std::min(5.0, lane.h * 0.16));
    const double share = (value - view.low) / (view.high - view.low);
    return inner.bottom() - std::clamp(share, 0.0, 1.0) * inner.h;
}

/// What was seen, and no line over a gap; something seen for a moment only is a short stroke.
void draw_line(kit::Painter& p, const Plot& plot, const Rect& lane, const LaneView& view,
               const TraceView& trace, const kit::Stroke& how) {
    Path path;
    const auto lift_pen = [&] {
        if (path.size() == 1) path.push_back({path.front().x + 1.5, path.front().y});
        if (!path.empty()) p.stroke(path, how);
        path.clear();
    };
    for (const TracePoint& t : trace.points) {
        if (t.after_gap) lift_pen();
        path.push_back({plot.x(t.minutes_ago), y_in(lane, view, t.value)});
    }
    lift_pen();
}

void draw_trace(kit::Painter& p, const Plot& plot, const Rect& lane, const LaneView& view,
                const TraceView& trace) {
    kit::Stroke how{.width = trace.set_point ? 1.3 : 1.8, .ink = trace_ink(trace.ink)};
    if (trace.set_point) how.dash = {7.0, 4.0};
    draw_line(p, plot, lane, view, trace, how);
}

/// Of another house: told from the house's own by its dots, not by its colour.
void draw_trace_beside(kit::Painter& p, const Plot& plot, const Rect& lane, const LaneView& view,
                       const TraceView& trace) {
    draw_line(p, plot, lane, view, trace,
              {.width = 1.6, .ink = trace_ink(trace.ink), .dash = {2.0, 3.0}});
}

/// What each trace reads now, at the right end: near its line, moved apart where they would touch.
void draw_values(kit::Stage& stage, const Rect& lane, const LaneView& view, double x) {
    double lowest = lane.y - 4.0;
    for (const TraceView& trace : view.traces) {
        if (trace.points.empty() || trace.label.empty()) continue;
        const double wanted = y_in(lane, view, trace.points.back().value) - 8.0;
        const double y = std::max(lowest, std::min(wanted, lane.bottom() - 15.0));
        stage.text({x + 10.0, y, values_w - 12.0, 16.0}, trace.label,
                   {trace.set_point ? kit::Face::regular : kit::Face::bold, kit::type_size::row,
                    trace_ink(trace.ink)});
        lowest = y + 16.0;
    }
}

void draw_lane_names(kit::Stage& stage, const Rect& lane, const LaneView& view, double left) {
    const bool connected = !view.traces.empty();
    const bool tall = lane.h > 42.0;
    const kit::Ink ink = connected ? Token::ink : Token::ink2;
    const Rect name = tall ? Rect{left, lane.centre().y - 18.0, names_w - 34.0, 18.0}
                           : Rect{left, lane.y, 84.0, lane.h};
    const double w = stage.text(name, view.name, kit::with_ink(kit::style::row_bold, ink));
    const Rect unit = tall ? Rect{left, lane.centre().y, 60.0, 18.0}
                           : Rect{left + w + 6.0, lane.y, names_w - w - 16.0, lane.h};
    stage.text(unit, view.unit, kit::style::label, tall ? kit::Align::start : kit::Align::end);
    if (!tall || !connected) return;
    constexpr double apart = 15.0;  // closer labels would touch
    double last = lane.y - apart;
    for (auto tick = view.ticks.rbegin(); tick != view.ticks.rend(); ++tick) {
        const double y = y_in(lane, view, *tick);
        if (std::abs(y - last) < apart) continue;
        stage.text({left, y - 8.0, names_w - 10.0, 16.0}, plain(*tick), kit::style::label,
                   kit::Align::end);
        last = y;
    }
}

void draw_not_connected(kit::Stage& stage, const Rect& lane) {
    draw_hatch(stage.paint(), lane, 7.0, Token::hatch);
    const std::string words = "not connected";
    const double w = stage.width(words, kit::style::absent) + 16.0;
    const Rect r = kit::around(lane.centre(), w, std::min(18.0, lane.h - 2.0));
    stage.paint().box(r, Token::paper);
    stage.text(r, words, kit::style::absent, kit::Align::centre);
}

void draw_grid(kit::Stage& stage, const Plot& plot, bool from_start) {
    kit::Painter& p = stage.paint();
    const int step = plot.minutes > 16.0 ? 5 : plot.minutes > 8.0 ? 2 : 1;
    for (int m = 0; m <= static_cast<int>(plot.minutes); m += step) {
        const double x = plot.x(from_start ? plot.minutes - m : m);
        kit::line(p, {x, plot.r.y}, {x, plot.r.bottom()}, {.width = 1.0, .ink = Token::hair});
        const std::string words = from_start ? std::to_string(m) + " min"
                                  : m == 0   ? "now"
                                             : "−" + std::to_string(m);
        const double w = stage.width(words, kit::style::label);
        const double at = std::clamp(x - w / 2.0, plot.r.x - 12.0, plot.r.right() - w);
        stage.text({at, plot.r.bottom() + 3.0, w, 15.0}, words, kit::style::label);
    }
}

void draw_marks(kit::Stage& stage, const Plot& plot, const std::vector<RecorderMark>& marks) {
    kit::Painter& p = stage.paint();
    LabelPlacer placer({plot.r.x - 10.0, plot.r.y - 24.0, plot.r.w + 20.0, 24.0});
    for (const RecorderMark& m : marks)  // words keep clear of the lines of other events
        if (m.balloon == 0)
            placer.occupy({plot.x(m.minutes_ago) - 1.0, plot.r.y - 18.0, 2.0, 16.0});
    for (const bool balloons : {true, false})
        for (const RecorderMark& m : marks) {
            if (m.minutes_ago > plot.minutes || (m.balloon > 0) != balloons) continue;
            const double x = plot.x(m.minutes_ago), y = plot.r.y - 10.0;
            if (balloons) {
                kit::line(p, {x, plot.r.y}, {x, plot.r.bottom()},
                          {.width = 1.4, .ink = Token::mark, .dash = {2.0, 3.0}});
                placer.occupy(kit::around({x, y}, 20.0, 20.0));
                kit::balloon(stage, {x, y}, m.balloon, kit::Balloon::filled, 9.5);
                continue;
            }
            kit::line(p, {x, plot.r.y - 14.0}, {x, plot.r.bottom()},
                      {.width = 1.0, .ink = Token::ink2});
            const double w = stage.width(m.words, kit::style::absent);
            const Rect places[] = {{x + 5.0, y - 8.0, w, 16.0}, {x - w - 5.0, y - 8.0, w, 16.0}};
            const Rect r = placer.place(places);
            if (!r.empty()) stage.text(r, m.words, kit::style::absent);
        }
}

std::string spoken(const LaneView& lane) {
    std::string text;
    for (const TraceView& t : lane.traces)
        if (!t.label.empty()) text += (text.empty() ? "" : ", ") + t.label;
    if (!text.empty()) return text + " " + lane.unit;
    return lane.traces.empty() ? "not connected" : not_seen_now;
}

void add_lane_node(kit::Stage& stage, const Rect& r, const LaneView& lane,
                   const LaneLook& look = {}) {
    stage.add({.id = std::string(look.id) + "." + lane.name,
               .role = kit::Role::reading,
               .name = lane.name,
               .value = spoken(lane),
               .bounds = r,
               .focusable = look.focusable});
}

}  // namespace

kit::Token trace_ink(char ink) {
    switch (ink) {
        case 'h':
            return Token::hot;
        case 'c':
            return Token::cold;
        case 'g':
            return Token::gas;
        case 'p':
            return Token::power;
        case 'f':
            return Token::flue;
        default:
            return Token::ink;
    }
}

void draw_lanes(kit::Stage& stage, const Rect& area, const RecorderView& recorder,
                const LaneLook& look) {
    const Plot plot{{area.x + names_w, area.y, area.w - names_w - values_w, area.h},
                    recorder.minutes};
    std::vector<kit::Part> parts;
    for (const LaneView& lane : recorder.lanes) parts.push_back({0.0, lane.weight});
    const auto lanes = kit::rows(plot.r, parts);
    stage.use(kit::Layer::moving);
    draw_grid(stage, plot, look.from_start);
    kit::Painter& p = stage.paint();
    for (std::size_t i = 0; i < lanes.size(); ++i) {
        const LaneView& view = recorder.lanes[i];
        if (view.traces.empty()) draw_not_connected(stage, lanes[i]);
        if (i < look.beside.size())
            for (const TraceView& trace : look.beside[i])
                draw_trace_beside(p, plot, lanes[i], view, trace);
        for (const TraceView& trace : view.traces) draw_trace(p, plot, lanes[i], view, trace);
        draw_values(stage, lanes[i], view, plot.r.right());
        draw_lane_names(stage, lanes[i], view, area.x);
        kit::line(p, {plot.r.x, lanes[i].bottom()}, {plot.r.right(), lanes[i].bottom()},
                  {.width = 1.0, .ink = Token::rule});
        add_lane_node(stage, {area.x, lanes[i].y, area.w, lanes[i].h}, view, look);
    }
    kit::line(p, {plot.r.x, plot.r.y}, {plot.r.right(), plot.r.y},
              {.width = 1.0, .ink = Token::rule});
    draw_marks(stage, plot, recorder.marks);
    stage.use(kit::Layer::still);
}

void draw_recorder(kit::Stage& stage, const Rect& r, const RecorderView& recorder) {
    const auto region = stage.region("recorder", "Recorder", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, kit::space::panel, 5.0));
    kit::panel_heading(stage, left.top(24.0), "recorder.heading", "Recorder",
                       "last " + plain(recorder.minutes) + " min · only what you have connected");
    left.top(16.0);
    left.bottom(18.0);
    draw_lanes(stage, left.rest(), recorder);
}

void draw_folded_recorder(kit::Stage& stage, const Rect& r, const RecorderView& recorder) {
    const auto region = stage.region("recorder", "Recorder, folded", r);
    kit::panel(stage, r);
    kit::Slicer left(kit::inset(r, kit::space::panel, 8.0));
    const Rect title = left.left(94.0);
    const double half = title.centre().y;
    stage.text({title.x, half - 20.0, title.w, 20.0}, "Recorder", kit::style::body_bold);
    stage.text({title.x, half, title.w, 18.0}, "folded", kit::style::row_quiet);
    stage.use(kit::Layer::moving);
    kit::Painter& p = stage.paint();
    for (const Rect& cell : kit::columns(left.rest(), recorder.lanes.size())) {
        const LaneView& lane =
            recorder
                .lanes[static_cast<std::size_t>(std::lround((cell.x - left.rest().x) / cell.w))];
        kit::line(p, {cell.x, cell.y}, {cell.x, cell.bottom()}, {.width = 1.0, .ink = Token::hair});
        const Rect words{cell.x + 10.0, cell.y, cell.w - 16.0, cell.h};
        stage.text_shortened({words.x, half - 20.0, words.w, 18.0}, lane.name + ", " + lane.unit,
                             kit::style::row_quiet);
        add_lane_node(stage, cell, lane);
        if (lane.traces.empty()) {
            stage.text({words.x, half, words.w, 18.0}, "not connected", kit::style::absent);
            continue;
        }
        const TraceView& now = lane.traces.back();
        const bool seen = !now.label.empty();
        const kit::TextStyle style =
            seen ? kit::TextStyle{kit::Face::bold, kit::type_size::body, trace_ink(now.ink)}
                 : kit::style::absent;
        const double w =
            stage.text_shortened({words.x, half - 1.0, words.w * (seen ? 0.5 : 1.0), 20.0},
                                 seen ? now.label : std::string(not_seen_now), style);
        const Rect spark{words.x + w + 12.0, half - 2.0, words.w - w - 18.0, 22.0};
        const Plot small{spark, recorder.minutes};
        const double length =
            small.x(now.points.back().minutes_ago) - small.x(now.points.front().minutes_ago);
        constexpr double least = 4.0;  // [px] shorter than that it is a speck that says nothing
        if (spark.w > 24.0 && length >= least) draw_trace(p, small, spark, lane, now);
    }
    stage.use(kit::Layer::still);
}

}  // namespace emberpath::screens
