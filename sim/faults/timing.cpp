// Severity over time, and the map from healthy to changed parameters.
#include <algorithm>
#include <cmath>

#include "sim/faults/effects.hpp"
#include "sim/faults/faults.hpp"

namespace emberpath::faults {

double severity_at(const Fault& fault, double time_s) {
    const double since = time_s - fault.onset_s;
    if (since < 0.0) return 0.0;
    if (fault.period_s > 0.0) {
        const double into = since - fault.period_s * std::floor(since / fault.period_s);
        if (into >= fault.present_s) return 0.0;
    }
    if (fault.ramp_s <= 0.0) return fault.severity;
    return fault.severity * std::min(1.0, since / fault.ramp_s);
}

plant::PlantParameters with_fault(plant::PlantParameters healthy, const Fault& fault,
                                  double time_s) {
    apply(healthy, fault.cause, severity_at(fault, time_s));
    return healthy;
}

plant::PlantParameters with_faults(plant::PlantParameters healthy, std::span<const Fault> faults,
                                   double time_s) {
    for (const Fault& fault : faults) apply(healthy, fault.cause, severity_at(fault, time_s));
    return healthy;
}

controller::Settings with_fault(controller::Settings healthy, const Fault& fault, double time_s) {
    apply(healthy, fault.cause, severity_at(fault, time_s));
    return healthy;
}

controller::Settings with_faults(controller::Settings healthy, std::span<const Fault> faults,
                                 double time_s) {
    for (const Fault& fault : faults) apply(healthy, fault.cause, severity_at(fault, time_s));
    return healthy;
}

bool changes_after(std::span<const Fault> faults, double time_s) {
    return std::any_of(faults.begin(), faults.end(), [time_s](const Fault& fault) {
        return fault.period_s > 0.0 || time_s <= fault.onset_s + fault.ramp_s;
    });
}

}  // namespace emberpath::faults
