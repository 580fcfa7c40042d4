#pragma once
/// One heater, or a pack of heaters, running under its controller: the tick of the whole simulation.

#include <cstddef>
#include <cstdint>

#include "sim/controller/controller.hpp"
#include "sim/plant/plant.hpp"

namespace emberpath::worksite {

/// Everything that acts on every lane alike during one tick.
struct TickInputs {
    plant::Surroundings surroundings;
    controller::Panel panel;
};

/// All about one house's heater that does not change by itself. Causes and hands change it.
struct Installation {
    plant::PlantParameters parameters;
    controller::Settings settings;
};

template <class Real>
struct Heater {
    plant::Plant<Real> plant{};
    controller::ControllerState<Real> controller{};
    controller::SettingsOf<Real> settings{};

    /// Gives one lane its installation; state and memory stay.
    void install(std::size_t lane, const Installation& installation);
    /// Sensors, controller, flame, physics: 0.1 s of time.
    void tick(const TickInputs& inputs);
    [[nodiscard]] std::uint64_t hash(std::size_t lane) const;
};

/// What instruments and senses may meet in one lane at this instant.
struct HeaterView {
    plant::Observables plant;
    controller::Readout readout;
    plant::PlantParameters
        parameters{};                 // of the lane: what an inspection finds (terminal, fins, tip)
    controller::Settings settings{};  // of the lane, as stored
};
template <class Real>
[[nodiscard]] HeaterView view(const Heater<Real>& heater, std::size_t lane,
                              const TickInputs& inputs);

/// May packs of math::Wide run on this processor?
[[nodiscard]] bool wide_is_supported();

}  // namespace emberpath::worksite
