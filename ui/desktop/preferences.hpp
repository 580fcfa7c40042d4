#pragma once
/// How a person likes the program: kept between runs in a plain file of "name = value" lines.

#include <map>
#include <string>
#include <string_view>

#include "ui/kit/key_map.hpp"

namespace emberpath::desktop {

struct Preferences {
    int text_percent = 0;  // 100, 125, 150, 175 or 200; 0: not chosen yet, guessed from the desktop
    bool night = false;
    bool kilopascal = true;  // false: millibar
    bool reduce_motion = false;
    bool sound = true;
    bool character_keys = true;
    std::map<std::string, std::string> keys;  // changed ones: command and its key
    bool operator==(const Preferences&) const = default;
};

[[nodiscard]] std::string to_text(const Preferences& preferences);
/// Lines that cannot be read are left out: a damaged file must not keep anybody from working.
[[nodiscard]] Preferences preferences_from(std::string_view text);
/// The key table with the person's changes; a change that clashes is left out, and said.
struct KeysFor {
    kit::KeyMap keys;
    std::vector<std::string> problems;
};
[[nodiscard]] KeysFor key_map_for(const Preferences& preferences);

}  // namespace emberpath::desktop
