#pragma once
/// The heater's time series as comma-separated values, units in the header.

#include <string>

#include "sim/worksite/job.hpp"

namespace emberpath::views {

struct TraceOrder {
    std::string taps;      // "0 0.5; 60 1; 180 0": seconds and opening of the first tap, 0 to 1
    double every_s = 1.0;  // one row each so many seconds
    bool sound = false;    // the house without its fault
};
struct TraceTable {
    std::string csv;
    std::size_t rows = 0;
    std::string problem;  // what is wrong with the order; empty when nothing is
};
[[nodiscard]] TraceTable trace_table(const worksite::Job& job, const TraceOrder& order);

}  // namespace emberpath::views
