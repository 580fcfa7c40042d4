#pragma once
/// A second heater with the same faults that hears only what a follower hears. If it predicts every reading
/// within the instrument's error, shadows can be run from what an attempt tells.

#include <cmath>
#include <string>
#include <vector>

#include "sim/worksite/attempt.hpp"

namespace emberpath::worksite {

class Twin : public Follower {
  public:
    explicit Twin(Job job) : job_(std::move(job)), faults_(job_.faults) {
        heater_.settings = job_.settings;
    }

    void tick(const TickInputs& inputs) override {
        inputs_ = inputs;
        set_parameters();
        if (ticks++ == 0) plant::settle_cold(heater_.plant, inputs.surroundings);
        heater_.tick(inputs);
        senses_.step(view(heater_, 0, inputs_), setup_);
    }
    void tools(const ToolSetup& setup, bool hold_cleared) override {
        if ((setup.watching && !setup_.watching) || (setup.listening && !setup_.listening))
            senses_.start_watching();
        setup_ = setup;
        if (hold_cleared) senses_.clear_holds();
    }
    void remedied(faults::Remedy remedy) override {
        std::erase_if(faults_, [&](const faults::Fault& f) {
            return faults::info(f.cause).remedy == remedy;
        });
        set_parameters();
    }
    void cylinder_changed() override {
        plant::change_cylinder(heater_.plant, inputs_.surroundings);
    }
    void altered(const Alterations& alterations) override {
        alterations_ = alterations;
        set_parameters();
    }
    void arrived() override { ++arrivals; }

    void observed(const Observation& seen) override {
        ++observations;
        if (seen.quantity == Quantity::complaint_heard) return;
        const auto& row = info(seen.quantity);
        const double predicted =
            value_of(seen.quantity, seen.hold, view(heater_, 0, inputs_), senses_, inputs_, setup_);
        const double scale = row.error_absolute + row.error_relative * std::abs(predicted);
        // The manometer's own zero is off until somebody zeroes it; the paths here do.
        const double allowed = row.categorical ? 0.0 : 6.0 * scale + row.resolution;
        if (std::abs(seen.value - predicted) > allowed)
            wrong += std::string(row.word) + " " + text_of(seen.quantity, seen.value) + " for " +
                     text_of(seen.quantity, predicted) + "; ";
    }

    int ticks = 0, arrivals = 0, observations = 0;
    std::string wrong;

  private:
    void set_parameters() {
        heater_.install(0,
                        installation_of(job_, faults_, inputs_.surroundings.time_s, alterations_));
    }

    Job job_;
    std::vector<faults::Fault> faults_;
    Heater<double> heater_;
    Senses senses_;
    ToolSetup setup_;
    TickInputs inputs_;
    Alterations alterations_;
};

}  // namespace emberpath::worksite
