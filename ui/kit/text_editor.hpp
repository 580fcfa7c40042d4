#pragma once
/// Editing of text, without any drawing: caret, selection, undo, clipboard, citations.

#include <string>
#include <string_view>
#include <vector>

namespace emberpath::kit {

/// The system's clipboard, or a test's.
class Clipboard {
  public:
    virtual ~Clipboard() = default;
    [[nodiscard]] virtual std::string get() const = 0;
    virtual void set(std::string_view utf8) = 0;
};

/// A citation "#5" is kept as one character, so that it is selected, moved over and removed as one.
inline constexpr char32_t first_citation = 0xE000;
inline constexpr int most_citations = 999;
[[nodiscard]] constexpr bool is_citation(char32_t c) {
    return c > first_citation && c <= first_citation + most_citations;
}
[[nodiscard]] constexpr int cited_number(char32_t c) {
    return static_cast<int>(c - first_citation);
}
/// "#5" becomes a citation where the reading is known, and back.
[[nodiscard]] std::u32string with_citations(std::u32string_view text, int last_reading);
[[nodiscard]] std::u32string without_citations(std::u32string_view text);

class TextEditor {
  public:
    TextEditor() = default;
    explicit TextEditor(std::string_view utf8, int last_reading = 0) { reset(utf8, last_reading); }

    /// New contents; undo starts afresh, the caret stands at the end.
    void reset(std::string_view utf8, int last_reading = 0);
    /// What was written, citations as "#5".
    [[nodiscard]] std::string text() const;
    [[nodiscard]] const std::u32string& characters() const { return now_.text; }
    [[nodiscard]] std::size_t caret() const { return now_.caret; }
    [[nodiscard]] std::size_t selection_begin() const;
    [[nodiscard]] std::size_t selection_end() const;
    [[nodiscard]] bool has_selection() const { return now_.caret != now_.anchor; }

    /// Typing: replaces the selection. A digit after "#" makes a citation of a known reading.
    void type(char32_t character, int last_reading = 0);
    void insert(std::u32string_view text, int last_reading = 0);
    void backspace(bool word = false);
    void erase(bool word = false);

    enum class Step { character, word, line, all };
    void move(Step step, bool forwards, bool selecting);
    void move_to(std::size_t index, bool selecting);
    void select_all();

    void copy(Clipboard& clipboard) const;
    void cut(Clipboard& clipboard);
    void paste(const Clipboard& clipboard, bool many_lines, int last_reading = 0);
    /// False when there is nothing to undo (redo).
    bool undo();
    bool redo();

    [[nodiscard]] bool operator==(const TextEditor&) const = default;

  private:
    struct State {
        std::u32string text{};
        std::size_t caret = 0, anchor = 0;
        bool operator==(const State&) const = default;
    };
    enum class Kind { none, typing, erasing, other };
    void before(Kind kind);  // keeps the state, once for a run of the same kind
    void remove_selection();
    [[nodiscard]] std::size_t stepped(Step step, bool forwards) const;

    State now_{};
    std::vector<State> past_{}, future_{};
    Kind run_ = Kind::none;
};

}  // namespace emberpath::kit
