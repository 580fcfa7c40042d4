#pragma once
/// Shadows and probabilities together, as an attempt goes on: the bank lives on act by act, every reading
/// is weighed, and causes that the readings have as good as excluded sleep until they matter again.

#include <vector>

#include "sim/scoring/bank.hpp"
#include "sim/scoring/posterior.hpp"

namespace emberpath::scoring {

/// Shadows below this share, with neighbours that are too, sleep. When their cause, by what its speakers show, rises above the second
/// and they themselves above the third, they wake, and all readings are weighed again. Chosen: far below
/// what a score shows, with margins of a hundred and ten.
inline constexpr double shadow_sleeps_below = 1.0e-6;
inline constexpr double cause_wakes_above = 1.0e-4;
inline constexpr double shadow_wakes_above = 1.0e-5;

class Evidence {
  public:
    /// Goes on from a bank that has lived at least to arrival. Where it has lived further on this tape
    /// already, its predictions are taken as they are.
    Evidence(Bank& bank, const Tape& tape, worksite::Complaint heard);
    /// Over shadows whose predictions are all known already; with other priors or widths than usual.
    Evidence(const Shadows& shadows, const Tape& tape, worksite::Complaint heard,
             double width_factor = 1.0);

    /// Lives on to an event of the tape.
    void live_until(std::size_t event);
    /// Weighs an observation of the tape (by number); it must have been lived through.
    void weigh(std::size_t observation);
    /// What that observation could be expected to tell about the class, before it is weighed.
    [[nodiscard]] Information expected(std::size_t observation) const;
    /// How well it could tell each class from what else is open (0 to 1); 0 for classes below 1 %.
    [[nodiscard]] std::vector<double> separations(std::size_t observation) const;
    /// After weighing: lets excluded causes sleep, wakes what matters again.
    void rest();

    [[nodiscard]] const Posterior& posterior() const { return posterior_; }
    [[nodiscard]] const Shadows& shadows() const { return *shadows_; }

  private:
    [[nodiscard]] std::vector<double> cause_totals() const;
    [[nodiscard]] bool is_excluded(std::size_t lane) const;
    void add(std::size_t observation);

    Bank* bank_;  // nullptr: nothing to live through
    const Shadows* shadows_;
    const Tape* tape_;
    worksite::Complaint heard_;
    Posterior posterior_;
    std::vector<std::size_t> weighed_;
    std::size_t at_ = 0;  // event up to which it has gone
};

/// Whether an observation is evidence about the cause (a job card's complaint is weighed on arrival, an
/// absence only counts when it was watched for).
[[nodiscard]] bool is_evidence(const worksite::Observation& observation);
/// Evidence beyond the heater's own word: display and event are one report of the controller's, and the
/// complaint is nobody's measurement.
[[nodiscard]] bool is_own_reading(const worksite::Observation& observation);
[[nodiscard]] Reading as_reading(const worksite::Observation& observation, int cycle);

}  // namespace emberpath::scoring
