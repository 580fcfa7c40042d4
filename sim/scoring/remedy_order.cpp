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

}  // namespace emberpath::scoring
