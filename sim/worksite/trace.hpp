#pragma once
/// The heater alone, without a trainee: a job's house, tap openings over time, and its time series.

#include <string>
#include <vector>

#include "sim/worksite/job.hpp"

namespace emberpath::worksite {

/// From `at_s` on, the house's first tap stands open by `opening`.
struct TapStep {
    double at_s = 0.0;
    double opening = 0.0;  // 0 shut to 1 open
};

struct TraceSettings {
    std::vector<TapStep> taps;  // times rising
    double end_s = 0.0;         // last row; at most 24 h
    double every_s = 1.0;       // one row each so many seconds, whole ticks of 0.1 s
    bool sound = false;         // true: the house without its fault
};

struct TraceTable {
    std::vector<std::string> columns;       // "outlet water [degC]"
    std::vector<int> decimals;              // of each column
    std::vector<std::vector<double>> rows;  // in the units of the columns
};

/// Starts from a cold heater at rest. Faults stand as they do when the trainee arrives, and go on from
/// there; the wind is steady, with the gusts of seed 1.
[[nodiscard]] TraceTable trace(const Job& job, const TraceSettings& settings);

}  // namespace emberpath::worksite
