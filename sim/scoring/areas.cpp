#include "sim/scoring/areas.hpp"

#include <algorithm>
#include <array>
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

double handing_on_score(bool justified, double warrant_of_diagnosis, double waste) {
    const double points =
        justified ? 60.0 + 40.0 * warrant_of_diagnosis : 60.0 * warrant_of_diagnosis;
    return points * math::exp(-waste / scope_scale_minutes);
}

double safety_score(std::span<const Omission> omissions) {
    double score = 100.0;
    for (const Omission& omission : omissions) {
        score *= 1.0 - std::clamp(omission.deduction, 0.0, 1.0);
        if (omission.critical) score *= 0.45;
    }
    return score;
}

double proof_score(int items_done, int items_not_needed, bool fault_remains) {
    const int needed = std::max(1, proof_item_count - items_not_needed);
    const int done = std::clamp(items_done, 0, needed);
    return 100.0 * done / needed * (fault_remains ? 0.7 : 1.0);
}

namespace {

constexpr std::array<double, 5> area_weights{0.22, 0.25, 0.18, 0.20, 0.15};

double weighted_mean(const AreaScores& areas, std::size_t left_out) {
    const std::array<double, 5> scores{areas.safety, areas.evidence, areas.path, areas.remedy,
                                       areas.proof};
    double log_mean = 0.0;
    double weights = 0.0;
    for (std::size_t a = 0; a < scores.size(); ++a) {
        if (a == left_out) continue;
        log_mean += area_weights[a] * math::log(std::max(scores[a], least_area));
        weights += area_weights[a];
    }
    return math::exp(left_out < scores.size() ? log_mean / weights : log_mean);
}

}  // namespace

double area_weight(std::size_t area) {
    return area_weights.at(area);
}

double area_toll(std::size_t area, double score) {
    return area_weight(area) * math::log(100.0 / std::max(score, least_area));
}

double geometric_mean(const AreaScores& areas) {
    return weighted_mean(areas, area_weights.size());
}

double geometric_mean_without(const AreaScores& areas, std::size_t left_out) {
    return weighted_mean(areas, left_out);
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
