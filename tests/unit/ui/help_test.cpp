// Proves that help names every act of the program with the time it takes, and that every sentence of a house is
// understood where it is typed.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <sstream>

#include "sim/scenario/scenario.hpp"
#include "sim/worksite/acts.hpp"
#include "tests/unit/ui/house_visit.hpp"
#include "tests/unit/worksite/house.hpp"
#include "ui/terminal/terminal.hpp"
#include "ui/terminal/words.hpp"

namespace emberpath::terminal {
namespace {

/// A house that has one of everything a sentence can name.
worksite::Job full_house() {
    worksite::Job job = worksite::cylinder_job();
    job.site.windows = {{"laundry window", 0.0, false}};
    job.site.fans = {{"rangehood", 0.02, false}};
    job.site.wall_controllers = {"bathroom controller"};
    return job;
}

std::string trimmed(const std::string& cell) {
    const auto first = cell.find_first_not_of(' ');
    if (first == std::string::npos) return {};
    return cell.substr(first, cell.find_last_not_of(' ') - first + 1);
}

std::string cell(const std::string& line, std::size_t begin, std::size_t width) {
    return begin < line.size() ? trimmed(line.substr(begin, width)) : std::string();
}

/// Sentence to time, as the two columns of plain help print them; a long sentence goes on in the next line.
void read_column(const std::string& text, std::size_t begin,
                 std::map<std::string, std::string>& into) {
    std::istringstream in(text);
    std::string sentence, time;
    const auto keep = [&] {
        if (!sentence.empty()) into[sentence] = time;
    };
    std::getline(in, sentence);  // the heading
    sentence.clear();
    for (std::string line; std::getline(in, line) && !line.empty();) {
        const std::string words = cell(line, begin, 39), cost = cell(line, begin + 41, 7);
        if (cost.empty()) {
            sentence += words.empty() ? "" : " " + words;
            continue;
        }
        keep();
        sentence = words;
        time = cost;
    }
    keep();
}

TEST(Help, ListsEverySentenceOfTheProgramWithTheTimeItTakes) {
    const HouseVisit visit(full_house());
    std::map<std::string, std::string> listed;
    const std::string text = help_text(visit.card(), {});
    read_column(text, 1, listed);
    read_column(text, 51, listed);
    for (const auto& phrase : worksite::phrases()) {
        const auto found = listed.find(std::string(phrase.pattern));
        ASSERT_NE(found, listed.end()) << phrase.pattern;
        EXPECT_EQ(found->second, views::cost_text(phrase.seconds)) << phrase.pattern;
    }
    EXPECT_EQ(listed.size(), worksite::phrases().size());
}

TEST(Help, FindsEachSentenceByItsFirstWord) {
    const HouseVisit visit(full_house());
    for (const auto& phrase : worksite::phrases()) {
        const std::string first(phrase.pattern.substr(0, phrase.pattern.find(' ')));
        const auto found = views::phrases(first);
        EXPECT_TRUE(std::any_of(found.begin(), found.end(), [&](const views::PhraseRow& row) {
            return row.pattern == phrase.pattern && row.cost == views::cost_text(phrase.seconds);
        })) << phrase.pattern;
    }
}

views::PhraseRow row_of(std::string_view pattern) {
    for (const auto& row : views::phrases(pattern))
        if (row.pattern == pattern) return row;
    ADD_FAILURE() << pattern;
    return {};
}

/// What a remedy costs beside its time, and who may do it.
TEST(Help, SaysOfEachRemedyWhatItsPartCostsAndWhatALicenceHasToCover) {
    const HouseVisit visit(full_house());
    for (const auto& info : faults::remedies) {
        const std::string takes = row_of(info.sentence).takes;
        const std::string part = "part worth " + views::cost_text(60.0 * info.part_minutes);
        EXPECT_EQ(takes.starts_with(part + " of work"), info.part_minutes > 0.0) << takes;
        EXPECT_TRUE(takes.ends_with(faults::skill_title(info.skill))) << takes;
        EXPECT_EQ(takes.empty(), info.part_minutes <= 0.0 && !faults::works_at_once(info.remedy));
    }
    const std::string sensor = help_text(visit.card(), "replace outlet sensor");
    for (const char* words : {"part worth 25 min", "electrical", "10 min"})
        EXPECT_NE(sensor.find(words), std::string::npos) << sensor;
}

TEST(Help, ListsEveryPartWithItsPriceAndAllWorkOfALicence) {
    const HouseVisit visit(full_house());
    for (const auto& info : faults::remedies) {
        const std::string sentence(info.sentence);
        for (const char* word : {"price", "cost"})
            EXPECT_EQ(
                help_text(visit.card(), word).find(sentence.substr(0, 38)) != std::string::npos,
                info.part_minutes > 0.0)
                << word << " " << sentence;
        EXPECT_EQ(
            help_text(visit.card(), "licence").find(sentence.substr(0, 38)) != std::string::npos,
            !faults::skill_title(info.skill).empty())
            << sentence;
    }
    EXPECT_EQ(help_text(visit.card(), "price"), help_text(visit.card(), "costs"));
    EXPECT_EQ(help_text(visit.card(), "licence"), help_text(visit.card(), "license"));
    EXPECT_NE(help_text(visit.card(), {}).find("help price"), std::string::npos);
}

TEST(Help, FindsWhatTakesAKindOfWork) {
    const HouseVisit visit(full_house());
    const std::string plumbing = help_text(visit.card(), "plumbing");
    EXPECT_NE(plumbing.find("replace flow sensor"), std::string::npos) << plumbing;
    EXPECT_EQ(plumbing.find("replace gas valve"), std::string::npos) << plumbing;
}

/// No act hides behind a word of the terminal's own, and none of them is unknown to it.
TEST(Terminal, UnderstandsEverySentenceOfAHouseAndReachesEveryAct) {
    const worksite::Job job = full_house();
    const HouseVisit visit(job);
    std::set<std::pair<worksite::Verb, int>> reached;
    for (const auto& sentence : worksite::all_sentences(job)) {
        EXPECT_EQ(answer(visit, sentence), "") << sentence;
        const auto parsed = worksite::parse_act(sentence, job);
        ASSERT_TRUE(std::holds_alternative<worksite::Act>(parsed)) << sentence;
        const auto& act = std::get<worksite::Act>(parsed);
        reached.insert({act.verb, act.remedy});
        EXPECT_DOUBLE_EQ(visit.attempt().seconds_for(sentence), worksite::seconds_of(act))
            << sentence;
    }
    for (const auto& row : worksite::phrase_rows())
        EXPECT_TRUE(reached.contains({row.verb, row.remedy})) << row.phrase.pattern;
}

}  // namespace
}  // namespace emberpath::terminal
