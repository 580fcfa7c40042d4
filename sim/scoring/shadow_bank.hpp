#pragma once
/// What the shadows of an attempt showed: one column per hypothesis. sim/scoring/bank.hpp runs them.
/// No privileged shadow: nothing here reads the job's faults, except true_signatures().

#include <array>
#include <cstddef>
#include <vector>

#include "sim/scoring/hypotheses.hpp"
#include "sim/scoring/modes.hpp"
#include "sim/scoring/tape.hpp"

namespace emberpath::scoring {

/// Values of every quantity at one instant in every lane.
class Snapshot {
  public:
    explicit Snapshot(std::size_t lanes)
        : lanes_(lanes), values_(lanes * worksite::quantity_count) {}
    [[nodiscard]] std::span<const double> of(worksite::Quantity quantity) const {
        return std::span<const double>(values_).subspan(static_cast<std::size_t>(quantity) * lanes_,
                                                        lanes_);
    }
    void set(worksite::Quantity quantity, std::size_t lane, double value) {
        values_[static_cast<std::size_t>(quantity) * lanes_ + lane] = value;
    }
    /// One lane takes over the values of another.
    void copy(std::size_t lane, std::size_t from) {
        for (std::size_t q = 0; q < worksite::quantity_count; ++q)
            values_[q * lanes_ + lane] = values_[q * lanes_ + from];
    }

  private:
    std::size_t lanes_;
    std::vector<double> values_;
};

struct Shadows {
    std::vector<Hypothesis> hypotheses;
    std::vector<worksite::Complaint> complaints;  // of each lane's household
    std::vector<std::vector<double>> observed;    // [observation][lane], error-free
    std::vector<Snapshot> passive;                // [mark]: what could be read then as things stood
    std::vector<Snapshot> signatures;             // [mode], from the state at arrival
};

/// The true heater through the same modes, for the reference policy's cost and for preview only.
[[nodiscard]] std::vector<Snapshot> true_signatures(const worksite::Job& job, const Tape& tape);
/// The same for a stated list of faults.
[[nodiscard]] std::vector<Snapshot> signatures_of(const worksite::Job& job, const Tape& tape,
                                                  const std::vector<faults::Fault>& faults);

}  // namespace emberpath::scoring
