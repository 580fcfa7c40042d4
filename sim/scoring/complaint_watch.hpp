#pragma once
/// What a household under one heater would have complained of: fed once a second while a hot tap runs.
/// Thresholds are chosen; people describe loosely, so the score treats a complaint as weak evidence.

#include "sim/worksite/heater.hpp"
#include "sim/worksite/job.hpp"

namespace emberpath::scoring {

class ComplaintWatch {
  public:
    /// One second of a household's day.
    void step(bool drawing, bool burning, double tap_k, double set_k);
    [[nodiscard]] worksite::Complaint verdict() const;

  private:
    void end_draw();
    // Seconds with the tap open, after the pipe has cleared.
    double fine_s_ = 0.0, cool_s_ = 0.0, cold_s_ = 0.0, hot_s_ = 0.0;
    int went_cold_late_ = 0, dropped_out_ = 0;
    // The draw under way.
    double open_s_ = 0.0, fine_run_s_ = 0.0, bad_run_s_ = 0.0;
    double spoilt_at_s_ = -1.0;
    bool was_fine_ = false;
};

}  // namespace emberpath::scoring
