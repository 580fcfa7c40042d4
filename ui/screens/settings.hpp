#pragma once
/// Settings: how it looks, sounds, counts and is worked by keys.

#include "ui/screens/screens.hpp"

namespace emberpath::screens {

struct KeyRow {
    std::string id{}, chord{}, words{};
    bool fixed = false;  // cannot be changed
};

struct SettingsView {
    int text_percent = 100;  // 100, 125, 150, 175, 200
    bool night = false;
    bool kilopascal = true;  // false: millibar
    bool reduce_motion = false;
    bool sound = true;
    bool character_keys = true;  // keys of one character
    std::vector<KeyRow> keys{};
    std::string changing{};  // id of the row whose key is being changed; the next key becomes it
    std::string compact_tab = "looks";  // "looks" or "keys", where only one has room
    std::string problem{};              // why the last key was refused
};

[[nodiscard]] kit::Frame settings_screen(const Setting& setting, const SettingsView& view);

}  // namespace emberpath::screens
