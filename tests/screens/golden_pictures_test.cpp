// Proves that the screens look as they did when somebody last looked at them and found them right.
//
// Painted in software with invented figures, so that only a change of the drawing changes them. Drivers of different versions may round
// the edges of shapes differently, so a picture passes while at most 0.3 % of its pixels differ by more than
// 2 % of full brightness in a channel: edges touched by rounding come to 0.2 %, a moved word to more.
// EMBERPATH_WRITE_GOLDEN=1 writes the pictures anew; look at each before it is kept.

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>

#include "tests/screens/player.hpp"
#include "ui/screens/sample_screens.hpp"
#include "ui/window/display.hpp"
#include "ui/window/presenter.hpp"

namespace emberpath {
namespace {

namespace fs = std::filesystem;
const fs::path root = EMBERPATH_SOURCE_DIR;
const fs::path kept = root / "tests/golden/pictures";
constexpr int channel_tolerance = 5;       // of 255: 2 %
constexpr double share_tolerance = 0.003;  // of all pixels
constexpr double rail_height = 54.0;       // nothing may differ there: it tells of dangers

struct Difference {
    std::size_t pixels = 0, in_rail = 0;
    sf::Image picture;  // what differs, on grey
};

bool differs(const sf::Color& a, const sf::Color& b) {
    const auto apart = [](sf::Uint8 x, sf::Uint8 y) { return std::abs(int{x} - int{y}); };
    return std::max({apart(a.r, b.r), apart(a.g, b.g), apart(a.b, b.b)}) > channel_tolerance;
}

Difference difference(const sf::Image& now, const sf::Image& then) {
    Difference found;
    const auto size = now.getSize();
    found.picture.create(size.x, size.y, sf::Color(230, 230, 230));
    for (unsigned y = 0; y < size.y; ++y)
        for (unsigned x = 0; x < size.x; ++x) {
            if (!differs(now.getPixel(x, y), then.getPixel(x, y))) continue;
            ++found.pixels;
            if (y < rail_height) ++found.in_rail;
            found.picture.setPixel(x, y, sf::Color(200, 0, 60));
        }
    return found;
}

void compare(const kit::Frame& frame, const std::string& name, kit::Theme theme) {
    window::Presenter presenter(Player::typeface());
    const sf::Image now = window::picture_of(presenter, frame, {theme, 1.0});
    const fs::path file = kept / (name + ".png");
    if (std::getenv("EMBERPATH_WRITE_GOLDEN") != nullptr) {
        fs::create_directories(kept);
        ASSERT_TRUE(now.saveToFile(file.string()));
        return;
    }
    sf::Image then;
    ASSERT_TRUE(then.loadFromFile(file.string())) << "EMBERPATH_WRITE_GOLDEN=1 writes it";
    ASSERT_EQ(now.getSize(), then.getSize());
    const Difference found = difference(now, then);
    const double share = static_cast<double>(found.pixels) /
                         (static_cast<double>(now.getSize().x) * now.getSize().y);
    if (share <= share_tolerance && found.in_rail == 0) return;
    const fs::path seen = fs::path(EMBERPATH_BINARY_DIR) / "tests";
    (void)now.saveToFile((seen / (name + ".now.png")).string());
    (void)found.picture.saveToFile((seen / (name + ".differs.png")).string());
    ADD_FAILURE() << name << ": " << share * 100.0 << " % of the picture differs, " << found.in_rail
                  << " pixels of the rail; see " << seen.string() << "/" << name
                  << ".now.png and .differs.png";
}

class GoldenPicture : public testing::Test {
  protected:
    void SetUp() override {
        if (const std::string why = window::why_no_display(); !why.empty()) GTEST_SKIP() << why;
        const char* software = std::getenv("LIBGL_ALWAYS_SOFTWARE");
        if (software == nullptr || std::string_view(software) != "1")
            GTEST_SKIP() << "pictures are compared as software paints them: set "
                            "LIBGL_ALWAYS_SOFTWARE=1";
    }
    static constexpr kit::Size usual{1280.0, 800.0}, twice{960.0, 540.0};
};

kit::Frame sample(std::string_view name, kit::Size size) {
    static const kit::KeyMap keys(screens::key_table());
    for (const auto& screen : screens::sample_screens())
        if (screen.name == name) return screen.draw({Player::typeface(), {}, keys, size});
    ADD_FAILURE() << "there is no screen \"" << name << "\"";
    return {};
}

TEST_F(GoldenPicture, OfTheHouseAtWorkIsAsItWas) {
    compare(sample("job", usual), "job", kit::Theme::day);
}

TEST_F(GoldenPicture, OfTheCompactHouseByNightIsAsItWas) {
    compare(sample("job", twice), "job_compact_night", kit::Theme::night);
}

TEST_F(GoldenPicture, OfTheHeaterIsAsItWas) {
    compare(sample("heater", usual), "heater", kit::Theme::day);
}

TEST_F(GoldenPicture, OfTheWriteUpIsAsItWas) {
    compare(sample("write-up", usual), "write_up", kit::Theme::day);
}

TEST_F(GoldenPicture, OfTheDebriefIsAsItWas) {
    compare(sample("debrief", usual), "debrief", kit::Theme::day);
}

TEST_F(GoldenPicture, OfTheDebriefWithItsRemediesLeftIsAsItWas) {
    compare(sample("debrief-left", usual), "debrief_left", kit::Theme::day);
}

TEST_F(GoldenPicture, OfTheWideDebriefByNightIsAsItWas) {
    compare(sample("debrief", {1920.0, 1080.0}), "debrief_wide_night", kit::Theme::night);
}

TEST_F(GoldenPicture, OfTheCompactDebriefByNightIsAsItWas) {
    compare(sample("debrief-steps", twice), "debrief_compact_night", kit::Theme::night);
}

TEST_F(GoldenPicture, OfTheAuthorsPreviewByNightIsAsItWas) {
    compare(sample("author", usual), "author_night", kit::Theme::night);
}

TEST_F(GoldenPicture, WouldNoticeAPanelThatIsMissing) {
    window::Presenter presenter(Player::typeface());
    const auto picture = [&](std::string_view name) {
        return window::picture_of(presenter, sample(name, usual), {kit::Theme::day, 1.0});
    };
    const auto found = difference(picture("job"), picture("arrival"));
    EXPECT_GT(static_cast<double>(found.pixels), share_tolerance * usual.w * usual.h);
    EXPECT_GT(found.in_rail, 0U);
}

}  // namespace
}  // namespace emberpath
