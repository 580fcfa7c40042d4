#pragma once
/// What somebody may think who has heard the complaint and looked at the display, and nothing else.

#include "sim/trainees/visit.hpp"

namespace emberpath::trainees {

struct OnArrival {
    scoring::Class leading = faults::Remedy::explain_to_customer;
    double probability = 0.0;     // that its remedy is needed
    double need = 0.9;            // what that remedy needs
    double of_truth = 0.0;        // probability of the true class
    double open_bits = 0.0;       // entropy of the classes
    bool leads_to_truth = false;  // the leading class is the truth or one of its two faults
    bool tells_all = false;       // it is the whole truth
    /// A job that leaves nothing to find out: no fault of it, but it should be called so.
    [[nodiscard]] bool is_direct() const { return tells_all && probability >= need; }
};
/// `arrived`: of this job and seed; nullptr: worked out.
[[nodiscard]] OnArrival on_arrival(const worksite::Job& job, std::uint64_t seed,
                                   const Arrived& arrived);

}  // namespace emberpath::trainees
