#include "sim/scoring/posterior.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sim/math/functions.hpp"
#include "sim/scoring/glance.hpp"
#include "sim/scoring/likelihood.hpp"

namespace emberpath::scoring {

namespace {

constexpr double complaint_match = 0.85;
constexpr double complaint_related = 0.45;
constexpr double complaint_other = 0.15;
constexpr std::int64_t trend_ticks = 1800;  // three minutes: long enough for a trend to be news
constexpr double least_likelihood = 1.0e-280;
constexpr double tolerated_when_weighing = 0.002;  // as posterior_expected.cpp explains
constexpr double nobody_below = 1.0e-15;           // all shadows below it are less than rounding

bool related(worksite::Complaint a, worksite::Complaint b) {
    using C = worksite::Complaint;
    const auto pair = [&](C x, C y) { return (a == x && b == y) || (a == y && b == x); };
    return pair(C::not_hot_enough, C::goes_cold_after_a_while) ||
           pair(C::no_hot_water, C::drops_out_now_and_then) ||
           pair(C::goes_cold_after_a_while, C::drops_out_now_and_then);
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
        class_of_.push_back(scoring::class_of(h).index());
        log_arrival_.push_back(math::log(std::max(h.prior, least_likelihood)));
    }
    log_arrival_.push_back(math::log(something_else_prior));
    update();
}

void Posterior::hear(worksite::Complaint heard, std::span<const worksite::Complaint> of_each) {
    double mean = 0.0;
    for (std::size_t i = 0; i < hypotheses_.size(); ++i) {
        const double fit = of_each[i] == heard          ? complaint_match
                           : related(of_each[i], heard) ? complaint_related
                                                        : complaint_other;
        log_arrival_[i] += math::log(fit);
        mean += hypotheses_[i].prior * fit;
    }
    log_arrival_.back() += math::log(std::max(mean, complaint_other));
    if (heard == worksite::Complaint::drops_out_now_and_then) present_share_ = 0.5;
    update();
}

std::vector<double> Posterior::widths(const Reading& reading, std::span<const double> predicted,
                                      std::size_t reads, double of_those_above) const {
    const bool logarithmic = worksite::info(reading.quantity).logarithmic;
    const double share = draw_spread_share(reading.quantity);
    std::vector<double> logs;  // where the scale is the value itself, the values will do
    if (logarithmic)
        for (const double value : predicted) logs.push_back(on_scale(reading.quantity, value));
    const std::span<const double> on = logarithmic ? logs : predicted;
    std::vector<double> scales(predicted.size(), 0.0);
    for (std::size_t i = 0; i < predicted.size(); ++i) {
        if (probability_[i] < of_those_above) continue;
        Width width = width_of(reading.quantity, predicted[i], reading.beyond_class);
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
        const double draws = logarithmic ? share : share * std::abs(predicted[i]);
        width.spread = std::sqrt(severities * severities + draws * draws);
        scales[i] = width_factor_ * width.scale(reads);
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
                                                 eye_for(reading.quantity)));
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

double Posterior::scale_of(const Reading& reading, std::span<const double> predicted,
                           std::size_t lane) const {
    return widths(reading, predicted, 1)[lane];
}

double Posterior::distance(const Reading& reading, std::span<const double> predicted,
                           std::size_t lane) const {
    const double scale = scale_of(reading, predicted, lane);
    return (on_scale(reading.quantity, reading.value) -
            on_scale(reading.quantity, predicted[lane])) /
           scale;
}

bool Posterior::is_changed(const Group& group, const Reading& reading,
                           std::span<const double> predicted, double scales,
                           double tolerated) const {
    const bool categorical = worksite::info(reading.quantity).categorical;
    double share = 0.0;
    for (std::size_t i = 0; i < predicted.size() && share <= tolerated; ++i) {
        if (probability_[i] < nobody_below) continue;
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
    return share > tolerated;
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
        if (group.first.condition.spare != reading.condition.spare) continue;
        const bool other_trial = present_share_ < 1.0 && group.first.cycle != reading.cycle;
        if (other_trial && !is_lasting(reading.quantity)) continue;
        if (group.first.quantity != reading.quantity) {
            if (same_state(group, reading, predicted)) return &group;
            continue;
        }
        if (!is_changed(group, reading, predicted, 0.5, tolerated)) return &group;
        if (!same_key(group.first, reading)) continue;
        // Same key, other predictions: a trend is news only after a while.
        const bool trend = std::abs(reading.tick - group.first.tick) >= trend_ticks;
        if (!trend || !is_changed(group, reading, predicted, 1.0, tolerated)) return &group;
    }
    return nullptr;
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
    likelihood.push_back(of_something_else(group, likelihood, scales));
    prior.push_back(0.0);
    group.log_weight = log_weights(likelihood, prior);
}

double Posterior::of_something_else(const Group& group, std::span<const double> likelihood,
                                    std::span<const double> scales) const {
    const worksite::QuantityInfo& row = worksite::info(group.first.quantity);
    const double n = static_cast<double>(group.reads);
    double pool = 0.0;
    double wide = row.categorical ? 1.0 / std::max(row.category_count, 1) : 0.0;
    for (std::size_t i = 0; i < hypotheses_.size(); ++i) {
        pool += hypotheses_[i].prior * likelihood[i];
        if (row.categorical) continue;
        const double scale = something_else_widening * scales[i];
        wide += hypotheses_[i].prior * student_t_density(group.residual[i] / n / scale) / scale;
    }
    return (1.0 - something_else_wide_share) * pool + something_else_wide_share * wide;
}

std::size_t Posterior::add(const Reading& reading, std::span<const double> predicted) {
    const Group* known = group_for(reading, predicted, tolerated_when_weighing);
    std::size_t index = groups_.size();
    if (known == nullptr) {
        const std::size_t glance = glance_for(reading);
        groups_.emplace_back();
        groups_.back().glance = glance;
    } else {
        index = static_cast<std::size_t>(known - groups_.data());
    }
    extend(groups_[index], reading, predicted);
    weigh(groups_[index]);
    update();
    return index;
}

Posterior::Counted Posterior::counted(std::size_t group) const {
    const Group& own = groups_.at(group);
    Counted counted{tempering, own.reads};
    // What the controller reports excludes once, whichever of its words says it: none is thinned.
    if (tells_controller_state(own.first.quantity)) return counted;
    std::vector<const std::vector<double>*> logs;
    std::size_t place = 0;
    for (std::size_t g = 0; g < groups_.size(); ++g) {
        if (groups_[g].glance != own.glance) continue;
        if (g == group) place = logs.size();
        logs.push_back(&groups_[g].log_weight);
    }
    counted.exponent *= shares_together(logs, priors())[place];
    return counted;
}

std::vector<double> Posterior::priors() const {
    std::vector<double> prior;
    for (const Hypothesis& h : hypotheses_) prior.push_back(h.prior);
    prior.push_back(0.0);  // something else has no say in what tells most
    return prior;
}

std::size_t Posterior::glance_for(const Reading& reading) const {
    for (const Group& group : groups_)
        if (of_one_glance(group.first, reading)) return group.glance;
    return groups_.size();
}

std::vector<double> Posterior::weight_of_glance(std::size_t first) const {
    std::vector<const std::vector<double>*> logs;
    for (std::size_t g = first; g < groups_.size(); ++g)
        if (groups_[g].glance == groups_[first].glance) logs.push_back(&groups_[g].log_weight);
    if (logs.size() == 1) return *logs.front();
    if (tells_controller_state(groups_[first].first.quantity)) return as_one_report(logs);
    return weighed_together(logs, priors());
}

void Posterior::update() {
    std::vector<double> logs = log_arrival_;
    struct Trial {
        int cycle;
        std::vector<double> sum;
    };
    std::vector<Trial> trials;  // demand cycles in order of first appearance
    for (std::size_t g = 0; g < groups_.size(); ++g) {
        if (groups_[g].glance != g) continue;  // weighed with the first of its glance
        const Reading& first = groups_[g].first;
        const bool lasting = is_lasting(first.quantity) || present_share_ >= 1.0;
        auto trial = std::find_if(trials.begin(), trials.end(),
                                  [&](const Trial& t) { return t.cycle == first.cycle; });
        if (!lasting && trial == trials.end())
            trial = trials.insert(trial, {first.cycle, std::vector<double>(logs.size(), 0.0)});
        const std::vector<double> weight = weight_of_glance(g);
        std::vector<double>& sum = lasting ? logs : trial->sum;
        for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += weight[i];
    }
    for (const Trial& trial : trials)
        for (std::size_t i = 0; i < logs.size(); ++i) {
            const double top = std::max(trial.sum[i], trial.sum[sound_]);
            const double mixed = present_share_ * math::exp(trial.sum[i] - top) +
                                 (1.0 - present_share_) * math::exp(trial.sum[sound_] - top);
            logs[i] += top + math::log(mixed);
        }
    something_else_ = normalised(logs).back();
    probability_ = normalised(std::span(logs).first(hypotheses_.size()));
}

std::vector<double> Posterior::classes() const {
    return class_totals(probability_, class_of_, class_count);
}

double Posterior::class_entropy_bits() const {
    return entropy_bits(classes());
}

}  // namespace emberpath::scoring
