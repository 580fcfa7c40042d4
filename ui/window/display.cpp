#include "ui/window/display.hpp"

#include <dlfcn.h>

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

/// Asks the display itself, through the library that draws there anyway; what cannot be asked is taken on
/// trust.
std::string why_it_cannot_draw(const char* display) {
    using Open = void* (*)(const char*);
    using Query = int (*)(void*, const char*, int*, int*, int*);
    void* library = dlopen("libX11.so.6", RTLD_LAZY);
    if (library == nullptr) return "";
    const auto open = reinterpret_cast<Open>(dlsym(library, "XOpenDisplay"));
    const auto query = reinterpret_cast<Query>(dlsym(library, "XQueryExtension"));
    if (open == nullptr || query == nullptr) return "";
    // Left open: a server whose last guest leaves may start anew, and turn the window away meanwhile.
    void* connection = open(display);
    if (connection == nullptr)
        return "There is no display: nothing answers at DISPLAY " + std::string(display) + ".";
    int unused[3] = {};
    const bool can_draw = query(connection, "GLX", &unused[0], &unused[1], &unused[2]) != 0;
    return can_draw ? ""
                    : "The display cannot draw the window: it has no OpenGL (its GLX extension "
                      "is missing).";
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
    const char* display = std::getenv("DISPLAY");
    const std::string why = why_no_display(display);
    return why.empty() ? why_it_cannot_draw(display) : why;
}

}  // namespace emberpath::window
