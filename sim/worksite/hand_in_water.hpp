#pragma once
/// A hand held in running water, tick by tick: what any five seconds of it take of a burn. On leaving and in the day
/// after it is the same hand.
/// Checked   tests/unit/worksite/hand_in_water_test.cpp

#include <array>
#include <cstddef>

#include "sim/exposure/scald.hpp"
#include "sim/worksite/site_state.hpp"

namespace emberpath::worksite {

class HandInWater {
  public:
    /// Share of a burn that blisters, of the five seconds up to now: 1 is a burn. Ticks before the first are cold.
    double hold(double water_k) {
        constexpr double burns_above_k = 316.15;  // the table of burns begins there
        shares_[at_] = water_k < burns_above_k
                           ? 0.0
                           : exposure::burn_share(exposure::Burn::second_degree, water_k, tick_s);
        at_ = (at_ + 1) % ticks;
        double sum = 0.0;
        for (const double one : shares_) sum += one;
        return sum;
    }

  private:
    static constexpr std::size_t ticks = 50;
    std::array<double, ticks> shares_{};
    std::size_t at_ = 0;
};

}  // namespace emberpath::worksite
