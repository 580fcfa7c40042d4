#pragma once
/// The job screen's contents in plain words and trade units.

#include <optional>
#include <string>
#include <vector>

#include "ui/screens/site_view.hpp"

namespace emberpath::screens {

enum class StateMark { on, off, proved, unknown, hazard };

/// A cell of the rail: a service or the trainee, as last found.
struct ServiceCell {
    std::string id{};           // "gas"
    std::string name{};         // "Gas"
    std::string words{};        // "On at meter"
    std::string short_words{};  // for narrow places: "On"
    StateMark mark = StateMark::unknown;
    std::string leads_to{};  // tag of the thing it is about
};

struct RailView {
    std::string job{}, address{};  // "Job 1", "8 Tanager Court"
    std::string mode{};            // "coached" or "assessed"
    std::vector<ServiceCell> cells{};
    bool paused = false;
    bool replay = false;      // time is gone through by acts; nothing runs
    bool time_is_up = false;  // nothing can be done at the house any more
    int speed = 1;            // 1, 5 or 20
    std::string wait{};       // "30 s"
    std::string clock{}, on_site{};
};

/// Something that can be done with the selected thing.
struct ActionView {
    std::string name{};           // "Read now"
    std::string sentence{};       // the act in the trainee's language: "read manometer"
    std::string cost{};           // "10 s"
    std::string needs{};          // "needs the cover off"; empty: can be done now
    std::string command = "act";  // what choosing it asks for, with the sentence
};

struct SelectionView {
    std::string tag{}, name{};  // "P1", "gas pressure at the heater inlet"; empty: nothing selected
    std::vector<ActionView> actions{};
};

struct PanelView {
    std::string word{};       // on the display: "HEAT"; empty: dark
    std::string set_point{};  // "50 °C"
    int balloon = 0;
    bool service_readout_open = false;
};

/// Something the customer said, and what it was the answer to.
struct SaidView {
    std::string asked{};  // "ask about problem"
    std::string words{};
};

struct CardView {
    std::string gas{};             // "natural gas, 90 MJ/h"
    std::string words{};           // the customer's; before they were asked, the office's
    bool spoken = true;            // false: written down by the office
    std::string office{};          // what the office wrote down, whatever came after
    std::vector<SaidView> said{};  // by the customer so far, oldest first
};

/// What the go-to box found for what is typed: a thing, or an act to be done.
struct FoundView {
    std::string tag{};   // "P1"; empty for a part and for an act
    std::string name{};  // "gas pressure at the heater inlet"
    std::string id{};    // unique in the list
    std::string command{}, argument{};
    std::string cost{};  // of an act: "10 s"
};

/// A row on an instrument's glass.
struct GlassRow {
    std::string label{}, digits{}, unit{};
};

struct ToolKey {
    std::string name{};      // "Zero"
    std::string sentence{};  // "zero manometer"
    std::string needs{};
    bool on = false;  // a switch that is on
};

struct ScaleView {  // pointer under the digits
    double low = 0.0, high = 0.0, value = 0.0;
};

struct InstrumentView {
    std::string name{};   // "manometer"
    std::string place{};  // "on P1"; "" when not connected
    std::vector<GlassRow> rows{};
    std::string note{};  // "still moving, 4 s"
    std::vector<ToolKey> keys{};
    bool has_scale = false;
    ScaleView scale{};
};

enum class ToolIcon {
    manometer,
    multimeter,
    voltage_tester,
    analyser,
    thermometer,
    flow_cup,
    scale,
    leak_fluid
};

struct ToolView {
    std::string name{};
    ToolIcon icon = ToolIcon::manometer;
    bool in_hand = false;
    std::string busy{};  // "on P1": in use elsewhere
};

struct BenchView {
    std::vector<ToolView> tools{};
    InstrumentView in_hand{};  // empty name: nothing in hand
    bool only_look = false;    // a replay: nothing can be taken up
};

struct ReadingView {
    int number = 0;
    std::string where{}, value{}, condition{},
        time{};              // "P1", "1.24 kPa", "full rate, hob on", "04:10"
    std::string quantity{};  // "gas pressure at the heater inlet"
    std::string what{};      // in few words, where place and unit do not say it: "oxygen"
};

enum class Belief { held, doubtful, struck };

struct CauseView {
    std::string word{}, title{};
    Belief belief = Belief::held;
    std::vector<int> balloons{};
};

struct TracePoint {
    double minutes_ago = 0.0, value = 0.0;
    bool after_gap = false;  // nothing was seen between the point before and this one
};
struct TraceView {
    std::string label{};  // "38.4 T2", as it stands now; empty: it is not to be seen now
    char ink = 'h';       // h hot, c cold, g gas, p power, f flue, i ink
    std::vector<TracePoint> points{};
    bool set_point = false;  // drawn dashed
};
struct LaneView {
    std::string name{}, unit{};
    double low = 0.0, high = 1.0;
    std::vector<double> ticks{};
    std::vector<TraceView> traces{};  // none: not connected
    double weight = 1.0;              // height against other lanes
};
struct RecorderMark {
    double minutes_ago = 0.0;
    int balloon = 0;  // 0: an event in words
    std::string words{};
};
struct RecorderView {
    double minutes = 8.0;
    std::vector<LaneView> lanes{};
    std::vector<RecorderMark> marks{};
};

struct KeyHint {
    std::string command{}, words{};
};

enum class SheetShown { house, heater };

/// Where a replay stands among the acts of the visit.
struct ReplayView {
    std::string where{};                           // "Act 9 of 16"
    std::string title{};                           // what was done: "Read manometer"
    bool before = false, after = false;            // there is an act before, after
    bool mark_before = false, mark_after = false;  // and a marked one
};

struct JobView {
    RailView rail{};
    SiteView site{};
    SheetShown sheet = SheetShown::house;
    Camera camera{};
    bool whole = false;           // however small it comes out: nobody works on it
    std::string selected{};       // tag of the selected point or part
    bool selected_first = false;  // it is to be seen, wherever the focus is
    SelectionView selection{};
    PanelView panel{};
    CardView card{};
    BenchView bench{};
    std::vector<ReadingView> readings{};  // newest first
    std::string record_refusal{};         // "still moving, 4 s"; empty: a reading can be recorded
    std::vector<CauseView> causes{};
    RecorderView recorder{};
    std::string status_time{}, status{};
    std::vector<FoundView> found{};        // for the go-to box
    std::string notice_title{}, notice{};  // a plate in front until it is read
    std::string compact_tab = "sheet";     // which region the compact layout shows
    bool reduce_motion = false;
    std::optional<ReplayView> replay{};  // the house is only looked at
    bool sample = false;                 // invented figures: said on the sheet
};

}  // namespace emberpath::screens
