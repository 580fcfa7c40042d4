#include "sim/plant/limits.hpp"

#include <algorithm>
#include <array>

#include "sim/plant/algebra.hpp"
#include "sim/properties/water.hpp"

namespace emberpath::plant {
namespace {

constexpr double coldest_water_k = 270.15;
constexpr double boiling_k = 425.0;  // at 0.5 MPa absolute; boiling() asks the pressure itself
constexpr double atmosphere_pa = 101325.0;
constexpr double boils_at_least_k = 373.0;  // no state has less than the atmosphere's pressure
constexpr double rounding = 1e-6;           // of a share: lags end beside their target

// clang-format off
constexpr std::array ranges{
    ValidRange{"water in the exchanger", "K", water_0, water_0 + cell_count - 1, coldest_water_k, boiling_k},
    ValidRange{"metal of the exchanger", "K", metal_0, metal_0 + cell_count - 1, 230.0, 700.0},
    ValidRange{"water at the outlet", "K", mixing_pocket, mixing_pocket, coldest_water_k, boiling_k},
    ValidRange{"water in the hot pipe", "K", pipe_0, pipe_0 + cell_count - 1, coldest_water_k, boiling_k},
    ValidRange{"fan speed", "rev/s", fan_speed, fan_speed, -rounding, 200.0},
    ValidRange{"proportional valve's pressure", "Pa", valve_pressure, valve_pressure, -rounding, 20.0e3},
    ValidRange{"water valve's position", "", water_valve, water_valve, -rounding, 1.0 + rounding},
    ValidRange{"bypass valve's position", "", bypass_valve, bypass_valve, -rounding, 1.0 + rounding},
    ValidRange{"flow sensor", "m3/s", flow_reading, flow_reading, -rounding, 0.02},
    ValidRange{"temperature sensors", "K", inlet_bead, ambient_bead, 230.0, 500.0},
    ValidRange{"flame current", "A", ionisation, ionisation, -rounding, 50.0e-6},
    ValidRange{"flue gas", "K", flue_gas, flue_gas, 230.0, 1500.0},
    ValidRange{"flame strength", "", flame_0, flame_0 + bank_count - 1, -rounding, 1.0 + rounding},
    ValidRange{"liquid of the first cylinder", "K", cylinder_liquid_k, cylinder_liquid_k, 200.0, 340.0},
    ValidRange{"liquid of the first cylinder", "kg", cylinder_liquid_kg, cylinder_liquid_kg, 0.0, 500.0},
    ValidRange{"element of the overheat limiter", "K", limiter_element, limiter_element, 230.0, 600.0},
    ValidRange{"unburnt gas in the chamber", "m3", unburnt_gas, unburnt_gas, -1e-9, 0.02},
    ValidRange{"air in the case", "K", casing_air, casing_air, 230.0, 700.0},
    ValidRange{"creep of the regulator", "Pa", regulator_creep, regulator_creep, -rounding, 20.0e3},
    ValidRange{"liquid of the reserve cylinder", "K", reserve_liquid_k, reserve_liquid_k, 200.0, 340.0},
    ValidRange{"liquid of the reserve cylinder", "kg", reserve_liquid_kg, reserve_liquid_kg, 0.0, 500.0},
    ValidRange{"water pressure at the heater", "Pa", water_pressure, water_pressure, 0.0, 2.0e6},
    ValidRange{"water in the case", "kg", casing_water, casing_water, -rounding, 20.0},
    ValidRange{"oxygen used up around the heater", "", room_oxygen_used, room_oxygen_used, -rounding, 0.15},
    ValidRange{"carbon dioxide around the heater", "", room_co2, room_co2, -rounding, 0.15},
    ValidRange{"carbon monoxide around the heater", "", room_co, room_co, -rounding, 0.06},
    ValidRange{"share of the companion heater", "", companion_share, companion_share, -rounding, 0.6},
    ValidRange{"outlet pipe of the companion heater", "K", companion_outlet, companion_outlet, 230.0, boiling_k},
};
// clang-format on

constexpr bool every_state_has_one_range() {
    std::size_t next = 0;
    for (const ValidRange& range : ranges) {
        if (range.first != next) return false;
        next = range.last + 1;
    }
    return next == state_count;
}
static_assert(every_state_has_one_range());

bool inside(double value, double low, double high) {
    return value >= low && value <= high;  // false for what is not a number
}

/// Water is a liquid here: hotter than it boils at the pressure behind the cold valve it would not be one.
std::optional<BeyondLimit> boiling(const State<double>& state) {
    const double hottest =
        *std::max_element(state.begin() + water_0, state.begin() + water_0 + cell_count);
    if (hottest < boils_at_least_k) return std::nullopt;  // the rule, once a tick
    const double boils_k =
        properties::water_saturation_temperature_k(state[water_pressure] + atmosphere_pa);
    if (hottest <= boils_k) return std::nullopt;
    return BeyondLimit{"water in the exchanger", "K", hottest, coldest_water_k, boils_k};
}

}  // namespace

std::span<const ValidRange> valid_ranges() {
    return ranges;
}

std::optional<BeyondLimit> beyond_limits(const State<double>& state) {
    for (const ValidRange& range : ranges)
        for (std::size_t i = range.first; i <= range.last; ++i)
            if (!inside(state[i], range.low, range.high))
                return BeyondLimit{range.name, range.unit, state[i], range.low, range.high};
    return std::nullopt;
}

std::optional<BeyondLimit> beyond_limits(const Plant<double>& plant, const Surroundings& at) {
    if (auto state = beyond_limits(plant.state)) return state;
    if (auto steam = boiling(plant.state)) return steam;
    const Algebra<double> a = algebra(plant, plant.state, at);
    const std::array values{
        BeyondLimit{"water through the heater", "m3/s", a.water.heater_m3_per_s, 0.0, 3.0e-3},
        BeyondLimit{"gas to the burner", "m3/s", a.gas.total_m3_per_s, 0.0, 5.0e-3},
        BeyondLimit{"manifold pressure", "Pa", a.gas.manifold_pa, 0.0, 20.0e3},
        BeyondLimit{"air through the burner", "m3/s", a.air_m3_per_s, 0.0, 0.05},
        BeyondLimit{"oxygen of the burner's air over that outdoors", "", a.intake_oxygen, 0.3,
                    1.0 + rounding},
    };
    for (const BeyondLimit& one : values)
        if (!inside(one.value, one.low, one.high)) return one;
    return std::nullopt;
}

}  // namespace emberpath::plant
