#pragma once
/// Order of remedies when nothing more can be measured: by probability per cost.
///
/// Source    Kadane & Simon (1977); Heckerman, Breese & Rommelse (1995), Commun. ACM 38(3), 49-57:
///           optimal for one fault and independent costs
/// Checked   tests/unit/scoring/remedy_order_test.cpp

#include <cstddef>
#include <span>
#include <vector>

namespace emberpath::scoring {

struct RemedyChoice {
    double probability = 0.0;
    double cost = 1.0;  // > 0, any unit
};
/// Indices, best first; equal ratios keep their order.
[[nodiscard]] std::vector<std::size_t> by_probability_per_cost(
    std::span<const RemedyChoice> choices);

}  // namespace emberpath::scoring
