#include "sim/scoring/areas.hpp"

#include <algorithm>
#include <cmath>

#include "sim/math/functions.hpp"
#include "sim/scoring/warrant.hpp"

namespace emberpath::scoring {

namespace {
constexpr double diagnosis_weight = 8.0;
constexpr double tolerance_tau = 1.0;
constexpr double free_share = 0.2;
constexpr double path_lambda = 0.6;
constexpr double callback_minutes = 60.0;
constexpr double scope_scale_minutes = 60.0;
constexpr double ceiling_margin = 20.0;
constexpr double ceiling_softness = 4.0;
constexpr double least_area = 2.0;
}  // namespace

double warrant_of(const Commitment& c) {
    constexpr double unconfirmed_share = 0.5;
    return warrant(c.probability, c.on_arrival, c.need) * (c.confirmed ? 1.0 : unconfirmed_share);
}

double shortfall(const Commitment& c) {
    return std::max(0.0, 1.0 - c.probability / c.need);
}

double evidence_score(std::span<const Commitment> remedies, const Commitment& diagnosis) {
    double sum = diagnosis_weight * warrant_of(diagnosis);
    double weights = diagnosis_weight;
    for (const Commitment& remedy : remedies) {
        const double weight = std::sqrt(std::max(0.0, remedy.minutes + remedy.part_minutes));
        sum += weight * warrant_of(remedy);
        weights += weight;
    }
    return 100.0 * sum / weights;
}

double test_charge_minutes(double minutes, double expected_bits, double best_bits_per_minute) {
    if (best_bits_per_minute <= 0.0) return minutes;
    const double worth = (1.0 + tolerance_tau) * expected_bits / best_bits_per_minute;
    return std::max(0.0, minutes - worth);
}

double confirmation_factor(double leading_probability) {
    return 1.0 - 0.5 * smooth_step((leading_probability - 0.90) / 0.09);
}

double remedy_charge_minutes(const Commitment& remedy) {
    return shortfall(remedy) * remedy.minutes;
}

double submission_charge_minutes(double diagnosis_probability) {
    return std::max(0.0, 1.0 - diagnosis_probability / need_of_final_diagnosis) * callback_minutes;
}

double path_score(double excess_minutes, double reference_minutes) {
    const double c = std::max(least_reference_minutes, reference_minutes);
    return 100.0 * c / (c + path_lambda * std::max(0.0, excess_minutes - free_share * c));
}

double waste_minutes(std::span<const Commitment> remedies) {
    double waste = 0.0;
    for (const Commitment& remedy : remedies) {
        double missing = shortfall(remedy);
        if (!remedy.cured) missing = std::max(missing, 0.25 * (1.0 - remedy.probability));
        waste += missing * (remedy.part_minutes + 0.3 * remedy.minutes);
    }
    return waste;
}

double remedy_score(bool fixed, double warrant_of_diagnosis, double waste) {
    return 100.0 * (0.5 * (fixed ? 1.0 : 0.0) + 0.5 * warrant_of_diagnosis) *
           math::exp(-waste / scope_scale_minutes);
}

double safety_score(std::span<const Omission> omissions) {
    double score = 100.0;
    for (const Omission& omission : omissions) {
        score *= 1.0 - std::clamp(omission.deduction, 0.0, 1.0);
        if (omission.critical) score *= 0.45;
    }
    return score;
}

double proof_score(int items_done, bool fault_remains) {
    const int done = std::clamp(items_done, 0, proof_item_count);
    return 100.0 * done / proof_item_count * (fault_remains ? 0.7 : 1.0);
}

double geometric_mean(const AreaScores& areas) {
    const auto part = [](double weight, double area) {
        return weight * math::log(std::max(area, least_area));
    };
    const double log_mean = part(0.22, areas.safety) + part(0.25, areas.evidence) +
                            part(0.18, areas.path) + part(0.20, areas.remedy) +
                            part(0.15, areas.proof);
    return math::exp(log_mean);
}

double under_safety_ceiling(double score, double safety) {
    const double ceiling = safety + ceiling_margin;
    const double low = std::min(score, ceiling);
    // Written from the smaller of the two so that neither exponential underflows.
    const double gap = std::abs(score - ceiling);
    return low - ceiling_softness * math::log(1.0 + math::exp(-gap / ceiling_softness));
}

double overall_score(const AreaScores& areas) {
    return std::max(0.0, under_safety_ceiling(geometric_mean(areas), areas.safety));
}

}  // namespace emberpath::scoring
