#pragma once
/// The event history: twelve lines, newest first, kept without power. Repeats of the newest event raise its
/// count instead of filling the list.

#include "sim/controller/controller.hpp"
#include "sim/math/pack.hpp"

namespace emberpath::controller {

/// The controller's own clock runs while the mains is on; it counts how often the mains came back.
template <class Real>
void run_clock(EventHistory<Real>& h, const Real& powered) {
    const auto back = math::both(h.was_powered<Real(0.5), powered> Real(0.5));
    h.power_ups = h.power_ups + math::select(back, Real(1.0), 0.0);
    h.was_powered = powered;
    h.clock_s = h.clock_s + powered * signals::tick_s;
}

/// Enters the events of this tick; `event` is none where nothing happened. Most ticks nothing happens in
/// any lane: what is skipped then would have changed no bit.
template <class Real>
void enter(EventHistory<Real>& h, const Real& event) {
    using math::select;
    const auto happened = event > Real(0.5);
    if (!math::any(happened)) return;
    const auto fresh = math::both(happened, event != h.event[0]);
    for (std::size_t i = history_lines - 1; i > 0; --i) {
        h.event[i] = select(fresh, h.event[i - 1], h.event[i]);
        h.count[i] = select(fresh, h.count[i - 1], h.count[i]);
        h.at_s[i] = select(fresh, h.at_s[i - 1], h.at_s[i]);
    }
    h.event[0] = select(fresh, event, h.event[0]);
    h.count[0] = select(fresh, Real(1.0), h.count[0] + select(happened, Real(1.0), 0.0));
    h.at_s[0] = select(happened, h.clock_s, h.at_s[0]);
}

}  // namespace emberpath::controller
