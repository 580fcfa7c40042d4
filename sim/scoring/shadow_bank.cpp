#include "sim/scoring/shadow_bank.hpp"

#include "sim/scoring/lane_group.hpp"

namespace emberpath::scoring {

namespace {

// Room for one heater up to arrival, which nobody observes before.
Shadows room_to_arrival(const worksite::Job& job, const Tape& tape) {
    Shadows out;
    out.complaints.assign(1, worksite::Complaint::none);
    out.observed.assign(tape.observations.size(), std::vector<double>(1, 0.0));
    out.passive.assign(tape.marks, Snapshot(1));
    out.signatures.assign(modes(job).size(), Snapshot(1));
    return out;
}

}  // namespace

std::vector<Snapshot> signatures_of(const worksite::Job& job, const Tape& tape,
                                    const std::vector<faults::Fault>& faults) {
    Shadows out = room_to_arrival(job, tape);
    LaneGroup<double> alone(job, {LaneRole{faults, 0, true}});
    alone.live_through(tape, out, true);
    return out.signatures;
}

std::vector<Snapshot> true_signatures(const worksite::Job& job, const Tape& tape) {
    return signatures_of(job, tape, job.faults);
}

}  // namespace emberpath::scoring
