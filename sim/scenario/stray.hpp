#pragma once
/// Keeps characters beyond ASCII away from the TOML library where TOML 1.0 allows none: outside texts and
/// comments. `inlet_water = 14 °C` without quotation marks is the usual way to get there, and the
/// library's table of white space ends in unreachable code for many of these characters.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace emberpath::scenario {

struct Stray {
    int line = 1;
    int column = 1;         // in characters
    std::string character;  // as written
};

/// The first one, or nothing.
[[nodiscard]] std::optional<Stray> find_stray(std::string_view text);

/// The same file with each character beyond ASCII replaced by a question mark. What can be read so has
/// such characters in texts and comments only, where the library is safe; lines and columns agree.
[[nodiscard]] std::string in_ascii(std::string_view text);

}  // namespace emberpath::scenario
