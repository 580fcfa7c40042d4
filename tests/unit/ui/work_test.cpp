// Proves that a job at the terminal runs from arrival to debrief, that a script and a typing trainee are the
// same, and that an attempt which was interrupted anywhere ends in the same record.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "sim/records/line.hpp"
#include "tests/unit/ui/program.hpp"

namespace emberpath::app {
namespace {

using records::sample::contents;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

const std::string acts =
    "ask about problem\n"
    "# what does it say\nlook at display\n"
    "open kitchen tap fully\n"
    "wait 1 min\n"
    "measure flow at kitchen tap\n"
    "\n"
    "close kitchen tap\n"
    "hand in\n";

std::vector<std::string> work_on(const std::string& record) {
    return {"work", "tanager", "--seed", "7", "--record", record};
}

TEST(Work, AScriptRunsToItsDebriefAndItsRecordVerifies) {
    Program program;
    const auto record = program.file("r.jsonl");
    auto call = work_on(record);
    call.insert(call.end(), {"--script", program.written("s.acts", acts)});
    ASSERT_EQ(program(call), 0) << program.talk;
    EXPECT_THAT(program.output, AllOf(HasSubstr("> measure flow at kitchen tap"),
                                      HasSubstr("Debrief"), HasSubstr("A person decides")));
    EXPECT_EQ(program({"verify", record}), 0) << program.output;
    EXPECT_THAT(program.output, HasSubstr("The same, bit for bit: 7 acts"));
    EXPECT_EQ(program({"debrief", record, "--html", program.file("d.html"), "--json",
                       program.file("d.json")}),
              0);
    EXPECT_THAT(contents(program.file("d.html")), HasSubstr("</html>"));
    EXPECT_THAT(contents(program.file("d.json")), HasSubstr("\"overall\""));
}

TEST(Work, TypingAndScriptMakeTheSameRecord) {
    Program program;
    const auto typed = program.file("typed.jsonl"), scripted = program.file("scripted.jsonl");
    ASSERT_EQ(program(work_on(typed), "help tap\n" + acts, true), 0) << program.talk;
    auto call = work_on(scripted);
    call.insert(call.end(), {"--script", program.written("s.acts", acts)});
    ASSERT_EQ(program(call), 0) << program.talk;
    EXPECT_EQ(contents(typed), contents(scripted));
}

/// Where line `number` of the text begins, the header being line 1.
std::size_t begin_of_line(const std::string& text, std::size_t number) {
    std::size_t at = 0;
    for (std::size_t line = 1; line < number; ++line) at = text.find('\n', at) + 1;
    return at;
}

TEST(Work, AnAttemptCutOffAnywhereEndsInTheSameRecord) {
    Program program;
    const std::vector<std::string> sentences = {"look at display", "open kitchen tap", "wait 30 s",
                                                "hand in"};
    std::string all;
    for (const auto& sentence : sentences) all += sentence + "\n";
    const auto whole = program.file("whole.jsonl"), cut = program.file("cut.jsonl");
    ASSERT_EQ(program(work_on(whole), all), 0);
    const std::string text = contents(whole);
    const std::size_t handing_in = begin_of_line(text, 2 * sentences.size());
    // At each line end after the header and in the middle of each line. Weighing takes a while, so attempts cut
    // before the last act go on as far as that act, and the end is reached from two torn lines: the last act's
    // and the closing one.
    std::vector<std::size_t> lengths;
    for (auto end = text.find('\n') + 1; end < handing_in; end = text.find('\n', end) + 1) {
        lengths.push_back(end);
        lengths.push_back((end + text.find('\n', end)) / 2);
    }
    ASSERT_EQ(lengths.size(), 2 * (2 * sentences.size() - 2));
    for (const auto length : lengths) {
        records::sample::write(cut, text.substr(0, length));
        std::string rest;
        for (std::size_t i = records::read(cut).acts.size(); i + 1 < sentences.size(); ++i)
            rest += sentences[i] + "\n";
        ASSERT_EQ(program({"work", "tanager", "--record", cut}, rest), 0)
            << "cut to " << length << " bytes: " << program.talk;
        ASSERT_EQ(contents(cut), text.substr(0, handing_in)) << "cut to " << length << " bytes";
    }
    for (const auto length : {handing_in + 10, text.size() - 10}) {
        records::sample::write(cut, text.substr(0, length));
        const std::string rest = length < text.size() - 10 ? "hand in\n" : "";
        ASSERT_EQ(program({"work", "tanager", "--record", cut}, rest), 0)
            << "cut to " << length << " bytes: " << program.talk;
        ASSERT_EQ(contents(cut), text) << "cut to " << length << " bytes";
    }
}

TEST(Work, AFinishedAttemptIsTriedAgainFromAMomentCoachedAndInARecordOfItsOwn) {
    Program program;
    const auto first = program.file("first.jsonl"), again = program.file("again.jsonl");
    auto call = work_on(first);
    call.insert(call.end(), {"--assessed", "--script", program.written("s.acts", acts)});
    ASSERT_EQ(program(call), 0) << program.talk;
    const auto kept = contents(first);
    const auto rest = program.written("rest.acts", "close kitchen tap\nhand in\n");
    ASSERT_EQ(program({"fork", first, "--at", "01:00", "--record", again, "--script", rest}), 0)
        << program.talk;
    EXPECT_THAT(program.talk, HasSubstr("Back at 01:00, with what was done before it"));
    EXPECT_THAT(program.output, HasSubstr("Debrief"));  // coached: shown at once
    EXPECT_EQ(contents(first), kept);
    const auto then = records::read(first), now = records::read(again);
    ASSERT_TRUE(now.good() && now.closed);
    EXPECT_EQ(now.header.mode, worksite::Mode::coached);
    EXPECT_EQ(now.header.seed, then.header.seed);
    std::size_t before = 0;
    while (then.acts[before].tick < then.acts.front().tick + 600) ++before;
    ASSERT_GT(before, 1U);
    ASSERT_EQ(now.acts.size(), before + 2);
    for (std::size_t i = 0; i < before; ++i) {
        EXPECT_EQ(now.acts[i].sentence, then.acts[i].sentence);
        EXPECT_EQ(now.acts[i].shown, then.acts[i].shown) << now.acts[i].sentence;
        EXPECT_EQ(now.acts[i].end_tick, then.acts[i].end_tick) << now.acts[i].sentence;
    }
    EXPECT_EQ(program({"verify", again}), 0) << program.output;
}

TEST(Work, WhatCannotBeTriedAgainIsRefusedAndNothingIsWritten) {
    Program program;
    const auto record = program.file("r.jsonl"), to = program.file("to.jsonl");
    auto call = work_on(record);
    call.insert(call.end(),
                {"--assessed", "--script", program.written("s.acts", "look at display\n")});
    ASSERT_EQ(program(call), 0) << program.talk;
    EXPECT_EQ(program({"fork", record, "--at", "00:02", "--record", to}), 2);
    EXPECT_THAT(program.talk, HasSubstr("The attempt is not finished."));
    call = {"work", "tanager",  "--record",
            record, "--script", program.written("end.acts", "hand in\n")};
    ASSERT_EQ(program(call), 0) << program.talk;
    EXPECT_EQ(program({"fork", record, "--at", "75:00", "--record", to}), 2);
    EXPECT_THAT(program.talk, HasSubstr("over before that time"));
    for (const std::string wrong : {"", "3", "03:60", "-1:00", "01:00x", "one"}) {
        EXPECT_EQ(program({"fork", record, "--at", wrong, "--record", to}), 2) << wrong;
        EXPECT_THAT(program.talk, HasSubstr("--at")) << wrong;
    }
    EXPECT_FALSE(std::filesystem::exists(to));
}

TEST(Work, QuitKeepsTheAttemptAndSaysHowToGoOn) {
    Program program;
    const auto record = program.file("r.jsonl");
    EXPECT_EQ(program(work_on(record), "look at display\nquit\n", true), 0);
    EXPECT_THAT(program.output, HasSubstr("Kept."));
    EXPECT_THAT(program.talk, HasSubstr("emberpath work tanager --record " + record));
    EXPECT_EQ(program({"debrief", record}), 2);
    EXPECT_THAT(program.talk, HasSubstr("not finished"));
    EXPECT_EQ(program({"verify", record}), 0);
    EXPECT_THAT(program.output, HasSubstr("The attempt is unfinished."));
    EXPECT_EQ(program({"work", "tanager", "--record", record}, "hand in\n", true), 0);
    EXPECT_THAT(program.output, AllOf(HasSubstr("after 1 act."), HasSubstr("Debrief")));
}

TEST(Work, AnotherJobSeedOrModeIsNotMixedIntoARecord) {
    Program program;
    const auto record = program.file("r.jsonl");
    ASSERT_EQ(program(work_on(record), "quit\n"), 0);
    EXPECT_EQ(program({"work", "linnet", "--record", record}), 2);
    EXPECT_THAT(program.talk, HasSubstr("this record is of job \"tanager\""));
    EXPECT_EQ(program({"work", "tanager", "--seed", "8", "--record", record}), 2);
    EXPECT_THAT(program.talk, HasSubstr("seed 7"));
    EXPECT_EQ(program({"work", "tanager", "--assessed", "--record", record}), 2);
    EXPECT_THAT(program.talk, HasSubstr("began coached"));
    ASSERT_EQ(program(work_on(record), "hand in\n"), 0);
    EXPECT_EQ(program(work_on(record), "hand in\n"), 2);
    EXPECT_THAT(program.talk, HasSubstr("emberpath debrief"));
}

TEST(Work, AssessedModeKeepsTheDebriefForLater) {
    Program program;
    const auto record = program.file("r.jsonl");
    auto call = work_on(record);
    call.push_back("--assessed");
    EXPECT_EQ(program(call, acts, true), 0);
    EXPECT_THAT(program.output, AllOf(HasSubstr("assessed"), Not(HasSubstr("Outcome\n"))));
    EXPECT_EQ(program({"debrief", record}), 0);
    EXPECT_THAT(program.output, AllOf(HasSubstr("Mode: assessed."), HasSubstr("Outcome\n")));
}

TEST(Work, ABadScriptReportsEveryLineAndDoesNothing) {
    Program program;
    const auto record = program.file("r.jsonl");
    auto call = work_on(record);
    call.insert(call.end(),
                {"--script", program.written("s.acts", "look at displya\nlisten\njuggle\n")});
    EXPECT_EQ(program(call), 2);
    EXPECT_THAT(program.talk,
                AllOf(HasSubstr("s.acts:1"), HasSubstr("s.acts:3"), HasSubstr("2 problems")));
    EXPECT_THAT(program.output, IsEmpty());
    EXPECT_FALSE(std::filesystem::exists(record));
    call.back() = program.file("missing.acts");
    EXPECT_EQ(program(call), 2);
}

TEST(Work, AScriptThatGoesOnAfterHandingInStopsThere) {
    Program program;
    auto call = work_on(program.file("r.jsonl"));
    call.insert(call.end(), {"--script", program.written("s.acts", "hand in\nlisten\n")});
    EXPECT_EQ(program(call), 2);
    EXPECT_THAT(program.talk, AllOf(HasSubstr("s.acts:2"), HasSubstr("over")));
}

TEST(Work, AScriptThatGoesOnAfterAnInjuryLeavesAClosedRecord) {
    Program program;
    const auto record = program.file("r.jsonl");
    auto call = work_on(record);
    call.insert(call.end(), {"--script", program.written("s.acts",
                                                         "take cover off\nunplug outlet sensor\n"
                                                         "refit cover\nhand in\n")});
    EXPECT_EQ(program(call), 2);
    EXPECT_THAT(program.talk, AllOf(HasSubstr("s.acts:3"), HasSubstr("over")));
    EXPECT_EQ(program({"debrief", record}), 0) << program.talk;
    EXPECT_THAT(program.output, HasSubstr("Safety gates not met"));
}

/// A record edited with care: every chain is worked out anew.
std::string rechained(const std::string& text, const std::string& found, const std::string& put) {
    std::istringstream lines(text);
    std::string out, chain(records::first_chain);
    for (std::string line; std::getline(lines, line);) {
        std::string object = records::open_seal(line).object;
        if (const auto at = object.find(found); at != std::string::npos)
            object.replace(at, found.size(), put);
        chain = records::next_chain(chain, object);
        out += records::seal(object, chain) + "\n";
    }
    return out;
}

TEST(Work, AnEditedModeProposalOrWriteUpDoesNotVerifyEvenWithANewChain) {
    Program program;
    const auto record = program.file("r.jsonl");
    ASSERT_EQ(program(work_on(record), "write told nobody was there\nhand in\n"), 0);
    const std::string good = contents(record);
    ASSERT_EQ(program({"verify", record}), 0) << program.output;
    const std::pair<const char*, const char*> edits[] = {{"\"coached\"", "\"assessed\""},
                                                         {"Suggested: not yet", "Suggested: yes"},
                                                         {"nobody was there", "everybody knows"}};
    for (const auto& [found, put] : edits) {
        records::sample::write(record, rechained(good, found, put));
        EXPECT_EQ(program({"verify", record}), 1) << found;
        EXPECT_THAT(program.output, HasSubstr("Not the same")) << found;
    }
}

TEST(Work, ARecordOfAnotherBuildIsNotCalledFalse) {
    Program program;
    const auto record = program.file("r.jsonl");
    ASSERT_EQ(program(work_on(record), "write told nobody was there\nhand in\n"), 0);
    const std::string good = contents(record);
    const std::string mark = "\"build\":\"" + std::string(records::build_mark()) + "\"";
    ASSERT_EQ(good.find(mark) == std::string::npos, false);
    const std::string moved = rechained(good, "nobody was there", "everybody knows");
    const std::pair<std::string, const char*> builds[] = {
        {"\"build\":\"0123456789abcdef\"", "build 0123456789abcdef; this is build "},
        {"\"built\":\"\"", "one from before records carried a build mark"}};
    for (const auto& [put, said] : builds) {
        records::sample::write(record, rechained(moved, mark, put));
        EXPECT_EQ(program({"verify", record}), 2);
        EXPECT_THAT(program.talk,
                    AllOf(HasSubstr("Cannot be compared: another build"), HasSubstr(said),
                          HasSubstr("does not make the record false")));
        EXPECT_EQ(program({"debrief", record}), 2);
        records::sample::write(record, rechained(good, mark, put));
        EXPECT_EQ(program({"verify", record}), 0) << "where it computes the same, it is the same";
    }
}

TEST(Work, WithoutATerminalTheDemoIsPlayed) {
    Program program;
    // As the demo left it the last time, or somebody else: it is played anew.
    const auto left = program.file("state") + "/records";
    std::filesystem::create_directories(left);
    records::sample::write(left + "/demo.jsonl", "not a record\n");
    EXPECT_EQ(program({}), 0) << program.talk;
    EXPECT_THAT(program.output,
                AllOf(HasSubstr("> "), HasSubstr("Debrief"), HasSubstr("Safety gates met")));
    EXPECT_TRUE(records::read(left + "/demo.jsonl").good());
}

TEST(Work, AtATerminalAJobIsChosenByNumberOrWord) {
    Program program;
    EXPECT_EQ(program({}, "no such\ntanager\nquit\n", true), 0);
    EXPECT_THAT(program.output,
                AllOf(HasSubstr("There is no job \"no such\""), HasSubstr("Tanager")));
    EXPECT_EQ(program({}, "\n", true), 0);
}

TEST(Work, ADamagedRecordIsRefusedWithItsLine) {
    Program program;
    const auto record = program.file("r.jsonl");
    ASSERT_EQ(program(work_on(record), acts), 0);
    std::string text = contents(record);
    const auto at = text.find("open kitchen tap fully");
    text.replace(at, 4, "shut");
    records::sample::write(record, text);
    EXPECT_EQ(program({"verify", record}), 1);
    EXPECT_THAT(program.output, AllOf(HasSubstr("r.jsonl:"), HasSubstr("not as it was written")));
    EXPECT_EQ(program({"debrief", record}), 2);
    EXPECT_EQ(program(work_on(record)), 2);
}

}  // namespace
}  // namespace emberpath::app
