#pragma once
/// What a reasoning trainee thinks: the shadow bank's predictions for what was read, and the reading that
/// promises most per minute. The bank runs over the house as seen; it never reads the job's faults.

#include <array>
#include <memory>
#include <set>
#include <utility>

#include "sim/scoring/posterior.hpp"
#include "sim/scoring/reference_policy.hpp"
#include "sim/trainees/visit.hpp"

namespace emberpath::trainees {

/// A reading in one of scoring::modes().
using Plan = std::pair<std::size_t, worksite::Quantity>;

/// Shadows that follow a visit as it goes on; the same as scoring::run_shadows() over the whole tape.
class Bank {
  public:
    explicit Bank(const worksite::Job& seen);
    ~Bank();
    Bank(const Bank&) = delete;
    Bank& operator=(const Bank&) = delete;
    void follow(const scoring::Tape& tape);
    [[nodiscard]] const scoring::Shadows& shadows() const { return shadows_; }

  private:
    struct Groups;
    std::unique_ptr<Groups> groups_;
    std::size_t lived_ = 0;  // events of the tape
    scoring::Shadows shadows_;
};

class Belief {
  public:
    /// Weighs everything read so far.
    explicit Belief(const Visit& visit);
    /// And what was read since.
    void update();

    [[nodiscard]] std::vector<double> classes() const { return posterior_.classes(); }
    [[nodiscard]] faults::Remedy leading() const;
    [[nodiscard]] double leading_probability() const;
    /// The likeliest cause of a class.
    [[nodiscard]] faults::Cause cause_of(faults::Remedy remedy) const;

    /// Most information per minute; `done` are left out. bits 0: nothing tells more.
    struct Choice {
        Plan plan{0, worksite::Quantity::display_word};
        double bits = 0.0, minutes = 1.0;
        [[nodiscard]] double rate() const { return bits / minutes; }
    };
    [[nodiscard]] Choice next(const std::set<Plan>& done, const scoring::SetUps& set_ups,
                              std::size_t in_mode) const;

  private:
    const Visit& visit_;
    Bank bank_;
    scoring::Posterior posterior_;
    std::size_t weighed_ = 0;  // observations
    int cycle_ = 0;
};

/// Can a trainee's hands take this reading in this house at all (site skills offer it)?
[[nodiscard]] bool can_be_taken(worksite::Quantity quantity, const worksite::Job& job);

}  // namespace emberpath::trainees
