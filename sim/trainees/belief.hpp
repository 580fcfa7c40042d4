#pragma once
/// What a reasoning trainee thinks: the shadow bank's predictions for what was read, and the reading that
/// promises most per minute. The bank runs over the house as seen; it never reads the job's faults.

#include <array>
#include <optional>
#include <set>
#include <utility>

#include "sim/scoring/evidence.hpp"
#include "sim/scoring/reference_policy.hpp"
#include "sim/trainees/visit.hpp"

namespace emberpath::trainees {

/// A reading in one of scoring::modes().
using Plan = std::pair<std::size_t, worksite::Quantity>;

class Belief {
  public:
    /// Weighs everything read so far. Goes on from the visit's bank at arrival.
    explicit Belief(const Visit& visit);
    /// From shadows that have lived through some of the acts already; nullptr: from arrival.
    Belief(const Visit& visit, const Arrived& lived);
    /// And what was read since.
    void update();

    [[nodiscard]] std::vector<double> classes() const { return evidence_.posterior().classes(); }
    [[nodiscard]] Arrived lived() const { return bank_; }
    /// What the likeliest class needs; of a pair, what has not been done yet.
    [[nodiscard]] faults::Remedy leading() const;
    /// That it is needed, alone or beside another.
    [[nodiscard]] double leading_probability() const;
    /// The cause beside that of `leading` where the likeliest class is a pair.
    [[nodiscard]] std::optional<faults::Cause> beside_leading() const;
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
    /// The reading that best tells a class from all else that is open, per minute; `bits` is that separation
    /// (0 nothing to 1 all), 0 when no reading reaches `least`.
    [[nodiscard]] Choice confirming(faults::Remedy remedy, double least, const std::set<Plan>& done,
                                    const scoring::SetUps& set_ups, std::size_t in_mode) const;
    /// How well a reading tells a class from all else that is open, 0 to 1.
    [[nodiscard]] double separation(const Plan& plan, scoring::Class one,
                                    std::size_t in_mode) const;

  private:
    template <class Weigh>
    void for_each_choice(const std::set<Plan>& done, const scoring::SetUps& set_ups,
                         std::size_t in_mode, Weigh weigh) const;
    [[nodiscard]] scoring::Class likeliest() const;
    [[nodiscard]] scoring::Situation here(const scoring::SetUps& set_ups) const;
    [[nodiscard]] scoring::Reading reading_of(const Plan& plan, std::size_t in_mode) const;
    const Visit& visit_;
    std::shared_ptr<scoring::Bank> bank_;
    scoring::Evidence evidence_;
    std::vector<faults::Remedy> done_;    // remedies carried out
    std::vector<std::size_t> stands_as_;  // by then (scoring::stands_as_after)
    std::size_t weighed_ = 0, acts_ = 0;  // observations and marks of the tape
    int cycle_ = 0;
};

/// Can a trainee's hands take this reading in this house at all (site skills offer it)?
[[nodiscard]] bool can_be_taken(worksite::Quantity quantity, const worksite::Job& job);

}  // namespace emberpath::trainees
