#pragma once
/// The burner sequence: standby, pre-purge, light-up, prove, run, post-purge, lockout, restart.
/// Every alternative is evaluated and selected, so that lanes may be in different phases.

#include "sim/controller/controller.hpp"
#include "sim/controller/history.hpp"
#include "sim/controller/protections.hpp"
#include "sim/controller/temperature_loop.hpp"
#include "sim/math/pack.hpp"

namespace emberpath::controller {

namespace sequence {
inline constexpr double start_flow_m3_per_s = 2.5 / 60000.0;
inline constexpr double stop_flow_m3_per_s = 2.0 / 60000.0;
inline constexpr double purge_rev_per_s = 50.0;
inline constexpr double purged_rev_per_s = 2300.0 / 60.0;
inline constexpr double light_up_rev_per_s = 32.5;
inline constexpr double light_up_manifold_share = 0.36 / 0.95;
inline constexpr double least_fan_share = 0.5;  // of the target while running
inline constexpr double least_purge_s = 0.8;
inline constexpr double prove_s = 0.6;
inline constexpr double post_purge_s = 8.0;
inline constexpr double restart_purge_s = 60.0;  // air and dark flame proved all the while
inline constexpr double flame_seen_a = 1.0e-6;
inline constexpr double flame_gone_a = 0.7e-6;
inline constexpr double half_tick_s = 0.05;
inline constexpr double uncounted = 1.0e6;  // resets
inline constexpr double greatest_ohm = 1.0e6;
inline constexpr double least_ohm = 10.0;
inline constexpr double outlet_limit_k = 353.15;
}  // namespace sequence

template <class Real>
[[nodiscard]] math::Mask<Real> is(const Real& code, Phase phase) {
    return code == Real(static_cast<double>(phase));
}
inline double code_of(Phase phase) {
    return static_cast<double>(phase);
}
inline double code_of(Event event) {
    return static_cast<double>(event);
}

template <class Real>
[[nodiscard]] math::Mask<Real> out_of_range(const Real& ohm) {
    return math::either(ohm > Real(sequence::greatest_ohm), ohm < Real(sequence::least_ohm));
}

/// The event of this tick (none mostly) and whether it leads to a retry.
template <class Real>
struct Verdict {
    Real event{0.0};
    Real retry{0.0};
};

/// Blowing the chamber clear with the gas shut, before lighting or as proof of a restart.
template <class Real>
[[nodiscard]] math::Mask<Real> purging(const WorkingState<Real>& s) {
    return math::either(is(s.phase, Phase::pre_purge), is(s.phase, Phase::restart));
}

/// Does the condition of a protection hold past its tolerance?
template <class Real>
[[nodiscard]] math::Mask<Real> tripped(Event event, const WorkingState<Real>& s,
                                       const signals::SensorSignals<Real>& in) {
    using math::both;
    const double limit = tolerated_s(event) - sequence::half_tick_s;
    const auto past = s.phase_s > Real(limit);
    switch (event) {
        case Event::air_path_restricted:
            return s.air_short_s > Real(limit);
        case Event::flame_lost:
            return both(math::either(is(s.phase, Phase::run), is(s.phase, Phase::prove)),
                        s.flame_missing_s > Real(limit));
        case Event::no_flame_at_light_up:
            return both(both(is(s.phase, Phase::light_up), past),
                        math::negate(s.ionisation_a > Real(sequence::flame_seen_a)));
        case Event::fan_speed_not_reached:
            return s.fan_short_s > Real(limit);
        case Event::flame_seen_before_gas:
            return s.flame_early_s > Real(limit);
        case Event::outlet_too_hot:
            return s.too_hot_s > Real(limit);
        case Event::inlet_sensor_out_of_range:
            return out_of_range(in.inlet_ohm);
        case Event::outlet_sensor_out_of_range:
            return out_of_range(in.outlet_ohm);
        case Event::exchanger_sensor_out_of_range:
            return out_of_range(in.exchanger_ohm);
        case Event::overheat_limiter_open:
            return in.limiter_closed < Real(0.5);
        case Event::none:
            break;
    }
    return s.phase < Real(-1.0);  // never
}

/// Walk the table; later rows win.
template <class Real>
[[nodiscard]] Verdict<Real> judge(const WorkingState<Real>& s,
                                  const signals::SensorSignals<Real>& in) {
    Verdict<Real> verdict;
    for (const Protection& row : protections) {
        const auto holds = tripped(row.event, s, in);
        verdict.event = math::select(holds, code_of(row.event), verdict.event);
        verdict.retry =
            math::select(holds, row.response == Response::retry ? 1.0 : 0.0, verdict.retry);
    }
    return verdict;
}

/// The next phase by the sequence alone, protections apart.
template <class Real>
[[nodiscard]] Real next_phase(const WorkingState<Real>& s) {
    using math::both;
    using math::select;
    const Real on = s.household_on;
    const auto wanted = s.flow_m3_per_s * on > Real(sequence::start_flow_m3_per_s);
    const auto unwanted = s.flow_m3_per_s * on < Real(sequence::stop_flow_m3_per_s);
    const auto flame = s.ionisation_a > Real(sequence::flame_seen_a);
    const auto purged =
        both(both(s.fan_rev_per_s > Real(sequence::purged_rev_per_s),
                  s.phase_s > Real(sequence::least_purge_s - sequence::half_tick_s)),
             math::negate(flame));
    const Real standby(code_of(Phase::standby)), pre(code_of(Phase::pre_purge)),
        light(code_of(Phase::light_up)), prove(code_of(Phase::prove)), run(code_of(Phase::run)),
        post(code_of(Phase::post_purge));
    Real next = s.phase;
    next = select(is(s.phase, Phase::standby), select(wanted, pre, standby), next);
    next = select(is(s.phase, Phase::pre_purge), select(unwanted, post, select(purged, light, pre)),
                  next);
    next = select(is(s.phase, Phase::light_up), select(unwanted, post, select(flame, prove, light)),
                  next);
    const auto proved = s.phase_s > Real(sequence::prove_s - sequence::half_tick_s);
    next =
        select(is(s.phase, Phase::prove), select(unwanted, post, select(proved, run, prove)), next);
    next = select(is(s.phase, Phase::run), select(unwanted, post, run), next);
    const auto purged_after = s.phase_s > Real(sequence::post_purge_s - sequence::half_tick_s);
    next = select(is(s.phase, Phase::post_purge),
                  select(wanted, pre, select(purged_after, standby, post)), next);
    const auto proved_clear = s.phase_s > Real(sequence::restart_purge_s - sequence::half_tick_s);
    return select(both(is(s.phase, Phase::restart), proved_clear), standby, next);
}

/// Timers of the conditions that protections watch.
template <class Real>
void time_conditions(WorkingState<Real>& s) {
    const auto burning = math::either(is(s.phase, Phase::run), is(s.phase, Phase::prove));
    const auto missing = math::both(burning, s.ionisation_a < Real(sequence::flame_gone_a));
    s.flame_missing_s = math::select(missing, s.flame_missing_s + signals::tick_s, 0.0);
    const auto early = math::both(purging(s), s.ionisation_a > Real(sequence::flame_seen_a));
    s.flame_early_s = math::select(early, s.flame_early_s + signals::tick_s, 0.0);
    const auto slow = math::either(
        math::both(purging(s), s.fan_rev_per_s < Real(sequence::purged_rev_per_s)),
        math::both(is(s.phase, Phase::run),
                   s.fan_rev_per_s < s.fan_target_rev_per_s * sequence::least_fan_share));
    s.fan_short_s = math::select(slow, s.fan_short_s + signals::tick_s, 0.0);
    const auto hot = s.outlet_k > Real(sequence::outlet_limit_k);
    s.too_hot_s = math::select(hot, s.too_hot_s + signals::tick_s, 0.0);
    const auto running = is(s.phase, Phase::run);
    s.run_s = math::select(running, s.run_s + signals::tick_s, 0.0);
    const auto good = s.run_s > Real(good_run_s);
    s.failed_light_ups = math::select(good, 0.0, s.failed_light_ups);
    s.plain_resets = math::select(good, 0.0, s.plain_resets);
    s.probation = math::select(good, 0.0, s.probation);
}

/// How many more times reset clears the standing lockout; very many where resets are not counted. A restart
/// that failed leaves its own event behind, but not a way round the proof that was owed before it.
template <class Real>
[[nodiscard]] Real resets_left(const WorkingState<Real>& s) {
    Real left(sequence::uncounted);
    for (const Protection& row : protections) {
        const double accepted = resets_accepted(row.cleared);
        if (accepted < 0.0) continue;
        left = math::select(s.event == Real(code_of(row.event)), accepted - s.plain_resets, left);
    }
    return math::select(s.restart_owed > Real(0.5), 0.0, left);
}

/// Record what the protections found and what follows from it. In a restart and in the first run after it
/// nothing is tried twice.
template <class Real>
[[nodiscard]] Real after_protections(ControllerState<Real>& s,
                                     const signals::SensorSignals<Real>& in, const Real& wanted,
                                     const math::Mask<Real>& powered) {
    using math::both;
    using math::either;
    using math::select;
    const Verdict<Real> verdict = judge(s, in);
    const auto judging = both(powered, math::negate(is(s.phase, Phase::lockout)));
    const auto happened = both(judging, verdict.event > Real(0.5));
    const auto retry = both(happened, verdict.retry > Real(0.5));
    s.failed_light_ups = s.failed_light_ups + select(retry, Real(1.0), 0.0);
    const auto exhausted =
        either(s.failed_light_ups > Real(most_failed_light_ups - 0.5), s.probation > Real(0.5));
    const auto lock = both(happened, either(math::negate(retry), exhausted));
    s.latest_event = select(happened, verdict.event, s.latest_event);
    s.event = select(lock, verdict.event, s.event);
    enter(s.history, select(happened, verdict.event, 0.0));
    return select(lock, code_of(Phase::lockout), select(retry, code_of(Phase::pre_purge), wanted));
}

/// Reset clears a lockout that accepts it. A deliberate restart leads from any lockout through its proof.
/// Without mains everything is forgotten but a lockout, the resets it was given, a proof that is owed and the
/// probation after one; a restart that was under way has not happened.
template <class Real>
[[nodiscard]] Real after_reset_and_power(WorkingState<Real>& s, const Panel& panel,
                                         const Real& wanted, const math::Mask<Real>& powered) {
    using math::both;
    using math::either;
    using math::negate;
    using math::select;
    const auto locked = both(powered, is(s.phase, Phase::lockout));
    const auto pressed = both(locked, Real(panel.reset_pressed) > Real(0.5));
    const Real left = resets_left(s);
    const auto reset = both(pressed, left > Real(0.5));
    const auto counted = both(reset, left < Real(0.5 * sequence::uncounted));
    const auto asked = both(locked, Real(panel.restart_asked) > Real(0.5));
    const auto restarted = both(is(s.phase, Phase::restart), is(wanted, Phase::standby));
    const auto owed = both(locked, negate(left > Real(0.5)));
    s.restart_owed = select(restarted, 0.0, select(owed, Real(1.0), s.restart_owed));
    s.plain_resets = s.plain_resets + select(counted, Real(1.0), 0.0);
    s.plain_resets = select(restarted, 0.0, s.plain_resets);
    s.probation = select(restarted, Real(1.0), s.probation);
    Real next = select(reset, code_of(Phase::standby), wanted);
    next = select(asked, code_of(Phase::restart), next);
    const auto kept = either(is(next, Phase::lockout), is(next, Phase::restart));
    const auto forgotten = both(negate(powered), negate(kept));
    next = select(forgotten, code_of(Phase::standby), next);
    next = select(both(negate(powered), kept), code_of(Phase::lockout), next);
    const auto cleared = either(both(reset, negate(asked)), either(restarted, forgotten));
    s.event = select(cleared, 0.0, s.event);
    s.failed_light_ups = select(cleared, 0.0, s.failed_light_ups);
    s.latest_event = select(powered, s.latest_event, s.event);
    return next;
}

/// Move on: sequence, then protections, then reset and power.
template <class Real>
void step_sequence(ControllerState<Real>& s, const signals::SensorSignals<Real>& in,
                   const Panel& panel) {
    using math::select;
    s.phase_s = s.phase_s + signals::tick_s;
    time_conditions<Real>(s);
    run_clock(s.history, s.powered);
    const auto powered = s.powered > Real(0.5);
    Real next = next_phase<Real>(s);
    next = after_protections(s, in, next, powered);
    next = after_reset_and_power<Real>(s, panel, next, powered);
    const auto moved = next != s.phase;
    s.phase_s = select(moved, 0.0, s.phase_s);
    const auto fresh = math::both(moved, is(next, Phase::pre_purge));
    s.loop_correction_k = select(fresh, 0.0, s.loop_correction_k);
    s.banks_open = select(fresh, 1.0, s.banks_open);
    // No bank change came before, so the first one need not wait.
    s.bank_hold_s = select(fresh, loop::bank_hold_s, s.bank_hold_s);
    s.phase = next;
}

}  // namespace emberpath::controller
