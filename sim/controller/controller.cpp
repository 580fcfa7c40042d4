// The controller for one heater and for packs in baseline instructions.
#include "sim/controller/instantiate.hpp"

EMBERPATH_INSTANTIATE_CONTROLLER(double)
using BaselinePack = emberpath::math::Pack<8, emberpath::math::Baseline>;
EMBERPATH_INSTANTIATE_CONTROLLER(BaselinePack)
