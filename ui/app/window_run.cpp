#include "ui/app/window_run.hpp"

#include <chrono>
#include <cstdlib>
#include <fstream>
#include <ostream>
#include <thread>

#include "ui/app/program_log.hpp"
#include "ui/app/window_host.hpp"
#include "ui/desktop/program.hpp"
#include "ui/window/display.hpp"
#include "ui/window/sound.hpp"
#include "ui/window/window.hpp"

namespace emberpath::app {

namespace {

using Clock = std::chrono::steady_clock;

constexpr double frame_s = 0.05;  // twenty pictures a second while something moves
constexpr auto nap = std::chrono::milliseconds(8);

double seconds_between(Clock::time_point from, Clock::time_point to) {
    return std::chrono::duration<double>(to - from).count();
}

/// What is on the screen as text, for programs that read it aloud: into the file that the environment names.
class ScreenText {
  public:
    ScreenText() {
        if (const char* file = std::getenv("EMBERPATH_SCREEN_TEXT")) file_ = file;
    }
    void show(const kit::Tree& tree, const std::string& focus) {
        if (file_.empty()) return;
        std::string text = tree.as_text(focus);
        if (text == text_) return;
        text_ = std::move(text);
        const std::string fresh = file_ + ".new";
        std::ofstream(fresh, std::ios::binary | std::ios::trunc) << text_;
        std::error_code ignored;
        std::filesystem::rename(fresh, file_, ignored);
    }

  private:
    std::string file_, text_;
};

/// Paints when something happened or moves; sleeps otherwise.
void run_until_closed(window::Window& window, desktop::Program& program) {
    window::Sound sound;
    ScreenText screen_text;
    auto before = Clock::now();
    double since_picture_s = frame_s;
    bool dirty = true;
    while (window.is_open() && !program.closed()) {
        const auto now = Clock::now();
        const double wall_s = seconds_between(before, now);
        before = now;
        for (const auto& event : window.events(program.scale())) {
            program.event(event);
            const kit::Size px = window.pixels();
            (void)program.frame({px.w / program.scale(), px.h / program.scale()});
            dirty = true;
        }
        const bool moved = program.moves();
        program.elapse(wall_s);
        since_picture_s += wall_s;
        sound.hear(program.heard());
        const bool moves = program.moves();
        if (moved && !moves)
            dirty = true;  // what it came to is shown, however soon after a picture
        if (dirty || (moves && since_picture_s >= frame_s)) {
            const kit::Size px = window.pixels();
            const double scale = program.scale();
            const auto theme = program.preferences().night ? kit::Theme::night : kit::Theme::day;
            window.show(program.frame({px.w / scale, px.h / scale}), {theme, scale});
            screen_text.show(program.last_frame().tree, program.focus());
            window.repeat_keys(program.wants_key_repeat());
            since_picture_s = 0.0;
            dirty = false;
        }
        std::this_thread::sleep_for(nap);
    }
    window.close();
}

}  // namespace

std::string why_no_window() {
    return window::why_no_display();
}

Status author(Context& context, const std::string& job) {
    (void)find_job(context, job);  // a slip is answered before a window opens
    if (const std::string why = why_no_window(); !why.empty())
        throw BadInput(why + " emberpath preview JOB prints the readings.");
    return run_window(context, job);
}

Status run_window(Context& context, const std::filesystem::path& author_file) {
    WindowHost host(context, author_file);
    auto preferences = host.preferences();
    const kit::Size desktop = window::Window::desktop();
    if (preferences.text_percent == 0)
        preferences.text_percent = static_cast<int>(window::suggested_scale(desktop) * 100.0 + 0.5);
    const kit::Typeface typeface(kit::find_fonts());
    window::Window window("Emberpath",
                          window::first_size(desktop, preferences.text_percent / 100.0), typeface);
    desktop::Program program(host, typeface, window.clipboard(), preferences, !author_file.empty());
    log_event("window opened");
    run_until_closed(window, program);
    log_event("window closed");
    return Status::done;
}

}  // namespace emberpath::app
