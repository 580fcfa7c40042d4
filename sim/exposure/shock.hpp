#pragma once
/// Current through a body. A teaching aid: no current through a person is safe.
/// Checked   tests/reference/exposure_reference_test.cpp

namespace emberpath::exposure {

/// Impedance of a body from hand to hand, dry skin, large contact area, 50 Hz [ohm].
///
/// Source    [iec60479] table 1, values at 100 V and 225 V from memory; straight between them and level beyond
/// `share`   of people who have no more than this: 5, 50 or 95 %; the nearest of the three is taken
[[nodiscard]] double body_impedance_ohm(double touch_v, double share);

/// Current [A] that a voltage drives through a body and what else lies in its path. Ohm's law.
[[nodiscard]] double touch_current_a(double touch_v, double body_ohm, double path_ohm);

/// What a current from hand to feet does, by the thresholds of [iec60479]: perception 0.5 mA (read in a public
/// reproduction), letting go 10 mA and fibrillation 40 mA for three seconds (classic values, from memory).
inline constexpr double felt_a = 0.5e-3, holds_a = 10.0e-3, stops_a = 40.0e-3;
enum class Effect { nothing_felt, felt, cannot_let_go, heart_may_stop };
[[nodiscard]] Effect effect_of(double current_a);

}  // namespace emberpath::exposure
