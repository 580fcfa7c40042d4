#include "sim/scoring/information.hpp"

#include <algorithm>
#include <array>

#include "sim/math/functions.hpp"
#include "sim/scoring/likelihood.hpp"

namespace emberpath::scoring {

namespace {

constexpr double ln2 = 0.693147180559945309417;

struct Mark {
    double position;
    double weight;
};

/// Members that expect the same of a reading are one. In the order of what they expect.
struct Distinct {
    std::vector<Expectation> expected;
    std::vector<double> probability;
    std::vector<std::size_t> of_member;
};

Distinct distinct(std::span<const double> probability, std::span<const Expectation> expected) {
    std::vector<std::size_t> order(expected.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const Expectation &one = expected[a], &other = expected[b];
        return one.centre != other.centre ? one.centre < other.centre : one.scale < other.scale;
    });
    Distinct out;
    out.of_member.resize(expected.size());
    for (const std::size_t i : order) {
        const Expectation& e = expected[i];
        if (out.expected.empty() || out.expected.back().centre != e.centre ||
            out.expected.back().scale != e.scale) {
            out.expected.push_back(e);
            out.probability.push_back(0.0);
        }
        out.probability.back() += probability[i];
        out.of_member[i] = out.expected.size() - 1;
    }
    return out;
}

// Edges at the quantiles of seven points per member, about the septiles of what it expects.
std::vector<double> quantile_edges(const Distinct& members) {
    std::vector<Mark> marks;
    marks.reserve(7 * members.expected.size());
    double total = 0.0;
    for (std::size_t i = 0; i < members.expected.size(); ++i) {
        const Expectation& e = members.expected[i];
        if (members.probability[i] < 1.0e-9) continue;
        for (const double step : {-2.6, -1.2, -0.5, 0.0, 0.5, 1.2, 2.6})
            marks.push_back({e.centre + step * e.scale, members.probability[i]});
        total += 7.0 * members.probability[i];
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

// Probability of each outcome; what is over of the last block of edges is left out.
void append_row(const Expectation& e, std::span<const double> edges, std::vector<double>& rows) {
    double below = 0.0;
    for (std::size_t first = 0; first < edges.size(); first += side_by_side) {
        const auto here = edges.subspan(first, std::min(side_by_side, edges.size() - first));
        std::array<double, side_by_side> cumulative{};
        for (std::size_t k = 0; k < here.size(); ++k)
            cumulative[k] = (here[k] - e.centre) / e.scale;
        student_t_cumulative(cumulative);
        for (std::size_t k = 0; k < here.size(); ++k) {
            rows.push_back(cumulative[k] - below);
            below = cumulative[k];
        }
    }
    rows.push_back(1.0 - below);
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
    const Distinct members = distinct(member_probability, expected);
    const std::vector<double> edges = quantile_edges(members);
    OutcomeTable table{edges.size() + 1, {}};
    std::vector<double> rows;
    for (const Expectation& e : members.expected) append_row(e, edges, rows);
    table.rows.reserve(expected.size() * table.outcomes);
    for (const std::size_t own : members.of_member) {
        const auto row = std::span(rows).subspan(own * table.outcomes, table.outcomes);
        table.rows.insert(table.rows.end(), row.begin(), row.end());
    }
    mix_with_pool(member_probability, outlier_share, table);
    return table;
}

OutcomeTable categorical_outcomes(std::span<const double> member_probability,
                                  std::span<const std::size_t> category, std::size_t category_count,
                                  Eye eye) {
    OutcomeTable table{category_count, {}};
    table.rows.reserve(category.size() * category_count);
    for (const std::size_t own : category)
        for (std::size_t k = 0; k < category_count; ++k)
            table.rows.push_back(categorical_likelihood(k, own, category_count, eye));
    mix_with_pool(member_probability, outlier_share, table);
    return table;
}

}  // namespace emberpath::scoring
