#pragma once
/// A house to which an instrument is brought in a stated condition, and what it showed last.

#include <gtest/gtest.h>

#include "tests/unit/worksite/house.hpp"

namespace emberpath::worksite {

inline Job job_with(Instrument instrument, const Piece& piece) {
    Job job = test_job();
    job.kit.visited_on = "2026-11-25";
    job.kit.of(instrument) = piece;
    return job;
}

/// What the last act read of that quantity.
inline double last_read(const Attempt& attempt, Quantity quantity) {
    for (const auto& seen : attempt.log().back().observations)
        if (seen.quantity == quantity) return seen.value;
    ADD_FAILURE() << "nothing read";
    return 0.0;
}

}  // namespace emberpath::worksite
