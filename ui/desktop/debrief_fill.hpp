#pragma once
/// Fills the debrief screen from a finished, weighed attempt.

#include "sim/records/debrief.hpp"
#include "ui/screens/debrief_screen.hpp"

namespace emberpath::desktop {

/// `record` is closed; `assessment` is what records::assess() made of it. Step i of the view is act i.
[[nodiscard]] screens::DebriefView debrief_view(const records::Record& record,
                                                const worksite::Job& job,
                                                const scoring::Assessment& assessment);

}  // namespace emberpath::desktop
