#pragma once
/// Moves one lane of something that is made of Reals only from one pack to another.

#include <cstddef>
#include <type_traits>

#include "sim/math/pack.hpp"

namespace emberpath::math {

/// `Part` holds Reals and nothing else: then it is a row of them in memory.
template <class Real, class Part>
void copy_lane(Part& to, std::size_t lane_to, const Part& from, std::size_t lane_from) {
    static_assert(std::is_standard_layout_v<Part> || std::is_trivially_copyable_v<Part>);
    static_assert(sizeof(Part) % sizeof(Real) == 0 && alignof(Part) == alignof(Real));
    Real* const target = reinterpret_cast<Real*>(&to);
    const Real* const source = reinterpret_cast<const Real*>(&from);
    for (std::size_t i = 0; i < sizeof(Part) / sizeof(Real); ++i)  // NOLINT: one Real is a row too
        set_lane(target[i], lane_to, lane(source[i], lane_from));
}

}  // namespace emberpath::math
