#pragma once
/// What a job must show before it is fit to be scored by. The release check asks it, and an assessor's label.

namespace emberpath::scoring {

inline constexpr double likely_enough_for_release = 0.8;  // probability of the true cause
/// C, minutes of the reference path: less leaves nothing to choose, more is no visit.
inline constexpr double shortest_reference_minutes = 10.0, longest_reference_minutes = 60.0;

}  // namespace emberpath::scoring
