// Proves what a list of causes in the record is worth: together where no reading tells them apart, nothing more than its
// likeliest where one could have.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/scoring/made_up.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using faults::Remedy;
using Kind = worksite::LogEntry::Kind;
using ::testing::HasSubstr;
using worksite::Quantity;

/// Handed on with two causes left that look the same: a dead igniter and a sooted exchanger.
MadeUp handed_on_job(std::vector<std::string> possible, bool separable) {
    MadeUp m;
    m.act("watch burner window", Kind::look, 0.5);
    m.reads(Quantity::spark, 0.0, {1.0, 0.0, 0.0, 1.0});
    m.hand_in(word(Cause::igniter_failed).c_str());
    m.outcome.write_up.possible = std::move(possible);
    m.outcome.made_safe = true;
    m.outcome.separable = separable;
    m.outcome.open = {Remedy::replace_igniter};
    if (!separable) m.outcome.open.emplace_back(Remedy::clean_exchanger);
    m.outcome.verified.assign(8, "item");
    return m;
}

TEST(WrittenList, CountsItsCausesTogetherWhereNoReadingTellsThemApart) {
    const auto listed =
        handed_on_job({word(Cause::exchanger_sooted)}, false).assessed(Remedy::replace_igniter);
    const auto one = handed_on_job({}, false).assessed(Remedy::replace_igniter);
    EXPECT_GT(listed.areas[3].score, 95.0);
    EXPECT_THAT(listed.proposal, HasSubstr("nothing stands against"));
    EXPECT_THAT(listed.areas[1].reason, HasSubstr(" or "));
    EXPECT_LT(one.areas[3].score, listed.areas[3].score - 10.0);
    EXPECT_LT(one.areas[1].score, listed.areas[1].score - 10.0);
}

TEST(WrittenList, IsTakenForItsLikeliestCauseWhereAReadingCouldHaveShortenedIt) {
    const auto listed =
        handed_on_job({word(Cause::exchanger_sooted)}, true).assessed(Remedy::replace_igniter);
    const auto one = handed_on_job({}, true).assessed(Remedy::replace_igniter);
    EXPECT_DOUBLE_EQ(listed.overall, one.overall);
    EXPECT_THAT(listed.proposal, HasSubstr("could still have told"));
}

TEST(WrittenList, OfEveryCauseGivesNothing) {
    std::vector<std::string> all;
    for (const faults::CauseInfo& cause : faults::catalogue()) all.emplace_back(cause.word);
    MadeUp m = good_igniter_job();
    const double alone = m.assessed(Remedy::replace_igniter).overall;
    m.outcome.write_up.possible = all;
    EXPECT_DOUBLE_EQ(m.assessed(Remedy::replace_igniter).overall, alone);
    MadeUp unread;  // nothing was looked at
    unread.hand_in(word(Cause::igniter_failed).c_str());
    unread.outcome.write_up.possible = all;
    unread.outcome.made_safe = true;
    unread.outcome.open = {Remedy::replace_igniter};
    EXPECT_THAT(unread.assessed(Remedy::replace_igniter).proposal, HasSubstr("not yet"));
}

}  // namespace
}  // namespace emberpath::scoring
