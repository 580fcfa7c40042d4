#pragma once
/// What a household would complain of, from the water it got. One for the true house; one per shadow.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "sim/worksite/job.hpp"

namespace emberpath::worksite {

/// Follows draws of hot water. A draw lasts while a hot tap is open; what counts is the water after the
/// first twenty seconds. Hot enough is within 5 K of the set point, cold is under 35 °C: chosen.
class Household {
  public:
    /// Once a tick: is a hot tap open, temperature at the tap [K], set point [K].
    void follow(bool drawing, double tap_water_k, double set_point_k);
    /// What all draws so far would be called.
    [[nodiscard]] Complaint complaint() const;

  private:
    void finish_draw();
    std::int64_t draw_ticks_ = 0;
    std::int64_t hot_ticks_ = 0, cool_ticks_ = 0, cold_ticks_ = 0, scald_ticks_ = 0;  // of the draw
    std::int64_t cold_run_ = 0;      // cold without a break, now
    bool failed_after_hot_ = false;  // of the draw
    bool hot_again_ = false;         // came back within the draw
    int good_ = 0, never_hot_ = 0, never_in_a_row_ = 0, cool_ = 0, faded_late_ = 0, dropped_ = 0;
    int scalding_ = 0;
};

/// Runs the history of a job and says what it would be called. Takes as long as the history.
[[nodiscard]] Complaint simulated_complaint(const Job& job, std::uint64_t seed);
/// "no hot water", "too hot" ...: as scenario files spell it.
[[nodiscard]] std::string_view complaint_word(Complaint complaint);

/// What in a job contradicts its own physics or gives its cause away, in sentences: a complaint that the
/// history does not show, a household with no reason to call, words that name the cause. Runs the history
/// twice.
[[nodiscard]] std::vector<std::string> doubts_about(const Job& job);

}  // namespace emberpath::worksite
