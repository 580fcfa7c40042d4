#pragma once
/// Houses with a danger of their own, and scripts that many tests of dangers share.

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {

using faults::Cause;
using Acts = std::vector<std::string>;

inline Job with(void (*change)(Job&), std::vector<faults::Fault> faults = {}) {
    Job job = test_job(std::move(faults));
    change(job);
    return job;
}
inline Job on_cylinder(void (*change)(Job&)) {
    Job job = cylinder_job();
    change(job);
    return job;
}

inline const Acts dead{"switch power off", "unplug heater", "lock off plug", "take cover off",
                       "prove tester",     "test for dead", "prove tester"};
inline const Acts dressed{"put on gloves", "put on glasses"};
inline const Acts out_of_use{"shut gas at meter",
                             "switch power off",
                             "unplug heater",
                             "lock off plug",
                             "tag heater",
                             "issue unsafe notice",
                             "tell customer it must not be used"};
inline const Acts hot_bath{"open bath tap", "wait 40 s"};

inline void leak(Job& job) {
    job.site.dangers.leak_m3_per_s = 5.0e-6;
}
inline void leak_over_a_drain(Job& job) {
    leak(job);
    job.site.dangers.low_place = true;
}

/// An open flue in a tight room; the fan is stronger than its draught, or weak.
inline Job open_flue(double fan_m3_per_s) {
    Job job = test_job();
    job.healthy = plant::with_flue(job.healthy, plant::FlueKind::open_flued);
    job.healthy.room_leak_gain = 0.02;
    job.site.fans = {{"rangehood", fan_m3_per_s, false}};
    return job;
}

}  // namespace emberpath::worksite
