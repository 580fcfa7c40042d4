#pragma once
/// Lanes of a pack: they move between packs, where those that nobody needs any more make room; what attached
/// instruments follow is worked out for all of them together (plant/gauges.hpp).

#include "sim/plant/gauges.hpp"
#include "sim/worksite/heater.hpp"

namespace emberpath::worksite {

/// One lane takes over everything of a lane of another pack that has met the same inputs.
template <class Real>
void adopt_lane(Heater<Real>& heater, std::size_t lane, const Heater<Real>& other,
                std::size_t other_lane);

/// May packs of math::Widest run on this processor?
[[nodiscard]] bool widest_is_supported();

}  // namespace emberpath::worksite
