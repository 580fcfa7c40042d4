#pragma once
/// Choose a job: an index of drawings, and the card of the one picked.

#include "ui/screens/screens.hpp"

namespace emberpath::screens {

struct JobRow {
    std::string id{};        // "tanager"
    std::string title{};     // "Job 1"
    std::string address{};   // "8 Tanager Court"
    std::string gas{};       // "natural gas"
    std::string call_out{};  // what the office wrote down
    std::string last{};      // "not tried", "82, proposed competent", "left after 12 min"
    bool can_resume = false;
    bool can_debrief = false;  // the last attempt is finished, and its debrief is for the trainee
    bool broken = false;       // its file cannot be opened; `call_out` says why
};

struct ChooseView {
    std::vector<JobRow> jobs{};
    std::string selected{};  // id
    bool assessed = false;
    bool author = false;   // there is a preview to go back to
    std::string notice{};  // "Your attempt at Job 3 was kept."; empty: nothing to say
};

/// Id of its list, and how far that is to be scrolled for the chosen house to be seen, two others above it
/// [logical px].
inline constexpr const char* list_of_jobs = "jobs.list";
[[nodiscard]] double scroll_to_selected(const ChooseView& view);

[[nodiscard]] kit::Frame choose_screen(const Setting& setting, const ChooseView& view);

}  // namespace emberpath::screens
