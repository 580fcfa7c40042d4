#pragma once
/// What a job must show before it is fit to be scored by. The release check asks it, and an assessor's label.

#include <string>

#include "sim/worksite/job.hpp"

namespace emberpath::scoring {

inline constexpr double likely_enough_for_release = 0.8;  // probability of the true cause
inline constexpr double share_of_houses = 0.95;     // other houses in which it must be so likely
inline constexpr int least_houses_of_a_table = 20;  // in fewer, 95 % cannot be told
/// C, minutes of the reference path: less leaves nothing to choose, more is no visit.
inline constexpr double shortest_reference_minutes = 10.0, longest_reference_minutes = 60.0;

/// Did enough of the other houses show the cause?
[[nodiscard]] inline bool enough_houses(int shown, int houses) {
    return shown >= share_of_houses * houses;
}
/// Why a job that was checked is not fit to be scored by; empty where it is, and where nobody checked.
[[nodiscard]] std::string why_not_fit(const worksite::ReleaseCheck& check);

}  // namespace emberpath::scoring
