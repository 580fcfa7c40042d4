#pragma once
/// The same assessment as records::assess, which tells how far the shadows have come.

#include <functional>

#include "sim/records/record.hpp"

namespace emberpath::app {

/// Called with 0 to 1 while the houses with every other cause live through the time before the arrival; what
/// comes after that cannot be counted.
using Told = std::function<void(double)>;
[[nodiscard]] scoring::Assessment weigh(const records::Record& record, const worksite::Job& job,
                                        const Told& told);

}  // namespace emberpath::app
