// Proves that causes with few shadows need no more: whatever is read in whatever operating state, neighbouring
// severities stay within two widths of each other and show the same words; and that the shadows of all others stand
// where their readings change.

#include "sim/scoring/severities.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

#include "sim/scoring/bank.hpp"
#include "sim/scoring/likelihood.hpp"
#include "sim/scoring/posterior.hpp"
#include "tests/severities/fine_severities.hpp"
#include "tests/unit/scoring/driven_house.hpp"

namespace emberpath::scoring {
namespace {

using worksite::GasKind;
using worksite::Quantity;

constexpr double most_widths = 2.0;

bool is_sparse(const std::vector<Hypothesis>& all, std::size_t first) {
    std::size_t count = 1;
    for (std::size_t i = first; all[i].upper >= 0; ++i) ++count;
    return count > 1 && count < 5;
}

/// The causes with fewer shadows than usual, neighbours numbered anew.
std::vector<Hypothesis> sparse_ones(const worksite::Job& job) {
    const std::vector<Hypothesis> all = hypotheses(worksite::traits_of(job));
    std::vector<Hypothesis> out;
    bool taken = false;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].lower < 0) taken = is_sparse(all, i);
        if (!taken) continue;
        const int here = static_cast<int>(out.size());
        out.push_back(all[i]);
        out.back().lower = all[i].lower < 0 ? -1 : here - 1;
        out.back().upper = all[i].upper < 0 ? -1 : here + 1;
    }
    return out;
}

double widths_between(worksite::Quantity quantity, double a, double b) {
    const auto variance = [&](double value) {
        Width width = width_of(quantity, value);
        const double share = draw_spread_share(quantity);
        width.spread = worksite::info(quantity).logarithmic ? share : share * std::abs(value);
        return width.scale(1) * width.scale(1);
    };
    return std::abs(on_scale(quantity, a) - on_scale(quantity, b)) /
           std::sqrt(variance(a) + variance(b));
}

class Severities : public testing::TestWithParam<GasKind> {};

TEST_P(Severities, OfSparseCausesAreWithinTwoWidthsOfTheirNeighbours) {
    const worksite::Job job = plain_job(GetParam());
    DrivenHouse house(job, 3);
    house.live_until_arrival();
    Bank bank(job, sparse_ones(job), 2);
    bank.live_until(house.tape(), house.tape().events.size());
    const Shadows& s = bank.shadows();
    ASSERT_GT(s.hypotheses.size(), 10U);
    for (std::size_t i = 0; i < s.hypotheses.size(); ++i) {
        const Hypothesis& h = s.hypotheses[i];
        if (h.upper < 0) continue;
        for (std::size_t m = 0; m < s.signatures.size(); ++m)
            for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
                const auto quantity = static_cast<worksite::Quantity>(q);
                if (!can_be_proposed(quantity, job)) continue;
                const double a = s.signatures[m].of(quantity)[i];
                const double b = s.signatures[m].of(quantity)[i + 1];
                const auto& row = worksite::info(quantity);
                if (row.categorical)
                    EXPECT_EQ(a, b)
                        << faults::info(h.fault.cause).word << " " << row.word << " " << m;
                else
                    EXPECT_LE(widths_between(quantity, a, b), most_widths)
                        << faults::info(h.fault.cause).word << " " << row.word << " in mode " << m;
            }
    }
}

