// Proves that a record comes back from disk as it was written, bit for bit, that every damage is found
// and named, and that a line cut short by a power cut costs nothing but itself.

#include "sim/records/record.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <bit>
#include <cmath>

#include "sim/records/line.hpp"
#include "tests/unit/records/sample.hpp"

namespace emberpath::records {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const auto& line : lines) text += line + "\n";
    return text;
}

TEST(Record, ComesBackAsItWasWritten) {
    const sample::Folder folder;
    const Record record = read(sample::closed_record(folder));
    EXPECT_THAT(record.problems, IsEmpty());
    EXPECT_THAT(record.notes, IsEmpty());
    EXPECT_EQ(record.header.job, "tanager");
    EXPECT_EQ(record.header.seed, 18446744073709551615U);
    EXPECT_EQ(record.header.mode, worksite::Mode::assessed);
    EXPECT_EQ(record.header.program_version, program_version);
    ASSERT_THAT(record.acts, SizeIs(2));
    EXPECT_EQ(record.acts[0].sentence, "read the manometer");
    EXPECT_EQ(record.acts[0].tick, 6000);
    EXPECT_EQ(record.acts[0].end_tick, 6200);
    EXPECT_THAT(record.acts[0].shown, ElementsAre("a line with \"quotes\", µ and ° in it"));
    EXPECT_EQ(record.acts[0].state_hash, "0123456789abcdef");
    EXPECT_TRUE(record.closed);
    EXPECT_TRUE(record.gates_met);
    ASSERT_THAT(record.scores, SizeIs(6));
    EXPECT_EQ(record.scores.back().area, "overall");
}

TEST(Record, ValuesKeepEveryBit) {
    const sample::Folder folder;
    const Record record = read(sample::closed_record(folder));
    EXPECT_EQ(record.acts[0].readings[0].value, 1234.5678901234567);
    EXPECT_TRUE(std::signbit(record.acts[1].readings[0].value));
    EXPECT_EQ(record.scores[2].score, 1.0 / 3.0);
}

TEST(Record, AnActIsOnDiskBeforeItsResult) {
    const sample::Folder folder;
    Writer writer(folder.file("r.jsonl"), sample::header());
    writer.begin_act(10, "shut off the gas");
    const Record record = read(folder.file("r.jsonl"));  // while the writer still holds the file
    EXPECT_THAT(record.problems, IsEmpty());
    ASSERT_THAT(record.acts, SizeIs(1));
    EXPECT_EQ(record.acts[0].sentence, "shut off the gas");
    EXPECT_FALSE(record.acts[0].finished);
    EXPECT_FALSE(record.closed);
}

TEST(Record, EveryChangedByteIsFound) {
    const sample::Folder folder;
    const auto file = sample::closed_record(folder);
    const std::string good = sample::contents(file);
    int missed = 0;
    for (std::size_t i = 0; i + 1 < good.size(); ++i) {  // the last byte is the closing line end
        std::string bad = good;
        bad[i] = static_cast<char>(bad[i] ^ 0x01);
        sample::write(file, bad);
        const Record record = read(file);
        if (record.good() && record.notes.empty()) ++missed;
    }
    EXPECT_EQ(missed, 0);
}

TEST(Record, AMissingOrSwappedLineIsFound) {
    const sample::Folder folder;
    const auto file = sample::closed_record(folder);
    const auto good = lines_of(sample::contents(file));
    for (std::size_t i = 0; i + 1 < good.size(); ++i) {
        auto missing = good;
        missing.erase(missing.begin() + static_cast<std::ptrdiff_t>(i));
        sample::write(file, joined(missing));
        EXPECT_FALSE(read(file).good()) << "without line " << i + 1;
        auto swapped = good;
        std::swap(swapped[i], swapped[i + 1]);
        sample::write(file, joined(swapped));
        EXPECT_FALSE(read(file).good()) << "lines " << i + 1 << " and " << i + 2 << " swapped";
    }
}

