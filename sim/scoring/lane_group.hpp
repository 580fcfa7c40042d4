#pragma once
/// A group of shadows (Real = Pack<8>) or one heater (Real = double) that lives through a tape.

#include <array>
#include <span>
#include <vector>

#include "sim/math/pack.hpp"
#include "sim/scoring/shadow_bank.hpp"
#include "sim/worksite/complaint.hpp"
#include "sim/worksite/heater_lanes.hpp"
#include "sim/worksite/outlets.hpp"

namespace emberpath::scoring {

/// What a lane is: its faults while they last, and its column in the results.
struct LaneRole {
    std::vector<faults::Fault> faults;
    std::size_t column = 0;
    bool wanted = true;  // false: fills up a pack
};

template <class Real>
class LaneGroup {
  public:
    static constexpr std::size_t width = math::lanes<Real>;
    static constexpr int ticks_per_look = 10;

    LaneGroup(const worksite::Job& job, std::array<LaneRole, width> roles)
        : job_(job), roles_(std::move(roles)) {}

    /// Runs the tape to its end (or to arrival) and fills this group's columns of `out`.
    void live_through(const Tape& tape, Shadows& out, bool only_to_arrival) {
        for (const Tape::Event& event : tape.events) {
            happen(tape, event, out);
            if (only_to_arrival && event.kind == Tape::Kind::arrival) return;
        }
    }

    /// Events `first` to `last` (not included) of a tape that has grown since.
    void live_on(const Tape& tape, std::size_t first, std::size_t last, Shadows& out) {
        for (std::size_t i = first; i < last; ++i) happen(tape, tape.events[i], out);
    }

    /// One lane takes over everything of a lane of another group that has lived through the same tape.
    void adopt(std::size_t lane, const LaneGroup& from, std::size_t from_lane) {
        roles_[lane] = from.roles_[from_lane];
        moving_[lane] = from.moving_[from_lane];
        senses_[lane] = from.senses_[from_lane];
        households_[lane] = from.households_[from_lane];
        worksite::adopt_lane(heater_, lane, from.heater_, from_lane);
    }
    /// The lane goes on and nobody asks what it shows.
    void only_fill(std::size_t lane) { roles_[lane].wanted = false; }

  private:
    void happen(const Tape& tape, const Tape::Event& event, Shadows& out) {
        switch (event.kind) {
            case Tape::Kind::tick:
                return tick(tape.ticks[event.index]);
            case Tape::Kind::tools:
                return take(tape.tools[event.index]);
            case Tape::Kind::remedy:
                return cure(static_cast<faults::Remedy>(event.index));
            case Tape::Kind::cylinder:
                return plant::change_cylinder(heater_.plant, inputs_.surroundings);
            case Tape::Kind::alteration:
                return alter(tape.alterations[event.index]);
            case Tape::Kind::observation:
                return predict(tape.observations[event.index], out.observed[event.index]);
            case Tape::Kind::arrival:
                return arrive(out);
            case Tape::Kind::mark:
                return snapshot(heater_, inputs_, nullptr, out.passive[event.index]);
        }
    }

    [[nodiscard]] worksite::Installation installation_of(
        std::size_t lane, double time_s, const worksite::Alterations& alterations) const {
        return worksite::installation_of(job_, roles_[lane].faults, time_s, alterations);
    }
    void install(std::size_t lane, double time_s) {
        heater_.install(lane, installation_of(lane, time_s, alterations_));
    }

    void tick(const worksite::TickInputs& inputs) {
        const double time_s = inputs.surroundings.time_s;
        for (std::size_t i = 0; i < width; ++i)
            if (moving_[i] || !settled_) {
                install(i, time_s);
                moving_[i] = faults::changes_after(roles_[i].faults, time_s);
            }
        if (!settled_) plant::settle_cold(heater_.plant, inputs.surroundings);
        settled_ = true;
        inputs_ = inputs;
        heater_.tick(inputs);
        ++ticks_;
        if (!worksite::at_rest(tools_)) follow(heater_, inputs, tools_, senses_);
        if (!arrived_ && ticks_ % ticks_per_look == 0) watch_household();
    }

    // What attached instruments follow is a small part of what can be seen, and the lanes show it together; a meter
    // that logs a voltage (ToolSetup::meter) needs it all, lane by lane.
    static void follow(const worksite::Heater<Real>& heater, const worksite::TickInputs& inputs,
                       const worksite::ToolSetup& tools,
                       std::array<worksite::Senses, width>& senses) {
        if (tools.meter != worksite::Quantity::display_word) {
            for (std::size_t i = 0; i < width; ++i)
                senses[i].step(worksite::view(heater, i, inputs), tools);
            return;
        }
        const plant::Gauges<Real> gauges = plant::gauges(heater.plant, inputs.surroundings);
        worksite::HeaterView seen{};
        for (std::size_t i = 0; i < width; ++i) {
            plant::take_lane(gauges, i, seen.plant);
            senses[i].step(seen, tools);
        }
    }

