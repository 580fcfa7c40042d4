#include "sim/scoring/complaint_watch.hpp"

namespace emberpath::scoring {

namespace {
constexpr double clears_s = 25.0;  // before that a cold tap is nobody's complaint
constexpr double fine_within_k = 3.0;
constexpr double cold_below_k = 12.0;
constexpr double hot_above_k = 4.0;
constexpr double noticed_s = 5.0;  // shorter lapses pass unnoticed
constexpr double late_s = 180.0;
}  // namespace

void ComplaintWatch::end_draw() {
    if (spoilt_at_s_ >= 0.0) {
        if (spoilt_at_s_ >= late_s)
            ++went_cold_late_;
        else
            ++dropped_out_;
    }
    open_s_ = fine_run_s_ = bad_run_s_ = 0.0;
    spoilt_at_s_ = -1.0;
    was_fine_ = false;
}

void ComplaintWatch::step(bool drawing, bool burning, double tap_k, double set_k) {
    if (!drawing) {
        if (open_s_ > 0.0) end_draw();
        return;
    }
    open_s_ += 1.0;
    if (open_s_ <= clears_s) return;
    const double short_k = set_k - tap_k;
    const bool cold = short_k > cold_below_k || (!burning && short_k > fine_within_k);
    const bool cool = !cold && short_k > fine_within_k;
    const bool hot = short_k < -hot_above_k;
    (cold ? cold_s_ : cool ? cool_s_ : hot ? hot_s_ : fine_s_) += 1.0;
    fine_run_s_ = cold || cool ? 0.0 : fine_run_s_ + 1.0;
    bad_run_s_ = cold || cool ? bad_run_s_ + 1.0 : 0.0;
    was_fine_ = was_fine_ || fine_run_s_ >= 10.0;
    if (was_fine_ && bad_run_s_ >= noticed_s && spoilt_at_s_ < 0.0) spoilt_at_s_ = open_s_;
}

worksite::Complaint ComplaintWatch::verdict() const {
    using worksite::Complaint;
    ComplaintWatch ended = *this;
    ended.end_draw();
    const double total = fine_s_ + cool_s_ + cold_s_ + hot_s_;
    if (total <= 0.0) return Complaint::none;
    if (cold_s_ > 0.8 * total) return Complaint::no_hot_water;
    if (ended.went_cold_late_ > 0) return Complaint::goes_cold_after_a_while;
    if (ended.dropped_out_ > 0) return Complaint::drops_out_now_and_then;
    if (hot_s_ > 0.25 * total) return Complaint::too_hot;
    return cool_s_ + cold_s_ > 0.25 * total ? Complaint::not_hot_enough : Complaint::none;
}

}  // namespace emberpath::scoring