TEST(Record, OneChangeIsReportedOnceWithItsLineAndRemedy) {
    const sample::Folder folder;
    const auto file = sample::closed_record(folder);
    auto lines = lines_of(sample::contents(file));
    const auto at = lines[2].find("1234.5");
    ASSERT_NE(at, std::string::npos);
    lines[2].replace(at, 6, "1834.5");
    sample::write(file, joined(lines));
    const Record record = read(file);
    ASSERT_THAT(record.problems, SizeIs(1));
    EXPECT_EQ(record.problems[0].line, 3);
    EXPECT_THAT(record.problems[0].found, HasSubstr("not as it was written"));
    EXPECT_THAT(record.problems[0].expected, HasSubstr("untouched file"));
}

TEST(Record, CutAtAnyByteItIsReadableAndLosesAtMostTheTornLine) {
    const sample::Folder folder;
    const auto file = sample::closed_record(folder);
    const std::string good = sample::contents(file);
    const std::size_t header_end = good.find('\n') + 1;
    for (std::size_t length = header_end; length < good.size(); ++length) {
        sample::write(file, good.substr(0, length));
        const Record record = read(file);
        ASSERT_THAT(record.problems, IsEmpty()) << "cut to " << length << " bytes";
        const auto whole_lines = static_cast<std::size_t>(
            std::count(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(length), '\n'));
        const std::size_t known =
            1 + record.acts.size() +
            static_cast<std::size_t>(std::count_if(record.acts.begin(), record.acts.end(),
                                                   [](const auto& act) { return act.finished; })) +
            (record.closed ? 1 : 0);
        ASSERT_GE(known, whole_lines) << "cut to " << length << " bytes";
        ASSERT_EQ(record.notes.size(), known == whole_lines && good[length - 1] != '\n' ? 1U : 0U)
            << "cut to " << length << " bytes";
    }
}

TEST(Record, GoesOnAfterATornLine) {
    const sample::Folder folder;
    const auto file = folder.file("r.jsonl");
    {
        Writer writer(file, sample::header());
        writer.begin_act(10, "look at the display");
        writer.end_act(sample::entry(20, 0, 1.0), 1);
        writer.begin_act(20, "listen");
    }
    const std::string whole = sample::contents(file);
    sample::write(file, whole.substr(0, whole.size() - 9));
    {
        const Record torn = read(file);
        ASSERT_THAT(torn.notes, SizeIs(1));
        Writer writer(torn);
        writer.begin_act(30, "wait 1 min");
        writer.end_act(sample::entry(630, 0, 2.0), 2);
    }
    const Record record = read(file);
    EXPECT_THAT(record.problems, IsEmpty());
    EXPECT_THAT(record.notes, IsEmpty());
    ASSERT_THAT(record.acts, SizeIs(2));
    EXPECT_EQ(record.acts[1].sentence, "wait 1 min");
}

TEST(Record, AnUnfinishedActGetsItsResultLater) {
    const sample::Folder folder;
    const auto file = folder.file("r.jsonl");
    { Writer(file, sample::header()).begin_act(10, "look at the display"); }
    { Writer(read(file)).end_act(sample::entry(20, 0, 1.0), 1); }
    const Record record = read(file);
    EXPECT_THAT(record.problems, IsEmpty());
    ASSERT_THAT(record.acts, SizeIs(1));
    EXPECT_TRUE(record.acts[0].finished);
}

TEST(Record, AGoodLastLineWithoutLineEndIsKept) {
    const sample::Folder folder;
    const auto file = folder.file("r.jsonl");
    { Writer(file, sample::header()).begin_act(10, "look at the display"); }
    const std::string whole = sample::contents(file);
    sample::write(file, whole.substr(0, whole.size() - 1));
    { Writer(read(file)).end_act(sample::entry(20, 0, 1.0), 1); }
    const Record record = read(file);
    EXPECT_THAT(record.problems, IsEmpty());
    EXPECT_THAT(record.acts, SizeIs(1));
}

TEST(Record, IsNeverOverwritten) {
    const sample::Folder folder;
    const auto file = sample::closed_record(folder);
    EXPECT_THROW(Writer(file, sample::header()), CannotWrite);
}

TEST(Record, HasOneWriterAtATime) {
    const sample::Folder folder;
    const auto file = folder.file("r.jsonl");
    const Writer first(file, sample::header());
    try {
        const Writer second(read(file));
        FAIL() << "two writers at once";
    } catch (const CannotWrite& refusal) {
        EXPECT_THAT(refusal.what(), HasSubstr("another program is writing this record"));
    }
}

