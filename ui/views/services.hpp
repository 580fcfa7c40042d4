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

/// Whether the power was parted from the heater, found dead at the terminals by a tester that was proved
/// before and after, and nothing has undone that since. By what the tester showed, whichever words led to it.
[[nodiscard]] bool power_is_proved_dead(const std::vector<worksite::LogEntry>& log);

/// The services from sentences and their times, for tests.
struct TimedWords {
    std::string words, time;
};
[[nodiscard]] std::vector<ServiceRow> services(const std::vector<TimedWords>& log);

}  // namespace emberpath::views
