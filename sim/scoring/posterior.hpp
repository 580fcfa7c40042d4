#pragma once
/// Probability of every shadow, and of every class of causes that share a remedy, from what was read.
///
/// Each group of readings multiplies a shadow's probability by
///     [(1 - o) L + o L_pool]^alpha,  o = .01 (mistakes), alpha = .85 (model errors that go together),
/// L Student-t or categorical, L_pool its mean over the prior. Re-reads of the same thing are one group.
/// The readings of one glance are weighed together (glance.hpp).
/// Where the complaint is of drop-outs, a fault may be absent in a demand cycle:
///     L_cycle = pi L_fault + (1 - pi) L_sound.
/// Checked   tests/unit/scoring/posterior_test.cpp

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "sim/scoring/hypotheses.hpp"
#include "sim/scoring/information.hpp"
#include "sim/scoring/reading.hpp"

namespace emberpath::scoring {

/// The catch-all: a cause that is not in the catalogue. It expects of each reading what all shadows together
/// expect (its prior mean, share .8), or anything about six times as far from them. It takes nothing from the
/// shadows, it only says how badly they fit. All chosen.
inline constexpr double something_else_prior = 0.02;
inline constexpr double something_else_widening = 6.0;
inline constexpr double something_else_wide_share = 0.2;

class Posterior {
  public:
    /// `width_factor` widens or narrows what every shadow expects; 1 unless the scoring itself is tested.
    explicit Posterior(std::vector<Hypothesis> hypotheses, double width_factor = 1.0);

    /// The complaint on the job card against what each shadow's household would have complained of.
    /// Nearly flat: customers describe loosely. Complaints of drop-outs set pi to 1/2.
    void hear(worksite::Complaint heard, std::span<const worksite::Complaint> of_each);

    /// Weighs a reading; `predicted` is each shadow's error-free value at the same instant.
    /// Returns the number of the group it counts with: a repeat counts with the reading it repeats.
    std::size_t add(const Reading& reading, std::span<const double> predicted);
    /// How a group counts now, for whoever wants to follow the weighing.
    struct Counted {
        double exponent = 1.0;  // alpha, and the share that its glance leaves it
        std::size_t reads = 1;  // readings in it
    };
    [[nodiscard]] Counted counted(std::size_t group) const;

    /// Would this reading only repeat what is known already: no shadow that still matters predicts
    /// anything new?
    [[nodiscard]] bool repeats(const Reading& reading, std::span<const double> predicted) const;

    [[nodiscard]] const std::vector<double>& probabilities() const { return probability_; }
    /// Probability of the catch-all beside all shadows together.
    [[nodiscard]] double something_else() const { return something_else_; }
    /// One per class, at its index (classes.hpp).
    [[nodiscard]] std::vector<double> classes() const;
    [[nodiscard]] double class_entropy_bits() const;
    /// Mutual information of class and outcome; 0 for what only repeats.
    [[nodiscard]] double expected_bits(const Reading& reading,
                                       std::span<const double> predicted) const;
    /// No reading with these predictions can be expected to tell more than this [bits]: shadows that
    /// predict the same are one, and the outcome cannot tell more than which one it is,
    ///     I(class; outcome) <= H(prediction) <= h(m) + m log2(n),
    /// m the probability and n the number of shadows that predict something else than a common value
    /// (data processing and grouping: Cover & Thomas 1991, sections 2.8 and 2.2). Cheap.
    [[nodiscard]] double most_bits(std::span<const double> predicted) const;
    /// A closer bound for a reading (most_numeric_bits, most_categorical_bits), at a tenth of the cost of
    /// expected_bits(). `known`: expectations() of that reading, where they are asked for again and again.
    [[nodiscard]] double closer_most_bits(const Reading& reading, std::span<const double> predicted,
                                          std::span<const Expectation> known = {}) const;
    /// What each shadow expects of a numeric reading, on the quantity's scale. No belief moves it.
    [[nodiscard]] std::vector<Expectation> expectations(const Reading& reading,
                                                        std::span<const double> predicted) const;
    /// The same with its variance, for judging luck.
    [[nodiscard]] Information expected_information(const Reading& reading,
                                                   std::span<const double> predicted) const;
    static constexpr std::size_t every_other = static_cast<std::size_t>(-1);
    /// Could this reading tell a class (with the pairs that need its remedy too) from what else is still open?
    /// Mutual information of "this class or another" and outcome, the two taken as equally likely: 0 nothing to
    /// 1 all; one figure for each class that is asked for. `against`: one class instead of every other.
    [[nodiscard]] std::vector<double> separation_bits(const Reading& reading,
                                                      std::span<const double> predicted,
                                                      std::span<const std::size_t> classes,
                                                      std::size_t against = every_other) const;
    [[nodiscard]] double separation_bits(const Reading& reading, std::span<const double> predicted,
                                         std::size_t class_index,
                                         std::size_t against = every_other) const {
        return separation_bits(reading, predicted, {&class_index, 1}, against)[0];
    }
    /// Width of what one shadow expects of a numeric reading, on the quantity's scale.
    [[nodiscard]] double scale_of(const Reading& reading, std::span<const double> predicted,
                                  std::size_t lane) const;
    /// How far a numeric reading lies from what one shadow expected, in its own scales.
    [[nodiscard]] double distance(const Reading& reading, std::span<const double> predicted,
                                  std::size_t lane) const;
    [[nodiscard]] const std::vector<Hypothesis>& hypotheses() const { return hypotheses_; }
    [[nodiscard]] const std::vector<std::size_t>& class_of() const { return class_of_; }

