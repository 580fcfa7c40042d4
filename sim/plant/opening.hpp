#pragma once
/// A hand valve as a resistance.

#include "sim/math/pack.hpp"

namespace emberpath::plant {

/// Resistance of a valve of resistance `full` when its opening is `open` (0 to 1): the free area falls
/// with the opening, the loss with its square. Shut, it still passes about a millionth (no infinities).
template <class Real>
[[nodiscard]] Real valve_resistance(const Real& full, double open) {
    return full * (1.0 / (open * open + 1e-12));
}

}  // namespace emberpath::plant
