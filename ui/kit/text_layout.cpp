#include "ui/kit/text_layout.hpp"

#include <cmath>

#include "ui/kit/text_editor.hpp"

namespace emberpath::kit {

namespace {

constexpr std::size_t nothing_found = static_cast<std::size_t>(-1);

double advance(const TextMetrics& metrics, const TextStyle& style, char32_t c) {
    if (is_citation(c)) return citation_width(style, cited_number(c));
    return metrics.advance_em(style.face, c) * style.size;
}

}  // namespace

double citation_width(const TextStyle& style, int number) {
    const double disc = style.size * 1.4;
    return disc + (number > 99 ? style.size * 0.6 : 0.0) + 4.0;
}

TextLayout lay_out(const TextMetrics& metrics, const TextStyle& style, std::u32string_view text,
                   double width, bool many_lines) {
    TextLayout layout;
    layout.line_height = std::max(line_height(style.size), style.size * 1.4 + 4.0);
    std::size_t begin = 0;
    while (true) {
        LaidOutLine line{begin, begin, {0.0}};
        std::size_t space = nothing_found;
        std::size_t i = begin;
        for (; i < text.size() && !(many_lines && text[i] == U'\n'); ++i) {
            const double x = line.x.back() + advance(metrics, style, text[i]);
            if (text[i] == U' ') space = i;
            if (many_lines && x > width && i > begin && text[i] != U' ') break;
            line.x.push_back(x);
        }
        const bool at_end = i >= text.size(),
                   at_newline = !at_end && many_lines && text[i] == U'\n';
        std::size_t next = at_newline ? i + 1 : i;
        if (!at_end && !at_newline && space != nothing_found) {
            i = space;
            next = space + 1;
        }
        line.end = i;
        line.x.resize(i - begin + 1);
        layout.lines.push_back(std::move(line));
        if (at_end) return layout;
        begin = next;
    }
}

std::size_t TextLayout::line_of(std::size_t index) const {
    std::size_t found = 0;
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (lines[i].begin <= index) found = i;
    return found;
}

double TextLayout::x_of(std::size_t index) const {
    const LaidOutLine& line = lines[line_of(index)];
    return line.x[std::min(index - line.begin, line.x.size() - 1)];
}

std::size_t TextLayout::index_at(Point p) const {
    const auto row = static_cast<std::ptrdiff_t>(std::floor(p.y / line_height));
    const auto last = static_cast<std::ptrdiff_t>(lines.size()) - 1;
    const LaidOutLine& line =
        lines[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(row, 0, last))];
    std::size_t best = 0;
    for (std::size_t i = 1; i < line.x.size(); ++i)
        if (std::abs(line.x[i] - p.x) < std::abs(line.x[best] - p.x)) best = i;
    return line.begin + best;
}

std::size_t TextLayout::vertical(std::size_t index, int lines_down) const {
    const auto row = static_cast<std::ptrdiff_t>(line_of(index)) + lines_down;
    if (row < 0) return 0;
    if (row >= static_cast<std::ptrdiff_t>(lines.size())) return lines.back().end;
    return index_at({x_of(index), (static_cast<double>(row) + 0.5) * line_height});
}

}  // namespace emberpath::kit
