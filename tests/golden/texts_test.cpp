// Proves that what people read stays as it was agreed: the help of the terminal and the three forms of a
// debrief, whole texts compared. EMBERPATH_WRITE_GOLDEN=1 writes them anew; read the change before keeping it.

#include <gtest/gtest.h>

#include <cstdlib>

#include "tests/unit/records/sample.hpp"
#include "ui/terminal/words.hpp"

namespace emberpath {
namespace {

using records::sample::contents;
using records::sample::full_debrief;

/// Compares with tests/golden/texts/NAME line by line, so that a difference names its line.
void expect_as_agreed(const std::string& name, const std::string& text) {
    const auto file = std::filesystem::path(EMBERPATH_SOURCE_DIR) / "tests/golden/texts" / name;
    if (std::getenv("EMBERPATH_WRITE_GOLDEN")) {
        std::filesystem::create_directories(file.parent_path());
        records::sample::write(file, text);
    }
    ASSERT_TRUE(std::filesystem::exists(file)) << file;
    std::istringstream agreed(contents(file)), now(text);
    int line = 0;
    for (std::string was, is;;) {
        ++line;
        const bool more_agreed = static_cast<bool>(std::getline(agreed, was));
        const bool more_now = static_cast<bool>(std::getline(now, is));
        ASSERT_EQ(more_now, more_agreed) << name << " has another length, from line " << line;
        if (!more_now) break;
        ASSERT_EQ(is, was) << name << ", line " << line;
    }
    EXPECT_EQ(text, contents(file));
}

views::JobCard card() {
    worksite::Job job;
    job.title = "Job 1: 8 Tanager Court";
    job.call_out = "No hot water at any tap since this morning";
    job.site.taps = {{"kitchen tap", 1.0, false}, {"shower", 1.0, true}};
    job.site.appliances = {{"cooktop", 1.0}};
    return views::job_card(job, worksite::Mode::coached);
}

TEST(GoldenTexts, HelpListsEverySentence) {
    expect_as_agreed("help.txt", terminal::help_text(card(), ""));
    expect_as_agreed("help_all.txt", terminal::help_text(card(), "all"));
}

TEST(GoldenTexts, HelpAboutAWordSaysWhatCanStandInItsPlace) {
    expect_as_agreed("help_manometer.txt", terminal::help_text(card(), "manometer"));
    expect_as_agreed("help_tap.txt", terminal::help_text(card(), "tap"));
    expect_as_agreed("help_teapot.txt", terminal::help_text(card(), "teapot"));
}

TEST(GoldenTexts, TheDebriefIsAsAgreedInItsThreeForms) {
    expect_as_agreed("debrief.txt", records::to_text(full_debrief()));
    expect_as_agreed("debrief.json", records::to_json(full_debrief()));
    expect_as_agreed("debrief.html", records::to_html(full_debrief()));
}

}  // namespace
}  // namespace emberpath
