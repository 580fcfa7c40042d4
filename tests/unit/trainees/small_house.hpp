#pragma once
/// A small mains house with one fault and a short history, for tests of simulated trainees.

#include "sim/worksite/job.hpp"

namespace emberpath::trainees {

inline worksite::Job small_house(faults::Cause cause) {
    worksite::Job job;
    job.name = "small";
    const double per_litre_per_min = 5.270463e-7;  // m3/s per sqrt(Pa) of 1 L/min per sqrt(kPa)
    job.site.taps = {{"kitchen tap", 0.45 * per_litre_per_min, false},
                     {"bath tap", 0.80 * per_litre_per_min, false}};
    job.site.arrival_s = 240.0;
    job.healthy = plant::natural_gas_parameters();
    job.settings.full_manifold_pa = job.healthy.full_manifold_pa;
    job.site.events = {{60.0, worksite::HouseholdEvent::Kind::tap, 0, 1.0},
                       {120.0, worksite::HouseholdEvent::Kind::tap, 0, 0.0}};
    job.customer.complaint = worksite::Complaint::no_hot_water;
    if (cause == faults::Cause::gas_pipe_restriction)
        job.customer.complaint = worksite::Complaint::not_hot_enough;
    if (cause != faults::Cause::no_fault)
        job.faults = {{cause, faults::info(cause).on_off ? 1.0 : 0.5}};
    job.intended = faults::info(cause).remedy;
    return job;
}

/// A sound heater on an open flue, with a window and a fan in its room.
inline worksite::Job open_flued_house(double fan_m3_per_s) {
    auto job = small_house(faults::Cause::no_fault);
    job.healthy = plant::with_flue(job.healthy, plant::FlueKind::open_flued);
    job.site.windows = {{"kitchen window", 0.3, true}};
    job.site.fans = {{"range hood", fan_m3_per_s, false}};
    return job;
}

}  // namespace emberpath::trainees
