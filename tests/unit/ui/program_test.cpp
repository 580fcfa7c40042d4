// Proves the program's commands from arguments to exit status: results on stdout, talk on stderr, help for
// typing errors, and nothing written when the input is bad.

#include "tests/unit/ui/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace emberpath::app {
namespace {

using records::sample::contents;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

std::string source(const std::string& path) {
    return std::string(EMBERPATH_SOURCE_DIR) + "/" + path;
}

TEST(Program, HelpIsEverywhereAndIsAResult) {
    Program program;
    EXPECT_EQ(program({"--help"}), 0);
    for (const std::string command :
         {"work", "debrief", "verify", "check", "preview", "trace", "list", "causes"}) {
        EXPECT_THAT(program.output, HasSubstr(command));
        Program sub;
        EXPECT_EQ(sub({command, "--help"}), 0);
        EXPECT_THAT(sub.output, HasSubstr(command));
        EXPECT_THAT(sub.talk, IsEmpty());
    }
}

TEST(Program, AnUnknownCommandOrOptionIsBadInput) {
    Program program;
    EXPECT_EQ(program({"wrok", "tanager"}), 2);
    EXPECT_EQ(
        program.talk,
        "There is no command \"wrok\". Did you mean \"work\"? \"emberpath --help\" lists them.\n");
    EXPECT_THAT(program.output, IsEmpty());
    EXPECT_EQ(program({"work"}), 2);
    EXPECT_EQ(program({"list", "--fast"}), 2);
    EXPECT_EQ(program({"work", "tanager", "--seed", "many"}), 2);
}

TEST(Program, RatingTakesTheOptionsOfWhatIsAskedFor) {
    Program program;
    EXPECT_EQ(program({"rate", "tanager", "--release", "--runs", "0"}), 2);
    EXPECT_EQ(program.talk, "--runs takes 1 to 1000, not 0.\n");
    EXPECT_EQ(program({"rate", "tanager", "--seeds", "101"}), 2);
    EXPECT_EQ(program.talk, "--seeds takes 1 to 100, not 101.\n");
    EXPECT_EQ(program({"rate", "tanager", "--runs", "5"}), 2);
    EXPECT_EQ(program.talk, "--runs goes with --release; simulated trainees take --seeds.\n");
    EXPECT_EQ(program({"rate", "tanager", "--release", "--seeds", "2"}), 2);
    EXPECT_EQ(program.talk, "--seeds is for simulated trainees; with --release there is --runs.\n");
    EXPECT_EQ(program({"rate", "tanagre", "--release"}), 2);
    EXPECT_EQ(program.talk,
              "There is no job \"tanagre\". Did you mean \"tanager\"? \"emberpath list\" names "
              "them all.\n");
    EXPECT_EQ(program({"rate", "tanager", "--release", "--runs", "many"}), 2);
    EXPECT_THAT(program.output, IsEmpty());
}

TEST(Program, AWrongJobGetsTheNearestWord) {
    Program program;
    EXPECT_EQ(program({"work", "tanagre"}), 2);
    EXPECT_EQ(program.talk,
              "There is no job \"tanagre\". Did you mean \"tanager\"? \"emberpath list\" names "
              "them all.\n");
    EXPECT_EQ(program({"preview", "zzzz"}), 2);
    EXPECT_EQ(program.talk, "There is no job \"zzzz\". \"emberpath list\" names them all.\n");
    EXPECT_EQ(program({"work", "nowhere.toml"}), 2);
    EXPECT_EQ(program.talk, "nowhere.toml: there is no such file.\n");
}

TEST(Program, ListsEveryShippedJob) {
    Program program;
    EXPECT_EQ(program({"list"}), 0);
    int jobs = 0;
    for (const auto& file : std::filesystem::directory_iterator(source("scenarios/jobs"))) {
        EXPECT_THAT("\n" + program.output, HasSubstr("\n" + file.path().stem().string() + " "));
        ++jobs;
    }
    EXPECT_GE(jobs, 8);
    EXPECT_THAT(program.output, Not(HasSubstr("cannot be loaded")));
}

TEST(Program, CausesSayWhatSetsThemRight) {
    Program program;
    EXPECT_EQ(program({"causes"}), 0);
    EXPECT_THAT(program.output, AllOf(HasSubstr("igniter_failed\n"), HasSubstr("Set right by: ")));
}

TEST(Program, CheckAcceptsTheShippedJobsAndRefusesABrokenOne) {
    Program program;
    EXPECT_EQ(program({"check", source("scenarios/jobs/tanager.toml")}), 0);
    EXPECT_THAT(program.output, HasSubstr("good"));
    const auto broken = program.written("broken.toml", "title = 3\nnonsense = 1\n");
    EXPECT_EQ(program({"check", broken, source("scenarios/jobs/tanager.toml")}), 1);
    EXPECT_THAT(program.output, AllOf(HasSubstr("broken.toml:1"), HasSubstr("broken.toml:2"),
                                      HasSubstr("nothing was loaded")));
    EXPECT_EQ(program({"check", program.file("missing.toml")}), 2);
    EXPECT_EQ(program({"work", broken}), 2);
}

TEST(Program, PreviewSetsTheSoundHouseBesideTheFaultyOne) {
    Program program;
    EXPECT_EQ(program({"preview", "tanager"}), 0);
    EXPECT_THAT(program.output, AllOf(HasSubstr("sound house"), HasSubstr("\n  *  ")));
}

TEST(Program, TraceWritesATimeSeriesWithUnits) {
    Program program;
    const auto csv = program.file("run.csv");
    EXPECT_EQ(program({"trace", "tanager", "--sound", "--taps", "0 1; 60 0", "--csv", csv}), 0);
    const std::string text = contents(csv);
    EXPECT_THAT(text, StartsWith("time [s],tap opening [-],"));
    EXPECT_THAT(text, HasSubstr("outlet water [degC]"));
    EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 1 + 181);
    std::istringstream lines(text);
    std::string header;
    std::getline(lines, header);
    for (std::string line; std::getline(lines, line);)
        ASSERT_EQ(std::count(line.begin(), line.end(), ','),
                  std::count(header.begin(), header.end(), ','));
}

