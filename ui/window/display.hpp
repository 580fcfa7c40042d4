#pragma once
/// Whether there is a display to open a window on. Asked first, because without one the graphics library
/// ends the whole process.

#include <string>

namespace emberpath::window {

/// Empty when a window can be opened, else why not, as a sentence.
[[nodiscard]] std::string why_no_display();
/// The same for a given value of DISPLAY; null when it is not set.
[[nodiscard]] std::string why_no_display(const char* display);

}  // namespace emberpath::window
