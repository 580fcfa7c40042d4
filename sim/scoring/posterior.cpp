#include "sim/scoring/posterior.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "sim/math/functions.hpp"
#include "sim/scoring/likelihood.hpp"

namespace emberpath::scoring {

namespace {

constexpr double complaint_match = 0.85;
constexpr double complaint_related = 0.45;
constexpr double complaint_other = 0.15;
constexpr std::int64_t trend_ticks = 1800;  // three minutes: long enough for a trend to be news
constexpr double least_likelihood = 1.0e-280;
constexpr double asleep_below = 1.0e-6;
constexpr double rounding_bits = 1.0e-9;  // what sums of many shares may be off by
// A shadow that matters little must not make the same reading look new; evidence is merged more carefully
// than a proposal is dropped.
constexpr double tolerated_when_asking = 0.02;
constexpr double tolerated_when_weighing = 0.002;

bool related(worksite::Complaint a, worksite::Complaint b) {
    using C = worksite::Complaint;
    const auto pair = [&](C x, C y) { return (a == x && b == y) || (a == y && b == x); };
    return pair(C::not_hot_enough, C::goes_cold_after_a_while) ||
           pair(C::no_hot_water, C::drops_out_now_and_then) ||
           pair(C::goes_cold_after_a_while, C::drops_out_now_and_then);
}

bool tells_controller_state(worksite::Quantity quantity) {
    return quantity == worksite::Quantity::display_word ||
           quantity == worksite::Quantity::readout_event;
}

std::size_t as_category(double value) {
    return static_cast<std::size_t>(std::max(0.0, value));
}

bool same_key(const Reading& a, const Reading& b) {
    return a.quantity == b.quantity && a.hold == b.hold && a.condition == b.condition;
}

}  // namespace

bool is_lasting(worksite::Quantity quantity) {
    using Q = worksite::Quantity;
    return quantity == Q::flue_terminal || quantity == Q::exchanger_fins ||
           quantity == Q::electrode_tip;
}

std::vector<double> log_weights(std::span<const double> likelihood, std::span<const double> prior) {
    double pool = 0.0;
    for (std::size_t i = 0; i < likelihood.size(); ++i) pool += prior[i] * likelihood[i];
    std::vector<double> logs;
    logs.reserve(likelihood.size());
    for (const double l : likelihood) {
        const double mixed = (1.0 - outlier_share) * l + outlier_share * pool;
        logs.push_back(tempering * math::log(std::max(mixed, least_likelihood)));
    }
    return logs;
}

std::vector<double> normalised(std::span<const double> logarithms) {
    const double top = *std::max_element(logarithms.begin(), logarithms.end());
    std::vector<double> p;
    p.reserve(logarithms.size());
    double total = 0.0;
    for (const double l : logarithms) {
        p.push_back(l - top < -700.0 ? 0.0 : math::exp(l - top));
        total += p.back();
    }
    for (double& x : p) x /= total;
    return p;
}

Posterior::Posterior(std::vector<Hypothesis> all, double width_factor)
    : hypotheses_(std::move(all)), sound_(sound_house(hypotheses_)), width_factor_(width_factor) {
    for (const Hypothesis& h : hypotheses_) {
        class_of_.push_back(class_index(h.remedy));
        log_arrival_.push_back(math::log(std::max(h.prior, least_likelihood)));
    }
    update();
}

void Posterior::hear(worksite::Complaint heard, std::span<const worksite::Complaint> of_each) {
    for (std::size_t i = 0; i < hypotheses_.size(); ++i) {
        const double fit = of_each[i] == heard          ? complaint_match
                           : related(of_each[i], heard) ? complaint_related
                                                        : complaint_other;
        log_arrival_[i] += math::log(fit);
    }
    if (heard == worksite::Complaint::drops_out_now_and_then) present_share_ = 0.5;
    update();
}

std::vector<double> Posterior::widths(const Reading& reading, std::span<const double> predicted,
                                      std::size_t reads) const {
    std::vector<double> on;
    on.reserve(predicted.size());
    for (const double value : predicted) on.push_back(on_scale(reading.quantity, value));
    const bool logarithmic = worksite::info(reading.quantity).logarithmic;
    std::vector<double> scales;
    scales.reserve(predicted.size());
    for (std::size_t i = 0; i < predicted.size(); ++i) {
        Width width = width_of(reading.quantity, predicted[i]);
        const double own = width.scale(1);
        // A shadow stands for severities half-way to its neighbours: uniform over that gap. Where the
        // gap is a change of regime it must not become a wide sigma, hence the nearer one and a cap.
        double gap = -1.0;
        for (const int other : {hypotheses_[i].lower, hypotheses_[i].upper}) {
            if (other < 0) continue;
            const double distance = std::abs(on[static_cast<std::size_t>(other)] - on[i]);
            gap = gap < 0.0 ? distance : std::min(gap, distance);
        }
        const double severities = std::min(std::max(gap, 0.0) / std::sqrt(12.0), own);
        const double share = draw_spread_share(reading.quantity);
        const double draws = logarithmic ? share : share * std::abs(predicted[i]);
        width.spread = std::sqrt(severities * severities + draws * draws);
        scales.push_back(width_factor_ * width.scale(reads));
    }
    return scales;
}

std::vector<double> Posterior::likelihoods(const Reading& reading,
                                           std::span<const double> predicted) const {
    const worksite::QuantityInfo& row = worksite::info(reading.quantity);
    std::vector<double> out;
    out.reserve(predicted.size());
    if (row.categorical) {
        for (const double own : predicted)
            out.push_back(categorical_likelihood(as_category(reading.value), as_category(own),
                                                 static_cast<std::size_t>(row.category_count),
                                                 hit_rate(reading.quantity)));
        return out;
    }
    const std::vector<double> scales = widths(reading, predicted, 1);
    const double read = on_scale(reading.quantity, reading.value);
    for (std::size_t i = 0; i < predicted.size(); ++i) {
        const double t = (read - on_scale(reading.quantity, predicted[i])) / scales[i];
        out.push_back(student_t_density(t) / scales[i]);
    }
    return out;
}

double Posterior::distance(const Reading& reading, std::span<const double> predicted,
                           std::size_t lane) const {
    const double scale = widths(reading, predicted, 1)[lane];
    return (on_scale(reading.quantity, reading.value) -
            on_scale(reading.quantity, predicted[lane])) /
           scale;
}

double Posterior::changed_share(const Group& group, const Reading& reading,
                                std::span<const double> predicted, double scales) const {
    const bool categorical = worksite::info(reading.quantity).categorical;
    double share = 0.0;
    for (std::size_t i = 0; i < predicted.size(); ++i) {
        bool changed = false;
        if (categorical) {
            changed = as_category(group.predicted[i]) != as_category(predicted[i]);
        } else {
            const double width = width_of(reading.quantity, predicted[i]).scale(1);
            const double moved = on_scale(reading.quantity, predicted[i]) - group.predicted[i];
            changed = std::abs(moved) > scales * width;
        }
        if (changed) share += probability_[i];
    }
    return share;
}

bool Posterior::same_state(const Group& group, const Reading& reading,
                           std::span<const double> predicted) const {
    if (!tells_controller_state(group.first.quantity) || !tells_controller_state(reading.quantity))
        return false;
    std::vector<int> image(64, -1);  // category of the group -> category of the reading
    for (std::size_t i = 0; i < predicted.size(); ++i) {
        int& to = image[as_category(group.predicted[i]) & 63U];
        const int here = static_cast<int>(as_category(predicted[i]));
        if (to < 0) to = here;
        if (to != here) return false;
    }
    return true;
}

const Posterior::Group* Posterior::group_for(const Reading& reading,
                                             std::span<const double> predicted,
                                             double tolerated) const {
    for (const Group& group : groups_) {
        const bool other_trial = present_share_ < 1.0 && group.first.cycle != reading.cycle;
        if (other_trial && !is_lasting(reading.quantity)) continue;
        if (group.first.quantity != reading.quantity) {
            if (same_state(group, reading, predicted)) return &group;
            continue;
        }
        if (changed_share(group, reading, predicted, 0.5) <= tolerated) return &group;
        if (!same_key(group.first, reading)) continue;
        // Same key, other predictions: a trend is news only after a while.
        const bool trend = std::abs(reading.tick - group.first.tick) >= trend_ticks;
        if (!trend || changed_share(group, reading, predicted, 1.0) <= tolerated) return &group;
    }
    return nullptr;
}

bool Posterior::repeats(const Reading& reading, std::span<const double> predicted) const {
    return group_for(reading, predicted, tolerated_when_asking) != nullptr;
}

void Posterior::extend(Group& group, const Reading& reading,
                       std::span<const double> predicted) const {
    const std::size_t count = hypotheses_.size();
    if (group.reads == 0) {
        group.first = reading;
        group.predicted.assign(count, 0.0);
        group.residual.assign(count, 0.0);
        group.log_category.assign(count, 0.0);
    }
    const bool categorical = worksite::info(reading.quantity).categorical;
    const std::vector<double> likelihood = likelihoods(reading, predicted);
    const double n = static_cast<double>(group.reads);
    for (std::size_t i = 0; i < count; ++i) {
        group.log_category[i] += math::log(std::max(likelihood[i], least_likelihood));
        if (categorical) {
            if (group.reads == 0) group.predicted[i] = predicted[i];
            continue;
        }
        const double expected = on_scale(reading.quantity, predicted[i]);
        group.predicted[i] = (group.predicted[i] * n + expected) / (n + 1.0);
        group.residual[i] += on_scale(reading.quantity, reading.value) - expected;
    }
    ++group.reads;
}

void Posterior::weigh(Group& group) const {
    const double n = static_cast<double>(group.reads);
    const bool categorical = worksite::info(group.first.quantity).categorical;
    const bool logarithmic = worksite::info(group.first.quantity).logarithmic;
    std::vector<double> likelihood;
    std::vector<double> prior;
    std::vector<double> scales;
    if (!categorical) {
        std::vector<double> si;  // widths are functions of the predicted value itself
        for (const double p : group.predicted) si.push_back(logarithmic ? math::exp(p) : p);
        scales = widths(group.first, si, group.reads);
    }
    for (std::size_t i = 0; i < hypotheses_.size(); ++i) {
        prior.push_back(hypotheses_[i].prior);
        likelihood.push_back(categorical ? math::exp(group.log_category[i] / n)
                                         : student_t_density(group.residual[i] / n / scales[i]) /
                                               scales[i]);
    }
    group.log_weight = log_weights(likelihood, prior);
}

void Posterior::add(const Reading& reading, std::span<const double> predicted) {
    const Group* known = group_for(reading, predicted, tolerated_when_weighing);
    if (known == nullptr) {
        groups_.emplace_back();
        extend(groups_.back(), reading, predicted);
        weigh(groups_.back());
    } else {
        Group& group = groups_[static_cast<std::size_t>(known - groups_.data())];
        extend(group, reading, predicted);
        weigh(group);
    }
    update();
}

void Posterior::update() {
    std::vector<double> logs = log_arrival_;
    std::vector<int> cycles;  // in order of first appearance
    for (const Group& group : groups_) {
        const bool lasting = is_lasting(group.first.quantity) || present_share_ >= 1.0;
        if (lasting)
            for (std::size_t i = 0; i < logs.size(); ++i) logs[i] += group.log_weight[i];
        else if (std::find(cycles.begin(), cycles.end(), group.first.cycle) == cycles.end())
            cycles.push_back(group.first.cycle);
    }
    for (const int cycle : cycles) {
        std::vector<double> sum(logs.size(), 0.0);
        for (const Group& group : groups_)
            if (group.first.cycle == cycle && !is_lasting(group.first.quantity))
                for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += group.log_weight[i];
        for (std::size_t i = 0; i < sum.size(); ++i) {
            const double top = std::max(sum[i], sum[sound_]);
            const double mixed = present_share_ * math::exp(sum[i] - top) +
                                 (1.0 - present_share_) * math::exp(sum[sound_] - top);
            logs[i] += top + math::log(mixed);
        }
    }
    probability_ = normalised(logs);
}

std::vector<double> Posterior::classes() const {
    return class_totals(probability_, class_of_, faults::remedy_count);
}

double Posterior::class_entropy_bits() const {
    return entropy_bits(classes());
}

Posterior::Members Posterior::members(const Reading& reading,
                                      std::span<const double> predicted) const {
    const worksite::QuantityInfo& row = worksite::info(reading.quantity);
    std::vector<double> scales;
    if (!row.categorical) scales = widths(reading, predicted, 1);
    // Shadows that are as good as excluded move nothing and cost most of the time.
    Members live;
    std::vector<std::size_t> own;
    std::vector<Expectation> expected;
    double total = 0.0;
    for (std::size_t i = 0; i < predicted.size(); ++i) {
        if (probability_[i] < asleep_below) continue;
        total += probability_[i];
        live.probability.push_back(probability_[i]);
        live.class_of.push_back(class_of_[i]);
        if (row.categorical)
            own.push_back(as_category(predicted[i]));
        else
            expected.push_back({on_scale(reading.quantity, predicted[i]), scales[i]});
    }
    for (double& p : live.probability) p /= total;
    live.outcomes = row.categorical
                        ? categorical_outcomes(live.probability, own,
                                               static_cast<std::size_t>(row.category_count),
                                               hit_rate(row.quantity))
                        : numeric_outcomes(live.probability, expected);
    return live;
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
    return std::min(bound_about(predicted[likeliest], predicted),
                    bound_about(predicted[sound_], predicted));
}

double Posterior::expected_bits(const Reading& reading, std::span<const double> predicted) const {
    if (repeats(reading, predicted)) return 0.0;
    const Members live = members(reading, predicted);
    return information_bits(live.probability, live.class_of, faults::remedy_count, live.outcomes);
}

Information Posterior::expected_information(const Reading& reading,
                                            std::span<const double> predicted) const {
    if (repeats(reading, predicted)) return {};
    const Members live = members(reading, predicted);
    return information(live.probability, live.class_of, faults::remedy_count, live.outcomes);
}

double Posterior::separation_bits(const Reading& reading, std::span<const double> predicted,
                                  std::size_t class_index, std::size_t against) const {
    if (repeats(reading, predicted)) return 0.0;
    Members live = members(reading, predicted);
    double own = 0.0, others = 0.0;
    for (std::size_t i = 0; i < live.class_of.size(); ++i) {
        if (live.class_of[i] == class_index)
            own += live.probability[i];
        else if (against == every_other || live.class_of[i] == against)
            others += live.probability[i];
        else
            live.probability[i] = 0.0;
    }
    if (own <= 0.0 || others <= 0.0) return 0.0;
    for (std::size_t i = 0; i < live.class_of.size(); ++i) {
        const bool is_own = live.class_of[i] == class_index;
        live.probability[i] *= 0.5 / (is_own ? own : others);
        live.class_of[i] = is_own ? 1 : 0;
    }
    return information_bits(live.probability, live.class_of, 2, live.outcomes);
}

}  // namespace emberpath::scoring
