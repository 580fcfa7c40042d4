#pragma once
/// Lanes of a recorder over a common time.

#include "ui/kit/widgets.hpp"
#include "ui/screens/job_view.hpp"

namespace emberpath::screens {

/// How lanes stand on a screen.
struct LaneLook {
    const char* id = "recorder";  // the lanes' things are "recorder.Fan"
    bool from_start = false;      // minutes count from the left end; else back from now
    bool focusable = false;
    /// Of another house, by lane: dotted, behind the traces; its labels stand in the traces' own.
    std::span<const std::vector<TraceView>> beside{};
};

/// Over the whole area; events stand above it (16 px), minutes below (18 px).
void draw_lanes(kit::Stage& stage, const kit::Rect& area, const RecorderView& recorder,
                const LaneLook& look = {});

}  // namespace emberpath::screens
