#pragma once
/// Counts the ticks of an attempt that is simulated up to a moment, for a ruler that fills.

#include "sim/worksite/tick_follower.hpp"
#include "ui/desktop/host.hpp"

namespace emberpath::app {

/// Given to an attempt, it must outlive it.
class TickCount final : public worksite::TickFollower {
  public:
    /// `all_s`: simulated time up to that moment.
    TickCount(desktop::Progress& progress, double all_s) : progress_(&progress), all_s_(all_s) {
        progress.minutes = all_s / 60.0;
        progress.share = 0.0;
    }
    /// The moment is reached: what comes after it is not counted, and the progress may go.
    void reached() { progress_ = nullptr; }

    void tick(const worksite::TickInputs&) override {
        constexpr double tick_s = 0.1;
        if (progress_ != nullptr)
            progress_->share = tick_s * static_cast<double>(++ticks_) / all_s_;
    }

  private:
    desktop::Progress* progress_;
    double all_s_;
    std::int64_t ticks_ = 0;
};

}  // namespace emberpath::app
