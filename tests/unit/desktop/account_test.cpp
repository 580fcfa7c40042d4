// Proves that what the write-up can begin with is what the record says was done, and nothing else.
#include "ui/desktop/account.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"

namespace emberpath::desktop {
namespace {

using Kind = worksite::LogEntry::Kind;

worksite::LogEntry entry(std::string words, Kind kind, int reading = 0) {
    worksite::LogEntry made;
    made.words = std::move(words);
    made.kind = kind;
    if (reading > 0) {
        made.observations.emplace_back();
        made.observations.back().number = reading;
    }
    return made;
}

const Log repaired{entry("read room air", Kind::test, 1), entry("replace igniter", Kind::remedy),
                   entry("measure temperature at kitchen tap", Kind::test, 2),
                   entry("combustion test", Kind::proof, 3),
                   entry("tell customer it lights again", Kind::talk)};

TEST(Account, NamesRemediesOnly) {
    EXPECT_EQ(done_in(repaired), "Replace igniter.");
    EXPECT_EQ(done_in({entry("read room air", Kind::test, 1)}), "");
}

TEST(Account, ProvesWithWhatCameAfterTheRemedy) {
    EXPECT_EQ(proved_in(repaired), "Combustion test; readings after it #2 #3.");
    EXPECT_EQ(proved_in({entry("combustion test", Kind::proof, 1)}), "");
}

TEST(Account, RepeatsWhatTheCustomerWasTold) {
    EXPECT_EQ(told_in(repaired), "It lights again.");
    EXPECT_EQ(told_in({}), "");
}

TEST(Account, TellsTwoCausesAndThoseThatNoReadingTellsApart) {
    const std::vector<views::Suspect> suspects = views::suspects(worksite::test_job());
    Log written{entry("write cause " + suspects[1].word, Kind::write),
                entry("write also cause " + suspects[2].word, Kind::write)};
    EXPECT_EQ(account_of(written, suspects),
              "what was found: " + suspects[1].title + " and " + suspects[2].title);
    written.back().words = "write possible cause " + suspects[2].word;
    EXPECT_EQ(account_of(written, suspects),
              "what was found: " + suspects[1].title + " or " + suspects[2].title);
}

TEST(Account, TellsTheCauseOnlyOnceItWasWritten) {
    const std::vector<views::Suspect> suspects = views::suspects(worksite::test_job());
    EXPECT_EQ(account_of(repaired, suspects), "what was done: replace igniter");
    Log written = repaired;
    written.push_back(entry("write cause " + suspects[1].word, Kind::write));
    EXPECT_EQ(account_of(written, suspects),
              "what was found: " + suspects[1].title + "; what was done: replace igniter");
    EXPECT_EQ(account_of({}, suspects), "");
}

TEST(WriteUp, TakesWordsFromTheRecordOnRequest) {
    Person person;
    person.enter_house();
    person.press(kit::Key::f2);
    EXPECT_EQ(person.node("form.told.fill"), nullptr) << "there is nothing to take yet";
    person.press(kit::Key::f2);
    person.say("tell customer it is safe");
    person.press(kit::Key::f2);
    person.click("form.told.fill");
    EXPECT_EQ(person.program.desk()->draft().told, "It is safe.");
    EXPECT_EQ(person.node("form.told.fill"), nullptr) << "words of one's own are not written over";
}

TEST(WriteUp, LeadsByTabFromFieldToFieldBeforeItOffersTheRecord) {
    Person person;
    person.enter_house();
    person.say("look at display");
    person.say("turn off heater");
    person.say("tell customer it is safe");
    person.press(kit::Key::f2);
    ASSERT_NE(person.node("form.told.fill"), nullptr);
    person.click("form.told");
    person.press(kit::Key::tab);
    EXPECT_EQ(person.program.focus(), "form.told.fill");
    person.press(kit::Key::tab, {.shift = true});
    EXPECT_EQ(person.program.focus(), "form.told");
}

TEST(WriteUp, ShowsReadingsFromTheRecordAsBalloons) {
    Person person;
    person.enter_house();
    for (const char* words : {"put on glasses", "clear flue terminal", "look at flue terminal"})
        person.say(words);
    person.press(kit::Key::f2);
    person.click("form.proved.fill");
    EXPECT_THAT(person.program.desk()->draft().proved, testing::HasSubstr("#1"));
    EXPECT_NE(person.node("form.proved"), nullptr);
    for (const auto& layer : person.program.last_frame().layers)
        EXPECT_EQ(layer.as_text().find("#1"), std::string::npos) << "it is a disc with its number";
}

}  // namespace
}  // namespace emberpath::desktop
