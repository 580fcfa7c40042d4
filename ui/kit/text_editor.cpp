#include "ui/kit/text_editor.hpp"

#include <algorithm>

#include "ui/kit/text.hpp"

namespace emberpath::kit {

namespace {

constexpr std::size_t most_undo = 200;

bool is_digit(char32_t c) {
    return c >= U'0' && c <= U'9';
}
bool is_gap(char32_t c) {
    return c == U' ' || c == U'\n';
}

/// The reading that `digit` typed after `before` means: after "#" or after a citation; 0 for none.
int cited_by(char32_t before, char32_t digit, int last_reading) {
    if (!is_digit(digit)) return 0;
    const int value = static_cast<int>(digit - U'0');
    const int number = before == U'#'        ? value
                       : is_citation(before) ? cited_number(before) * 10 + value
                                             : 0;
    return number <= std::min(last_reading, most_citations) ? number : 0;
}

std::u32string one_line(std::u32string text) {
    for (char32_t& c : text)
        if (c == U'\n') c = U' ';
    return text;
}

/// What a keyboard or clipboard may bring: no control characters but newlines.
std::u32string printable(std::u32string_view text) {
    std::u32string kept;
    for (const char32_t c : text) {
        if (c == U'\t') kept.push_back(U' ');
        if (c == U'\n' || (c >= 0x20 && c != 0x7F && !is_citation(c))) kept.push_back(c);
    }
    return kept;
}

}  // namespace

std::u32string with_citations(std::u32string_view text, int last_reading) {
    std::u32string out;
    for (const char32_t c : text) {
        const int number = out.empty() ? 0 : cited_by(out.back(), c, last_reading);
        if (number > 0)
            out.back() = first_citation + static_cast<char32_t>(number);
        else
            out.push_back(c);
    }
    return out;
}

std::u32string without_citations(std::u32string_view text) {
    std::u32string out;
    for (const char32_t c : text) {
        if (!is_citation(c)) {
            out.push_back(c);
            continue;
        }
        out.push_back(U'#');
        out += decode(std::to_string(cited_number(c)));
    }
    return out;
}

void TextEditor::reset(std::string_view utf8, int last_reading) {
    *this = TextEditor();
    now_.text = with_citations(decode(utf8), last_reading);
    now_.caret = now_.anchor = now_.text.size();
}

std::string TextEditor::text() const {
    return encode(without_citations(now_.text));
}
std::size_t TextEditor::selection_begin() const {
    return std::min(now_.caret, now_.anchor);
}
std::size_t TextEditor::selection_end() const {
    return std::max(now_.caret, now_.anchor);
}

void TextEditor::before(Kind kind) {
    future_.clear();
    const bool goes_on = kind == run_ && kind != Kind::other && !has_selection();
    run_ = kind;
    if (goes_on) return;
    past_.push_back(now_);
    if (past_.size() > most_undo) past_.erase(past_.begin());
}

void TextEditor::remove_selection() {
    const std::size_t begin = selection_begin();
    now_.text.erase(begin, selection_end() - begin);
    now_.caret = now_.anchor = begin;
}

void TextEditor::type(char32_t character, int last_reading) {
    before(Kind::typing);
    remove_selection();
    const int number =
        now_.caret == 0 ? 0 : cited_by(now_.text[now_.caret - 1], character, last_reading);
    if (number > 0) {
        now_.text[now_.caret - 1] = first_citation + static_cast<char32_t>(number);
    } else {
        now_.text.insert(now_.caret, 1, character);
        now_.anchor = ++now_.caret;
    }
    if (is_gap(character)) run_ = Kind::none;  // undo goes back word by word
}

void TextEditor::insert(std::u32string_view text, int last_reading) {
    before(Kind::other);
    remove_selection();
    const std::u32string kept = with_citations(printable(text), last_reading);
    now_.text.insert(now_.caret, kept);
    now_.anchor = now_.caret += kept.size();
}

void TextEditor::backspace(bool word) {
    if (!has_selection() && now_.caret == 0) return;
    before(Kind::erasing);
    if (!has_selection()) now_.anchor = stepped(word ? Step::word : Step::character, false);
    remove_selection();
}

void TextEditor::erase(bool word) {
    if (!has_selection() && now_.caret == now_.text.size()) return;
    before(Kind::erasing);
    if (!has_selection()) now_.anchor = stepped(word ? Step::word : Step::character, true);
    remove_selection();
}

std::size_t TextEditor::stepped(Step step, bool forwards) const {
    const std::u32string& t = now_.text;
    std::size_t at = now_.caret;
    switch (step) {
        case Step::character:
            return forwards ? std::min(at + 1, t.size()) : at - std::min<std::size_t>(at, 1);
        case Step::word:
            if (forwards) {
                while (at < t.size() && !is_gap(t[at])) ++at;
                while (at < t.size() && is_gap(t[at])) ++at;
            } else {
                while (at > 0 && is_gap(t[at - 1])) --at;
                while (at > 0 && !is_gap(t[at - 1])) --at;
            }
            return at;
        case Step::line:
            if (forwards)
                while (at < t.size() && t[at] != U'\n') ++at;
            else
                while (at > 0 && t[at - 1] != U'\n') --at;
            return at;
        case Step::all:
            return forwards ? t.size() : 0;
    }
    return at;
}

void TextEditor::move(Step step, bool forwards, bool selecting) {
    run_ = Kind::none;
    if (step == Step::character && has_selection() && !selecting) {
        now_.caret = now_.anchor = forwards ? selection_end() : selection_begin();
        return;
    }
    move_to(stepped(step, forwards), selecting);
}

void TextEditor::move_to(std::size_t index, bool selecting) {
    run_ = Kind::none;
    now_.caret = std::min(index, now_.text.size());
    if (!selecting) now_.anchor = now_.caret;
}

void TextEditor::select_all() {
    run_ = Kind::none;
    now_.anchor = 0;
    now_.caret = now_.text.size();
}

void TextEditor::copy(Clipboard& clipboard) const {
    if (!has_selection()) return;
    const std::size_t begin = selection_begin();
    clipboard.set(encode(without_citations(now_.text.substr(begin, selection_end() - begin))));
}

void TextEditor::cut(Clipboard& clipboard) {
    if (!has_selection()) return;
    copy(clipboard);
    before(Kind::other);
    remove_selection();
}

void TextEditor::paste(const Clipboard& clipboard, bool many_lines, int last_reading) {
    std::u32string text = decode(clipboard.get());
    std::erase(text, U'\r');
    if (!text.empty()) insert(many_lines ? text : one_line(text), last_reading);
}

bool TextEditor::undo() {
    if (past_.empty()) return false;
    future_.push_back(now_);
    now_ = past_.back();
    past_.pop_back();
    run_ = Kind::none;
    return true;
}

bool TextEditor::redo() {
    if (future_.empty()) return false;
    past_.push_back(now_);
    now_ = future_.back();
    future_.pop_back();
    run_ = Kind::none;
    return true;
}

}  // namespace emberpath::kit
