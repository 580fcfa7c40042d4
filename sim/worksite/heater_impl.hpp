#pragma once
/// Heater's templates; heater.cpp, heater_wide.cpp and heater_widest.cpp instantiate them.

#include "sim/math/hash.hpp"
#include "sim/math/lanes.hpp"
#include "sim/math/pack.hpp"
#include "sim/plant/adopt.hpp"
#include "sim/worksite/heater.hpp"
#include "sim/worksite/heater_lanes.hpp"

namespace emberpath::worksite {

template <class Real>
void Heater<Real>::install(std::size_t lane, const Installation& installation) {
    plant::set_parameters(plant, lane, installation.parameters);
    controller::set_settings(settings, lane, installation.settings);
}

template <class Real>
void Heater<Real>::tick(const TickInputs& inputs) {
    plant::update_electrics(plant, inputs.surroundings);
    controller::Panel panel = inputs.panel;
    panel.powered = inputs.surroundings.power_on;
    const auto sensors = plant::sense(plant, inputs.surroundings);
    const auto commands = controller::control(controller, sensors, panel, settings);
    plant::advance(plant, inputs.surroundings, commands);
}

template <class Real>
std::uint64_t Heater<Real>::hash(std::size_t lane) const {
    math::Hash hash;
    hash.add(plant::state_hash(plant, lane));
    const controller::Readout r = controller::readout(controller, lane);
    hash.add(static_cast<std::uint64_t>(r.phase));
    hash.add(static_cast<std::uint64_t>(r.event));
    hash.add(r.failed_light_ups);
    hash.add(r.loop_correction_k);
    hash.add(r.air_trim);
    hash.add(r.heat_demand_w);
    hash.add(r.set_point_k);
    hash.add(r.trace_heating);
    for (const auto& line : r.history) {
        hash.add(static_cast<std::uint64_t>(line.event));
        hash.add(line.count);
        hash.add(line.age_s);
    }
    return hash.value();
}

template <class Real>
HeaterView view(const Heater<Real>& heater, std::size_t lane, const TickInputs& inputs) {
    const plant::Plant<double> one = plant::one_lane(heater.plant, lane);
    return {plant::observe_one(one, inputs.surroundings),
            controller::readout(heater.controller, lane), one.parameters,
            controller::settings_of(heater.settings, lane)};
}

template <class Real>
void adopt_lane(Heater<Real>& heater, std::size_t lane, const Heater<Real>& other,
                std::size_t other_lane) {
    plant::adopt_lane(heater.plant, lane, other.plant, other_lane);
    math::copy_lane<Real>(heater.controller, lane, other.controller, other_lane);
    math::copy_lane<Real>(heater.settings, lane, other.settings, other_lane);
}

}  // namespace emberpath::worksite

#define EMBERPATH_INSTANTIATE_HEATER(REAL)                                                         \
    template struct emberpath::worksite::Heater<REAL>;                                             \
    template void emberpath::worksite::adopt_lane(Heater<REAL>&, std::size_t, const Heater<REAL>&, \
                                                  std::size_t);                                    \
    template emberpath::worksite::HeaterView emberpath::worksite::view(                            \
        const Heater<REAL>&, std::size_t, const TickInputs&);
