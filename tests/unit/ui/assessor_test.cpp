// Proves what an assessor has at the terminal: every weighing after the attempt and none to a trainee, a decision with
// a reason beside the record, and several attempts together.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/ui/program.hpp"

namespace emberpath::app {
namespace {

using testing::HasSubstr;
using testing::Not;

/// A short finished attempt: a look at the display, a cause, how sure, and out.
struct Finished : Program {
    std::string record = file("short.record");
    Finished() {
        const std::string acts = written("short.acts",
                                         "look at display\n"
                                         "write cause outlet sensor open circuit\n"
                                         "write confidence 60 %\n"
                                         "hand in\n");
        EXPECT_EQ((*this)({"work", "tanager", "--assessed", "--script", acts, "--record", record}),
                  0);
        worked = output + talk;
    }
    std::string worked;
};

TEST(Assessor, SeesEveryWeighingAfterwardsAndATraineeNone) {
    Finished program;
    EXPECT_THAT(program.worked, Not(HasSubstr("What each weighing rested on")));
    ASSERT_EQ(program({"debrief", program.record}), 0);
    EXPECT_THAT(program.output, HasSubstr("You said 60 %; your own readings gave"));
    EXPECT_THAT(program.output, HasSubstr("Points lost"));
    EXPECT_THAT(program.output, Not(HasSubstr("For the assessor")));
    EXPECT_THAT(program.output, Not(HasSubstr("What each weighing rested on")));
    ASSERT_EQ(program({"debrief", program.record, "--assessor"}), 0);
    for (const char* words :
         {"For the assessor", "Luck: ", "Overall score with one area left out: safe work",
          "Release check of this job: ", "its cause showed itself in",
          "What each weighing rested on", "TAPS, 97 % of looks"})
        EXPECT_THAT(program.output, HasSubstr(words));
}

TEST(Assessor, DecidesWithAReasonBesideARecordThatStaysTrue) {
    Finished program;
    const auto decide = [&](const std::string& reason) {
        return program({"decide", program.record, "--verdict", "competent", "--role", "assessor",
                        "--reason", reason});
    };
    EXPECT_EQ(decide(" "), 2);
    EXPECT_THAT(program.talk, HasSubstr("needs a reason"));
    ASSERT_EQ(decide("It was shown at the house."), 0);
    EXPECT_THAT(program.output, HasSubstr("the record stays as it was"));
    ASSERT_EQ(program({"debrief", program.record}), 0);
    EXPECT_THAT(program.output, HasSubstr("Suggested: not yet"));
    EXPECT_THAT(program.output, HasSubstr("= Verdict: competent, decided by a person (assessor)"));
    ASSERT_EQ(program({"verify", program.record}), 0);
    EXPECT_THAT(program.output, HasSubstr("1 decision beside it, the chain unbroken"));
    EXPECT_EQ(program({"decide", program.record, "--role", "assessor", "--reason", "none"}), 2);
    EXPECT_THAT(program.talk, HasSubstr("expected --verdict, or --area and --score"));
}

TEST(Assessor, SeesSeveralAttemptsTogether) {
    Finished program;
    ASSERT_EQ(program({"series", program.record, program.record}), 0);
    EXPECT_THAT(program.output, HasSubstr("Luck over all of them"));
    EXPECT_THAT(program.output, HasSubstr("Likely known by now"));
    EXPECT_EQ(program({"series", program.file("none.record")}), 2);
}

}  // namespace
}  // namespace emberpath::app
