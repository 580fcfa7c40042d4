#include "sim/trainees/difficulty.hpp"

#include <algorithm>

#include "sim/units/units.hpp"

namespace emberpath::trainees {

namespace {

enum class Level { easy, middling, hard };

struct Bounds {
    double middling, hard;
    [[nodiscard]] Level of(double value) const {
        return value >= hard ? Level::hard : value >= middling ? Level::middling : Level::easy;
    }
};
constexpr Bounds surprise{3.0, 5.0};   // bits: the true cause has an eighth, a thirty-second
constexpr Bounds minutes{12.0, 20.0};  // of readings; 10 is the least that C is taken for
constexpr Bounds missed{0.25, 0.5};    // of ordinary attempts

Level level_of(const Difficulty& d) {
    const Level by_faults = d.two_faults ? Level::middling : Level::easy;
    return std::max({surprise.of(d.surprise_bits), minutes.of(d.reference_minutes),
                     missed.of(d.missed_share), by_faults});
}

}  // namespace

std::string_view word(const Difficulty& difficulty) {
    switch (level_of(difficulty)) {
        case Level::easy:
            return "easy";
        case Level::middling:
            return "middling";
        case Level::hard:
            break;
    }
    return "hard";
}

std::string reasons(const Difficulty& d) {
    std::string text;
    const auto add = [&](const std::string& reason) {
        text += (text.empty() ? "" : "; ") + reason;
    };
    if (surprise.of(d.surprise_bits) != Level::easy)
        add("complaint and display speak against the true cause (" +
            units::fixed(d.surprise_bits, 1) + " bits)");
    if (minutes.of(d.reference_minutes) != Level::easy)
        add("much has to be read (" + units::fixed(d.reference_minutes, 0) +
            " minutes on the reference path)");
    if (d.two_faults) add("two faults have to be found");
    if (missed.of(d.missed_share) != Level::easy) add("many ordinary attempts met an objection");
    return text;
}

}  // namespace emberpath::trainees
