// The recorder's lanes: only what stood on a glass or a display that could be seen.

#include <algorithm>
#include <cmath>

#include "ui/desktop/figures.hpp"
#include "ui/desktop/job_fill.hpp"

namespace emberpath::desktop {

namespace {

using worksite::Quantity;

constexpr double ticks_per_minute = 600.0;
constexpr double zero_celsius_k = 273.15;

std::optional<double> value_in(const worksite::TrailPoint& point, Quantity quantity) {
    for (const auto& figure : point.figures)
        if (figure.quantity == quantity) return figure.value;
    return std::nullopt;
}

double ago(const Known& known, std::int64_t tick) {
    return static_cast<double>(known.tick - tick) / ticks_per_minute;
}

bool stands_now(const Known& known, Quantity quantity) {
    return std::any_of(known.sight.figures.begin(), known.sight.figures.end(),
                       [&](const auto& figure) { return figure.quantity == quantity; });
}

/// One quantity over the last minutes as `read` takes it from a moment at which `seen` was on a glass; empty
/// when it never was. Where it was out of sight for a while the line has a gap.
template <class Read>
std::vector<screens::TracePoint> points_of(const Known& known, Quantity seen, double minutes,
                                           Read read) {
    constexpr std::int64_t between_points_ticks = 10;  // of a trail that goes on
    std::vector<screens::TracePoint> points;
    std::int64_t last = 0;
    for (const auto& point : known.trail) {
        const double minutes_ago = ago(known, point.tick);
        if (minutes_ago > minutes || !value_in(point, seen)) continue;
        const bool after_gap = !points.empty() && point.tick - last > between_points_ticks;
        points.push_back({minutes_ago, read(point), after_gap});
        last = point.tick;
    }
    return points;
}

screens::TraceView trace_of(const Known& known, Quantity quantity, char ink, double minutes) {
    screens::TraceView trace;
    trace.ink = ink;
    Figure figure;
    trace.points = points_of(known, quantity, minutes, [&](const worksite::TrailPoint& point) {
        figure = figure_of(quantity, *value_in(point, quantity), known.preferences.kilopascal);
        return figure.number;
    });
    if (stands_now(known, quantity)) trace.label = figure.digits;
    return trace;
}

/// Round limits around what was seen.
void fit(screens::LaneView& lane, double least_span, double step) {
    double low = 1.0e9, high = -1.0e9;
    for (const auto& trace : lane.traces)
        for (const auto& point : trace.points) {
            low = std::min(low, point.value);
            high = std::max(high, point.value);
        }
    if (low > high) return;
    low = std::floor((low - 0.05 * least_span) / step) * step;
    high = std::ceil((high + 0.05 * least_span) / step) * step;
    lane.low = std::min(low, std::max(0.0, high - least_span));
    lane.high = std::max(high, lane.low + least_span);
}

screens::LaneView temperature_lane(const Known& known, double minutes) {
    screens::LaneView lane{"Temperature", "°C", 10.0, 60.0, {20.0, 50.0}, {}, 2.0};
    auto outlet = trace_of(known, Quantity::readout_outlet, 'h', minutes);
    if (outlet.points.empty()) return lane;
    screens::TraceView set;
    set.set_point = true;
    set.ink = 'i';
    set.points = points_of(
        known, Quantity::readout_outlet, minutes,
        [](const worksite::TrailPoint& point) { return point.set_point_k - zero_celsius_k; });
    if (!outlet.label.empty()) {
        set.label = std::to_string(std::lround(set.points.back().value)) + " set";
        outlet.label += " out";
    }
    lane.traces = {std::move(set), std::move(outlet)};
    fit(lane, 50.0, 10.0);
    return lane;
}

screens::LaneView one_lane(const Known& known, const screens::LaneView& empty, Quantity quantity,
                           char ink, double step) {
    screens::LaneView lane = empty;
    const double span = lane.high - lane.low;
    constexpr double minutes = 8.0;
    auto trace = trace_of(known, quantity, ink, minutes);
    if (trace.points.empty()) return lane;
    lane.traces = {std::move(trace)};
    fit(lane, span, step);
    return lane;
}

/// The manometer's lane is that of the point where it hung last.
screens::LaneView gas_lane(const Known& known) {
    const bool kpa = known.preferences.kilopascal;
    screens::LaneView lane{"Gas", kpa ? "kPa" : "mbar", 0.0, kpa ? 3.0 : 30.0, {}, {}, 1.0};
    Quantity at = Quantity::display_word;
    for (const auto& point : known.trail)
        for (const auto& figure : point.figures)
            if (worksite::info(figure.quantity).tool == worksite::Tool::manometer)
                at = figure.quantity;
    if (at == Quantity::display_word) return lane;
    for (const auto& thing : known.things)
        if (thing.point.name == worksite::info(at).title) lane.name = "Gas " + thing.point.tag;
    return one_lane(known, lane, at, 'g', kpa ? 1.0 : 10.0);
}

bool is_event(const worksite::LogEntry& entry) {
    for (const std::string_view begin :
         {"open ", "close ", "turn ", "shut ", "press reset", "switch power", "set temperature"})
        if (entry.words.starts_with(begin))
            return entry.words.find("readout") == std::string::npos &&
                   entry.words.find("test point") == std::string::npos;
    return entry.remedy >= 0;
}

}  // namespace

screens::RecorderView recorder_of(const Known& known, const std::vector<TakenReading>& readings) {
    screens::RecorderView recorder;
    recorder.lanes = {temperature_lane(known, recorder.minutes),
                      one_lane(known, {"Water flow", "L/min", 0.0, 15.0, {}, {}, 1.0},
                               Quantity::readout_flow, 'c', 5.0),
                      gas_lane(known),
                      one_lane(known, {"Fan", "rpm", 0.0, 5000.0, {}, {}, 1.0},
                               Quantity::readout_fan, 'f', 1000.0),
                      one_lane(known, {"Firing rate", "MJ/h", 0.0, 150.0, {}, {}, 1.0},
                               Quantity::readout_firing_rate, 'i', 50.0)};
    for (const auto& reading : readings)
        if (ago(known, reading.tick) <= recorder.minutes)
            recorder.marks.push_back({ago(known, reading.tick), reading.view.number, ""});
    for (const auto& entry : known.log)
        if (is_event(entry) && ago(known, entry.end_tick) <= recorder.minutes)
            recorder.marks.push_back({ago(known, entry.end_tick), 0, entry.words});
    return recorder;
}

}  // namespace emberpath::desktop
