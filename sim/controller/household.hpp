#pragma once
/// What the household asks for: the heater's panel alone, or wall controllers on the link cable.
///
/// Every wall controller has its own core pair from the heater's link terminals. It is heard while its
/// voltage is enough, its kind is accepted and its number is listened to. The heater's own set value counts
/// only while no wall controller is heard. The voltages come from the electrical network of the house.
///
/// Source    chosen
/// Checked   tests/unit/controller/wall_controllers_test.cpp

#include "sim/controller/controller.hpp"
#include "sim/math/pack.hpp"

namespace emberpath::controller {

template <class Real>
void listen(WorkingState<Real>& s, const Panel& panel, const SettingsOf<Real>& settings) {
    using math::both;
    for (std::size_t i = 0; i < most_wall_controllers; ++i) {
        const WallController& wall = panel.wall[i];
        const Real accepted =
            wall.shows_service > 0.5 ? settings.accepts_service : settings.accepts_simple;
        const auto alive =
            both(s.link_wall_v[i] > Real(link_least_v), Real(wall.fitted) > Real(0.5));
        const auto known = both(accepted > Real(0.5),
                                settings.wall_controllers > Real(static_cast<double>(i) + 0.5));
        s.heard[i] = math::select(both(alive, known), Real(1.0), 0.0);
    }
}

/// The lowest set value that is heard and switched on counts, or that of the first in priority.
template <class Real>
void choose(WorkingState<Real>& s, const Panel& panel, const SettingsOf<Real>& settings) {
    using math::both;
    using math::select;
    Real any_heard(0.0), any_on(0.0), first(0.0), wanted_k(1.0e3);
    for (std::size_t i = 0; i < most_wall_controllers; ++i) {
        const WallController& wall = panel.wall[i];
        const double number = static_cast<double>(i) + 1.0;
        const auto heard = s.heard[i] > Real(0.5);
        const auto on = both(heard, Real(wall.switched_on) > Real(0.5));
        const auto ranks = both(on, settings.first_priority == Real(number));
        const auto lower = both(both(on, Real(wall.set_point_k) < wanted_k), first < Real(0.5));
        const auto counts = math::either(ranks, lower);
        wanted_k = select(counts, Real(wall.set_point_k), wanted_k);
        s.set_by = select(counts, Real(number), s.set_by);
        first = select(ranks, Real(1.0), first);
        any_heard = select(heard, Real(1.0), any_heard);
        any_on = select(on, Real(1.0), any_on);
    }
    s.set_point_k = select(any_on > Real(0.5), wanted_k, s.set_point_k);
    const auto silenced = both(any_heard > Real(0.5), any_on < Real(0.5));
    s.household_on = select(silenced, Real(0.0), s.household_on);
}

template <class Real>
void hear_household(WorkingState<Real>& s, const Panel& panel, const SettingsOf<Real>& settings) {
    s.set_point_k = Real(panel.set_point_k);
    s.household_on = Real(panel.switched_on);
    s.set_by = Real(0.0);
    // Which wall controllers hang in the house is the same in every lane.
    bool any_fitted = false;
    for (const WallController& wall : panel.wall) any_fitted = any_fitted || wall.fitted > 0.5;
    if (any_fitted) {
        listen(s, panel, settings);
        choose(s, panel, settings);
    }
    s.set_point_k = math::clamp(s.set_point_k, settings.minimum_set_k, settings.maximum_set_k);
}

}  // namespace emberpath::controller
