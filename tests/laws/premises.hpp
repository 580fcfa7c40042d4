#pragma once
/// Houses that have what some causes need: the same plain house with one thing more, furnished so that the
/// cause has something to act on and a sound heater serves it well.

#include "sim/faults/faults.hpp"
#include "tests/laws/house.hpp"

namespace emberpath::laws {

struct Premises {
    bool cylinder = false;
    faults::Needs needs = faults::Needs::nothing;
    bool operator==(const Premises&) const = default;
};

inline Premises premises_of(const faults::CauseInfo& row) {
    return {row.cylinder_only, row.needs};
}

/// The outlet that people use: the shower, second of the house.
inline constexpr std::size_t shower = 1;

/// Two wall controllers, the first at `first_c` and with priority, the second at 40 degC.
inline void hang_wall_controllers(House& house, std::size_t count, double first_c) {
    for (std::size_t i = 0; i < count; ++i) {
        house.inputs.panel.wall[i].fitted = 1.0;
        house.inputs.surroundings.electrical.wall_fitted[i] = 1.0;
        house.inputs.panel.wall[i].set_point_k = (i == 0 ? first_c : 40.0) + celsius;
    }
    house.heater.settings.wall_controllers = static_cast<double>(count);
    house.heater.settings.first_priority = 1.0;
}

/// A house before anything is wrong with it.
inline House furnished(const Premises& premises, double set_c = 50.0) {
    using faults::Needs;
    House house(premises.cylinder, set_c);
    plant::PlantParameters& p = house.heater.plant.parameters;
    plant::Surroundings& at = house.inputs.surroundings;
    if (premises.cylinder)  // a cold morning: the trouble of cylinders is heat from the air
        at.ambient_k = at.cylinder_ambient_k = 5.0 + celsius;
    if (premises.needs == Needs::cylinder_pair) {
        p = plant::with_cylinder_pair(p);
        p.cylinder_start_kg = 0.0;  // the changeover has work to do
    }
    if (premises.needs == Needs::open_flue) {
        p = plant::with_flue(p, plant::FlueKind::open_flued);
        at.extraction_m3_per_s = 0.05;  // a range hood
    }
    if (premises.needs == Needs::night) at.night = 1.0;
    if (premises.needs == Needs::wall_controller) {
        hang_wall_controllers(house, 1, set_c);
        house.inputs.panel.set_point_k = 40.0 + celsius;  // counts only while nobody is heard
    }
    if (premises.needs == Needs::two_wall_controllers) hang_wall_controllers(house, 2, set_c);
    if (premises.needs == Needs::air_tube) {
        p = plant::with_air_tube(p);
        house.heater.settings.air_by_tube = 1.0;
    }
    if (premises.needs == Needs::companion) {
        p = plant::with_companion(p, house.heater.settings.full_heat_input_w);
        house.heater.settings.companion = 1.0;
    }
    if (premises.needs == Needs::high_set_value) house.inputs.panel.set_point_k = 70.0 + celsius;
    return house;
}

/// Opens the taps that give `asked_lpm` in the sound house of these parameters.
inline void draw(worksite::TickInputs& inputs, const plant::PlantParameters& healthy,
                 const Premises& premises, double asked_lpm) {
    plant::Surroundings& at = inputs.surroundings;
    // Two heaters are there for more people.
    const double people = premises.needs == faults::Needs::companion ? 1.6 : 1.0;
    const double taps = asked_lpm > 0.0 ? people * taps_for(healthy, 50.0, asked_lpm) : 0.0;
    at.outlet_count = taps > 0.0 ? 1 : 0;
    const double tempered = premises.needs == faults::Needs::tempering_valve ? 1.0 : 0.0;
    at.outlets[0] = {shower, taps, 0.0, tempered};
}

}  // namespace emberpath::laws
