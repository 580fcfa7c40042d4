// Severity over time, and the map from healthy to changed parameters.
#include <algorithm>
#include <cmath>

#include "sim/faults/effects.hpp"
#include "sim/faults/faults.hpp"

namespace emberpath::faults {

namespace {

bool waits(const Fault& fault, const Moment& now) {
    if (now.light_ups < fault.after_light_ups) return true;
    switch (fault.present_while) {
        case While::always:
            return false;
        case While::night:
            return now.night < 0.5;
        case While::rain:
            return now.rain < 0.5;
        case While::hot:
            return now.case_k <= hot_case_k;
    }
    return false;
}

}  // namespace

double severity_at(const Fault& fault, const Moment& now) {
    const double since = now.time_s - fault.onset_s;
    if (since < 0.0 || waits(fault, now)) return 0.0;
    if (fault.period_s > 0.0) {
        const double into = since - fault.period_s * std::floor(since / fault.period_s);
        if (into >= fault.present_s) return 0.0;
    }
    if (fault.ramp_s <= 0.0) return fault.severity;
    return fault.severity * std::min(1.0, since / fault.ramp_s);
}

plant::PlantParameters with_fault(plant::PlantParameters healthy, const Fault& fault,
                                  const Moment& now) {
    apply(healthy, fault.cause, severity_at(fault, now));
    return healthy;
}

plant::PlantParameters with_faults(plant::PlantParameters healthy, std::span<const Fault> faults,
                                   const Moment& now) {
    for (const Fault& fault : faults) apply(healthy, fault.cause, severity_at(fault, now));
    return healthy;
}

controller::Settings with_fault(controller::Settings healthy, const Fault& fault,
                                const Moment& now) {
    apply(healthy, fault.cause, severity_at(fault, now));
    return healthy;
}

controller::Settings with_faults(controller::Settings healthy, std::span<const Fault> faults,
                                 const Moment& now) {
    for (const Fault& fault : faults) apply(healthy, fault.cause, severity_at(fault, now));
    return healthy;
}

bool changes_after(std::span<const Fault> faults, double time_s) {
    return std::any_of(faults.begin(), faults.end(), [time_s](const Fault& fault) {
        return fault.period_s > 0.0 || fault.present_while != While::always ||
               fault.after_light_ups > 0 || time_s <= fault.onset_s + fault.ramp_s;
    });
}

}  // namespace emberpath::faults