TEST(Program, ABadTapListIsExplained) {
    Program program;
    const auto csv = program.file("run.csv");
    for (const std::string taps :
         {"", "0", "0 1 2", "0 1.5", "60 1; 60 0", "now 1", "0 nan", "-1 1"}) {
        EXPECT_EQ(program({"trace", "tanager", "--taps", taps, "--csv", csv}), 2) << taps;
        EXPECT_THAT(program.talk, HasSubstr("--taps")) << taps;
    }
    EXPECT_EQ(program({"trace", "tanager", "--taps", "0 1", "--csv", csv, "--every", "0"}), 2);
    EXPECT_FALSE(std::filesystem::exists(csv));
}

TEST(Program, MissingScenariosAreExplained) {
    std::istringstream in;
    std::ostringstream out, err;
    Context context{in, out, err, {}, false, false};
    EXPECT_EQ(run({"list"}, context), 2);
    EXPECT_THAT(err.str(), HasSubstr("EMBERPATH_SCENARIOS"));
}

TEST(Program, TheLogIsQuietUnlessAskedFor) {
    Program program;
    const auto log = program.file("deep/emberpath.log");
    EXPECT_EQ(
        program({"--log", log, "work", "tanager", "--record", program.file("r.jsonl")}, "quit\n"),
        0);
    EXPECT_THAT(contents(log), HasSubstr("work tanager"));
    EXPECT_EQ(program({"--log", "/proc/none/x.log", "list"}), 2);
}

TEST(Places, RecordsTakeTheNextFreeName) {
    const records::sample::Folder folder;
    EXPECT_EQ(free_record_name(folder.file(""), "job").filename(), "job-001.jsonl");
    records::sample::write(folder.file("job-001.jsonl"), "x");
    EXPECT_EQ(free_record_name(folder.file(""), "job").filename(), "job-002.jsonl");
}

}  // namespace
}  // namespace emberpath::app
