#pragma once
/// How far the model of the plant is valid: one range for each state and for the algebraic values that matter.
/// Beyond them its answers mean nothing, so an attempt must stop there and say so.
///
/// Ranges    water: liquid only, from 3 K below freezing (nothing freezes here) to boiling at the pressure behind
///           the cold valve [iapws-if97 eq. (31)]; propane liquid: the fit of its vapour pressure; room oxygen: not below what the
///           burner model still handles; positions and shares: what the words mean. The rest: chosen, wider
///           than anything a house with a fault does
/// Errors    a value that is not a number is beyond every range

#include <optional>
#include <span>
#include <string_view>

#include "sim/plant/plant.hpp"

namespace emberpath::plant {

/// Range of states first to last, in SI.
struct ValidRange {
    std::string_view name;  // plain words: "water in the exchanger"
    std::string_view unit;  // "K"
    std::size_t first, last;
    double low, high;
};
[[nodiscard]] std::span<const ValidRange> valid_ranges();

/// What left its range.
struct BeyondLimit {
    std::string_view name, unit;
    double value, low, high;
};

/// The first state outside its range, in the order of the table; nothing when all are inside.
[[nodiscard]] std::optional<BeyondLimit> beyond_limits(const State<double>& state);

/// The same, then water, gas and air flow, manifold pressure and intake oxygen at this state. For one heater
/// once a tick, not for packs of shadows.
[[nodiscard]] std::optional<BeyondLimit> beyond_limits(const Plant<double>& plant,
                                                       const Surroundings& at);

}  // namespace emberpath::plant
