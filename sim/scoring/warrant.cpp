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
    switch (remedy) {
        case Remedy::explain_to_customer:
            return {5.0, 0.0, true};
        case Remedy::clear_flue_terminal:
            return {10.0, 0.0, true};
        case Remedy::fit_wind_guard:
            return {25.0, 30.0, false};
        case Remedy::change_cylinder:
            return {10.0, 40.0, false};
        case Remedy::quote_larger_gas_pipe:
        case Remedy::escalate_regulator:
            return {10.0, 0.0, false};
        case Remedy::replace_outlet_sensor:
            return {20.0, 25.0, false};
        case Remedy::clean_flame_electrode:
            return {15.0, 0.0, true};
        case Remedy::replace_igniter:
            return {25.0, 30.0, false};
        case Remedy::clean_exchanger:
            return {90.0, 10.0, false};
    }
    return {};
}

double need(Remedy remedy) {
    const RemedyCost cost = remedy_cost(remedy);
    if (cost.cheap_and_reversible) return 0.60;
    return cost.total() <= 60.0 ? 0.80 : 0.90;
}

bool is_handed_on(Remedy remedy) {
    return remedy == Remedy::explain_to_customer || remedy == Remedy::quote_larger_gas_pipe ||
           remedy == Remedy::escalate_regulator;
}

}  // namespace emberpath::scoring
