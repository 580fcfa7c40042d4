// Proves that every screen of every shipped job, at its start, in its middle and at its end, can be used by
// keyboard, read without sight, is not crowded and stands out from its ground, in every window people use.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <functional>
#include <thread>

#include "tests/screens/player.hpp"
#include "ui/kit/audit.hpp"

namespace emberpath {
namespace {

using desktop::Place;

const std::filesystem::path root = EMBERPATH_SOURCE_DIR;

struct Window {
    double width, height;  // [window px]
    double scale;
};
// The normal and the wide layout, and the compact one at both ends of its range.
constexpr Window windows[] = {{1280.0, 800.0, 1.0},
                              {1920.0, 1080.0, 1.0},
                              {1920.0, 1080.0, 1.5},
                              {1280.0, 800.0, 1.25},
                              {1920.0, 1080.0, 2.0}};

constexpr kit::Size usual_window{1280.0, 800.0};

/// Texts that are cut where not even the thing they stand in has the whole.
std::vector<std::string> words_lost(const kit::Frame& frame) {
    std::vector<std::string> lost;
    for (const auto& cut : kit::cut_texts(frame))
        if (!cut.whole) lost.push_back(cut.text + " in " + cut.place);
    return lost;
}

struct Check {
    const char* name;
    std::function<std::vector<std::string>(const kit::Frame&)> problems;
};
const std::vector<Check>& checks() {
    static const std::vector<Check> all{
        {"names", kit::names_missing_or_repeated},
        {"reach", kit::unreachable},
        {"room", kit::crowded_texts},
        {"targets", kit::small_targets},
        {"contrast", kit::faint_texts},
        {"scrolling", kit::scrolled_by_pointer_only},
        {"cut words", words_lost},
        {"characters",
         [](const kit::Frame& frame) {
             return kit::missing_characters(frame, Player::typeface());
         }},
    };
    return all;
}

/// What is wrong with the screen that stands now, in all windows.
void audit(Player& player, const std::string& what, std::vector<std::string>& found) {
    for (const Window& window : windows) {
        const kit::Frame frame =
            player.frame({window.width / window.scale, window.height / window.scale});
        for (const Check& check : checks())
            for (const std::string& problem : check.problems(frame))
                found.push_back(what + " at " + std::to_string(static_cast<int>(frame.size.w)) +
                                "x" + std::to_string(static_cast<int>(frame.size.h)) + ", " +
                                check.name + ": " + problem);
    }
}

/// The house with what can stand in front of it, the heater, the write-up.
void audit_visit(Player& player, const std::string& when, std::vector<std::string>& found) {
    audit(player, when + ", house", found);
    player.type("z");
    audit(player, when + ", heater", found);
    player.type("z");
    for (const char* key : {"?", "h", "W", "/"}) {
        player.type(key);
        audit(player, when + ", in front by " + key, found);
        player.press(kit::Key::escape);
    }
    player.press(kit::Key::f2);
    audit(player, when + ", write-up", found);
    player.press(kit::Key::enter);
    audit(player, when + ", choice of the cause", found);
    player.press(kit::Key::escape);
    player.press(kit::Key::f2);
}

/// One a line: there may be many.
std::string joined(const std::vector<std::string>& problems) {
    std::string text;
    for (const auto& problem : problems) text += problem + "\n";
    return text;
}

class RealJob : public testing::TestWithParam<std::string> {};

TEST_P(RealJob, IsFitToBeWorkedFromItsStartToItsEnd) {
    Player player(root);
    std::vector<std::string> found;
    player.enter(GetParam());
    const auto script = script_of(root, GetParam() + ".good");
    for (std::size_t i = 0; i + 1 < script.size(); ++i) {
        if (i == 0) audit_visit(player, "start", found);
        if (i == script.size() / 2) audit_visit(player, "middle", found);
        player.say(script[i]);
    }
    audit_visit(player, "end", found);
    EXPECT_EQ(joined(found), "");
}

INSTANTIATE_TEST_SUITE_P(Shipped, RealJob, testing::ValuesIn(shipped_jobs(root)),
                         [](const auto& job) { return job.param; });

TEST(RealDebrief, IsFitToBeReadAfterAGoodAndAnUnsafeVisit) {
    std::vector<std::string> found;
    for (const std::string path : {"good", "bad"}) {
        Player player(root);
        player.enter("tanager");
        for (const auto& sentence : script_of(root, "tanager." + path)) player.say(sentence);
        player.wait_for(Place::debrief);
        audit(player, path + ", debrief", found);
        player.press(kit::Key::right);
        audit(player, path + ", next step", found);
        player.type("c");
        audit(player, path + ", remedies left", found);
        player.type("c");
        audit(player, path + ", causes", found);
        player.type("r");
        player.wait_for(Place::replay);
        audit(player, path + ", replay", found);
    }
    EXPECT_EQ(joined(found), "");
}

std::string said_by(Player& player) {
    std::string all;
    for (const auto& node : player.program().last_frame().tree.nodes())
        all += node.id + ": " + node.name + ", " + node.value + "\n";
    return all;
}

TEST(RealDebrief, OpenedAgainFromTheListSaysTheSame) {
    Player player(root);
    player.enter("tanager");
    for (const auto& sentence : script_of(root, "tanager.good")) player.say(sentence);
    player.wait_for(Place::debrief);
    const std::string first = said_by(player);
    player.press(kit::Key::escape);
    player.wait_for(Place::choose);
    player.click("jobs.tanager");
    player.click("start.debrief");
    player.wait_for(Place::debrief);
    EXPECT_EQ(said_by(player), first);
}

/// Until every other cause was simulated and the pairs stand.
void wait_for_the_solution(Player& player) {
    constexpr auto patience = std::chrono::minutes(5);
    const auto end = std::chrono::steady_clock::now() + patience;
    while (player.frame(usual_window).tree.get("checks.pair.1") == nullptr) {
        if (std::chrono::steady_clock::now() > end)
            throw std::runtime_error("the solution that was waited for did not come");
        player.program().elapse(0.0);
        std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
}

TEST(RealPreview, IsFitToBeReadOnceItIsSolvedAndWhereTheControlLoopStands) {
    std::vector<std::string> found;
    for (const std::string job : {"sorrel", "tanager"}) {
        Player player(root, job);
        wait_for_the_solution(player);
        const kit::Node* pair = player.program().last_frame().tree.get("checks.pair.1");
        ASSERT_NE(pair, nullptr);
        EXPECT_THAT(pair->value, testing::EndsWith("from This job"));
        audit(player, job + ", solved", found);
        (void)player.frame(usual_window);
        player.click("preview.switch");
        EXPECT_NE(player.frame(usual_window).tree.get("loop.Fan"), nullptr);
        audit(player, job + ", control loop", found);
    }
    EXPECT_EQ(joined(found), "");
}

TEST(RealPreview, IsFitToBeReadByAnAuthor) {
    std::vector<std::string> found;
    const auto jobs = shipped_jobs(root);
    for (std::size_t i = 0; i < jobs.size(); i += 4) {  // seconds each: every fourth stands for all
        Player player(root, jobs[i]);
        audit(player, jobs[i], found);
    }
    EXPECT_EQ(joined(found), "");
}

}  // namespace
}  // namespace emberpath
