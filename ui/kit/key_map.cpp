#include "ui/kit/key_map.hpp"

#include <array>

#include "ui/kit/text.hpp"

namespace emberpath::kit {

namespace {

constexpr std::array<std::string_view, key_count> key_names{
    "",     "Tab",  "Enter", "Esc",     "Space",     "Backspace", "Delete", "Left", "Right", "Up",
    "Down", "Home", "End",   "Page up", "Page down", "F1",        "F2",     "F3",   "F4",    "F5",
    "F6",   "F7",   "F8",    "F9",      "F10",       "F11",       "F12",    "A",    "B",     "C",
    "D",    "E",    "F",     "G",       "H",         "I",         "J",      "K",    "L",     "M",
    "N",    "O",    "P",     "Q",       "R",         "S",         "T",      "U",    "V",     "W",
    "X",    "Y",    "Z",     "+",       "-",         "0"};

char32_t capital(char32_t c) {
    return c >= U'a' && c <= U'z' ? c - U'a' + U'A' : c;
}
bool is_letter(char32_t c) {
    return capital(c) >= U'A' && capital(c) <= U'Z';
}

bool same_place(const std::string& a, std::string_view b) {
    return a.empty() || a == b;
}

bool takes(std::string_view& text, std::string_view word) {
    if (!text.starts_with(word)) return false;
    text.remove_prefix(word.size());
    return true;
}

}  // namespace

std::string text_of(const Chord& chord) {
    if (chord.key == Key::none) {
        if (chord.character == 0) return "";
        const bool is_capital = chord.character >= U'A' && chord.character <= U'Z';
        const char32_t shown[] = {capital(chord.character)};
        return (is_capital ? "Shift " : "") + encode({shown, 1});
    }
    std::string text;
    if (chord.modifiers.control) text += "Ctrl ";
    if (chord.modifiers.alt) text += "Alt ";
    if (chord.modifiers.shift) text += "Shift ";
    return text + std::string(key_names[static_cast<std::size_t>(chord.key)]);
}

std::optional<Chord> parse_chord(std::string_view text) {
    Chord chord;
    chord.modifiers.control = takes(text, "Ctrl ");
    chord.modifiers.alt = takes(text, "Alt ");
    chord.modifiers.shift = takes(text, "Shift ");
    const std::u32string letters = decode(text);
    const bool with_control = chord.modifiers.control || chord.modifiers.alt;
    if (letters.size() == 1 && !with_control) {
        char32_t c = letters[0];
        if (c < 0x21 || c == 0x7F || (chord.modifiers.shift && !is_letter(c))) return std::nullopt;
        if (is_letter(c)) c = chord.modifiers.shift ? capital(c) : capital(c) + (U'a' - U'A');
        return Chord{Key::none, c, {}};
    }
    for (std::size_t i = 1; i < key_names.size(); ++i)
        if (key_names[i] == text) {
            chord.key = static_cast<Key>(i);
            return chord;
        }
    return std::nullopt;
}

KeyMap::KeyMap(std::span<const Binding> table) {
    for (const Binding& binding : table)
        if (const auto chord = parse_chord(binding.chord)) entries_.push_back({binding, *chord});
}

std::string_view KeyMap::command(const Chord& chord, std::string_view where) const {
    const bool is_character = chord.key == Key::none;
    if (is_character && !characters_on_) return {};
    const auto find = [&](const Chord& wanted, bool exact_place) -> std::string_view {
        for (const Entry& e : entries_)
            if (e.chord == wanted &&
                (exact_place ? e.binding.where == where : e.binding.where.empty()))
                return e.binding.command;
        return {};
    };
    Chord other =
        chord;  // with the capitals lock on, "R" means "r" unless Shift R has its own meaning
    if (is_character && is_letter(chord.character))
        other.character = chord.character ^ (U'a' ^ U'A');
    for (const Chord& wanted : {chord, other})
        for (const bool exact : {true, false})
            if (const auto found = find(wanted, exact); !found.empty()) return found;
    return {};
}

std::string KeyMap::caps(std::string_view command) const {
    for (const Entry& e : entries_)
        if (e.binding.command == command && (characters_on_ || e.chord.key != Key::none))
            return text_of(e.chord);
    return "";
}

std::string KeyMap::rebind(std::string_view command, std::string_view text) {
    const auto chord = parse_chord(text);
    if (!chord) return "\"" + std::string(text) + "\" is not a key";
    Entry* own = nullptr;
    for (Entry& e : entries_)
        if (own == nullptr && e.binding.command == command) own = &e;
    if (own == nullptr) return "there is no command \"" + std::string(command) + "\"";
    for (const Entry& e : entries_) {
        const bool meets =
            same_place(e.binding.where, own->binding.where) || own->binding.where.empty();
        if (&e != own && e.chord == *chord && meets && e.binding.command != command)
            return std::string(text) + " already means: " + e.binding.words;
    }
    own->chord = *chord;
    own->binding.chord = text_of(*chord);
    return "";
}

std::vector<Binding> KeyMap::all() const {
    std::vector<Binding> found;
    for (const Entry& e : entries_) found.push_back(e.binding);
    return found;
}

std::vector<Binding> KeyMap::at(std::string_view where) const {
    std::vector<Binding> found;
    for (const Entry& e : entries_) {
        const bool usable = characters_on_ || e.chord.key != Key::none;
        if (usable && same_place(e.binding.where, where)) found.push_back(e.binding);
    }
    return found;
}

}  // namespace emberpath::kit
