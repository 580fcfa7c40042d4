#include "sim/scoring/severities.hpp"

#include <algorithm>
#include <array>

namespace emberpath::scoring {

namespace {

using faults::Cause;

constexpr int cylinder_severity_count = 13;
constexpr double cylinder_step = 0.7;
constexpr int unplaced_count = 7;  // of what acts only in houses of its own kind

/// Where the whole range shows in readings hardly farther apart than they are blurred, a few shadows stand for it;
/// a setting has as many as it has steps. Evenly over the symptomatic range. 0: they are placed.
int even_count(Cause cause) {
    switch (cause) {
        case Cause::electrode_fouled:
        case Cause::moisture_in_heater:
        case Cause::igniter_lead_cracked:
        case Cause::pinhole_inside:
        case Cause::gas_union_weeps:
            return 3;
        case Cause::supply_sags:
        case Cause::exchanger_scaled:
            return 4;
        case Cause::altitude_setting_wrong:
            return 10;
        default:
            return 0;
    }
}

struct Row {
    Cause cause;
    bool opposite;
    std::size_t count;
    std::array<double, most_severities> at;
};
// Printed by the program `place_severities` of the tests.
// clang-format off
constexpr std::array rows{
    Row{Cause::flue_blocked, false, 9, {0.69, 0.7384, 0.7772, 0.8127, 0.845, 0.9096, 0.9419, 0.9839, 1}},
    Row{Cause::wind_gust, false, 9, {0.3, 0.5125, 0.6125, 0.675, 0.7375, 0.775, 0.9125, 1.212, 1.5}},
    Row{Cause::gas_pipe_restriction, false, 7, {0.43, 0.5013, 0.5725, 0.6616, 0.7684, 0.8813, 1}},
    Row{Cause::regulator_droop, false, 6, {0.57, 0.6417, 0.7178, 0.8029, 0.9015, 1}},
    Row{Cause::outlet_sensor_drift, false, 9, {0.15, 0.2474, 0.3448, 0.4422, 0.5396, 0.637, 0.7344, 0.8495, 1}},
    Row{Cause::outlet_sensor_drift, true, 9, {0.15, 0.2563, 0.3625, 0.4688, 0.5927, 0.7255, 0.8229, 0.9203, 1}},
    Row{Cause::exchanger_sooted, false, 9, {0.3, 0.4021, 0.526, 0.5844, 0.6719, 0.774, 0.876, 0.949, 1}},
    Row{Cause::valve_lead_chafed, false, 9, {0.43, 0.5903, 0.6319, 0.6497, 0.6794, 0.7388, 0.7566, 0.7981, 1}},
    Row{Cause::injector_blocked, false, 7, {0.32, 0.3413, 0.4688, 0.5325, 0.5679, 0.5821, 1}},
    Row{Cause::gas_valve_stuck_low, false, 9, {0.5, 0.5417, 0.5781, 0.6146, 0.7135, 0.7656, 0.849, 0.9115, 1}},
    Row{Cause::gas_valve_stuck_high, false, 5, {0.5, 0.625, 0.75, 0.8802, 1}},
    Row{Cause::propane_in_gas, false, 9, {0.29, 0.3787, 0.4601, 0.5562, 0.6376, 0.6968, 0.7264, 0.7707, 1}},
    Row{Cause::strainer_blocked, false, 9, {0.93, 0.9577, 0.984, 1.006, 1.026, 1.038, 1.048, 1.06, 1.07}},
    Row{Cause::water_valve_stuck_shut, false, 9, {0.58, 0.6413, 0.6981, 0.755, 0.7988, 0.8425, 0.8906, 0.9344, 1}},
    Row{Cause::bypass_stuck, false, 9, {0.5, 0.5833, 0.651, 0.7188, 0.7813, 0.8385, 0.8906, 0.9427, 1}},
    Row{Cause::flow_sensor_dragging, false, 9, {0.08, 0.2046, 0.3292, 0.4538, 0.5496, 0.655, 0.7508, 0.8563, 1}},
    Row{Cause::inlet_sensor_drift, false, 8, {0.2, 0.2917, 0.3833, 0.4833, 0.6, 0.725, 0.8667, 1}},
    Row{Cause::inlet_sensor_drift, true, 9, {0.2, 0.3417, 0.4583, 0.525, 0.575, 0.6917, 0.8083, 0.925, 1}},
    Row{Cause::exchanger_sensor_drift, false, 6, {0.2, 0.3417, 0.4917, 0.65, 0.825, 1}},
    Row{Cause::exchanger_sensor_drift, true, 9, {0.2, 0.3333, 0.45, 0.5583, 0.6667, 0.7583, 0.85, 0.925, 1}},
    Row{Cause::ambient_sensor_drift, false, 5, {0.2, 0.3833, 0.575, 0.7833, 1}},
    Row{Cause::ambient_sensor_drift, true, 9, {0.2, 0.3333, 0.45, 0.5583, 0.6583, 0.7583, 0.85, 0.925, 1}},
    Row{Cause::fan_worn, false, 8, {0.5, 0.6146, 0.7083, 0.7917, 0.8438, 0.901, 0.9531, 1}},
    Row{Cause::tachometer_low, false, 9, {0.27, 0.4525, 0.5209, 0.6198, 0.6806, 0.7567, 0.8403, 0.924, 1}},
    Row{Cause::gas_isolator_part_shut, false, 9, {0.97, 0.9756, 0.9806, 0.9856, 0.9897, 0.9919, 0.9953, 0.9978, 1}},
    Row{Cause::gas_screen_blocked, false, 9, {0.32, 0.3767, 0.4475, 0.5254, 0.6246, 0.7308, 0.8512, 0.9646, 1}},
    Row{Cause::regulator_creeps, false, 5, {0.4, 0.55, 0.7, 0.85, 1}},
    Row{Cause::high_fire_overset, false, 5, {0.51, 0.6172, 0.7346, 0.8622, 1}},
    Row{Cause::boil_off_small, false, 9, {0.47, 0.5639, 0.6522, 0.7405, 0.8289, 0.9172, 0.9614, 0.9834, 1}},
    Row{Cause::intake_felted, false, 9, {0.75, 0.7813, 0.8073, 0.8307, 0.8542, 0.888, 0.9245, 0.9401, 1}},
    Row{Cause::products_drawn_back, false, 9, {0.35, 0.4786, 0.5802, 0.675, 0.7224, 0.8036, 0.8714, 0.9458, 1}},
    Row{Cause::chamber_seam_open, false, 6, {0.3, 0.4313, 0.5406, 0.7448, 0.9052, 1}},
    Row{Cause::light_up_late, false, 5, {0.75, 0.8125, 0.875, 0.9375, 1}},
    Row{Cause::outlet_clogged, false, 9, {0.16, 0.3, 0.44, 0.5187, 0.6413, 0.755, 0.8425, 0.9213, 1}},
    Row{Cause::flow_sensor_sticks, false, 5, {0.36, 0.5467, 0.7267, 0.82, 1}},
    Row{Cause::flow_sensor_wrong, false, 9, {0.3, 0.4021, 0.4969, 0.6135, 0.701, 0.7521, 0.8104, 0.876, 1}},
    Row{Cause::mixer_cross_flow, false, 9, {0.1, 0.2031, 0.3156, 0.4375, 0.5406, 0.6813, 0.775, 0.8594, 1}},
    Row{Cause::outlet_sensor_opens_warm, false, 5, {0.42, 0.4804, 0.5952, 0.8006, 1}},
    Row{Cause::limiter_weak, false, 5, {0.59, 0.6882, 0.8035, 0.9103, 1}},
};
// clang-format on

const Row* row_of(Cause cause, bool opposite) {
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const Row& one) {
        return one.cause == cause && one.opposite == opposite;
    });
    return row == rows.end() ? nullptr : &*row;
}