    /// Likelihood of one reading alone under each shadow, before tempering and outliers.
    [[nodiscard]] std::vector<double> likelihoods(const Reading& reading,
                                                  std::span<const double> predicted) const;

  private:
    struct Group {
        Reading first;
        std::size_t reads = 0;
        std::vector<double> predicted;     // mean per shadow, on the quantity's scale
        std::vector<double> residual;      // sum of (read - predicted) per shadow
        std::vector<double> log_category;  // sum of log likelihoods per shadow (categories)
        std::vector<double> log_weight;    // alpha log(...), current; last: something else
        std::size_t glance = 0;            // number of the glance it belongs to
    };
    /// `tolerated`: probability of shadows that may predict something new without making it news.
    [[nodiscard]] const Group* group_for(const Reading& reading, std::span<const double> predicted,
                                         double tolerated) const;
    /// Have the shadows whose prediction differs from the group's by more than `scales` together more than
    /// the `tolerated` probability?
    [[nodiscard]] bool is_changed(const Group& group, const Reading& reading,
                                  std::span<const double> predicted, double scales,
                                  double tolerated) const;
    /// Display and latest event speak of one state: is the second a function of the first?
    [[nodiscard]] bool same_state(const Group& group, const Reading& reading,
                                  std::span<const double> predicted) const;
    /// `of_those_above`: shadows below this probability are not asked (0).
    [[nodiscard]] std::vector<double> widths(const Reading& reading,
                                             std::span<const double> predicted, std::size_t reads,
                                             double of_those_above = 0.0) const;
    [[nodiscard]] bool stands_apart(std::size_t lane, std::span<const double> predicted) const;
    [[nodiscard]] double bound_about(double common, std::span<const double> predicted) const;
    /// Shadows that matter and what they expect of a reading: a category or a value.
    struct Live {
        std::vector<double> probability;
        std::vector<std::size_t> class_of;
        std::vector<std::size_t> category;
        std::vector<Expectation> expected;
    };
    [[nodiscard]] Live live(const Reading& reading, std::span<const double> predicted,
                            std::span<const Expectation> known = {}) const;
    /// The same as members of an outcome table.
    struct Members {
        std::vector<double> probability;
        std::vector<std::size_t> class_of;
        OutcomeTable outcomes;
    };
    [[nodiscard]] Members members(const Reading& reading, std::span<const double> predicted) const;
    [[nodiscard]] static double separation_of(Members live, std::size_t class_index,
                                              std::size_t against);
    void extend(Group& group, const Reading& reading, std::span<const double> predicted) const;
    void weigh(Group& group) const;
    [[nodiscard]] double of_something_else(const Group& group, std::span<const double> likelihood,
                                           std::span<const double> scales) const;
    [[nodiscard]] std::vector<double> priors() const;  // something else has no say: 0
    /// What the readings of one glance have together; `first`: its first group.
    [[nodiscard]] std::vector<double> weight_of_glance(std::size_t first) const;
    [[nodiscard]] std::size_t glance_for(const Reading& reading) const;
    /// What is left of a figure's information after others of the same glance.
    [[nodiscard]] double share_after_glance(const Reading& reading) const;
    void update();

    std::vector<Hypothesis> hypotheses_;
    std::vector<std::size_t> class_of_;
    std::size_t sound_ = 0;
    double present_share_ = 1.0;
    double width_factor_;
    std::vector<double> log_arrival_;
    std::vector<Group> groups_;
    std::vector<double> probability_;
    double something_else_ = something_else_prior;
};

/// Facts that do not come and go with a demand cycle (terminal, fins, electrode tip).
[[nodiscard]] bool is_lasting(worksite::Quantity quantity);

/// alpha log((1 - o) L + o L_pool), L_pool the mean of L over the prior. Natural logarithm.
[[nodiscard]] std::vector<double> log_weights(std::span<const double> likelihood,
                                              std::span<const double> prior);

/// exp of each, normalised to sum 1.
[[nodiscard]] std::vector<double> normalised(std::span<const double> logarithms);

}  // namespace emberpath::scoring
