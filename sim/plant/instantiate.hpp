#pragma once
/// Explicit instantiation of the plant's templates for one kind of Real.

#include "sim/plant/adopt_impl.hpp"
#include "sim/plant/gauges_impl.hpp"
#include "sim/plant/step.hpp"

#define EMBERPATH_INSTANTIATE_PLANT(REAL)                                                          \
    template void emberpath::plant::settle_cold(Plant<REAL>&, const Surroundings&);                \
    template void emberpath::plant::change_cylinder(Plant<REAL>&, const Surroundings&);            \
    template void emberpath::plant::change_reserve(Plant<REAL>&, const Surroundings&);             \
    template emberpath::signals::SensorSignals<REAL> emberpath::plant::sense(const Plant<REAL>&,   \
                                                                             const Surroundings&); \
    template void emberpath::plant::advance(Plant<REAL>&, const Surroundings&,                     \
                                            const signals::ActuatorCommands<REAL>&);               \
    template void emberpath::plant::update_electrics(Plant<REAL>&, const Surroundings&);           \
    template emberpath::plant::State<REAL> emberpath::plant::derivative(                           \
        const Plant<REAL>&, const State<REAL>&, const Surroundings&);                              \
    template emberpath::plant::Plant<double> emberpath::plant::one_lane(const Plant<REAL>&,        \
                                                                        std::size_t);              \
    template emberpath::plant::Gauges<REAL> emberpath::plant::gauges(const Plant<REAL>&,           \
                                                                     const Surroundings&);         \
    template void emberpath::plant::take_lane(const Gauges<REAL>&, std::size_t, Observables&);     \
    template emberpath::plant::Observables emberpath::plant::observe(                              \
        const Plant<REAL>&, std::size_t, const Surroundings&);                                     \
    template void emberpath::plant::set_parameters(Plant<REAL>&, std::size_t,                      \
                                                   const PlantParameters&);                        \
    template void emberpath::plant::adopt_lane(Plant<REAL>&, std::size_t, const Plant<REAL>&,      \
                                               std::size_t);                                       \
    template std::uint64_t emberpath::plant::state_hash(const Plant<REAL>&, std::size_t);
