#include "sim/plant/electrics.hpp"

#include <cmath>

namespace emberpath::plant {

bool same(const ElectricalSituation& a, const ElectricalSituation& b) {
    return a == b;
}

bool same(const ElectricalParameters<double>& a, const ElectricalParameters<double>& b) {
    return a == b;
}

void work_out(LaneElectrics& lane, Wiring& wiring) {
    const ElectricalSituation& now = wiring.situation;
    if (now.safety_switch_closings != lane.closings_seen)
        wiring.latches.safety_switch_tripped = wiring.latches.breaker_tripped = 0.0;
    if (now.fuses_fitted != lane.fuses_seen) wiring.latches.fuse_blown = 0.0;
    lane.closings_seen = now.safety_switch_closings;
    lane.fuses_seen = now.fuses_fitted;
    lane.readings = take_readings(wiring);
    lane.latches = wiring.latches;
    lane.worked_out_at_wetness = lane.latches.wetness;
    lane.stale = false;
}

void age(LaneElectrics& lane, const ElectricalParameters<double>& parameters,
         const LaneWeather& weather) {
    constexpr double worth_it = 0.02;  // of full wetness
    Latches& l = lane.latches;
    if (parameters.moisture_s > 0.0) {
        l.wetness = dried(l.wetness, weather.casing_k - weather.ambient_k, weather.damp);
        if (std::abs(l.wetness - lane.worked_out_at_wetness) > worth_it) lane.stale = true;
    }
    const bool touches = parameters.valve_lead_short_s > 0.0 && weather.valve_driven > 0.5 &&
                         weather.casing_k > parameters.valve_lead_touches_above_k;
    const double now = touches ? 1.0 : 0.0;
    if (now != l.lead_touches) lane.stale = true;
    l.lead_touches = now;
}

}  // namespace emberpath::plant
