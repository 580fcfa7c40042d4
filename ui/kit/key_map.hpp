#pragma once
/// Which key does what, as one table that can be changed. The same table writes the help.

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
    std::string where;    // the place it is for ("job"); empty: everywhere
    std::string chord;    // as text_of() writes it
    std::string words;    // what it does, for the help: "record the reading"
};

class KeyMap {
  public:
    explicit KeyMap(std::span<const Binding> table);

    /// The command of a chord at a place: first one for that place, then one for everywhere.
    [[nodiscard]] std::string_view command(const Chord& chord, std::string_view where) const;
    /// The caps of a command ("R"); empty when it has none or character keys are switched off.
    [[nodiscard]] std::string caps(std::string_view command) const;
    /// Gives a command another key. Refuses, and says with which command it clashes, or that it is no key.
    [[nodiscard]] std::string rebind(std::string_view command, std::string_view chord);
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
    std::vector<Entry> entries_;
    bool characters_on_ = true;
};

}  // namespace emberpath::kit
