#pragma once
/// Lanes of a pack: they move between packs, where those that nobody needs any more make room, and show
/// what attached instruments follow.

#include "sim/worksite/heater.hpp"

namespace emberpath::worksite {

/// One lane takes over everything of a lane of another pack that has met the same inputs.
template <class Real>
void adopt_lane(Heater<Real>& heater, std::size_t lane, const Heater<Real>& other,
                std::size_t other_lane);

/// What Senses::step() asks of a lane in every tick, with the bits of view().plant; the rest is empty.
/// A meter that logs a voltage (ToolSetup::meter) asks for more.
template <class Real>
[[nodiscard]] plant::Observables gauges_of(const Heater<Real>& heater, std::size_t lane,
                                           const TickInputs& inputs);

/// May packs of math::Widest run on this processor?
[[nodiscard]] bool widest_is_supported();

}  // namespace emberpath::worksite
