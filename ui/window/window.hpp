#pragma once
/// The program's window: events in, frames out, and the system's clipboard.

#include <memory>
#include <string>
#include <vector>

#include "ui/kit/interaction.hpp"
#include "ui/kit/typeface.hpp"

namespace emberpath::window {

/// How a frame is shown: theme, and window pixels to a logical pixel.
struct View {
    kit::Theme theme = kit::Theme::day;
    double scale = 1.0;
};

class Window {
  public:
    /// Ask why_no_display() first: without a display this ends the process.
    Window(const std::string& title, kit::Size pixels, const kit::Typeface& typeface);
    ~Window();
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;

    [[nodiscard]] bool is_open() const;
    void close();
    void set_title(const std::string& utf8);
    /// [window px]
    [[nodiscard]] kit::Size pixels() const;
    /// What happened since the last call, in order; positions in logical pixels.
    [[nodiscard]] std::vector<kit::Event> events(double scale);
    /// Key repeat is for text and lists.
    void repeat_keys(bool on);
    void show(const kit::Frame& frame, const View& view);
    [[nodiscard]] kit::Clipboard& clipboard();
    /// What stands in the window now, into a PNG file. False when the file cannot be written.
    [[nodiscard]] bool save_picture(const std::string& file) const;
    /// Of the whole desktop [px].
    [[nodiscard]] static kit::Size desktop();

  private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

/// First guess of the text scale on a desktop of that size, until the person chooses: 1, 1.25, 1.5, 1.75 or 2.
[[nodiscard]] double suggested_scale(kit::Size desktop);
/// The window at first [px]: 1280 x 800 logical pixels, or the whole desktop where it is smaller.
[[nodiscard]] kit::Size first_size(kit::Size desktop, double scale);

}  // namespace emberpath::window
