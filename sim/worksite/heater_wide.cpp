// Packs of heaters in wide instructions. Compiled for x86-64-v3; run only where that is supported.
#include "sim/worksite/heater_impl.hpp"

using WidePack = emberpath::math::Pack<8, emberpath::math::Wide>;
EMBERPATH_INSTANTIATE_HEATER(WidePack)
