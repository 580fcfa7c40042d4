#pragma once
/// A small house with one true heater, driven by hand: the history, taps, tools and readings that tests
/// of scoring need, without the trainee's language.

#include <cmath>
#include <utility>

#include "sim/math/random.hpp"
#include "sim/scoring/bank.hpp"
#include "sim/scoring/tape.hpp"
#include "sim/worksite/heater.hpp"
#include "sim/worksite/job.hpp"

namespace emberpath::scoring {

/// A kitchen tap and a shower; seven minutes of history with two draws before arrival.
inline worksite::Job plain_job(worksite::GasKind gas) {
    worksite::Job job;
    job.name = "plain";
    job.site.gas = gas;
    const double per_litre_per_min = 5.270463e-7;  // m3/s per sqrt(Pa) of 1 L/min per sqrt(kPa)
    job.site.taps = {{"kitchen tap", 0.45 * per_litre_per_min, false},
                     {"shower", 0.60 * per_litre_per_min, false}};
    job.site.arrival_s = 420.0;
    job.healthy = gas == worksite::GasKind::natural_gas ? plant::natural_gas_parameters()
                                                        : plant::propane_parameters();
    job.settings.full_manifold_pa = job.healthy.full_manifold_pa;
    return job;
}

class DrivenHouse {
  public:
    DrivenHouse(worksite::Job job, std::uint64_t seed)
        : job_(std::move(job)), random_(seed, "instruments") {
        heater_.settings = job_.settings;
        inputs_.panel = job_.panel;
        inputs_.surroundings.mains_water_pa = job_.site.mains_water_pa;
        inputs_.surroundings.inlet_water_k = job_.site.inlet_water_k;
        inputs_.surroundings.ambient_k = job_.site.ambient_k;
        inputs_.surroundings.cylinder_ambient_k = job_.site.ambient_k;
        set_parameters();
        plant::settle_cold(heater_.plant, inputs_.surroundings);
    }

    /// Cold, a long draw at full, a pause, a shorter one at the kitchen tap, a pause.
    void live_until_arrival() {
        run(30.0);
        open_taps(1.0);
        run(180.0);
        open_taps(0.0);
        run(60.0);
        open_taps(0.4);
        run(60.0);
        open_taps(0.0);
        run(90.0);
        recorder_.arrived();
    }
    void run(double seconds) {
        for (int i = 0; i < static_cast<int>(std::lround(seconds * 10.0)); ++i) tick();
    }
    void open_taps(double share) {
        double all = 0.0;
        for (const worksite::Tap& tap : job_.site.taps) all += tap.conductance;
        inputs_.surroundings.hot_tap_conductance = share * all;
        inputs_.surroundings.outlet_count = 0;
        ++epoch_;
    }
    /// One outlet alone; the others are shut.
    void open_tap_alone(std::size_t tap) {
        inputs_.surroundings.hot_tap_conductance = 0.0;
        inputs_.surroundings.outlets[0] = {tap, job_.site.taps[tap].conductance, 0.0, 0.0};
        inputs_.surroundings.outlet_count = 1;
        ++epoch_;
    }
    void press_reset() {
        inputs_.panel.reset_pressed = 1.0;
        tick();
        inputs_.panel.reset_pressed = 0.0;
        ++epoch_;
    }
    void tools(const worksite::ToolSetup& setup) {
        if ((setup.watching && !tools_.watching) || (setup.listening && !tools_.listening))
            senses_.start_watching();
        tools_ = setup;
        recorder_.tools(setup, false);
    }
    /// Reads with the instrument's own error and resolution.
    double read(worksite::Quantity quantity, worksite::Hold hold = worksite::Hold::now) {
        const worksite::QuantityInfo& row = worksite::info(quantity);
        double value = worksite::value_of(quantity, hold, seen(), senses_, inputs_, tools_);
        if (!row.categorical) {
            value += (row.error_absolute + row.error_relative * std::abs(value)) * random_.normal();
            value = row.resolution * std::round(value / row.resolution);
        }
        worksite::Observation o;
        o.number = static_cast<int>(recorder_.tape().observations.size()) + 1;
        o.tick = ticks_;
        o.quantity = quantity;
        o.hold = hold;
        o.watched_s = 10.0;
        o.value = value;
        o.condition = {seen().readout.phase, epoch_, true};
        recorder_.observed(o);
        return value;
    }
    void remedy(faults::Remedy remedy) {
        std::erase_if(job_.faults, [&](const faults::Fault& fault) {
            return faults::info(fault.cause).remedy == remedy;
        });
        set_parameters();
        recorder_.remedied(remedy);
        ++epoch_;
    }

    [[nodiscard]] const worksite::Job& job() const { return job_; }
    [[nodiscard]] const Tape& tape() const { return recorder_.tape(); }
    [[nodiscard]] worksite::HeaterView seen() const { return worksite::view(heater_, 0, inputs_); }
    [[nodiscard]] Recorder& recorder() { return recorder_; }

  private:
    void set_parameters() {
        heater_.install(0,
                        worksite::installation_of(job_, job_.faults, inputs_.surroundings.time_s));
    }
    void tick() {
        inputs_.surroundings.time_s = 0.1 * static_cast<double>(++ticks_);
        // Gusts: two seconds in about eight, with the common seeded jitter left out.
        inputs_.surroundings.gust_shape = ticks_ % 83 < 20 ? 1.0 : 0.0;
        recorder_.tick(inputs_);
        heater_.tick(inputs_);
        if (!worksite::at_rest(tools_)) senses_.step(seen(), tools_);
    }

    worksite::Job job_;
    math::Random random_;
    Recorder recorder_;
    worksite::Heater<double> heater_;
    worksite::TickInputs inputs_;
    worksite::Senses senses_;
    worksite::ToolSetup tools_;
    std::int64_t ticks_ = 0;
    std::uint32_t epoch_ = 0;
};

/// All shadows over the whole tape on up to `threads` threads; none of them sleeps.
inline Shadows run_shadows(const worksite::Job& job, const Tape& tape, int threads) {
    Bank bank(job, threads);
    bank.live_until(tape, tape.events.size());
    return bank.shadows();
}

}  // namespace emberpath::scoring
