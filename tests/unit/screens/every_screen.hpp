#pragma once
/// Every screen in every state with invented figures, at every size people use.

#include <functional>
#include <string>
#include <vector>

#include "ui/kit/typeface.hpp"
#include "ui/screens/sample_screens.hpp"

namespace emberpath::screens {

struct Window {
    double width, height;  // [window px]
    double scale;
    [[nodiscard]] kit::Size logical() const { return {width / scale, height / scale}; }
};

/// 1280x800 and 1920x1080 at every text scale, and two small windows.
[[nodiscard]] inline std::vector<Window> every_window() {
    std::vector<Window> windows{{800.0, 450.0, 1.0}, {640.0, 400.0, 1.0}};
    for (const double scale : {1.0, 1.25, 1.5, 1.75, 2.0})
        for (const auto& [w, h] : {std::pair{1280.0, 800.0}, std::pair{1920.0, 1080.0}})
            windows.push_back({w, h, scale});
    return windows;
}

inline const kit::Typeface& typeface() {
    static const kit::Typeface one(kit::find_fonts());
    return one;
}

inline const kit::KeyMap& keys() {
    static const kit::KeyMap map(key_table());
    return map;
}

[[nodiscard]] inline kit::Frame draw(const NamedScreen& screen, const Window& window,
                                     const kit::State& state = {}) {
    return screen.draw({typeface(), state, keys(), window.logical()});
}

[[nodiscard]] inline std::string where(const NamedScreen& screen, const Window& window) {
    return screen.name + " at " + std::to_string(static_cast<int>(window.width)) + "x" +
           std::to_string(static_cast<int>(window.height)) + ", " +
           std::to_string(static_cast<int>(window.scale * 100.0)) + " %";
}

/// Problems of one check over all screens and windows, each with its place.
[[nodiscard]] inline std::vector<std::string> problems_of(
    const std::function<std::vector<std::string>(const kit::Frame&)>& check) {
    std::vector<std::string> found;
    for (const NamedScreen& screen : sample_screens())
        for (const Window& window : every_window())
            for (const std::string& problem : check(draw(screen, window)))
                found.push_back(where(screen, window) + ": " + problem);
    return found;
}

}  // namespace emberpath::screens
