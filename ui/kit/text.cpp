#include "ui/kit/text.hpp"

#include <array>

namespace emberpath::kit {

namespace {

constexpr char32_t replacement = 0xFFFD;

struct Decoded {
    char32_t code;
    std::size_t bytes;
};

Decoded decode_one(std::string_view s) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(s[i]); };
    const unsigned char first = byte(0);
    if (first < 0x80) return {first, 1};
    const std::size_t n = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC2 ? 2 : 0;
    if (n == 0 || first > 0xF4 || s.size() < n) return {replacement, 1};
    char32_t code = first & (0xFFU >> (n + 1));
    for (std::size_t i = 1; i < n; ++i) {
        if ((byte(i) & 0xC0U) != 0x80U) return {replacement, i};
        code = (code << 6U) | (byte(i) & 0x3FU);
    }
    constexpr std::array<char32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
    const bool valid = code >= least[n] && code <= 0x10FFFF && (code < 0xD800 || code > 0xDFFF);
    return {valid ? code : replacement, n};
}

/// The longest beginning that fits, at least one character; its length in code points.
std::size_t fitting(const TextMetrics& metrics, const TextStyle& style, std::u32string_view text,
                    double width) {
    double sum = 0.0;
    std::size_t n = 0;
    while (n < text.size()) {
        sum += metrics.advance_em(style.face, text[n]) * style.size;
        if (n > 0 && sum > width + 1e-6) break;
        ++n;
    }
    return n;
}

void wrap_paragraph(const TextMetrics& metrics, const TextStyle& style, std::u32string_view text,
                    double width, std::vector<std::string>& lines) {
    do {
        std::size_t n = fitting(metrics, style, text, width), next = n;
        if (n < text.size()) {
            const auto space = text[n] == U' ' ? n : text.substr(0, n).rfind(U' ');
            if (space != std::u32string_view::npos && space > 0) {
                n = space;
                next = space + 1;
            }
        }
        lines.push_back(encode(text.substr(0, n)));
        text.remove_prefix(std::min(next, text.size()));
    } while (!text.empty());
}

}  // namespace

std::string_view name_of(Face face) {
    constexpr std::array<std::string_view, face_count> names{"regular",     "bold",  "italic",
                                                             "bold italic", "seven", "fourteen"};
    return names[static_cast<std::size_t>(face)];
}

std::u32string decode(std::string_view utf8) {
    std::u32string out;
    out.reserve(utf8.size());
    while (!utf8.empty()) {
        const Decoded one = decode_one(utf8);
        out.push_back(one.code);
        utf8.remove_prefix(one.bytes);
    }
    return out;
}

std::string encode(std::u32string_view text) {
    std::string out;
    const auto put = [&](char32_t bits) { out.push_back(static_cast<char>(bits)); };
    for (const char32_t c : text) {
        if (c < 0x80) {
            put(c);
        } else if (c < 0x800) {
            put(0xC0 | (c >> 6U));
            put(0x80 | (c & 0x3FU));
        } else if (c < 0x10000) {
            put(0xE0 | (c >> 12U));
            put(0x80 | ((c >> 6U) & 0x3FU));
            put(0x80 | (c & 0x3FU));
        } else {
            put(0xF0 | (c >> 18U));
            put(0x80 | ((c >> 12U) & 0x3FU));
            put(0x80 | ((c >> 6U) & 0x3FU));
            put(0x80 | (c & 0x3FU));
        }
    }
    return out;
}

double width_of(const TextMetrics& metrics, const TextStyle& style, std::string_view text) {
    double em = 0.0;
    for (const char32_t c : decode(text)) em += metrics.advance_em(style.face, c);
    return em * style.size;
}

std::vector<std::string> wrapped(const TextMetrics& metrics, const TextStyle& style,
                                 std::string_view text, double width) {
    std::vector<std::string> lines;
    const std::u32string all = decode(text);
    std::size_t begin = 0;
    while (begin <= all.size()) {
        const std::size_t end = std::min(all.find(U'\n', begin), all.size());
        wrap_paragraph(metrics, style, std::u32string_view(all).substr(begin, end - begin), width,
                       lines);
        begin = end + 1;
    }
    return lines;
}

std::string shortened(const TextMetrics& metrics, const TextStyle& style, std::string_view text,
                      double width) {
    if (width_of(metrics, style, text) <= width + 1e-6) return std::string(text);
    const double room = width - width_of(metrics, style, "…");
    const std::u32string all = decode(text);
    std::u32string_view kept =
        std::u32string_view(all).substr(0, fitting(metrics, style, all, room));
    while (!kept.empty() && kept.back() == U' ') kept.remove_suffix(1);
    return encode(kept) + "…";
}

std::string with_minus(std::string_view text) {
    constexpr std::string_view minus = "\u2212";
    std::string shown;
    shown.reserve(text.size() + minus.size());
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool begins = i == 0 || text[i - 1] == ' ' || text[i - 1] == '(';
        const bool number = i + 1 < text.size() && text[i + 1] >= '0' && text[i + 1] <= '9';
        if (text[i] == '-' && begins && number)
            shown += minus;
        else
            shown += text[i];
    }
    return shown;
}

std::string capitalised(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

}  // namespace emberpath::kit
