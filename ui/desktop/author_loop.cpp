#include "ui/desktop/author_loop.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "sim/units/units.hpp"
#include "sim/worksite/trace.hpp"

namespace emberpath::desktop {

namespace {

using worksite::TraceTable;

constexpr double light_up_s = 10.0, full_s = 90.0, end_s = 180.0;
constexpr double a_little = 0.4;  // of the tap (chosen): enough water to light the burner

/// The lanes of the job screen's recorder, and both gas pressures, which no recorder shows at once.
struct Channel {
    const char *name, *unit;
    std::string_view column;  // of the trace
    double factor;            // from the column's unit to the lane's
    int decimals;
    double least_span, step;  // of the lane, in its unit
    char ink;
};
constexpr std::array channels{
    Channel{"Temperature", "°C", "outlet water [degC]", 1.0, 1, 50.0, 10.0, 'h'},
    Channel{"Water flow", "L/min", "hot water [L/min]", 1.0, 1, 10.0, 5.0, 'c'},
    Channel{"Gas at inlet", "kPa", "gas at inlet [kPa]", 1.0, 2, 2.0, 1.0, 'g'},
    Channel{"Gas at burner", "kPa", "gas at manifold [kPa]", 1.0, 2, 1.0, 0.5, 'g'},
    Channel{"Fan", "rpm", "fan [rev/min]", 1.0, 0, 4000.0, 1000.0, 'f'},
    Channel{"Firing rate", "MJ/h", "firing rate asked for [kW]", 3.6, 0, 100.0, 50.0, 'i'},
};

screens::TraceView trace_of(const TraceTable& table, std::string_view column, double factor,
                            char ink) {
    screens::TraceView trace;
    trace.ink = ink;
    const auto at = std::find(table.columns.begin(), table.columns.end(), column);
    if (at == table.columns.end()) return trace;
    const auto index = static_cast<std::size_t>(at - table.columns.begin());
    for (const auto& row : table.rows)
        trace.points.push_back({(end_s - row.front()) / 60.0, factor * row[index]});
    return trace;
}

std::string last_of(const screens::TraceView& trace, int decimals) {
    return trace.points.empty() ? "" : units::fixed(trace.points.back().value, decimals);
}

/// Round limits around both houses.
void fit(screens::LaneView& lane, const std::vector<screens::TraceView>& sound,
         const Channel& channel) {
    double high = channel.least_span;
    const auto reach = [&high](const std::vector<screens::TraceView>& traces) {
        for (const auto& trace : traces)
            for (const auto& point : trace.points) high = std::max(high, point.value);
    };
    reach(lane.traces);
    reach(sound);
    lane.low = 0.0;
    lane.high = std::ceil(high / channel.step) * channel.step;
}

void add_lane(screens::LoopView& loop, const Channel& channel, const TraceTable& faulty,
              const TraceTable& sound) {
    screens::LaneView lane{channel.name, channel.unit, 0.0, 1.0, {}, {}, 1.0};
    auto own = trace_of(faulty, channel.column, channel.factor, channel.ink);
    auto beside = trace_of(sound, channel.column, channel.factor, channel.ink);
    own.label = last_of(own, channel.decimals) + " [" + last_of(beside, channel.decimals) + "]";
    if (channel.ink == 'h') {  // what the outlet should follow
        auto set = trace_of(faulty, "set point [degC]", 1.0, 'i');
        set.set_point = true;
        set.label = last_of(set, 0) + " set";
        lane.traces.push_back(std::move(set));
        lane.ticks = {20.0, 50.0};
        lane.weight = 2.0;
    }
    lane.traces.push_back(std::move(own));
    loop.sound.push_back({std::move(beside)});
    fit(lane, loop.sound.back(), channel);
    loop.traces.lanes.push_back(std::move(lane));
}

/// A trace opens the first tap; the widest asks most of the heater.
const worksite::Tap& widest_first(std::vector<worksite::Tap>& taps) {
    std::iter_swap(taps.begin(),
                   std::max_element(taps.begin(), taps.end(), [](const auto& a, const auto& b) {
                       return a.conductance < b.conductance;
                   }));
    return taps.front();
}

}  // namespace

screens::LoopView loop_of(worksite::Job job) {
    screens::LoopView loop;
    if (job.site.taps.empty()) return loop;
    const std::string tap = widest_first(job.site.taps).name;
    worksite::TraceSettings settings{{{light_up_s, a_little}, {full_s, 1.0}}, end_s};
    const TraceTable faulty = worksite::trace(job, settings);
    settings.sound = true;
    const TraceTable sound = worksite::trace(job, settings);
    loop.words = tap + ": light-up, then full draw";
    loop.traces.minutes = end_s / 60.0;
    for (const Channel& channel : channels) add_lane(loop, channel, faulty, sound);
    loop.traces.marks = {{(end_s - light_up_s) / 60.0, 0, "a little open"},
                         {(end_s - full_s) / 60.0, 0, "fully open"}};
    return loop;
}

}  // namespace emberpath::desktop
