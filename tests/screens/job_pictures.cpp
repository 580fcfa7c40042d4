// Paints the pictures of the manual from shipped jobs, worked by the scripts beside the tests:
//   emberpath_job_pictures SOURCES FOLDER [NAME...]

#include <algorithm>
#include <cstdio>
#include <stdexcept>
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

void write_up(Player& player) {
    player.press(kit::Key::f2);
    player.click("form.because");
    player.type("At rest the heater sees 1.95 kPa #4, with the bath running 0.66 kPa #5. At the ");
    player.type("regulator it holds 1.86 kPa #6, so the loss is in the pipe between them.");
    for (const char* field : {"form.done.fill", "form.proved.fill", "form.told.fill"})
        if (player.program().last_frame().tree.get(field) != nullptr) player.click(field);
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
    player.type("/manometer");
    studio.take(player, "go-to");
    player.press(kit::Key::escape);
    rest = play_until(player, rest, "write because");
    write_up(player);
    studio.take(player, "write-up");
    player.press(kit::Key::f2);
    for (const auto& sentence : rest) player.say(sentence);
    player.wait_for(Place::debrief);
    studio.take(player, "debrief");
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

void author(Studio& studio) {
    Player player(studio.root, "sorrel");
    for (int i = 0;
         i < 600000 && player.program().last_frame().tree.get("checks.path.1") == nullptr; ++i) {
        player.program().elapse(0.0);
        (void)player.frame(usual);
    }
    studio.take(player, "author");
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
        if (any({"arrival", "job", "go-to", "write-up", "debrief"})) bath_that_is_never_hot(studio);
        if (any({"heater-night", "compact-night"})) heater_from_inside(studio);
        if (any({"author"})) author(studio);
    } catch (const std::exception& problem) {
        std::fprintf(stderr, "%s\n", problem.what());
        return 3;
    }
    return 0;
}
