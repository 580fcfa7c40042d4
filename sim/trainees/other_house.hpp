#pragma once
/// The same job in another house: what its author left to chance falls out differently there.
///
/// Each resistance, conductance, injector, gain and pressure of the heater and its supply is multiplied by
/// its own 1 + 0.01 n, n standard normal and cut at 2.5: the one per cent by which scoring takes houses to
/// differ (scoring/likelihood.hpp, draw_spread_share). Graded faults stand anywhere from .9 to 1.1 of the job's
/// severity, within their symptomatic range, and so beside the severities of the shadows. Both chosen. What
/// anybody can see of the site (gas, outlets, weather, household, water pressure) stays.
/// Checked   tests/unit/trainees/other_house_test.cpp

#include <cstdint>

#include "sim/worksite/job.hpp"

namespace emberpath::trainees {

inline constexpr double house_spread = 0.01;
inline constexpr double severity_spread = 0.1;

/// From where to where another house's fault may lie, without its sign.
struct SeverityRange {
    double low = 0.0, high = 0.0;
};
[[nodiscard]] SeverityRange severity_range(const faults::Fault& fault);
/// The same number gives the same house.
[[nodiscard]] worksite::Job other_house(worksite::Job job, std::uint64_t number);

}  // namespace emberpath::trainees
