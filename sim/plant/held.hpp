#pragma once
/// What no stage of a tick changes in any lane of a pack: worked out once instead of in each of the eight, with the
/// bits it would have there. A lane's bits never hang on its neighbours: what is held is what the stages would find.
/// Checked   tests/laws/held_laws_test.cpp; tests/laws/determinism_test.cpp

#include "sim/plant/exchanger.hpp"
#include "sim/plant/gas_supply.hpp"
#include "sim/plant/plant.hpp"
#include "sim/plant/water_network.hpp"

namespace emberpath::plant {

template <class Real>
struct Held {
    bool water = false;  // the flows of water and what follows from them alone are held
    WaterFlows<Real> flows;
    Real water_side_w_per_k;
    bool dark = false;  // no gas reaches the burner, and no flame is left to fade
};

/// First-order approach [per s] with time constant tau, at most `rate` per second.
template <class Real>
[[nodiscard]] Real limited_lag(const Real& target, const Real& now, double tau_s, double rate) {
    return math::clamp((target - now) * (1.0 / tau_s), Real(-rate), Real(rate));
}

/// Travel [-] within which a motor-driven valve has arrived: far below any step of a drive. Without it a valve would
/// stop wherever its steps are lost in rounding, and the water would be worked out anew for ever.
inline constexpr double has_arrived = 1e-6;

/// Rate [1/s] of a motor-driven valve on its way to `target`, at most `rate` per second.
template <class Real>
[[nodiscard]] Real driven_valve_rate(const Real& target, const Real& now, double rate) {
    return math::select(math::magnitude(target - now) > Real(has_arrived),
                        limited_lag(target, now, 0.12, rate), Real(0.0));
}
template <class Real>
[[nodiscard]] Real water_valve_rate(const Plant<Real>& plant, const State<Real>& x) {
    const Parameters<Real>& p = plant.parameters;
    const Real target = math::select(p.water_valve_stuck > Real(0.5), p.water_valve_position,
                                     plant.commands.water_valve);
    return driven_valve_rate(target, x[water_valve], 0.12);
}
template <class Real>
[[nodiscard]] Real bypass_rate(const Plant<Real>& plant, const State<Real>& x) {
    const Parameters<Real>& p = plant.parameters;
    const Real target =
        math::select(p.bypass_stuck > Real(0.5), p.bypass_position, plant.commands.bypass);
    return driven_valve_rate(target, x[bypass_valve], 1.0);
}

/// Whether both valves stand.
template <class Real>
[[nodiscard]] math::Mask<Real> valves_stand(const Plant<Real>& plant) {
    return math::both(water_valve_rate(plant, plant.state) == Real(0.0),
                      bypass_rate(plant, plant.state) == Real(0.0));
}

/// Whether the water moves the same in every stage: valves stand, no companion takes its share, and no open outlet
/// is tempered by water that changes.
template <class Real>
[[nodiscard]] bool water_stands(const Plant<Real>& plant, const Surroundings& at) {
    for (std::size_t i = 0; i < at.outlet_count; ++i)
        if (at.outlets[i].tempered != 0.0) return false;
    return math::all(
        math::both(valves_stand(plant), plant.parameters.companion_fitted == Real(0.0)));
}

/// Whether nothing burns and nothing can: main valve or banks shut, flames gone altogether.
template <class Real>
[[nodiscard]] bool is_dark(const Plant<Real>& plant) {
    const std::array<Real, bank_count> open =
        injector_conductance(plant.parameters, plant.commands);
    Real any = Real(0.0);
    for (std::size_t b = 0; b < bank_count; ++b)
        any += open[b] + plant.state[flame_0 + b] + plant.flame.lit[b];
    return math::all(any == Real(0.0));
}

/// For the coming tick, commands and flame flags being set.
template <class Real>
[[nodiscard]] Held<Real> held(const Plant<Real>& plant, const Surroundings& at) {
    Held<Real> out;
    out.dark = is_dark(plant);
    out.water = water_stands(plant, at);
    if (!out.water) return out;
    out.flows = water_flows(plant.parameters, plant.state, at);
    out.water_side_w_per_k =
        water_side_conductance(plant.parameters, out.flows.exchanger_m3_per_s * water_kg_per_m3);
    return out;
}

}  // namespace emberpath::plant
