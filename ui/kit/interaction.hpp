#pragma once
/// What events do: they move the focus, edit text, scroll, and ask the program for things. No drawing.

#include <vector>

#include "ui/kit/stage.hpp"

namespace emberpath::kit {

struct Services {
    const TextMetrics& metrics;
    const KeyMap& keys;
    Clipboard& clipboard;
};

// Commands that come from here, besides those of nodes and of the key map:
//   "edited" ID         the text of a field changed
//   "not now" HINT      something was asked for that needs something else first
//   "drop" WHAT>ID      something was dragged onto a thing
//   "pan" X Y           a drawing is shifted by so much [logical px]: dragged, or by a key of "pan left",
//                       "pan right", "pan up", "pan down"
//   "wheel" +1 or -1    the wheel turned where nothing scrolls
//   "close window"
/// Changes the state and returns what the program is asked for, in order.
[[nodiscard]] std::vector<Command> handle(const Event& event, const Frame& frame,
                                          const Services& services, State& state);

/// After a new frame: a thing in front takes the focus, and gives it back to where it was; a focus on
/// something that is gone moves to the nearest thing of its region.
void settle(const Frame& frame, State& state);

/// Key repeat helps in text and hurts elsewhere.
[[nodiscard]] bool wants_key_repeat(const Frame& frame, const State& state);

/// Puts the focus on a thing and scrolls it into view.
void focus_on(const Tree& tree, std::size_t index, State& state);

}  // namespace emberpath::kit
