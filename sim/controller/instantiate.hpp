#pragma once
/// Explicit instantiation of the controller's templates for one kind of Real.

#include "sim/controller/control.hpp"
#include "sim/controller/readout.hpp"

#define EMBERPATH_INSTANTIATE_CONTROLLER(REAL)                                          \
    template emberpath::signals::ActuatorCommands<REAL> emberpath::controller::control( \
        ControllerState<REAL>&, const signals::SensorSignals<REAL>&, const Panel&,      \
        const SettingsOf<REAL>&);                                                       \
    template emberpath::controller::Readout emberpath::controller::readout(             \
        const ControllerState<REAL>&, std::size_t);
