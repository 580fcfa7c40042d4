#include <array>

#include "sim/worksite/acts.hpp"

namespace emberpath::worksite {

namespace {

// Courtesies and articles carry no meaning; the other words have one canonical form each.
constexpr std::array<std::string_view, 9> dropped{"a",    "an",  "the",  "my",   "please",
                                                  "then", "now", "some", "their"};
constexpr std::array<std::array<std::string_view, 2>, 14> synonyms{{{"shut", "close"},
                                                                    {"switch", "turn"},
                                                                    {"push", "press"},
                                                                    {"analyzer", "analyser"},
                                                                    {"gauge", "manometer"},
                                                                    {"metre", "meter"},
                                                                    {"connect", "attach"},
                                                                    {"disconnect", "detach"},
                                                                    {"inspect", "look"},
                                                                    {"view", "look"},
                                                                    {"tighten", "close"},
                                                                    {"loosen", "open"},
                                                                    {"specs", "glasses"},
                                                                    {"goggles", "glasses"}}};

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_word(char c) {
    return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '#' ||
           static_cast<unsigned char>(c) >= 0x80U;
}

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c;
}

/// The degree sign is two bytes and says nothing that the unit after it does not.
std::size_t degree_sign(std::string_view text, std::size_t at) {
    return text.substr(at, 2) == "\xC2\xB0" ? 2 : 0;
}

/// End of the word that begins at `at`: "2.5" is one, "30s" are two.
std::size_t end_of_word(std::string_view text, std::size_t at) {
    const bool number = is_digit(text[at]) || text[at] == '#';
    std::size_t end = at + 1;
    for (; end < text.size(); ++end) {
        const char c = text[end];
        if (number && c == '.' && end + 1 < text.size() && is_digit(text[end + 1])) continue;
        if (!is_word(c) || (number && !is_digit(c)) || degree_sign(text, end) || c == '#') break;
    }
    return end;
}

void keep(std::vector<Token>& tokens, Token token) {
    for (const auto word : dropped)
        if (token.word == word) return;
    for (const auto& [from, to] : synonyms)
        if (token.word == from) token.word = to;
    tokens.push_back(std::move(token));
}

}  // namespace

std::vector<Token> tokens_of(std::string_view sentence) {
    std::vector<Token> tokens;
    for (std::size_t at = 0; at < sentence.size();) {
        if (const auto skipped = degree_sign(sentence, at)) {
            at += skipped;
            continue;
        }
        if (!is_word(sentence[at])) {
            ++at;
            continue;
        }
        const auto end = end_of_word(sentence, at);
        Token token{{}, at};
        for (const char c : sentence.substr(at, end - at)) token.word += small(c);
        keep(tokens, std::move(token));
        at = end;
    }
    return tokens;
}

}  // namespace emberpath::worksite
