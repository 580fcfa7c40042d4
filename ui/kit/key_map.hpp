#pragma once
/// Which key does what, as one table that can be changed. The same table writes the help.

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "ui/kit/events.hpp"

namespace emberpath::kit {

/// A key with its modifiers, or a character. Characters follow the person's keyboard layout.
struct Chord {
    Key key = Key::none;
    char32_t character = 0;  // used when key is none
    Modifiers modifiers{};   // of a key; Shift is part of a character
    bool operator==(const Chord&) const = default;
};
/// "Ctrl Enter", "Shift F6", "Shift W", "/", "R": as caps show it and settings store it.
[[nodiscard]] std::string text_of(const Chord& chord);
/// Nothing if the text names no key.
[[nodiscard]] std::optional<Chord> parse_chord(std::string_view text);

struct Binding {
    std::string command;  // "record"
    std::string
        where;  // the places it is for, with spaces between ("job replay"); empty: everywhere
    std::string chord;   // as text_of() writes it
    std::string words;   // what it does, for the help: "record the reading"
    bool fixed = false;  // known to the kit itself: cannot be given another key
    std::string id{};    // set by the map: the command; of its second row "help 2"
};

class KeyMap {
  public:
    explicit KeyMap(std::span<const Binding> table);

    /// The command of a chord at a place: first one for that place, then one for everywhere.
    [[nodiscard]] std::string_view command(const Chord& chord, std::string_view where) const;
    /// The caps of a command ("R"), of its row for that place if it has one; empty when it has none or
    /// character keys are switched off.
    [[nodiscard]] std::string caps(std::string_view command, std::string_view where = {}) const;
    /// Gives a row (by its id) another key. Refuses, and says with which command it clashes, that it is no
    /// key, or that the key is needed to move about.
    [[nodiscard]] std::string rebind(std::string_view id, std::string_view chord);
    /// The same for many rows at once, so that two may have changed places. A row that is refused keeps its
    /// key; returns why, one sentence for each.
    [[nodiscard]] std::vector<std::string> rebind_all(
        const std::map<std::string, std::string>& chords_by_id);
    /// All bindings as they are now, in the order of the table.
    [[nodiscard]] std::vector<Binding> all() const;
    /// Bindings that hold at a place, for the help, in the order of the table.
    [[nodiscard]] std::vector<Binding> at(std::string_view where) const;

    /// Keys that are a single character can be switched off (WCAG 2.1.4).
    void use_characters(bool on) { characters_on_ = on; }
    [[nodiscard]] bool characters_on() const { return characters_on_; }

  private:
    struct Entry {
        Binding binding;
        Chord chord;
    };
    [[nodiscard]] std::string refusal(const Entry& own, std::string_view text) const;
    [[nodiscard]] const Entry* clash(const Entry& own, const Chord& chord) const;
    [[nodiscard]] Entry* entry(std::string_view id);

    std::vector<Entry> entries_;
    bool characters_on_ = true;
};

}  // namespace emberpath::kit
