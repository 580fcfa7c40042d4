#pragma once
/// The job on a small screen or with large text: one region at a time under tabs, the main actions and
/// their keys in a bar at the foot.

#include "ui/kit/stage.hpp"
#include "ui/screens/job_view.hpp"

namespace emberpath::screens {

void draw_compact_job(kit::Stage& stage, const JobView& job);

}  // namespace emberpath::screens
