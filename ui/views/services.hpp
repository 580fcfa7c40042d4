#pragma once
/// Gas, water, power, cover and air as the trainee last found or left them: never what they really are.

#include <string>
#include <vector>

#include "sim/worksite/attempt.hpp"

namespace emberpath::views {

struct ServiceRow {
    std::string service;  // "gas"
    std::string state;    // "shut at the heater", or "not checked"
    std::string time;     // when that was; empty when not checked
};

/// In a fixed order; one row for each service, whatever was done.
[[nodiscard]] std::vector<ServiceRow> services(const worksite::Attempt& attempt);

/// The same from sentences and their times, for tests.
struct TimedWords {
    std::string words, time;
};
[[nodiscard]] std::vector<ServiceRow> services(const std::vector<TimedWords>& log);

}  // namespace emberpath::views
