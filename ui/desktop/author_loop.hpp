#pragma once
/// The control loop of an author's job as time series: the heater alone, with its fault beside the sound one.

#include "sim/worksite/job.hpp"
#include "ui/screens/author.hpp"

namespace emberpath::desktop {

/// From a cold heater at rest: the widest tap a little open, then fully. Simulates three minutes twice, always
/// to the same figures; pressures in kPa. No lanes where the house has no tap.
[[nodiscard]] screens::LoopView loop_of(worksite::Job job);

}  // namespace emberpath::desktop