/// A cylinder's time until it fails goes with what is left in it, so there the remaining share falls by a constant
/// factor, down to empty.
std::vector<double> of_a_cylinder(const faults::CauseInfo& cause) {
    std::vector<double> at;
    double left = 1.0 - cause.least_severity;
    for (int i = 0; i + 1 < cylinder_severity_count; ++i, left *= cylinder_step)
        at.push_back(1.0 - left);
    at.push_back(cause.greatest_severity);
    return at;
}

}  // namespace

bool is_placed(Cause cause) {
    return even_count(cause) == 0 && cause != Cause::cylinder_low;
}

std::vector<double> severities_of(const faults::CauseInfo& cause, bool opposite) {
    if (cause.on_off || cause.cause == Cause::no_fault) return {cause.greatest_severity};
    if (cause.cause == Cause::cylinder_low) return of_a_cylinder(cause);
    const Row* row = row_of(cause.cause, opposite);
    if (row == nullptr) {
        const int count = even_count(cause.cause);
        return even_severities(cause, count > 0 ? count : unplaced_count);
    }
    const auto end = row->at.begin() + static_cast<std::ptrdiff_t>(row->count);
    return {row->at.begin(), end};
}

std::vector<double> even_severities(const faults::CauseInfo& cause, int count) {
    if (count < 2 || cause.on_off) return {cause.greatest_severity};
    std::vector<double> at;
    const double range = cause.greatest_severity - cause.least_severity;
    for (int i = 0; i < count; ++i) at.push_back(cause.least_severity + range * i / (count - 1));
    return at;
}

std::vector<double> shares_of(const faults::CauseInfo& cause,
                              const std::vector<double>& severities) {
    const std::size_t count = severities.size();
    std::vector<double> shares(count, 1.0 / static_cast<double>(count));
    if (count < 2 || cause.cause == Cause::cylinder_low) return shares;
    const double range = severities.back() - severities.front();
    for (std::size_t i = 0; i < count; ++i) {
        const double from = i > 0 ? severities[i - 1] : severities[i];
        const double to = i + 1 < count ? severities[i + 1] : severities[i];
        shares[i] = 0.5 * (to - from) / range;
    }
    return shares;
}

}  // namespace emberpath::scoring
