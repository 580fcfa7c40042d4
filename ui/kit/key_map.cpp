#include "ui/kit/key_map.hpp"

#include <algorithm>
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

/// One of the places of a row, by name.
bool names(std::string_view places, std::string_view where) {
    while (!places.empty()) {
        const auto end = places.find(' ');
        if (places.substr(0, end) == where) return true;
        places.remove_prefix(end == std::string_view::npos ? places.size() : end + 1);
    }
    return false;
}
bool holds_at(std::string_view places, std::string_view where) {
    return places.empty() || names(places, where);
}
/// Two rows can be meant by one key at some place.
bool meet(std::string_view a, std::string_view b) {
    if (a.empty() || b.empty()) return true;
    while (!a.empty()) {
        const auto end = a.find(' ');
        if (names(b, a.substr(0, end))) return true;
        a.remove_prefix(end == std::string_view::npos ? a.size() : end + 1);
    }
    return false;
}

/// Keys that the kit takes before any command is looked for; empty: it takes no such key.
std::string_view taken_by_the_kit(const Chord& c) {
    const bool control = c.modifiers.control, plain = !control && !c.modifiers.alt;
    const auto is_one_of = [&](std::initializer_list<Key> keys) {
        return std::find(keys.begin(), keys.end(), c.key) != keys.end();
    };
    if (plain && is_one_of({Key::tab, Key::f6, Key::left, Key::right, Key::up, Key::down, Key::home,
                            Key::end, Key::page_up, Key::page_down}))
        return "moves the focus or the list";
    if (plain && !c.modifiers.shift && is_one_of({Key::enter, Key::escape}))
        return "answers and goes back";
    if (control && is_one_of({Key::a, Key::c, Key::v, Key::x, Key::z, Key::y}))
        return "edits the text in a field";
    return "";
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
    for (const Binding& binding : table) {
        const auto chord = parse_chord(binding.chord);
        if (!chord) continue;
        const auto rows = 1 + std::count_if(entries_.begin(), entries_.end(), [&](const Entry& e) {
                              return e.binding.command == binding.command;
                          });
        entries_.push_back({binding, *chord});
        entries_.back().binding.id =
            binding.command + (rows > 1 ? " " + std::to_string(rows) : std::string());
    }
}

std::string_view KeyMap::command(const Chord& chord, std::string_view where) const {
    const bool is_character = chord.key == Key::none;
    if (is_character && !characters_on_) return {};
    const auto find = [&](const Chord& wanted, bool exact_place) -> std::string_view {
        for (const Entry& e : entries_)
            if (e.chord == wanted &&
                (exact_place ? names(e.binding.where, where) : e.binding.where.empty()))
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

std::string KeyMap::caps(std::string_view command, std::string_view where) const {
    std::string found;
    for (const Entry& e : entries_) {
        if (e.binding.command != command || (!characters_on_ && e.chord.key == Key::none)) continue;
        if (holds_at(e.binding.where, where)) return text_of(e.chord);
        if (found.empty()) found = text_of(e.chord);
    }
    return found;
}

KeyMap::Entry* KeyMap::entry(std::string_view id) {
    for (Entry& e : entries_)
        if (e.binding.id == id) return &e;
    return nullptr;
}

const KeyMap::Entry* KeyMap::clash(const Entry& own, const Chord& chord) const {
    for (const Entry& e : entries_)
        if (&e != &own && e.chord == chord && meet(e.binding.where, own.binding.where) &&
            e.binding.command != own.binding.command)
            return &e;
    return nullptr;
}

std::string KeyMap::refusal(const Entry& own, std::string_view text) const {
    const auto chord = parse_chord(text);
    if (!chord) return "\"" + std::string(text) + "\" is not a key";
    if (own.binding.fixed) return own.binding.chord + " always means: " + own.binding.words;
    if (const Entry* other = clash(own, *chord))
        return std::string(text) + " already means: " + other->binding.words;
    if (const auto what = taken_by_the_kit(*chord); !what.empty())
        return std::string(text) + " " + std::string(what) + " and cannot mean anything else";
    return "";
}

std::string KeyMap::rebind(std::string_view id, std::string_view text) {
    Entry* own = entry(id);
    if (own == nullptr) return "there is no command \"" + std::string(id) + "\"";
    if (std::string why = refusal(*own, text); !why.empty()) return why;
    own->chord = *parse_chord(text);
    own->binding.chord = text_of(own->chord);
    return "";
}

std::vector<std::string> KeyMap::rebind_all(const std::map<std::string, std::string>& chords) {
    std::vector<std::string> problems;
    std::map<std::string, Entry> before;
    for (const auto& [id, text] : chords)
        if (Entry* own = entry(id); own != nullptr && !own->binding.fixed) {
            before.emplace(id, *own);
            own->chord = {};
            own->binding.chord.clear();
        }
    std::vector<std::string> refused;
    for (const auto& [id, text] : chords)
        if (std::string why = rebind(id, text); !why.empty()) {
            problems.push_back(std::move(why));
            refused.push_back(id);
        }
    for (const std::string& id : refused)
        if (const auto old = before.find(id); old != before.end()) {
            Entry& own = *entry(id);
            // Its own first key, if nobody has it by now.
            if (clash(own, old->second.chord) == nullptr) own = old->second;
        }
    return problems;
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
        if (usable && holds_at(e.binding.where, where)) found.push_back(e.binding);
    }
    return found;
}

}  // namespace emberpath::kit
