#pragma once
/// Plain text in columns. Widths count characters, not bytes, so that °, µ and Ω line up.

#include <string>
#include <string_view>
#include <vector>

namespace emberpath::records {

[[nodiscard]] std::size_t width_of(std::string_view text);
/// Broken at spaces to at most `width` characters a line; a longer word is cut. At least one line.
[[nodiscard]] std::vector<std::string> wrap(std::string_view text, std::size_t width);

/// Cut to `width` characters, ending in "..." when something was cut.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t width);

struct Column {
    std::size_t width = 0;
    bool right = false;  // numbers line up at the right
};
/// One row of wrapped cells, two blanks between columns, `indent` blanks before; ends in a newline.
[[nodiscard]] std::string row(const std::vector<Column>& columns,
                              const std::vector<std::string>& cells, std::size_t indent = 0);
/// A wrapped paragraph after `indent` blanks; its first line starts with `lead`.
[[nodiscard]] std::string paragraph(std::string_view text, std::size_t width,
                                    std::size_t indent = 0, std::string_view lead = {});

}  // namespace emberpath::records
