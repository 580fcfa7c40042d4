#pragma once
/// Operating modes into which a trainee could bring the heater from the state it is found in. Forked
/// shadows run through them once, at arrival, so that the best reading not taken can be named.

#include <cstddef>
#include <string_view>
#include <vector>

#include "sim/worksite/job.hpp"
#include "sim/worksite/observation.hpp"

namespace emberpath::scoring {

struct Mode {
    std::string_view title;                                // "at full draw"
    double minutes = 0.0;                                  // what bringing the heater into it costs
    std::int64_t ticks = 0;                                // length
    double tap_share = 0.0;                                // of all hot taps' conductance
    bool press_reset = false;                              // at the start
    controller::Phase phase = controller::Phase::standby;  // condition its readings are taken under
    bool worst_draught = false;  // every extraction fan runs, windows and doors are shut
};

/// As found, low draw, full draw, a light-up attempt; at cylinder sites also a long full draw; where an open flue
/// shares its room with an extraction fan, a full draw against the fan.
[[nodiscard]] std::vector<Mode> modes(const worksite::Job& job);

/// Inputs of tick `tick` of a mode: the inputs at arrival with everything open, powered and on, no
/// household events, and gusts of the common shape (2 s in every 8 s).
[[nodiscard]] worksite::TickInputs mode_inputs(const worksite::Job& job, const Mode& mode,
                                               const worksite::TickInputs& at_arrival,
                                               std::int64_t tick);

/// Instruments that have had time to settle on a heater: gauges at its present values.
[[nodiscard]] worksite::Senses settled_senses(const worksite::HeaterView& heater);

/// Tools as they would be for any reading: probe in the flue, eyes and ears open, nothing else moved.
[[nodiscard]] worksite::ToolSetup ready_tools();

/// Can this quantity be read at the site at all, and is it a reading worth proposing?
[[nodiscard]] bool can_be_proposed(worksite::Quantity quantity, const worksite::Job& job);
/// Likewise for what a trainee could have looked at, which the reference technician does not yet use. Who says
/// that something could not have been known asks this.
[[nodiscard]] bool could_be_read(worksite::Quantity quantity, const worksite::Job& job);

/// Is it taken at a heater that is isolated and open? A resistance under voltage is no resistance, and nobody looks
/// behind the cover of a burner that runs: the site trusts no such figure, or counts it as live work.
[[nodiscard]] bool needs_isolated_heater(worksite::Quantity quantity);
/// Can hands take it while the heater is in this mode?
[[nodiscard]] bool can_be_taken_in(const Mode& mode, worksite::Quantity quantity);

}  // namespace emberpath::scoring
