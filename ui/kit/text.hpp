#pragma once
/// Text as the kit sees it: faces, sizes, widths and wrapping. Left-to-right Latin only; no shaping.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "ui/kit/tokens.hpp"

namespace emberpath::kit {

enum class Face : std::uint8_t {
    regular,
    bold,
    italic,
    bold_italic,
    seven,     // seven-segment glass
    fourteen,  // fourteen-segment glass
};
inline constexpr std::size_t face_count = 6;
[[nodiscard]] std::string_view name_of(Face face);

struct TextStyle {
    Face face = Face::regular;
    double size = type_size::body;  // em [logical px]
    Ink ink{};
    bool operator==(const TextStyle&) const = default;
};

/// Widths and heights, without any display. They grow in proportion to the size, so one layout serves
/// every text scale.
class TextMetrics {
  public:
    virtual ~TextMetrics() = default;
    /// Of one character [em].
    [[nodiscard]] virtual double advance_em(Face face, char32_t character) const = 0;
    /// Of the capitals above the baseline [em].
    [[nodiscard]] virtual double cap_height_em(Face face) const = 0;
    /// Below the baseline, of letters such as g [em].
    [[nodiscard]] virtual double descent_em(Face face) const = 0;
    /// Above the baseline, of letters such as b and of capitals with an accent [em].
    [[nodiscard]] virtual double ascent_em(Face face) const = 0;
    /// Is there a shape for it, in the face or its fallback?
    [[nodiscard]] virtual bool has(Face face, char32_t character) const = 0;
};

/// Code points of UTF-8 text; what is not UTF-8 becomes U+FFFD.
[[nodiscard]] std::u32string decode(std::string_view utf8);
[[nodiscard]] std::string encode(std::u32string_view text);

[[nodiscard]] double width_of(const TextMetrics& metrics, const TextStyle& style,
                              std::string_view text);
/// Baseline to baseline of running text [logical px].
[[nodiscard]] constexpr double line_height(double size) {
    return size + 6.0 - (size < 13.5 ? 1.0 : 0.0);
}

/// The text with a capital to begin with, where it begins with a small letter of the alphabet.
[[nodiscard]] std::string capitalised(std::string text);

/// With the minus sign where a hyphen stands before a number: "-79.5 Pa" becomes "−79.5 Pa".
[[nodiscard]] std::string with_minus(std::string_view text);

/// Lines no wider than `width`, broken at spaces; a word that is wider is broken between letters. A newline
/// always breaks.
[[nodiscard]] std::vector<std::string> wrapped(const TextMetrics& metrics, const TextStyle& style,
                                               std::string_view text, double width);
/// The text itself if it fits, else its beginning and "…".
[[nodiscard]] std::string shortened(const TextMetrics& metrics, const TextStyle& style,
                                    std::string_view text, double width);

}  // namespace emberpath::kit
