#include "tests/screens/player.hpp"

#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <fstream>
#include <stdexcept>
#include <thread>

#include "sim/scenario/scenario.hpp"
#include "ui/app/jobs.hpp"

namespace emberpath {

namespace {

namespace fs = std::filesystem;

constexpr kit::Size usual{1280.0, 800.0};

fs::path fresh_folder() {
    std::string name = (fs::temp_directory_path() / "emberpath-player-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for temporary files");
    return name;
}

/// A house that takes its time: nothing in it depends on how fast a computer is.
class HeldHost final : public app::WindowHost {
  public:
    HeldHost(const app::Context& context, double share)
        : WindowHost(context, {}), context_(context), share_(share) {}

    desktop::Begun begin(const std::string& job, bool, desktop::Progress& progress) override {
        const auto loaded = scenario::load(app::find_job(context_, job).file);
        progress.minutes = loaded.job.site.arrival_s / 60.0;
        progress.share = share_;
        while (!progress.abandoned) std::this_thread::sleep_for(std::chrono::milliseconds(1));
        return {};
    }

  private:
    const app::Context& context_;
    double share_;
};

}  // namespace

Player::Player(const fs::path& root, double settles_to)
    : folder_(fresh_folder()),
      context_{in_, out_, err_, {root / "scenarios", folder_ / "state", folder_ / "settings"}},
      host_(std::make_unique<HeldHost>(context_, settles_to)),
      program_(std::make_unique<desktop::Program>(*host_, typeface(), clipboard_,
                                                  desktop::Preferences{})) {
    look();
}

Player::Player(const fs::path& root, const std::string& author,
               const desktop::Preferences& preferences)
    : folder_(fresh_folder()),
      context_{in_, out_, err_, {root / "scenarios", folder_ / "state", folder_ / "settings"}},
      host_(std::make_unique<app::WindowHost>(context_, author)),
      program_(std::make_unique<desktop::Program>(*host_, typeface(), clipboard_, preferences,
                                                  !author.empty())) {
    look();
    if (!author.empty()) wait_for(desktop::Place::author);
}

Player::~Player() {
    program_.reset();
    host_.reset();
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
}

const kit::Typeface& Player::typeface() {
    static const kit::Typeface face(kit::find_fonts());
    return face;
}

void Player::look() {
    (void)program_->frame(usual);
}

void Player::feed(const kit::Event& event) {
    program_->event(event);
    look();
}

void Player::press(kit::Key key, kit::Modifiers modifiers) {
    feed(kit::KeyPress{key, modifiers, false});
}

void Player::type(std::string_view text) {
    for (const char32_t c : kit::decode(text)) feed(kit::Character{c, false});
}

void Player::click(std::string_view id) {
    const kit::Node* node = program_->last_frame().tree.get(id);
    const kit::Node* list = program_->last_frame().tree.get("jobs.list");
    for (int turn = 0; turn < 200 && list != nullptr && node != nullptr && node->visible.h < 8.0;
         ++turn) {
        feed(kit::Wheel{list->visible.centre(), -1.0, {}});  // further down the list
        node = program_->last_frame().tree.get(id);
        list = program_->last_frame().tree.get("jobs.list");
    }
    if (node == nullptr || node->visible.empty())
        throw std::runtime_error("not on the screen: " + std::string(id));
    const kit::Point at = node->visible.centre();
    feed(kit::PointerPress{at, false, {}});
    feed(kit::PointerRelease{at, false});
}

void Player::wait_for(desktop::Place place) {
    constexpr auto patience = std::chrono::minutes(5);
    const auto end = std::chrono::steady_clock::now() + patience;
    while (program_->place() != place) {
        if (std::chrono::steady_clock::now() > end)
            throw std::runtime_error("the screen that was waited for did not come");
        program_->elapse(0.0);
        look();
        std::this_thread::yield();
    }
    look();
}

void Player::enter(const std::string& job, bool assessed) {
    click(assessed ? "start.assessed" : "start.coached");
    click("jobs." + job);
    click("start.go");
    wait_for(desktop::Place::job);
}

void Player::put_away() {
    if (program_->last_frame().tree.get("notice.words") != nullptr) press(kit::Key::escape);
}

void Player::say(const std::string& sentence) {
    const std::size_t before = program_->desk()->acts();
    type("/");
    clipboard_.text = sentence;
    press(kit::Key::v, {.control = true});
    press(kit::Key::enter);
    if (sentence == "hand in") click("question.yes");  // asked first
    put_away();
    if (program_->desk() != nullptr && program_->desk()->acts() == before)
        throw std::runtime_error(sentence + ": " + program_->desk()->status());
}

std::vector<std::string> script_of(const fs::path& root, const std::string& name) {
    const fs::path file = root / "tests/jobs/paths" / (name + ".acts");
    std::ifstream in(file);
    if (!in) throw std::runtime_error("cannot be read: " + file.string());
    std::vector<std::string> sentences;
    for (std::string line; std::getline(in, line);) {
        if (!line.empty() && line.front() != '#') sentences.push_back(line);
    }
    return sentences;
}

std::vector<std::string> shipped_jobs(const fs::path& root) {
    std::vector<std::string> words;
    for (const auto& entry : fs::directory_iterator(root / "scenarios/jobs"))
        if (entry.path().extension() == ".toml") words.push_back(entry.path().stem().string());
    std::sort(words.begin(), words.end());
    return words;
}

}  // namespace emberpath
