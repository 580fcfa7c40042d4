// Proves that the trainee's language reads what it writes, reads natural variants, and says one clear thing
// about everything else.

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "sim/worksite/acts.hpp"
#include "sim/worksite/doings.hpp"
#include "sim/worksite/parse_problem.hpp"
#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {
namespace {

std::string canonical(std::string_view sentence, const Job& job) {
    const auto parsed = parse_act(sentence, job);
    const auto* act = std::get_if<Act>(&parsed);
    return act ? render(*act, job) : "not read: " + std::get<ActRefusal>(parsed).text;
}

std::string refusal(std::string_view sentence) {
    const auto parsed = parse_act(sentence, test_job());
    const auto* told = std::get_if<ActRefusal>(&parsed);
    return told ? told->text : "read";
}

TEST(Language, ReadsBackEverySentenceItWrites) {
    for (const auto& job : {test_job(), cylinder_job()}) {
        const auto all = all_sentences(job);
        EXPECT_GT(all.size(), 150U);
        for (const auto& sentence : all) EXPECT_EQ(canonical(sentence, job), sentence);
    }
}

TEST(Language, NamesEverySentenceOnce) {
    const auto all = all_sentences(test_job());
    EXPECT_EQ(std::set<std::string>(all.begin(), all.end()).size(), all.size());
}

TEST(Language, GivesEveryActOneDoingAndOneRow) {
    std::multiset<int> doings;
    for (const auto table : {look_doings(), service_doings(), electrical_doings(), measure_doings(),
                             supply_doings(), protection_doings(), gas_doings(), flue_doings(),
                             water_doings(), panel_doings(), remedy_doings(), proof_doings(),
                             write_doings(), house_doings(), kit_doings(), danger_doings()})
        for (const auto& doing : table) doings.insert(static_cast<int>(doing.verb));
    for (int verb = 0; verb <= static_cast<int>(Verb::go_in); ++verb) {
        EXPECT_EQ(doings.count(verb), 1U) << verb;
        EXPECT_TRUE(
            std::any_of(phrase_rows().begin(), phrase_rows().end(),
                        [&](const PhraseRow& row) { return static_cast<int>(row.verb) == verb; }))
            << verb;
    }
    for (const auto& row : phrase_rows()) EXPECT_EQ(doing_of(row.verb).verb, row.verb);
}

TEST(Language, HasAnActForEveryRemedy) {
    std::set<int> remedies;
    for (const auto& row : phrase_rows())
        if (row.remedy >= 0) remedies.insert(row.remedy);
    EXPECT_EQ(remedies.size(), faults::remedy_count);
}

TEST(Language, ReadsRemediesAsRecordsSpellThem) {
    const auto job = cylinder_job();
    for (std::size_t r = 0; r < faults::remedy_count; ++r) {
        const auto remedy = static_cast<faults::Remedy>(r);
        if (faults::info(remedy).whom != faults::Whom::nobody) continue;
        const auto parsed = parse_act(faults::remedy_word(remedy), job);
        ASSERT_TRUE(std::holds_alternative<Act>(parsed)) << faults::remedy_word(remedy);
        EXPECT_EQ(std::get<Act>(parsed).remedy, static_cast<int>(r));
    }
}

TEST(Language, ReadsCausesByWordAndByTitle) {
    const auto job = test_job();
    EXPECT_EQ(canonical("write cause gas_pipe_restriction", job),
              "write cause gas_pipe_restriction");
    EXPECT_EQ(canonical("write cause gas pipe carries too little", job),
              "write cause gas_pipe_restriction");
    EXPECT_EQ(canonical("Strike out igniter failed.", job), "strike out igniter_failed");
}

TEST(Language, OffersOnlyCausesThatTheHouseCanHave) {
    EXPECT_TRUE(canonical("suspect cylinder_low", test_job()).starts_with("not read"));
    EXPECT_EQ(canonical("suspect cylinder_low", cylinder_job()), "suspect cylinder_low");
}

TEST(Language, ReadsWhatPeopleSay) {
    const auto job = test_job();
    const std::pair<const char*, const char*> said[] = {
        {"ASK ABOUT THE PROBLEM", "ask about problem"},
        {"ask the customer about the weather", "ask about weather"},
        {"ask about the painter", "ask about painter"},
        {"please look at the display", "look at display"},
        {"inspect the flue terminal", "look at flue terminal"},
        {"open the kitchen tap a little", "open kitchen tap a little"},
        {"turn on the kitchen tap", "open kitchen tap"},
        {"open the shower half way", "open shower halfway"},
        {"open kitchen", "open kitchen tap"},
        {"turn the cooktop on", "turn on cooktop"},
        {"Set the temperature to 50 C", "set temperature to 50 °C"},
        {"set the temperature to 48.5 degrees", "set temperature to 48.5 °C"},
        {"turn off the power", "switch power off"},
        {"pull the plug", "unplug heater"},
        {"close the gas at the meter", "shut gas at meter"},
        {"wear gloves", "put on gloves"},
        {"remove the cover", "take cover off"},
        {"put the cover back on", "refit cover"},
        {"connect the gauge to the inlet", "attach manometer to inlet"},
        {"open the inlet test point", "open test point inlet"},
        {"read the highest manometer", "read manometer highest"},
        {"start the analyzer", "switch on analyser"},
        {"Get out!", "go outside"},
        {"leave the room", "go outside"},
        {"go back inside", "go back in"},
        {"measure the flow of the shower", "measure flow at shower"},
        {"wait for 90s", "wait 90 s"},
        {"wait 1 min 30 s", "wait 90 s"},
        {"wait 2 minutes", "wait 2 min"},
        {"wait 0.5 h", "wait 30 min"},
        {"listen 5 s", "listen for 5 s"},
        {"write because 3 and 5", "write because #3 #5"},
        {"reset", "press reset"},
        {"Tell the customer it is safe now, and why.", "tell customer it is safe now, and why."},
    };
    for (const auto& [sentence, expected] : said) EXPECT_EQ(canonical(sentence, job), expected);
}

TEST(Language, KeepsFreeWordsAsTheyWereSaid) {
    const auto parsed = parse_act("write done Replaced the sensor (10 kΩ); proved it.", test_job());
    ASSERT_TRUE(std::holds_alternative<Act>(parsed));
    EXPECT_EQ(std::get<Act>(parsed).text, "Replaced the sensor (10 kΩ); proved it.");
}

TEST(Language, SaysWhatItExpectedAndWhatIsNear) {
    EXPECT_EQ(
        refusal("open kitchn tap"),
        "\"open kitchn tap\" is no act I can read; expected a tap (kitchen tap, shower or bath "
        "tap) after \"open\". Did you mean \"open kitchen tap\" or \"open bath tap\"?");
    EXPECT_EQ(refusal("attach manometer"),
              "\"attach manometer\" is no act I can read; expected \"attach manometer to "
              "{point}\" or \"attach multimeter to {probe}\".");
    EXPECT_EQ(
        refusal("wait 30"),
        "\"wait 30\" is no act I can read; expected a time from 1 s to 60 min, such as \"30 s\" "
        "or \"2 min\" after \"wait\". Did you mean \"wait 30 s\"?");
    EXPECT_EQ(refusal("  "), "Say what you do; help lists the sentences.");
    EXPECT_TRUE(refusal("wait 61 min").find("expected a time from 1 s to 60 min") !=
                std::string::npos);
    EXPECT_TRUE(refusal(std::string(500, 'x')).find("at most 400 characters") != std::string::npos);
}

TEST(Language, SendsWhoWantsToIsolateAtOnceToTheActsThatDoIt) {
    for (const char* said : {"isolate heater", "isolate the heater", "make the heater safe",
                             "make heater safe", "make safe", "isolate"})
        EXPECT_EQ(refusal(said), "No single act does it: see help shut, help lock, help prove.")
            << said;
    EXPECT_NE(refusal("make heater warm"), refusal("make heater safe"));
}

TEST(Language, DoesNotSuggestWhatIsFarAway) {
    EXPECT_EQ(refusal("juggle").find("Did you mean"), std::string::npos);
}

TEST(Language, OffersEachPhraseWithHelpAndTime) {
    EXPECT_EQ(phrases().size(), phrase_rows().size());
    for (const auto& phrase : phrases()) {
        EXPECT_FALSE(phrase.help.empty()) << phrase.pattern;
        EXPECT_GE(phrase.seconds, 0.0);
    }
}

}  // namespace
}  // namespace emberpath::worksite
