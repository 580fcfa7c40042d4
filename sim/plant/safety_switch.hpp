#pragma once
/// How long the safety switch of the house takes to open.
///
/// Equation  t = t_contacts + t_release / (I / I_trip - 1): the release of such a switch has to be given a fixed
///           energy, and gets it the sooner the further the current is above the one it opens at
/// Source    the form and both times are chosen; the bounds are those of [iec61008]: at 30 mA rated, 300 ms at 30 mA,
///           150 ms at 60 mA, 40 ms at 150 mA
/// Range     residual_a >= 0, trips_a > 0
/// Returns   [s]; infinite at or below trips_a: it does not open
/// Errors    none
/// Checked   tests/reference/exposure_reference_test.cpp, tests/unit/plant/electrical_network_test.cpp
///
/// From its rated 30 mA on it is shorter than a tick of the plant, so the network lets the switch open within the tick;
/// just above its own 24 mA it opens some ticks too early there, which no instrument of the trade would show.

#include <limits>

namespace emberpath::plant {

[[nodiscard]] constexpr double safety_switch_break_s(double residual_a, double trips_a) {
    constexpr double contacts_s = 0.010;  // half a period of 50 Hz, until the arc is out
    constexpr double release_s = 0.020;
    if (residual_a <= trips_a) return std::numeric_limits<double>::infinity();
    return contacts_s + release_s / (residual_a / trips_a - 1.0);
}

}  // namespace emberpath::plant
