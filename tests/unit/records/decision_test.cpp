// Proves that what a person decides is kept beside the record with role and reason, tied to that very record, and
// that the record itself and the first proposal stay as they were.

#include "sim/records/decision.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/records/sample.hpp"

namespace emberpath::records {
namespace {

using sample::Folder;
using testing::HasSubstr;

Decision not_yet() {
    Decision decision;
    decision.about = "verdict";
    decision.now = "not yet competent";
    decision.role = "assessor";
    decision.reason = "The customer was left alone with a running tap.";
    return decision;
}

Decision points(const std::string& area, const std::string& score) {
    Decision decision = not_yet();
    decision.about = area;
    decision.now = score;
    return decision;
}

TEST(Decision, IsKeptBesideTheRecordAndLeavesItAsItWas) {
    const Folder folder;
    const auto file = sample::closed_record(folder);
    const std::string before = sample::contents(file);
    const Record record = read(file);
    EXPECT_TRUE(read_decisions(record).all.empty());
    EXPECT_EQ(decide(record, not_yet()), "");
    EXPECT_EQ(decide(record, points("evidence", "80")), "");
    EXPECT_EQ(sample::contents(file), before);
    const Decisions decisions = read_decisions(read(file));
    ASSERT_TRUE(decisions.good());
    ASSERT_EQ(decisions.all.size(), 2U);
    EXPECT_EQ(decisions.all[0].now, "not yet competent");
    EXPECT_EQ(decisions.all[0].was, record.proposal);
    EXPECT_EQ(decisions.all[1].was, "93.2");  // 93.25, as proposed
    EXPECT_EQ(decisions.all[1].role, "assessor");
    EXPECT_EQ(decisions.all[1].chain.size(), 16U);
    EXPECT_NE(decisions.all[0].chain, decisions.all[1].chain);
}

TEST(Decision, WithoutAReasonOrARoleIsRefusedAndNothingIsWritten) {
    const Folder folder;
    const Record record = read(sample::closed_record(folder));
    for (const char* blank : {"", "   "}) {
        Decision decision = not_yet();
        decision.reason = blank;
        EXPECT_THAT(decide(record, decision), HasSubstr("needs a reason"));
        decision = not_yet();
        decision.role = blank;
        EXPECT_THAT(decide(record, decision), HasSubstr("needs the role"));
    }
    EXPECT_FALSE(std::filesystem::exists(decisions_file(record.file)));
}

TEST(Decision, AboutWhatIsNoAreaOrNoPointsIsRefusedInWords) {
    const Folder folder;
    const Record record = read(sample::closed_record(folder));
    EXPECT_THAT(decide(record, points("style", "80")), HasSubstr("expected one of: verdict"));
    for (const char* score : {"101", "-1", "eighty", "80 points", ""})
        EXPECT_THAT(decide(record, points("path", score)), HasSubstr("points from 0 to 100"))
            << score;
    Decision decision = not_yet();
    decision.now = "passed";
    EXPECT_THAT(decide(record, decision), HasSubstr("expected competent or not yet competent"));
}

TEST(Decision, AboutAnUnfinishedAttemptIsRefused) {
    const Folder folder;
    const auto file = folder.file("open.jsonl");
    { const Writer writer(file, sample::header()); }
    EXPECT_THAT(decide(read(file), not_yet()), HasSubstr("Only a finished attempt"));
}

TEST(Decision, ChangedSinceOrMadeAboutAnotherRecordIsFound) {
    const Folder folder;
    const auto file = sample::closed_record(folder);
    const Record record = read(file);
    ASSERT_EQ(decide(record, not_yet()), "");
    const auto beside = decisions_file(file);
    const std::string whole = sample::contents(beside);
    std::string changed = whole;
    changed.replace(changed.find("customer"), 8, "Customer");
    sample::write(beside, changed);
    ASSERT_EQ(read_decisions(record).problems.size(), 1U);
    EXPECT_THAT(read_decisions(record).problems.front().found, HasSubstr("chain: found"));
    EXPECT_THAT(decide(record, not_yet()), HasSubstr("nothing was decided"));
    sample::write(beside, whole);
    EXPECT_TRUE(read_decisions(record).good());
    Record other = record;
    other.chain = "0123456789abcdef";
    EXPECT_FALSE(read_decisions(other).good());
}

TEST(Decision, StandsInTheDebriefBesideTheProposal) {
    auto debrief = sample::full_debrief();
    Decision decision = not_yet();
    decision.was = "A person decides.";
    decision.chain = "0123456789abcdef";
    debrief.decisions = {in_words(decision)};
    for (const auto& text : {to_text(debrief), to_html(debrief), to_json(debrief)}) {
        EXPECT_THAT(text, HasSubstr("Suggested: not yet"));  // the program's own words
        EXPECT_THAT(text, HasSubstr("Verdict: not yet competent"));
    }
}

}  // namespace
}  // namespace emberpath::records
