#include "sim/scoring/glance.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace emberpath::scoring {

namespace {

constexpr std::int64_t glance_ticks = 600;

bool shows_several_figures(worksite::Tool tool) {
    return tool == worksite::Tool::readout || tool == worksite::Tool::analyser;
}

// How much a reading tells: the spread of its logarithms over the shadows.
double strength(const std::vector<double>& logs, std::span<const double> prior) {
    double total = 0.0, mean = 0.0, square = 0.0;
    for (std::size_t i = 0; i < logs.size(); ++i) {
        total += prior[i];
        mean += prior[i] * logs[i];
        square += prior[i] * logs[i] * logs[i];
    }
    return total > 0.0 ? square / total - (mean / total) * (mean / total) : 0.0;
}

}  // namespace

bool tells_controller_state(worksite::Quantity quantity) {
    return quantity == worksite::Quantity::display_word ||
           quantity == worksite::Quantity::readout_event ||
           quantity == worksite::Quantity::history_event;
}

bool of_one_glance(const Reading& a, const Reading& b) {
    if (a.cycle != b.cycle) return false;
    const bool own_word = tells_controller_state(a.quantity);
    if (own_word != tells_controller_state(b.quantity)) return false;
    if (own_word)
        return a.condition.phase == b.condition.phase && a.condition.epoch == b.condition.epoch;
    const worksite::Tool tool = worksite::info(a.quantity).tool;
    return tool == worksite::info(b.quantity).tool && shows_several_figures(tool) &&
           a.condition == b.condition && std::abs(a.tick - b.tick) <= glance_ticks;
}

std::vector<double> shares_together(std::span<const std::vector<double>* const> logs,
                                    std::span<const double> prior) {
    struct Figure {
        std::size_t index;
        double strength;
    };
    std::vector<Figure> figures;
    for (std::size_t i = 0; i < logs.size(); ++i) figures.push_back({i, strength(*logs[i], prior)});
    std::stable_sort(figures.begin(), figures.end(),
                     [](const Figure& a, const Figure& b) { return a.strength > b.strength; });
    std::vector<double> shares(logs.size(), 0.0);
    double share = 1.0;
    for (const Figure& figure : figures) {
        shares[figure.index] = share;
        share *= 1.0 - shared_error;
    }
    return shares;
}

std::vector<double> weighed_together(std::span<const std::vector<double>* const> logs,
                                     std::span<const double> prior) {
    const std::vector<double> shares = shares_together(logs, prior);
    std::vector<std::size_t> order(logs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return shares[a] > shares[b]; });
    std::vector<double> sum(logs.front()->size(), 0.0);
    for (const std::size_t f : order)
        for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += shares[f] * (*logs[f])[i];
    return sum;
}

std::vector<double> as_one_report(std::span<const std::vector<double>* const> logs) {
    std::vector<double> least(logs.front()->size(), 0.0);
    for (const std::vector<double>* one : logs) {
        const double top = *std::max_element(one->begin(), one->end());
        for (std::size_t i = 0; i < least.size(); ++i)
            least[i] = std::min(least[i], (*one)[i] - top);
    }
    return least;
}

}  // namespace emberpath::scoring
