// Paints screens with invented figures into PNG files, to be looked at:
//   emberpath_screens FOLDER [NAME...] [--size WxH] [--scale PERCENT] [--night] [--focus ID]

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "ui/screens/sample_screens.hpp"
#include "ui/window/display.hpp"
#include "ui/window/presenter.hpp"

namespace emberpath {
namespace {

struct Wish {
    std::filesystem::path folder;
    std::vector<std::string> names;
    double width = 1280.0, height = 800.0, percent = 100.0;
    kit::Theme theme = kit::Theme::day;
    std::string focus;
};

bool read(int argc, char** argv, Wish& wish) {
    for (int i = 1; i < argc; ++i) {
        const std::string word = argv[i];
        const bool more = i + 1 < argc;
        if (word == "--night") {
            wish.theme = kit::Theme::night;
        } else if (word == "--size" && more) {
            if (std::sscanf(argv[++i], "%lfx%lf", &wish.width, &wish.height) != 2) return false;
        } else if (word == "--scale" && more) {
            wish.percent = std::atof(argv[++i]);
        } else if (word == "--focus" && more) {
            wish.focus = argv[++i];
        } else if (wish.folder.empty()) {
            wish.folder = word;
        } else {
            wish.names.push_back(word);
        }
    }
    return !wish.folder.empty() && wish.percent >= 50.0;
}

int paint(const Wish& wish) {
    std::filesystem::create_directories(wish.folder);
    const kit::Typeface typeface(kit::find_fonts());
    const kit::KeyMap keys(screens::key_table());
    window::Presenter presenter(typeface);
    const double scale = wish.percent / 100.0;
    for (const screens::NamedScreen& screen : screens::sample_screens()) {
        const auto& names = wish.names;
        if (!names.empty() && std::find(names.begin(), names.end(), screen.name) == names.end())
            continue;
        kit::State state;
        state.focus = wish.focus;
        const kit::Frame frame =
            screen.draw({typeface, state, keys, {wish.width / scale, wish.height / scale}});
        const auto file = wish.folder / (screen.name + ".png");
        if (!window::picture_of(presenter, frame, {wish.theme, scale}).saveToFile(file.string()))
            return 2;
        std::printf("%s: %zu vertices, %zu draws\n", file.c_str(), presenter.vertices(),
                    presenter.draws());
    }
    return 0;
}

}  // namespace
}  // namespace emberpath

int main(int argc, char** argv) {
    emberpath::Wish wish;
    if (!emberpath::read(argc, argv, wish)) {
        std::fputs(
            "usage: emberpath_screens FOLDER [NAME...] [--size WxH] [--scale PERCENT] [--night] "
            "[--focus ID]\n",
            stderr);
        return 2;
    }
    if (const std::string why = emberpath::window::why_no_display(); !why.empty()) {
        std::fprintf(stderr, "%s\n", why.c_str());
        return 2;
    }
    return emberpath::paint(wish);
}
