#include "sim/exposure/carbon_monoxide.hpp"

#include <algorithm>
#include <cmath>

#include "sim/math/functions.hpp"

namespace emberpath::exposure {
namespace {

constexpr double longest_step_s = 1.0;  // near saturation the equation is stiff
constexpr double s_per_min = 60.0;

double resistance(const Breathing& b) {  // B: mmHg min/mL
    return 1.0 / b.diffusing_ml_per_min_mmhg +
           (b.barometer_mmhg - b.vapour_mmhg) / b.ventilation_ml_per_min;
}

double inspired_mmhg(double co_share, const Breathing& b) {
    return co_share * (b.barometer_mmhg - b.vapour_mmhg);
}

/// d[COHb]/dt in mL per mL of blood and minute.
double uptake(double content, double inspired, const Breathing& b) {
    const double oxygen = std::max(b.oxygen_capacity - content, 1.0e-6);
    const double back = content * b.capillary_oxygen_mmhg / (oxygen * b.affinity);
    return (b.produced_ml_per_min + (inspired - back) / resistance(b)) / b.blood_ml;
}

double step(double content, double inspired, double minutes, const Breathing& b) {
    const double k1 = uptake(content, inspired, b);
    const double k2 = uptake(content + 0.5 * minutes * k1, inspired, b);
    const double k3 = uptake(content + 0.5 * minutes * k2, inspired, b);
    const double k4 = uptake(content + minutes * k3, inspired, b);
    return content + minutes / 6.0 * (k1 + 2.0 * k2 + 2.0 * k3 + k4);
}

double time_constant_min(const Breathing& b) {
    return b.blood_ml * resistance(b) * b.affinity * b.oxygen_capacity / b.capillary_oxygen_mmhg;
}

double ten_to(double x) {
    return math::power(10.0, x);
}

double log10_of(double x) {
    return math::log(x) / math::log(10.0);
}

}  // namespace

double carboxyhaemoglobin_after(double start, double co_share, double seconds,
                                const Breathing& breathing) {
    const double inspired = inspired_mmhg(co_share, breathing);
    double content = start * breathing.oxygen_capacity;
    for (double left = seconds; left > 0.0; left -= longest_step_s)
        content = step(content, inspired, std::min(left, longest_step_s) / s_per_min, breathing);
    return content / breathing.oxygen_capacity;
}

double linear_carboxyhaemoglobin_after(double start, double co_share, double seconds,
                                       const Breathing& breathing) {
    const Breathing& b = breathing;
    const double driving =
        inspired_mmhg(co_share, b) + b.produced_ml_per_min * resistance(b);  // mmHg
    const double last = driving * b.affinity / b.capillary_oxygen_mmhg;  // share of the capacity
    const double fading = math::exp(-seconds / s_per_min / time_constant_min(b));
    return last + (start - last) * fading;
}

double carboxyhaemoglobin_at_last(double co_share, const Breathing& breathing) {
    const Breathing& b = breathing;
    const double driving = inspired_mmhg(co_share, b) + b.produced_ml_per_min * resistance(b);
    const double ratio = driving * b.affinity / b.capillary_oxygen_mmhg;  // [COHb] / [O2Hb]
    return ratio / (1.0 + ratio);
}

double elimination_half_life_s(const Breathing& breathing) {
    return math::log(2.0) * time_constant_min(breathing) * s_per_min;
}

double short_spell_rise(double co_share, double litres_per_min, double seconds) {
    return 0.01 * 3.317e-5 * math::power(co_share * 1.0e6, 1.036) * litres_per_min * seconds /
           s_per_min;
}

double regressed_share(double co_share, double seconds) {
    return 0.01 * ten_to(0.85753 * log10_of(co_share * 1.0e6) +
                         0.62995 * log10_of(seconds / s_per_min) - 2.29519);
}

double share_in_room_after(double start, double release_m3_per_s, const Room& room,
                           double seconds) {
    const double renewed = room.air_changes_per_s * seconds;
    if (renewed < 1.0e-9) return start + release_m3_per_s * seconds / room.volume_m3;
    const double last = release_m3_per_s / (room.air_changes_per_s * room.volume_m3);
    return last + (start - last) * math::exp(-renewed);
}

}  // namespace emberpath::exposure
