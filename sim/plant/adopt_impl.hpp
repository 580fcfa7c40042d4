#pragma once
/// adopt_lane's template; instantiate.hpp instantiates it.

#include "sim/math/lanes.hpp"
#include "sim/plant/adopt.hpp"

namespace emberpath::plant {

template <class Real>
void adopt_lane(Plant<Real>& plant, std::size_t lane, const Plant<Real>& other,
                std::size_t other_lane) {
    math::copy_lane<Real>(plant.parameters, lane, other.parameters, other_lane);
    math::copy_lane<Real>(plant.state, lane, other.state, other_lane);
    math::copy_lane<Real>(plant.flame, lane, other.flame, other_lane);
    math::copy_lane<Real>(plant.commands, lane, other.commands, other_lane);
    Electrics<Real>& e = plant.electrics;
    const Electrics<Real>& from = other.electrics;
    math::copy_lane<Real>(e.supply_v, lane, from.supply_v, other_lane);
    math::copy_lane<Real>(e.flame_signal, lane, from.flame_signal, other_lane);
    math::copy_lane<Real>(e.spark_arrives, lane, from.spark_arrives, other_lane);
    math::copy_lane<Real>(e.valve_pulls, lane, from.valve_pulls, other_lane);
    math::copy_lane<Real>(e.link_unit_v, lane, from.link_unit_v, other_lane);
    math::copy_lane<Real>(e.link_wall_v, lane, from.link_wall_v, other_lane);
    e.lane[lane] = from.lane[other_lane];
    e.worked_out_for = from.worked_out_for;
    e.any_stale = e.any_moving = false;
    for (const LaneElectrics& one : e.lane) {
        e.any_stale = e.any_stale || one.stale;
        e.any_moving = e.any_moving || one.moving;
    }
}

}  // namespace emberpath::plant
