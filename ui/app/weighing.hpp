#pragma once
/// The same assessment as records::assess, which tells how far the shadows have come.

#include <functional>
#include <optional>
#include <string>

#include "sim/records/record.hpp"

namespace emberpath::app {

/// Called with 0 to 1 while the houses with every other cause live through the time before the arrival; what
/// comes after that cannot be counted.
using Told = std::function<void(double)>;
[[nodiscard]] scoring::Assessment weigh(const records::Record& record, const worksite::Job& job,
                                        const Told& told);

/// A finished attempt, weighed once more.
struct WeighedAgain {
    std::optional<scoring::Assessment> assessment;  // nothing: `differs` says what is not the same
    std::string differs;                            // in the words of records::verify
};
/// Like records::verify for the visit: its acts must show the same again, and its scores be the same bit for
/// bit. `job` with the licence of the record; the record must be good.
[[nodiscard]] WeighedAgain weigh_again(const records::Record& record, const worksite::Job& job,
                                       const std::string& scenario_hash, const Told& told);

}  // namespace emberpath::app
