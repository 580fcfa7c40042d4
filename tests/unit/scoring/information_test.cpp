// Proves the arithmetic of entropy and information on cases worked by hand.

#include "sim/scoring/information.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

#include "sim/math/functions.hpp"
#include "sim/math/random.hpp"
#include "sim/scoring/likelihood.hpp"
#include "sim/scoring/posterior.hpp"

namespace emberpath::scoring {
namespace {

// Six states, five tests of unit cost: a published test-sequencing example (Pattipati & Alexandridis
// 1990); its optimum 2.18 was confirmed by exhaustive search.
constexpr std::array<double, 6> prior{0.70, 0.01, 0.02, 0.10, 0.05, 0.12};
constexpr std::array<std::array<int, 5>, 6> fails{{{0, 0, 0, 0, 0},
                                                   {0, 1, 0, 0, 1},
                                                   {0, 0, 1, 1, 0},
                                                   {1, 0, 0, 1, 1},
                                                   {1, 1, 0, 0, 0},
                                                   {1, 1, 1, 1, 0}}};
constexpr std::array<std::size_t, 6> each_its_own_class{0, 1, 2, 3, 4, 5};

OutcomeTable outcomes_of(std::size_t test) {
    OutcomeTable table{2, {}};
    for (const auto& row : fails) {
        table.rows.push_back(row[test] == 0 ? 1.0 : 0.0);
        table.rows.push_back(row[test] == 1 ? 1.0 : 0.0);
    }
    return table;
}

std::vector<double> given(const std::vector<double>& p, std::size_t test, int outcome) {
    std::vector<double> after(p.size(), 0.0);
    double total = 0.0;
    for (std::size_t i = 0; i < p.size(); ++i)
        if (fails[i][test] == outcome) total += after[i] = p[i];
    for (double& x : after) x = total > 0.0 ? x / total : 0.0;
    return after;
}

double share(const std::vector<double>& p, std::size_t test, int outcome) {
    double total = 0.0;
    for (std::size_t i = 0; i < p.size(); ++i)
        if (fails[i][test] == outcome) total += p[i];
    return total;
}

std::size_t best_test(const std::vector<double>& p) {
    std::size_t best = 0;
    double most = -1.0;
    for (std::size_t t = 0; t < 5; ++t) {
        const double bits = information_bits(p, each_its_own_class, 6, outcomes_of(t));
        if (bits > most + 1.0e-12) {
            most = bits;
            best = t;
        }
    }
    return best;
}

double greedy_cost(const std::vector<double>& p) {
    if (entropy_bits(p) < 1.0e-9) return 0.0;
    const std::size_t t = best_test(p);
    return 1.0 + share(p, t, 0) * greedy_cost(given(p, t, 0)) +
           share(p, t, 1) * greedy_cost(given(p, t, 1));
}

double optimal_cost(const std::vector<double>& p) {
    if (entropy_bits(p) < 1.0e-9) return 0.0;
    double least = 1.0e9;
    for (std::size_t t = 0; t < 5; ++t) {
        if (share(p, t, 0) < 1e-12 || share(p, t, 1) < 1e-12) continue;
        least = std::min(least, 1.0 + share(p, t, 0) * optimal_cost(given(p, t, 0)) +
                                    share(p, t, 1) * optimal_cost(given(p, t, 1)));
    }
    return least;
}

const std::vector<double> start(prior.begin(), prior.end());

TEST(TestSequencing, EntropyOfTheSixStatesIsOnePointFourFiveBits) {
    EXPECT_NEAR(entropy_bits(prior), 1.4549, 5e-5);
}

TEST(TestSequencing, ExhaustiveSearchNeedsTwoPointOneEightTests) {
    EXPECT_NEAR(optimal_cost(start), 2.18, 1e-9);
}

TEST(TestSequencing, GreedyInformationNeedsTwoPointEightSixTestsAndStartsWithTheFirst) {
    EXPECT_EQ(best_test(start), 0U);
    EXPECT_NEAR(greedy_cost(start), 2.86, 1e-9);
}

// Three inverters in a row, input 1, output observed 1; a failed output is uniform, each fails with .01.
TEST(ThreeInverters, AnyInternalWireHalvesTheEntropy) {
    const double single = 0.01 * 0.99 * 0.99;
    const double pair = 0.01 * 0.01 * 0.99;
    const double triple = 0.01 * 0.01 * 0.01;
    std::vector<double> p{single, single, single, pair, pair, pair, triple};
    const double total = 3.0 * (single + pair) + triple;
    for (double& x : p) x /= total;  // each leaves the output wrong in half of all cases
    EXPECT_NEAR(p[0], 0.32999, 5e-6);
    EXPECT_NEAR(p[3], 0.00333, 5e-6);
    const std::vector<std::size_t> own{0, 1, 2, 3, 4, 5, 6};
    EXPECT_NEAR(entropy_bits(p), 1.6662, 5e-5);
    // First wire: wrong only if the first inverter failed (single A, pairs AB and AC, the triple). Second wire:
    // what the third inverter passes on is wrong; where that one failed, as the wire happens to be.
    const std::array<std::array<double, 7>, 2> wrong{
        {{1.0, 0.0, 0.0, 0.5, 0.5, 0.0, 0.5}, {1.0, 1.0, 0.0, 1.0, 0.5, 0.5, 0.5}}};
    for (const auto& wire : wrong) {
        OutcomeTable table{2, {}};
        for (const double w : wire) {
            table.rows.push_back(1.0 - w);
            table.rows.push_back(w);
        }
        EXPECT_NEAR(entropy_bits(p) - information_bits(p, own, 7, table), 0.7546, 5e-5);
    }
}

TEST(VisualInspection, DetectionEightyFivePerCentFalseAlarmThreeGivesHalfABit) {
    const std::vector<double> p{0.30, 0.70};
    const std::vector<std::size_t> own{0, 1};
    const OutcomeTable seen{2, {0.85, 0.15, 0.03, 0.97}};
    EXPECT_NEAR(information_bits(p, own, 2, seen), 0.5309, 5e-5);
    const auto after = [&](double if_there, double if_not) {
        const std::vector<double> logs{std::log(p[0] * if_there), std::log(p[1] * if_not)};
        return normalised(logs)[0];
    };
    EXPECT_NEAR(after(0.85, 0.03), 0.9239, 5e-5);  // seen
    EXPECT_NEAR(after(0.15, 0.97), 0.0622, 5e-5);  // not seen
}

// Two normal distributions cut into fine bins by the test itself.
double two_normals(double distance) {
    const std::vector<double> p{0.5, 0.5};
    const std::vector<std::size_t> own{0, 1};
    constexpr int bins = 4000;
    OutcomeTable table{bins, {}};
    for (const double centre : {0.0, distance}) {
        double below = 0.0;
        for (int k = 1; k <= bins; ++k) {
            const double edge = -10.0 + 24.0 * k / bins;
            const double here = k == bins ? 1.0 : 0.5 * std::erfc((centre - edge) / std::sqrt(2.0));
            table.rows.push_back(here - below);
            below = here;
        }
    }
    return information_bits(p, own, 2, table);
}

TEST(TwoNormals, InformationGrowsWithTheirDistance) {
    EXPECT_NEAR(two_normals(1.0), 0.1607, 1e-4);
    EXPECT_NEAR(two_normals(2.0), 0.4859, 1e-4);
    EXPECT_NEAR(two_normals(4.0), 0.9128, 1e-4);
}

TEST(NumericOutcomes, EachRowIsADistributionOverAtMostSixteenBins) {
    const std::vector<double> p{0.2, 0.3, 0.5};
    const std::vector<Expectation> e{{0.0, 1.0}, {5.0, 0.5}, {1.0e6, 10.0}};
    const OutcomeTable table = numeric_outcomes(p, e);
    EXPECT_LE(table.outcomes, outcome_bins);
    for (std::size_t i = 0; i < 3; ++i) {
        double sum = 0.0;
        for (std::size_t k = 0; k < table.outcomes; ++k) {
            EXPECT_GE(table.at(i, k), 0.0);
            sum += table.at(i, k);
        }
        EXPECT_NEAR(sum, 1.0, 1e-12);
    }
}

// The same two members in 4000 equal bins, with the same share of mistakes.
double fine_information(double distance) {
    constexpr int bins = 4000;
    OutcomeTable table{bins, {}};
    std::vector<double> both(bins, 0.0);
    for (const double centre : {0.0, distance}) {
        double below = 0.0;
        for (int k = 1; k <= bins; ++k) {
            const double edge = -20.0 + 50.0 * k / bins;
            const double here = k == bins ? 1.0 : student_t_cumulative(edge - centre);
            table.rows.push_back(here - below);
            both[static_cast<std::size_t>(k - 1)] += 0.5 * (here - below);
            below = here;
        }
    }
    for (std::size_t i = 0; i < table.rows.size(); ++i)
        table.rows[i] = (1.0 - outlier_share) * table.rows[i] + outlier_share * both[i % bins];
    const std::vector<double> p{0.5, 0.5};
    const std::vector<std::size_t> own{0, 1};
    return information_bits(p, own, 2, table);
}

TEST(NumericOutcomes, SixteenBinsLoseUnderFivePerCentAgainstFineOnes) {
    const std::vector<double> p{0.5, 0.5};
    const std::vector<std::size_t> own{0, 1};
    for (const double distance : {1.0, 2.0, 4.0, 8.0}) {
        const std::vector<Expectation> e{{0.0, 1.0}, {distance, 1.0}};
        const double coarse = information_bits(p, own, 2, numeric_outcomes(p, e));
        const double fine = fine_information(distance);
        EXPECT_LE(coarse, fine + 1e-9) << distance;
        EXPECT_GT(coarse, 0.95 * fine) << distance;
    }
}

/// Where the product cuts two Student-t of scale 1: the edges, from what it puts into each bin.
std::vector<double> edges_between(double distance) {
    const std::vector<double> p{0.5, 0.5};
    const OutcomeTable table =
        numeric_outcomes(p, std::vector<Expectation>{{0.0, 1.0}, {distance, 1.0}});
    std::vector<double> edges;
    double below = 0.0;
    for (std::size_t k = 0; k + 1 < table.outcomes; ++k) {
        const double both = 0.5 * (table.at(0, k) + table.at(1, k));  // mistakes leave it as it is
        below += (table.at(0, k) - outlier_share * both) / (1.0 - outlier_share);
        double low = -50.0, high = 50.0;
        for (int halving = 0; halving < 60; ++halving) {
            const double middle = 0.5 * (low + high);
            (student_t_cumulative(middle) < below ? low : high) = middle;
        }
        edges.push_back(0.5 * (low + high));
    }
    return edges;
}

double two_normals_cut_at(const std::vector<double>& edges, double distance) {
    OutcomeTable table{edges.size() + 1, {}};
    for (const double centre : {0.0, distance}) {
        double below = 0.0;
        for (const double edge : edges) {
            const double here = 0.5 * std::erfc((centre - edge) / std::sqrt(2.0));
            table.rows.push_back(here - below);
            below = here;
        }
        table.rows.push_back(1.0 - below);
    }
    return information_bits(std::vector<double>{0.5, 0.5}, std::vector<std::size_t>{0, 1}, 2,
                            table);
}

// What is put together into bins tells no more than it told apart (data processing); sixteen of them lose little.
TEST(TwoNormals, CutWhereTheSixteenBinsAreTellNeverMoreAndAtMostThreeHundredthsOfABitLess) {
    for (const double distance : {1.0, 2.0, 4.0}) {
        const double whole = two_normals(distance);
        const double cut = two_normals_cut_at(edges_between(distance), distance);
        EXPECT_LE(cut, whole + 1e-9) << distance;
        EXPECT_GE(cut, whole - 0.03) << distance;
    }
}

// A reading is no normal: its tails are those of a Student-t and one in a hundred is a mistake. That costs .04,
// .11 and .16 bits of the normals' figures; sixteen bins cost the rest.
TEST(TwoNormals, TellMoreThanAReadingOfTheProductWhichTailsMistakesAndSixteenBinsAccountFor) {
    Hypothesis sound, dead;
    sound.prior = dead.prior = 0.5;
    dead.fault.cause = faults::Cause::igniter_failed;
    dead.remedy = faults::Remedy::replace_igniter;
    const Posterior posterior({sound, dead});
    Reading reading;
    reading.quantity = worksite::Quantity::tap_temperature;
    const double scale = posterior.scale_of(reading, std::vector<double>{300.0, 300.0}, 0);
    for (const double distance : {1.0, 2.0, 4.0}) {
        const std::vector<double> predicted{300.0, 300.0 + distance * scale};
        const double bits = posterior.expected_bits(reading, predicted);
        const double uncut = fine_information(distance);
        EXPECT_LT(uncut, two_normals(distance)) << distance;
        EXPECT_LE(bits, uncut + 1e-9) << distance;
        EXPECT_GE(bits, uncut - 0.02) << distance;
    }
}

TEST(Information, OfTwoMembersOfOneClassIsNothing) {
    const std::vector<double> p{0.5, 0.5};
    const std::vector<std::size_t> same{0, 0};
    const std::vector<Expectation> far{{0.0, 1.0}, {8.0, 1.0}};
    EXPECT_DOUBLE_EQ(information_bits(p, same, 1, numeric_outcomes(p, far)), 0.0);
}

TEST(Information, NeverExceedsTheEntropyOfTheClasses) {
    const std::vector<double> p{0.9, 0.05, 0.05};
    const std::vector<std::size_t> own{0, 1, 2};
    const std::vector<Expectation> far{{0.0, 0.01}, {50.0, 0.01}, {100.0, 0.01}};
    const double bits = information_bits(p, own, 3, numeric_outcomes(p, far));
    EXPECT_GE(bits, 0.0);
    EXPECT_LE(bits, entropy_bits(p));
}

// Members by chance: in a heap, spread out, in two heaps; scales alike and up to four times apart.
TEST(MostInformation, IsNeverLessThanTheInformationOfMembersByChance) {
    math::Random random(7, "members");
    for (int round = 0; round < 300; ++round) {
        const std::size_t count = 2 + static_cast<std::size_t>(40.0 * random.uniform());
        const double spread = math::exp(6.0 * random.uniform() - 3.0);
        const double unlike = round % 3 == 0 ? 0.0 : 1.4 * random.uniform();
        std::vector<double> p(count);
        std::vector<std::size_t> class_of(count);
        std::vector<Expectation> expected(count);
        double total = 0.0;
        for (std::size_t i = 0; i < count; ++i) {
            total += p[i] = math::exp(-6.0 * random.uniform());
            class_of[i] = static_cast<std::size_t>(7.0 * random.uniform());
            const double heap = round % 2 == 0 && i % 4 == 0 ? 5.0 : 0.0;
            expected[i] = {heap + spread * random.normal(), math::exp(unlike * random.uniform())};
        }
        for (double& one : p) one /= total;
        const double bits = information_bits(p, class_of, 7, numeric_outcomes(p, expected));
        EXPECT_GE(most_numeric_bits(p, class_of, 7, expected) + 1e-9, bits) << round;
    }
}

TEST(MostInformation, IsNothingWhereAllExpectTheSameAndAllWhereTheyLieFarApart) {
    const std::array<double, 4> p{0.4, 0.3, 0.2, 0.1};
    const std::array<std::size_t, 4> class_of{0, 1, 2, 3};
    const std::array<Expectation, 4> same{{{1.0, 0.2}, {1.0, 0.2}, {1.0, 0.2}, {1.0, 0.2}}};
    EXPECT_NEAR(most_numeric_bits(p, class_of, 4, same), 0.0, 1e-12);
    const std::array<Expectation, 4> apart{{{0.0, 0.2}, {9.0, 0.2}, {18.0, 0.2}, {27.0, 0.2}}};
    const double all = (1.0 - outlier_share) * entropy_bits(p);
    EXPECT_NEAR(most_numeric_bits(p, class_of, 4, apart), all, 1e-12);
    EXPECT_NEAR(most_categorical_bits(p, class_of, 4, class_of), all, 1e-12);
}

}  // namespace
}  // namespace emberpath::scoring
