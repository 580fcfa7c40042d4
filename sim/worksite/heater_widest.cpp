// Packs of heaters in the widest instructions. Compiled for x86-64-v4; run only where that is supported.
#include "sim/math/widest.hpp"
#include "sim/worksite/heater_impl.hpp"

using WidestPack = emberpath::math::Pack<8, emberpath::math::Widest>;
EMBERPATH_INSTANTIATE_HEATER(WidestPack)
