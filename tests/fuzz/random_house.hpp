#pragma once
/// One house in which anything may happen: shipped site and heater, some at a height, with an air tube, an open or
/// balanced flue or a companion heater that the site has not, up to three causes of the catalogue at random
/// severities and times, and hands that turn everything a hand can turn. For the fuzz tests of plant and controller.

#include <string>
#include <vector>

#include "sim/math/random.hpp"
#include "sim/worksite/attempt.hpp"
#include "sim/worksite/heater.hpp"

namespace emberpath::fuzz {

class RandomHouse {
  public:
    RandomHouse(const worksite::Job& job, std::uint64_t seed);
    /// Something changes: a tap, a valve, the weather, a switch, a setting, a cause. Returns for how many ticks it
    /// is worth watching.
    std::uint64_t act();
    void tick();
    [[nodiscard]] const worksite::Heater<double>& heater() const { return heater_; }
    [[nodiscard]] const worksite::TickInputs& inputs() const { return inputs_; }
    /// What was wrong with the house and how it stood, for a failing test to print.
    [[nodiscard]] std::string describe() const;

  private:
    void act_on_water();
    void act_on_gas();
    void act_on_weather();
    void act_on_electricity();
    void act_on_panel();
    void act_on_alterations();
    void act_on_causes();
    void set_right();
    void furnish();
    void add_cause();
    void install();
    [[nodiscard]] double between(double low, double high);
    [[nodiscard]] bool chance(double share);
    /// Mostly an end of its range, sometimes in between: 0 to 1.
    [[nodiscard]] double opening();

    worksite::Job job_;
    math::Random random_;
    worksite::Heater<double> heater_{};
    worksite::TickInputs inputs_{};
    worksite::Alterations alterations_{};
    std::vector<faults::Fault> faults_;
    std::int64_t ticks_ = 0;
};

}  // namespace emberpath::fuzz
