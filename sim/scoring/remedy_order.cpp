#include "sim/scoring/remedy_order.hpp"

#include <algorithm>
#include <numeric>

namespace emberpath::scoring {

std::vector<std::size_t> by_probability_per_cost(std::span<const RemedyChoice> choices) {
    std::vector<std::size_t> order(choices.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return choices[a].probability * choices[b].cost > choices[b].probability * choices[a].cost;
    });
    return order;
}

double expected_cost(std::span<const RemedyChoice> choices, std::span<const std::size_t> order,
                     double call_cost) {
    double still_faulty = 1.0;
    double cost = 0.0;
    for (const std::size_t i : order) {
        cost += still_faulty * choices[i].cost;
        still_faulty -= choices[i].probability;
    }
    return cost + std::max(0.0, still_faulty) * call_cost;
}

std::size_t tries_before_call(std::span<const RemedyChoice> choices,
                              std::span<const std::size_t> order, double call_cost) {
    std::size_t best = 0;
    double least = expected_cost(choices, {}, call_cost);
    for (std::size_t tries = 1; tries <= order.size(); ++tries) {
        const double cost = expected_cost(choices, order.first(tries), call_cost);
        if (cost >= least) continue;
        least = cost;
        best = tries;
    }
    return best;
}

}  // namespace emberpath::scoring
