// The controller for packs in wide instructions. Compiled for x86-64-v3; run only where that is supported.
#include "sim/controller/instantiate.hpp"

using WidePack = emberpath::math::Pack<8, emberpath::math::Wide>;
EMBERPATH_INSTANTIATE_CONTROLLER(WidePack)