// A truth between two severities lies in the regime of one of them or of the other, and both stand: neither expects what
// lies between, and a numeric reading is expected no wider for the jump.
TEST_P(Severities, AreNotBlurredWhereARegimeChanges) {
    const worksite::Job job = plain_job(GetParam());
    DrivenHouse house(job, 3);
    house.live_until_arrival();
    Bank bank(job, 2);
    bank.live_until(house.tape(), house.tape().events.size());
    const Shadows& s = bank.shadows();
    const Posterior posterior(s.hypotheses);
    constexpr std::size_t full_draw = 2;
    const auto words = s.signatures[full_draw].of(Quantity::display_word);
    const auto pressures = s.signatures[full_draw].of(Quantity::gas_inlet_pressure);
    std::size_t changes = 0;
    for (std::size_t i = 0; i < s.hypotheses.size(); ++i) {
        const int upper = s.hypotheses[i].upper;
        if (upper < 0 || words[i] == words[static_cast<std::size_t>(upper)]) continue;
        ++changes;
        Reading word;
        word.quantity = Quantity::display_word;
        word.value = words[i];
        const auto of_word = posterior.likelihoods(word, words);
        EXPECT_GT(of_word[i], 20.0 * of_word[static_cast<std::size_t>(upper)]);
        Reading pressure;
        pressure.quantity = Quantity::gas_inlet_pressure;
        pressure.value = pressures[i];
        const double own = width_of(pressure.quantity, pressures[i]).scale(1);
        const double draws = draw_spread_share(pressure.quantity) * pressures[i];
        const double least = student_t_density(0.0) / std::sqrt(2.0 * own * own + draws * draws);
        EXPECT_GE(posterior.likelihoods(pressure, pressures)[i], 0.999 * least);
    }
    EXPECT_GT(changes, 3U);
}

/// Widths between neighbours, summed over fine steps.
std::vector<double> steps_between(const std::vector<double>& severities,
                                  const std::vector<double>& fine) {
    std::vector<double> sums;
    const double low = severities.front(), range = severities.back() - low;
    const auto place = [&](double severity) {
        return static_cast<std::size_t>(
            std::lround((severity - low) / range * static_cast<double>(fine.size())));
    };
    for (std::size_t i = 0; i + 1 < severities.size(); ++i)
        sums.push_back(std::accumulate(
            fine.begin() + static_cast<std::ptrdiff_t>(place(severities[i])),
            fine.begin() + static_cast<std::ptrdiff_t>(place(severities[i + 1])), 0.0));
    return sums;
}

// Even spacing would leave three times as much between some neighbours as between others.
TEST(SeveritiesOfAllOtherCauses, StandTwoWidthsApartOrShareTheDistanceAmongNine) {
    constexpr int fine_count = 48;
    constexpr double slack =
        1.5;  // the range is cut into steps, and a part of it is dealt out evenly
    int placed = 0, within_two = 0;
    for (const auto& [one, fine] : fine_steps(fine_count)) {
        if (!is_placed(one.first)) continue;
        const faults::CauseInfo& info = faults::info(one.first);
        const std::vector<double> at = severities_of(info, one.second);
        const std::vector<double> steps = steps_between(at, fine);
        const double sum = std::accumulate(fine.begin(), fine.end(), 0.0);
        const double widest = *std::max_element(steps.begin(), steps.end());
        const double share = sum / static_cast<double>(at.size() - 1);
        EXPECT_LE(widest, slack * std::max(share, most_widths_apart) + most_of_a_fine_step)
            << info.word << (one.second ? " below zero" : "");
        if (share > most_widths_apart) {
            EXPECT_EQ(at.size(), std::size_t{most_severities}) << info.word;
        }
        ++placed;
        within_two += widest <= most_widths_apart + 1.0 ? 1 : 0;
    }
    EXPECT_GT(placed, 30);
    EXPECT_GT(2 * within_two, placed);
}

TEST(SeveritiesOfACause, ShareItsPriorByThePartOfTheRangeNearestToEach) {
    const faults::CauseInfo& pipe = faults::info(faults::Cause::gas_pipe_restriction);
    const auto shares = shares_of(pipe, {0.4, 0.5, 0.8, 1.0});
    const std::vector<double> by_hand{0.05 / 0.6, 0.20 / 0.6, 0.25 / 0.6, 0.10 / 0.6};
    ASSERT_EQ(shares.size(), by_hand.size());
    for (std::size_t i = 0; i < shares.size(); ++i) EXPECT_NEAR(shares[i], by_hand[i], 1e-12);
    const faults::CauseInfo& cylinder = faults::info(faults::Cause::cylinder_low);
    for (const double share : shares_of(cylinder, severities_of(cylinder, false)))
        EXPECT_DOUBLE_EQ(share, 1.0 / 13.0);
}

INSTANTIATE_TEST_SUITE_P(BothGases, Severities,
                         testing::Values(GasKind::natural_gas, GasKind::propane_cylinder),
                         [](const auto& gas) {
                             return gas.param == GasKind::natural_gas ? "Mains" : "Cylinder";
                         });

}  // namespace
}  // namespace emberpath::scoring
