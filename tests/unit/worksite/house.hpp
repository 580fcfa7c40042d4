#pragma once
/// A house for tests of the work on site: three taps, a cooktop, one fault, a short history.

#include <cmath>
#include <string>
#include <vector>

#include "sim/worksite/attempt.hpp"

namespace emberpath::worksite {

/// Acts, then more acts.
inline std::vector<std::string> operator+(std::vector<std::string> first,
                                          const std::vector<std::string>& then) {
    first.insert(first.end(), then.begin(), then.end());
    return first;
}

inline Tap test_tap(std::string name, double litres_per_min) {
    return {std::move(name), 1.3 * litres_per_min / 60000.0 / std::sqrt(400.0e3), false};
}

/// Mains gas; somebody draws at the kitchen tap for a minute before the visit.
inline Job test_job(std::vector<faults::Fault> faults = {}) {
    Job job;
    job.name = "test";
    job.title = "Test house";
    job.site.taps = {test_tap("kitchen tap", 9.0), test_tap("shower", 11.0),
                     test_tap("bath tap", 18.0)};
    job.site.appliances = {{"cooktop", 2.0e-4}};
    job.site.events = {{60.0, HouseholdEvent::Kind::tap, 0, 1.0},
                       {120.0, HouseholdEvent::Kind::tap, 0, 0.0}};
    job.site.arrival_s = 180.0;
    job.customer.words = "It is not as it was.";
    job.customer.complaint = Complaint::no_hot_water;
    job.customer.answers = {{"when", "Since yesterday."}, {"painter", "He was here on Monday."}};
    job.healthy = plant::natural_gas_parameters();
    job.faults = std::move(faults);
    return job;
}

/// A house on a propane cylinder.
inline Job cylinder_job(std::vector<faults::Fault> faults = {}) {
    Job job = test_job(std::move(faults));
    job.site.gas = GasKind::propane_cylinder;
    job.healthy = plant::propane_parameters();
    job.settings.full_manifold_pa = job.healthy.full_manifold_pa;
    return job;
}

inline faults::Fault fault(faults::Cause cause, double severity = 1.0) {
    return {cause, severity, 0.0, 0.0, 0.0, 0.0};
}

/// Does each sentence in turn; the first refusal ends it and is returned.
inline std::string play(Attempt& attempt, const std::vector<std::string>& sentences) {
    for (const auto& sentence : sentences)
        if (const auto outcome = attempt.perform(sentence); outcome.entry == nullptr)
            return sentence + ": " + outcome.refusal.text;
    return {};
}

inline bool broke(const Attempt& attempt, const std::string& rule) {
    for (const auto& one : attempt.breaches())
        if (one.rule == rule) return true;
    return false;
}

inline std::string all_shown(const Attempt& attempt) {
    std::string text;
    for (const auto& entry : attempt.log()) {
        text += "> " + entry.words + "\n";
        for (const auto& line : entry.shown) text += "  " + line + "\n";
    }
    return text;
}

}  // namespace emberpath::worksite
