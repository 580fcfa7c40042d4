#pragma once
/// Where the characters of an edited text stand: wrapped lines, places of the caret, citations as balloons.

#include <string_view>
#include <vector>

#include "ui/kit/geometry.hpp"
#include "ui/kit/text.hpp"

namespace emberpath::kit {

struct LaidOutLine {
    std::size_t begin = 0, end = 0;  // characters; a line's newline or breaking space is not in it
    std::vector<double> x;           // of each caret place from begin to end [logical px]
};

struct TextLayout {
    std::vector<LaidOutLine> lines;
    double line_height = 0.0;

    [[nodiscard]] std::size_t line_of(std::size_t index) const;
    [[nodiscard]] double x_of(std::size_t index) const;
    /// The caret place nearest to a point, from the corner of the text.
    [[nodiscard]] std::size_t index_at(Point p) const;
    /// One line up (-1) or down (+1), as near as can be to the same x.
    [[nodiscard]] std::size_t vertical(std::size_t index, int lines_down) const;
    [[nodiscard]] double height() const { return line_height * static_cast<double>(lines.size()); }
};

/// `width` at most; a single line when `many_lines` is false.
[[nodiscard]] TextLayout lay_out(const TextMetrics& metrics, const TextStyle& style,
                                 std::u32string_view text, double width, bool many_lines);

/// Room of a citation's balloon in a text of that size [logical px].
[[nodiscard]] double citation_width(const TextStyle& style, int number);

}  // namespace emberpath::kit
