#include "ui/desktop/preferences.hpp"

#include "ui/screens/screens.hpp"

namespace emberpath::desktop {

namespace {

constexpr std::string_view key_prefix = "key ";

const char* word_of(bool on) {
    return on ? "yes" : "no";
}

int percent_from(std::string_view value) {
    for (const int percent : {100, 125, 150, 175, 200})
        if (value == std::to_string(percent)) return percent;
    return 0;
}

void take(Preferences& p, const std::string& name, const std::string& value) {
    const bool yes = value == "yes";
    if (name == "text size") p.text_percent = percent_from(value);
    if (name == "night") p.night = yes;
    if (name == "pressure unit") p.kilopascal = value != "mbar";
    if (name == "reduce motion") p.reduce_motion = yes;
    if (name == "sound") p.sound = value != "no";
    if (name == "character keys") p.character_keys = value != "no";
    if (name.starts_with(key_prefix) && kit::parse_chord(value))
        p.keys[name.substr(key_prefix.size())] = value;
}

}  // namespace

std::string to_text(const Preferences& p) {
    std::string text = "# Emberpath: settings. Written by the program; may be edited or deleted.\n";
    const auto line = [&](std::string_view name, std::string_view value) {
        text.append(name).append(" = ").append(value).append("\n");
    };
    if (p.text_percent > 0) line("text size", std::to_string(p.text_percent));
    line("night", word_of(p.night));
    line("pressure unit", p.kilopascal ? "kPa" : "mbar");
    line("reduce motion", word_of(p.reduce_motion));
    line("sound", word_of(p.sound));
    line("character keys", word_of(p.character_keys));
    for (const auto& [command, chord] : p.keys) line(std::string(key_prefix) + command, chord);
    return text;
}

Preferences preferences_from(std::string_view text) {
    Preferences p;
    while (!text.empty()) {
        const auto end = text.find('\n');
        const std::string line(text.substr(0, end));
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        const auto sign = line.find(" = ");
        if (line.starts_with("#") || sign == std::string::npos) continue;
        take(p, line.substr(0, sign), line.substr(sign + 3));
    }
    return p;
}

KeysFor key_map_for(const Preferences& p) {
    KeysFor made{kit::KeyMap(screens::key_table()), {}};
    made.problems = made.keys.rebind_all(p.keys);
    made.keys.use_characters(p.character_keys);
    return made;
}

}  // namespace emberpath::desktop
