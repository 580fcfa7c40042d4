// What a reading could be expected to tell, before it is taken.

#include <algorithm>
#include <array>
#include <utility>

#include "sim/scoring/glance.hpp"
#include "sim/scoring/likelihood.hpp"
#include "sim/scoring/posterior.hpp"

namespace emberpath::scoring {

namespace {

constexpr double asleep_below = 1.0e-6;
constexpr double rounding_bits = 1.0e-9;  // what sums of many shares may be off by
// A shadow that matters little must not make the same reading look new; evidence is merged more carefully
// than a proposal is dropped.
constexpr double tolerated_when_asking = 0.02;

std::size_t as_category(double value) {
    return static_cast<std::size_t>(std::max(0.0, value));
}

}  // namespace

bool Posterior::repeats(const Reading& reading, std::span<const double> predicted) const {
    return group_for(reading, predicted, tolerated_when_asking) != nullptr;
}

double Posterior::share_after_glance(const Reading& reading) const {
    double share = 1.0;
    if (tells_controller_state(reading.quantity)) return share;  // what is left of it is worked out
    for (const Group& group : groups_)
        if (of_one_glance(group.first, reading)) share *= 1.0 - shared_error;
    return share;
}

std::vector<Expectation> Posterior::expectations(const Reading& reading,
                                                 std::span<const double> predicted) const {
    const std::vector<double> scales = widths(reading, predicted, 1);
    std::vector<Expectation> out;
    out.reserve(predicted.size());
    for (std::size_t i = 0; i < predicted.size(); ++i)
        out.push_back({on_scale(reading.quantity, predicted[i]), scales[i]});
    return out;
}

// Shadows that are as good as excluded move nothing and cost most of the time.
Posterior::Live Posterior::live(const Reading& reading, std::span<const double> predicted,
                                std::span<const Expectation> known) const {
    const bool categorical = worksite::info(reading.quantity).categorical;
    std::vector<double> scales;
    if (!categorical && known.empty()) scales = widths(reading, predicted, 1, asleep_below);
    Live out;
    out.probability.reserve(predicted.size());
    out.class_of.reserve(predicted.size());
    if (categorical)
        out.category.reserve(predicted.size());
    else
        out.expected.reserve(predicted.size());
    double total = 0.0;
    for (std::size_t i = 0; i < predicted.size(); ++i) {
        if (probability_[i] < asleep_below) continue;
        total += probability_[i];
        out.probability.push_back(probability_[i]);
        out.class_of.push_back(class_of_[i]);
        if (categorical)
            out.category.push_back(as_category(predicted[i]));
        else if (known.empty())
            out.expected.push_back({on_scale(reading.quantity, predicted[i]), scales[i]});
        else
            out.expected.push_back(known[i]);
    }
    for (double& p : out.probability) p /= total;
    return out;
}

Posterior::Members Posterior::members(const Reading& reading,
                                      std::span<const double> predicted) const {
    const worksite::QuantityInfo& row = worksite::info(reading.quantity);
    Live all = live(reading, predicted);
    OutcomeTable outcomes = row.categorical
                                ? categorical_outcomes(all.probability, all.category,
                                                       static_cast<std::size_t>(row.category_count),
                                                       eye_for(row.quantity))
                                : numeric_outcomes(all.probability, all.expected);
    return {std::move(all.probability), std::move(all.class_of), std::move(outcomes)};
}

double Posterior::closer_most_bits(const Reading& reading, std::span<const double> predicted,
                                   std::span<const Expectation> known) const {
    if (repeats(reading, predicted)) return 0.0;
    const Live all = live(reading, predicted, known);
    if (worksite::info(reading.quantity).categorical)
        return most_categorical_bits(all.probability, all.class_of, class_count, all.category) +
               rounding_bits;
    return most_numeric_bits(all.probability, all.class_of, class_count, all.expected) +
           rounding_bits;
}

// A shadow whose severities lie apart expects a wider band than its own value tells.
bool Posterior::stands_apart(std::size_t lane, std::span<const double> predicted) const {
    const Hypothesis& h = hypotheses_[lane];
    bool apart = h.lower >= 0 || h.upper >= 0;
    for (const int other : {h.lower, h.upper})
        if (other >= 0 && predicted[static_cast<std::size_t>(other)] == predicted[lane])
            apart = false;
    return apart;
}

double Posterior::bound_about(double common, std::span<const double> predicted) const {
    double all = 0.0, other = 0.0;
    std::size_t count = 0;
    for (std::size_t i = 0; i < predicted.size(); ++i) {
        if (probability_[i] < asleep_below) continue;
        all += probability_[i];
        if (predicted[i] == common && !stands_apart(i, predicted)) continue;
        other += probability_[i];
        ++count;
    }
    if (count == 0) return 0.0;
    const double m = other / all;
    const double which = entropy_bits(std::array{m, 1.0 - m});
    return which + m * log2_of(static_cast<double>(count)) + rounding_bits;
}

double Posterior::most_bits(std::span<const double> predicted) const {
    const auto likeliest = static_cast<std::size_t>(
        std::max_element(probability_.begin(), probability_.end()) - probability_.begin());
    const double about_likeliest = bound_about(predicted[likeliest], predicted);
    if (predicted[sound_] == predicted[likeliest]) return about_likeliest;
    return std::min(about_likeliest, bound_about(predicted[sound_], predicted));
}

double Posterior::expected_bits(const Reading& reading, std::span<const double> predicted) const {
    if (repeats(reading, predicted)) return 0.0;
    const Members live = members(reading, predicted);
    return share_after_glance(reading) *
           information_bits(live.probability, live.class_of, class_count, live.outcomes);
}

Information Posterior::expected_information(const Reading& reading,
                                            std::span<const double> predicted) const {
    if (repeats(reading, predicted)) return {};
    const Members live = members(reading, predicted);
    const Information alone =
        information(live.probability, live.class_of, class_count, live.outcomes);
    const double share = share_after_glance(reading);
    return {share * alone.bits, share * share * alone.variance};
}

std::vector<double> Posterior::separation_bits(const Reading& reading,
                                               std::span<const double> predicted,
                                               std::span<const std::size_t> classes,
                                               std::size_t against) const {
    std::vector<double> bits(classes.size(), 0.0);
    if (classes.empty() || repeats(reading, predicted)) return bits;
    const Members live = members(reading, predicted);
    for (std::size_t i = 0; i < classes.size(); ++i)
        bits[i] = separation_of(live, classes[i], against);
    return bits;
}

double Posterior::separation_of(Members live, std::size_t class_index, std::size_t against) {
    // A pair that needs the same remedy beside another speaks for it, unless one class is asked about.
    const auto is_own = [&](std::size_t i) {
        const Class one = Class::at(live.class_of[i]), asked = Class::at(class_index);
        return one == asked || (against == every_other && one.is_pair() && !asked.is_pair() &&
                                needs(one, remedies_of(asked).front()));
    };
    double own = 0.0, others = 0.0;
    for (std::size_t i = 0; i < live.class_of.size(); ++i) {
        if (is_own(i))
            own += live.probability[i];
        else if (against == every_other || live.class_of[i] == against)
            others += live.probability[i];
        else
            live.probability[i] = 0.0;
    }
    if (own <= 0.0 || others <= 0.0) return 0.0;
    for (std::size_t i = 0; i < live.class_of.size(); ++i) {
        const bool mine = is_own(i);
        live.probability[i] *= 0.5 / (mine ? own : others);
        live.class_of[i] = mine ? 1 : 0;
    }
    return information_bits(live.probability, live.class_of, 2, live.outcomes);
}

}  // namespace emberpath::scoring
