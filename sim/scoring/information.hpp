#pragma once
/// Entropy, information and bins of outcomes: the arithmetic of "what could this reading have told".
/// All in bits. No libm: logarithms are math::log, so results have the same bits everywhere.

#include <cstddef>
#include <span>
#include <vector>

#include "sim/scoring/likelihood.hpp"

namespace emberpath::scoring {

inline constexpr std::size_t outcome_bins = 16;

/// log2(x), x > 0.
[[nodiscard]] double log2_of(double x);

/// Entropy of a distribution [bits]: -sum p log2 p (Shannon 1948). Entries at or below 0 count nothing.
[[nodiscard]] double entropy_bits(std::span<const double> probabilities);

/// Adds the members' probabilities up per class. `class_of[i]` < class_count.
[[nodiscard]] std::vector<double> class_totals(std::span<const double> member_probability,
                                               std::span<const std::size_t> class_of,
                                               std::size_t class_count);

/// P(outcome | member), one row per member, each row summing to 1.
struct OutcomeTable {
    std::size_t outcomes = 0;
    std::vector<double> rows;  // member-major
    [[nodiscard]] double at(std::size_t member, std::size_t outcome) const {
        return rows[member * outcomes + outcome];
    }
};

/// Mutual information of class and outcome [bits]: how much the reading can be expected to tell about
/// the class. Never negative; at most the entropy of the classes.
[[nodiscard]] double information_bits(std::span<const double> member_probability,
                                      std::span<const std::size_t> class_of,
                                      std::size_t class_count, const OutcomeTable& table);

/// The same with its spread: variance [bits^2] of log2(p(class | outcome) / p(class)) over classes and
/// outcomes as they are expected.
struct Information {
    double bits = 0.0;
    double variance = 0.0;
};
[[nodiscard]] Information information(std::span<const double> member_probability,
                                      std::span<const std::size_t> class_of,
                                      std::size_t class_count, const OutcomeTable& table);

/// What a member expects of a numeric reading: Student-t around `centre` (nu = 5).
struct Expectation {
    double centre = 0.0;
    double scale = 1.0;
};

/// Bins a numeric reading into at most outcome_bins outcomes whose edges are quantiles of what all
/// members together expect, so that bins fall where the readings would. As in every likelihood, 1 % of
/// what all members together expect is mixed in (mistakes); likewise for categories below.
[[nodiscard]] OutcomeTable numeric_outcomes(std::span<const double> member_probability,
                                            std::span<const Expectation> expected);

/// Each member expects its own category as often as the eye names it; the others share the rest.
[[nodiscard]] OutcomeTable categorical_outcomes(std::span<const double> member_probability,
                                                std::span<const std::size_t> category,
                                                std::size_t category_count, Eye eye);

/// No numeric reading that members expect like this can tell more about the class [bits]. Members are put into
/// clusters k of neighbouring values; were the cluster known as well,
///     I(class; outcome) <= I(class; k) + sum_k p_k min(H(class | k), sum_i p_i/p_k D(i || k))
/// (chain rule, data processing and convexity: Cover & Thomas 1991, sections 2.5, 2.7, 2.8), D the divergence of
/// what a member expects from one Student-t for its cluster. For nu = 5, d the distance of the centres in the
/// cluster's scale and r the ratio of the scales,
///     D <= 0.6 d^2 + 1.5 (ln r)^2 <= 0.6 d^2 + 1.5 (r + 1/r - 2)  [nats]:
/// the logarithm of the density bends nowhere more than that, and D and its slope are nothing at d = 0, r = 1.
[[nodiscard]] double most_numeric_bits(std::span<const double> member_probability,
                                       std::span<const std::size_t> class_of,
                                       std::size_t class_count,
                                       std::span<const Expectation> expected);
/// The same for categories, each a cluster.
[[nodiscard]] double most_categorical_bits(std::span<const double> member_probability,
                                           std::span<const std::size_t> class_of,
                                           std::size_t class_count,
                                           std::span<const std::size_t> category);

}  // namespace emberpath::scoring
