#pragma once
/// What somebody who stands in the house sees and hears change, in words: each sound of the program is said
/// here too, with its pitch and its strength.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "sim/worksite/sight.hpp"

namespace emberpath::desktop {

/// How high or how strong a sound is, as it was last said. A change is said once the sound keeps still, so
/// that a fan that runs up is one sentence.
class Level {
  public:
    /// `audible` [units of `value`]: below it there is silence.
    explicit Level(double audible) : audible_(audible) {}
    /// -1 or 1 when it has become lower or higher by an amount that ears notice; else 0.
    [[nodiscard]] int change(double value, std::int64_t tick);

  private:
    double audible_;
    double steady_ = 0.0;         // where it keeps still
    std::int64_t since_ = 0;      // tick since when
    std::int64_t last_ = 0;       // tick of the call before
    std::optional<double> said_;  // what was last said of it; nothing in silence and just after it
};

class Watcher {
  public:
    /// `arrival`: what there was to be seen and heard at first; that is no change.
    explicit Watcher(const worksite::Sight& arrival) : before_(arrival) {}
    /// What changed since the last call, as sentences; what was said in the house comes first.
    [[nodiscard]] std::vector<std::string> changes(const worksite::Sight& now, std::int64_t tick);

  private:
    std::size_t noticed_lines_ = 0;  // of the sight, already said
    worksite::Sight before_;
    static constexpr double audible_rev_per_s = 5.0, audible_share = 0.01;
    Level pitch_{audible_rev_per_s}, roar_{audible_share};
};

}  // namespace emberpath::desktop
