#include "sim/scoring/warrant.hpp"

#include <algorithm>

#include "sim/scoring/information.hpp"

namespace emberpath::scoring {

using faults::Remedy;

double log_odds_bits(double probability) {
    const double p = std::clamp(probability, 1.0e-6, 1.0 - 1.0e-6);
    return log2_of(p / (1.0 - p));
}

double smooth_step(double x) {
    const double t = std::clamp(x, 0.0, 1.0);
    return t * t * (3.0 - 2.0 * t);
}

double warrant(double probability, double on_arrival, double need) {
    const double top = log_odds_bits(need);
    const double low = std::min(log_odds_bits(on_arrival), top - warrant_span_bits);
    return smooth_step((log_odds_bits(probability) - low) / (top - low));
}

RemedyCost remedy_cost(Remedy remedy) {
    const faults::RemedyInfo& info = faults::info(remedy);
    const double isolating = info.reach == faults::Reach::inside ? isolating_minutes : 0.0;
    return {info.minutes + isolating, info.part_minutes, info.reversible};
}

double need(Remedy remedy) {
    const RemedyCost cost = remedy_cost(remedy);
    if (cost.cheap_and_reversible) return 0.60;
    return cost.total() <= 60.0 ? 0.80 : 0.90;
}

bool is_handed_on(Remedy remedy) {
    return !faults::works_at_once(remedy);
}

}  // namespace emberpath::scoring
