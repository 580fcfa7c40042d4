#pragma once
/// A house whose heater has a fault, drawn from while its events are noted: what the tests of causes need.

#include <cmath>
#include <optional>
#include <string>

#include "sim/faults/faults.hpp"
#include "sim/worksite/site_state.hpp"
#include "tests/laws/premises.hpp"

namespace emberpath::laws {

class FaultyHouse {
  public:
    FaultyHouse(faults::Cause cause, double severity, bool propane = false)
        : FaultyHouse(cause, severity, Premises{propane}) {}
    FaultyHouse(faults::Cause cause, double severity, const Premises& premises)
        : premises_(premises),
          house_(furnished(premises)),
          healthy_(house_.heater.plant.parameters),
          settings_(house_.heater.settings) {
        become(cause, severity);
        plant::settle_cold(house_.heater.plant, house_.inputs.surroundings);
        run(2.0);
    }

    /// The fault changes to this one while everything goes on.
    void become(faults::Cause cause, double severity) {
        const faults::Fault fault{cause, severity};
        house_.heater.install(0, {faults::with_fault(healthy_, fault, 0.0),
                                  faults::with_fault(settings_, fault, 0.0)});
    }
    void open_taps(double asked_lpm) {
        // The taps were chosen for the house when it was sound.
        draw(house_.inputs, healthy_, premises_, asked_lpm);
        opened_s_ = time_s();
    }
    void run(double seconds) {
        const long ticks = std::lround(seconds / signals::tick_s);
        for (long i = 0; i < ticks; ++i) tick();
    }
    void press_reset() {
        house_.inputs.panel.reset_pressed = 1.0;
        tick();
        house_.inputs.panel.reset_pressed = 0.0;
        first_event_.reset();
        locked_after_s_.reset();
    }
    /// Start counting from now.
    void note_from_here() {
        opened_s_ = time_s();
        first_event_.reset();
        locked_after_s_.reset();
    }

    [[nodiscard]] worksite::HeaterView look() const { return house_.look(); }
    /// As instruments last saw it burning; a lockout leaves nothing to read.
    [[nodiscard]] const worksite::HeaterView& last_burning() const { return last_burning_; }
    [[nodiscard]] controller::Event latest_event() const { return look().readout.latest_event; }
    [[nodiscard]] bool locked_out() const {
        return look().readout.phase == controller::Phase::lockout;
    }
    /// Seconds after the taps opened until the first event, and until the lockout.
    [[nodiscard]] std::optional<double> first_event_s() const { return first_event_; }
    [[nodiscard]] std::optional<double> locked_after_s() const { return locked_after_s_; }

  private:
    Premises premises_;
    House house_;
    plant::PlantParameters healthy_;
    controller::Settings settings_;
    worksite::Gusts gusts_{1, 8.0};
    long ticks_ = 0;
    double opened_s_ = 0.0;
    std::optional<double> first_event_, locked_after_s_;
    double failures_ = 0.0;
    worksite::HeaterView last_burning_{};

    [[nodiscard]] double time_s() const { return static_cast<double>(ticks_) * signals::tick_s; }
    void tick() {
        if (house_.heater.controller.phase == static_cast<double>(controller::Phase::run) &&
            ticks_ % 2 == 0)
            last_burning_ = look();
        auto& at = house_.inputs.surroundings;
        at.time_s = time_s();
        at.gust_shape = gusts_.shape_at(at.time_s);
        at.electrical.pump_running = worksite::pump_runs_at(at.time_s);
        const bool was_locked =
            house_.heater.controller.phase == static_cast<double>(controller::Phase::lockout);
        house_.heater.tick(house_.inputs);
        ++ticks_;
        const auto& c = house_.heater.controller;
        const bool locked = c.phase == static_cast<double>(controller::Phase::lockout);
        const bool happened = c.failed_light_ups > failures_ || (locked && !was_locked);
        failures_ = c.failed_light_ups;
        if (happened && !first_event_) first_event_ = time_s() - opened_s_;
        if (locked && !was_locked) locked_after_s_ = time_s() - opened_s_;
    }
};

}  // namespace emberpath::laws
