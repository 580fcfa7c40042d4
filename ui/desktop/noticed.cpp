#include "ui/desktop/noticed.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace emberpath::desktop {

int Level::change(double value, std::int64_t tick) {
    constexpr double noticed = 0.15;          // of its height: more than two semitones
    constexpr double still = 0.03;            // of its height: an ear takes it for the same
    constexpr std::int64_t still_ticks = 20;  // two seconds
    const bool after_a_wait = tick - std::exchange(last_, tick) >= still_ticks;
    if (value < audible_) {
        said_.reset();
        steady_ = 0.0;
        since_ = tick;
        return 0;
    }
    if (std::abs(value - steady_) > still * steady_) {
        steady_ = value;
        since_ = tick;
    }
    if (!after_a_wait && tick - since_ < still_ticks) return 0;
    const double before = std::exchange(said_, said_.value_or(value)).value_or(value);
    if (std::abs(value - before) <= noticed * before) return 0;
    said_ = value;
    return value > before ? 1 : -1;
}

std::vector<std::string> Watcher::changes(const worksite::Sight& now, std::int64_t tick) {
    std::vector<std::string> said(
        now.noticed.begin() +
            std::min(std::ssize(now.noticed), static_cast<std::ptrdiff_t>(noticed_lines_)),
        now.noticed.end());
    noticed_lines_ = now.noticed.size();
    // Whoever comes back in does not hear what began or ended meanwhile.
    if (now.outside || before_.outside) {
        before_ = now;
        return said;
    }
    const int pitch = pitch_.change(now.fan_rev_per_s, tick),
              roar = roar_.change(now.flame_share, tick);
    const auto before = std::exchange(before_, now);
    const auto word = [](const worksite::Sight& s) {
        return std::string(
            worksite::category_word(worksite::Quantity::display_word, s.display_word));
    };
    if (word(before) != word(now)) said.push_back("The display shows " + word(now) + ".");
    const bool fan = now.fan_rev_per_s > audible_rev_per_s,
               fan_before = before.fan_rev_per_s > audible_rev_per_s;
    if (fan != fan_before) said.emplace_back(fan ? "The fan starts." : "The fan stops.");
    if (pitch != 0)
        said.emplace_back(pitch > 0 ? "The fan goes up to a higher pitch."
                                    : "The fan comes down to a lower pitch.");
    if (now.spark_heard && !before.spark_heard) said.emplace_back("It sparks.");
    const bool lit = now.flame_share > 0.0, lit_before = before.flame_share > 0.0;
    if (lit != lit_before) said.emplace_back(lit ? "The burner lights." : "The burner goes out.");
    if (roar != 0)
        said.emplace_back(roar > 0 ? "The burner roars louder." : "The burner roars less.");
    if (now.alarm && !before.alarm) said.emplace_back("Your alarm sounds: carbon monoxide.");
    return said;
}

}  // namespace emberpath::desktop
