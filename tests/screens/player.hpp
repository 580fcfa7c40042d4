#pragma once
/// The window's program on the shipped jobs, with its real host but without a window: somebody who plays a
/// script of acts by keys, and every screen that comes of it. Wall time never passes by itself, so the same
/// script always gives the same screens.

#include <filesystem>
#include <memory>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "ui/app/context.hpp"
#include "ui/app/window_host.hpp"
#include "ui/desktop/program.hpp"
#include "ui/kit/typeface.hpp"

namespace emberpath {

class Player {
  public:
    /// `root`: folder of the sources. `author`: a job to preview; empty when a trainee plays.
    explicit Player(const std::filesystem::path& root, const std::string& author = {},
                    const desktop::Preferences& preferences = {});
    /// The house settles to that share of the minutes before the arrival, and never any further.
    Player(const std::filesystem::path& root, double settles_to);
    ~Player();
    Player(const Player&) = delete;
    Player& operator=(const Player&) = delete;

    /// Throws std::runtime_error when a step does not lead where it should.
    void enter(const std::string& job, bool assessed = false);
    /// Says an act in the box of "/"; throws when it was refused.
    void say(const std::string& sentence);
    /// What comes in front of the house, such as a remark on safety, is read and put away.
    void put_away();
    void press(kit::Key key, kit::Modifiers modifiers = {});
    void type(std::string_view text);
    void click(std::string_view id);
    /// Until work on the worker is done.
    void wait_for(desktop::Place place);

    [[nodiscard]] kit::Frame frame(kit::Size size) { return program_->frame(size); }
    [[nodiscard]] desktop::Program& program() { return *program_; }
    static const kit::Typeface& typeface();

  private:
    struct Clip final : kit::Clipboard {
        [[nodiscard]] std::string get() const override { return text; }
        void set(std::string_view utf8) override { text = utf8; }
        std::string text;
    };
    void look();
    void feed(const kit::Event& event);

    std::filesystem::path folder_;
    std::istringstream in_;
    std::ostringstream out_, err_;
    app::Context context_;
    std::unique_ptr<app::WindowHost> host_;
    Clip clipboard_;
    std::unique_ptr<desktop::Program> program_;
};

/// The sentences of a script that was kept beside the tests: "sorrel.good".
[[nodiscard]] std::vector<std::string> script_of(const std::filesystem::path& root,
                                                 const std::string& name);
/// Words of the shipped jobs.
[[nodiscard]] std::vector<std::string> shipped_jobs(const std::filesystem::path& root);

}  // namespace emberpath
