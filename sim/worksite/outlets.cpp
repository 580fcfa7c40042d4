#include "sim/worksite/outlets.hpp"

#include <algorithm>

namespace emberpath::worksite {

namespace {

/// Head of fresh water [Pa per m]: 999 kg/m3 at 15 °C times standard gravity.
constexpr double head_pa_per_m = 999.0 * 9.80665;

}  // namespace

void shut_outlets(plant::Surroundings& at) {
    at.hot_tap_conductance = 0.0;
    at.outlets = {};
    at.outlet_count = 0;
}

void open_outlet(plant::Surroundings& at, const Site& site, std::size_t tap, double share) {
    if (share <= 0.0 || at.outlet_count >= at.outlets.size()) return;
    const Tap& one = site.taps[tap];
    at.outlets[at.outlet_count++] = {tap, share * one.conductance, head_pa_per_m * one.height_m,
                                     one.tempered ? 1.0 : 0.0};
}

void open_all_outlets(plant::Surroundings& at, const Site& site, double share) {
    shut_outlets(at);
    const std::size_t count = std::min(site.taps.size(), at.outlets.size());
    for (std::size_t tap = 0; tap < count; ++tap) open_outlet(at, site, tap, share);
}

bool hot_water_is_drawn(const plant::Surroundings& at) {
    return at.hot_tap_conductance > 0.0 || at.outlet_count > 0;
}

double drawn_water_k(const plant::Observables& seen, const plant::Surroundings& at) {
    double flow = 0.0, heat = 0.0;
    for (std::size_t i = 0; i < at.outlet_count; ++i) {
        const std::size_t tap = at.outlets[i].tap;
        flow += seen.tap_m3_per_s[tap];
        heat += seen.tap_m3_per_s[tap] * seen.tap_k[tap];
    }
    return flow > nothing_runs_m3_per_s ? heat / flow : seen.tap_water_k;
}

bool water_comes(const plant::Observables& seen, std::size_t tap) {
    return tap < seen.tap_m3_per_s.size() && seen.tap_m3_per_s[tap] > nothing_runs_m3_per_s;
}

}  // namespace emberpath::worksite
