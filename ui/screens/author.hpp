#pragma once
/// The author's preview of a job: where the fault sits, what it does to every reading beside the sound
/// house, and whether the job can be solved.

#include "ui/screens/job_view.hpp"
#include "ui/screens/screens.hpp"

namespace emberpath::screens {

struct PreviewColumn {
    std::string condition{};  // "full draw"
};
struct PreviewCell {
    std::string faulty{}, sound{};
    bool changed = false;
};
struct PreviewLine {
    std::string tag{}, title{};
    std::vector<PreviewCell> cells{};
};

struct CheckView {
    std::string title{}, words{};
    bool good = true;
    bool asks = false;  // nothing was found out: it says how to
};

/// How many readings tell two causes apart at least; 0: none found.
struct PairView {
    int readings = 0;
    std::string only_at{};  // "P3", or the reading: only there; empty: anywhere
};

/// The heater alone over a light-up and a full draw, with its fault and without.
struct LoopView {
    RecorderView traces{};                        // lanes with the fault; none: not worked out
    std::vector<std::vector<TraceView>> sound{};  // of the sound house, by lane
    std::string words{};                          // "kitchen tap: light-up, then full draw"
};

struct AuthorView {
    std::string title{}, file{};  // "Job 7", "sorrel.toml, line 3"
    std::string tab = "fault";    // compact only: "brief", "house", "fault", "check"
    std::vector<std::pair<std::string, std::string>> facts{};  // of the tab: name and value
    std::vector<std::string> quirks{};                         // what stands out beside the fault
    std::string customer{};
    JobView house{};            // for the drawing
    std::string fault_tag{};    // point or part where the fault sits
    std::string fault_words{};  // "set right here: gas pipe too small"
    std::vector<PreviewColumn> columns{};
    std::vector<PreviewLine> lines{};
    LoopView loop{};
    std::string shown = "readings";  // beside the drawing: "readings" or "loop"
    std::vector<CheckView> checks{};
    double simulated = -1.0;  // share of the work on every other cause; below 0: none under way
    std::vector<std::string> causes{};           // titles, for the pairs
    std::vector<std::vector<PairView>> pairs{};  // row i against the causes before it
    std::vector<std::string> safe_path{};        // readings, in order; empty: not worked out
    std::string status{};
};

[[nodiscard]] kit::Frame author_screen(const Setting& setting, const AuthorView& view);

}  // namespace emberpath::screens
