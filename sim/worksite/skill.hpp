#pragma once
/// Which acts beside the remedies take a licence, and for what: scope.cpp judges by it, the listing of acts says it.

#include <optional>
#include <string_view>

#include "sim/worksite/acts.hpp"
#include "sim/worksite/practice.hpp"

namespace emberpath::worksite {

/// Storing a setting is the remedy that stores them all, bit by bit.
[[nodiscard]] constexpr bool stores_a_setting(Verb verb) {
    switch (verb) {
        case Verb::change_gas:
        case Verb::change_altitude:
        case Verb::change_highest:
        case Verb::change_frost:
        case Verb::change_wall_count:
        case Verb::change_priority:
            return true;
        default:
            return false;
    }
}

/// A meter at the supply terminals is a live test as well; its sentence does not tell.
[[nodiscard]] constexpr std::optional<Work> work_of(Verb verb) {
    switch (verb) {
        case Verb::unplug_sensor:
        case Verb::bridge_limiter:
        case Verb::bridge_air_proof:
        case Verb::fit_resistor:
        case Verb::tape_lead:
        case Verb::attach_multimeter:
            return Work::behind_cover;
        case Verb::open_point:
        case Verb::remake_joint:
            return Work::gas_joints;
        case Verb::measure_volts:
        case Verb::log_volts:
        case Verb::measure_amps:
            return Work::live_tests;
        default:
            return std::nullopt;
    }
}

/// As the listing of acts says it; empty: anybody.
[[nodiscard]] constexpr std::string_view skill_for(Verb verb) {
    if (stores_a_setting(verb))
        return faults::skill_title(faults::info(faults::Remedy::correct_settings).skill);
    const auto work = work_of(verb);
    return work ? work_title(*work) : std::string_view{};
}

}  // namespace emberpath::worksite
