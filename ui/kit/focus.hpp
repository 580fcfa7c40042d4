#pragma once
/// Where the keyboard is, and where it goes next. Nothing here is a trap: every walk comes round again.

#include <functional>
#include <map>
#include <string>

#include "ui/kit/tree.hpp"

namespace emberpath::kit {

/// Remembers, for each group and region, the thing inside that had the focus last.
using FocusMemory = std::map<std::string, std::string, std::less<>>;

enum class Direction { left, right, up, down };

/// Stops of the Tab key in reading order, within what can be used now. A group with arrow keys in a row or
/// column is one stop: the thing in it that was used last, else the selected one, else the first.
[[nodiscard]] std::vector<std::size_t> tab_stops(const Tree& tree, const FocusMemory& memory);

/// The stop after (or before) the thing in focus; the first one when nothing is in focus.
[[nodiscard]] std::size_t next_stop(const Tree& tree, const FocusMemory& memory,
                                    std::string_view focus, bool backwards);
/// Where the next (or previous) region was left, else its first stop.
[[nodiscard]] std::size_t next_region(const Tree& tree, const FocusMemory& memory,
                                      std::string_view focus, bool backwards);
/// Where an arrow key leads inside the group around the focus; nothing when it leads nowhere.
[[nodiscard]] std::size_t arrow_target(const Tree& tree, std::string_view focus,
                                       Direction direction);
/// First or last thing of the group around the focus.
[[nodiscard]] std::size_t group_end(const Tree& tree, std::string_view focus, bool last);

/// Notes the focus for its group and region.
void remember(const Tree& tree, std::string_view focus, FocusMemory& memory);

}  // namespace emberpath::kit
