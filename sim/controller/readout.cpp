// What the service readout shows of one lane, and the words of phases and events.
#include "sim/controller/readout.hpp"

#include <array>

namespace emberpath::controller {
namespace {

constexpr std::array<std::string_view, phase_count> phase_names{
    "standby", "pre-purge", "light-up", "prove", "run", "post-purge", "lockout", "restart"};

constexpr std::array<std::string_view, event_count> event_names{
    "none",
    "fan speed not reached",
    "flame seen before gas",
    "no flame at light-up",
    "flame lost",
    "inlet sensor out of range",
    "outlet sensor out of range",
    "exchanger sensor out of range",
    "overheat limiter open",
    "outlet too hot",
    "air path restricted",
};

}  // namespace

std::string_view event_name(Event event) {
    return event_names.at(static_cast<std::size_t>(event));
}

std::string_view phase_name(Phase phase) {
    return phase_names.at(static_cast<std::size_t>(phase));
}

}  // namespace emberpath::controller
