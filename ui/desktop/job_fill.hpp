#pragma once
/// Fills the job screen from what was shown and what can be seen standing there: the log, the sight, the
/// job card and the list of suspects. Nothing else of an attempt comes in here.

#include <vector>

#include "ui/desktop/preferences.hpp"
#include "ui/desktop/things.hpp"
#include "ui/screens/job_view.hpp"
#include "ui/views/visit.hpp"

namespace emberpath::desktop {

/// All that may be shown of an attempt.
struct Known {
    const views::JobCard& card;
    const std::vector<views::Suspect>& suspects;
    const std::vector<worksite::LogEntry>& log;
    const worksite::Sight& sight;
    const std::deque<worksite::TrailPoint>& trail;
    std::int64_t tick = 0;
    double seconds_on_site = 0.0;
    const Preferences& preferences;
    const std::vector<Thing>& things;
    const std::vector<Offer>& offers;
};

/// A numbered reading with the thing it was taken at.
struct TakenReading {
    screens::ReadingView view;
    std::size_t thing = 0;  // things.size(): none
    std::int64_t tick = 0;
};
[[nodiscard]] std::vector<TakenReading> readings_of(const Known& known);  // oldest first

[[nodiscard]] std::vector<screens::ServiceCell> cells_of(const Known& known);
[[nodiscard]] screens::SiteView site_view_of(const Known& known,
                                             const std::vector<TakenReading>& readings);
[[nodiscard]] screens::CardView card_of(const Known& known);
[[nodiscard]] screens::PanelView panel_of(const Known& known,
                                          const std::vector<TakenReading>& readings);
[[nodiscard]] std::vector<screens::CauseView> causes_of(const Known& known);
[[nodiscard]] screens::RecorderView recorder_of(const Known& known,
                                                const std::vector<TakenReading>& readings);

/// The belt: what each tool is called, and the sentence that takes its reading at a thing.
struct Tool {
    const char* name;
    screens::ToolIcon icon;
};
[[nodiscard]] const std::vector<Tool>& belt();
/// `in_hand`: index into the belt, or its size for empty hands.
[[nodiscard]] screens::BenchView bench_of(const Known& known, std::size_t in_hand);
/// What the record key says with that tool in hand and that thing selected; empty: nothing fits.
[[nodiscard]] std::string recording_sentence(const Known& known, std::size_t in_hand,
                                             std::string_view selected);
/// "still moving, 4 s" while the figures on a tool's glass have not settled; empty when they have.
[[nodiscard]] std::string movement_of(const Known& known, std::size_t tool);
/// The thing a connected tool is at; empty when it is not connected.
[[nodiscard]] std::string tool_is_at(const Known& known, std::size_t tool);

/// "Water runs at the bath tap." out of the lines an act showed; gas pressures in the wished unit.
[[nodiscard]] std::string status_of(const worksite::LogEntry& entry, const Known& known);

}  // namespace emberpath::desktop
