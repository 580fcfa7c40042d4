#include "ui/window/display.hpp"

#include <cstdlib>
#include <filesystem>

namespace emberpath::window {

namespace {

/// ":0" and ":0.1" name a socket of this machine; anything else is elsewhere and is taken on trust.
std::string local_socket(const std::string& display) {
    if (display.empty() || display[0] != ':') return "";
    const std::string number = display.substr(1, display.find('.') - 1);
    const bool digits =
        !number.empty() && number.find_first_not_of("0123456789") == std::string::npos;
    return digits ? "/tmp/.X11-unix/X" + number : "";
}

}  // namespace

std::string why_no_display(const char* display) {
    if (display == nullptr || *display == '\0') return "There is no display: DISPLAY is not set.";
    const std::string socket = local_socket(display);
    std::error_code ignored;
    if (!socket.empty() && !std::filesystem::exists(socket, ignored))
        return "There is no display: nothing answers at DISPLAY " + std::string(display) + ".";
    return "";
}

std::string why_no_display() {
    return why_no_display(std::getenv("DISPLAY"));
}

}  // namespace emberpath::window
