#pragma once
/// Every screen as a pure function: what is to be shown, and what the person did to the screen, give a frame.

#include "ui/kit/stage.hpp"
#include "ui/screens/job_view.hpp"

namespace emberpath::screens {

struct Question;

/// What every screen needs besides its view.
struct Setting {
    const kit::TextMetrics& metrics;
    const kit::State& state;
    const kit::KeyMap& keys;
    kit::Size size;                      // logical pixels: window pixels divided by the text scale
    bool help = false;                   // all keys of the place, in front
    const Question* question = nullptr;  // to be answered, in front of all
};

/// The keys of all screens.
[[nodiscard]] const std::vector<kit::Binding>& key_table();
/// The same as a table of docs/window.md.
[[nodiscard]] std::string key_page();

/// A layer in front of a screen.
enum class InFront { nothing, keys, go_to, waits, job_card, notice };

[[nodiscard]] kit::Frame job_screen(const Setting& setting, const JobView& job,
                                    InFront front = InFront::nothing);

}  // namespace emberpath::screens
