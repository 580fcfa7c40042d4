#include "sim/scoring/information.hpp"

#include <algorithm>

#include "sim/math/functions.hpp"
#include "sim/scoring/likelihood.hpp"

namespace emberpath::scoring {

namespace {

constexpr double ln2 = 0.693147180559945309417;

struct Mark {
    double position;
    double weight;
};

// Edges at the quantiles of seven points per member, about the septiles of what it expects.
std::vector<double> quantile_edges(std::span<const double> probability,
                                   std::span<const Expectation> expected) {
    std::vector<Mark> marks;
    double total = 0.0;
    for (std::size_t i = 0; i < expected.size(); ++i) {
        if (probability[i] < 1.0e-9) continue;
        for (const double step : {-2.6, -1.2, -0.5, 0.0, 0.5, 1.2, 2.6})
            marks.push_back({expected[i].centre + step * expected[i].scale, probability[i]});
        total += 7.0 * probability[i];
    }
    std::stable_sort(marks.begin(), marks.end(),
                     [](const Mark& a, const Mark& b) { return a.position < b.position; });
    std::vector<double> edges;
    double below = 0.0;
    for (const Mark& mark : marks) {
        below += mark.weight;
        const double next = total * static_cast<double>(edges.size() + 1) / outcome_bins;
        if (below < next || edges.size() + 1 >= outcome_bins) continue;
        if (edges.empty() || mark.position > edges.back()) edges.push_back(mark.position);
    }
    return edges;
}

// Each row becomes (1 - share) row + share * the row of all members together.
void mix_with_pool(std::span<const double> probability, double share, OutcomeTable& table) {
    std::vector<double> pool(table.outcomes, 0.0);
    double total = 0.0;
    for (std::size_t i = 0; i < probability.size(); ++i) {
        total += probability[i];
        for (std::size_t k = 0; k < table.outcomes; ++k) pool[k] += probability[i] * table.at(i, k);
    }
    if (total <= 0.0) return;
    for (std::size_t i = 0; i < probability.size(); ++i)
        for (std::size_t k = 0; k < table.outcomes; ++k) {
            double& cell = table.rows[i * table.outcomes + k];
            cell = (1.0 - share) * cell + share * pool[k] / total;
        }
}

}  // namespace

double log2_of(double x) {
    return math::log(x) / ln2;
}

double entropy_bits(std::span<const double> probabilities) {
    double bits = 0.0;
    for (const double p : probabilities)
        if (p > 1.0e-300) bits -= p * log2_of(p);
    return std::max(0.0, bits);
}

std::vector<double> class_totals(std::span<const double> member_probability,
                                 std::span<const std::size_t> class_of, std::size_t class_count) {
    std::vector<double> totals(class_count, 0.0);
    for (std::size_t i = 0; i < member_probability.size(); ++i)
        totals[class_of[i]] += member_probability[i];
    return totals;
}

double information_bits(std::span<const double> member_probability,
                        std::span<const std::size_t> class_of, std::size_t class_count,
                        const OutcomeTable& table) {
    const std::vector<double> classes = class_totals(member_probability, class_of, class_count);
    double expected_after = 0.0;
    std::vector<double> joint(class_count);
    for (std::size_t k = 0; k < table.outcomes; ++k) {
        std::fill(joint.begin(), joint.end(), 0.0);
        double outcome = 0.0;
        for (std::size_t i = 0; i < member_probability.size(); ++i) {
            const double p = member_probability[i] * table.at(i, k);
            joint[class_of[i]] += p;
            outcome += p;
        }
        if (outcome <= 0.0) continue;
        for (double& p : joint) p /= outcome;
        expected_after += outcome * entropy_bits(joint);
    }
    return std::max(0.0, entropy_bits(classes) - expected_after);
}

Information information(std::span<const double> member_probability,
                        std::span<const std::size_t> class_of, std::size_t class_count,
                        const OutcomeTable& table) {
    const std::vector<double> classes = class_totals(member_probability, class_of, class_count);
    std::vector<double> joint(class_count);
    double mean = 0.0;
    double square = 0.0;
    for (std::size_t k = 0; k < table.outcomes; ++k) {
        std::fill(joint.begin(), joint.end(), 0.0);
        double outcome = 0.0;
        for (std::size_t i = 0; i < member_probability.size(); ++i) {
            const double p = member_probability[i] * table.at(i, k);
            joint[class_of[i]] += p;
            outcome += p;
        }
        for (std::size_t c = 0; c < class_count; ++c) {
            if (joint[c] < 1.0e-300) continue;
            const double bits = log2_of(joint[c] / (classes[c] * outcome));
            mean += joint[c] * bits;
            square += joint[c] * bits * bits;
        }
    }
    return {std::max(0.0, mean), std::max(0.0, square - mean * mean)};
}

OutcomeTable numeric_outcomes(std::span<const double> member_probability,
                              std::span<const Expectation> expected) {
    const std::vector<double> edges = quantile_edges(member_probability, expected);
    OutcomeTable table{edges.size() + 1, {}};
    table.rows.reserve(expected.size() * table.outcomes);
    for (const Expectation& e : expected) {
        double below = 0.0;
        for (const double edge : edges) {
            const double here = student_t_cumulative((edge - e.centre) / e.scale);
            table.rows.push_back(here - below);
            below = here;
        }
        table.rows.push_back(1.0 - below);
    }
    mix_with_pool(member_probability, outlier_share, table);
    return table;
}

OutcomeTable categorical_outcomes(std::span<const double> member_probability,
                                  std::span<const std::size_t> category, std::size_t category_count,
                                  double hit) {
    OutcomeTable table{category_count, {}};
    table.rows.reserve(category.size() * category_count);
    for (const std::size_t own : category)
        for (std::size_t k = 0; k < category_count; ++k)
            table.rows.push_back(categorical_likelihood(k, own, category_count, hit));
    mix_with_pool(member_probability, outlier_share, table);
    return table;
}

}  // namespace emberpath::scoring
