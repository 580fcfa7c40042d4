#include "sim/diagnostics/diagnostic.hpp"

#include <algorithm>
#include <numeric>

namespace emberpath::diagnostics {

namespace {

constexpr std::size_t number_width = 5;
constexpr std::size_t longest_word = 64;

bool starts_a_character(char c) {
    return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U;
}

/// A file may hold anything; what reaches a terminal must not move its cursor.
std::string without_control_characters(std::string_view text) {
    std::string out(text);
    for (char& c : out)
        if ((static_cast<unsigned char>(c) < 0x20U && c != '\t') || c == 0x7f) c = '?';
    return out;
}

std::string line_with_caret(const Diagnostic& problem) {
    std::string number = std::to_string(problem.line);
    if (number.size() < number_width) number.insert(0, number_width - number.size(), ' ');
    std::string text = number + " | " + without_control_characters(problem.source_line) + "\n";
    if (problem.column < 1) return text;
    std::string padding;
    int left = problem.column - 1;  // in characters: a caret stands under one, however many bytes
    for (const char c : problem.source_line) {
        if (!starts_a_character(c)) continue;
        if (left-- == 0) break;
        padding += c == '\t' ? '\t' : ' ';
    }
    return text + std::string(number.size(), ' ') + " | " + padding + "^\n";
}

std::string remedy(const Diagnostic& problem) {
    std::string text;
    if (!problem.expected.empty()) text = "  expected " + problem.expected;
    if (!problem.suggestion.empty()) {
        text += text.empty() ? "  " : "; ";
        text += "did you mean \"" + problem.suggestion + "\"?";
    }
    return text.empty() ? text : text + "\n";
}

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// Edit distance with swapped neighbours as one slip; capitals count as their small letters.
std::size_t distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), now(b.size() + 1);
    std::iota(last.begin(), last.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        now[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const bool same = lower(a[i - 1]) == lower(b[j - 1]);
            now[j] = std::min({last[j] + 1, now[j - 1] + 1, last[j - 1] + (same ? 0U : 1U)});
            const bool swapped = i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) &&
                                 lower(a[i - 2]) == lower(b[j - 1]);
            if (swapped) now[j] = std::min(now[j], before[j - 2] + 1);
        }
        before = last;
        last = now;
    }
    return last[b.size()];
}

}  // namespace

std::string to_text(const Diagnostic& problem) {
    std::string text = without_control_characters(problem.file);
    if (problem.line > 0) {
        if (!text.empty()) text += ":";
        text += std::to_string(problem.line);
        if (problem.column > 0) text += ":" + std::to_string(problem.column);
    }
    if (!text.empty()) text += ": ";
    text += without_control_characters(problem.found) + "\n";
    if (problem.line > 0 && !problem.source_line.empty()) text += line_with_caret(problem);
    return text + remedy(problem);
}

std::string to_text(std::span<const Diagnostic> problems, std::string_view closing) {
    if (problems.empty()) return {};
    std::string text;
    for (const Diagnostic& problem : problems) text += to_text(problem);
    text += std::to_string(problems.size()) + (problems.size() == 1 ? " problem" : " problems");
    if (!closing.empty()) text += "; " + std::string(closing);
    if (text.back() != '.') text += ".";
    return text + "\n";
}

std::string nearest_word(std::string_view found, std::span<const std::string> valid) {
    if (found.size() > longest_word) return {};
    std::size_t best = found.size() / 3 + 1;
    std::string nearest;
    for (const std::string& word : valid) {
        const std::size_t away = distance(found, word);
        if (away < best) {
            best = away;
            nearest = word;
        }
    }
    return nearest;
}

}  // namespace emberpath::diagnostics
