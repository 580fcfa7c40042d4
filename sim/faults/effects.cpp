// From cause to what it does.
#include "sim/faults/effects.hpp"

#include <array>

namespace emberpath::faults {
namespace {

struct Row {
    Cause cause;
    effects::Effect effect;  // none: nothing changes
};

using namespace effects;

constexpr std::array<Row, cause_count> table{{
    {Cause::no_fault, nullptr},
    {Cause::flue_blocked, block_flue},
    {Cause::wind_gust, expose_to_gusts},
    {Cause::cylinder_low, run_cylinder_down},
    {Cause::gas_pipe_restriction, restrict_pipe},
    {Cause::regulator_droop, droop_regulator},
    {Cause::outlet_sensor_open, open_outlet_sensor},
    {Cause::outlet_sensor_drift, drift_outlet_sensor},
    {Cause::electrode_fouled, foul_electrode},
    {Cause::igniter_failed, kill_igniter},
    {Cause::exchanger_sooted, soot_exchanger},
    {Cause::earth_missing, disconnect_earth},
    {Cause::supply_swapped, swap_supply},
    {Cause::neutral_broken, break_neutral},
    {Cause::supply_sags, weaken_line},
    {Cause::moisture_in_heater, wet_wiring},
    {Cause::valve_lead_chafed, chafe_valve_lead},
    {Cause::valve_coil_open, open_valve_coil},
    {Cause::igniter_lead_cracked, crack_igniter_lead},
    {Cause::flame_lead_broken, break_flame_lead},
}};

constexpr bool in_enum_order() {
    for (std::size_t i = 0; i < cause_count; ++i)
        if (table[i].cause != static_cast<Cause>(i)) return false;
    return true;
}
static_assert(in_enum_order(), "the table follows the order of Cause");

}  // namespace

void apply(PlantParameters& p, Cause cause, double severity) {
    const Effect effect = table.at(static_cast<std::size_t>(cause)).effect;
    if (severity == 0.0 || effect == nullptr) return;
    effect(p, severity);
}

}  // namespace emberpath::faults
