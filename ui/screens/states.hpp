#pragma once
/// Screens for when there is nothing to show yet, or something cannot be done.

#include "ui/screens/screens.hpp"

namespace emberpath::screens {

/// Shown only after 0.3 s; time does not start until it is done.
struct LoadingView {
    std::string title{};  // "Settling the house"
    std::string words{};  // "18 of 30 minutes before you arrive"
    double share = 0.0;   // 0 to 1; below 0: cannot be told, and no ruler pretends to
    bool can_be_stopped = true;
    std::string since{};  // "12 s so far"; empty: not worth saying
};
[[nodiscard]] kit::Frame loading_screen(const Setting& setting, const LoadingView& view);

struct WayOut {
    std::string name{};
    kit::Command command{};
};

/// What cannot be done, where, what would be right, ways out, and what is safe. The focus belongs on the
/// first way out. Never a bare code.
struct ErrorView {
    std::string title{};                // "This job file cannot be opened"
    std::string place{};                // "linnet.toml, line 42"
    std::string line_number{}, line{};  // as written there; empty: no line to show
    std::size_t from = 0, length = 0;   // the wrong part of the line, in characters
    std::string right{};                // "A pressure from 0 to 7 kPa, such as 2.35 kPa."
    std::vector<WayOut> ways{};
    std::string safe{};  // "Nothing was changed. Your other attempts are safe."
};
[[nodiscard]] kit::Frame error_screen(const Setting& setting, const ErrorView& view);

/// The window is smaller than anything can be drawn in.
[[nodiscard]] kit::Frame too_small_screen(const Setting& setting);
inline constexpr kit::Size least_size{480.0, 320.0};  // [logical px]

}  // namespace emberpath::screens
