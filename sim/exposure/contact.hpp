#pragma once
/// Bare hands on hot metal. A teaching aid; children and old people burn sooner.
/// Checked   tests/unit/exposure/contact_test.cpp

namespace emberpath::exposure {

/// Time on bare metal of one temperature until skin is burnt [s].
///
/// Equation  logarithm of the time, straight between the table's points; beyond its ends the slope of the last
///           pair goes on
/// Source    [iso13732-1] bare metal, lower edge of the burn threshold: 1 s, 10 s, 1 min; from memory
/// Range     45 to 100 degC
[[nodiscard]] double time_to_contact_burn_s(double metal_k);

/// Share of a burn that a touch adds: 1 is a burn.
[[nodiscard]] double contact_burn_share(double metal_k, double seconds);

/// How long a hand stays on what hurts, before it is drawn back [s]: chosen.
inline constexpr double drawn_back_after_s = 0.5;

}  // namespace emberpath::exposure
