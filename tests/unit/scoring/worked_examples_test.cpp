// Proves published and recalculated examples of diagnosis: optimal play is charged nothing, circuits with
// several suspects have the entropies worked out by hand, and skill over many answers follows its formula.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "sim/scoring/areas.hpp"
#include "sim/scoring/information.hpp"
#include "sim/scoring/skill.hpp"

namespace emberpath::scoring {
namespace {

// --- test sequencing: Pattipati & Alexandridis (1990); matrix from memory, optimum by exhaustive search ---

constexpr std::size_t states = 6, tests = 5;
constexpr std::array<std::array<int, tests>, states> fails{{{0, 0, 0, 0, 0},
                                                            {0, 1, 0, 0, 1},
                                                            {0, 0, 1, 1, 0},
                                                            {1, 0, 0, 1, 1},
                                                            {1, 1, 0, 0, 0},
                                                            {1, 1, 1, 1, 0}}};
const std::vector<double> six{0.70, 0.01, 0.02, 0.10, 0.05, 0.12};
constexpr std::array<std::size_t, states> own_class{0, 1, 2, 3, 4, 5};

struct Split {
    double share[2] = {0.0, 0.0};
    std::vector<double> after[2];
};

Split split(const std::vector<double>& p, std::size_t test) {
    Split s;
    for (const int outcome : {0, 1}) {
        s.after[outcome].assign(states, 0.0);
        for (std::size_t i = 0; i < states; ++i)
            if (fails[i][test] == outcome) s.share[outcome] += s.after[outcome][i] = p[i];
        for (double& x : s.after[outcome]) x /= std::max(s.share[outcome], 1e-300);
    }
    return s;
}

double bits_of(const std::vector<double>& p, std::size_t test) {
    OutcomeTable table{2, {}};
    for (const auto& row : fails) {
        table.rows.push_back(row[test] == 0 ? 1.0 : 0.0);
        table.rows.push_back(row[test] == 1 ? 1.0 : 0.0);
    }
    return information_bits(p, own_class, states, table);
}

struct Plan {
    double tests = 0.0, charge = 0.0;  // expected
    std::size_t first = 0;
};

constexpr double tolerance_tau = 1.0;  // of the path formula, as docs/scoring.md has it

// What the path formula charges a test of one minute, `tau` in the place of its own tolerance.
double charge_with(double tau, double bits, double best_rate) {
    return std::max(0.0, 1.0 - (1.0 + tau) * bits / best_rate);
}

// Fewest expected tests, and what the path formula charges along that tree at one minute a test.
Plan best_plan(const std::vector<double>& p, double tau) {
    if (entropy_bits(p) < 1.0e-9) return {};
    double best_rate = 0.0;
    for (std::size_t t = 0; t < tests; ++t) best_rate = std::max(best_rate, bits_of(p, t));
    Plan best{1.0e9, 0.0, 0};
    for (std::size_t t = 0; t < tests; ++t) {
        const Split s = split(p, t);
        if (s.share[0] < 1e-12 || s.share[1] < 1e-12) continue;
        const Plan zero = best_plan(s.after[0], tau), one = best_plan(s.after[1], tau);
        const double total = 1.0 + s.share[0] * zero.tests + s.share[1] * one.tests;
        if (total >= best.tests - 1.0e-12) continue;
        const double here = charge_with(tau, bits_of(p, t), best_rate);
        best = {total, here + s.share[0] * zero.charge + s.share[1] * one.charge, t};
    }
    return best;
}

double huffman_bound(std::vector<double> p) {
    double length = 0.0;
    while (p.size() > 1) {
        std::sort(p.begin(), p.end(), std::greater<>());
        const double two = p[p.size() - 1] + p[p.size() - 2];
        p.resize(p.size() - 2);
        p.push_back(two);
        length += two;
    }
    return length;
}

TEST(TestSequencing, OptimalPlayIsChargedNothingAlthoughGreedyChoiceWouldStartElsewhere) {
    const Plan plan = best_plan(six, tolerance_tau);
    EXPECT_NEAR(plan.tests, 2.18, 1e-9);
    EXPECT_EQ(plan.first, 1U);
    EXPECT_NEAR(plan.charge, 0.0, 1e-12);
    EXPECT_NEAR(best_plan(six, 0.5).charge, 0.0, 1e-12);
    EXPECT_NEAR(best_plan(six, 0.0).charge, 0.192, 5e-4);  // why there is a tolerance
    for (const double bits : {0.0, 0.2, 0.45, 0.9})
        EXPECT_NEAR(test_charge_minutes(1.0, bits, 0.9), charge_with(tolerance_tau, bits, 0.9),
                    1e-15);
    EXPECT_NEAR(huffman_bound(six), 1.59, 1e-9);
    EXPECT_GT(bits_of(six, 0), bits_of(six, 1));  // what greedy choice prefers
}

// --- three inverters in a row, input 1, output observed 1; a failed output is always wrong ---

TEST(ThreeInverters, ThatAlwaysFailWrongLeaveSinglesAndTheTriple) {
    const double single = 0.01 * 0.99 * 0.99, triple = 0.01 * 0.01 * 0.01;
    const double total = 3.0 * single + triple;
    const std::vector<double> p{single / total, single / total, single / total, triple / total};
    EXPECT_NEAR(p[0], 0.33332, 5e-6);
    EXPECT_NEAR(p[3], 0.00003, 5e-6);
    EXPECT_NEAR(entropy_bits(p), 1.5855, 5e-5);
    const std::vector<std::size_t> own{0, 1, 2, 3};
    // Wrong after the first inverter: the first alone, or all. After the second: the first or second alone.
    const std::array<std::array<double, 4>, 2> wrong{{{1, 0, 0, 1}, {1, 1, 0, 0}}};
    for (const auto& wire : wrong) {
        OutcomeTable table{2, {}};
        for (const double w : wire) {
            table.rows.push_back(1.0 - w);
            table.rows.push_back(w);
        }
        EXPECT_NEAR(entropy_bits(p) - information_bits(p, own, 4, table), 0.6671, 5e-5);
    }
}

// --- three multipliers and two adders: de Kleer & Williams (1987), section 2; consistency-only weights ---

enum Part { a1, a2, m1, m2, m3, part_count };

// A = 3, B = 2, C = 2, D = 3, E = 3; X = AC, Y = BD, Z = CE, F = X + Y = 10 and G = Y + Z = 12 observed.
bool consistent(unsigned faulty, int measured_x) {
    const auto sound = [&](Part part) { return (faulty >> part & 1U) == 0; };
    for (int x = 0; x <= 20; ++x) {
        if (measured_x >= 0 && x != measured_x) continue;
        if (sound(m1) && x != 6) continue;
        for (int y = 0; y <= 20; ++y) {
            if (sound(m2) && y != 6) continue;
            if (sound(a1) && x + y != 10) continue;
            for (int z = 0; z <= 20; ++z)
                if ((!sound(m3) || z == 6) && (!sound(a2) || y + z == 12)) return true;
        }
    }
    return false;
}

struct Suspects {
    std::vector<double> p = std::vector<double>(1U << part_count, 0.0);  // by set of faulty parts
    int sets = 0;
};

Suspects suspects(int measured_x) {
    Suspects s;
    double total = 0.0;
    for (unsigned faulty = 0; faulty < s.p.size(); ++faulty) {
        if (!consistent(faulty, measured_x)) continue;
        double weight = 1.0;
        for (int part = 0; part < part_count; ++part)
            weight *= (faulty >> part & 1U) != 0 ? 0.01 : 0.99;
        total += s.p[faulty] = weight;
        ++s.sets;
    }
    for (double& x : s.p) x /= total;
    return s;
}

unsigned set_of(std::initializer_list<Part> parts) {
    unsigned set = 0;
    for (const Part part : parts) set |= 1U << part;
    return set;
}

TEST(MultipliersAndAdders, HaveTwoSingleSuspectsAndTwoPairs) {
    const Suspects s = suspects(-1);
    EXPECT_EQ(s.sets, 27);
    EXPECT_NEAR(s.p[set_of({a1})], 0.47803, 5e-6);
    EXPECT_NEAR(s.p[set_of({m1})], 0.47803, 5e-6);
    EXPECT_NEAR(s.p[set_of({a2, m2})], 0.00483, 5e-6);
    EXPECT_NEAR(s.p[set_of({m2, m3})], 0.00483, 5e-6);
    EXPECT_NEAR(entropy_bits(s.p), 1.3594, 5e-5);
}

TEST(MultipliersAndAdders, HaveTwoConflictsAndFourMinimalDiagnoses) {
    constexpr unsigned all = (1U << part_count) - 1;
    std::vector<unsigned> conflicts, diagnoses;  // the least of each, by number
    for (unsigned set = 0; set <= all; ++set) {
        const auto is_least = [&](auto&& holds) {
            if (!holds(set)) return false;
            for (unsigned part = 0; part < part_count; ++part)
                if ((set >> part & 1U) != 0 && holds(set & ~(1U << part))) return false;
            return true;
        };
        if (is_least([&](unsigned sound) { return !consistent(all & ~sound, -1); }))
            conflicts.push_back(set);
        if (is_least([&](unsigned faulty) { return consistent(faulty, -1); }))
            diagnoses.push_back(set);
    }
    const auto sorted = [](std::vector<unsigned> sets) {
        std::sort(sets.begin(), sets.end());
        return sets;
    };
    EXPECT_EQ(conflicts, sorted({set_of({a1, m1, m2}), set_of({a1, a2, m1, m3})}));
    EXPECT_EQ(diagnoses, sorted({set_of({a1}), set_of({m1}), set_of({a2, m2}), set_of({m2, m3})}));
}

TEST(MultipliersAndAdders, AreToldApartByTheFirstProduct) {
    const Suspects four = suspects(4);
    EXPECT_EQ(four.sets, 16);
    EXPECT_NEAR(four.p[set_of({m1})], 0.9606, 5e-5);
    EXPECT_NEAR(entropy_bits(four.p), 0.3232, 5e-5);
    const Suspects six_again = suspects(6);
    EXPECT_EQ(six_again.sets, 22);
    EXPECT_NEAR(six_again.p[set_of({a1})], 0.94204, 5e-6);
    EXPECT_NEAR(six_again.p[set_of({a2, m2})], 0.00952, 5e-6);
    EXPECT_NEAR(entropy_bits(six_again.p), 0.4762, 5e-5);
}

// --- skill: inputs of the tracing example published, outputs recalculated; item response recalculated ---

TEST(KnowledgeTracing, FollowsTenAnswers) {
    const std::array<bool, 10> right{false, false, true, true,  true,
                                     false, true,  true, false, true};
    const std::array<double, 10> expected{0.5200, 0.5279, 0.8904, 0.9821, 0.9973,
                                          0.9935, 0.9990, 0.9999, 0.9996, 0.9999};
    double known = 0.5;
    for (std::size_t i = 0; i < right.size(); ++i) {
        known = known_after(known, right[i], {0.4, 0.2, 0.2});
        EXPECT_NEAR(known, expected[i], 5e-5) << i;
    }
}

// Two-parameter logistic item response (Birnbaum 1968, in Lord & Novick, chapter 17; from memory). No score of the
// program rests on it yet: the difficulty of a job is not known on this scale.
double solves(double ability, double discrimination, double difficulty) {
    return 1.0 / (1.0 + std::exp(-discrimination * (ability - difficulty)));
}
double item_information(double ability, double discrimination, double difficulty) {
    const double p = solves(ability, discrimination, difficulty);
    return discrimination * discrimination * p * (1.0 - p);
}

TEST(ItemResponse, OfTwoParametersFollowsTheWorkedFigures) {
    EXPECT_NEAR(solves(0.5, 1.2, 0.0), 0.64566, 5e-6);
    EXPECT_NEAR(item_information(0.5, 1.2, 0.0), 0.32945, 5e-6);
}

}  // namespace
}  // namespace emberpath::scoring
