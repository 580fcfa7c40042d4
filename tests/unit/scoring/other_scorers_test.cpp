// Proves what becomes of the overall score when somebody else had chosen the priors or the widths.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "sim/scoring/bands.hpp"
#include "tests/unit/scoring/made_up.hpp"
#include "tests/unit/trainees/small_house.hpp"

namespace emberpath::scoring {
namespace {

using faults::Cause;
using faults::Remedy;
using Kind = worksite::LogEntry::Kind;
using worksite::Quantity;

void finish(MadeUp& m) {
    m.act("replace igniter", Kind::remedy, 25.0).remedy = static_cast<int>(Remedy::replace_igniter);
    m.hand_in(word(Cause::igniter_failed).c_str());
    m.outcome.fault_remains = false;
    m.outcome.verified.assign(8, "item");
}

/// A temperature that tells the causes apart by a few widths: the evidence is about what is needed.
MadeUp near_the_need() {
    MadeUp m;
    m.act("measure temperature at tap", Kind::test, 0.5);
    m.reads(Quantity::tap_temperature, 316.35, {323.15, 320.15, 317.15, 314.15});
    finish(m);
    return m;
}

double overall_of(const MadeUp& m, const Change& change) {
    const PlayedAttempt played{m.job, m.log, m.tape, m.marks, Remedy::replace_igniter};
    const std::vector<Snapshot> truth(modes(m.job).size(), Snapshot(1));
    return overall_with(change, played, m.shadows, truth, m.outcome, Until::the_end);
}

double priors_times_three(std::uint64_t draw, const MadeUp& m) {
    return overall_of(m, {3.0, 1.0, draw});
}

/// The overall score of every way in which four coins of the causes can fall, by hand.
std::vector<double> by_all_coins(const MadeUp& m) {
    std::vector<double> out;
    for (unsigned coins = 0; coins < 1U << lanes; ++coins) {
        MadeUp other = m;
        double total = 0.0;
        for (std::size_t i = 0; i < lanes; ++i)
            total += other.shadows.hypotheses[i].prior *= (coins >> i & 1U) != 0 ? 3.0 : 1.0 / 3.0;
        for (Hypothesis& h : other.shadows.hypotheses) h.prior /= total;
        out.push_back(other.assessed(Remedy::replace_igniter).overall);
    }
    return out;
}

bool is_among(const std::vector<double>& all, double one) {
    return std::any_of(all.begin(), all.end(),
                       [one](double other) { return std::abs(one - other) < 1.0e-9; });
}

TEST(OtherScorer, WhoChangesNothingGivesTheScoreItselfByWhateverCoins) {
    MadeUp m = near_the_need();
    const double own = m.assessed(Remedy::replace_igniter).overall;
    for (const std::uint64_t draw : {1U, 2U, 3U}) EXPECT_EQ(overall_of(m, {1.0, 1.0, draw}), own);
}

TEST(OtherScorer, WhoChangesNothingGivesTheScoreOfARealAttempt) {
    const std::array same{Change{}};
    Terms terms;
    terms.explained = false;
    terms.changes = same;
    std::vector<TimedAct> acts;
    for (const char* sentence :
         {"open service readout", "read readout event", "press reset", "open bath tap",
          "watch burner window for 8 s", "measure temperature at bath tap", "listen for 8 s",
          "close bath tap", "switch power off", "unplug heater", "lock off plug", "prove tester",
          "take cover off", "test for dead", "prove tester", "replace igniter",
          "write cause igniter_failed", "hand in"})
        acts.push_back({0, sentence});
    const Assessment a = assess(trainees::small_house(Cause::igniter_failed), 5,
                                worksite::Mode::assessed, acts, terms);
    EXPECT_EQ(a.acts.size(), acts.size());
    EXPECT_TRUE(a.fixed);
    ASSERT_EQ(a.overall_with.size(), 1U);
    EXPECT_EQ(a.overall_with.front(), a.overall);
}

TEST(OtherScorer, WhosePriorsAreThreeTimesOthersHasOneOfTheBanksThatFourCoinsCanMake) {
    const MadeUp m = near_the_need();
    const std::vector<double> all = by_all_coins(m);
    std::set<std::string> met;
    for (std::uint64_t draw = 0; draw < 32; ++draw) {
        const double one = priors_times_three(draw, m);
        EXPECT_TRUE(is_among(all, one)) << draw << ": " << one;
        EXPECT_EQ(one, priors_times_three(draw, m));
        met.insert(std::to_string(one));
    }
    EXPECT_GE(met.size(), 5U);
    EXPECT_NE(priors_times_three(1, m), priors_times_three(2, m));
}

// The coin is the cause's: its shadows keep their shares of it.
TEST(OtherScorer, TossesOneCoinForAllSeveritiesOfACause) {
    MadeUp m = near_the_need();
    Hypothesis& mild = m.shadows.hypotheses[0];
    Hypothesis& grave = m.shadows.hypotheses[1];
    mild.fault.cause = grave.fault.cause;
    mild.remedy = grave.remedy;
    mild.upper = 1;
    grave.lower = 0;
    const std::vector<double> all = by_all_coins(m);
    std::vector<double> alike;  // coins 0 and 1 fall the same way
    for (unsigned coins = 0; coins < all.size(); ++coins)
        if ((coins & 1U) == (coins >> 1 & 1U)) alike.push_back(all[coins]);
    EXPECT_FALSE(
        std::all_of(all.begin(), all.end(), [&](double one) { return is_among(alike, one); }));
    for (std::uint64_t draw = 0; draw < 32; ++draw)
        EXPECT_TRUE(is_among(alike, priors_times_three(draw, m))) << draw;
}

TEST(OtherScorer, WithWiderWidthsScoresAnAttemptNearTheNeedLower) {
    MadeUp m = near_the_need();
    const double own = m.assessed(Remedy::replace_igniter).overall;
    const double twice = overall_of(m, {1.0, 2.0, 1});
    EXPECT_LT(twice, own - 10.0);
    EXPECT_LT(overall_of(m, {1.0, 4.0, 1}), twice - 10.0);
}

TEST(OtherScorer, HasNoWidthsForWhatEyesSee) {
    MadeUp m;
    look_for_spark(m, 0.0);
    finish(m);
    const double own = m.assessed(Remedy::replace_igniter).overall;
    EXPECT_EQ(overall_of(m, {1.0, 2.0, 1}), own);
    EXPECT_LT(std::min(priors_times_three(1, m), priors_times_three(2, m)),
              own - 10.0);  // near the need
}

}  // namespace
}  // namespace emberpath::scoring
