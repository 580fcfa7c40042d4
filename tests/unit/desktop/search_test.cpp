// Proves that the box finds things before acts, does only what was written out, and offers what is ready.
#include "ui/desktop/search.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/desktop/memory_host.hpp"

namespace emberpath::desktop {
namespace {

using testing::HasSubstr;

struct House {
    views::JobCard card = views::job_card(worksite::test_job(), worksite::Mode::coached);
    std::vector<Thing> things = things_of(card);
    std::vector<Offer> offers = offers_of(card, things);
    std::vector<std::string> ready;

    [[nodiscard]] std::vector<screens::FoundView> find(const std::string& typed,
                                                       bool can_be_done = false) const {
        return found_for(typed,
                         {things, offers, ready, [=](const std::string&) { return can_be_done; },
                          [](const std::string& said) { return said.empty() ? "" : "7 s"; }});
    }
};

TEST(Search, PutsTheThingWithThatTagFirst) {
    const auto rows = House().find("p1");
    ASSERT_FALSE(rows.empty());
    EXPECT_EQ(rows.front().argument, "P1");
    EXPECT_EQ(rows.front().command, "select");
}

TEST(Search, PutsAnActThatIsWrittenOutFirst) {
    const auto rows = House().find("open bath tap fully", true);
    ASSERT_FALSE(rows.empty());
    EXPECT_EQ(rows.front().name, "Do it: open bath tap fully");
}

TEST(Search, SaysWhatAnActCostsAndOfThingsNothing) {
    for (const auto& row : House().find("tap")) {
        const bool whole_act = row.command == "act";
        EXPECT_EQ(row.cost, whole_act ? "7 s" : "") << row.name;
    }
    EXPECT_EQ(House().find("open bath tap fully", true).front().cost, "7 s");
}

TEST(Search, FindsActsByTheirWordsInAnyOrder) {
    const auto rows = House().find("sensor unplug");
    ASSERT_FALSE(rows.empty());
    for (const auto& row : rows) {
        EXPECT_THAT(row.argument, HasSubstr("unplug"));
        EXPECT_THAT(row.argument, HasSubstr("sensor"));
        EXPECT_TRUE(row.id.starts_with(suggested_act));
    }
}

TEST(Search, ListsNoMoreActsThanPeopleRead) {
    std::size_t acts = 0;
    for (const auto& row : House().find("e")) acts += row.command == "select" ? 0 : 1;
    EXPECT_EQ(acts, most_acts_found);
}

TEST(Search, OffersWhatIsReadyOnceItsBeginningIsWritten) {
    House house;
    house.ready = {"tell customer what was done: clean fins"};
    EXPECT_EQ(house.find("tell customer ").front().argument, house.ready.front());
    for (const auto& row : house.find("te")) EXPECT_NE(row.argument, house.ready.front());
}

TEST(GoToBox, AsksOnceMoreBeforeAnActThatWasNotWrittenOut) {
    Person person;
    person.enter_house();
    person.say("tap bath open");
    EXPECT_TRUE(person.host.at_work->attempt().log().empty());
    EXPECT_THAT(person.host.told.back(), HasSubstr("Enter again: Open bath tap"));
    person.press(kit::Key::enter);
    EXPECT_THAT(person.last_act(), HasSubstr("open bath tap"));
}

}  // namespace
}  // namespace emberpath::desktop
