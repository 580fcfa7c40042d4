#pragma once
/// The best reading that could have been taken, and what a policy that always takes it needs.
///
/// Source    de Kleer & Williams (1987), Artif. Intell. 32, 97-130: next the probe with the least expected
///           entropy; information gained per cost as figure of merit. One step ahead only, which is why
///           a trainee's reading may be twice as dear before anything is charged.

#include <array>
#include <string>

#include "sim/scoring/posterior.hpp"
#include "sim/scoring/shadow_bank.hpp"

namespace emberpath::scoring {

/// What has been set up already: by point for manometer, meter and thermometer, else by tool.
class SetUps {
  public:
    /// Minutes of one reading, with set-up where it is the first; does not mark it.
    [[nodiscard]] double minutes(worksite::Quantity quantity) const;
    void mark(worksite::Quantity quantity);

  private:
    [[nodiscard]] static std::size_t key(worksite::Quantity quantity);
    std::array<bool, worksite::quantity_count + 16> done_{};
};

/// A reading that could be taken.
struct Option {
    worksite::Quantity quantity = worksite::Quantity::display_word;
    std::size_t mode = 0;  // index into modes(); as_things_stand for no change
    double bits = 0.0, minutes = 1.0;
    [[nodiscard]] double rate() const { return bits / minutes; }
};
inline constexpr std::size_t as_things_stand = static_cast<std::size_t>(-1);

/// What a house's shadows expect of every numeric reading in every mode, worked out once for all the moments at
/// which it is asked.
class Foreseen {
  public:
    /// Of the widths that `posterior` gives; no belief moves them. `stands_as` as in Situation.
    Foreseen(const worksite::Job& job, const Shadows& shadows, const Posterior& posterior,
             const std::vector<std::size_t>* stands_as = nullptr);
    /// A mode's signature of a quantity in every lane.
    [[nodiscard]] const std::vector<double>& predicted(std::size_t mode,
                                                       worksite::Quantity quantity) const {
        return all_[mode * worksite::quantity_count + static_cast<std::size_t>(quantity)].predicted;
    }
    /// Empty for categories.
    [[nodiscard]] const std::vector<Expectation>& expected(std::size_t mode,
                                                           worksite::Quantity quantity) const {
        return all_[mode * worksite::quantity_count + static_cast<std::size_t>(quantity)].expected;
    }

  private:
    struct Prediction {
        std::vector<double> predicted;
        std::vector<Expectation> expected;
    };
    std::vector<Prediction> all_;  // [mode][quantity]; empty where it cannot be proposed
};

/// Where the choice is made from.
struct Situation {
    const worksite::Job& job;
    const Shadows& shadows;
    const Posterior& posterior;
    const SetUps& set_ups;
    const Snapshot* passive = nullptr;  // readable without any act; nullptr: only modes count
    /// The lane whose house each of them is by now (stands_as_after); nullptr: nothing has been cured.
    const std::vector<std::size_t>* stands_as = nullptr;
    std::size_t in_mode = as_things_stand;  // mode already reached: costs no minutes again
    int cycle = -1;                         // demand cycle under way
    int threads = 1;  // at most so many weigh options; no result depends on it
    const Foreseen* foreseen =
        nullptr;  // of these shadows, as they stand; spares the work, no more
};

/// The option with most information per minute, the first of equals in the order of quantities and then of
/// modes. bits 0 when nothing tells anything.
[[nodiscard]] Option best_option(const Situation& situation);
/// "manifold pressure just after a tap is opened".
[[nodiscard]] std::string title_of(const Option& option, const worksite::Job& job);
/// A mode's signature of a quantity in every lane; cured lanes show the house that they are by now.
[[nodiscard]] std::vector<double> signature(const Situation& situation, std::size_t mode,
                                            worksite::Quantity quantity);

/// What is needed to go on from a moment by the policy.
struct Hindsight {
    const worksite::Job& job;
    const Shadows& shadows;
    const std::vector<Snapshot>& truth;  // the true heater's signatures
    int threads = 1;                     // as in Situation
};

/// The policy's run in this scenario: readings until one class reaches .90 or nothing tells more.
struct ReferenceRun {
    double minutes = 0.0;  // of tests and of bringing the heater into modes
    int readings = 0;
    double leading = 0.0;  // probability of the leading class at the end
    Class found = faults::Remedy::explain_to_customer;  // that class
    std::vector<Option> options;                        // as taken
};
[[nodiscard]] ReferenceRun run_reference(const Hindsight& hindsight);
/// The same from what somebody believes and has set up already, in the demand cycle under way.
[[nodiscard]] ReferenceRun run_reference(const Hindsight& hindsight, Posterior from, SetUps set_ups,
                                         int cycle = -1);
/// C of the path formula: the policy's minutes + 5, at least 10.
[[nodiscard]] double reference_minutes(const ReferenceRun& run);
/// A reading in a mode as the posterior wants it; never a repeat of one that was taken, unless it predicts
/// the same.
[[nodiscard]] Reading reading_of(const Option& option);

}  // namespace emberpath::scoring
