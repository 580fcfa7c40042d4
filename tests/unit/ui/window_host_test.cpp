// Proves that the window's host keeps an attempt through leaving, through a sudden end and through folders that
// vanish, and lists a job whose file is broken.
#include "ui/app/window_host.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>

#include "tests/unit/records/sample.hpp"
#include "ui/app/safe_file.hpp"

namespace emberpath::app {
namespace {

namespace fs = std::filesystem;
using records::sample::contents;
using testing::HasSubstr;

/// A host with a state folder and a copy of the scenarios of its own.
struct Home {
    records::sample::Folder folder;
    std::istringstream in;
    std::ostringstream out, err;
    Context context{in, out, err, places(), false, false, false};
    std::unique_ptr<WindowHost> host = std::make_unique<WindowHost>(context, "");
    desktop::Progress progress;

    [[nodiscard]] Places places() const {
        const fs::path own = folder.file("scenarios");
        fs::copy(fs::path(EMBERPATH_SOURCE_DIR) / "scenarios", own, fs::copy_options::recursive);
        for (const auto& file : fs::directory_iterator(own / "jobs"))
            if (file.path().stem() != "tanager") fs::remove(file);
        return {own, folder.file("state"), folder.file("settings")};
    }
    /// The program is killed: nothing is said goodbye to.
    void dies() { host = std::make_unique<WindowHost>(context, ""); }
    [[nodiscard]] const screens::JobRow& row() {
        list = host->jobs();
        EXPECT_FALSE(list.jobs.empty());
        return list.jobs.front();
    }
    desktop::Listed list;
};

bool same_trail(const std::deque<worksite::TrailPoint>& a,
                const std::deque<worksite::TrailPoint>& b) {
    const auto same_figure = [](const worksite::GlassFigure& x, const worksite::GlassFigure& y) {
        return x.quantity == y.quantity && x.value == y.value;
    };
    return std::ranges::equal(a, b, [&](const auto& x, const auto& y) {
        return x.tick == y.tick && x.display_word == y.display_word &&
               std::ranges::equal(x.figures, y.figures, same_figure);
    });
}

TEST(WindowHost, TakesAnAttemptUpAgainAfterLeavingAndAfterASuddenEnd) {
    Home home;
    auto begun = home.host->begin("tanager", false, home.progress);
    ASSERT_NE(begun.visit, nullptr) << begun.trouble.right;
    ASSERT_TRUE(begun.visit->perform("open service readout").refusal.empty());
    begun.visit->run(200);
    const auto tick = begun.visit->attempt().tick();
    EXPECT_EQ(home.host->keep_draft({.because = "a", .done = "b \n c", .proved = "", .told = ""}),
              "");
    home.host->leave(*begun.visit);
    const auto trail = begun.visit->attempt().trail();
    const auto left_as = begun.visit->attempt().state_hash();
    begun.visit.reset();
    ASSERT_TRUE(home.row().can_resume);

    auto again = home.host->resume("tanager", home.progress);
    ASSERT_NE(again.visit, nullptr) << again.trouble.right;
    EXPECT_TRUE(again.resumed);
    EXPECT_EQ(again.draft.done, "b \n c");
    EXPECT_EQ(again.visit->attempt().tick(), tick) << "time that only passed was kept on leaving";
    EXPECT_EQ(again.visit->attempt().state_hash(), left_as) << "to the same bits";
    EXPECT_EQ(again.visit->attempt().log().size(), 1U) << "and by no act that nobody did";
    EXPECT_FALSE(trail.back().figures.empty());
    EXPECT_TRUE(same_trail(again.visit->attempt().trail(), trail)) << "the recorder goes on";
    ASSERT_TRUE(again.visit->perform("open kitchen tap fully").refusal.empty());
    again.visit->run(300);
    EXPECT_EQ(home.host->keep_draft(again.draft), "");  // as the window does while time runs
    const auto state = again.visit->attempt().state_hash();
    const auto acts = again.visit->attempt().log().size();
    again.visit.reset();
    home.dies();

    auto after = home.host->resume("tanager", home.progress);
    ASSERT_NE(after.visit, nullptr) << after.trouble.right;
    EXPECT_EQ(after.visit->attempt().log().size(), acts);
    EXPECT_EQ(after.visit->attempt().state_hash(), state) << "to the same bits";
    EXPECT_EQ(after.draft.because, "a");
}

TEST(WindowHost, OpensNoDebriefOfAnAttemptThatIsNotFinished) {
    Home home;
    auto begun = home.host->begin("tanager", false, home.progress);
    ASSERT_NE(begun.visit, nullptr);
    ASSERT_TRUE(begun.visit->perform("look at display").refusal.empty());
    home.host->leave(*begun.visit);
    EXPECT_FALSE(home.row().can_debrief);
    const auto opened = home.host->reopen("tanager", home.progress);
    EXPECT_THAT(opened.trouble.right, HasSubstr("no finished attempt"));
}

TEST(WindowHost, SaysThatTheRecordWasTakenAwayAndWritesAllElseAnew) {
    Home home;
    auto begun = home.host->begin("tanager", false, home.progress);
    ASSERT_NE(begun.visit, nullptr);
    fs::remove_all(home.context.places.state);
    home.host->tell("a sentence");
    EXPECT_EQ(contents(home.context.places.state / "spoken.txt"), "a sentence\n");
    EXPECT_EQ(home.host->keep_draft({.because = "a", .done = "", .proved = "", .told = ""}), "");
    EXPECT_THAT(
        [&] { (void)begun.visit->perform("look at display"); },
        testing::ThrowsMessage<std::runtime_error>(HasSubstr("was deleted while it was being")));
}

TEST(WindowHost, ListsAJobThatCannotBeOpenedWithWhatIsWrong) {
    Home home;
    const auto file = home.context.places.scenarios / "jobs/tanager.toml";
    records::sample::write(file, contents(file) + "\nno such thing = 3\n");
    EXPECT_TRUE(home.row().broken);
    EXPECT_THAT(home.row().call_out, HasSubstr("Line "));
    const auto begun = home.host->begin("tanager", false, home.progress);
    EXPECT_EQ(begun.visit, nullptr);
    EXPECT_EQ(begun.trouble.title, "This job file cannot be opened");
    EXPECT_THAT(begun.trouble.place, HasSubstr("tanager.toml, line "));
}

TEST(WindowHost, SaysWhatToDoWhenTheJobsAreGone) {
    Home home;
    fs::remove_all(home.context.places.scenarios);
    const auto listed = home.host->jobs();
    EXPECT_TRUE(listed.jobs.empty());
    EXPECT_EQ(listed.trouble.title, "There are no jobs to choose from");
    EXPECT_THAT(listed.trouble.right, HasSubstr("NAME.toml"));
    ASSERT_FALSE(listed.trouble.ways.empty());
    EXPECT_EQ(listed.trouble.ways.front().command.name, "look again");
}

TEST(SafeFile, IsTheOldOneOrTheNewOneAndItsFolderIsMade) {
    const records::sample::Folder folder;
    const auto file = folder.file("deep/down/settings.txt");
    EXPECT_EQ(write_safely(file, "one"), "");
    EXPECT_EQ(write_safely(file, "two"), "");
    EXPECT_EQ(contents(file), "two");
    EXPECT_FALSE(fs::exists(file.string() + ".new"));
    records::sample::write(folder.file("plain"), "a file, not a folder");
    EXPECT_THAT(write_safely(folder.file("plain/settings.txt"), "three"),
                HasSubstr("cannot be written"));
}

}  // namespace
}  // namespace emberpath::app
