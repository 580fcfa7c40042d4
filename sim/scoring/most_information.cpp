// Bounds of what a reading could tell, far cheaper than working it out.

#include <algorithm>
#include <cmath>

#include "sim/scoring/information.hpp"

namespace emberpath::scoring {

namespace {

constexpr double nats_per_bit = 0.693147180559945309417;
// From first to last member, in scales. Chosen by trial: of 1 to 6 it leaves fewest readings to be worked out.
constexpr double widest_cluster = 3.0;
constexpr double not_mistaken = 1.0 - outlier_share;

/// Members whose outcomes are hard to tell apart, and what they have together.
class Cluster {
  public:
    explicit Cluster(std::size_t class_count) : of_class_(class_count, 0.0) {}

    void add(double probability, std::size_t of_class) {
        if (of_class_[of_class] == 0.0) classes_.push_back(of_class);
        of_class_[of_class] += probability;
        probability_ += probability;
    }
    void add(double probability, std::size_t of_class, const Expectation& e) {
        if (probability_ == 0.0) first_ = e;
        const double off = e.centre - first_.centre;
        off_ += probability * off;
        off_squared_ += probability * off * off;
        scale_ += probability * e.scale;
        per_scale_ += probability / e.scale;
        add(probability, of_class);
    }
    [[nodiscard]] bool holds(const Expectation& e) const {
        return probability_ == 0.0 ||
               e.centre - first_.centre <= widest_cluster * std::min(e.scale, first_.scale);
    }
    /// Its share of the entropy that is left once the cluster is known [bits].
    [[nodiscard]] double entropy_left() const {
        double bits = 0.0;
        for (const std::size_t c : classes_)
            bits -= of_class_[c] * log2_of(of_class_[c] / probability_);
        return bits;
    }
    /// Its share of what the outcome within the cluster can tell at most [bits].
    [[nodiscard]] double most_within(double entropy) const {
        if (entropy <= 0.0) return 0.0;
        const double scale_squared = scale_ / per_scale_;  // of the Student-t that stands for it
        const double apart = off_squared_ - off_ * off_ / probability_;
        const double unlike = 2.0 * (std::sqrt(scale_ * per_scale_) - probability_);
        const double nats = 0.6 * apart / scale_squared + 1.5 * unlike;
        return std::min(entropy, std::max(0.0, nats) / nats_per_bit);
    }
    void clear() {
        for (const std::size_t c : classes_) of_class_[c] = 0.0;
        classes_.clear();
        probability_ = off_ = off_squared_ = scale_ = per_scale_ = 0.0;
    }

  private:
    std::vector<double> of_class_;
    std::vector<std::size_t> classes_;  // those it holds
    Expectation first_;
    double probability_ = 0.0, off_ = 0.0, off_squared_ = 0.0, scale_ = 0.0, per_scale_ = 0.0;
};

template <class Before>
std::vector<std::size_t> in_order(std::size_t count, const Before& before) {
    std::vector<std::size_t> order(count);
    for (std::size_t i = 0; i < count; ++i) order[i] = i;
    std::sort(order.begin(), order.end(), before);
    return order;
}

}  // namespace

double most_numeric_bits(std::span<const double> member_probability,
                         std::span<const std::size_t> class_of, std::size_t class_count,
                         std::span<const Expectation> expected) {
    const auto order = in_order(expected.size(), [&](std::size_t a, std::size_t b) {
        return expected[a].centre < expected[b].centre;
    });
    Cluster cluster(class_count);
    double told = entropy_bits(class_totals(member_probability, class_of, class_count));
    const auto close = [&] {
        const double left = cluster.entropy_left();
        told -= left - cluster.most_within(left);
        cluster.clear();
    };
    for (const std::size_t i : order) {
        if (!cluster.holds(expected[i])) close();
        cluster.add(member_probability[i], class_of[i], expected[i]);
    }
    close();
    return not_mistaken * told;
}

double most_categorical_bits(std::span<const double> member_probability,
                             std::span<const std::size_t> class_of, std::size_t class_count,
                             std::span<const std::size_t> category) {
    const auto order = in_order(
        category.size(), [&](std::size_t a, std::size_t b) { return category[a] < category[b]; });
    Cluster cluster(class_count);
    double told = entropy_bits(class_totals(member_probability, class_of, class_count));
    for (std::size_t i = 0; i < order.size(); ++i) {
        if (i > 0 && category[order[i]] != category[order[i - 1]]) {
            told -= cluster.entropy_left();
            cluster.clear();
        }
        cluster.add(member_probability[order[i]], class_of[order[i]]);
    }
    told -= cluster.entropy_left();
    return not_mistaken * told;
}

}  // namespace emberpath::scoring
