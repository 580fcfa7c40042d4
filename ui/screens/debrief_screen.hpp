#pragma once
/// After the attempt: what came of it, what each step was worth, and what the same readings would have been
/// where another remedy is due.

#include "ui/screens/screens.hpp"

namespace emberpath::screens {

struct AreaView {
    std::string name{};    // "Safe work"
    double share = 0.0;    // of all that could be had, 0 to 1
    std::string figure{};  // "12 of 25"
    std::string reason{};  // one sentence
    bool below_floor = false;
};

struct StepView {
    double minute = 0.0;
    std::string title{};   // "P1, full rate, cooktop off"
    std::string detail{};  // "2.31 kPa, 1.5 bits"
    double bits = 0.0;
    int balloon = 0;  // 0: no numbered reading
    bool cited = true;
    bool unsafe = false;
};

/// How many remedies were left from this minute on.
struct LeftView {
    double minute = 0.0;
    int by_evidence = 0;  // the evidence still allowed
    int held = 0;         // the trainee still held
};

/// How likely the leading causes were from this minute on.
struct StandView {
    double minute = 0.0;
    std::size_t steps = 0;               // done by then; 0 on arrival
    std::vector<double> shares{};        // one for each of `likely`, 0 to 1
    std::vector<std::string> figures{};  // the same: "97 %"
};

struct SpanView {
    double from = 0.0, to = 0.0;  // minutes
    std::string words{};          // "off, proved"
};
struct ServiceLane {
    std::string name{}, rest{};  // "Gas", "on"
    char ink = 'i';
    std::vector<SpanView> spans{};
};

struct ComparedCell {
    std::string predicted{};
    bool ruled_out = false;
};
struct ComparedRow {
    int balloon = 0;
    std::string where{}, condition{}, yours{};
    std::vector<ComparedCell> cells{};  // one for each column
};

/// What else a debrief says, in paragraphs under a heading.
struct SectionView {
    std::string heading{};
    std::vector<std::string> lines{};
};

struct DebriefView {
    std::string job{};
    std::string outcome{}, outcome_detail{};  // "Cause found and proved"
    bool outcome_good = false;
    std::string unsafe{}, unsafe_detail{};  // "1 unsafe step"; empty: none
    std::string score{}, of{};              // "74", "of 100"
    std::string floor{}, verdict{};         // "Safe work must reach 20", "Not a pass yet"
    bool passed = false;
    std::vector<AreaView> areas{};
    std::vector<SectionView> sections{};  // below the areas, in this order
    double minutes = 0.0;
    std::vector<StepView> steps{};
    std::size_t step = 0;  // selected
    int causes = 0;        // remedies that could be due at the start
    std::vector<LeftView> left{};
    std::vector<std::string>
        likely{};                     // causes: that of this house first, all others together last
    std::vector<StandView> stands{};  // on arrival first; empty where nothing was weighed
    bool causes_shown = true;         // else how many remedies were left
    std::vector<ServiceLane> services{};
    std::vector<SpanView> hazards{};
    std::vector<std::string> columns{};  // remedies: each stands for all causes it sets right
    std::size_t true_column = 0;
    std::size_t first_column = 0;  // where not all fit: the first one shown beside the true one
    std::vector<ComparedRow> rows{};
    std::string status{};
    std::string compact_tab = "outcome";  // "outcome", "steps" or "table"
};

[[nodiscard]] kit::Frame debrief_screen(const Setting& setting, const DebriefView& view);

/// The chart holds the causes: they are asked for, and something was weighed.
[[nodiscard]] bool charts_causes(const DebriefView& view);

/// The nearest marked step after the chosen one, or before it: a reading or an unsafe act. The chosen one
/// when there is none.
[[nodiscard]] std::size_t marked_step(const DebriefView& view, bool after);

/// The step nearest to a point of the chart in a frame of this screen.
[[nodiscard]] std::size_t step_near(const kit::Frame& frame, const DebriefView& view,
                                    kit::Point at);

}  // namespace emberpath::screens
