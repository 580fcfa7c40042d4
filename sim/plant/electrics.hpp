#pragma once
/// The electrical side of one heater or of a pack of them: what was last worked out from the network, and
/// when to work it out again. Lanes are looked at one by one, between ticks, only after something changed.

#include <array>
#include <cstddef>

#include "sim/math/pack.hpp"
#include "sim/plant/electrical_readings.hpp"
#include "sim/signals/signals.hpp"

namespace emberpath::plant {

struct LaneElectrics {
    Latches latches;
    ElectricalReadings readings;
    double closings_seen = 0.0, fuses_seen = 0.0;
    double worked_out_at_wetness = 1.0;
    bool stale = true;    // its parameters have changed since
    bool moving = false;  // wetness or a touching lead can change it by itself
};

template <class Real>
struct Electrics {
    std::array<LaneElectrics, math::lanes<Real>> lane{};
    ElectricalSituation worked_out_for{};
    bool any_stale = true, any_moving = false;
    // What the tick uses; a sound house until the network has been asked.
    Real supply_v{230.0};
    Real flame_signal{1.0};
    Real spark_arrives{1.0};
    Real valve_pulls{1.0};
    Real link_unit_v{signals::link_supply_v};
    std::array<Real, link_runs> link_wall_v{Real(0.0), Real(0.0), Real(0.0)};
};

/// Equal in every member. Not inline: code for wide instructions must not bring its own.
[[nodiscard]] bool same(const ElectricalSituation& a, const ElectricalSituation& b);
[[nodiscard]] bool same(const ElectricalParameters<double>& a,
                        const ElectricalParameters<double>& b);

/// Works one lane out for this situation; closing the safety switch or a new fuse clears their latches
/// first. `wiring.latches` must be the lane's; it is brought up to date.
void work_out(LaneElectrics& lane, Wiring& wiring);

/// One tick of drying and of the chafed lead. Marks the lane stale when it matters.
struct LaneWeather {
    double casing_k = 288.15, ambient_k = 288.15, damp = 0.5;
    double valve_driven = 0.0;
};
void age(LaneElectrics& lane, const ElectricalParameters<double>& parameters,
         const LaneWeather& weather);

}  // namespace emberpath::plant
