// Proves that every act of the trainee's language has a place on screen in every house.
#include "ui/desktop/things.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "tests/unit/desktop/memory_host.hpp"

namespace emberpath::desktop {
namespace {

std::vector<views::JobCard> cards() {
    return {views::job_card(worksite::test_job(), worksite::Mode::coached),
            views::job_card(worksite::cylinder_job(), worksite::Mode::coached)};
}

TEST(Things, HaveTagsOfTheirOwn) {
    for (const auto& card : cards()) {
        std::set<std::string> tags;
        for (const auto& thing : things_of(card))
            EXPECT_TRUE(tags.insert(thing.point.tag).second) << thing.point.tag;
    }
}

TEST(Offers, AreSentencesThatCanBeRead) {
    const worksite::Attempt house(worksite::test_job(), 1, worksite::Mode::coached);
    const auto card = cards().front();
    int read = 0;
    for (const auto& offer : offers_of(card, things_of(card))) {
        if (offer.open) continue;
        EXPECT_GT(house.seconds_for(offer.sentence), 0.0) << offer.sentence;
        ++read;
    }
    EXPECT_GT(read, 100);
}

TEST(Offers, CoverEveryPhraseThatHasNoPlaceOfItsOwn) {
    for (const auto& card : cards()) {
        std::set<std::string> offered;
        for (const auto& offer : offers_of(card, things_of(card))) {
            offered.insert(offer.pattern);
            EXPECT_FALSE(offer.things.empty()) << offer.sentence;
        }
        for (const auto& phrase : views::phrases({})) {
            const bool elsewhere =
                phrase.pattern.starts_with("wait") || phrase.pattern.starts_with("write ") ||
                phrase.pattern == "hand in" || phrase.pattern.ends_with(" {cause}");
            EXPECT_NE(offered.contains(phrase.pattern), elsewhere) << phrase.pattern;
        }
    }
}

TEST(Offers, BelongWhereTheyAreDone) {
    const auto card = cards().front();
    const auto things = things_of(card);
    const auto place_of = [&](std::string_view sentence) {
        for (const auto& offer : offers_of(card, things))
            if (offer.sentence == sentence) return things[offer.things.front()].point.tag;
        return std::string("nowhere");
    };
    EXPECT_EQ(place_of("ask about problem"), "customer");
    EXPECT_EQ(place_of("attach manometer to inlet"), "P1");
    EXPECT_EQ(place_of("replace outlet sensor"), "T2");
    EXPECT_EQ(place_of("clean flame electrode"), "E2");
    EXPECT_EQ(place_of("clear flue terminal"), "flue terminal");
    EXPECT_EQ(place_of("unplug heater"), "power point");
    EXPECT_EQ(place_of("take cover off"), "heater");
    EXPECT_EQ(place_of("shut water at heater"), "heater water valve");
    EXPECT_EQ(place_of("escalate regulator to distributor"), "P3");
    EXPECT_EQ(place_of("escalate to electrician"), "customer");
    EXPECT_EQ(place_of("read room air"), "A2");
    EXPECT_EQ(place_of("put on gloves"), "you");
    EXPECT_EQ(place_of("go outside"), "you");
    EXPECT_EQ(place_of("go back in"), "you");
}

TEST(Offers, AreNamedShortlyAtTheirThing) {
    const auto card = cards().front();
    const auto things = things_of(card);
    const auto name_of = [&](std::string_view sentence) {
        for (const auto& offer : offers_of(card, things))
            if (offer.sentence == sentence) return short_name(offer, things[offer.things.front()]);
        return std::string();
    };
    EXPECT_EQ(name_of("attach manometer to inlet"), "Attach manometer");
    EXPECT_EQ(name_of("open kitchen tap a little"), "Open a little");
    EXPECT_EQ(name_of("ask about problem"), "Ask: problem");
    EXPECT_EQ(name_of("read readout flow"), "Read flow");
    EXPECT_EQ(name_of("tell customer"), "Tell customer …");
    EXPECT_EQ(name_of("read room air"), "Read room air");
    EXPECT_EQ(name_of("replace outlet sensor"), "Replace outlet sensor");
}

/// Everything that number keys can do at a thing, page by page.
void collect(Person& person, const std::string& tag, std::set<std::string>& done_by_key) {
    person.paste(tag);
    std::set<std::string> seen;
    for (bool fresh = true; fresh;) {
        fresh = false;
        bool more = false;
        for (int i = 1; i <= 6; ++i) {
            const auto* action = person.node("actions." + std::to_string(i));
            if (action == nullptr) break;
            EXPECT_EQ(action->shortcut, "action." + std::to_string(i));
            more = action->command.name == "more actions";
            if (!more) fresh = seen.insert(action->command.argument).second || fresh;
        }
        if (!more) break;
        person.type("6");
    }
    done_by_key.merge(seen);
}

/// Both gauges hang somewhere: what can be done with them is offered there and nowhere else.
void connect_gauges(Person& person, const views::JobCard& card) {
    const auto* valves = &card.choices.front();
    for (const auto& choice : card.choices)
        if (choice.placeholder == "gas valve") valves = &choice;
    for (const std::string& valve : valves->words) person.paste("shut gas at " + valve);
    for (const char* act : {"open test point inlet", "attach manometer to inlet",
                            "switch power off", "unplug heater", "put on gloves", "put on glasses",
                            "take cover off", "attach multimeter to supply terminals"})
        person.paste(act);
}

TEST(EveryAct, IsReachedByTagAndNumberKeys) {
    for (const auto& job : {worksite::test_job(), worksite::cylinder_job()}) {
        Person person(job);
        person.enter_assessed();  // no remark comes in front
        const auto card = views::job_card(job, worksite::Mode::assessed);
        const auto things = things_of(card);
        std::set<std::string> done_by_key;
        for (const auto& thing : things) collect(person, thing.point.tag, done_by_key);
        connect_gauges(person, card);
        for (const char* tag : {"P1", "E1"}) collect(person, tag, done_by_key);
        for (const auto& offer : offers_of(card, things))
            EXPECT_TRUE(done_by_key.contains(offer.sentence)) << offer.sentence;
    }
}

TEST(Houses, HaveEachFixtureOnceInARoom) {
    for (const auto& card : cards()) {
        EXPECT_EQ(fixture_names(card).size(), card.taps.size() + card.appliances.size());
        EXPECT_FALSE(site_of(card).rooms.empty());
    }
    EXPECT_EQ(site_of(cards()[1]).gas, screens::GasSource::cylinder);
}

}  // namespace
}  // namespace emberpath::desktop
