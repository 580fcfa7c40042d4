// Paints the pictures of the manual from shipped jobs, worked by the scripts beside the tests:
//   emberpath_job_pictures SOURCES FOLDER [NAME...]

#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <thread>
#include <vector>

#include "tests/screens/player.hpp"
#include "ui/window/display.hpp"
#include "ui/window/presenter.hpp"

namespace emberpath {
namespace {

namespace fs = std::filesystem;
using desktop::Place;

constexpr kit::Size usual{1280.0, 800.0};

struct Studio {
    fs::path root, folder;
    std::vector<std::string> names;  // empty: all
    window::Presenter presenter{Player::typeface()};

    [[nodiscard]] bool wants(const std::string& name) const {
        return names.empty() || std::find(names.begin(), names.end(), name) != names.end();
    }
    void take(Player& player, const std::string& name, kit::Size pixels = usual,
              double scale = 1.0) {
        if (!wants(name)) return;
        const auto theme =
            player.program().preferences().night ? kit::Theme::night : kit::Theme::day;
        const kit::Frame frame = player.frame({pixels.w / scale, pixels.h / scale});
        const fs::path file = folder / (name + ".png");
        if (!window::picture_of(presenter, frame, {theme, scale}).saveToFile(file.string()))
            throw std::runtime_error("cannot be written: " + file.string());
        std::printf("%s\n", file.c_str());
    }
};

/// Acts of a script up to one that begins so (not included); returns those that are left.
std::vector<std::string> play_until(Player& player, std::vector<std::string> script,
                                    std::string_view begin) {
    auto next = script.begin();
    for (; next != script.end() && !next->starts_with(begin); ++next) player.say(*next);
    return {next, script.end()};
}

void list_and_settings(Studio& studio) {
    Player player(studio.root);
    studio.take(player, "list");
    player.press(kit::Key::f10);
    studio.take(player, "settings");
}

void write_up(Studio& studio, Player& player) {
    player.press(kit::Key::f2);
    player.click("form.cause");
    studio.take(player, "cause-choice");
    player.press(kit::Key::escape);
    player.click("form.because");
    player.type("At rest the heater sees 1.95 kPa #4, with the bath running 0.66 kPa #5. At the ");
    player.type("regulator it holds 1.86 kPa #6, so the loss is in the pipe between them.");
    for (const char* field : {"form.done.fill", "form.proved.fill", "form.told.fill"})
        if (player.program().last_frame().tree.get(field) != nullptr) player.click(field);
}

/// What can stand in front of the house, and time that stands still.
void in_front_of_the_house(Studio& studio, Player& player) {
    player.type("W");
    studio.take(player, "waits");
    player.press(kit::Key::escape);
    player.type("h");
    studio.take(player, "job-card");
    player.press(kit::Key::escape);
    player.press(kit::Key::f1);
    studio.take(player, "help");
    player.press(kit::Key::escape);
    player.type("p");
    studio.take(player, "paused");
    player.type("p");
}

/// The demo job: a pipe too small, found with the manometer.
void bath_that_is_never_hot(Studio& studio) {
    Player player(studio.root);
    player.enter("sorrel");
    studio.take(player, "arrival");
    auto rest = play_until(player, script_of(studio.root, "sorrel.good"), "close bath tap");
    player.say(rest.front());
    rest.erase(rest.begin());
    rest = play_until(player, rest, "close bath tap");  // the bath runs, the manometer hangs at P1
    player.type("/P1");
    player.press(kit::Key::enter);
    player.type("t1");
    for (int i = 0; i < 20; ++i) player.program().elapse(0.05);
    studio.take(player, "job");
    studio.take(player, "wide", {1920.0, 1080.0});
    in_front_of_the_house(studio, player);
    player.type("/manometer");
    studio.take(player, "go-to");
    player.press(kit::Key::escape);
    rest = play_until(player, rest, "write because");
    write_up(studio, player);
    studio.take(player, "write-up");
    player.press(kit::Key::f2);
    for (const auto& sentence : rest) player.say(sentence);
    player.wait_for(Place::debrief);
    studio.take(player, "debrief");
    player.type("r");
    player.wait_for(Place::replay);
    studio.take(player, "replay");
}

/// Inside the heater, at 200 % and by night.
void heater_from_inside(Studio& studio) {
    desktop::Preferences night;
    night.night = true;
    Player player(studio.root, "", night);
    player.enter("tanager");
    (void)play_until(player, script_of(studio.root, "tanager.good"), "read multimeter");
    player.type("z");
    studio.take(player, "heater-night");
    player.type("z");
    studio.take(player, "compact-night", {1920.0, 1080.0}, 2.0);
}

/// A copy of the shipped scenarios in which some text of a file was changed.
struct Changed {
    fs::path root = fs::temp_directory_path() / ("emberpath-pictures-" + std::to_string(getpid()));

