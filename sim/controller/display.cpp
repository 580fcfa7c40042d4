// The heater's own vocabulary: one four-character word for each thing the controller can say.
#include <array>
#include <stdexcept>
#include <string>

#include "sim/controller/controller.hpp"

namespace emberpath::controller {
namespace {

// clang-format off
constexpr std::array<std::string_view, display_word_count> words{
    "    ", "SHUT", "REST", "VENT", "SEEK", "HEAT", "COOL",  // no power, off, then the normal phases
    "SLOW", "GLOW", "BARE", "FADE", "FEED", "TAPS", "CORE", "OVER", "SEAR", "GASP",  // events in order
    "WAKE",  // a deliberate restart is being proved
};
// clang-format on
constexpr std::size_t first_event_word = 7;

constexpr std::size_t phase_word(Phase phase) {
    switch (phase) {
        case Phase::standby:
            return 2;
        case Phase::pre_purge:
            return 3;
        case Phase::light_up:
        case Phase::prove:
            return 4;
        case Phase::run:
            return 5;
        case Phase::post_purge:
            return 6;
        case Phase::restart:
            return first_event_word + event_count - 1;
        case Phase::lockout:
            break;
    }
    return 0;
}

}  // namespace

std::string_view display_word(const Readout& readout, const Panel& panel) {
    if (panel.powered < 0.5 || readout.powered < 0.5) return words[0];
    if (readout.phase == Phase::lockout)
        return words.at(first_event_word + static_cast<std::size_t>(readout.event) - 1);
    if (readout.phase == Phase::restart) return words.at(phase_word(readout.phase));
    if (panel.switched_on < 0.5 || readout.household_on < 0.5) return words[1];
    return words.at(phase_word(readout.phase));
}

std::string_view display_word_at(std::size_t index) {
    return words.at(index);
}

std::size_t display_index(std::string_view word) {
    for (std::size_t i = 0; i < words.size(); ++i)
        if (words.at(i) == word) return i;
    throw std::invalid_argument("no display word is spelt \"" + std::string(word) + "\"");
}

}  // namespace emberpath::controller
