#include "sim/scoring/glance.hpp"

#include <algorithm>
#include <cmath>

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

std::vector<double> weighed_together(std::span<const std::vector<double>* const> logs,
                                     std::span<const double> prior) {
    struct Figure {
        const std::vector<double>* logs;
        double strength;
    };
    std::vector<Figure> figures;
    for (const std::vector<double>* one : logs) figures.push_back({one, strength(*one, prior)});
    std::stable_sort(figures.begin(), figures.end(),
                     [](const Figure& a, const Figure& b) { return a.strength > b.strength; });
    std::vector<double> sum(logs.front()->size(), 0.0);
    double share = 1.0;
    for (const Figure& figure : figures) {
        for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += share * (*figure.logs)[i];
        share *= 1.0 - shared_error;
    }
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
