#pragma once
/// Packs can be filled anew: a lane moves from one pack to another and goes on there with the same bits.

#include "sim/plant/plant.hpp"

namespace emberpath::plant {

/// One lane takes over everything of a lane of another pack that has met the same surroundings.
template <class Real>
void adopt_lane(Plant<Real>& plant, std::size_t lane, const Plant<Real>& other,
                std::size_t other_lane);

}  // namespace emberpath::plant