TEST(Record, AFullDiskIsReportedAndNotForgotten) {
    if (!std::filesystem::exists("/dev/full")) GTEST_SKIP() << "no /dev/full here";
    Record record;
    record.file = "/dev/full";
    record.chain = first_chain;
    EXPECT_THROW(
        {
            Writer writer(record);
            writer.begin_act(1, "listen");
        },
        CannotWrite);
}

TEST(Record, ReportsEveryProblemAtOnce) {
    const sample::Folder folder;
    const auto file = folder.file("r.jsonl");
    std::string chain(first_chain), text;
    const auto add = [&](const std::string& object) {
        chain = next_chain(chain, object);
        text += seal(object, chain) + "\n";
    };
    add(R"({"record":"emberpath","schema":1,"program":"0.1.0","job":7,"scenario_hash":"x","seed":-1,"mode":"easy"})");
    add(R"({"act":2,"tick":-5,"sentence":"look"})");
    add(R"({"result":1,"tick":10,"shown":[3],"readings":[{"number":1,"quantity":"q"}],"state":"0"})");
    add(R"({"tea":true})");
    sample::write(file, text);
    std::vector<std::string> found;
    std::vector<int> at;
    for (const auto& problem : read(file).problems) {
        found.push_back(problem.found);
        at.push_back(problem.line);
        EXPECT_FALSE(problem.expected.empty()) << problem.found;
    }
    EXPECT_THAT(found, ElementsAre("job: found 7", "seed: found -1", "mode: found \"easy\"",
                                   "act: found number 2, expected 1", "tick: found -5",
                                   "shown: an entry is not text", "value: is missing",
                                   "neither an act, a result nor the closing line"));
    EXPECT_THAT(at, ElementsAre(1, 1, 1, 2, 2, 3, 3, 4));
}

TEST(Record, AFileThatIsNoRecordIsRefusedInWords) {
    const sample::Folder folder;
    const auto file = folder.file("letter.txt");
    sample::write(file, "Dear customer,\n");
    const Record record = read(file);
    ASSERT_THAT(record.problems, SizeIs(1));
    EXPECT_EQ(record.problems[0].found, "not a JSON object");
    EXPECT_FALSE(read(folder.file("missing.jsonl")).good());
    sample::write(file, "");
    EXPECT_EQ(read(file).problems[0].found, "the file is empty");
}

TEST(Chain, DependsOnEveryLineBefore) {
    EXPECT_NE(next_chain("a", "{}"), next_chain("b", "{}"));
    EXPECT_NE(next_chain("a", "{\"x\":1}"), next_chain("a", "{\"x\":2}"));
    const auto opened = open_seal(seal(R"({"x":1})", "0123456789abcdef"));
    EXPECT_TRUE(opened.sealed);
    EXPECT_EQ(opened.object, R"({"x":1})");
    EXPECT_EQ(opened.chain, "0123456789abcdef");
    EXPECT_FALSE(open_seal(R"({"x":1})").sealed);
}

TEST(Record, KeepsOnlySentencesThatComeBackUnchanged) {
    for (const std::string good :
         {"listen", "tell customer \"50 °C\" is enough", "µΩ€", "\U0001F525"})
        EXPECT_TRUE(can_be_kept(good)) << good;
    for (const std::string bad : {"", "tab\there", "\xff", "\xc3", "\xc0\xaf", "\xed\xa0\x80",
                                  "\xf4\x90\x80\x80", "\xe2\x82", "\xc2\x85", "\x7f"})
        EXPECT_FALSE(can_be_kept(bad)) << testing::PrintToString(bad);
    EXPECT_TRUE(can_be_kept(std::string(longest_sentence, 'a')));
    EXPECT_FALSE(can_be_kept(std::string(longest_sentence + 1, 'a')));
}

TEST(Version, IsTheOneOfTheBuild) {
    const std::string cmake =
        sample::contents(std::string(EMBERPATH_SOURCE_DIR) + "/CMakeLists.txt");
    EXPECT_THAT(cmake,
                HasSubstr("project(emberpath VERSION " + std::string(program_version) + " "));
}

}  // namespace
}  // namespace emberpath::records
