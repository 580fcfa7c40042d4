// Proves that text, JSON and HTML of a debrief say the same, in the promised order, and fit the page.

#include "sim/records/debrief.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "sim/records/layout.hpp"
#include "tests/unit/records/sample.hpp"

namespace emberpath::records {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

using sample::full_debrief;

/// Every string and number in a JSON tree, as a reader of the text would look for it.
void collect(const nlohmann::json& node, std::vector<std::string>& words) {
    if (node.is_string() && !node.get<std::string>().empty())
        words.push_back(node.get<std::string>());
    if (node.is_structured())
        for (const auto& child : node) collect(child, words);
}

/// A record, its job and its assessment, of which a test changes what it is about.
struct Plain {
    Plain() {
        record.header = sample::header();
        job.healthy = plant::natural_gas_parameters();
    }
    [[nodiscard]] Debrief debrief() const { return make_debrief(record, job, assessment); }
    Record record;
    worksite::Job job;
    scoring::Assessment assessment = sample::assessment();
};

/// Wrapped text back on one line, so that sentences can be found in it.
std::string unwrapped(const std::string& text) {
    std::string flat;
    for (const char c : text)
        if (c != ' ' && c != '\n') flat += c;
    return flat;
}

std::string without_unit(const std::string& value) {
    return value.substr(0, value.find(' '));
}

TEST(Debrief, JsonSaysNothingThatTheHtmlDoesNot) {
    const auto debrief = full_debrief();
    std::vector<std::string> words;
    auto json = nlohmann::json::parse(to_json(debrief));
    json["readings"].erase(1);  // the same under every cause: only its number is printed
    collect(json, words);
    std::string html = to_html(debrief);
    for (const auto& [coded, plain] : std::vector<std::pair<std::string, std::string>>{
             {"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&amp;", "&"}})
        for (auto at = html.find(coded); at != std::string::npos; at = html.find(coded))
            html.replace(at, coded.size(), plain);
    EXPECT_GT(words.size(), 40U);
    for (const auto& word : words)
        if (word != "by a person") {
            EXPECT_THAT(html, HasSubstr(word));
        }
}

TEST(Debrief, PrintsADashWhereTheWholeCouldNotBeScored) {
    auto debrief = full_debrief();
    debrief.overall = 0.0;
    debrief.overall_scored = false;
    EXPECT_THAT(to_text(debrief), Not(HasSubstr("overall         0")));
    EXPECT_EQ(overall_text(debrief), "-");
    EXPECT_TRUE(nlohmann::json::parse(to_json(debrief))["overall"].is_null());
}

TEST(Debrief, GivesAMinusToAnActThatRaisedTheDoubtAndSaysOnceWhatABitIs) {
    Debrief::Act act;
    act.weighed = true;
    act.bits = -0.34;
    EXPECT_EQ(bits_text(act), "-0.3");
    act.bits = -0.01;
    EXPECT_EQ(bits_text(act), "0.0");
    for (const auto& text : {to_text(full_debrief()), to_html(full_debrief())}) {
        const auto first = text.find("One bit halves what is open");
        EXPECT_NE(first, std::string::npos);
        EXPECT_EQ(text.find("One bit halves what is open", first + 1), std::string::npos);
    }
}

TEST(Debrief, NamesEachFigureOfAnActThatShowsSeveral) {
    Plain plain;
    const scoring::Class truth = scoring::class_or_first_of(plain.job.faults);
    RecordedAct act;
    act.sentence = "combustion test";
    int number = 11;
    for (const char* draw : {"small", "full"})
        for (const auto& [title, shown] : {std::pair{"oxygen in the flue gas", "11.9 %"},
                                           std::pair{"carbon monoxide in the flue gas", "8 ppm"}}) {
            act.readings.push_back({++number, draw, 0.0});
            plain.assessment.comparisons.push_back({number, title, shown, {{truth, shown, false}}});
        }
    plain.record.acts = {act};
    EXPECT_EQ(plain.debrief().acts.at(0).value,
              "small draw: #12 O2 11.9 %; #13 CO 8 ppm; full draw: #14 O2 11.9 %; #15 CO 8 ppm");
    plain.record.acts[0].readings.resize(1);
    EXPECT_EQ(plain.debrief().acts.at(0).value, "#12 11.9 %");
}

TEST(Debrief, ShowsHowTheLeadingCausesStoodOnArrivalAndAfterEachReading) {
    Plain plain;
    const scoring::Class truth = scoring::class_or_first_of(plain.job.faults);
    const scoring::Class igniter = faults::Remedy::replace_igniter,
                         valve = faults::Remedy::replace_gas_valve;
    RecordedAct act;
    act.sentence = "read manometer";
    act.readings = {{1, "gas_inlet_pressure", 620.0}};
    plain.record.acts = {act, RecordedAct{}};
    plain.assessment.comparisons = {
        {1, "firing rate asked for, on the service readout", "148 MJ/h", {{truth, "1", false}}}};
    plain.assessment.on_arrival = {{valve, 0.5}, {igniter, 0.3}, {truth, 0.2}};
    scoring::ActWorth worth;
    worth.bits_gained = 1.0;
    worth.before = plain.assessment.on_arrival;
    worth.after = {{truth, 0.996}, {igniter, 0.003}, {valve, 0.001}};
    plain.assessment.acts = {worth};
    const auto debrief = plain.debrief();
    EXPECT_THAT(debrief.leading,
                ElementsAre(scoring::class_title(truth), scoring::class_title(igniter),
                            scoring::class_title(valve)));
    ASSERT_EQ(debrief.stands.size(), 2U);
    EXPECT_EQ(debrief.stands[0].acts, 0U);
    EXPECT_EQ(debrief.stands[1].acts, 1U);
    const std::string text = unwrapped(to_text(debrief));
    EXPECT_THAT(text, HasSubstr("-onarrival203050<1"));
    EXPECT_THAT(text, HasSubstr("00:00#1firingrateaskedfor>99<1<1<1(readout)"));
    auto silent = full_debrief();
    silent.stands.clear();
    EXPECT_THAT(to_text(silent), Not(HasSubstr("How the causes stood")));
    EXPECT_THAT(to_html(silent), Not(HasSubstr("How the causes stood")));
}

TEST(Debrief, OfAnAttemptThatCannotBeScoredSaysNothingOfWhatItsReadingsShow) {
    Plain plain;
    plain.job.intended = faults::Remedy::replace_igniter;
    plain.assessment.reference_path = "word on the display";
    plain.assessment.still_open = {"You could have known: this."};
    plain.assessment.overall_scored = false;
    const auto debrief = plain.debrief();
    EXPECT_EQ(debrief.outcome.at(0), "Put right.");
    EXPECT_EQ(debrief.outcome.at(1),
              "What it was: Gas pipe too small. What the readings say of it is not scored; see "
              "Areas.");
    EXPECT_EQ(debrief.reference, "");
    EXPECT_TRUE(debrief.open.empty() && debrief.stands.empty());
}

TEST(Debrief, CutsNoActAndNoShownWord) {
    Debrief made = full_debrief();
    const std::string said = "\"It started when the painters were here, two weeks ago or so.\"";
    made.acts[1].value = said;
    made.acts[1].sentence = "write done cleaned the flue terminal and proved combustion";
    const std::string text = to_text(made);
    EXPECT_THAT(text.substr(text.find("Act by act")), Not(HasSubstr("...")));
    for (const char* word : {"painters", "so.\"", "proved", "combustion"})
        EXPECT_THAT(text, HasSubstr(word));
}

TEST(Debrief, PutsNoHeadOverATableThatIsNotThere) {
    Debrief made = full_debrief();
    made.readings.erase(made.readings.begin());
    for (const auto& text : {to_text(made), to_html(made)}) {
        EXPECT_THAT(text, HasSubstr("The same under every cause shown: #2."));
        EXPECT_THAT(text, Not(HasSubstr("The first cause is that")));
    }
}

TEST(Debrief, SaysInOneLineWhatAllLeadingCausesExpectedAlike) {
    Plain plain;
    scoring::LikelihoodInput input;
    input.number = 5;
    input.under = {{faults::Remedy::replace_igniter, 0.6, "0 ppm", "factor 2.92", 1.0},
                   {faults::Remedy::replace_gas_valve, 0.3, "0 ppm", "factor 2.92", 1.0}};
    plain.assessment.inputs = {input};
    input.under[1].likelihood = 0.5;
    input.under[0].before = 0.995;
    plain.assessment.inputs.push_back(input);
    const auto debrief = make_debrief(plain.record, plain.job, plain.assessment, Reader::assessor);
    ASSERT_EQ(debrief.inputs.at(0).under.size(), 1U);
    EXPECT_THAT(debrief.inputs[0].under[0], HasSubstr("0 ppm, factor 2.92 (all the same: "));
    EXPECT_EQ(debrief.inputs.at(1).under.size(), 2U);
    EXPECT_TRUE(debrief.inputs[1].settled);
    EXPECT_THAT(unwrapped(to_text(debrief)), Not(HasSubstr("0.50)")));
}

TEST(Debrief, TextAndJsonAgreeOnEveryParagraphAndScore) {
    const auto debrief = full_debrief();
    const auto json = nlohmann::json::parse(to_json(debrief));
    const std::string text = unwrapped(to_text(debrief));
    std::vector<std::string> words;
    for (const auto* part :
         {"debrief", "call_out", "mode", "outcome", "gates", "proposal", "limits"})
        collect(json.at(part), words);
    for (const auto& unsafe : json.at("unsafe_acts")) words.push_back(unsafe.at("text"));
    for (const auto& area : json.at("areas")) {
        words.push_back(area.at("reason"));
        if (area.at("scored"))
            words.push_back(area.at("area").get<std::string>() +
                            score_text(area.at("score").get<double>()));
    }
    for (const auto& word : words) EXPECT_THAT(text, HasSubstr(unwrapped(word)));
    EXPECT_THAT(text, HasSubstr("overall" + score_text(json.at("overall").get<double>())));
}

TEST(Debrief, TextAndJsonAgreeOnActsAndReadings) {
    auto debrief = full_debrief();
    const auto json = nlohmann::json::parse(to_json(debrief));
    const std::string text = to_text(debrief);
    for (const auto& act : json.at("acts")) {
        EXPECT_THAT(text, HasSubstr(act.at("time").get<std::string>() + "  " +
                                    act.at("act").get<std::string>()));
        EXPECT_THAT(text, HasSubstr(act.at("showed").get<std::string>()));
    }
    EXPECT_THAT(text, HasSubstr(" 1.2\n"));
    EXPECT_THAT(text, HasSubstr("The same under every cause shown: #2."));
    for (const auto& reading : json.at("readings"))
        for (const auto& cell : reading.at("under_other_causes"))
            EXPECT_EQ(
                unwrapped(text).find(without_unit(cell.at("value")) + "x") != std::string::npos,
                cell.at("ruled_out").get<bool>())
                << cell;
}

TEST(Debrief, PartsStandInTheirOrderWithTheOutcomeFirst) {
    const std::string text = to_text(full_debrief());
    std::size_t at = 0;
    for (const auto* part : {"Outcome", "Critical. The cover came off with 230 V inside.", "Areas",
                             "Proposal", "A person decides.", "Points lost", "Act by act",
                             "The same readings under the other causes", "Limits", "Proof"}) {
        const auto found = text.find(part, at);
        ASSERT_NE(found, std::string::npos) << part;
        at = found;
    }
}

TEST(Debrief, NamesWhereEachPointWentAndGathersTheSmallOnesInOrderWithTheirActs) {
    const std::string text = unwrapped(to_text(full_debrief()));
    for (const auto* line : {"safe work -54.8 12:30 open the cover: The cover came off live.",
                             "proof -55.0 - never handed in: Not done: the leak test.",
                             "evidence -0.7 under half a point each: 04:10 read the manometer; "
                             "05:00 wait 5 min."})
        EXPECT_THAT(text, HasSubstr(unwrapped(line)));
    auto whole = full_debrief();
    whole.lost = {{"proof", "09:00", "hand in", "leak test", "Not done: leak test.", 12.5},
                  {"proof", "09:00", "hand in", "a tag", "Not done: a tag.", 12.5},
                  {"proof", "09:00", "hand in", "new part", "The fault remains.", 5.0}};
    EXPECT_THAT(unwrapped(to_text(whole)),
                HasSubstr(unwrapped("proof -5.0 09:00 The fault remains. proof -25.0 09:00 Not "
                                    "done: leak test; a tag.")));
    whole.lost.clear();
    EXPECT_THAT(to_text(whole), Not(HasSubstr("Points lost")));
}

TEST(Debrief, ShowsWhatAWeighingRestedOnOnlyWhereItWasAskedFor) {
    EXPECT_THAT(to_text(full_debrief()), HasSubstr("What each weighing rested on"));
    auto for_trainee = full_debrief();
    for_trainee.inputs.clear();
    for (const auto& text : {to_text(for_trainee), to_html(for_trainee)})
        EXPECT_THAT(text, Not(HasSubstr("What each weighing rested on")));
}

TEST(Debrief, FitsTheHundredColumns) {
    std::istringstream in(to_text(full_debrief()));
    for (std::string line; std::getline(in, line);) EXPECT_LE(width_of(line), 100U) << line;
}

TEST(Debrief, ASilentAttemptSaysSo) {
    Debrief made = full_debrief();
    made.unsafe_acts.clear();
    made.readings.clear();
    made.acts.clear();
    EXPECT_THAT(to_text(made), HasSubstr("No unsafe act."));
    EXPECT_THAT(to_text(made), HasSubstr("No numbered reading was taken."));
    EXPECT_THAT(to_html(made), HasSubstr("No unsafe act."));
}

TEST(Debrief, ProvesUnderWhichRulesItWasJudged) {
    Plain plain;
    plain.job.practice.name = "Strict practice";
    plain.job.practice.date = "2026-03-02";
    plain.job.practice.holds_in = "an invented town";
    const auto made = plain.debrief();
    EXPECT_THAT(unwrapped(to_text(made)),
                HasSubstr(unwrapped("rules Strict practice, 2 March 2026")));
    EXPECT_THAT(unwrapped(to_text(made)), HasSubstr(unwrapped("rules hold in an invented town")));
    EXPECT_THAT(to_html(made), HasSubstr("<th>rules</th><td>Strict practice, 2 March 2026</td>"));
    EXPECT_THAT(to_json(made), HasSubstr(R"("rules": "Strict practice, 2 March 2026")"));
    EXPECT_THAT(to_json(made), HasSubstr(R"("rules hold in": "an invented town")"));
}

TEST(Debrief, SaysThatTheBoardWasLostBesideTheCauseThatWasPutRight) {
    Plain plain;
    plain.job.intended = faults::Remedy::replace_igniter;
    auto& assessment = plain.assessment;
    EXPECT_EQ(plain.debrief().outcome.front(), "Put right, and the readings show why.");
    assessment.breaches = {{"board_harmed", "Water ran over the open board.", false, 0.2, 0}};
    EXPECT_EQ(plain.debrief().outcome.front(),
              "The cause was put right, the heater's board was lost, and the readings show why.");
    assessment.fixed = false;
    EXPECT_EQ(plain.debrief().outcome.front(),
              "Not put right, the heater's board was lost, although the readings show the cause.");
}

TEST(Debrief, SaysWhichOfTwoFiguresIsTheCauseAloneAndWhichIsWithPairs) {
    Plain plain;
    auto& assessment = plain.assessment;
    assessment.true_class_probability = assessment.true_remedy_probability = 0.95;
    EXPECT_EQ(plain.debrief().outcome.at(1),
              "What it was: Gas pipe too small. The evidence gave it 95 % before anything was done "
              "about it.");
    assessment.true_remedy_probability = 0.998;
    EXPECT_EQ(plain.debrief().outcome.at(1),
              "What it was: Gas pipe too small. Before anything was done about it the evidence "
              "gave it 95 % as the only cause, and over 99 % alone or beside another: its remedy "
              "was needed either way.");
}

TEST(Debrief, SetsAStatedConfidenceBesideTheComputedOne) {
    Plain plain;
    auto& assessment = plain.assessment;
    const auto said = [&](double stated, double computed) {
        assessment.stated_confidence = stated;
        assessment.diagnosis_probability = computed;
        return plain.debrief().outcome.at(3);
    };
    EXPECT_EQ(plain.debrief().outcome.size(), 4U);  // not handed in, no more
    EXPECT_EQ(said(0.8, 0.93),
              "You said 80 %; your own readings gave 93 % before it was settled. They showed more "
              "than you trusted them for.");
    EXPECT_THAT(said(0.95, 0.34), HasSubstr("You were surer than that."));
    EXPECT_THAT(said(0.9, 0.93), HasSubstr("You knew how much you knew."));
}

TEST(Debrief, SaysInWordsWhenAReadingSpeaksAgainstTheTrueCause) {
    Plain plain;
    auto& assessment = plain.assessment;
    const scoring::Class truth = scoring::class_or_first_of(plain.job.faults);
    assessment.comparisons = {{5, "spark at the igniter", "spark", {{truth, "no spark", true}}},
                              {6, "flame", "restless", {{truth, "restless", false}}}};
    const auto debrief = plain.debrief();
    ASSERT_EQ(debrief.against.size(), 1U);
    EXPECT_THAT(debrief.against.front(), HasSubstr("#5 by itself speaks against the cause"));
    EXPECT_THAT(debrief.against.front(), HasSubstr("you read spark, where"));
}

TEST(Debrief, HtmlRunsNothingFetchesNothingAndShowsMarkupAsText) {
    const std::string html = to_html(full_debrief());
    for (const auto* forbidden : {"<script", "http:", "https:", "src=", "@import", "<sometimes>"})
        EXPECT_THAT(html, Not(HasSubstr(forbidden)));
    EXPECT_THAT(html, HasSubstr("&lt;sometimes&gt; &amp; &quot;always&quot;"));
    EXPECT_THAT(html, HasSubstr("@media print"));
}

TEST(Debrief, ScoresAreWholePointsAndUnweighedActsHaveNoBits) {
    EXPECT_EQ(score_text(64.52), "65");
    EXPECT_EQ(bits_text({"", "", "", "", 0.04, true}), "0.0");
    EXPECT_EQ(bits_text({"", "", "", "", 0.04, false}), "-");
}

TEST(Layout, WrapsAtBlanksAndNeverOverflows) {
    EXPECT_THAT(wrap("one two three", 7), ElementsAre("one two", "three"));
    EXPECT_THAT(wrap("incomprehensible", 6), ElementsAre("incomp", "rehens", "ible"));
    EXPECT_THAT(wrap("", 6), ElementsAre(""));
    EXPECT_THAT(wrap("a incomprehensible b", 6), ElementsAre("a", "incomp", "rehens", "ible b"));
}

TEST(Layout, CountsCharactersNotBytes) {
    EXPECT_EQ(width_of("8.6 µA"), 6U);
    EXPECT_EQ(row({{6, true}, {3}}, {"µA", "x"}), "    µA  x\n");
    EXPECT_EQ(paragraph("50 °C and more", 9, 1, "- "), " - 50 °C\n   and\n   more\n");
}

}  // namespace
}  // namespace emberpath::records