    Changed(const fs::path& sources, const std::string& job, const std::string& from,
            const std::string& to) {
        fs::create_directories(root);
        fs::copy(sources / "scenarios", root / "scenarios", fs::copy_options::recursive);
        const fs::path file = root / "scenarios/jobs" / (job + ".toml");
        std::ostringstream text;
        text << std::ifstream(file).rdbuf();
        std::string changed = text.str();
        const auto at = changed.find(from);
        if (at == std::string::npos) throw std::runtime_error("not in " + file.string());
        std::ofstream(file) << changed.replace(at, from.size(), to);
    }
    ~Changed() {
        std::error_code ignored;
        fs::remove_all(root, ignored);
    }
    Changed(const Changed&) = delete;
    Changed& operator=(const Changed&) = delete;
};

void loading(Studio& studio) {
    constexpr double share = 0.45;
    Player player(studio.root, share);
    player.click("start.go");
    player.program().elapse(0.35);  // longer than people wait before they wonder
    const auto ruler = [&] {
        const auto frame = player.frame(usual);
        const kit::Node* node = frame.tree.get("loading.progress");
        return node == nullptr ? std::string() : node->value;
    };
    for (int i = 0; i < 60000 && !ruler().starts_with("45"); ++i)
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    if (!ruler().starts_with("45")) throw std::runtime_error("it did not load");
    studio.take(player, "loading");
}

void error(Studio& studio) {
    const Changed one(studio.root, "tanager", "\"50 °C\"", "50");
    Player player(one.root);
    player.click("jobs.tanager");
    player.click("start.go");
    player.wait_for(Place::error);
    studio.take(player, "error");
}

void time_up(Studio& studio) {
    const Changed one(studio.root, "tanager",
                      "call_out =", "time_allowed = \"20 min\"\ncall_out =");
    Player player(one.root);
    player.enter("tanager", true);
    player.say("look at display");
    player.say("wait 10 min");
    player.say("wait 10 min");
    studio.take(player, "time-up");
}

void author(Studio& studio) {
    Player player(studio.root, "sorrel");
    for (int i = 0;
         i < 600000 && player.program().last_frame().tree.get("checks.path.1") == nullptr; ++i) {
        player.program().elapse(0.0);
        (void)player.frame(usual);
    }
    studio.take(player, "author");
    player.click("preview.switch");
    studio.take(player, "author-loop");
}

}  // namespace
}  // namespace emberpath

int main(int argc, char** argv) {
    using namespace emberpath;
    if (argc < 3) {
        std::fputs("usage: emberpath_job_pictures SOURCES FOLDER [NAME...]\n", stderr);
        return 2;
    }
    if (const std::string why = window::why_no_display(); !why.empty()) {
        std::fprintf(stderr, "%s\n", why.c_str());
        return 2;
    }
    try {
        Studio studio{argv[1], argv[2], {argv + 3, argv + argc}};
        fs::create_directories(studio.folder);
        const auto any = [&](std::initializer_list<const char*> names) {
            return std::any_of(names.begin(), names.end(),
                               [&](const char* name) { return studio.wants(name); });
        };
        if (any({"list", "settings"})) list_and_settings(studio);
        if (any({"arrival", "job", "wide", "waits", "job-card", "help", "paused", "go-to",
                 "cause-choice", "write-up", "debrief", "replay"}))
            bath_that_is_never_hot(studio);
        if (any({"loading"})) loading(studio);
        if (any({"error"})) error(studio);
        if (any({"time-up"})) time_up(studio);
        if (any({"heater-night", "compact-night"})) heater_from_inside(studio);
        if (any({"author", "author-loop"})) author(studio);
    } catch (const std::exception& problem) {
        std::fprintf(stderr, "%s\n", problem.what());
        return 3;
    }
    return 0;
}
