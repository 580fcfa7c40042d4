// What a closer look, leak fluid or an ear finds of a lane; thresholds are chosen.

#include "sim/worksite/doses.hpp"
#include "sim/worksite/observation.hpp"

namespace emberpath::worksite {

namespace {

using Q = Quantity;

std::size_t handle_look(const HeaterView& heater, const TickInputs& inputs) {
    if (inputs.surroundings.gas_isolator < 0.5) return handle_across;
    const double times_open =
        heater.parameters.gas_isolator_resistance / heater.parameters.gas_pipe_resistance;
    return times_open > 0.1 ? handle_part_way : handle_in_line;
}

std::size_t intake_look(const plant::PlantParameters& p) {
    if (p.intake_resistance < 0.5e5) return intake_clear;
    return p.intake_resistance < 1.5e6 ? intake_partly_felted : intake_felted;
}

std::size_t chamber_look(const plant::PlantParameters& p) {
    return p.seam_leak_share > 0.01 ? chamber_scorched : chamber_clean;
}

/// The column rocks once there is one; a hand's width of it is easily seen.
std::size_t needle_look(const HeaterView& heater) {
    constexpr double seen_pa = 5.0, blows_rev_per_s = 10.0;
    const bool rocks = heater.plant.fan_rev_per_s > blows_rev_per_s;
    const double water_pa =
        heater.parameters.air_tube_gain > 0.0 ? heater.parameters.air_tube_water_pa : 0.0;
    return rocks && water_pa > seen_pa ? needle_jumpy : needle_steady;
}

std::size_t companion_look(const HeaterView& heater) {
    constexpr double burns_share = 0.05;
    if (heater.parameters.companion_fitted < 0.5) return companion_none;
    return heater.plant.companion_share > burns_share ? companion_fires : companion_waits;
}

}  // namespace

std::optional<double> look_value(Quantity quantity, const HeaterView& heater,
                                 const TickInputs& inputs) {
    const plant::Observables& seen = heater.plant;
    switch (quantity) {
        case Q::gas_valve_handle:
            return static_cast<double>(handle_look(heater, inputs));
        case Q::air_intake:
            return static_cast<double>(intake_look(heater.parameters));
        case Q::chamber_outside:
            return static_cast<double>(chamber_look(heater.parameters));
        case Q::limiter_leads:
            return heater.parameters.limiter_bridged > 0.5 ? 1.0 : 0.0;
        case Q::union_bubbles:
            return heater.parameters.gas_union_leak_m3_per_s > 0.0 && seen.gas_inlet_pa > 50.0
                       ? 1.0
                       : 0.0;
        case Q::light_up_sound:
            return seen.rough_light_up_m3 > hard_light_up_m3 ? 1.0 : 0.0;
        case Q::air_tube_pressure:
            return seen.air_tube_pa;
        case Q::air_tube_needle:
            return static_cast<double>(needle_look(heater));
        case Q::companion_front:
            return static_cast<double>(companion_look(heater));
        case Q::companion_pipe_temperature:
            return seen.companion_outlet_k;
        case Q::companion_link_ohms:
            return heater.parameters.companion_link_ohm;
        default:
            return std::nullopt;
    }
}

}  // namespace emberpath::worksite
