#include "sim/records/layout.hpp"

#include <algorithm>

namespace emberpath::records {

namespace {

bool starts_character(char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
}

/// Bytes that hold the first `count` characters.
std::size_t bytes_of(std::string_view text, std::size_t count) {
    std::size_t at = 0;
    for (; at < text.size(); ++at)
        if (starts_character(text[at]) && count-- == 0) break;
    return at;
}

std::string padded(const std::string& text, const Column& column) {
    const std::string blanks(column.width - std::min(column.width, width_of(text)), ' ');
    return column.right ? blanks + text : text + blanks;
}

void trim_right(std::string& text) {
    text.erase(text.find_last_not_of(' ') + 1);
}

}  // namespace

std::size_t width_of(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_character));
}

std::string shortened(std::string_view text, std::size_t width) {
    constexpr std::string_view dots = "...";
    if (width_of(text) <= width) return std::string(text);
    const std::size_t kept = width - std::min(width, dots.size());
    return std::string(text.substr(0, bytes_of(text, kept))) + std::string(dots);
}

std::vector<std::string> wrap(std::string_view text, std::size_t width) {
    width = std::max<std::size_t>(width, 1);
    std::vector<std::string> lines(1);
    while (!text.empty()) {
        const auto space = text.find(' ');
        std::string_view word = text.substr(0, space);
        text.remove_prefix(space == std::string_view::npos ? text.size() : space + 1);
        while (width_of(word) > width) {  // no such word in good text; still never overflow
            if (!lines.back().empty()) lines.emplace_back();
            const auto bytes = bytes_of(word, width);
            lines.back() = word.substr(0, bytes);
            word.remove_prefix(bytes);
        }
        if (word.empty()) continue;
        const bool first = lines.back().empty();
        if (!first && width_of(lines.back()) + 1 + width_of(word) > width) {
            lines.emplace_back(word);
            continue;
        }
        if (!first) lines.back() += ' ';
        lines.back() += word;
    }
    return lines;
}

std::string row(const std::vector<Column>& columns, const std::vector<std::string>& cells,
                std::size_t indent) {
    std::vector<std::vector<std::string>> wrapped;
    std::size_t height = 1;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        wrapped.push_back(wrap(i < cells.size() ? cells[i] : std::string(), columns[i].width));
        height = std::max(height, wrapped.back().size());
    }
    std::string text;
    for (std::size_t line = 0; line < height; ++line) {
        std::string part(indent, ' ');
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (i > 0) part += "  ";
            part += padded(line < wrapped[i].size() ? wrapped[i][line] : std::string(), columns[i]);
        }
        trim_right(part);
        text += part + "\n";
    }
    return text;
}

std::string paragraph(std::string_view text, std::size_t width, std::size_t indent,
                      std::string_view lead) {
    const std::size_t hang = indent + width_of(lead);
    std::string out;
    for (const auto& line : wrap(text, width - hang)) {
        out += out.empty() ? std::string(indent, ' ') + std::string(lead) : std::string(hang, ' ');
        out += line + "\n";
    }
    return out;
}

}  // namespace emberpath::records