    // Once a second is often enough for a household; it counts ticks.
    void watch_household() {
        const bool drawing = worksite::hot_water_is_drawn(inputs_.surroundings);
        for (std::size_t i = 0; i < width; ++i) {
            const double tap_k =
                drawing ? worksite::drawn_water_k(worksite::view(heater_, i, inputs_).plant,
                                                  inputs_.surroundings)
                        : 0.0;
            for (int k = 0; k < ticks_per_look; ++k)
                households_[i].follow(drawing, tap_k, inputs_.panel.set_point_k);
        }
    }

    void take(const Tape::Tools& tools) {
        const bool begins = (tools.setup.watching && !tools_.watching) ||
                            (tools.setup.listening && !tools_.listening);
        tools_ = tools.setup;
        for (std::size_t i = 0; i < width; ++i) {
            if (begins) senses_[i].start_watching();
            if (tools.hold_cleared) senses_[i].clear_holds();
            // Gauges that are put away go to rest now; attached ones start with the next tick.
            if (worksite::at_rest(tools_))
                senses_[i].step(worksite::view(heater_, i, inputs_), tools_);
        }
    }

    void cure(faults::Remedy remedy) {
        for (std::size_t i = 0; i < width; ++i) {
            const auto cured = [&](const faults::Fault& fault) {
                return faults::info(fault.cause).remedy == remedy;
            };
            if (std::erase_if(roles_[i].faults, cured) > 0) install(i, inputs_.surroundings.time_s);
        }
        if (remedy == faults::Remedy::replace_leaking_tube) plant::dry_casing(heater_.plant);
    }

    void alter(const worksite::Alterations& alterations) {
        alterations_ = alterations;
        for (std::size_t i = 0; i < width; ++i) install(i, inputs_.surroundings.time_s);
    }

    /// A sensor under the multimeter is read at its own leads, unplugged or not.
    [[nodiscard]] worksite::HeaterView at_the_leads(std::size_t lane) const {
        alignas(64) worksite::Heater<Real> copy = heater_;
        worksite::Alterations plugged = alterations_;
        plugged.sensor_unplugged = {};
        copy.install(lane, installation_of(lane, inputs_.surroundings.time_s, plugged));
        return worksite::view(copy, lane, inputs_);
    }

    void predict(const worksite::Observation& observation, std::vector<double>& row) const {
        const bool leads = worksite::info(observation.quantity).tool == worksite::Tool::multimeter;
        for (std::size_t i = 0; i < width; ++i) {
            if (!roles_[i].wanted) continue;
            row[roles_[i].column] =
                worksite::value_of(observation.quantity, observation.hold,
                                   leads ? at_the_leads(i) : worksite::view(heater_, i, inputs_),
                                   senses_[i], inputs_, tools_);
        }
    }

    void arrive(Shadows& out) {
        arrived_ = true;
        const std::vector<Mode> all = modes(job_);
        for (std::size_t m = 0; m < all.size(); ++m) run_mode(all[m], out.signatures[m]);
        for (std::size_t i = 0; i < width; ++i)
            if (roles_[i].wanted) out.complaints[roles_[i].column] = households_[i].complaint();
    }

    void run_mode(const Mode& mode, Snapshot& out) const {
        alignas(64) worksite::Heater<Real> fork = heater_;
        std::array<worksite::Senses, width> watchers;
        worksite::TickInputs inputs = inputs_;
        const worksite::ToolSetup tools = ready_tools();
        const std::int64_t watched_ticks = 200;  // the last 20 s, or all of a light-up attempt
        for (std::int64_t t = 0; t < mode.ticks; ++t) {
            inputs = mode_inputs(job_, mode, inputs_, t);
            fork.tick(inputs);
            if (t >= mode.ticks - watched_ticks) follow(fork, inputs, tools, watchers);
        }
        snapshot(fork, inputs, &watchers, out);
    }

    void snapshot(const worksite::Heater<Real>& heater, const worksite::TickInputs& inputs,
                  const std::array<worksite::Senses, width>* watchers, Snapshot& out) const {
        for (std::size_t i = 0; i < width; ++i) {
            if (!roles_[i].wanted) continue;
            const worksite::HeaterView seen = worksite::view(heater, i, inputs);
            worksite::Senses senses = settled_senses(seen);
            if (watchers != nullptr) {
                senses.flame_seen = (*watchers)[i].flame_seen;
                senses.spark_seen = (*watchers)[i].spark_seen;
                senses.flame_unrest = (*watchers)[i].flame_unrest;
                senses.air_ratio = (*watchers)[i].air_ratio;
            }
            for (std::size_t q = 0; q < worksite::quantity_count; ++q) {
                const auto quantity = static_cast<worksite::Quantity>(q);
                out.set(quantity, roles_[i].column,
                        worksite::value_of(quantity, worksite::Hold::now, seen, senses, inputs,
                                           ready_tools()));
            }
        }
    }

    const worksite::Job& job_;
    std::array<LaneRole, width> roles_;
    std::array<bool, width> moving_{};
    // Wide instructions ask for more than this file's own compiler settings would give.
    alignas(64) worksite::Heater<Real> heater_{};
    std::array<worksite::Senses, width> senses_{};
    std::array<worksite::Household, width> households_{};
    worksite::ToolSetup tools_{};
    worksite::Alterations alterations_{};
    worksite::TickInputs inputs_{};
    std::int64_t ticks_ = 0;
    bool settled_ = false, arrived_ = false;
};

}  // namespace emberpath::scoring
